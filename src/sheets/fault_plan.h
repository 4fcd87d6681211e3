// SPDX-License-Identifier: MIT
// What the fault pages hold: which symptoms get a chart, what each chart asks in which order, and what its ends name.
// The measurements are solve/diagnose.h's; here they are chosen, merged and cut to what a page can hold.
#pragma once

#include <compare>
#include <optional>
#include <vector>

#include "sheets/fault_other_ways.h"
#include "solve/bench_situations.h"
#include "solve/diagnose.h"

namespace loomfolio {

/// One thing to mend. Faults with the same remedy are one: a broken wire and a poor joint at its end.
struct Mend {
  FaultType type = FaultType::wire_open;  ///< never bad_joint
  WireId wire;
  EarthId earth;
  TerminalId body;
  InsideRef inside;
  friend auto operator<=>(const Mend&, const Mend&) = default;
};
Mend mend_for(const Fault& fault);

/// What a chart is about.
enum class Ailing : std::uint8_t { shown, starter, ignition, charging, none };
Ailing kind_of_element(const Build& build, InsideRef what);

/// Symptoms that one chart serves: all in one situation, a person sees at least one of them.
struct FaultChart {
  Ailing kind = Ailing::shown;
  std::vector<Symptom> symptoms;
  SituationId works_in;  ///< set: there the first symptom does not show; an earlier chart serves if it does
  Diagnosis diagnosis;   ///< its suspects index FaultPlan::faults
  std::vector<OtherWay> other_ways = {};  ///< of a chart of what is shown: how the reader may make it work after all
};

/// A fuse that blows, and the first situation in which it does: who switches on one after the other sees that one.
struct FuseBlow {
  InsideRef fuse;
  SituationId situation;
  TerminalId load_side;       ///< its terminal away from the battery
  std::vector<int> suspects;  ///< into FaultPlan::faults, most likely first
};

/// Something is on or weak that should not be.
struct OddSymptom {
  std::vector<Symptom> symptoms;  ///< of one situation, with the same suspects
  std::vector<int> suspects;      ///< into FaultPlan::faults, most likely first
};

struct FaultPlan {
  BenchSituations bench;  ///< what all situations here mean: as a person with a meter sets them
  std::vector<Fault> faults;
  std::vector<FaultChart> charts;  ///< F1 is the first
  std::vector<FuseBlow> blows;     ///< by fuse and situation
  std::vector<OddSymptom> odd;     ///< by element, then what is seen
  std::vector<int> burning;        ///< into `faults`: shorts that no fuse ends, in some situation

  /// Index of the chart that has this element fail in that situation, else of the one that has it fail; -1: none.
  int chart_for(InsideRef what, SituationId situation) const;
  /// Index of the first chart that may end at something inside this part, else at a wire of it; -1: none.
  int chart_suspecting(PartId part) const;
};

/// `solutions` of all situations of the build. Charts for what should work and does not: elements that a person sees,
/// hears or feels, the spark and the charging. Those that share most of their suspects (by likelihood) in one situation
/// share a chart. What fails in one situation only has a further, smaller chart. What stops the machine comes first.
FaultPlan plan_faults(const Build& build, const std::vector<Solution>& solutions);

/// Where a reading leads: to another box, or to what must be mended.
struct ChartExit {
  int outcome = 0;            ///< of the box's probe
  std::vector<int> also;      ///< of an end: further outcomes that lead to the same
  int next = -1;              ///< box; -1: an end
  std::vector<int> suspects;  ///< of an end: into FaultPlan::faults, most likely first
  bool is_cut = false;        ///< more measurements would tell them apart, but the chart has no room for them
  int node = -1;              ///< of an end that is cut: into Diagnosis::nodes, what would be asked next; -1: not one question
};
struct ChartBox {
  int parent = -1;               ///< the box that leads here; -1: the first
  int probe = -1;                ///< into Diagnosis::probes
  std::vector<ChartExit> exits;  ///< by outcome
  int below = -1;                ///< the exit whose box follows directly; -1: all are ends
};

/// The tree with at most that many questions, in reading order. What is left out is what tells least: first
/// measurements between faults with the same remedy, then those of fewest bits by likelihood; the suspects stay,
/// together in one end. A chart that needs no measurement has one box without a probe and one end.
std::vector<ChartBox> cut_chart(const FaultPlan& plan, const FaultChart& chart, std::size_t most_boxes);

}  // namespace loomfolio
