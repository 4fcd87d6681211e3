// SPDX-License-Identifier: MIT
// Situations solved on small builds: what a person would see.
#include <doctest/doctest.h>

#include <cmath>

#include "solve/build_maker.h"
#include "solve/circuit.h"
#include "solve/solution.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

const InsideState& state(const BuildMaker& m, const Solution& s, const std::string& part, const std::string& id) {
  const InsideRef ref = m.inside(part, id);
  return s.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
}
double volts(const BuildMaker& m, const Solution& s, const std::string& terminal) {
  return s.terminal_volts[m.find(terminal).at()].number();
}

/// Battery, fuse, relay worked by a switch, lamp; all earths on the battery's minus.
BuildMaker relay_lamp() {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)}, {TerminalForm::stud});
  m.part("fuse", {"in", "out"}, {fuse(15)});
  m.part("switch", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("relay", {"30", "87", "86", "85"}, {coil("coil", {"86", "85"}, 90), contact("coil", {"30", "87"})});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 68, 13.2)});
  m.wire("battery.+", "fuse.in", 2.5, 0.3);
  m.wire("fuse.out", "relay.30", 2.5, 0.3);
  m.wire("fuse.out", "switch.a", 1, 0.5);
  m.wire("switch.b", "relay.86", 1, 0.5);
  m.wire("relay.85", "battery.-", 1, 0.3);
  m.wire("relay.87", "lamp.+", 2.5, 0.5);
  m.wire("lamp.-", "battery.-", 2.5, 0.5);
  m.situation("off");
  m.situation("on", {{"switch", "on"}});
  return m;
}

}  // namespace

TEST_CASE("a switch works a relay, the relay works a lamp") {
  const BuildMaker m = relay_lamp();
  const auto s = solve_all(m.build);
  REQUIRE(s.size() == 2);
  CHECK(s[0].settling == Settling::settled);
  CHECK(!state(m, s[0], "lamp", "lamp").is_on);
  CHECK(!state(m, s[0], "relay", "coil").is_on);
  CHECK(volts(m, s[0], "relay.30") == doctest::Approx(12.6));
  CHECK(std::abs(volts(m, s[0], "lamp.+")) < 1e-9);
  CHECK(s[1].settling == Settling::settled);
  CHECK(state(m, s[1], "lamp", "lamp").is_on);
  CHECK(!state(m, s[1], "lamp", "lamp").is_dim);
  CHECK(state(m, s[1], "relay", "coil").is_on);
  CHECK(state(m, s[1], "relay", "contact-coil").is_on);
  CHECK(state(m, s[1], "switch", "switch").is_on);
  CHECK(s[1].wire_amperes[0].number() == doctest::Approx(5.0).epsilon(0.05));
  CHECK(s[1].wire_amperes[5].number() == doctest::Approx(state(m, s[1], "lamp", "lamp").amperes.number()));
  CHECK(observed(m.build.parts[4].insides[0], state(m, s[1], "lamp", "lamp")) == Expected::on);
}

TEST_CASE("positive earth: the same machine with its battery turned gives the same currents, volts below zero") {
  BuildMaker m = relay_lamp();
  m.build.electrics.is_positive_earth = true;
  // The frame is now on battery plus: turn the battery's ends over.
  for (Wire& wire : m.build.wires)
    for (TerminalId* end : {&wire.from, &wire.to}) {
      if (*end == m.find("battery.+")) *end = m.find("battery.-");
      else if (*end == m.find("battery.-")) *end = m.find("battery.+");
    }
  const auto plain = solve_all(relay_lamp().build);
  const auto turned = solve_all(m.build);
  CHECK(state(m, turned[1], "lamp", "lamp").is_on);
  CHECK(volts(m, turned[1], "lamp.+") == doctest::Approx(-volts(m, plain[1], "lamp.+")));
  CHECK(turned[1].wire_amperes[5].number() == doctest::Approx(-plain[1].wire_amperes[5].number()));
}

