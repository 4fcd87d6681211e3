// SPDX-License-Identifier: MIT
// Fuses and wires: verdicts on small builds whose currents follow by hand, and fuse pairs from the gates alone.
#include "solve/protection.h"

#include <doctest/doctest.h>

#include <cmath>

#include "solve/small_builds.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

double least_ratio(const char* upper, const char* lower) {
  // Smallest rating ratio at which the lower fuse (10 A) is proven to open first, up to 1000 A.
  for (double ratio = 1; ratio < 12; ratio += 0.005) {
    Amperes fails;
    if (judge_pair(fuse_family(upper, Amperes(20)), Amperes(10 * ratio), fuse_family(lower, Amperes(10)), Amperes(10),
                   Amperes(1000), fails) == Selectivity::proven)
      return ratio;
  }
  return 12;
}

ProtectionStudy study(const BuildMaker& m) { return study_protection(m.build, solve_all(m.build)); }

}  // namespace

TEST_CASE("fuses in series, from the gates alone: ratio at which the lower is proven to open first") {
  CHECK(least_ratio("blade_regular", "blade_regular") == doctest::Approx(2.76).epsilon(0.01));
  CHECK(least_ratio("blade_maxi", "blade_regular") == doctest::Approx(1.59).epsilon(0.01));
  CHECK(least_ratio("blade_maxi", "blade_maxi") > 5);
  Amperes fails;
  const FuseFamily& c = fuse_family("blade_regular", Amperes(10));
  CHECK(judge_pair(c, Amperes(30), c, Amperes(10), Amperes(1000), fails) == Selectivity::proven);
  CHECK(judge_pair(c, Amperes(30), c, Amperes(15), Amperes(1000), fails) == Selectivity::not_proven);
  CHECK(fails.number() > 15);
}

TEST_CASE("a lamp behind a fuse: the short's current by hand, and every wire's verdict") {
  const BuildMaker m = fused_lamp({10, 1.0, 1.0});
  const ProtectionStudy s = study(m);
  REQUIRE(s.wires.size() == 4);
  CHECK(s.wires[0].verdict == WireVerdict::earth_side);
  CHECK(s.wires[1].verdict == WireVerdict::unfused);
  CHECK(s.wires[2].verdict == WireVerdict::is_protected);
  CHECK(s.wires[2].fuse == m.inside("fuse", "fuse"));
  CHECK(s.wires[3].verdict == WireVerdict::earth_side);
  // 12 V over, in mohm: battery 12, strap 0.6, E1 1, feed 1.8, fuse hot 7.70 x 1.44, wire 19.5 x 1.334 (105 degC), its
  // joints 2.8, the short 1: 56.3 in all.
  CHECK(s.wires[2].fault.number() == doctest::Approx(12 / 0.0563).epsilon(0.01));
  CHECK(s.wires[2].prospective > s.wires[2].fault);
  CHECK(s.wires[2].opens < s.wires[2].stands);
  REQUIRE(s.fuses.size() == 1);
  CHECK(s.fuses[0].load.number() == doctest::Approx(1.88).epsilon(0.03));
  CHECK(s.fuses[0].load_share == doctest::Approx(0.188).epsilon(0.03));
  CHECK(!s.fuses[0].is_in_earth_side);
  REQUIRE(s.fuses[0].stops.size() == 1);
  CHECK(s.fuses[0].stops[0].what == m.inside("lamp", "lamp"));
  // Cold filament ten times 1.88 A less the loop, 5 ms: under a fifth of 0.72 In2.
  CHECK(s.fuses[0].inrush_share > 0.005);
  CHECK(s.fuses[0].inrush_share < 0.1);
}

TEST_CASE("a fuse too large, a wire too long") {
  CHECK(study(fused_lamp({30, 0.5, 1.0})).wires[2].verdict == WireVerdict::fuse_too_large);
  // 12 m of 0.5 mm2 hot are 0.62 ohm: 18 A through a 15 A fuse, less than the 20.25 A at which it surely opens.
  const WireProtection far = study(fused_lamp({15, 0.5, 12})).wires[2];
  CHECK(far.fault.number() < 20.25);
  CHECK(far.verdict >= WireVerdict::fuse_too_large);
  const WireProtection slow = study(fused_lamp({10, 1.5, 20})).wires[2];
  CHECK(slow.fault.number() < 35);
  CHECK(slow.verdict == WireVerdict::opens_slowly);
}

TEST_CASE("two wires side by side behind one fuse: the fuse carries the short of both, and is judged by that") {
  // One wire alone passes 19 A into a short at its far end, less than the 3.5 x 10 A that open a blade at once; the fuse gets both.
  BuildMaker m = fused_lamp({10, 1.5, 20});
  CHECK(study(m).wires[2].verdict == WireVerdict::opens_slowly);
  const WireId second = m.wire("fuse.out", "lamp.+", 1.5, 20);
  const ProtectionStudy s = study(m);
  for (const WireId wire : {WireId{2}, second}) {
    const WireProtection& found = s.wires[wire.at()];
    CHECK(found.fault.number() < 35);
    CHECK(found.fuse_fault / found.fault == doctest::Approx(2).epsilon(0.01));
    CHECK(found.opens == slowest_opening(*s.fuses[0].family, Amperes(10), found.fuse_fault));
    CHECK(found.verdict == WireVerdict::is_protected);
  }
}

