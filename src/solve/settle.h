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

/// Where one coil or output wants to be. Look only at the nodes it watches.
bool wanted_coil(const Circuit& circuit, int coil, const RelayState& now, const NodeVolts& nodes);
bool wanted_output(const Circuit& circuit, int output, const NodeVolts& nodes);

/// Where each device wants to be, given the node voltages.
RelayState wanted(const Circuit& circuit, const RelayState& now, const NodeVolts& nodes);

}  // namespace loomfolio
