// SPDX-License-Identifier: MIT
#include "read/kind_reader.h"

#include <algorithm>

#include "base/text.h"

namespace loomfolio {
namespace {

const std::vector<std::string> groups = {"supply",      "protection",  "switching",  "starting",
                                         "charging",    "ignition",    "lighting",   "signalling",
                                         "instruments", "accessories", "connecting", "control"};

void read_group(Kind& kind, TableReader& table) {
  const PlacedText group = table.placed_line("group", Need::must);
  if (!group.where.is_set()) return;
  kind.group = group.text;
  if (std::find(groups.begin(), groups.end(), group.text) == groups.end()) table.refuse_word("group", group, groups);
}

/// Classes of IEC 81346-2 are single capitals; I and O are never used.
void read_letter(Kind& kind, TableReader& table) {
  const PlacedText letter = table.placed_line("letter", Need::must);
  if (!letter.where.is_set()) return;
  kind.letter = letter.text;
  const bool is_capital = letter.text.size() == 1 && letter.text[0] >= 'A' && letter.text[0] <= 'Z';
  if (!is_capital || letter.text == "I" || letter.text == "O")
    table.report(DiagnosticId::unknown_word, letter.where,
                 "`" + letter.text + "` is no class letter; IEC 81346-2 has single capitals, never I or O");
}

/// Every `{name}` of the pattern must be a value of the kind.
void read_value_text(Kind& kind, TableReader& table) {
  const PlacedText pattern = table.placed_line("value_text", Need::may);
  kind.value_text = pattern.text;
  std::vector<std::string> names;
  for (const KindValue& value : kind.values) names.push_back(value.name);
  for (std::size_t open = pattern.text.find('{'); open != std::string::npos; open = pattern.text.find('{', open + 1)) {
    const std::size_t close = pattern.text.find('}', open);
    const std::string name = pattern.text.substr(open + 1, close == std::string::npos ? close : close - open - 1);
    if (std::find(names.begin(), names.end(), name) == names.end())
      table.report(DiagnosticId::unknown_value, pattern.where,
                   "`value_text` names `" + name + "`; the kind has no such value",
                   suggest_and_list(name, names, "its values are"));
  }
}

/// A value that nothing takes would be asked of every part in vain.
void check_values_used(const Kind& kind, TableReader& table) {
  for (const KindValue& value : kind.values) {
    const bool is_used = std::any_of(kind.value_uses.begin(), kind.value_uses.end(),
                                     [&](const ValueUse& use) { return use.value == value.name; });
    if (!is_used && kind.value_text.find("{" + value.name + "}") == std::string::npos)
      table.report(DiagnosticId::value_unused, table.tree().find("value")->value.find(value.name)->key_where,
                   "nothing takes value `" + value.name + "`",
                   "an inside element takes it as \"=" + value.name + "\", `value_text` as {" + value.name + "}");
  }
}

}  // namespace

const std::vector<std::string>& part_keys() {
  static const std::vector<std::string> keys = {"id", "kind", "zone", "label", "note", "provided", "fuse_choice",
                                                "cavity_plugs"};
  return keys;
}

void read_kind_values(Kind& kind, TableReader& table) {
  const TomlValue* values = table.table("value");
  if (!values) return;
  for (const TomlEntry& entry : values->entries) {
    const TomlValue& value = entry.value;
    if (value.type == TomlType::whole || value.type == TomlType::decimal)
      table.report(DiagnosticId::bare_number, value.where,
                   "`" + value.text + "` has no unit; a value is a text with its unit",
                   "write it as \"" + value.text + " V\", with the unit that fits");
    else {
      const auto& taken = part_keys();
      const PlacedText text = table.one_line(value, entry.key, Need::may);
      if (!is_id(entry.key))
        table.report(DiagnosticId::bad_id, entry.key_where,
                     quoted(entry.key) + " cannot be a value's name; it is letters, digits, `-` or `_`");
      else if (std::find(taken.begin(), taken.end(), entry.key) != taken.end())
        table.report(DiagnosticId::value_name_taken, entry.key_where,
                     "a value cannot be called `" + entry.key + "`; every part has that key");
      else if (text.where.is_set())
        kind.values.push_back({entry.key, text.text, {}});
    }
  }
}

Kind read_kind(const TomlValue& tree, const std::string& name, Diagnostics& findings) {
  TableReader table(tree, name, findings);
  Kind kind;
  kind.origin = table.origin();
  kind.id = table.id("id", Need::must);
  kind.name = table.line("name", Need::must);
  read_group(kind, table);
  read_letter(kind, table);
  kind.about = table.prose("about", Need::may);
  kind.mounting = table.prose("mounting", Need::may);
  kind.is_acting = table.truth("acting", false);
  kind.is_connector = table.truth("connector", false);
  read_kind_values(kind, table);
  read_value_text(kind, table);
  read_faces(kind, table);
  read_kind_terminals(kind, table);
  read_insides(kind, table);
  check_values_used(kind, table);
  table.refuse_unknown_keys();
  return kind;
}

}  // namespace loomfolio
