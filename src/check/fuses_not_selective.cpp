// SPDX-License-Identifier: MIT
// Two fuses in series: proven selective when, for every current up to the dead short behind the lower, the lower opens at
// its slowest before the upper at its quickest. Not proven is not disproved: the gates of a family are wide, and a maker's
// curve may prove what they cannot. So the rule speaks only of pairs that also fail the rule of thumb for one family, a
// ratio of 2:1 (from memory); the fuse chart lists all that is not proven.
#include "check/guarded.h"
#include "check/rules.h"
#include "solve/fuse_refs.h"

namespace loomfolio::rules {

constexpr double enough_ratio = 2;

namespace {

double ratio_of(const Build& build, const FusePair& pair) {
  const auto rating = [&](InsideRef fuse) { return rating_of_fuse(build.part(fuse.part), inside_of(build, fuse)); };
  return rating(pair.upper) / rating(pair.lower);
}

}  // namespace

void fuses_not_selective(const Facts& facts, Diagnostics& findings) {
  if (!facts.protection) return;
  for (const FusePair& pair : facts.protection->pairs) {
    if (pair.selectivity == Selectivity::proven || ratio_of(facts.build, pair) >= enough_ratio) continue;
    const Part& upper = facts.build.part(pair.upper.part);
    Diagnostic finding = make_diagnostic(
        DiagnosticId::fuses_not_selective, rating_place(upper, inside_of(facts.build, pair.upper)),
        "a short behind " + say_fuse(facts.build, pair.lower) + " may open " + say_fuse(facts.build, pair.upper) +
            " too: from " + say(pair.fails_from) + " on it is not proven that only the lower one opens",
        "keep the upper fuse at twice the lower, or give both makers' curves in [[fuse_curve]]");
    add_note(finding, facts.build.part(pair.lower.part).origin.table, "the lower fuse");
    findings.push_back(std::move(finding));
  }
}

}  // namespace loomfolio::rules
