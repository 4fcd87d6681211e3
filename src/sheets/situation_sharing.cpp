// SPDX-License-Identifier: MIT
#include "sheets/situation_sharing.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/hook_ups.h"
#include "sheets/situation_paths.h"
#include "sheets/situation_state.h"
#include "sheets/situation_text.h"

namespace loomfolio {
namespace {

constexpr double amperes_share = 0.05, least_amperes = 0.05, volts_apart = 0.15;

bool is_near(double a, double b, double most) {
  if (std::isnan(a) || std::isnan(b)) return std::isnan(a) && std::isnan(b);
  return std::abs(a - b) <= most;
}

std::map<std::string, WireId> described_story(const Build& build, const SituationPair& pair) {
  std::map<std::string, WireId> story;
  for (const WireId wire : find_story(build, pair, StoryWidth::waiting)) story[describe_wire(build, build.wire(wire))] = wire;
  return story;
}

bool is_same_set(const Build& a, const Situation& in_a, const Build& b, const Situation& in_b) {
  const auto settings = [](const Build& build, const Situation& situation) {
    std::map<std::string, std::string> all;
    for (const Setting& setting : situation.settings) {
      const Inside& inside = inside_of(build, setting.actuator);
      all[build.part(setting.actuator.part).id + "." + inside.id] = std::to_string(setting.position);
    }
    return all;
  };
  return in_a.engine == in_b.engine && settings(a, in_a) == settings(b, in_b);
}

bool is_same_state(const Build& a, const SolvedState& in_a, WireId wire_a, const Build& b, const SolvedState& in_b,
                   WireId wire_b) {
  if (liveness_of(a, in_a.solution, wire_a) != liveness_of(b, in_b.solution, wire_b)) return false;
  const double flow_a = in_a.solution.wire_amperes[wire_a.at()].number(),
               flow_b = in_b.solution.wire_amperes[wire_b.at()].number();
  if (!is_near(flow_a, flow_b, std::max(least_amperes, amperes_share * std::abs(flow_a)))) return false;
  for (const auto end : {&Wire::from, &Wire::to})
    if (!is_near(in_a.solution.terminal_volts[(a.wire(wire_a).*end).at()].number(),
                 in_b.solution.terminal_volts[(b.wire(wire_b).*end).at()].number(), volts_apart))
      return false;
  return true;
}

/// The situation of the build that is fewest moves away, as the one before: for a situation in which pressing its
/// button changes nothing, such as a start that is refused, since what keeps it from working is then what there is to
/// see.
std::optional<SituationPair> pair_with_nearest(const SolvedBuild& solved, std::size_t after) {
  constexpr std::size_t most_moves = 4;
  const Build& build = solved.build;
  const auto state_of = [&](std::size_t s) {
    return SolvedState{build.situations[s], solved.solutions[s], static_cast<int>(s)};
  };
  std::optional<SituationPair> nearest;
  for (std::size_t s = 0; s < build.situations.size(); ++s) {
    if (s == after || !are_engines_near(build.situations[s].engine, build.situations[after].engine)) continue;
    auto moved = find_moved(build, build.situations[s], build.situations[after]);
    if (moved.empty() || moved.size() > most_moves) continue;
    if (nearest && nearest->moved.size() <= moved.size()) continue;
    SituationPair pair{state_of(s), state_of(after), std::move(moved)};
    if (!find_story(build, pair, StoryWidth::waiting).empty()) nearest = std::move(pair);
  }
  return nearest;
}

}  // namespace

std::optional<SituationPair> find_told_pair(const SolvedBuild& solved, SituationId situation) {
  auto pair = find_pair(solved, situation);
  if (!pair) return pair;
  const bool is_shown = pair->before.index >= 0 || !find_story(solved.build, *pair, StoryWidth::waiting).empty();
  return is_shown ? pair : pair_with_nearest(solved, situation.at());
}

bool tells_same(const Build& a, const SituationPair& pair_a, const Build& b, const SituationPair& pair_b) {
  if (!is_same_set(a, pair_a.before.situation, b, pair_b.before.situation) ||
      !is_same_set(a, pair_a.after.situation, b, pair_b.after.situation))
    return false;
  const auto story_a = described_story(a, pair_a), story_b = described_story(b, pair_b);
  if (story_a.empty()) return false;
  return std::equal(story_a.begin(), story_a.end(), story_b.begin(), story_b.end(), [&](const auto& x, const auto& y) {
    return x.first == y.first && is_same_state(a, pair_a.before, x.second, b, pair_b.before, y.second) &&
           is_same_state(a, pair_a.after, x.second, b, pair_b.after, y.second);
  });
}

namespace {

/// By hook-up: whether it tells the situation of that name like this one does.
std::vector<bool> find_alike(const SheetContext& context, SituationId situation, const SituationPair& pair) {
  std::vector<bool> alike;
  for (std::size_t b = 0; b < context.hook_ups->builds.size(); ++b) {
    const SolvedBuild& other = *context.hook_ups->builds[b];
    bool is_alike = b == context.build_index;
    const std::string& name = context.build().situations[situation.at()].name;
    for (std::size_t s = 0; s < other.build.situations.size() && !is_alike; ++s) {
      if (other.build.situations[s].name != name) continue;
      const auto found = find_told_pair(other, SituationId{static_cast<std::int32_t>(s)});
      is_alike = found && tells_same(context.build(), pair, other.build, *found);
    }
    alike.push_back(is_alike);
  }
  return alike;
}

}  // namespace

DrawnWhere drawn_where(const SheetContext& context, SituationId situation, const SituationPair& pair) {
  if (context.hook_ups == nullptr) return {};
  const std::vector<bool> alike = find_alike(context, situation, pair);
  DrawnWhere where;
  where.is_common = std::all_of(alike.begin(), alike.end(), [](bool is) { return is; });
  const auto first = static_cast<std::size_t>(std::find(alike.begin(), alike.end(), true) - alike.begin());
  where.is_own = !where.is_common && first == context.build_index;
  if (!where.is_own && !where.is_common) where.variant = context.hook_ups->builds[first]->build.variant;
  return where;
}

std::string letters_of_alike(const SheetContext& context, SituationId situation, const SituationPair& pair) {
  std::vector<std::string> letters;
  if (context.hook_ups == nullptr) return {};
  const std::vector<bool> alike = find_alike(context, situation, pair);
  for (std::size_t b = 0; b < alike.size(); ++b)
    if (alike[b]) letters.push_back(hook_up_letter(b));
  return join(letters, ", ");
}

}  // namespace loomfolio
