// SPDX-License-Identifier: MIT
// A load that no situation turns on: it is wired wrong, or a situation is missing.
#include "check/rules.h"

namespace loomfolio::rules {

namespace {

bool is_on_somewhere(const Facts& facts, InsideRef ref) {
  for (const SettledSituation& settled : settled_situations(facts))
    if (settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].is_on) return true;
  return false;
}

}  // namespace

void load_never_on(const Facts& facts, Diagnostics& findings) {
  if (settled_situations(facts).size() != facts.build.situations.size() || facts.build.situations.empty()) return;
  const Poles poles = reach_poles(facts);
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    const bool is_load = inside.type == InsideType::load || inside.type == InsideType::lamp ||
                         inside.type == InsideType::motor || inside.type == InsideType::coil;
    if (!is_load || !is_wired(facts, ref) || feed_of(facts, poles, ref) != Feed::whole) return;
    if (is_on_somewhere(facts, ref)) return;
    findings.push_back(make_diagnostic(DiagnosticId::load_never_on, part.origin.table,
                                       say_inside(facts.build, ref) + " is on in no situation",
                                       "add the situation that turns it on, or see what starves it"));
  });
}

}  // namespace loomfolio::rules
