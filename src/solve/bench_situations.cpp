// SPDX-License-Identifier: MIT
#include "solve/bench_situations.h"

#include <algorithm>

namespace loomfolio {
namespace {

const Inside& worked(const Build& build, const Setting& setting) {
  return build.part(setting.actuator.part).insides[static_cast<std::size_t>(setting.actuator.inside)];
}

enum class Charging : std::uint8_t { must_stay, may_stop };

class Bench {
 public:
  Bench(const Build& build, const std::vector<Solution>& solutions) : sound_(build), bench_{build, solutions} {}

  BenchSituations set() {
    for (std::size_t s = 0; s < bench_.solutions.size(); ++s) {
      const bool charges = is_charging(s);
      const bool is_stopped = try_as(s, at_rest(s, EngineState::stopped),
                                     charges && !has_charging_ ? Charging::must_stay : Charging::may_stop);
      if (!is_stopped) try_as(s, at_rest(s, sound_.situations[s].engine), Charging::must_stay);
      has_charging_ = has_charging_ || is_charging(s);
    }
    return std::move(bench_);
  }

 private:
  /// Neutral; where the engine stops, what its oil or its heat works stands at rest too.
  Situation at_rest(std::size_t s, EngineState engine) const {
    Situation situation = sound_.situations[s];
    std::erase_if(situation.settings, [&](const Setting& setting) {
      const std::string& by = worked(sound_, setting).worked_by;
      return by == "gear" || (by == "pressure" && engine == EngineState::stopped);
    });
    situation.engine = engine;
    return situation;
  }

  bool is_charging(std::size_t s) const {
    for (std::size_t p = 0; p < sound_.parts.size(); ++p)
      for (std::size_t i = 0; i < sound_.parts[p].insides.size(); ++i)
        if (sound_.parts[p].insides[i].type == InsideType::charger && bench_.solutions[s].insides[p][i].is_on)
          return true;
    return false;
  }

  bool try_as(std::size_t s, Situation situation, Charging charging) {
    Situation& now = bench_.build.situations[s];
    if (situation.engine == now.engine && situation.settings.size() == now.settings.size()) return true;
    if (now.engine == EngineState::cranking) return false;
    std::swap(now, situation);
    Solution solution = solve_situation(bench_.build, SituationId{static_cast<std::int32_t>(s)});
    if (solution.settling == Settling::settled && looks_alike(bench_.solutions[s], solution, charging)) {
      bench_.solutions[s] = std::move(solution);
      return true;
    }
    std::swap(now, situation);
    return false;
  }

  bool looks_alike(const Solution& a, const Solution& b, Charging charging) const {
    for (std::size_t p = 0; p < sound_.parts.size(); ++p) {
      const std::string& group = sound_.kind_of(sound_.parts[p]).group;
      for (std::size_t i = 0; i < sound_.parts[p].insides.size(); ++i) {
        const Inside& inside = sound_.parts[p].insides[i];
        if (observed(inside, a.insides[p][i]) == observed(inside, b.insides[p][i])) continue;
        if (inside.type == InsideType::charger && charging == Charging::must_stay) return false;
        const bool is_seen =
            inside.type == InsideType::lamp || inside.type == InsideType::load || inside.type == InsideType::motor;
        if (is_seen && group != "instruments" && group != "ignition") return false;
      }
    }
    return true;
  }

  const Build& sound_;
  BenchSituations bench_;
  bool has_charging_ = false;
};

}  // namespace

BenchSituations set_on_bench(const Build& build, const std::vector<Solution>& solutions) {
  return Bench(build, solutions).set();
}

bool is_in_gear(const Build& build, const Situation& situation) {
  return std::any_of(situation.settings.begin(), situation.settings.end(), [&](const Setting& setting) {
    const Inside& inside = worked(build, setting);
    return inside.worked_by == "gear" && setting.position != inside.rest_position;
  });
}

}  // namespace loomfolio
