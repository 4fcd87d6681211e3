// SPDX-License-Identifier: MIT
// A machine of any size: for each block of eight functions about 60 parts and 150 wires; twelve situations.
#pragma once

#include "solve/build_maker.h"

namespace loomfolio::test {

namespace machine {

inline std::string named(const std::string& what, int block, int function) {
  return what + std::to_string(block) + "-" + std::to_string(function);
}

inline Element connector_ways() { return element(InsideType::link, "1", {"a1", "b1"}); }

/// Fuse, switch on the bar behind a connector, relay, connector, two lamps and a tell-tale on one earth.
inline void add_function(BuildMaker& m, int block, int number) {
  const auto id = [&](const std::string& what) { return named(what, block, number); };
  m.part(id("fuse"), {"in", "out"}, {fuse(number % 2 ? 15 : 10)});
  m.part(id("switch"), {"a", "b"}, {make_switch({"a", "b"})}, {TerminalForm::sealed});
  m.part(id("relay"), {"30", "87", "86", "85"}, {coil("coil", {"86", "85"}, 90), contact("coil", {"30", "87"})});
  std::vector<Element> ways;
  for (const char* way : {"1", "2", "3"}) ways.push_back(element(InsideType::link, way, {std::string("a") + way, std::string("b") + way}));
  m.part(id("bar"), {"a1", "b1", "a2", "b2", "a3", "b3"}, ways, {TerminalForm::sealed, true});
  m.part(id("tail"), {"a1", "b1"}, {connector_ways()}, {TerminalForm::sealed, true});
  m.part(id("lamp"), {"+", "-"}, {lamp("lamp", {"+", "-"}, number % 3 ? 26.5 : 68, number % 3 ? 13.5 : 13.2)});
  m.part(id("side"), {"+", "-"}, {lamp("lamp", {"+", "-"}, 5.5)});
  m.splice(id("live"));
  m.splice(id("fed"));
  m.splice(id("return"));
  m.wire(named("bus", block, 0), id("fuse") + ".in", 2.5, 0.2);
  m.wire(id("fuse") + ".out", id("live"), 1.5, 0.3);
  m.wire(id("live"), id("bar") + ".a1", 0.75, 0.8);
  m.wire(id("bar") + ".b1", id("switch") + ".a", 0.75, 0.4);
  m.wire(id("switch") + ".b", id("bar") + ".b2", 0.75, 0.4);
  m.wire(id("bar") + ".a2", id("relay") + ".86", 0.75, 0.8);
  m.wire(id("relay") + ".85", id("return"), 0.75, 0.3);
  m.wire(id("live"), id("relay") + ".30", 1.5, 0.2);
  m.wire(id("relay") + ".87", id("tail") + ".a1", 1.5, 0.6);
  m.wire(id("tail") + ".b1", id("fed"), 1.5, 0.4);
  m.wire(id("fed"), id("lamp") + ".+", 1.0, 0.3);
  m.wire(id("fed"), id("side") + ".+", 0.75, 0.3);
  m.wire(id("lamp") + ".-", id("return"), 1.0, 0.3);
  m.wire(id("side") + ".-", id("return"), 0.75, 0.3);
  m.wire(id("return"), named("E", block, 0), 1.5, 0.4);
  m.part(id("tell"), {"+", "-"}, {lamp("lamp", {"+", "-"}, 1.5)});
  m.wire(id("bar") + ".b2", id("tell") + ".+", 0.5, 0.2);
  m.wire(id("tell") + ".-", id("bar") + ".b3", 0.5, 0.2);
  m.wire(id("bar") + ".a3", id("return"), 0.5, 0.8);
}

/// Generator and regulator of a block.
inline void add_charging(BuildMaker& m, int block) {
  std::vector<Element> windings;
  for (const char* t : {"U", "V", "W"}) {
    windings.push_back(resistor(t, {t, ".star"}, 0.3));
    windings.back().inside.is_winding = true;
  }
  m.part(named("generator", block, 0), {"U", "V", "W"}, windings);
  Element charger = element(InsideType::charger, "regulator", {"+", "-", "U", "V", "W"});
  charger.fed_by = {"U", "V", "W"};
  charger.inside.power = Watts(300);
  charger.inside.only_when = "running";
  m.part(named("regulator", block, 0), {"+", "-", "U", "V", "W"}, {charger});
  for (const char* t : {"U", "V", "W"}) m.wire(named("generator", block, 0) + "." + t, named("regulator", block, 0) + "." + t, 2.5, 0.6);
  m.wire(named("regulator", block, 0) + ".+", "battery.+", 4, 0.5);
  m.wire(named("regulator", block, 0) + ".-", "battery.-", 4, 0.5);
}

}  // namespace machine

inline BuildMaker make_machine(int blocks, int functions = 8) {
  BuildMaker m;
  m.build.electrics.ambient = Celsius(40);
  Element cells = battery(0);
  cells.inside.resistance = std::nullopt;
  cells.inside.cranking = Amperes(200.0 * blocks);
  cells.inside.capacity = AmpereHours(12.0 * blocks);
  m.part("battery", {"+", "-"}, {cells}, {TerminalForm::stud});
  m.earth("E1");
  m.wire("battery.-", "E1", 16, 0.3);
  for (int block = 0; block < blocks; ++block) {
    m.part(machine::named("main", block, 0), {"in", "out"}, {fuse(40, "blade_maxi")});
    m.part(machine::named("key", block, 0), {"30", "15"}, {make_switch({"30", "15"})});
    m.splice(machine::named("bus", block, 0));
    m.earth(machine::named("E", block, 0));
    m.wire("battery.+", machine::named("main", block, 0) + ".in", 6, 0.15);
    m.wire(machine::named("main", block, 0) + ".out", machine::named("key", block, 0) + ".30", 4, 0.8);
    m.wire(machine::named("key", block, 0) + ".15", machine::named("bus", block, 0), 4, 0.8);
    machine::add_charging(m, block);
    for (int f = 0; f < functions; ++f) machine::add_function(m, block, f);
  }
  for (int s = 0; s < 12; ++s) {
    std::vector<std::pair<std::string, std::string>> set;
    for (int block = 0; block < blocks; ++block) {
      if (s > 0) set.emplace_back(machine::named("key", block, 0), "on");
      for (int f = 0; f < functions; ++f)
        if (s > 0 && ((s + f) % 3 == 0 || f == s % functions)) set.emplace_back(machine::named("switch", block, f), "on");
    }
    m.situation("s" + std::to_string(s), set, s % 2 ? EngineState::running : EngineState::stopped);
  }
  return m;
}

}  // namespace loomfolio::test
