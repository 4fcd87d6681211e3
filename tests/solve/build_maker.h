// SPDX-License-Identifier: MIT
// Builds in memory for tests, without reading a spec: every part has a kind of its own.
#pragma once

#include <cassert>
#include <initializer_list>
#include <string>
#include <vector>

#include "model/build.h"

namespace loomfolio::test {

/// An element with its points by name; `.x` is an inner point.
struct Element {
  Inside inside;
  std::vector<std::string> points;
  std::vector<std::pair<std::string, std::vector<std::vector<std::string>>>> positions;  ///< switch
  struct Wants { std::string input; bool live; };
  std::vector<Wants> conditions;  ///< output
  std::vector<std::string> fed_by;  ///< charger
};

inline Element element(InsideType type, std::string id, std::vector<std::string> points) {
  Element e;
  e.inside.type = type;
  e.inside.id = std::move(id);
  e.points = std::move(points);
  return e;
}
inline Element battery(double ohms) {
  Element e = element(InsideType::source, "cells", {"+", "-"});
  e.inside.resistance = Ohms(ohms);
  return e;
}
inline Element lamp(std::string id, std::vector<std::string> points, double watts, double volts = 13.5) {
  Element e = element(InsideType::lamp, std::move(id), std::move(points));
  e.inside.power = Watts(watts);
  e.inside.at_voltage = Volts(volts);
  return e;
}
inline Element resistor(std::string id, std::vector<std::string> points, double ohms) {
  Element e = element(InsideType::resistor, std::move(id), std::move(points));
  e.inside.resistance = Ohms(ohms);
  return e;
}
inline Element load(std::string id, std::vector<std::string> points, double amperes, double volts = 12) {
  Element e = element(InsideType::load, std::move(id), std::move(points));
  e.inside.current = Amperes(amperes);
  e.inside.at_voltage = Volts(volts);
  return e;
}
inline Element coil(std::string id, std::vector<std::string> points, double ohms, double pull_in = 7.2, double drop_out = 1.2) {
  Element e = element(InsideType::coil, std::move(id), std::move(points));
  e.inside.resistance = Ohms(ohms);
  e.inside.pull_in = Volts(pull_in);
  e.inside.drop_out = Volts(drop_out);
  return e;
}
inline Element contact(std::string coil_id, std::vector<std::string> points, bool closed_at_rest = false) {
  Element e = element(InsideType::contact, "contact-" + coil_id, std::move(points));
  e.inside.coil = std::move(coil_id);
  e.inside.closed_at_rest = closed_at_rest;
  return e;
}
inline Element fuse(double amperes, std::string family = "blade_regular") {
  Element e = element(InsideType::fuse, "fuse", {"in", "out"});
  e.inside.rating = Amperes(amperes);
  e.inside.family = std::move(family);
  return e;
}
/// Make switch: off (rest), on.
inline Element make_switch(std::vector<std::string> points) {
  Element e = element(InsideType::switch_, "switch", points);
  e.positions = {{"off", {}}, {"on", {points}}};
  return e;
}

struct PartOptions {
  TerminalForm form = TerminalForm::blade;
  bool is_connector = false;
};

class BuildMaker {
 public:
  Build build;

  BuildMaker() {
    build.zones.push_back({"zone", "Zone", Metres(0), {}});
    build.electrics.ambient = Celsius(20);
  }

  PartId part(const std::string& id, const std::vector<std::string>& terminals, const std::vector<Element>& elements,
              PartOptions options = {}) {
    Kind kind;
    kind.id = "kind-" + id;
    kind.name = id;
    kind.is_connector = options.is_connector;
    const PartId part_id{static_cast<std::int32_t>(build.parts.size())};
    Part part;
    part.id = part.label = id;
    part.zone = ZoneId{0};
    part.kind = KindId{static_cast<std::int32_t>(build.kinds.size())};
    for (const std::string& name : terminals) {
      KindTerminal terminal;
      terminal.id = name;
      terminal.form = name == "body" ? TerminalForm::body : options.form;
      part.terminals.push_back(add_terminal(OwnerType::part, part_id.index, static_cast<int>(kind.terminals.size()), id + "." + name));
      kind.terminals.push_back(terminal);
    }
    std::vector<std::string> inner;
    for (const Element& e : elements) kind.insides.push_back(resolve(e, terminals, inner));
    kind.inner_points = static_cast<int>(inner.size());
    part.insides = kind.insides;
    build.kinds.push_back(kind);
    build.parts.push_back(part);
    return part_id;
  }

  void splice(const std::string& id) {
    const auto index = static_cast<std::int32_t>(build.splices.size());
    build.splices.push_back({id, id, "", ZoneId{0}, add_terminal(OwnerType::splice, index, -1, id), {}});
  }

