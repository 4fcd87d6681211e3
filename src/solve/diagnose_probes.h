// SPDX-License-Identifier: MIT
// The measurements that may tell a symptom's suspects apart. For diagnose.cpp only.
#pragma once

#include "solve/diagnose.h"

namespace loomfolio {

/// What is asked, and every measurement with its column of outcomes, one a suspect.
struct ProbePlan {
  FaultStudy& study;
  const std::vector<Symptom>& symptoms;  ///< of one situation
  SituationId works_in = {};             ///< where the first does not show; may be unset
  std::vector<int> suspects = {};
  std::vector<Probe> probes = {};
  TestTable table = {};

  const Symptom& symptom() const { return symptoms.front(); }
  std::size_t situation() const { return symptoms.front().situation.at(); }
  const FaultEffect& here(int fault) const { return study.book().effect(static_cast<std::size_t>(fault), situation()); }
};

inline const Inside& element_of(const Build& build, InsideRef ref) {
  return build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
}

/// Adds the probe when its column tells some suspects apart.
void add_probe(ProbePlan& plan, Probe probe, std::vector<int> column);
void add_volt_probes(ProbePlan& plan);
void add_ohm_probes(ProbePlan& plan);
void add_short_probes(ProbePlan& plan);  ///< diagnose_shorts.cpp
void add_watch_probes(ProbePlan& plan);
void add_alternating_probes(ProbePlan& plan);
/// A wire or a winding between a generator and its charger.
bool feeds_a_charger(const ProbePlan& plan, const Fault& fault);

/// Minutes, from memory: at the battery, at a fuse, at a part that shows its terminals, in a connector, a part out; a
/// look; what a look costs more in another situation, while the starter turns, the same where the trouble is elsewhere, with a gear in, with the engine running.
namespace minutes {
inline constexpr double at_battery = 1, at_fuse = 1, at_part = 2, in_connector = 3, for_ohms = 2, battery_off = 3,
                        to_look = 0.5, to_set = 0.5, to_crank = 1, to_crank_aside = 5, in_gear = 6, engine_running = 4;
}  // namespace minutes

}  // namespace loomfolio
