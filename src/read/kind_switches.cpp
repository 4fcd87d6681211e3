// SPDX-License-Identifier: MIT
// Elements that join more than two points: switches, outputs of a control unit, chargers.
#include <algorithm>

#include "read/kind_reader.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_joined = 60;  ///< terminals in a group, groups in a position

/// The index of that point among the element's nodes; a new one is added.
int index_of_node(Inside& inside, const Inside::Node& node) {
  for (std::size_t i = 0; i < inside.nodes.size(); ++i)
    if (inside.nodes[i].terminal == node.terminal && inside.nodes[i].inner == node.inner) return static_cast<int>(i);
  inside.nodes.push_back(node);
  return static_cast<int>(inside.nodes.size()) - 1;
}

std::vector<int> read_group(Inside& inside, const TomlValue& group, PointNames& points, TableReader& table) {
  std::vector<int> joined;
  if (!table.expect_type(group, TomlType::array, "positions") || !table.holds_at_most(group, most_joined, "positions"))
    return joined;
  for (const TomlValue& item : group.items)
    if (const PlacedText name = table.one_line(item, "positions", Need::must); name.where.is_set())
      joined.push_back(index_of_node(inside, points.node(name, table)));
  if (group.items.size() < 2)
    table.report(DiagnosticId::bad_position, group.where,
                 "a group joins at least two terminals; this one has " + std::to_string(group.items.size()));
  return joined;
}

SwitchPosition read_position(Inside& inside, const TomlEntry& entry, PointNames& points, TableReader& table) {
  SwitchPosition position{entry.key, {}};
  if (!is_id(entry.key))
    table.report(DiagnosticId::bad_id, entry.key_where,
                 quoted(entry.key) + " cannot be a position's name; it is letters, digits, `-` or `_`");
  if (!table.expect_type(entry.value, TomlType::array, entry.key) ||
      !table.holds_at_most(entry.value, most_joined, entry.key))
    return position;
  std::vector<int> seen;
  for (const TomlValue& group : entry.value.items) {
    const std::vector<int> joined = read_group(inside, group, points, table);
    for (const int node : joined)
      if (std::find(seen.begin(), seen.end(), node) != seen.end())
        table.report(DiagnosticId::bad_position, group.where,
                     "position " + quoted(entry.key) + " names a terminal twice; one group would do");
    seen.insert(seen.end(), joined.begin(), joined.end());
    position.joined.push_back(joined);
  }
  return position;
}

void read_rest(Inside& inside, TableReader& table) {
  const PlacedText rest = table.placed_line("rest", Need::may);
  if (!rest.where.is_set()) return;
  std::vector<std::string> names;
  for (const SwitchPosition& position : inside.positions) names.push_back(position.name);
  const auto found = std::find(names.begin(), names.end(), rest.text);
  if (found != names.end())
    inside.rest_position = static_cast<int>(found - names.begin());
  else
    table.report(DiagnosticId::unknown_position, rest.where,
                 "`rest` is `" + rest.text + "`, which is no position of the switch",
                 suggest_and_list(rest.text, names, "its positions are"));
}

}  // namespace

void read_switch(Inside& inside, PointNames& points, TableReader& table) {
  inside.is_sprung = table.truth("sprung", false);
  if (const TomlValue* positions = table.table("positions")) {
    for (const TomlEntry& entry : positions->entries)
      inside.positions.push_back(read_position(inside, entry, points, table));
    const bool joins =
        std::any_of(inside.positions.begin(), inside.positions.end(), [](const auto& p) { return !p.joined.empty(); });
    if (inside.positions.size() < 2)
      table.report(DiagnosticId::bad_position, positions->where,
                   "a switch has at least two positions; this one has " + std::to_string(inside.positions.size()));
    else if (!joins)
      table.report(DiagnosticId::bad_position, positions->where, "no position of this switch joins anything");
  } else if (!table.tree().find("positions")) {
    table.report(DiagnosticId::missing_key, table.where(), "a switch lacks `positions`");
  }
  read_rest(inside, table);
}

void read_output(Inside& inside, PointNames& points, TableReader& table) {
  for (const std::string_view key : {"supply", "out", "earth"}) {
    const PlacedText name = table.placed_line(key, Need::must);
    inside.nodes.push_back(name.where.is_set() ? points.node(name, table) : Inside::Node{});
  }
  inside.is_low_side = table.truth("low_side", false);
  const TomlValue* conditions = table.array("when");
  if (!conditions) return;
  constexpr Choice<bool> states[] = {{"live", true}, {"earthed", false}};
  for (const TomlValue& item : conditions->items) {
    if (!table.expect_type(item, TomlType::table, "when")) continue;
    TableReader condition(item, "`when`", table.findings());
    const PlacedText input = condition.placed_line("input", Need::must);
    const auto is_live = condition.choice<bool>("is", states, Need::must);
    condition.refuse_unknown_keys();
    if (!input.where.is_set() || !is_live) continue;
    inside.nodes.push_back(points.node(input, condition));
    inside.conditions.push_back({static_cast<int>(inside.nodes.size()) - 1, *is_live});
  }
}

void read_charger_feeds(Inside& inside, PointNames& points, TableReader& table) {
  for (const PlacedText& name : table.lines("fed_by")) {
    inside.nodes.push_back(points.node(name, table));
    inside.fed_by.push_back(static_cast<int>(inside.nodes.size()) - 1);
  }
}

}  // namespace loomfolio
