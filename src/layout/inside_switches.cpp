// SPDX-License-Identifier: MIT
// Switches. A pole of two nodes is a contact; one common with several ways is a selector; whatever joins its nodes in
// richer ways, or has all of them on one side of the box, is a table of positions, which needs no knowledge of symbols
// to be read.
#include <algorithm>
#include <numeric>

#include "base/text.h"
#include "layout/inside_block_makers.h"
#include "model/spec_words.h"

namespace loomfolio::inside {
namespace {

/// Groups of nodes (indices into Inside::nodes) that some position joins.
std::vector<std::vector<int>> find_poles(const Inside& inside, const Shown& shown) {
  std::vector<int> group(shown.nodes.size());
  std::iota(group.begin(), group.end(), 0);
  const auto join = [&](int a, int b) {
    const int keep = std::min(group[static_cast<std::size_t>(a)], group[static_cast<std::size_t>(b)]);
    const int lose = std::max(group[static_cast<std::size_t>(a)], group[static_cast<std::size_t>(b)]);
    std::replace(group.begin(), group.end(), lose, keep);
  };
  for (const SwitchPosition& position : inside.positions)
    for (const auto& joined : position.joined) {
      int first = -1;
      for (int n : joined) {
        if (shown.nodes[static_cast<std::size_t>(n)] < 0) continue;
        if (first >= 0) join(first, n);
        if (first < 0) first = n;
      }
    }
  std::vector<std::vector<int>> poles;
  for (int root = 0; root < static_cast<int>(group.size()); ++root) {
    std::vector<int> pole;
    for (int n = 0; n < static_cast<int>(group.size()); ++n)
      if (group[static_cast<std::size_t>(n)] == root && shown.nodes[static_cast<std::size_t>(n)] >= 0)
        pole.push_back(n);
    if (pole.size() >= 2) poles.push_back(std::move(pole));
  }
  return poles;
}

/// Members of the pole that the position joins, when they are one pair; empty when none is joined.
std::vector<int> joined_in(const SwitchPosition& position, const std::vector<int>& pole, const Shown& shown) {
  std::vector<int> members;
  for (const auto& joined : position.joined)
    for (int n : joined)
      if (shown.nodes[static_cast<std::size_t>(n)] >= 0 && std::find(pole.begin(), pole.end(), n) != pole.end())
        members.push_back(n);
  return members.size() >= 2 ? members : std::vector<int>{};
}

/// The node that every joined position of the pole shares, if each joins but two.
int find_common(const Inside& inside, const Shown& shown, const std::vector<int>& pole) {
  for (int candidate : pole) {
    const bool is_shared =
        std::all_of(inside.positions.begin(), inside.positions.end(), [&](const SwitchPosition& position) {
          const auto members = joined_in(position, pole, shown);
          return members.empty() ||
                 (members.size() == 2 && std::find(members.begin(), members.end(), candidate) != members.end());
        });
    if (is_shared) return candidate;
  }
  return -1;
}

/// Names of the positions that join that node, 'on' and its like left out where it is the only one.
std::string names_joining(const Inside& inside, const Shown& shown, const std::vector<int>& pole, int node) {
  std::vector<std::string> names;
  for (const SwitchPosition& position : inside.positions) {
    const auto members = joined_in(position, pole, shown);
    if (std::find(members.begin(), members.end(), node) != members.end()) names.push_back(position_words(position.name));
  }
  return join(names, ", ");
}

/// Whether one position alone joins that node, and the spec calls it 'on' or the like, whatever the pages call it.
bool says_little(const BlockMaker& maker, const Shown& shown, const std::vector<int>& pole, int node) {
  const std::string id =
      names_joining(maker.plan.kind->insides[static_cast<std::size_t>(shown.inside)], shown, pole, node);
  return id == "on" || id == "pressed" || id == "closed" || id == "held" || id == "in";
}

enum class Pole : std::uint8_t { only, first, further };

Block make_contact(const BlockMaker& maker, const Shown& shown, const std::vector<int>& pole, Pole which) {
  const Inside& inside = maker.inside(shown);
  const auto& rest = inside.positions[static_cast<std::size_t>(inside.rest_position)];
  TwoNodes what;
  what.symbol = joined_in(rest, pole, shown).empty() ? Symbol::make_contact : Symbol::break_contact;
  what.inside = shown.inside;
  what.is_linked = which != Pole::only;
  what.a = shown.nodes[static_cast<std::size_t>(pole[0])];
  what.b = shown.nodes[static_cast<std::size_t>(pole[1])];
  std::vector<TextLine> lines;
  if (which != Pole::further && !inside.name.empty()) lines.push_back({TextRole::element, inside.name});
  const std::string names = names_joining(inside, shown, pole, pole[0]);
  if (!names.empty() && !says_little(maker, shown, pole, pole[0])) lines.push_back({TextRole::position, names});
  return make_two_node_block(maker, what, lines);
}

bool are_on_one_side(const BlockMaker& maker, const Shown& shown, const std::vector<int>& pole) {
  const Hold hold = maker.levels.hold[static_cast<std::size_t>(shown.nodes[static_cast<std::size_t>(pole[0])])];
  return hold != Hold::none && std::all_of(pole.begin(), pole.end(), [&](int n) {
           return maker.levels.hold[static_cast<std::size_t>(shown.nodes[static_cast<std::size_t>(n)])] == hold;
         });
}

/// Whether common and ways stand on different sides, so that a selector flows.
bool can_be_selector(const BlockMaker& maker, const Shown& shown, const std::vector<int>& pole, int common) {
  const auto level = [&](int n) {
    return maker.levels.level[static_cast<std::size_t>(shown.nodes[static_cast<std::size_t>(n)])];
  };
  return std::all_of(pole.begin(), pole.end(), [&](int n) { return n == common || level(n) > level(common); }) ||
         std::all_of(pole.begin(), pole.end(), [&](int n) { return n == common || level(n) < level(common); });
}

Block make_pole_selector(const BlockMaker& maker, const Shown& shown, const std::vector<int>& pole, int common,
                         const std::vector<TextLine>& lines) {
  const Inside& inside = maker.inside(shown);
  const auto at_rest = joined_in(inside.positions[static_cast<std::size_t>(inside.rest_position)], pole, shown);
  Ways ways{shown.inside, shown.nodes[static_cast<std::size_t>(common)], {}, {}, -1};
  std::vector<int> order = pole;
  std::erase(order, common);
  for (int n : order) {
    if (std::find(at_rest.begin(), at_rest.end(), n) != at_rest.end()) ways.rest = static_cast<int>(ways.nodes.size());
    ways.nodes.push_back(shown.nodes[static_cast<std::size_t>(n)]);
    ways.names.push_back(names_joining(inside, shown, pole, n));
  }
  return make_selector(maker, ways, lines);
}

}  // namespace

std::vector<Block> make_switch(const BlockMaker& maker, const Shown& shown) {
  const Inside& inside = maker.inside(shown);
  const auto poles = find_poles(inside, shown);
  // Several poles that stand in three or more positions are more than dashed links can tell.
  if (poles.size() > 1 && inside.positions.size() > 2) return {make_table(maker, shown)};
  std::vector<int> commons;
  for (const auto& pole : poles) {
    const int common = pole.size() > 2 ? find_common(inside, shown, pole) : pole[0];
    const bool is_plain = pole.size() == 2 || (common >= 0 && !are_on_one_side(maker, shown, pole) &&
                                               can_be_selector(maker, shown, pole, common));
    if (!is_plain) return {make_table(maker, shown)};
    commons.push_back(common);
  }
  std::vector<Block> blocks;
  for (std::size_t p = 0; p < poles.size(); ++p) {
    const Pole which = poles.size() == 1 ? Pole::only : p == 0 ? Pole::first : Pole::further;
    std::vector<TextLine> lines;
    if (which != Pole::further && !inside.name.empty()) lines.push_back({TextRole::element, inside.name});
    blocks.push_back(poles[p].size() == 2 ? make_contact(maker, shown, poles[p], which)
                                          : make_pole_selector(maker, shown, poles[p], commons[p], lines));
    if (p > 0)
      for (PlacedSymbol& symbol : blocks.back().symbols) symbol.worked_by = Operator::none;
  }
  return blocks;
}

Block make_changeover(const BlockMaker& maker, const Shown& first, const Shown& second) {
  int common = -1;
  for (int node : first.nodes)
    if (std::find(second.nodes.begin(), second.nodes.end(), node) != second.nodes.end()) common = node;
  const auto other = [&](const Shown& shown) { return shown.nodes[0] == common ? shown.nodes[1] : shown.nodes[0]; };
  Ways ways{first.inside, common, {other(first), other(second)}, {"", ""}, maker.inside(first).closed_at_rest ? 0 : 1};
  Block block = make_selector(maker, ways, {});
  block.symbols[0].also = {second.inside};
  return block;
}

}  // namespace loomfolio::inside
