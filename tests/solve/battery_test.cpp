// SPDX-License-Identifier: MIT
#include "solve/battery.h"

#include <doctest/doctest.h>

#include <cmath>

#include "solve/build_maker.h"
#include "solve/meter.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

BuildMaker machine() {
  BuildMaker m;
  Element cells = battery(0);
  cells.inside.resistance = std::nullopt;
  cells.inside.cranking = Amperes(200);
  cells.inside.capacity = AmpereHours(12);
  m.part("battery", {"+", "-"}, {cells}, {TerminalForm::stud});
  Element clock = load("clock", {"+", "-"}, 0.003);
  clock.inside.law = "constant-current";
  m.part("clock", {"+", "-"}, {clock});
  Element charger = element(InsideType::charger, "regulator", {"+", "-"});
  charger.inside.power = Watts(284);
  charger.inside.at_voltage = Volts(14.2);
  charger.inside.only_when = "running";
  m.part("regulator", {"+", "-"}, {charger});
  Element motor = element(InsideType::motor, "motor", {"+", "-"});
  motor.inside.current = Amperes(120);
  motor.inside.at_voltage = Volts(10);
  m.part("starter", {"+", "-"}, {motor}, {TerminalForm::stud});
  m.build.kinds.back().group = "starting";
  m.part("switch", {"a", "b"}, {make_switch({"a", "b"})}, {TerminalForm::stud});
  m.build.parts.back().insides[0].resistance = Ohms(0.001);
  m.part("lamp", {"+", "-"}, {load("lamp", {"+", "-"}, 10, 14)});
  m.part("key", {"a", "b"}, {make_switch({"a", "b"})});
  m.wire("battery.+", "switch.a", 16, 0.4);
  m.wire("switch.b", "starter.+", 16, 0.6);
  m.wire("starter.-", "battery.-", 16, 0.5);
  m.wire("battery.+", "clock.+");
  m.wire("clock.-", "battery.-");
  m.wire("regulator.+", "battery.+", 4);
  m.wire("regulator.-", "battery.-", 4);
  m.wire("battery.+", "key.a", 2.5);
  m.wire("key.b", "lamp.+", 2.5);
  m.wire("lamp.-", "battery.-", 2.5);
  m.situation("cranking", {{"switch", "on"}}, EngineState::cranking);
  m.situation("riding", {{"key", "on"}}, EngineState::running);
  return m;
}

}  // namespace

TEST_CASE("days to half charge: C x 0.5 / (I x 24), derived table") {
  CHECK(days_to_half(AmpereHours(12), Amperes(0.001)) == doctest::Approx(250));
  CHECK(days_to_half(AmpereHours(12), Amperes(0.003)) == doctest::Approx(83.3).epsilon(1e-3));
  CHECK(days_to_half(AmpereHours(12), Amperes(0.025)) == doctest::Approx(10));
  CHECK(days_to_half(AmpereHours(8), Amperes(0.010)) == doctest::Approx(16.7).epsilon(2e-3));
  CHECK(std::isinf(days_to_half(AmpereHours(8), Amperes(0))));
}

TEST_CASE("days to half charge: the other rows of the derived table") {
  struct Row {
    double hours, milliamperes, days;
  };
  for (const Row& row : {Row{12, 1, 250}, Row{12, 3, 83.3}, Row{12, 10, 25}, Row{12, 25, 10}, Row{8, 1, 166.7},
                         Row{8, 3, 55.6}, Row{8, 10, 16.7}, Row{8, 25, 6.7}})
    CHECK(days_to_half(AmpereHours(row.hours), Amperes(row.milliamperes / 1000)) ==
          doctest::Approx(row.days).epsilon(0.006));
}

TEST_CASE("rest volts: every row of the trade table (flooded) and of the owner's manual (sealed)") {
  struct Row {
    BatteryType type;
    double charge, volts;
  };
  for (const Row& row :
       {Row{BatteryType::flooded, 1, 12.7}, Row{BatteryType::flooded, 0.75, 12.4}, Row{BatteryType::flooded, 0.5, 12.2},
        Row{BatteryType::flooded, 0.25, 12.0}, Row{BatteryType::flooded, 0, 11.9}, Row{BatteryType::sealed, 1, 12.8},
        Row{BatteryType::sealed, 0.75, 12.6}, Row{BatteryType::sealed, 0.5, 12.3},
        Row{BatteryType::sealed, 0.25, 12.0}}) {
    CHECK(rest_volts(row.type, row.charge, Volts(12)).number() == doctest::Approx(row.volts));
    CHECK(charge_from_rest_volts(row.type, Volts(row.volts), Volts(12)) == doctest::Approx(row.charge));
  }
}

