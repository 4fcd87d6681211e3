// SPDX-License-Identifier: MIT
// Two wires of one colour in the same half of a connector that are not joined: they can be swapped unseen.

#include "check/rules.h"

namespace loomfolio::rules {

namespace {

using Half = std::vector<std::pair<WireId, TerminalId>>;

/// Leads of one generator: any of them may go to any input of the regulator.
bool are_interchangeable(const Facts& facts, int net, int other_net) {
  bool found = false;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::charger) return;
    const std::vector<PathPoint> points = facts.paths.points(facts.build, ref);
    bool has = false, has_other = false;
    for (const int node : inside.fed_by) {
      const int fed = facts.paths.net[static_cast<std::size_t>(points[static_cast<std::size_t>(node)])];
      has = has || fed == net;
      has_other = has_other || fed == other_net;
    }
    found = found || (has && has_other);
  });
  return found;
}

void compare_half(const Facts& facts, const Half& half, Diagnostics& findings) {
  const auto net = [&](TerminalId t) { return facts.paths.net[t.at()]; };
  for (std::size_t i = 0; i < half.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const Wire& one = facts.build.wire(half[j].first);
      const Wire& other = facts.build.wire(half[i].first);
      if (one.colour.text() != other.colour.text() || net(half[i].second) == net(half[j].second)) continue;
      if (are_interchangeable(facts, net(half[i].second), net(half[j].second))) continue;
      Diagnostic finding = make_diagnostic(
          DiagnosticId::colour_used_twice, other.origin.key("colour"),
          "wires `" + one.id + "` and `" + other.id + "` are both " + one.colour.text() + " in one connector, at " +
              say_terminal(facts.build, half[j].second) + " and " + say_terminal(facts.build, half[i].second),
          "give one of them another colour or a stripe");
      add_note(finding, one.origin.key("colour"), "the first is here");
      findings.push_back(std::move(finding));
      break;
    }
}

}  // namespace

void colour_used_twice(const Facts& facts, Diagnostics& findings) {
  for (const Part& part : facts.build.parts) {
    if (!facts.build.kind_of(part).is_connector) continue;
    Half left, right;
    for (std::size_t k = 0; k < part.terminals.size(); ++k)
      for (const WireId wire : facts.wires_at[part.terminals[k].at()])
        (facts.build.kind_of(part).terminals[k].side == Side::left ? left : right)
            .emplace_back(wire, part.terminals[k]);
    compare_half(facts, left, findings);
    compare_half(facts, right, findings);
  }
}

}  // namespace loomfolio::rules
