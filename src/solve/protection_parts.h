// SPDX-License-Identifier: MIT
// The steps of study_protection(), one file each. For protection.cpp only.
#pragma once

#include <memory>
#include <optional>

#include "solve/fuse_refs.h"
#include "solve/protection.h"
#include "solve/what_if.h"

namespace loomfolio {

/// One situation, ready for shorts: a circuit, where its relays stand, and the what-if on it.
class ShortBench {
 public:
  ShortBench(const Build& build, const Solution& solution, const CircuitOptions& options,
             const std::vector<FuseRef>& fuses);
  /// Takes any earlier short away and puts a dead short from the terminal to the frame.
  void short_to_earth(TerminalId terminal);
  void open_fuse(std::size_t fuse);
  /// No charger gives any more: the battery feeds all.
  void stop_charging();
  Amperes wire_amperes(WireId wire);
  Amperes fuse_amperes(std::size_t fuse);
  /// Fuses that may carry `more` than before the short, or so much that they open: all others surely do not.
  std::vector<std::size_t> busy_fuses(Amperes more);
  Amperes base_wire_amperes(WireId wire) const;
  Amperes base_fuse_amperes(std::size_t fuse) const;
  /// Greatest of the volts at the wire's ends against the frame, without sign, before any short.
  Volts base_wire_volts(WireId wire) const;
  /// Volts at the fuse's lower end now, without sign: the nearer to the short, the lower.
  Volts fuse_volts(std::size_t fuse);

 private:
  void learn_lines();
  Amperes base_amperes(int branch) const;
  double base_volts(int node) const;
  Circuit circuit_;
  Settled settled_;
  std::unique_ptr<WhatIf> what_if_;
  std::vector<int> fuse_branch_;
  std::vector<Amperes> base_fuse_amperes_;
  std::vector<double> fuse_ohms_;
  std::vector<std::size_t> tight_fuses_;  // that open when a little more flows
  std::vector<double> base_shift_;        // by fuse: volts over it by which the factor's base lies off the sound machine
  bool has_learned_ = false;
  std::vector<std::optional<Amperes>> fuse_amperes_;  // of this short, as asked for
  int earth_ = -1;                                    // node that stands for the frame
};

struct BenchPair {
  SituationId situation;
  std::unique_ptr<ShortBench> hot, cold;
};

struct Study {
  const Build& build;
  const std::vector<Solution>& solutions;
  std::vector<FuseRef> fuses;
  std::vector<BenchPair> benches;
  ProtectionStudy result;
};

int index_of_fuse(const Study& study, InsideRef inside);

void study_wires(Study& study);   ///< needs benches
void study_fuses(Study& study);   ///< needs wires
void study_inrush(Study& study);  ///< needs fuses
void study_pairs(Study& study);   ///< needs benches
void study_leads(Study& study);
void study_choices(
    Study& study);  ///< needs wires; judges wires behind fuses left to the fitter again, with the best choice
void study_stops(Study& study);  ///< needs fuses

}  // namespace loomfolio
