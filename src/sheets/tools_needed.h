// SPDX-License-Identifier: MIT
// The tools that this build's fittings ask for.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// One line a tool, in the order a person lays them out; over all builds given.
std::vector<std::string> tools_needed(const std::vector<const Build*>& builds, const Words& words);

}  // namespace loomfolio
