// SPDX-License-Identifier: MIT
// What a fuse carries with all on that can be on together: by hand from the loads, which draw a constant current.
#include "doctest/doctest.h"
#include "solve/at_once.h"
#include "solve/build_maker.h"
#include "solve/small_builds.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

Element steady(const std::string& id, double amperes) {
  Element e = load(id, {"+", "-"}, amperes);
  e.inside.law = "constant-current";
  return e;
}

Element by_hand(Element e) {
  e.inside.worked_by = "hand";
  return e;
}

/// Battery, a fuse of 10 A a machine, and behind each: a horn of 3 A at a button, grips of 4 A at a switch, and either 2 A or 5 A at
/// a dip switch. Situations move one switch at a time.
BuildMaker machines(int count) {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
  m.earth("E1", 0.001);
  m.wire("battery.-", "E1", 16, 0.3);
  std::vector<std::pair<std::string, std::string>> horns;
  for (int i = 0; i < count; ++i) {
    const std::string n = std::to_string(i);
    m.part("fuse" + n, {"in", "out"}, {fuse(10)});
    m.splice("S" + n);
    m.wire("battery.+", "fuse" + n + ".in", 4, 0.1);
    m.wire("fuse" + n + ".out", "S" + n, 2.5, 0.5);
    Element dip = element(InsideType::switch_, "dip", {"56", "56a", "56b"});
    dip.positions = {{"dipped", {{"56", "56b"}}}, {"main", {{"56", "56a"}}}};
    m.part("dip" + n, {"56", "56a", "56b"}, {by_hand(dip)});
    m.wire("S" + n, "dip" + n + ".56", 1.5, 0.3);
    const auto consumer = [&](const std::string& name, double amperes, const std::string& feed) {
      m.part(name + n, {"+", "-"}, {steady(name, amperes)});
      m.wire(feed, name + n + ".+", 1.5, 0.3);
      m.wire(name + n + ".-", "E1", 1.5, 0.3);
    };
    for (const auto& [name, amperes] : {std::pair{std::string("horn"), 3.0}, {std::string("grips"), 4.0}}) {
      m.part(name + "-switch" + n, {"a", "b"}, {by_hand(make_switch({"a", "b"}))});
      m.wire("S" + n, name + "-switch" + n + ".a", 1.5, 0.3);
      consumer(name, amperes, name + "-switch" + n + ".b");
    }
    consumer("low", 2, "dip" + n + ".56b");
    consumer("high", 5, "dip" + n + ".56a");
    horns.emplace_back("horn-switch" + n, "on");
  }
  m.situation("rest");
  m.situation("horn", horns);
  return m;
}

ProtectionStudy study_all_on(const BuildMaker& m) {
  const auto solutions = solve_all(m.build);
  ProtectionStudy found = study_protection(m.build, solutions);
  study_at_once(m.build, solutions, found);
  return found;
}

}  // namespace

TEST_CASE("horn, grips and main beam at once: each switch in one position, so not both beams") {
  const BuildMaker m = machines(1);
  const FuseStudy fuse = study_all_on(m).fuses.at(0);
  CHECK(fuse.load.number() == doctest::Approx(5).epsilon(1e-3));      // horn and dipped
  CHECK(fuse.at_once.number() == doctest::Approx(12).epsilon(1e-3));  // horn, grips and main
  CHECK(m.build.situations[fuse.at_once_from.at()].name == "horn");
  REQUIRE(fuse.at_once_moved.size() == 2);
  CHECK(fuse.at_once_moved[0].actuator == m.inside("dip0", "dip"));
  CHECK(fuse.at_once_moved[0].position == 1);
  CHECK(fuse.at_once_moved[1].actuator == m.inside("grips-switch0", "switch"));
}

TEST_CASE("a load behind two switches: a situation that closes both shows that it can be on with the rest") {
  BuildMaker m = machines(1);
  for (const char* name : {"master", "fog"}) m.part(name, {"a", "b"}, {by_hand(make_switch({"a", "b"}))});
  m.part("fogs", {"+", "-"}, {steady("fogs", 2.5)});
  m.wire("S0", "master.a", 1.5, 0.3);
  m.wire("master.b", "fog.a", 1.5, 0.3);
  m.wire("fog.b", "fogs.+", 1.5, 0.3);
  m.wire("fogs.-", "E1", 1.5, 0.3);
  CHECK(study_all_on(m).fuses.at(0).at_once.number() == doctest::Approx(12).epsilon(1e-3));  // nothing says that both go on
  m.situation("fog", {{"master", "on"}, {"fog", "on"}});
  const FuseStudy fuse = study_all_on(m).fuses.at(0);
  CHECK(m.build.situations[fuse.at_once_from.at()].name == "horn");
  CHECK(fuse.at_once.number() == doctest::Approx(14.5).epsilon(1e-3));  // and still the horn, which "fog" leaves off
  REQUIRE(fuse.at_once_moved.size() == 4);                              // dip, grips, both of the fog lamps
}

TEST_CASE("three machines on one battery: each fuse as if its machine were alone") {
  for (const FuseStudy& fuse : study_all_on(machines(3)).fuses) {
    CHECK(fuse.at_once.number() == doctest::Approx(12).epsilon(1e-3));
    CHECK(fuse.at_once_moved.size() == 2);
  }
}

TEST_CASE("a switch that no hand works stays as it is") {
  BuildMaker m = machines(1);
  for (Part& part : m.build.parts)
    for (Inside& inside : part.insides)
      if (part.id == "grips-switch0") inside.worked_by = "pressure";
  CHECK(study_all_on(m).fuses.at(0).at_once.number() == doctest::Approx(8).epsilon(1e-3));  // horn and main
}

TEST_CASE("a button that pulls in the starter's relay is not pressed") {
  BuildMaker m = machines(1);
  m.part("relay", {"86", "85"}, {coil("coil", {"86", "85"}, 4)});
  m.build.kinds.back().group = "starting";
  m.part("start", {"a", "b"}, {by_hand(make_switch({"a", "b"}))});
  m.wire("S0", "start.a", 1.5, 0.3);
  m.wire("start.b", "relay.86", 1.5, 0.3);
  m.wire("relay.85", "E1", 1.5, 0.3);
  CHECK(study_all_on(m).fuses.at(0).at_once.number() == doctest::Approx(12).epsilon(1e-3));
  m.build.kinds.back().group = "switching";
  m.build.kinds[m.build.part(m.find_part("relay")).kind.at()].group = "control";
  CHECK(study_all_on(m).fuses.at(0).at_once.number() > 14);
}

TEST_CASE("a fuse between battery and generator: all on, and the generator dead") {
  BuildMaker m = machines(1);
  Element charger = element(InsideType::charger, "charger", {"+", "-"});
  charger.inside.at_voltage = Volts(14.2);
  charger.inside.power = Watts(71);  // 5 A: what horn and dipped beam take
  m.part("regulator", {"+", "-"}, {charger});
  m.wire("S0", "regulator.+", 2.5, 0.3);
  m.wire("regulator.-", "E1", 2.5, 0.3);
  m.build.situations[1].engine = EngineState::running;
  const FuseStudy fuse = study_all_on(m).fuses.at(0);
  CHECK(fuse.load.number() == doctest::Approx(5).epsilon(0.01));
  CHECK(fuse.is_uncharged);
  CHECK(fuse.at_once.number() == doctest::Approx(12).epsilon(1e-3));
}
