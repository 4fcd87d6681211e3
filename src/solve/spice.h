// SPDX-License-Identifier: MIT
// A circuit as a SPICE netlist, so that another simulator can be asked the same question.
#pragma once

#include <string>

#include "solve/circuit.h"

namespace loomfolio {

struct NetlistRequest {
  const Circuit& circuit;
  const RelayState& relays;
  Flash flash = Flash::lit;
  std::string title;
  const Build* build = nullptr;  ///< to name nodes in comments; may be null
};

/// Name of a node in the netlist: `n12`; the reference is `0`.
std::string spice_node(const Circuit& circuit, int node);

/// Elements and models, relays standing as given, without analysis or `.end`. Filaments, limits, regulators and constant loads are B
/// sources, diodes D with a model of their own; floating islands are pinned as the solver pins them.
std::string write_netlist(const NetlistRequest& request);

}  // namespace loomfolio
