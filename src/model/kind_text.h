// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "model/words.h"

namespace loomfolio {

/// What a kind says in English (a name, a purpose, a sentence) in the language of `words`: its text `kind_text.` + the
/// English; the English itself where the language has none.
std::string translate_kind_text(const std::string& english, const Words& words);

}  // namespace loomfolio
