// SPDX-License-Identifier: MIT
#include "sheets/situation_pairs.h"

#include <algorithm>
#include <utility>

#include "check/paths.h"
#include "sheets/situation_state.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_moved = 2;
constexpr int rank_of_machine = 4;  // of switches that gear, stand or pressure works

bool is_at_rest(const Build& build, InsideRef actuator, int position) {
  return inside_of(build, actuator).rest_position == position;
}

/// Whether `before` leads to the later one by moving few switches out of rest, or one from place to place.
bool leads_to(const Build& build, std::size_t before, std::size_t after, const std::vector<MovedSwitch>& moved) {
  if (moved.empty() || moved.size() > most_moved) return false;
  if (!are_engines_near(build.situations[before].engine, build.situations[after].engine)) return false;
  const bool starts_at_rest = std::all_of(
      moved.begin(), moved.end(), [&](const MovedSwitch& m) { return is_at_rest(build, m.actuator, m.before); });
  return starts_at_rest ||
         (moved.size() == 1 && before < after && !is_at_rest(build, moved[0].actuator, moved[0].after));
}

/// How good a switch is to let go of: a button or lever first, what the engine or the stand works last.
int rank_of(const Build& build, InsideRef actuator) {
  const Inside& inside = inside_of(build, actuator);
  const bool is_by_rider = inside.worked_by == "hand" || inside.worked_by == "foot" || inside.worked_by.empty();
  if (inside.is_sprung && is_by_rider) return 0;
  if (inside.worked_by == "clutch") return 1;
  if (is_by_rider) return 2;
  return inside.worked_by == "key" ? 3 : rank_of_machine;
}

SolvedState solve_own(const Build& build, Situation situation) {
  Build own = build;
  own.situations.push_back(situation);
  const SituationId id{static_cast<std::int32_t>(own.situations.size()) - 1};
  SolvedState state{std::move(situation), solve_situation(own, id), -1};
  return state;
}

SolvedState named_state(const SolvedBuild& solved, std::size_t index) {
  return {solved.build.situations[index], solved.solutions[index], static_cast<int>(index)};
}

/// The situation of the build one action before, if there is one: fewest moves, sprung switches first.
std::optional<std::size_t> find_named(const Build& build, std::size_t after) {
  std::optional<std::size_t> best;
  std::pair<std::size_t, int> least{most_moved + 1, 0};
  for (std::size_t before = 0; before < build.situations.size(); ++before) {
    if (before == after) continue;
    const auto moved = find_moved(build, build.situations[before], build.situations[after]);
    if (!leads_to(build, before, after, moved)) continue;
    const std::pair<std::size_t, int> cost{moved.size(), rank_of(build, moved.front().actuator)};
    if (cost >= least) continue;
    least = cost;
    best = before;
  }
  return best;
}

/// A named pair of two moves is worse than letting go of one button.
bool has_button(const Build& build, const Situation& situation) {
  return std::any_of(situation.settings.begin(), situation.settings.end(), [&](const Setting& s) {
    return rank_of(build, s.actuator) == 0 && !is_at_rest(build, s.actuator, s.position);
  });
}

std::optional<Situation> released(const Build& build, const Situation& situation) {
  const Setting* chosen = nullptr;
  for (const Setting& setting : situation.settings) {
    if (is_at_rest(build, setting.actuator, setting.position)) continue;
    if (chosen == nullptr || rank_of(build, setting.actuator) <= rank_of(build, chosen->actuator)) chosen = &setting;
  }
  if (chosen == nullptr) return std::nullopt;
  Situation before = situation;
  before.name.clear();
  before.label.clear();
  before.expectations.clear();
  before.settings.erase(before.settings.begin() + (chosen - situation.settings.data()));
  if (before.engine == EngineState::cranking) before.engine = EngineState::stopped;
  return before;
}

}  // namespace

bool are_engines_near(EngineState a, EngineState b) {
  return a == b || (a != EngineState::running && b != EngineState::running);
}

std::vector<MovedSwitch> find_moved(const Build& build, const Situation& before, const Situation& after) {
  std::vector<MovedSwitch> moved;
  const auto compare = [&](InsideRef actuator) {
    const MovedSwitch m{actuator, position_in(build, before, actuator), position_in(build, after, actuator)};
    const bool is_known =
        std::any_of(moved.begin(), moved.end(), [&](const MovedSwitch& k) { return k.actuator == actuator; });
    if (m.before != m.after && !is_known) moved.push_back(m);
  };
  for (const Setting& setting : after.settings) compare(setting.actuator);
  for (const Setting& setting : before.settings) compare(setting.actuator);
  return moved;
}

std::optional<SituationPair> find_pair(const SolvedBuild& solved, SituationId id) {
  const Build& build = solved.build;
  if (id.at() >= solved.solutions.size()) return std::nullopt;
  SituationPair pair;
  pair.after = named_state(solved, id.at());
  const auto named = find_named(build, id.at());
  // A gear engaged or a stand put down is no action to show where there is a button to press.
  bool is_near = named && !has_button(build, pair.after.situation);
  if (named && !is_near) {
    const auto moved = find_moved(build, build.situations[*named], pair.after.situation);
    is_near = moved.size() == 1 && rank_of(build, moved.front().actuator) < rank_of_machine;
  }
  if (named && is_near) {
    pair.before = named_state(solved, *named);
  } else {
    const auto before = released(build, pair.after.situation);
    if (!before) return std::nullopt;
    pair.before = solve_own(build, *before);
  }
  pair.moved = find_moved(build, pair.before.situation, pair.after.situation);
  return pair;
}

SolvedState let_go(const Build& build, const SituationPair& pair) {
  Situation situation = pair.before.situation;
  situation.name.clear();
  situation.after = pair.after.situation.name;
  return solve_own(build, std::move(situation));
}

}  // namespace loomfolio
