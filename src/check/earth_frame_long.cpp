// SPDX-License-Identifier: MIT
// An earth whose current goes home through more than a metre of frame - tubes, welds, bolts and bearings - that nobody has measured.
// The solver takes 2 mohm for the frame; that is meant for a bolt near the battery's strap. A metre is common practice, no source.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

namespace {

constexpr Metres most_frame{1.0};
constexpr Amperes least_current{1.0};

/// Points joined to a battery's earthed pole by wires, without the frame.
std::vector<bool> find_strapped(const Facts& facts) {
  std::vector<PathPoint> poles;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    poles.push_back(facts.paths.points(facts.build, ref)[facts.build.electrics.is_positive_earth ? 0 : 1]);
  });
  const PathPoint frame = facts.paths.frame;
  return reach(facts.paths, poles, [&](const Bridge& bridge) {
    return is_plain_metal(facts.build, bridge) && bridge.a != frame && bridge.b != frame;
  });
}

struct FrameLoad {
  Amperes amperes;
  const Situation* situation = nullptr;
};

/// The most that the wires of an earth bring to it together.
FrameLoad greatest_load(const Facts& facts, const Earth& earth) {
  FrameLoad most;
  for (const SettledSituation& settled : settled_situations(facts)) {
    Amperes sum;
    for (const WireId id : facts.wires_at[earth.terminal.at()]) {
      const Amperes amperes = settled.solution->wire_amperes[id.at()];
      sum += facts.build.wire(id).to == earth.terminal ? amperes : -amperes;
    }
    sum = Amperes(std::fabs(sum.number()));
    if (sum > most.amperes) most = {sum, settled.situation};
  }
  return most;
}

}  // namespace

void earth_frame_long(const Facts& facts, Diagnostics& findings) {
  const std::vector<bool> is_strapped = find_strapped(facts);
  const auto place = [&](const Earth& earth) { return facts.build.zones[earth.zone.at()].place; };
  for (const Earth& earth : facts.build.earths) {
    if (earth.resistance || is_strapped[earth.terminal.at()]) continue;
    const Earth* strap = nullptr;
    for (const Earth& other : facts.build.earths) {
      if (!is_strapped[other.terminal.at()]) continue;
      const auto off = [&](const Earth& e) { return std::fabs((place(e) - place(earth)).number()); };
      if (strap == nullptr || off(other) < off(*strap)) strap = &other;
    }
    if (strap == nullptr) continue;
    const Metres frame(std::fabs((place(*strap) - place(earth)).number()));
    const FrameLoad load = greatest_load(facts, earth);
    if (frame <= most_frame || load.amperes < least_current) continue;
    Diagnostic finding = make_diagnostic(
        DiagnosticId::earth_frame_long, earth.origin.table,
        "earth `" + earth.id + "` sends " + say(load.amperes) + " home through " + say(frame) + " of frame in " +
            say_situation(*load.situation) + "; over " + say(most_frame) + " its resistance should be known",
        "run an earth wire to the battery's strap, or measure that way and give `resistance`");
    add_note(finding, strap->origin.table, "the battery's strap ends at earth `" + strap->id + "`");
    findings.push_back(std::move(finding));
  }
}

}  // namespace loomfolio::rules
