// SPDX-License-Identifier: MIT
// What a part does, told from what is inside it, in the order in which it happens.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// One sentence an event; empty for parts in which nothing acts.
std::vector<std::string> inside_sentences(const Build& build, PartId part, const Words& words);

/// The mark of the terminal that an end of the element is joined to; empty when it has none.
std::string end_mark(const Build& build, InsideRef ref, std::size_t node);

/// Whether neither a wire nor the machine's metal is joined to the terminal, an index into the kind's terminals.
bool is_left_open(const Build& build, PartId part, int terminal);

}  // namespace loomfolio
