// SPDX-License-Identifier: MIT
#include "sheets/cold_tests.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/fuse_list.h"
#include "sheets/inside_sentences.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr double least_share = 0.7;      // of the solved ohms: filaments cold and warm, parts as they come; from memory
constexpr double most_told = 1000;       // ohm
constexpr double beeps_below = 50;       // ohm: a usual hand meter, from memory
constexpr double part_tolerance = 0.15;  // common practice

/// Coils and windings. What stands for the inside of electronics is no resistor that a meter would find.
bool is_wound(const Build& build, const Part& part, const Inside& inside) {
  const auto is_output = [](const Inside& i) { return i.type == InsideType::output; };
  if (std::any_of(part.insides.begin(), part.insides.end(), is_output)) return false;
  if (inside.type == InsideType::coil) return true;
  if (inside.type == InsideType::resistor) return !inside.is_secondary;
  return inside.type == InsideType::load && build.kind_of(part).group == "ignition";
}

}  // namespace

Build with_fuses_out(Build build) {
  for (Part& part : build.parts)
    for (Inside& inside : part.insides)
      if (inside.type == InsideType::fuse) inside.type = InsideType::resistor, inside.resistance = pulled_fuse;
  return build;
}

std::vector<InsideRef> find_diodes(const Build& build) {
  std::vector<InsideRef> all;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideRef what{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      if (inside_of(build, what).type != InsideType::diode) continue;
      if (!end_mark(build, what, 0).empty() && !end_mark(build, what, 1).empty()) all.push_back(what);
    }
  return all;
}

std::vector<InsulationTest> find_insulation_tests(const Build& build) {
  std::vector<InsulationTest> tests;
  const TerminalId earthed = earthed_pole(build);
  if (!earthed.is_set()) return tests;
  const Build open = with_fuses_out(build);
  for (const InsideRef fuse : list_fuses(build)) {
    const Inside& inside = inside_of(build, fuse);
    if (inside.nodes.size() < 2 || inside.nodes[1].terminal < 0) continue;
    InsulationTest test{fuse, build.part(fuse.part).terminals[static_cast<std::size_t>(inside.nodes[1].terminal)]};
    const double ohms = read_ohms(open, Situation{}, test.at, earthed).number;
    test.is_open = std::isinf(ohms);
    test.least = test.is_open ? Ohms(0) : sound_floor(Ohms(ohms));
    test.beeps = !test.is_open && ohms < beeps_below;
    tests.push_back(test);
  }
  return tests;
}

std::vector<PartOhms> find_part_ohms(const Build& build) {
  std::vector<PartOhms> all;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideRef what{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      const Inside& inside = inside_of(build, what);
      if (!is_wound(build, build.parts[p], inside) || !inside.resistance || inside.nodes.size() < 2) continue;
      PartOhms part{what,
                    end_mark(build, what, 0),
                    end_mark(build, what, 1),
                    *inside.resistance,
                    *inside.resistance * (1 - part_tolerance),
                    *inside.resistance * (1 + part_tolerance)};
      if (!part.first.empty() && !part.second.empty()) all.push_back(part);
    }
  return all;
}

Ohms beep_limit(double ohms) { return Ohms(std::ceil((ohms + 0.3) * 2) / 2); }

Ohms sound_floor(Ohms sound) {
  const double ohms = std::min(sound.number() * least_share, most_told);
  if (ohms < 1) return Ohms(std::floor(ohms * 10) / 10);
  const double unit = std::pow(10, std::floor(std::log10(ohms)));
  const double share = ohms / unit;
  return Ohms(share >= 5 ? 5 * unit : share >= 2 ? 2 * unit : unit);
}

EarthedCables find_earthed_cables(const Build& build) {
  EarthedCables cables;
  const TerminalId pole = earthed_pole(build);
  if (!pole.is_set()) return cables;
  cables.has_others = build.parts[static_cast<std::size_t>(build.terminal(pole).owner_index)].provided == Provider::machine;
  cables.all = wires_at_terminals(build)[pole.at()];
  const Paths paths = trace_paths(build);
  for (const WireId id : cables.all) {
    const Wire& wire = build.wire(id);
    const TerminalId far_end = wire.from == pole ? wire.to : wire.from;
    const auto passes = [&](const Bridge& bridge) {
      return is_plain_metal(build, bridge) && bridge.a != pole.index && bridge.b != pole.index;
    };
    if (reach(paths, {far_end.index}, passes)[static_cast<std::size_t>(paths.frame)]) cables.straps.push_back(id);
  }
  return cables;
}

std::vector<WireId> way_to_earth(const Build& build, TerminalId from) {
  const Paths paths = trace_paths(build);
  std::vector<int> came(paths.at.size(), -1);  // bridge by which a point was reached
  std::vector<bool> seen(paths.at.size());
  std::vector<PathPoint> open{from.index};
  seen[static_cast<std::size_t>(from.index)] = true;
  const TerminalId earthed = earthed_pole(build);
  for (std::size_t i = 0; i < open.size(); ++i) {
    const PathPoint here = open[i];
    if (here == paths.frame || here == earthed.index) {
      std::vector<WireId> way;
      for (PathPoint at = here; came[static_cast<std::size_t>(at)] >= 0;) {
        const Bridge& bridge = paths.bridges[static_cast<std::size_t>(came[static_cast<std::size_t>(at)])];
        if (bridge.wire.is_set()) way.insert(way.begin(), bridge.wire);
        at = bridge.other(at);
      }
      return way;
    }
    for (const int index : paths.at[static_cast<std::size_t>(here)]) {
      const Bridge& bridge = paths.bridges[static_cast<std::size_t>(index)];
      const PathPoint there = bridge.other(here);
      if (!is_plain_metal(build, bridge) || seen[static_cast<std::size_t>(there)]) continue;
      seen[static_cast<std::size_t>(there)] = true;
      came[static_cast<std::size_t>(there)] = index;
      open.push_back(there);
    }
  }
  return {};
}

std::string print_ohms(Ohms ohms) {
  const double number = ohms.number();
  if (number >= 1e6) return shortest(number / 1e6, 1) + "\u00a0M\u2126";
  if (number >= 1000) return shortest(number / 1000, 1) + "\u00a0k\u2126";
  return shortest(number, number < 1 ? 2 : number < 20 ? 1 : 0) + "\u00a0\u2126";
}

}  // namespace loomfolio