TEST_CASE("6 V: half the volts of everything") {
  BuildMaker m = relay_lamp();
  m.build.electrics.nominal = Volts(6);
  m.build.electrics.resting = Volts(6.3);
  for (Part& part : m.build.parts)
    for (Inside& inside : part.insides) {
      if (inside.type == InsideType::lamp) inside.at_voltage = Volts(6.6);
      if (inside.type == InsideType::coil) inside.pull_in = std::nullopt, inside.drop_out = std::nullopt, inside.resistance = std::nullopt;
    }
  const auto s = solve_all(m.build);
  CHECK(state(m, s[1], "lamp", "lamp").is_on);
  CHECK(!state(m, s[1], "lamp", "lamp").is_dim);
  // Coil by equal power: 90 ohm / 4; twice the current at half the volts.
  CHECK(state(m, s[1], "relay", "coil").amperes.number() == doctest::Approx(6.2 / 22.5).epsilon(0.03));
}

TEST_CASE("a relay that holds itself: what was pressed before matters") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  m.part("button", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("key", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("relay", {"30", "87", "86", "85"}, {coil("coil", {"86", "85"}, 90), contact("coil", {"30", "87"})});
  m.wire("battery.+", "key.a");
  m.wire("key.b", "button.a");
  m.wire("key.b", "relay.30");
  m.wire("button.b", "relay.86");
  m.wire("relay.87", "relay.86");
  m.wire("relay.85", "battery.-");
  m.situation("key on", {{"key", "on"}});
  m.situation("pressed", {{"key", "on"}, {"button", "on"}}, EngineState::stopped, "key on");
  m.situation("let go", {{"key", "on"}}, EngineState::stopped, "pressed");
  m.situation("key off", {}, EngineState::stopped, "let go");
  const auto s = solve_all(m.build);
  CHECK(!state(m, s[0], "relay", "coil").is_on);
  CHECK(state(m, s[1], "relay", "coil").is_on);
  CHECK(state(m, s[2], "relay", "coil").is_on);
  CHECK(!state(m, s[3], "relay", "coil").is_on);
  CHECK(solve_situation(m.build, SituationId{2}).relays == s[2].relays);
}

TEST_CASE("a relay that opens its own coil chatters, and is named") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  m.part("buzzer", {"30", "87a", "86", "85"}, {coil("coil", {"86", "85"}, 90), contact("coil", {"30", "87a"}, true)});
  m.wire("battery.+", "buzzer.30");
  m.wire("buzzer.87a", "buzzer.86");
  m.wire("buzzer.85", "battery.-");
  m.situation("on");
  const Solution s = solve_situation(m.build, SituationId{0});
  CHECK(s.settling == Settling::chatters);
  CHECK(s.unsettled_by == std::vector<std::string>{"buzzer.coil"});
}

TEST_CASE("two relays that lock each other out: which is quicker decides, and the solver says so") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  for (const std::string id : {"left", "right"})
    m.part(id, {"30", "87a", "86", "85"}, {coil("coil", {"86", "85"}, 90), contact("coil", {"30", "87a"}, true)});
  m.wire("battery.+", "left.30");
  m.wire("battery.+", "right.30");
  m.wire("left.87a", "right.86");
  m.wire("right.87a", "left.86");
  m.wire("left.85", "battery.-");
  m.wire("right.85", "battery.-");
  m.situation("on");
  const Solution s = solve_situation(m.build, SituationId{0});
  CHECK(s.settling == Settling::several_states);
  CHECK(s.unsettled_by == std::vector<std::string>{"left.coil", "right.coil"});
}

TEST_CASE("each device whose state differs is named, a third that one of two rivals feeds too") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  for (const std::string id : {"left", "right"})
    m.part(id, {"30", "87", "87a", "86", "85"},
           {coil("coil", {"86", "85"}, 90), contact("coil", {"30", "87"}), contact("coil", {"30", "87a"}, true)});
  m.part("follower", {"86", "85"}, {coil("coil", {"86", "85"}, 90)});
  m.part("bystander", {"86", "85"}, {coil("coil", {"86", "85"}, 90)});
  for (const std::string id : {"left", "right"}) {
    m.wire("battery.+", id + ".30");
    m.wire(id + ".85", "battery.-");
  }
  m.wire("left.87a", "right.86");
  m.wire("right.87a", "left.86");
  m.wire("right.87", "follower.86");
  m.wire("follower.85", "battery.-");
  m.wire("battery.+", "bystander.86");
  m.wire("bystander.85", "battery.-");
  m.situation("on");
  const Solution s = solve_situation(m.build, SituationId{0});
  CHECK(s.settling == Settling::several_states);
  CHECK(s.unsettled_by == std::vector<std::string>{"left.coil", "right.coil", "follower.coil"});
}

