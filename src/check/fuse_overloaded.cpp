// SPDX-License-Identifier: MIT
// What a fuse carries in the worst situation against its rating: at most 75 % for a load that lasts (trade practice: a
// fuse of 125 % of the load). To 0.80 a note, above it a warning, above the rating an error. Cranking does not last. A
// fuse that its situations leave in peace may still blow with everything on at once. That is said from where it is sure to
// open (135 % of a blade's rating): buttons and brakes do not last, and the fuse chart prints the figure in any case.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "check/rules.h"

namespace loomfolio::rules {

constexpr double lasting_share = 0.75, most_share = 0.80, whole = 1.0;

namespace {

/// The situation in which it carries most; those that crank are passed over.
Peak lasting_peak(const Facts& facts, InsideRef ref) {
  Peak peak;
  for (const SettledSituation& settled : settled_situations(facts)) {
    if (settled.situation->engine == EngineState::cranking) continue;
    const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    const Amperes amperes(std::fabs(state.amperes.number()));
    if (!peak.situation || amperes > peak.amperes) peak = {settled.situation, amperes, state.volts};
  }
  return peak;
}

const FuseStudy* study_of_fuse(const Facts& facts, InsideRef ref) {
  if (!facts.protection) return nullptr;
  for (const FuseStudy& study : facts.protection->fuses)
    if (study.fuse == ref) return &study;
  return nullptr;
}

std::string say_moved(const Facts& facts, const FuseStudy& study) {
  std::string said = say_situation(facts.build.situations[study.at_once_from.at()]);
  for (const Setting& setting : study.at_once_moved)
    said += (&setting == study.at_once_moved.data() ? " with " : ", ") + say_inside(facts.build, setting.actuator) +
            " at `" +
            inside_of(facts.build, setting.actuator).positions[static_cast<std::size_t>(setting.position)].name + "`";
  return said;
}

void add_at_once(const Facts& facts, InsideRef ref, const Part& part, Diagnostics& findings) {
  const FuseStudy* study = study_of_fuse(facts, ref);
  if (study == nullptr || !study->at_once_from.is_set() ||
      study->at_once < surely_opens_from(*study->family, study->rating))
    return;
  findings.push_back(make_diagnostic(
      DiagnosticId::fuse_overloaded, rating_place(part, inside_of(facts.build, ref)),
      "fuse " + say_inside(facts.build, ref) + " carries " + say(study->at_once) + " when all that can be on together is on, " +
          shortest(study->at_once / study->rating * 100, 0) + " % of its " + say(study->rating) + ": " +
          say_moved(facts, *study),
      "fit a larger fuse if every wire behind it allows, split the load, or tell the rider what not to switch on together"));
}

}  // namespace

void fuse_overloaded(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::fuse || !inside.rating || !part.fuse_choice.empty()) return;
    const Peak peak = lasting_peak(facts, ref);
    if (!peak.situation) return;
    const double share = peak.amperes / *inside.rating;
    if (share <= whole) add_at_once(facts, ref, part, findings);
    if (share <= lasting_share) return;
    Diagnostic finding =
        make_diagnostic(DiagnosticId::fuse_overloaded, rating_place(part, inside),
                        "fuse " + say_inside(facts.build, ref) + " carries " + say(peak.amperes) + " in " +
                            say_situation(*peak.situation) + ", " + shortest(share * 100, 0) + " % of its " +
                            say(*inside.rating) + "; 75 % is the most for a load that lasts",
                        "fit a larger fuse if every wire behind it allows, or split the load");
    finding.severity = share > whole ? Severity::error : share > most_share ? Severity::warning : Severity::note;
    findings.push_back(std::move(finding));
  });
}

}  // namespace loomfolio::rules