  void earth(const std::string& id, std::optional<double> ohms = std::nullopt) {
    const auto index = static_cast<std::int32_t>(build.earths.size());
    Earth e;
    e.id = e.label = id;
    e.zone = ZoneId{0};
    e.terminal = add_terminal(OwnerType::earth, index, -1, id);
    if (ohms) e.resistance = Ohms(*ohms);
    build.earths.push_back(e);
  }

  WireId wire(const std::string& from, const std::string& to, double area = 1.0, double metres = 1.0) {
    Wire w;
    w.id = std::to_string(build.wires.size() + 1);
    w.from = find(from);
    w.to = find(to);
    w.area = SquareMillimetres(area);
    w.is_auto_size = area <= 0;
    w.length = Metres(metres);
    build.wires.push_back(w);
    return WireId{static_cast<std::int32_t>(build.wires.size() - 1)};
  }

  /// `set`: part id (its first switch) or `part.switch`, and position name.
  SituationId situation(const std::string& name, const std::vector<std::pair<std::string, std::string>>& set = {},
                        EngineState engine = EngineState::stopped, const std::string& after = "") {
    Situation s;
    s.name = s.label = name;
    s.engine = engine;
    s.after = after;
    for (const auto& [what, position] : set) s.settings.push_back(setting(what, position));
    build.situations.push_back(s);
    return SituationId{static_cast<std::int32_t>(build.situations.size() - 1)};
  }

  TerminalId find(const std::string& name) const {
    for (std::size_t i = 0; i < build.terminals.size(); ++i)
      if (build.terminals[i].name == name) return TerminalId{static_cast<std::int32_t>(i)};
    assert(!"no such terminal");
    return {};
  }
  PartId find_part(const std::string& id) const {
    for (std::size_t i = 0; i < build.parts.size(); ++i)
      if (build.parts[i].id == id) return PartId{static_cast<std::int32_t>(i)};
    assert(!"no such part");
    return {};
  }
  InsideRef inside(const std::string& part_id, const std::string& id) const {
    const PartId p = find_part(part_id);
    const auto& insides = build.part(p).insides;
    for (std::size_t i = 0; i < insides.size(); ++i)
      if (insides[i].id == id) return {p, static_cast<int>(i)};
    assert(!"no such element");
    return {};
  }

 private:
  TerminalId add_terminal(OwnerType owner, std::int32_t index, int kind_terminal, const std::string& name) {
    build.terminals.push_back({owner, index, kind_terminal, name});
    return TerminalId{static_cast<std::int32_t>(build.terminals.size() - 1)};
  }

  static int index_of(const std::vector<std::string>& names, const std::string& name) {
    for (std::size_t i = 0; i < names.size(); ++i)
      if (names[i] == name) return static_cast<int>(i);
    return -1;
  }

  static Inside resolve(const Element& e, const std::vector<std::string>& terminals, std::vector<std::string>& inner) {
    Inside inside = e.inside;
    const auto point = [&](const std::string& name) {
      Inside::Node node;
      node.terminal = index_of(terminals, name);
      if (node.terminal < 0) {
        if (index_of(inner, name) < 0) inner.push_back(name);
        node.inner = index_of(inner, name);
      }
      return node;
    };
    for (const std::string& name : e.points) inside.nodes.push_back(point(name));
    for (const auto& [name, groups] : e.positions) {
      SwitchPosition position{name, {}};
      for (const auto& group : groups) {
        position.joined.emplace_back();
        for (const std::string& p : group) position.joined.back().push_back(index_of(e.points, p));
      }
      inside.positions.push_back(position);
    }
    for (const auto& wants : e.conditions) inside.conditions.push_back({index_of(e.points, wants.input), wants.live});
    for (const auto& name : e.fed_by) inside.fed_by.push_back(index_of(e.points, name));
    return inside;
  }

  Setting setting(const std::string& what, const std::string& position) const {
    const std::size_t dot = what.find('.');
    const PartId part = find_part(what.substr(0, dot));
    const auto& insides = build.part(part).insides;
    for (std::size_t i = 0; i < insides.size(); ++i) {
      if (insides[i].type != InsideType::switch_) continue;
      if (dot != std::string::npos && insides[i].id != what.substr(dot + 1)) continue;
      for (std::size_t p = 0; p < insides[i].positions.size(); ++p)
        if (insides[i].positions[p].name == position) return {{part, static_cast<int>(i)}, static_cast<int>(p), {}};
    }
    assert(!"no such switch or position");
    return {};
  }
};

}  // namespace loomfolio::test
