// SPDX-License-Identifier: MIT
#include "sheets/fuse_order.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "check/paths.h"
#include "sheets/fuse_list.h"
#include "solve/meter.h"
#include "solve/solution.h"

namespace loomfolio {
namespace {

constexpr double live_share = 0.5;   // of the nominal volts: a place that reads more has supply
constexpr double lasting_share = 0.75;

Amperes battery_gives(const Build& build, const Solution& solution) {
  double most = 0;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i)
      if (build.parts[p].insides[i].type == InsideType::source)
        most = std::max(most, std::abs(solution.insides[p][i].amperes.number()));
  return Amperes(most);
}

/// What a person sees, hears or feels; what stands for the inside of electronics is neither.
std::vector<InsideRef> working(const Build& build, const Solution& solution) {
  std::vector<InsideRef> works;
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    const bool is_hidden = build.kind_of(part).group == "control" ||
                           std::any_of(part.insides.begin(), part.insides.end(), [](const Inside& i) { return i.flashes; });
    for (std::size_t i = 0; i < part.insides.size(); ++i) {
      const InsideType type = part.insides[i].type;
      const bool is_load = type == InsideType::load && !is_hidden;
      if (!is_load && type != InsideType::lamp && type != InsideType::motor && type != InsideType::coil) continue;
      if (observed(part.insides[i], solution.insides[p][i]) != Expected::off)
        works.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  }
  return works;
}

class Trials {
 public:
  explicit Trials(const Build& build) : build_(build), bare_(build), left_(list_fuses(build)) {
    for (const InsideRef fuse : left_) {
      Inside& inside = inside_at(fuse);
      inside.type = InsideType::resistor;
      inside.resistance = pulled_fuse;
    }
    bare_.situations.assign(1, Situation{});
  }

  std::vector<FuseTrial> run() {
    if (!live_pole(build_).is_set()) return {};
    std::vector<std::vector<Setting>> ways{{}};
    for (const std::vector<Setting>& settings : settings_by_length()) ways.push_back(settings);
    for (const std::vector<Setting>& settings : ways) put_in_all(settings);
    for (const InsideRef fuse : left_) trials_.push_back({fuse, {}, false, Amperes(0), {}});
    return trials_;
  }

 private:
  Inside& inside_at(InsideRef ref) { return bare_.parts[ref.part.at()].insides[static_cast<std::size_t>(ref.inside)]; }

  /// Settings of the situations with the engine stopped, or as they would be with it stopped: a single switch alone
  /// first.
  std::vector<std::vector<Setting>> settings_by_length() const {
    std::vector<std::vector<Setting>> all;
    const auto add = [&](std::vector<Setting> settings) {
      const auto same = [&](const std::vector<Setting>& known) {
        return std::equal(
            known.begin(), known.end(), settings.begin(), settings.end(),
            [](const Setting& a, const Setting& b) { return a.actuator == b.actuator && a.position == b.position; });
      };
      if (!settings.empty() && std::none_of(all.begin(), all.end(), same)) all.push_back(std::move(settings));
    };
    for (const Situation& situation : build_.situations)
      for (const Setting& setting : situation.settings) add({setting});
    for (const Situation& situation : build_.situations) add(situation.settings);
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.size() < b.size(); });
    return all;
  }

  /// Every fuse that has supply with those settings, the nearest to the battery first.
  void put_in_all(const std::vector<Setting>& settings) {
    if (left_.empty()) return;
    bare_.situations.front().settings = settings;
    Solution before = solve_situation(bare_, SituationId{0});
    while (!left_.empty()) {
      const auto next =
          std::find_if(left_.begin(), left_.end(), [&](InsideRef fuse) { return has_supply(before, fuse); });
      if (next == left_.end()) return;
      const InsideRef fuse = *next;
      inside_at(fuse) = inside_of(build_, fuse);
      left_.erase(next);
      Solution after = solve_situation(bare_, SituationId{0});
      trials_.push_back({fuse, settings, true, battery_gives(build_, after), newly_working(before, after)});
      before = std::move(after);
    }
  }

  /// By a meter: behind a pulled fuse nothing holds a place, and a meter then reads nothing.
  bool has_supply(const Solution& solution, InsideRef fuse) const {
    const Part& part = build_.part(fuse.part);
    const std::vector<Inside::Node>& nodes = inside_of(build_, fuse).nodes;
    return std::any_of(nodes.begin(), nodes.end(), [&](const Inside::Node& node) {
      if (node.terminal < 0) return false;
      MeterPlace place;
      place.red = part.terminals[static_cast<std::size_t>(node.terminal)];
      const double volts = std::abs(read_meter(bare_, solution, place).number);
      return volts > build_.electrics.nominal.number() * live_share;
    });
  }

  std::vector<InsideRef> newly_working(const Solution& before, const Solution& after) const {
    std::vector<InsideRef> works;
    const std::vector<InsideRef> worked = working(build_, before);
    for (const InsideRef what : working(build_, after))
      if (std::find(worked.begin(), worked.end(), what) == worked.end()) works.push_back(what);
    return works;
  }

  const Build& build_;
  Build bare_;  ///< with the fuses that are in, one situation
  std::vector<InsideRef> left_;
  std::vector<FuseTrial> trials_;
};

}  // namespace

std::vector<FuseTrial> order_fuses(const Build& build) { return Trials(build).run(); }

std::vector<TrialSituation> situations_behind(const SolvedBuild& solved, Amperes test_fuse) {
  const Build& build = solved.build;
  std::vector<TrialSituation> all;
  for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
    const Situation& situation = build.situations[s];
    const bool is_pressed = std::any_of(situation.settings.begin(), situation.settings.end(), [&](const Setting& setting) {
      return inside_of(build, setting.actuator).is_sprung;
    });
    if (situation.engine != EngineState::stopped || situation.settings.empty() || is_pressed) continue;
    const SituationId id{static_cast<std::int32_t>(s)};
    const Solution& solution = solved.solutions[s];
    TrialSituation trial{id, battery_gives(build, solution), working(build, solution)};
    const bool turns = std::any_of(trial.works.begin(), trial.works.end(), [&](InsideRef what) {
      return inside_of(build, what).type == InsideType::motor;
    });
    if (trial.works.empty() || turns || trial.drawn.number() > test_fuse.number() * lasting_share) continue;
    all.push_back(std::move(trial));
  }
  return all;
}

Amperes trial_fuse(Amperes drawn) {
  constexpr std::array<double, 8> ratings{3, 5, 7.5, 10, 15, 20, 25, 30};
  for (const double rating : ratings)
    if (drawn.number() <= rating * lasting_share) return Amperes(rating);
  return Amperes(ratings.back());
}

}  // namespace loomfolio
