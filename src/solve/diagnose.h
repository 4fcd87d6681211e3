// SPDX-License-Identifier: MIT
// From a symptom to the fault: which faults could show it, where to put the probes next, what each reading means.
#pragma once

#include <string>
#include <vector>

#include "solve/fault_study.h"
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
  ohms,            ///< over the element, key off, taken out or unplugged: lamp, fuse, coil; over all windings of a
                   ///< generator; over a diode both ways by the meter's diode range
  short_to_earth,  ///< ohms from `at`, the fuse's lower terminal, to the frame; fuse out, battery off, as `standing`
                   ///< says
  watch,           ///< look or listen: what `what` does in `situation`; only what shows by itself: lamps, motors, heat
  alternating,     ///< engine running, charger `what` unplugged: volts between each two of the plug's generator ways
  new_fuse,        ///< one new fuse for `what` that blew, in the symptom's situation: does it hold?
};

/// How switches stand while the battery is off; relays always rest then.
enum class Standing : std::uint8_t { all_at_rest, as_set };

/// One outcome of a measurement: a range of readings, or a state.
struct ProbeOutcome {
  double least = 0, most = 0;     ///< volts: readings of the faults behind it, with what a sound machine may be off
  Expected state = Expected::on;  ///< watch
  bool is_open = false;    ///< ohms: open, else as it should be; short_to_earth: no short; alternating: not alike;
                           ///< new_fuse: it blows
  bool is_sound = false;   ///< what the sound machine shows
  bool is_reversed = false;  ///< ohms of a diode: it passes the other way
  bool is_astray = false;  ///< volts beyond the battery's poles: no figure, only that it is not near 0
};

struct Probe {
  ProbeType type = ProbeType::volts;
  SituationId situation;
  TerminalId at;
  InsideRef what;
  Standing standing = Standing::as_set;
  std::vector<InsideRef> taken_out;  ///< short_to_earth: bulbs that would read as a short
  Ohms sound_ohms{0};                ///< short_to_earth: what a sound machine reads; infinite: open
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

Diagnosis diagnose(FaultStudy& study, const Symptom& symptom);
/// With a study of its own: for one question alone.
Diagnosis diagnose(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                   const Symptom& symptom);

/// One tree for several symptoms of one situation, of which the person sees at least one: the suspects are those of any
/// of them, and whether each of the others shows as well is a look like any other. `Diagnosis::symptom` is the first.
/// Not for none. What anyone looks at first stands first: the bulb, the fuse. A short that no fuse ends is no suspect.
/// What feeds a charger is a suspect of its symptom even if the charger still gives a little. With `works_in`: the
/// first symptom does not show in that situation.
Diagnosis diagnose_any(FaultStudy& study, const std::vector<Symptom>& symptoms, SituationId works_in = {});

/// The fuse's terminal away from the battery: the one that reads less while that fault has it blown.
TerminalId dead_end(const FaultStudy& study, std::size_t fault, std::size_t s, InsideRef fuse);

}  // namespace loomfolio
