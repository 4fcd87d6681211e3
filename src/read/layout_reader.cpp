// SPDX-License-Identifier: MIT
// [layout]: where an author wants things on the diagrams. Names are resolved per build, in layout_wishes.cpp.
#include <algorithm>

#include "base/text.h"
#include "read/draft.h"

namespace loomfolio {
namespace {

constexpr std::pair<std::string_view, Side> edges[] = {
    {"top", Side::top}, {"right", Side::right}, {"bottom", Side::bottom}, {"left", Side::left}};

/// Key and text of each entry of the table under `key`.
std::vector<std::pair<PlacedText, PlacedText>> read_wishes(TableReader& table, std::string_view key) {
  std::vector<std::pair<PlacedText, PlacedText>> wishes;
  const TomlValue* tree = table.table(key);
  if (!tree) return wishes;
  for (const TomlEntry& entry : tree->entries)
    if (const PlacedText text = table.one_line(entry.value, std::string(key) + "." + entry.key, Need::must); text.where.is_set())
      wishes.push_back({{entry.key, entry.key_where}, text});
  return wishes;
}

/// One word, or two that meet in a corner; empty, with a finding, when it is neither.
std::vector<Side> read_edges(TableReader& table, const PlacedText& place) {
  std::vector<std::string> known;
  for (const auto& [word, side] : edges) known.emplace_back(word);
  std::vector<Side> found;
  for (const std::string& word : split(place.text, ' ')) {
    if (word.empty()) continue;
    const auto edge = std::find_if(std::begin(edges), std::end(edges), [&](const auto& e) { return e.first == word; });
    if (edge == std::end(edges)) {
      table.refuse_word("pin", {word, place.where}, known);
      return {};
    }
    found.push_back(edge->second);
  }
  const auto is_level = [](Side side) { return side == Side::left || side == Side::right; };
  if (found.size() > 2 || (found.size() == 2 && is_level(found[0]) == is_level(found[1]))) {
    table.report(DiagnosticId::layout_contradicts, place.where, quoted(place.text) + " is no one place",
                 "name an edge, or two that meet in a corner, as in \"top left\"");
    return {};
  }
  return found;
}

std::optional<std::string_view> read_function(TableReader& table, const PlacedText& sheet) {
  const auto found = std::find(diagram_functions.begin(), diagram_functions.end(), sheet.text);
  if (found != diagram_functions.end()) return *found;
  table.report(DiagnosticId::layout_no_such_sheet, sheet.where, "there is no diagram " + quoted(sheet.text),
               suggest_and_list(sheet.text, {diagram_functions.begin(), diagram_functions.end()}, "diagrams are drawn by function:"));
  return std::nullopt;
}

void read_apart(LayoutDraft& draft, TableReader& table) {
  const TomlValue* list = table.array("apart");
  if (!list) return;
  for (const TomlValue& item : list->items) {
    if (!table.expect_type(item, TomlType::array, "apart")) continue;
    if (item.items.size() != 2) {
      table.report(DiagnosticId::wrong_count, item.where,
                   "this holds " + std::to_string(item.items.size()) + " names; two are kept apart from each other");
      continue;
    }
    const PlacedText one = table.one_line(item.items[0], "apart", Need::must), other = table.one_line(item.items[1], "apart", Need::must);
    if (!one.where.is_set() || !other.where.is_set()) continue;
    if (one.text == other.text)
      table.report(DiagnosticId::layout_contradicts, other.where, quoted(other.text) + " cannot stand apart from itself");
    else
      draft.apart.push_back({one, other});
  }
}

/// Names in one list, each once.
std::vector<PlacedText> read_names(TableReader& table, const TomlValue& list, std::string_view key) {
  std::vector<PlacedText> names;
  for (const TomlValue& item : list.items) {
    const PlacedText name = table.one_line(item, std::string(key), Need::must);
    if (!name.where.is_set()) continue;
    const auto before = std::find_if(names.begin(), names.end(), [&](const PlacedText& other) { return other.text == name.text; });
    if (before == names.end())
      names.push_back(name);
    else
      table.report(DiagnosticId::layout_contradicts, name.where, quoted(name.text) + " stands here twice", "name it once",
                   {{before->where, "it is named here"}});
  }
  return names;
}

void read_gathered(LayoutDraft& draft, TableReader& table) {
  const TomlValue* lists = table.array("gather");
  if (!lists) return;
  for (const TomlValue& list : lists->items) {
    if (!table.expect_type(list, TomlType::array, "gather")) continue;
    if (list.items.size() < 2) {
      table.report(DiagnosticId::wrong_count, list.where, "one wire alone makes no thick course", "name two wires or more");
      continue;
    }
    draft.gathered.push_back(read_names(table, list, "gather"));
  }
}

}  // namespace

LayoutDraft read_layout(TableReader& spec) {
  LayoutDraft draft;
  const TomlValue* tree = spec.table("layout");
  if (!tree) return draft;
  TableReader table(*tree, "[layout]", spec.findings());
  for (const auto& [thing, place] : read_wishes(table, "pin"))
    if (std::vector<Side> edges_of_pin = read_edges(table, place); !edges_of_pin.empty())
      draft.pins.push_back({thing, std::move(edges_of_pin)});
  for (const auto& [thing, sheet] : read_wishes(table, "sheet"))
    if (const auto function = read_function(table, sheet)) draft.sheets.push_back({thing, *function, sheet.where});
  read_apart(draft, table);
  read_gathered(draft, table);
  if (const TomlValue* loose = table.array("loose")) draft.loose = read_names(table, *loose, "loose");
  table.refuse_unknown_keys();
  return draft;
}

}  // namespace loomfolio
