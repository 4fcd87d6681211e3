// SPDX-License-Identifier: MIT
// What stands on every sheet: margins, the frame of a drawing with its grid letters and figures, and the title strip.
#pragma once

#include <string>

#include "model/build.h"
#include "model/paper.h"
#include "model/words.h"
#include "sheets/sheet.h"

namespace loomfolio {

/// The places that a paper gives: text stands upright, drawings stand across in a framed grid.
struct PageShape {
  Millimetres width, height;
  Rect frame;                 ///< the frame's line (drawings) or the margins (text); holds the title strip
  Rect strip;                 ///< the title strip
  Rect body;                  ///< where content may stand
  int columns = 0, rows = 0;  ///< grid fields of a drawing; 0 on text pages
};

PageShape upright_page(const Paper& paper);
PageShape across_page(const Paper& paper);

/// The shape a finished sheet was made for: across when it is wider than high.
PageShape page_of(const Sheet& sheet, const Paper& text_paper, const Paper& drawing_paper);

/// The grid field of a place: 'B2'; empty on pages without a grid. Places outside count to the nearest field.
std::string grid_cell(const PageShape& page, Point at);

/// What the title strip says.
struct TitleStrip {
  Scope scope = Scope::machine;
  std::string title, job, revision, date, checked_by, fingerprint;
  int sheet = 1, of = 1;
  bool is_draft = false;  ///< the check found errors: said at the head and in place of who checked it
};

TitleStrip title_strip_of(const Document& document, const std::string& fingerprint);

/// Draws frame, grid and title strip onto the sheet, tagged as Artifact. Values too long for their field are set
/// smaller, down to the least size, then cut with an ellipsis.
void put_frame(Sheet& sheet, const PageShape& page, const TitleStrip& strip, const Words& words,
               const TextMeasure& measure);

}  // namespace loomfolio
