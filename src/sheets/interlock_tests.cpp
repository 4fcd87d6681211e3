// SPDX-License-Identifier: MIT
#include "sheets/interlock_tests.h"

#include <algorithm>
#include <limits>

#include "check/paths.h"
#include "sheets/cold_tests.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr double beeps_up_to = 5;    // ohm, of a short way to earth; well below what beepers take, from memory
constexpr double open_from = 1000;   // ohm
constexpr Ohms unplugged(1e9);
constexpr double one_diode = 0.9;    // V on the diode range

struct Trial {
  Situation situation;
  bool must_turn = false;
};

bool is_starter(const Build& build, InsideRef what) {
  const Part& part = build.part(what.part);
  return build.kind_of(part).group == "starting" &&
         std::any_of(part.insides.begin(), part.insides.end(),
                     [](const Inside& i) { return i.type == InsideType::motor; });
}

enum class Buttons : std::uint8_t { let_go, pressed };

/// The situations in which a button is pressed and the spec says what the starter does.
std::vector<Trial> find_trials(const Build& build, Buttons buttons) {
  std::vector<Trial> trials;
  for (const Situation& situation : build.situations) {
    const auto says = std::find_if(situation.expectations.begin(), situation.expectations.end(),
                                   [&](const Expectation& e) { return is_starter(build, e.what); });
    const bool is_pressed = std::any_of(situation.settings.begin(), situation.settings.end(),
                                        [&](const Setting& s) { return inside_of(build, s.actuator).is_sprung; });
    if (says == situation.expectations.end() || !is_pressed) continue;
    Trial trial{situation, says->state == Expected::on};
    trial.situation.engine = EngineState::stopped;
    std::erase_if(trial.situation.settings, [&](const Setting& setting) {
      const Inside& inside = inside_of(build, setting.actuator);
      return inside.worked_by == "key" || (buttons == Buttons::let_go && inside.is_sprung && inside.worked_by == "hand");
    });
    trials.push_back(std::move(trial));
  }
  return trials;
}

/// What is inside a control unit or beside a coil leads on to earth: the wires alone are measured.
Build with_unplugged(Build build, std::size_t part) {
  for (Inside& inside : build.parts[part].insides) inside.type = InsideType::resistor, inside.resistance = unplugged;
  return build;
}

/// `ohms`: read there already.
ColdReading read_cold(const Build& dead, const Situation& situation, TerminalId at, double ohms) {
  if (ohms <= beeps_up_to) return ColdReading::beeps;
  return read_diode_range(dead, situation, at, earthed_pole(dead)).number <= one_diode ? ColdReading::diode : ColdReading::open;
}

/// `most_ohms`: of the ways that beep.
std::vector<InterlockTest> try_at(const Build& dead, const std::vector<Trial>& trials, TerminalId at,
                                  double& most_ohms) {
  std::vector<InterlockTest> tests;
  bool opens = false, closes = false;
  most_ohms = 0;
  for (const Trial& trial : trials) {
    const double ohms = read_ohms(dead, trial.situation, at, earthed_pole(dead)).number;
    if (ohms > beeps_up_to && ohms < open_from) return {};
    if (ohms <= beeps_up_to) most_ohms = std::max(most_ohms, ohms);
    const ColdReading shows = read_cold(dead, trial.situation, at, ohms);
    if ((shows != ColdReading::open) != trial.must_turn) return {};
    (trial.must_turn ? closes : opens) = true;
    tests.push_back({at, trial.situation.settings, shows});
  }
  return opens && closes ? tests : std::vector<InterlockTest>{};
}

}  // namespace

std::vector<InterlockTest> find_interlock_tests(const Build& build) {
  if (!earthed_pole(build).is_set()) return {};
  const Build dead = with_fuses_out(build);
  const auto wires = wires_at_terminals(build);
  for (const Buttons buttons : {Buttons::let_go, Buttons::pressed}) {
    const std::vector<Trial> trials = find_trials(build, buttons);
    if (trials.size() < 2) return {};
    std::vector<InterlockTest> best;
    double best_ohms = std::numeric_limits<double>::infinity();
    for (std::size_t p = 0; p < build.parts.size(); ++p) {
      const Part& part = build.parts[p];
      const Kind& kind = build.kind_of(part);
      if (kind.is_connector || (kind.group != "starting" && kind.group != "control")) continue;
      if (kind.terminals.size() < 3) continue;  // a diode lies beside the way, not at its end
      const Build alone = with_unplugged(dead, p);
      for (const TerminalId at : part.terminals)
        if (!wires[at.at()].empty()) {
          double ohms = 0;
          std::vector<InterlockTest> tests = try_at(alone, trials, at, ohms);
          if (!tests.empty() && ohms < best_ohms) best = std::move(tests), best_ohms = ohms;
        }
    }
    if (!best.empty()) return best;
  }
  return {};
}

}  // namespace loomfolio
