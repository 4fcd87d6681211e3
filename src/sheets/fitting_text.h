// SPDX-License-Identifier: MIT
// What goes on a wire's end, in words.
#pragma once

#include <string>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// 'Blade 6.3 mm', 'Ring M6', 'Sealed contact'.
std::string fitting_text(const Build& build, TerminalId terminal, const Words& words);

/// 'strip 6 mm'; 'strip by maker' where the terminal states none; empty where nothing is stripped by table (splices,
/// earths' rings follow their own sheets and say so too).
std::string strip_text(const Build& build, TerminalId terminal, const Words& words);

}  // namespace loomfolio
