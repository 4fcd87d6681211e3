// SPDX-License-Identifier: MIT
// References between sheets. While sheets are being made nobody knows their numbers; a reference is written into a text
// as a mark, and replaced when the folio is whole.
#pragma once

#include <string>
#include <string_view>

#include "sheets/frame.h"
#include "sheets/sheet.h"

namespace loomfolio {

/// The id of the first sheet of a run: 'wires' for 'wires-3'. A reference to an anchor may name the first sheet,
/// wherever in the run the anchor stands.
std::string first_of_run(std::string_view sheet_id);

/// The word that sheets of one sort share: 'diagram' of 'diagram-starting', with its hook-up: 'a/diagram'. An anchor can
/// be looked up by it, so that a page may lead to a wire on whichever diagram draws it.
std::string family_of(std::string_view sheet_id);

/// A mark that becomes the number of that sheet ('with-unit/' names the first sheet of a hook-up), or of the sheet of
/// its run that holds the anchor: '7'.
std::string sheet_mark(std::string_view sheet_id, std::string_view anchor = {});

/// A mark that becomes the grid field of that anchor on that sheet: 'B2'; nothing on a page without a grid.
std::string cell_mark(std::string_view sheet_id, std::string_view anchor);

/// `text` with each mark as wide as it may become: for measuring.
std::string widest(std::string_view text);

/// Replaces the marks in all texts. Numbers are places in `folio.sheets`, from 1. Marks and links that lead nowhere
/// become a dash, and links are removed; their targets are returned, so that tests can insist that there are none.
std::vector<std::string> resolve_references(Folio& folio, const Paper& text_paper, const Paper& drawing_paper);

}  // namespace loomfolio
