// SPDX-License-Identifier: MIT
// What a fuse carries in the worst situation against its rating: at most 75 % for a load that lasts (trade practice: a
// fuse of 125 % of the load). To 0.80 a note, above it a warning, above the rating an error.
#include "base/text.h"
#include "check/rules.h"

namespace loomfolio::rules {

constexpr double lasting_share = 0.75, most_share = 0.80, whole = 1.0;

void fuse_overloaded(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::fuse || !inside.rating || !part.fuse_choice.empty()) return;
    const Peak peak = greatest_amperes(facts, ref);
    if (!peak.situation || peak.situation->engine == EngineState::cranking) return;
    const double share = peak.amperes / *inside.rating;
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
