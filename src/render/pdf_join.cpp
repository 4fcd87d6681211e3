// SPDX-License-Identifier: MIT
#include "render/pdf_join.h"

#include <cassert>
#include <exception>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <utility>

namespace loomfolio {
namespace {

QPDFObjectHandle structure_of(QPDF& pdf) { return pdf.getRoot().getKey("/StructTreeRoot"); }

/// The array at `key`, made of what is there when it is one thing or nothing.
QPDFObjectHandle array_at(QPDFObjectHandle owner, const std::string& key) {
  QPDFObjectHandle value = owner.getKey(key);
  if (value.isArray()) return value;
  owner.replaceKey(key, value.isNull() ? QPDFObjectHandle::newArray() : value.wrapInArray());
  return owner.getKey(key);
}

/// The pairs of number and element of the tree of parents (ISO 32000-1, 14.7.4.4), which cairo writes as one node.
QPDFObjectHandle parents_of(QPDFObjectHandle structure) { return array_at(structure.getKey("/ParentTree"), "/Nums"); }

void shift(QPDFObjectHandle owner, const std::string& key, long long by) {
  QPDFObjectHandle number = owner.getKey(key);
  if (number.isInteger()) owner.replaceKey(key, QPDFObjectHandle::newInteger(number.getIntValue() + by));
}

/// Pages and links name their place in the tree of parents by number.
void shift_parents(QPDFObjectHandle page, long long by) {
  shift(page, "/StructParents", by);
  QPDFObjectHandle annotations = page.getKey("/Annots");
  if (!annotations.isArray()) return;
  for (int i = 0; i < annotations.getArrayNItems(); ++i) shift(annotations.getArrayItem(i), "/StructParent", by);
}

void append(QPDFObjectHandle to, QPDFObjectHandle from) {
  for (int i = 0; i < from.getArrayNItems(); ++i) to.appendItem(from.getArrayItem(i));
}

/// Elements under the root, and who is parent of what; `structure` is already an object of the joined PDF.
void append_structure(QPDFObjectHandle whole, QPDFObjectHandle structure, long long by) {
  append(array_at(whole, "/K"), array_at(structure, "/K"));
  QPDFObjectHandle parents = parents_of(structure);
  for (int i = 0; i + 1 < parents.getArrayNItems(); i += 2)
    parents.setArrayItem(i, QPDFObjectHandle::newInteger(parents.getArrayItem(i).getIntValue() + by));
  append(parents_of(whole), parents);
}

void append_part(QPDF& pdf, QPDF& part) {
  QPDFPageDocumentHelper pages(pdf);
  QPDFObjectHandle whole = structure_of(pdf);
  const long long by = whole.isDictionary() ? parents_of(whole).getArrayNItems() / 2 : 0;
  for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper(part).getAllPages()) {
    shift_parents(page.getObjectHandle(), by);
    pages.addPage(page, false);
  }
  QPDFObjectHandle structure = structure_of(part);
  if (!structure.isDictionary()) return;
  QPDFObjectHandle copied = pdf.copyForeignObject(structure);  // its pages are known by now
  if (whole.isDictionary())
    append_structure(whole, copied, by);
  else
    pdf.getRoot().replaceKey("/StructTreeRoot", copied);
}

/// False when qpdf failed.
bool try_append(QPDF& pdf, QPDF& part) {
  try {
    append_part(pdf, part);
    return true;
  } catch (const std::exception&) {
    assert(!"qpdf could not join what cairo wrote");
    return false;
  }
}

}  // namespace

std::shared_ptr<QPDF> read_part(const std::string& drawn) {
  try {
    auto pdf = std::make_shared<QPDF>();
    pdf->setSuppressWarnings(true);
    pdf->processMemoryFile("folio", drawn.data(), drawn.size());
    pdf->getObjectCount();  // reads every object, which is else left until the parts are joined
    return pdf;
  } catch (const std::exception&) {
    assert(!"qpdf could not read what cairo wrote");
    return nullptr;
  }
}

void PartJoiner::bring(std::size_t p, std::shared_ptr<QPDF> part) {
  std::unique_lock asking(asking_);
  parts_[p] = std::move(part);
  if (std::exchange(is_joining_, true)) return;  // whoever joins will come to it
  for (; joined_ < parts_.size() && parts_[joined_] != nullptr; ++joined_) {
    QPDF& whole = *parts_.front();
    QPDF& further = *parts_[joined_];
    asking.unlock();
    const bool is_joined = &further == &whole || try_append(whole, further);
    asking.lock();
    if (is_joined) continue;
    parts_[joined_] = nullptr;
    break;
  }
  is_joining_ = false;
}

}  // namespace loomfolio
