// SPDX-License-Identifier: MIT
// What qpdf does to the pages that cairo drew.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "sheets/sheet.h"

class QPDF;

namespace loomfolio {

enum class Structure : std::uint8_t { none, tagged };

/// A place that links lead to, and a link; sheets are counted from 0.
struct PdfPlace {
  std::string name;
  std::size_t sheet = 0;
  Point at;
};
struct PdfLink {
  std::size_t sheet = 0;
  Rect rect;
  std::size_t place = 0;  ///< into PdfExtras::places
};

/// Found while drawing, put in afterwards.
struct PdfExtras {
  std::vector<PdfPlace> places;
  std::vector<PdfLink> links;  ///< in the order they were drawn
  Structure structure = Structure::none;
  std::vector<std::string> figure_texts;  ///< of each Figure, in the order they were drawn
};

/// Adds metadata, language, outline, named places, page labels, attachments and alternative texts; sets links exactly; gives the file an
/// id made from its content; marks it as PDF 1.7. Empty when qpdf failed.
std::string finish_pdf(QPDF& pdf, const Folio& folio, const PdfExtras& extras);

}  // namespace loomfolio
