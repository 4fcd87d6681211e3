// SPDX-License-Identifier: MIT
#include "sheets/overview_brackets.h"

#include <algorithm>
#include <map>

namespace loomfolio {
namespace {

constexpr Millimetres end_pitch{4};

std::vector<OverviewBracket> count_wires(const Build& build, const std::vector<std::size_t>& zones) {
  std::map<std::pair<std::size_t, std::size_t>, int> counts;
  const auto column_of = [&](TerminalId terminal) {
    const auto found = std::find(zones.begin(), zones.end(), zone_of(build, terminal).at());
    return static_cast<std::size_t>(found - zones.begin());
  };
  for (const Wire& wire : build.wires) {
    const std::size_t a = column_of(wire.from), b = column_of(wire.to);
    if (a != b) ++counts[std::minmax(a, b)];
  }
  std::vector<OverviewBracket> brackets;
  for (const auto& [pair, wires] : counts) brackets.push_back({pair.first, pair.second, wires, 0, {}, {}});
  return brackets;
}

/// Each bracket on the highest level that nothing under its span has taken; short spans choose first.
void choose_levels(std::vector<OverviewBracket>& brackets) {
  std::stable_sort(brackets.begin(), brackets.end(),
                   [](const OverviewBracket& a, const OverviewBracket& b) { return a.right - a.left < b.right - b.left; });
  for (std::size_t i = 0; i < brackets.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const bool is_apart = brackets[j].right <= brackets[i].left || brackets[i].right <= brackets[j].left;
      if (!is_apart) brackets[i].level = std::max(brackets[i].level, brackets[j].level + 1);
    }
}

}  // namespace

std::vector<OverviewBracket> make_overview_brackets(const Build& build, const std::vector<std::size_t>& zones) {
  std::vector<OverviewBracket> brackets = count_wires(build, zones);
  choose_levels(brackets);
  return brackets;
}

/// Ends along a column's foot: those that come from the left first, the deepest at the right; then those that go right, the
/// deepest at the left.
void place_bracket_ends(std::vector<OverviewBracket>& brackets, const std::vector<Millimetres>& middles) {
  for (std::size_t column = 0; column < middles.size(); ++column) {
    std::vector<OverviewBracket*> from_left, to_right;
    for (OverviewBracket& b : brackets) {
      if (b.right == column) from_left.push_back(&b);
      if (b.left == column) to_right.push_back(&b);
    }
    const auto shallow_first = [](const OverviewBracket* a, const OverviewBracket* b) { return a->level < b->level; };
    std::stable_sort(from_left.begin(), from_left.end(), shallow_first);
    std::stable_sort(to_right.begin(), to_right.end(), shallow_first);
    std::reverse(to_right.begin(), to_right.end());
    const double ends = static_cast<double>(from_left.size() + to_right.size());
    Millimetres x = middles[column] - end_pitch * ((ends - 1) / 2);
    for (OverviewBracket* b : from_left) b->right_x = x, x += end_pitch;
    for (OverviewBracket* b : to_right) b->left_x = x, x += end_pitch;
  }
}

}  // namespace loomfolio