TEST_CASE("a flasher flashes what it feeds and nothing else; without a load it does not flash") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  Element flasher = contact("", {"49", "49a"});
  flasher.inside.id = "flasher";
  flasher.inside.flashes = true;
  m.part("flasher", {"49", "49a"}, {flasher});
  m.part("switch", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("turn", {"+", "-"}, {lamp("lamp", {"+", "-"}, 21)});
  m.part("tail", {"+", "-"}, {lamp("lamp", {"+", "-"}, 5)});
  m.wire("battery.+", "flasher.49");
  m.wire("flasher.49a", "switch.a");
  m.wire("switch.b", "turn.+");
  m.wire("turn.-", "battery.-");
  m.wire("battery.+", "tail.+");
  m.wire("tail.-", "battery.-");
  m.situation("off");
  m.situation("turn", {{"switch", "on"}});
  const auto s = solve_all(m.build);
  CHECK(!state(m, s[0], "turn", "lamp").is_on);
  CHECK(!state(m, s[0], "flasher", "flasher").is_on);
  CHECK(state(m, s[1], "flasher", "flasher").is_on);
  CHECK(state(m, s[1], "turn", "lamp").is_flashing);
  CHECK(state(m, s[1], "tail", "lamp").is_on);
  CHECK(!state(m, s[1], "tail", "lamp").is_flashing);
}

TEST_CASE("a control unit's output: on when its inputs hold, held at its current limit") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  Element horn = element(InsideType::output, "horn-driver", {"B", "out", "E", "in"});
  horn.conditions = {{"in", false}};
  horn.inside.rating = Amperes(5);
  m.part("unit", {"B", "out", "E", "in"}, {horn});
  m.part("button", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("load", {"+", "-"}, {load("load", {"+", "-"}, 3)});
  m.part("more", {"+", "-"}, {load("load", {"+", "-"}, 4)});
  m.part("switch", {"a", "b"}, {make_switch({"a", "b"})});
  m.wire("battery.+", "unit.B");
  m.wire("unit.E", "battery.-");
  m.wire("unit.in", "button.a");
  m.wire("button.b", "battery.-");
  m.wire("unit.out", "load.+");
  m.wire("load.-", "battery.-");
  m.wire("unit.out", "switch.a");
  m.wire("switch.b", "more.+");
  m.wire("more.-", "battery.-");
  m.situation("off");
  m.situation("pressed", {{"button", "on"}});
  m.situation("too much", {{"button", "on"}, {"switch", "on"}});
  const auto s = solve_all(m.build);
  CHECK(!state(m, s[0], "load", "load").is_on);
  CHECK(volts(m, s[0], "unit.in") == doctest::Approx(12.6).epsilon(0.001));
  CHECK(state(m, s[1], "load", "load").is_on);
  CHECK(state(m, s[1], "unit", "horn-driver").amperes.number() == doctest::Approx(3.1).epsilon(0.03));
  CHECK(!state(m, s[1], "unit", "horn-driver").is_limiting);
  CHECK(state(m, s[2], "unit", "horn-driver").is_limiting);
  CHECK(state(m, s[2], "unit", "horn-driver").amperes.number() == doctest::Approx(5).epsilon(1e-6));
}

