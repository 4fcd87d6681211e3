// SPDX-License-Identifier: MIT
#include "render/attachments.h"

#include <exception>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>

namespace loomfolio {
namespace {

void open_pdf(QPDF& pdf, std::string_view bytes) {
  pdf.setSuppressWarnings(true);
  pdf.processMemoryFile("folio", bytes.data(), bytes.size());
}

}  // namespace

std::optional<std::string> extract_attachment(std::string_view pdf_bytes, std::string_view name) {
  try {
    QPDF pdf;
    open_pdf(pdf, pdf_bytes);
    const auto file = QPDFEmbeddedFileDocumentHelper(pdf).getEmbeddedFile(std::string(name));
    if (!file) return std::nullopt;
    QPDFObjectHandle stream = file->getEmbeddedFileStream();
    if (!stream.isStream()) return std::nullopt;
    const auto data = stream.getStreamData(qpdf_dl_generalized);
    return std::string(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
  } catch (const std::exception&) { return std::nullopt; }
}

std::vector<std::string> list_attachments(std::string_view pdf_bytes) {
  std::vector<std::string> names;
  try {
    QPDF pdf;
    open_pdf(pdf, pdf_bytes);
    for (const auto& [name, file] : QPDFEmbeddedFileDocumentHelper(pdf).getEmbeddedFiles()) names.push_back(name);
  } catch (const std::exception&) { names.clear(); }
  return names;
}

}  // namespace loomfolio
