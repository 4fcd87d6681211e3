// SPDX-License-Identifier: MIT
// Which terminals are joined to earth by wires and splices alone.
#pragma once

#include <vector>

#include "model/build.h"

namespace loomfolio {

/// By TerminalId: reached from an earth or the battery's earthed pole over wires, splices and plain links inside parts.
std::vector<bool> find_earth_net(const Build& build);

}  // namespace loomfolio
