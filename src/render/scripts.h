// SPDX-License-Identifier: MIT
// Which language Pango is to take a script for, and which way a line runs.
#pragma once

#include <string>

#include "render/owners.h"

namespace loomfolio {

/// Marks each stretch of a script with a language of our own choosing. Left alone, Pango asks the environment which
/// language a reader prefers, and the choice of face and letter forms would change with it.
PangoAttributes mark_languages(const std::string& utf8);

/// By the first letter: right to left for Hebrew and Arabic, else left to right.
PangoDirection direction_of(const std::string& utf8);

}  // namespace loomfolio
