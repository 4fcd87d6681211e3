// SPDX-License-Identifier: MIT
// Which terms of the words' [glossary] a folio uses.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

/// The words under which a term may be printed, the first of them as the glossary prints it: 'earth, earths, earthed'.
std::vector<std::string> glossary_forms(const std::string& text);

/// Whether those words stand in the text, not as a piece of a longer word. `lower_text` is in small letters.
bool is_printed(const std::string& lower_text, const std::string& form);

/// The page of terms, from all other sheets but the cover.
std::vector<Sheet> make_glossary(const SheetContext& context, const std::vector<Sheet>& printed);

}  // namespace loomfolio