TEST_CASE("a fuse in the earth wire protects nothing, and is found") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)});
  m.part("fuse", {"in", "out"}, {fuse(10)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  m.wire("battery.+", "lamp.+", 1, 1);
  m.wire("lamp.-", "fuse.in", 1, 1);
  m.wire("fuse.out", "E1", 1, 1);
  m.situation("only");
  const ProtectionStudy s = study(m);
  CHECK(s.fuses[0].is_in_earth_side);
  CHECK(s.wires[1].verdict == WireVerdict::unfused);
}

TEST_CASE("a second feed without a fuse keeps the short alive: unfused, although a fuse opens") {
  BuildMaker m = fused_lamp({10, 1.0, 1.0});
  m.part("second", {"+", "-"}, {battery(0.012)});
  m.wire("second.+", "lamp.+", 1.0, 1.0);
  m.wire("second.-", "E1", 6, 0.3);
  CHECK(study(m).wires[2].verdict == WireVerdict::unfused);
}

TEST_CASE(
    "a short beside a load that takes as much itself passes hardly more through the fuse, and the fuse still is above "
    "it") {
  BuildMaker m = fused_lamp({10, 1.0, 1.0});
  m.part("heavy", {"+", "-"}, {resistor("heavy", {"+", "-"}, 0.001)});  // as good as a dead short
  m.wire("fuse.out", "heavy.+", 2.5, 0.3);
  m.wire("heavy.-", "E2", 2.5, 0.3);
  const ProtectionStudy s = study(m);
  CHECK(s.wires[2].verdict == WireVerdict::is_protected);
  CHECK(s.wires[2].fuse == m.inside("fuse", "fuse"));
  // The way to the fuse has none above it all the same.
  CHECK(s.wires[1].verdict == WireVerdict::unfused);
}

TEST_CASE("a control unit's current limit protects its wire; a coil does too") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)});
  m.part("fuse", {"in", "out"}, {fuse(10)});
  Element driver = element(InsideType::output, "driver", {"B", "out", "E", "15"});
  driver.conditions = {{"15", true}};
  driver.inside.rating = Amperes(5);
  m.part("unit", {"B", "out", "E", "15"}, {driver});
  m.part("relay", {"86", "85"}, {coil("coil", {"86", "85"}, 90)});
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  m.wire("battery.+", "fuse.in", 2.5, 0.1);
  m.wire("fuse.out", "unit.B", 1, 0.5);
  const WireId wakes = m.wire("fuse.out", "unit.15", 0.75, 0.5);
  m.wire("unit.E", "E1", 1, 0.3);
  const WireId out = m.wire("unit.out", "relay.86", 0.5, 0.5);
  const WireId low = m.wire("relay.85", "unit.E", 0.75, 0.5);
  m.situation("only");
  const ProtectionStudy s = study(m);
  CHECK(s.wires[out.at()].verdict == WireVerdict::limited);
  CHECK(s.wires[out.at()].fault.number() == doctest::Approx(5).epsilon(1e-3));
  CHECK(s.wires[out.at()].fuse == m.inside("fuse", "fuse"));
  CHECK(s.wires[low.at()].verdict == WireVerdict::earth_side);
  CHECK(s.fuses[0].thinnest == wakes);  // of those that lean on the fuse
}

