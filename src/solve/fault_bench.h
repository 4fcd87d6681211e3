// SPDX-License-Identifier: MIT
// One situation, ready for faults. For faults.cpp and protection only.
#pragma once

#include <memory>

#include "solve/faults.h"
#include "solve/fuse_refs.h"
#include "solve/loose_finder.h"
#include "solve/what_if.h"

namespace loomfolio {

/// From a chafed wire to the metal that it touches, from memory.
inline constexpr Ohms chafe_to_metal{0.05};

class FaultBench {
 public:
  FaultBench(const Build& build, const Solution& solution, const std::vector<Amperes>& worst_loads,
             const FaultOptions& options);
  /// Fuses that an earlier situation has blown stay open and stand first in `blown`.
  FaultEffect apply(const Fault& fault, const std::vector<InsideRef>& open_fuses = {});
  const WhatIf& answer() const { return *what_if_; }
  const Circuit& circuit() const { return circuit_; }

 private:
  void begin(const Fault& fault);
  void change_wire(const Fault& fault);
  void open_inside(InsideRef ref);
  void close_contact(InsideRef ref);
  void change_switch(const Fault& fault);
  void reverse_diode(InsideRef ref);
  bool carries(int branch) const;
  std::vector<int> find_loose_changes();
  void loosen_earth(const Fault& fault);
  void follow_charger(int generator, WireId open_wire, InsideRef dead);
  struct NextFuse {
    int fuse = -1;
    bool is_clear = false;
  };
  bool settle(FaultEffect& effect, bool is_short);
  NextFuse next_fuse_to_blow(const FaultEffect& effect, Bends bends);
  std::vector<int> moved_fuses(Bends bends);
  void collect_changes(FaultEffect& effect);
  void collect_steady(InsideRef contact, FaultEffect& effect) const;
  void collect_readings(FaultEffect& effect);
  int branch_of(InsideRef ref) const;

  const Build& build_;
  const Solution& solution_;
  const std::vector<Amperes>& worst_loads_;
  FaultOptions options_;
  Circuit circuit_;
  Settled settled_;
  std::unique_ptr<WhatIf> what_if_;
  std::vector<FuseRef> fuses_;
  std::vector<std::vector<int>> fuses_at_;           // by node
  std::vector<int> tight_fuses_;                     // that open when a little more flows: asked whatever moves
  std::vector<std::vector<InsideRef>> elements_at_;  // by node: elements a person sees
  std::vector<int> generator_at_;                    // by node: which one it hangs on, -1
  InsideRef opened_;                                 // by the fault: volts over it mean nothing
  std::unique_ptr<LooseFinder> loose_;               // where there are diodes
  std::vector<std::vector<int>> diodes_at_;          // by node
  std::pair<int, int> added_{-1, -1};                // nodes that the fault joins
  bool is_added_diode_ = false;
  int earth_ = -1;
};

}  // namespace loomfolio
