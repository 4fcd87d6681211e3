// SPDX-License-Identifier: MIT
// What a folio promises and does not keep. For tests and asserts: rendering copes with every one of these.
#pragma once

#include <string>
#include <vector>

#include "sheets/sheet.h"

namespace loomfolio {

/// One line a fault, in the order of the sheets: two sheets or anchors of one name; a link to a sheet or an anchor that
/// is not there (a link whose sheet is not printed is left out of the PDF); tags that are not balanced, not known or in
/// the wrong place; a figure without its text; a size that is no size.
std::vector<std::string> find_folio_faults(const Folio& folio);

/// True for the tags a TagOpenItem may have.
bool is_known_tag(const std::string& tag);

}  // namespace loomfolio