TEST_CASE("rest volts and charge: trade table (flooded) and an owner's manual (sealed)") {
  CHECK(rest_volts(BatteryType::flooded, 1, Volts(12)).number() == doctest::Approx(12.7));
  CHECK(rest_volts(BatteryType::flooded, 0.5, Volts(12)).number() == doctest::Approx(12.2));
  CHECK(rest_volts(BatteryType::sealed, 0.75, Volts(12)).number() == doctest::Approx(12.6));
  CHECK(rest_volts(BatteryType::flooded, 0.25, Volts(6)).number() == doctest::Approx(6.0));
  CHECK(charge_from_rest_volts(BatteryType::sealed, Volts(12.3), Volts(12)) == doctest::Approx(0.5));
  CHECK(charge_from_rest_volts(BatteryType::flooded, Volts(13.5), Volts(12)) == 1);
}

TEST_CASE("a machine that never cranks is taken to need half its charge; one that cannot crank has no days") {
  BuildMaker m = machine();
  m.build.situations.erase(m.build.situations.begin());
  const BatteryStudy never = study_battery(m.build, solve_all(m.build));
  CHECK(never.rest->least_charge == 0.5);
  CHECK(never.rest->days_to_no_crank == doctest::Approx(71.4).epsilon(1e-3));
  BuildMaker weak = machine();
  weak.build.electrics.cranking = Volts(12);
  const BatteryStudy dead = study_battery(weak.build, solve_all(weak.build));
  CHECK(dead.rest->least_charge == 1);
  CHECK(dead.rest->days_to_no_crank == 0);
}

TEST_CASE("rest drain, charging balance and cranking volts of a small machine") {
  const BuildMaker m = machine();
  const BatteryStudy s = study_battery(m.build, solve_all(m.build));
  REQUIRE(s.rest);
  CHECK(s.rest->drain.number() == doctest::Approx(0.003).epsilon(0.01));
  CHECK(s.rest->days_to_half == doctest::Approx(83.3).epsilon(0.01));
  CHECK(s.rest->days_standing < s.rest->days_to_half);
  // The days are those of the charge as it is printed, in tenths.
  CHECK(std::abs(s.rest->least_charge * 10 - std::round(s.rest->least_charge * 10)) < 1e-9);
  const double hours = s.rest->capacity.number() * (1 - s.rest->least_charge) / (s.rest->drain + s.rest->self).number();
  CHECK(s.rest->days_to_no_crank == doctest::Approx(hours / 24));
  REQUIRE(s.riding.size() == 1);
  // 1.4 ohm, and 2 m of 2.5 mm2, at 13.9 V: 9.6 A; the clock's 3 mA.
  CHECK(s.riding[0].loads.number() == doctest::Approx(9.64).epsilon(0.005));
  CHECK((s.riding[0].given - s.riding[0].loads).number() == doctest::Approx(s.riding[0].battery.number()));
  CHECK(s.riding[0].most.number() == doctest::Approx(20));
  CHECK(s.riding[0].battery.number() > 0.5);
  REQUIRE(s.cranking.size() == 1);
  const CrankingVolts& c = s.cranking[0];
  // By hand: 12.6 V over 15 mohm (3.0 / 200) at 25 degC, 83.3 mohm of motor, and about 3 mohm of cable, joints and
  // switch.
  CHECK(c.warm_amperes.number() == doctest::Approx(12.6 / (0.015 + 0.0833 + 0.0031)).epsilon(0.01));
  CHECK(c.warm_battery.number() == doctest::Approx(12.6 - 0.015 * c.warm_amperes.number()).epsilon(1e-3));
  // Cold: 5.1 / 200 = 25.5 mohm.
  CHECK(c.cold_battery.number() == doctest::Approx(12.6 - 0.0255 * c.cold_amperes.number()).epsilon(1e-3));
  // From full charge down: rest volts fall 0.5 V to half (12.7 to 12.2, trade table), resistance rises by a half (from
  // memory). At half: 12.1 V over 22.5 + 83.3 + 3.1 mohm are 111.1 A, which leave 12.1 - 2.50 = 9.60 V: the build's own
  // limit of 9.6 V.
  CHECK(s.rest->least_charge == doctest::Approx(0.50).epsilon(0.05));
  // 6 Ah by 3 mA and 12 Ah x 0.03 / 720 h = 0.5 mA: 71.4 days.
  CHECK(s.rest->days_to_no_crank == doctest::Approx((1 - s.rest->least_charge) * 12 / (0.0035 * 24)).epsilon(1e-3));
  CHECK(s.rest->days_to_no_crank == doctest::Approx(71.4).epsilon(0.06));
  CHECK(c.cold_motor < c.warm_motor);
  CHECK((c.feed_drop + c.return_drop + c.warm_motor).number() == doctest::Approx(c.warm_battery.number()));
}

