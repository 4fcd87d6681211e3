// SPDX-License-Identifier: MIT
#include "solve/meter.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/text.h"
#include "solve/newton.h"
#include "solve/supply.h"

namespace loomfolio {
namespace {

constexpr double meter_ohms = 10e6;
constexpr double test_volts = 0.2, test_ohms = 1000;  // the meter's own source on its ohms range, from memory
constexpr double diode_volts = 2.5, diode_ohms = 2500, diode_shows_to = 2;  // its diode range, from memory
constexpr double open_from = 2e6;                      // ohm: what a common meter no longer shows

std::optional<TerminalId> find_terminal(const Build& build, std::string_view name) {
  for (std::size_t i = 0; i < build.terminals.size(); ++i)
    if (build.terminals[i].name == name) return TerminalId{static_cast<std::int32_t>(i)};
  return std::nullopt;
}

std::optional<WireId> find_wire(const Build& build, std::string_view id) {
  for (std::size_t i = 0; i < build.wires.size(); ++i)
    if (build.wires[i].id == id) return WireId{static_cast<std::int32_t>(i)};
  return std::nullopt;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (const std::string& word : split(text, ' '))
    if (!trimmed(word).empty()) words.push_back(trimmed(word));
  return words;
}

TerminalId pole(const Build& build, InsideRef battery, std::size_t node) {
  if (!battery.part.is_set()) return {};
  const Part& part = build.part(battery.part);
  const int terminal = part.insides[static_cast<std::size_t>(battery.inside)].nodes[node].terminal;
  return terminal < 0 ? TerminalId{} : part.terminals[static_cast<std::size_t>(terminal)];
}

MeterAnswer read_volts(const Build& build, const Solution& solution, const MeterPlace& place) {
  Circuit circuit = make_circuit(build, solution.situation, usual_options(build));
  Branch meter;
  meter.a = place.red.index;
  meter.b = place.black.is_set() ? place.black.index : circuit.reference;
  meter.ohms = Ohms(meter_ohms);
  if (meter.a == meter.b) return {};
  circuit.branches.push_back(meter);
  NodeSolver solver(circuit);
  const NodeVolts nodes = solver.solve(solution.relays, Flash::lit, {});
  const auto is_floating = [&](TerminalId t) { return t.is_set() && std::isnan(solution.terminal_volts[t.at()].number()); };
  return {nodes.volts[static_cast<std::size_t>(meter.a)] - nodes.volts[static_cast<std::size_t>(meter.b)],
          is_floating(place.red) || is_floating(place.black)};
}

}  // namespace

TerminalId earthed_pole(const Build& build) {
  return pole(build, find_supply_poles(build).earthed, build.electrics.is_positive_earth ? 0 : 1);
}
TerminalId live_pole(const Build& build) {
  return pole(build, find_supply_poles(build).live, build.electrics.is_positive_earth ? 1 : 0);
}

std::optional<MeterPlace> find_meter_place(const Build& build, std::string_view where, std::string& unknown) {
  std::vector<std::string> words = words_of(where);
  MeterPlace place;
  if (words.empty()) return std::nullopt;
  if (words[0] == "wire" && words.size() == 2) {
    place.use = MeterUse::amperes;
    const auto wire = find_wire(build, words[1]);
    if (!wire) unknown = words[1];
    else place.wire = *wire;
    return wire ? std::optional(place) : std::nullopt;
  }
  if (words[0] == "ohms") {
    place.use = MeterUse::ohms;
    words.erase(words.begin());
  }
  if (words.empty() || words.size() > 2 || (place.use == MeterUse::ohms && words.size() != 2)) return std::nullopt;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto terminal = find_terminal(build, words[i]);
    if (!terminal) {
      unknown = words[i];
      return std::nullopt;
    }
    (i == 0 ? place.red : place.black) = *terminal;
  }
  return place;
}

MeterAnswer read_meter(const Build& build, const Solution& solution, const MeterPlace& place) {
  switch (place.use) {
    case MeterUse::volts: return read_volts(build, solution, place);
    case MeterUse::amperes: return {solution.wire_amperes[place.wire.at()].number(), false};
    case MeterUse::ohms: return read_ohms(build, build.situations[solution.situation.at()], place.red, place.black);
  }
  return {};
}

namespace {

/// Volts between the probes of a meter that sends its own, everything else dead and every relay at rest.
double send_volts(const Build& build, const Situation& situation, TerminalId red, TerminalId black, Volts own, Ohms inner) {
  Circuit circuit = make_circuit(build, situation, usual_options(build));
  std::erase_if(circuit.branches, [](const Branch& b) { return b.law == Law::source || b.law == Law::charger; });
  Branch meter;
  meter.law = Law::source;
  meter.a = red.index;
  meter.b = black.index;
  meter.volts = own;
  meter.ohms = meter.charge_ohms = inner;
  circuit.branches.push_back(meter);
  NodeSolver solver(circuit);
  const NodeVolts nodes = solver.solve(rest_state(circuit), Flash::dark, {});
  return nodes.volts[static_cast<std::size_t>(meter.a)] - nodes.volts[static_cast<std::size_t>(meter.b)];
}

}  // namespace

MeterAnswer read_ohms(const Build& build, const Situation& situation, TerminalId red, TerminalId black) {
  if (red == black) return {};
  const double volts = send_volts(build, situation, red, black, Volts(test_volts), Ohms(test_ohms));
  const double amperes = (test_volts - volts) / test_ohms;
  const double ohms = amperes > 0 ? volts / amperes : std::numeric_limits<double>::infinity();
  return {ohms > open_from ? std::numeric_limits<double>::infinity() : std::max(0.0, ohms), false};
}

MeterAnswer read_diode_range(const Build& build, const Situation& situation, TerminalId red, TerminalId black) {
  if (red == black) return {};
  const double volts = send_volts(build, situation, red, black, Volts(diode_volts), Ohms(diode_ohms));
  return {volts > diode_shows_to ? std::numeric_limits<double>::infinity() : std::max(0.0, volts), false};
}

}  // namespace loomfolio