TEST_CASE("a generator charges only while the engine runs and its wires reach the regulator") {
  const auto make = [](bool phase_open) {
    BuildMaker m;
    Element cells = battery(0.012);
    cells.inside.capacity = AmpereHours(10);
    m.part("battery", {"+", "-"}, {cells});
    std::vector<Element> windings;
    for (const char* t : {"U", "V", "W"}) {
      windings.push_back(resistor(t, {t, ".star"}, 0.3));
      windings.back().inside.is_winding = true;
    }
    m.part("generator", {"U", "V", "W"}, windings);
    Element charger = element(InsideType::charger, "regulator", {"+", "-", "U", "V", "W"});
    charger.fed_by = {"U", "V", "W"};
    charger.inside.power = Watts(284);
    charger.inside.only_when = "running";
    m.part("regulator", {"+", "-", "U", "V", "W"}, {charger});
    m.wire("generator.U", "regulator.U");
    m.wire("generator.V", "regulator.V");
    if (!phase_open) m.wire("generator.W", "regulator.W");
    m.wire("regulator.+", "battery.+", 2.5);
    m.wire("regulator.-", "battery.-", 2.5);
    m.part("load", {"+", "-"}, {load("load", {"+", "-"}, 30)});
    m.part("switch", {"a", "b"}, {make_switch({"a", "b"})});
    m.wire("battery.+", "switch.a");
    m.wire("switch.b", "load.+");
    m.wire("load.-", "battery.-");
    m.situation("stopped");
    m.situation("running", {}, EngineState::running);
    m.situation("too much", {{"switch", "on"}}, EngineState::running);
    return m;
  };
  const BuildMaker whole = make(false);
  const auto s = solve_all(whole.build);
  CHECK(!state(whole, s[0], "regulator", "regulator").is_on);
  CHECK(state(whole, s[1], "regulator", "regulator").is_on);
  CHECK(volts(whole, s[1], "battery.+") == doctest::Approx(14.15).epsilon(0.01));
  CHECK(state(whole, s[1], "battery", "cells").amperes.number() == doctest::Approx(1.0).epsilon(0.05));
  CHECK(observed(whole.build.parts[0].insides[0], state(whole, s[1], "battery", "cells")) == Expected::charging);
  CHECK(state(whole, s[2], "regulator", "regulator").is_limiting);
  CHECK(-state(whole, s[2], "regulator", "regulator").amperes.number() == doctest::Approx(20).epsilon(1e-4));
  CHECK(state(whole, s[2], "battery", "cells").amperes.number() < 0);
  const BuildMaker open = make(true);
  const auto t = solve_all(open.build);
  CHECK(-state(open, t[2], "regulator", "regulator").amperes.number() == doctest::Approx(20 * 0.58).epsilon(1e-4));
}

TEST_CASE("a starter turns while cranking, stands still otherwise, and pulls the battery down") {
  BuildMaker m;
  Element cells = battery(0);
  cells.inside.resistance = std::nullopt;
  cells.inside.cranking = Amperes(200);
  m.part("battery", {"+", "-"}, {cells}, {TerminalForm::stud});
  Element motor = element(InsideType::motor, "motor", {"+", "body"});
  motor.inside.current = Amperes(130);
  motor.inside.at_voltage = Volts(10);
  motor.inside.resistance = Ohms(0.025);
  motor.inside.only_when = "cranking";
  m.part("starter", {"+", "body"}, {motor}, {TerminalForm::stud});
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  m.part("switch", {"a", "b"}, {make_switch({"a", "b"})}, {TerminalForm::stud});
  m.build.parts.back().insides[0].resistance = Ohms(0.001);
  m.wire("battery.+", "switch.a", 16, 0.4);
  m.wire("switch.b", "starter.+", 16, 0.5);
  m.situation("cranking", {{"switch", "on"}}, EngineState::cranking);
  m.situation("held", {{"switch", "on"}}, EngineState::stopped);
  const auto s = solve_all(m.build);
  CHECK(state(m, s[0], "starter", "motor").is_on);
  CHECK(state(m, s[0], "starter", "motor").amperes.number() == doctest::Approx(128).epsilon(0.06));
  CHECK(volts(m, s[0], "battery.+") == doctest::Approx(12.6 - 0.015 * 128).epsilon(0.02));
  CHECK(state(m, s[1], "starter", "motor").amperes.number() > 240);
}

TEST_CASE("floating terminals are nan; an open lamp's live side shows full volts") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 21)});
  m.part("spare", {"x", "y"}, {resistor("r", {"x", "y"}, 5)});
  m.wire("battery.+", "lamp.+");
  m.situation("only");
  const Solution s = solve_situation(m.build, SituationId{0});
  CHECK(volts(m, s, "lamp.-") == doctest::Approx(12.6));
  CHECK(std::isnan(volts(m, s, "spare.x")));
  CHECK(state(m, s, "lamp", "lamp").amperes.number() == doctest::Approx(0));
}

TEST_CASE("what the spec left out is said: length, return through the frame") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.02)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 21)});
  m.earth("E1");
  m.wire("battery.+", "lamp.+");
  m.wire("lamp.-", "E1");
  m.build.wires[0].length = std::nullopt;
  m.situation("only");
  const Circuit c = make_circuit(m.build, SituationId{0}, usual_options(m.build));
  REQUIRE(c.assumptions.size() == 2);
  CHECK(c.assumptions[0].type == AssumptionType::wire_length);
  CHECK(c.assumptions[1].type == AssumptionType::earth_return);
  CHECK(state(m, solve_situation(m.build, SituationId{0}), "lamp", "lamp").is_on);
}
