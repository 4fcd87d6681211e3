// SPDX-License-Identifier: MIT
// Folios to files. The only room that knows cairo and Pango.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/leftovers.h"
#include "base/text_measure.h"
#include "sheets/sheet.h"

namespace loomfolio {

/// The faces of fonts/ and no others. Cheap to copy a reference of; make one a run.
class FontSet {
 public:
  /// `fonts_folder` holds fonts.conf. On failure `error()` says why and measuring gives rough sizes.
  explicit FontSet(const std::string& fonts_folder);
  ~FontSet();
  FontSet(const FontSet&) = delete;
  FontSet& operator=(const FontSet&) = delete;

  const TextMeasure& measure() const;
  const std::string& error() const;  ///< empty when every needed face is there
  /// The characters of `text` that no face of the set has, each once.
  std::vector<std::string> missing_glyphs(const std::string& text) const;

  struct Inside;
  const Inside& inside() const { return *inside_; }

 private:
  std::unique_ptr<Inside> inside_;
};

enum class Colouring : std::uint8_t { full, grey };

/// The bytes of a PDF: outline, page labels, links, structure tags, metadata, embedded faces, attachments. Same folio,
/// same bytes. A link to a sheet that is not in the folio is left out; one to an anchor that is not there leads to the top
/// of its sheet (find_folio_faults names both). Empty when the folio has no sheet, the faces are not there, or drawing
/// failed.
/// `leftovers`: takes what is to be freed; null: it is freed before the bytes are given.
std::string render_pdf(const Folio& folio, const FontSet& fonts, Colouring colouring = Colouring::full, Leftovers* leftovers = nullptr);
/// One sheet as SVG, text as text. A link to another sheet leads to a file beside it, named after that sheet's id:
/// `cover.svg#anchor`.
std::string render_svg(const Sheet& sheet, const FontSet& fonts, Colouring colouring = Colouring::full);
/// One sheet as PNG at that many dots per inch (36 to 600; others are taken to the nearest). Empty when the
/// faces are not there or drawing failed.
std::string render_png(const Sheet& sheet, const FontSet& fonts, double dots_per_inch,
                       Colouring colouring = Colouring::full);
/// One sheet as text for tests: an item a line, millimetres with two decimals.
std::string render_dump(const Sheet& sheet);

}  // namespace loomfolio
