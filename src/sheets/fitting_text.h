// SPDX-License-Identifier: MIT
// What goes on a wire's end, in words.
#pragma once

#include <string>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// 'Blade 6.3', 'Ring M6', 'Sealed'; empty at a splice, whose name says it.
std::string fitting_text(const Build& build, TerminalId terminal, const Words& words);

/// The fitting as one buys it: 'Blade receptacle, 6.3 mm', 'Ring terminal, M6'; empty where the end takes none.
std::string fitting_name(const Build& build, TerminalId terminal, const Words& words);

/// 'strip 6 mm'; empty where the terminal states none: the maker of the fitting says it then.
std::string strip_text(const Build& build, TerminalId terminal, const Words& words);

}  // namespace loomfolio
