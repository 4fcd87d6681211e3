// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <cmath>

#include "solve/build_maker.h"
#include "solve/meter.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

BuildMaker bench() {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  m.part("switch", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.part("spare", {"x", "y"}, {resistor("r", {"x", "y"}, 5)});
  m.part("diode", {"A", "C"}, {element(InsideType::diode, "diode", {"A", "C"})});
  m.wire("battery.+", "switch.a");
  m.wire("switch.b", "lamp.+");
  m.wire("lamp.-", "battery.-");
  m.situation("off");
  m.situation("on", {{"switch", "on"}});
  return m;
}

MeterAnswer ask(const BuildMaker& m, int situation, const char* where) {
  std::string unknown;
  const auto place = find_meter_place(m.build, where, unknown);
  REQUIRE(place);
  return read_meter(m.build, solve_situation(m.build, SituationId{situation}), *place);
}

}  // namespace

TEST_CASE("volts at a terminal, between two, amperes through a wire") {
  const BuildMaker m = bench();
  CHECK(ask(m, 1, "lamp.+").number == doctest::Approx(12.4).epsilon(0.01));
  CHECK(ask(m, 1, "lamp.+ lamp.-").number < ask(m, 1, "lamp.+").number);
  CHECK(ask(m, 1, "battery.- battery.+").number == doctest::Approx(-12.56).epsilon(0.001));
  CHECK(ask(m, 1, "wire 2").number == doctest::Approx(1.88).epsilon(0.02));
  CHECK(ask(m, 0, "wire 2").number == doctest::Approx(0));
}

TEST_CASE("a place that nothing holds reads nothing, and the answer says that it floats") {
  const BuildMaker m = bench();
  const MeterAnswer answer = ask(m, 0, "spare.x");
  CHECK(answer.is_floating);
  CHECK(answer.number == doctest::Approx(0));
}

TEST_CASE("ohms: a bulb reads a tenth of its hot resistance, an open switch nothing, a diode is shut to the meter") {
  const BuildMaker m = bench();
  // P21W class lamp: hot 6.88 ohm, cold 0.69.
  CHECK(ask(m, 0, "ohms lamp.+ lamp.-").number == doctest::Approx(0.688).epsilon(0.01));
  CHECK(std::isinf(ask(m, 0, "ohms switch.a switch.b").number));
  CHECK(ask(m, 1, "ohms switch.a switch.b").number == doctest::Approx(0.01).epsilon(0.02));
  CHECK(ask(m, 0, "ohms spare.x spare.y").number == doctest::Approx(5).epsilon(1e-4));
  CHECK(std::isinf(ask(m, 0, "ohms diode.A diode.C").number));
}

TEST_CASE("words that name no place") {
  const BuildMaker m = bench();
  std::string unknown;
  CHECK(!find_meter_place(m.build, "lamp.x", unknown));
  CHECK(unknown == "lamp.x");
  CHECK(!find_meter_place(m.build, "wire 99", unknown));
  CHECK(unknown == "99");
  CHECK(!find_meter_place(m.build, "", unknown));
  CHECK(!find_meter_place(m.build, "ohms lamp.+", unknown));
  CHECK(earthed_pole(m.build) == m.find("battery.-"));
  CHECK(live_pole(m.build) == m.find("battery.+"));
}
