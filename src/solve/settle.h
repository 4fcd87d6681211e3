// SPDX-License-Identifier: MIT
// Where relays and control-unit outputs come to rest.
#pragma once

#include "solve/newton.h"

namespace loomfolio {

struct Settled {
  RelayState relays;
  NodeVolts nodes;
  Settling settling = Settling::settled;
  std::vector<int> unsettled_coils, unsettled_outputs;  ///< devices that would not come to rest
};

/// Lets relays and outputs move from `start` until they rest.
Settled settle(const Circuit& circuit, NodeSolver& solver, const RelayState& start, Flash flash);

/// Where each device wants to be, given the node voltages.
RelayState wanted(const Circuit& circuit, const RelayState& now, const NodeVolts& nodes);

}  // namespace loomfolio
