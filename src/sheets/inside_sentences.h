// SPDX-License-Identifier: MIT
// What a part does, told from what is inside it, in the order in which it happens.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// One sentence an event; empty for parts in which nothing acts.
std::vector<std::string> inside_sentences(const Build& build, const Part& part, const Words& words);

}  // namespace loomfolio
