// SPDX-License-Identifier: MIT
// What each position of a switch joins, as a sentence.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// Several switches in one housing are told by their drawing.
bool has_several_switches(const Part& part);

/// 'pulled: 82 and 82a are joined.' for each position, also of one that joins nothing here. Of a switch that springs back from
/// its one other position, rest is left out: the sentence about letting go tells it.
std::vector<std::string> position_sentences(const Build& build, InsideRef ref, const Words& words);

}  // namespace loomfolio
