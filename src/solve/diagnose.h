// SPDX-License-Identifier: MIT
// From a symptom to the fault: which faults could show it, where to put the probes next, what each reading means.
#pragma once

#include <string>
#include <vector>

#include "solve/faults.h"
#include "solve/test_tree.h"

namespace loomfolio {

/// In `situation` the element should be `expected` and is `seen`.
struct Symptom {
  SituationId situation;
  InsideRef what;
  Expected expected = Expected::on, seen = Expected::off;
  friend auto operator<=>(const Symptom&, const Symptom&) = default;
};

/// Symptoms that some single fault shows and a person would notice: lamps, loads, motors, chargers. By situation, part
/// and inside; of an element's situations with the same symptom only the one that most faults show, and those without
/// which a fault would show none of them. Every fault that a person would notice in some situation shows one.
std::vector<Symptom> list_symptoms(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book);

/// How a suspect is looked for.
enum class ProbeType : std::uint8_t {
  volts,           ///< red on `at`, black on the battery's earthed pole, in the symptom's situation
  ohms,            ///< over the element, taken out or unplugged: lamp, fuse, coil
  short_to_earth,  ///< ohms from `at`, the fuse's lower terminal, to earth; fuse out, battery off: near nothing, or the
                   ///< loads
  watch,  ///< look or listen: what `what` does in `situation`; only what shows by itself: lamps, motors, a horn, heat
};

/// One outcome of a measurement: a range of readings, or a state.
struct ProbeOutcome {
  double least = 0, most = 0;  ///< volts: readings of the faults behind it, widened by what a sound machine may differ
                               ///< there (reading_limits.h), at most half way to the next
  Expected state = Expected::on;  ///< watch
  bool is_open = false;           ///< ohms: open, else as it should be; short_to_earth: no short, else a short
  bool is_sound = false;          ///< what the sound machine shows
};

struct Probe {
  ProbeType type = ProbeType::volts;
  SituationId situation;
  TerminalId at;
  InsideRef what;
  double minutes = 1;
  std::vector<ProbeOutcome> outcomes;
};

/// Suspects that no measurement here separates stand together.
struct DiagnosisNode {
  int probe = -1;                             ///< into Diagnosis::probes; -1: a leaf
  std::vector<std::pair<int, int>> branches;  ///< outcome of the probe -> node
  std::vector<int> suspects;                  ///< into Diagnosis::suspects
};

struct Diagnosis {
  Symptom symptom;
  std::vector<int> suspects;         ///< faults of the book that show the symptom, most likely first
  std::vector<Probe> probes;         ///< those the tree uses
  std::vector<DiagnosisNode> nodes;  ///< node 0 is where to start
  double expected_minutes = 0;
  int inseparable = 0;  ///< leaves with more than one suspect
};

Diagnosis diagnose(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                   const Symptom& symptom);

/// One tree for several symptoms of one situation, of which the person sees at least one: the suspects are those of any
/// of them, and whether each of the others shows as well is a look like any other. `Diagnosis::symptom` is the first.
/// Not for none.
Diagnosis diagnose_any(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                       const std::vector<Symptom>& symptoms);

}  // namespace loomfolio