TEST_CASE("the starter's cable is the usual exception; the way to the first fuse is measured") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
  Element motor = element(InsideType::motor, "motor", {"45", "body"});
  motor.inside.current = Amperes(100);
  motor.inside.at_voltage = Volts(10);
  m.part("relay", {"30", "45"}, {make_switch({"30", "45"})}, {TerminalForm::stud});
  m.part("starter", {"45", "body"}, {motor}, {TerminalForm::stud});
  m.build.kinds.back().group = "starting";
  m.part("fuse", {"in", "out"}, {fuse(20)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  const WireId cable = m.wire("battery.+", "relay.30", 16, 0.4);
  const WireId to_motor = m.wire("relay.45", "starter.45", 16, 0.6);
  const WireId tap = m.wire("relay.30", "fuse.in", 2.5, 0.25);
  m.wire("fuse.out", "lamp.+", 1, 1);
  m.wire("lamp.-", "E1", 1, 1);
  m.situation("cranking", {{"relay", "on"}}, EngineState::cranking);
  const ProtectionStudy s = study(m);
  CHECK(s.wires[cable.at()].verdict == WireVerdict::starter_cable);
  CHECK(s.wires[to_motor.at()].verdict == WireVerdict::starter_cable);
  CHECK(s.wires[tap.at()].verdict == WireVerdict::unfused);
  REQUIRE(!s.leads.empty());
  CHECK(s.leads[0].fuse == m.inside("fuse", "fuse"));
  CHECK(s.leads[0].length.number() == doctest::Approx(0.65));
  CHECK(s.leads[0].wires == std::vector<WireId>{cable, tap});
}

TEST_CASE("a fuse left to the fitter: the rating that suits this load and this wire") {
  BuildMaker m = fused_lamp({15, 1.0, 1.0});
  m.build.parts[1].fuse_choice = {{Amperes(2), Amperes(30)}};
  const ProtectionStudy s = study(m);
  REQUIRE(s.choices.size() == 1);
  const FuseChoice& choice = s.choices[0];
  CHECK(choice.best.number() == 3);  // 1.88 A: 2 A would be 94 %, 3 A is 63 %
  CHECK(choice.rows.front().rating.number() == 2);
  CHECK(choice.rows.back().rating.number() == 30);
  CHECK(choice.rows.back().verdict == WireVerdict::fuse_too_large);
}

TEST_CASE("two fuses in series are found as a pair, upper and lower the right way up") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)});
  m.part("main", {"in", "out"}, {fuse(30)});
  m.part("fuse", {"in", "out"}, {fuse(10)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  m.wire("battery.+", "main.in", 4, 0.15);
  m.wire("main.out", "fuse.in", 2.5, 0.5);
  m.wire("fuse.out", "lamp.+", 1, 1);
  m.wire("lamp.-", "E1", 1, 1);
  m.situation("only");
  const ProtectionStudy s = study(m);
  REQUIRE(s.pairs.size() == 1);
  CHECK(s.pairs[0].upper == m.inside("main", "fuse"));
  CHECK(s.pairs[0].lower == m.inside("fuse", "fuse"));
  CHECK(s.pairs[0].selectivity == Selectivity::proven);
}

TEST_CASE("wire loads: worst current, where, drop, fuse and verdict in one row") {
  const BuildMaker m = fused_lamp({10, 1.0, 1.0});
  const auto loads = find_wire_loads(m.build, solve_all(m.build));
  CHECK(loads[2].worst.number() == doctest::Approx(1.88).epsilon(0.03));
  CHECK(loads[2].situation == SituationId{0});
  CHECK(loads[2].drop.number() == doctest::Approx(loads[2].worst.number() * 0.0225).epsilon(0.1));
  CHECK(loads[2].fuse == m.inside("fuse", "fuse"));
  CHECK(loads[2].verdict == WireVerdict::is_protected);
}

TEST_CASE("a maker's curve given in the spec stands in place of the program's gates, and the study says so") {
  BuildMaker m = fused_lamp({10, 1.0, 1.0});
  const Amperes fault = study(m).wires[2].fault;
  CHECK(study(m).fuses[0].family->set.empty());
  // Opens at 200 % within 10 s and at 1000 % within 1 s: straight in log-log between, constant energy beyond.
  FuseCurve curve;
  curve.family = "blade_regular";
  curve.name = "data sheet";
  curve.breaking = Amperes(150);
  curve.points = {{110, Seconds(360000), {}}, {200, Seconds(5), Seconds(10)}, {1000, Seconds(0.5), Seconds(1)}};
  m.build.fuse_curves = {curve};
  const ProtectionStudy s = study(m);
  CHECK(s.fuses[0].family->set == "data sheet");
  CHECK(s.fuses[0].family->status == FigureStatus::given);
  CHECK(s.fuses[0].family->breaking_capacity.number() == 150);
  CHECK(s.fuses[0].family->id == "blade_regular");
  const double percent = fault.number() * 10;  // of 10 A
  CHECK(percent > 1000);
  CHECK(s.wires[2].opens.number() == doctest::Approx(1 * (1000 / percent) * (1000 / percent)).epsilon(0.01));
  CHECK(s.wires[2].opens > study(fused_lamp({10, 1.0, 1.0})).wires[2].opens);
  // A curve for another family changes nothing.
  m.build.fuse_curves[0].family = "blade_mini";
  CHECK(study(m).fuses[0].family->set.empty());
}

TEST_CASE("two equal fuses side by side are no pair in series, and the wire behind them has a fuse above it") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)});
  m.part("one", {"in", "out"}, {fuse(10)});
  m.part("two", {"in", "out"}, {fuse(10)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.splice("S1");
  m.splice("S2");
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  m.wire("battery.+", "S1", 6, 0.1);
  m.wire("S1", "one.in", 2.5, 0.1);
  m.wire("S1", "two.in", 2.5, 0.1);
  m.wire("one.out", "S2", 2.5, 0.1);
  m.wire("two.out", "S2", 2.5, 0.1);
  const WireId behind = m.wire("S2", "lamp.+", 2.5, 0.5);
  m.wire("lamp.-", "E1", 1, 0.3);
  m.situation("only");
  const ProtectionStudy s = study(m);
  CHECK(s.pairs.empty());
  CHECK(s.wires[behind.at()].fuse.part.is_set());
  CHECK(s.wires[behind.at()].verdict == WireVerdict::is_protected);
}
