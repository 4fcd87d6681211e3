// SPDX-License-Identifier: MIT
// A lamp, motor or other load that no path joins to both the supply and earth can never work.
#include "check/rules.h"

namespace loomfolio::rules {

void load_without_return(const Facts& facts, Diagnostics& findings) {
  const Poles poles = reach_poles(facts);
  if (!poles.any_source) return;
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::load && inside.type != InsideType::lamp && inside.type != InsideType::motor) return;
    const Feed feed = feed_of(facts, poles, ref);
    if (feed == Feed::whole || feed == Feed::unused) return;
    findings.push_back(make_diagnostic(DiagnosticId::load_without_return, part.origin.table,
                                       "load " + say_inside(facts.build, ref) + say_missing(feed),
                                       "wire its other end, or see whether a switch on the way can close"));
  });
}

}  // namespace loomfolio::rules