TEST_CASE("a battery whose ohms are stated: at -18 degC 1.7 times them, 5.1 V against 3.0 V (EN 50342; the 3.0 from memory)") {
  BuildMaker m = machine();
  for (Inside& inside : m.build.parts.front().insides) inside.resistance = Ohms(0.020);
  const BatteryStudy s = study_battery(m.build, solve_all(m.build));
  REQUIRE(s.cranking.size() == 1);
  const CrankingVolts& c = s.cranking[0];
  CHECK(c.warm_battery.number() == doctest::Approx(12.6 - 0.020 * c.warm_amperes.number()).epsilon(1e-3));
  CHECK(c.cold_battery.number() == doctest::Approx(12.6 - 0.034 * c.cold_amperes.number()).epsilon(1e-3));
}

TEST_CASE("what a battery loses by itself: 3 % of 12 Ah in 720 hours is half a milliampere") {
  const BuildMaker m = machine();
  CHECK(study_battery(m.build, solve_all(m.build)).rest->self.number() == doctest::Approx(0.0005));
}

TEST_CASE("two 6 V batteries in series are one of 12 V: the same amperes, volts and days, and the black probe at the frame") {
  const BuildMaker one = machine();
  BuildMaker two = machine();
  Inside& upper = two.build.parts.front().insides.front();
  upper.at_voltage = Volts(6);
  two.build.kinds.front().insides.front().at_voltage = Volts(6);
  Element cells = battery(0);
  cells.inside.resistance = std::nullopt;
  cells.inside.cranking = Amperes(200);
  cells.inside.capacity = AmpereHours(12);
  cells.inside.at_voltage = Volts(6);
  two.part("lower", {"+", "-"}, {cells}, {TerminalForm::stud});
  const TerminalId between = two.find("battery.-"), earthed = two.find("lower.-");
  for (Wire& wire : two.build.wires) {
    if (wire.from == between) wire.from = earthed;
    if (wire.to == between) wire.to = earthed;
  }
  two.wire("battery.-", "lower.+", 95, 0.01);
  const auto solutions = solve_all(two.build);
  const BatteryStudy a = study_battery(one.build, solve_all(one.build)), b = study_battery(two.build, solutions);
  REQUIRE(b.cranking.size() == 1);
  CHECK(b.cranking[0].warm_amperes.number() == doctest::Approx(a.cranking[0].warm_amperes.number()).epsilon(3e-3));
  CHECK(b.cranking[0].cold_amperes.number() == doctest::Approx(a.cranking[0].cold_amperes.number()).epsilon(3e-3));
  CHECK(b.cranking[0].warm_battery.number() == doctest::Approx(a.cranking[0].warm_battery.number()).epsilon(3e-3));
  CHECK(b.rest->capacity.number() == doctest::Approx(12));
  CHECK(b.rest->drain.number() == doctest::Approx(0.003).epsilon(0.01));
  CHECK(b.rest->least_charge == doctest::Approx(a.rest->least_charge).epsilon(0.03));
  CHECK(b.riding[0].battery.number() == doctest::Approx(a.riding[0].battery.number()).epsilon(3e-3));
  CHECK(earthed_pole(two.build) == earthed);
  CHECK(live_pole(two.build) == two.find("battery.+"));
  CHECK(solutions[1].terminal_volts[between.at()].number() == doctest::Approx(7).epsilon(0.05));
  CHECK(solutions[1].terminal_volts[earthed.at()].number() == 0);
}
