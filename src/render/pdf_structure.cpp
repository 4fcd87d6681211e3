// SPDX-License-Identifier: MIT
#include "render/pdf_structure.h"

#include <algorithm>
#include <cassert>

namespace loomfolio {
namespace {

/// Structure elements under `element`, in reading order, that are of kind `wanted`.
void collect_elements(QPDFObjectHandle element, const std::string& wanted, std::vector<QPDFObjectHandle>& found) {
  if (!element.isDictionary()) return;
  QPDFObjectHandle kind = element.getKey("/S");
  if (kind.isName() && kind.getName() == wanted) found.push_back(element);
  QPDFObjectHandle children = element.getKey("/K");
  if (children.isArray())
    for (int i = 0; i < children.getArrayNItems(); ++i) collect_elements(children.getArrayItem(i), wanted, found);
  else
    collect_elements(children, wanted, found);
}

void set_figure_texts(QPDFObjectHandle root, const std::vector<std::string>& texts) {
  if (texts.empty()) return;
  std::vector<QPDFObjectHandle> figures;
  collect_elements(root, "/Figure", figures);
  assert(figures.size() == texts.size());
  for (std::size_t i = 0; i < std::min(figures.size(), texts.size()); ++i)
    if (!texts[i].empty()) figures[i].replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(texts[i]));
}

/// ISO 32000-1, 14.8.4.2: the root has one child, the document.
void put_under_document(QPDF& pdf, QPDFObjectHandle root) {
  QPDFObjectHandle elements = root.getKey("/K");
  if (!elements.isArray()) elements = elements.wrapInArray();
  QPDFObjectHandle document = pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
  document.replaceKey("/Type", QPDFObjectHandle::newName("/StructElem"));
  document.replaceKey("/S", QPDFObjectHandle::newName("/Document"));
  document.replaceKey("/P", root);
  document.replaceKey("/K", elements);
  for (int i = 0; i < elements.getArrayNItems(); ++i) elements.getArrayItem(i).replaceKey("/P", document);
  root.replaceKey("/K", document);
}

}  // namespace

void finish_structure(QPDF& pdf, const std::vector<std::string>& figure_texts) {
  QPDFObjectHandle root = pdf.getRoot().getKey("/StructTreeRoot");
  if (!root.isDictionary()) return;
  set_figure_texts(root, figure_texts);
  put_under_document(pdf, root);
}

}  // namespace loomfolio
