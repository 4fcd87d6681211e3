// SPDX-License-Identifier: MIT
// Relays moved one after the other, each answered from the solved circuit before it. For settle.cpp only.
#pragma once

#include <memory>
#include <optional>

#include "solve/settle.h"

namespace loomfolio {

class WhatIf;

/// In which order devices that want to move do so.
enum class MoveOrder : std::uint8_t { together, first_first, last_first };

/// One device that changes where it stands.
struct DeviceMove {
  GateType type = GateType::coil;
  int device = -1;
  bool is_on = false;
};

class QuickMoves {
 public:
  /// `circuit` must outlive it; `nodes` are its volts with the relays as in `start`.
  QuickMoves(const Circuit& circuit, const RelayState& start, const NodeVolts& nodes, Flash flash);
  ~QuickMoves();
  /// Volts once the device has moved, at the nodes that devices watch; 0 elsewhere. Nothing when the whole circuit must be
  /// solved: too much has changed since the start, no answer was found, or a device stands so near to where it moves that
  /// these volts (good to some hundredths) cannot tell.
  std::optional<NodeVolts> move(const DeviceMove& move);

 private:
  bool is_close_call(const NodeVolts& seen) const;
  const Circuit& circuit_;
  Settled base_;
  std::unique_ptr<WhatIf> what_if_;
  std::vector<int> watched_;  // nodes
  int adopted_ = 0;           // moves that have become the base
};

}  // namespace loomfolio
