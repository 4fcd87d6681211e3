// SPDX-License-Identifier: MIT
#pragma once

#include "model/kind.h"

namespace loomfolio {

/// One number for each point of a part: its terminals first, then the points inside.
inline int raw_node(const Kind& kind, const Inside::Node& node) {
  return node.terminal >= 0 ? node.terminal : static_cast<int>(kind.terminals.size()) + node.inner;
}

}  // namespace loomfolio
