// SPDX-License-Identifier: MIT
#include "render/pdf_finish.h"

#include <cairo.h>

#include <cassert>
#include <exception>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include "render/pdf_objects.h"
#include "render/pdf_outline.h"
#include "render/pdf_places.h"
#include "render/pdf_structure.h"

namespace loomfolio {
namespace {

using pdf::name;
using pdf::text;

/// ISO 8601 day to a PDF date (ISO 32000-1, 7.9.4); empty when it is none.
std::string pdf_date(const std::string& day) {
  std::string digits = day;
  std::erase(digits, '-');
  const bool is_day = digits.size() == 8 && digits.find_first_not_of("0123456789") == std::string::npos;
  return is_day ? "D:" + digits : std::string();
}

/// Replaces cairo's dictionary, which holds the time of the clock.
void set_info(QPDF& pdf, const FolioInfo& info) {
  QPDFObjectHandle dictionary = QPDFObjectHandle::newDictionary();
  const auto set = [&](const char* key, const std::string& value) {
    if (!value.empty()) dictionary.replaceKey(key, text(value));
  };
  set("/Title", info.title);
  set("/Author", info.author);
  set("/Subject", info.subject);
  set("/Keywords", info.keywords);
  set("/Creator", "loomfolio");
  set("/Producer", std::string("cairo ") + cairo_version_string());
  set("/Fingerprint", info.fingerprint);
  set("/CreationDate", pdf_date(info.date));
  pdf.getTrailer().replaceKey("/Info", pdf.makeIndirectObject(dictionary));
}

/// Each sheet has its own label, as a prefix without a number (ISO 32000-1, 12.4.2).
void set_page_labels(QPDF& pdf, const std::vector<Sheet>& sheets) {
  QPDFObjectHandle labels = QPDFObjectHandle::newArray();
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    QPDFObjectHandle label = QPDFObjectHandle::newDictionary();
    label.replaceKey("/P", text(sheets[i].label.empty() ? std::to_string(i + 1) : sheets[i].label));
    labels.appendItem(QPDFObjectHandle::newInteger(static_cast<long long>(i)));
    labels.appendItem(label);
  }
  QPDFObjectHandle tree = QPDFObjectHandle::newDictionary();
  tree.replaceKey("/Nums", labels);
  pdf.getRoot().replaceKey("/PageLabels", tree);
}

void set_catalog(QPDF& pdf, const FolioInfo& info, Structure structure) {
  QPDFObjectHandle catalog = pdf.getRoot();
  catalog.replaceKey("/Lang", text(info.language.empty() ? "en" : info.language));
  QPDFObjectHandle preferences = QPDFObjectHandle::newDictionary();
  preferences.replaceKey("/DisplayDocTitle", QPDFObjectHandle::newBool(!info.title.empty()));
  preferences.replaceKey("/PrintScaling", name("None"));  // faces, scale bars and the build board are at true size
  catalog.replaceKey("/ViewerPreferences", preferences);
  if (structure == Structure::tagged) {
    QPDFObjectHandle mark = QPDFObjectHandle::newDictionary();
    mark.replaceKey("/Marked", QPDFObjectHandle::newBool(true));
    catalog.replaceKey("/MarkInfo", mark);
  }
}

void attach(QPDF& pdf, const std::vector<Attachment>& attachments) {
  QPDFEmbeddedFileDocumentHelper files(pdf);
  QPDFObjectHandle associated = QPDFObjectHandle::newArray();
  for (const Attachment& attachment : attachments) {
    auto stream = QPDFEFStreamObjectHelper::createEFStream(pdf, attachment.content);
    if (!attachment.mime.empty()) stream.setSubtype(attachment.mime);
    auto file = QPDFFileSpecObjectHelper::createFileSpec(pdf, attachment.name, stream);
    file.setDescription(attachment.description);
    file.getObjectHandle().replaceKey("/AFRelationship", name("Source"));
    files.replaceEmbeddedFile(attachment.name, file);
    associated.appendItem(file.getObjectHandle());
  }
  if (!attachments.empty()) pdf.getRoot().replaceKey("/AF", associated);
}

}  // namespace

std::string finish_pdf(QPDF& pdf, const Folio& folio, const PdfExtras& extras) {
  try {
    set_info(pdf, folio.info);
    set_catalog(pdf, folio.info, extras.structure);
    set_page_labels(pdf, folio.sheets);
    finish_structure(pdf, extras.figure_texts);
    set_outline(pdf, folio);
    set_places(pdf, folio, extras);
    attach(pdf, folio.attachments);
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setMinimumPDFVersion("1.7");
    writer.setDecodeLevel(qpdf_dl_none);  // cairo has compressed its streams
    // Objects gathered in streams would more than halve the file, and take half of all finishing.
    writer.setObjectStreamMode(qpdf_o_disable);
    writer.setDeterministicID(true);
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
  } catch (const std::exception&) {
    assert(!"qpdf could not finish what cairo wrote");
    return {};
  }
}

}  // namespace loomfolio
