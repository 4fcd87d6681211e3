// SPDX-License-Identifier: MIT
// What a settled circuit tells of its branches; the view that observe() looks through.
#pragma once

#include "solve/branch_law.h"
#include "solve/newton.h"

namespace loomfolio {

struct SettledView {
  const Circuit& circuit;
  const RelayState& relays;
  const NodeVolts& nodes;
  Flash flash;

  double volts(int node) const { return nodes.volts[static_cast<std::size_t>(node)]; }
  /// 0 while the branch is not there.
  double amperes(const Branch& branch) const {
    return loomfolio::is_active(branch, relays, flash) ? work(branch, volts(branch.a) - volts(branch.b)).amperes : 0;
  }
  double amperes(int branch) const { return amperes(circuit.branches[static_cast<std::size_t>(branch)]); }
  bool is_active(int branch) const { return loomfolio::is_active(circuit.branches[static_cast<std::size_t>(branch)], relays, flash); }
  bool is_pulled_in(int coil) const { return relays.coil_in[static_cast<std::size_t>(coil)] != 0; }
};

}  // namespace loomfolio
