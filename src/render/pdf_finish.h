// SPDX-License-Identifier: MIT
// What qpdf does to the pages that cairo drew.
#pragma once

#include <string>
#include <vector>

#include "sheets/sheet.h"

namespace loomfolio {

enum class Structure : std::uint8_t { none, tagged };

/// Found while drawing, put in afterwards.
struct PdfExtras {
  Structure structure = Structure::none;
  std::vector<std::string> figure_texts;  ///< of each Figure, in the order they were drawn
};

/// Adds metadata, language, attachments and alternative texts; gives the file an id made from its content; marks it as
/// PDF 1.7. Empty when the PDF could not be read.
std::string finish_pdf(const std::string& drawn, const Folio& folio, const PdfExtras& extras);

}  // namespace loomfolio
