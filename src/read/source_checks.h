// SPDX-License-Identifier: MIT
// What makes a text unreadable before it is read as TOML.
#pragma once

#include <string_view>

#include "diag/diagnostic.h"

namespace loomfolio {

/// False, with one finding, when the text is empty, too large, holds NUL or broken UTF-8, or nests keys absurdly deep.
bool check_source(std::string_view text, std::int32_t file, Diagnostics& findings);

}  // namespace loomfolio
