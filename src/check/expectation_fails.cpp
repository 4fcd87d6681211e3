// SPDX-License-Identifier: MIT
// What a situation expects and the solved circuit does not do, with the way that starves or feeds it.
#include "base/text.h"
#include "check/rules.h"
#include "check/ways.h"
#include "model/spec_words.h"

namespace loomfolio::rules {

namespace {

bool agrees(Expected expected, Expected seen) {
  return expected == seen || (expected == Expected::on && seen == Expected::charging);
}

/// Notes at whatever stands open, and at loads in series.
void explain_starved(const Seen& seen, const Way& way, std::string_view pole, Diagnostic& finding) {
  if (!way.found) add_note(finding, {}, "no way of wires and switches leads to " + std::string(pole));
  for (const InsideRef open : way.open)
    add_note(finding, seen.facts.build.part(open.part).origin.table,
             "its way to " + std::string(pole) + " stands open at " + say_inside(seen.facts.build, open));
  for (const InsideRef load : way.loads)
    add_note(finding, seen.facts.build.part(load.part).origin.table,
             "its way to " + std::string(pole) + " leads through load " + say_inside(seen.facts.build, load));
}

void explain_fed(const Seen& seen, const LoadWays& ways, Diagnostic& finding) {
  const Build& build = seen.facts.build;
  const std::string supply = say_way(build, seen.facts.paths, ways.to_supply);
  const std::string earth = say_way(build, seen.facts.paths, ways.to_earth);
  add_note(finding, {}, "it is fed " + (supply.empty() ? std::string("by wires alone") : "through " + supply));
  add_note(finding, {}, "it returns " + (earth.empty() ? std::string("by wires alone") : "through " + earth));
}

/// Elements whose state a person sees as that of the part.
bool shows_state(const Inside& inside) {
  switch (inside.type) {
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
    case InsideType::charger:
    case InsideType::output:
      return true;
    default:
      return false;
  }
}

const InsideState& state_of(const Seen& seen, InsideRef ref) {
  return seen.solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
}

/// The element that decides about the expectation: itself, or for a part as a whole the first that is on, else its
/// first.
InsideRef deciding_element(const Seen& seen, const Expectation& expectation) {
  if (expectation.what.inside >= 0) return expectation.what;
  InsideRef first;
  const Part& part = seen.facts.build.part(expectation.what.part);
  for (std::size_t i = 0; i < part.insides.size(); ++i) {
    const InsideRef ref{expectation.what.part, static_cast<int>(i)};
    if (!shows_state(part.insides[i])) continue;
    if (observed(part.insides[i], state_of(seen, ref)) != Expected::off) return ref;
    if (first.inside < 0) first = ref;
  }
  return first;
}

void compare(const Seen& seen, const Expectation& expectation, Diagnostics& findings) {
  const Build& build = seen.facts.build;
  const InsideRef what = deciding_element(seen, expectation);
  if (what.inside < 0) return;
  const Inside& inside = inside_of(build, what);
  const InsideState& state = state_of(seen, what);
  const Expected found = observed(inside, state);
  if (agrees(expectation.state, found)) return;
  Diagnostic finding = make_diagnostic(DiagnosticId::expectation_fails, expectation.where,
                                       say_inside(build, what) + " is " + std::string(spec_word(found)) + " in " +
                                           say_situation(seen.situation) + "; " +
                                           std::string(spec_word(expectation.state)) + " is expected",
                                       "mend the wiring, or the expectation");
  const bool is_load = shows_state(inside) && inside.type != InsideType::charger && inside.type != InsideType::output;
  if (is_load) {
    const LoadWays ways = find_load_ways(seen, what);
    if (found == Expected::off) {
      explain_starved(seen, ways.to_supply, "the supply", finding);
      explain_starved(seen, ways.to_earth, "earth", finding);
    } else {
      explain_fed(seen, ways, finding);
    }
    add_note(finding, {}, "it has " + say(state.volts) + " over it and carries " + say(state.amperes));
  }
  findings.push_back(std::move(finding));
}

}  // namespace

void expectation_fails(const Facts& facts, Diagnostics& findings) {
  for (const SettledSituation& settled : settled_situations(facts))
    for (const Expectation& expectation : settled.situation->expectations)
      compare({facts, *settled.situation, *settled.solution}, expectation, findings);
}

}  // namespace loomfolio::rules
