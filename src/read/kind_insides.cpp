// SPDX-License-Identifier: MIT
// What is inside a kind of part: the elements, the points that they join, and the values that they take.
#include <algorithm>

#include "base/text.h"
#include "read/inside_keys.h"
#include "read/kind_reader.h"

namespace loomfolio {
namespace {

const InsideTypeRule* find_type(TableReader& table) {
  const PlacedText type = table.placed_line("type", Need::must);
  if (!type.where.is_set()) return nullptr;
  std::vector<std::string> words;
  for (const InsideTypeRule& rule : inside_type_rules()) {
    if (rule.word == type.text) return &rule;
    words.emplace_back(rule.word);
  }
  table.refuse_word("type", type, words);
  return nullptr;
}

void read_between(Inside& inside, PointNames& points, TableReader& table) {
  if (!table.tree().find("between")) {
    table.take("between", Need::must);
    return;
  }
  const std::vector<PlacedText> ends = table.lines("between");
  const Where where = table.origin().key("between");
  if (ends.size() != 2) {
    if (table.tree().find("between")->value.type == TomlType::array)
      table.report(DiagnosticId::wrong_count, where,
                   "`between` holds " + std::to_string(ends.size()) + " points; it takes two");
    return;
  }
  if (ends[0].text == ends[1].text)
    table.report(DiagnosticId::inside_shorted, where, "both ends of `" + inside.id + "` are at `" + ends[0].text + "`");
  for (const PlacedText& end : ends) inside.nodes.push_back(points.node(end, table));
}

/// One quantity or word: written out, or taken from a value of the kind.
void read_key(Kind& kind, Inside& inside, const InsideKey& key, TableReader& table) {
  const TomlEntry* entry = table.take(key.key);
  if (!entry) return;
  const std::string& text = entry->value.text;
  if (entry->value.type == TomlType::text && text.starts_with('=')) {
    const std::string name = trimmed(std::string_view(text).substr(1));
    std::vector<std::string> names;
    for (const KindValue& value : kind.values) names.push_back(value.name);
    if (std::find(names.begin(), names.end(), name) == names.end())
      table.report(DiagnosticId::unknown_value, entry->value.where, "the kind has no value `" + name + "`",
                   names.empty() ? "it has no [value] table" : suggest_and_list(name, names, "its values are"));
    else
      kind.value_uses.push_back(
          {static_cast<int>(kind.insides.size()), std::string(key.key), name, entry->value.where});
    return;
  }
  if (key.set_number) {
    if (const auto number = table.parse(entry->value, key.key, key.rule)) key.set_number(inside, *number);
    return;
  }
  QuantityFault fault;
  if (table.expect_type(entry->value, TomlType::text, key.key) && !write_inside_key(inside, key, text, fault))
    table.report(fault.id, entry->value.where, fault.message, fault.hint);
}

void read_keys(Kind& kind, Inside& inside, const InsideTypeRule& rule, TableReader& table) {
  for (const std::string_view key : rule.keys) read_key(kind, inside, *find_inside_key(key), table);
  const bool has_one =
      std::any_of(rule.one_of.begin(), rule.one_of.end(), [&](std::string_view key) { return table.tree().find(key); });
  if (rule.one_of.empty() || has_one) return;
  std::vector<std::string> words(rule.one_of.begin(), rule.one_of.end());
  table.report(DiagnosticId::missing_key, table.where(),
               "a " + std::string(rule.word) + " lacks " + (words.size() == 1 ? "" : "one of ") + list_words(words));
}

void read_own_keys(Inside& inside, PointNames& points, TableReader& table) {
  switch (inside.type) {
    case InsideType::contact:
      inside.flashes = table.truth("flashes", false);
      inside.coil = table.line("coil", inside.flashes ? Need::may : Need::must);
      break;
    case InsideType::fuse:
      inside.is_spare = table.truth("spare", false);
      break;
    case InsideType::resistor:
      inside.is_winding = table.truth("winding", false);
      inside.is_secondary = table.truth("secondary", false);
      break;
    case InsideType::switch_:
      read_switch(inside, points, table);
      break;
    case InsideType::output:
      read_output(inside, points, table);
      break;
    case InsideType::charger:
      read_charger_feeds(inside, points, table);
      break;
    default:
      break;
  }
}

void read_inside(Kind& kind, const TomlValue& tree, PointNames& points, Diagnostics& findings) {
  TableReader table(tree, "[[inside]]", findings);
  Inside inside;
  inside.where = table.where();
  inside.id = table.id("id", Need::must);
  for (const Inside& other : kind.insides)
    if (!inside.id.empty() && other.id == inside.id) {
      table.report(DiagnosticId::duplicate_id, table.origin().key("id"),
                   "the kind has two inside elements `" + inside.id + "`", {},
                   {{other.where, "the first stands here"}});
    }
  inside.name = table.line("name", Need::may);
  const InsideTypeRule* rule = find_type(table);
  if (!rule) return;
  inside.type = rule->type;
  if (inside.type != InsideType::switch_ && inside.type != InsideType::output) read_between(inside, points, table);
  read_keys(kind, inside, *rule, table);
  read_own_keys(inside, points, table);
  table.refuse_unknown_keys();
  kind.insides.push_back(inside);
}

void check_coils(const Kind& kind, TableReader& table) {
  std::vector<std::string> coils;
  for (const Inside& inside : kind.insides)
    if (inside.type == InsideType::coil) coils.push_back(inside.id);
  for (const Inside& inside : kind.insides) {
    if (inside.type != InsideType::contact || inside.coil.empty()) continue;
    if (std::find(coils.begin(), coils.end(), inside.coil) == coils.end())
      table.report(DiagnosticId::unknown_coil, inside.where,
                   "contact `" + inside.id + "` is worked by `" + inside.coil + "`, which is no coil of the kind",
                   coils.empty() ? "the kind has no coil" : suggest_and_list(inside.coil, coils, "its coils are"));
  }
}

}  // namespace

Inside::Node PointNames::node(const PlacedText& name, TableReader& table) {
  if (name.text.starts_with('.') && name.text.size() > 1) {
    Inner& inner = inner_[name.text];
    if (inner.index < 0) inner.index = kind_.inner_points++, inner.where = name.where;
    ++inner.uses;
    return {-1, inner.index};
  }
  std::vector<std::string> ids;
  for (std::size_t i = 0; i < kind_.terminals.size(); ++i) {
    if (kind_.terminals[i].id == name.text) return {static_cast<int>(i), -1};
    ids.push_back(kind_.terminals[i].id);
  }
  table.report(DiagnosticId::unknown_point, name.where, "the kind has no terminal `" + name.text + "`",
               suggest_and_list(name.text, ids, "its terminals are"));
  return {};
}

void PointNames::refuse_lone_inner_points(TableReader& table) const {
  for (const auto& [name, inner] : inner_)
    if (inner.uses == 1)
      table.report(DiagnosticId::lone_inner_point, inner.where,
                   "inner point `" + name + "` is used once; it must join two elements");
}

void fill_insides(std::vector<Inside>& insides, const Kind& kind, const std::vector<ValueText>& values,
                  Diagnostics& findings) {
  for (const ValueUse& use : kind.value_uses) {
    const auto value =
        std::find_if(values.begin(), values.end(), [&](const ValueText& v) { return v.name == use.value; });
    if (value == values.end() || value->text.empty() || static_cast<std::size_t>(use.inside) >= insides.size())
      continue;
    QuantityFault fault;
    if (write_inside_key(insides[static_cast<std::size_t>(use.inside)], *find_inside_key(use.key), value->text, fault))
      continue;
    Diagnostic finding = make_diagnostic(fault.id, value->where, fault.message, fault.hint);
    finding.notes.push_back({use.where, "value `" + use.value + "` is used here"});
    add_finding(findings, std::move(finding));
  }
}

void check_coil_volts(const std::vector<Inside>& insides, Where where, std::string_view owner, Diagnostics& findings) {
  for (const Inside& inside : insides)
    if (inside.pull_in && inside.drop_out && *inside.drop_out >= *inside.pull_in)
      add_finding(findings, make_diagnostic(DiagnosticId::coil_holds_backwards, where,
                                            std::string(owner) + ": coil `" + inside.id + "` pulls in at " +
                                                print_quantity(inside.pull_in->number(), Dimension::voltage) +
                                                " and lets go at " +
                                                print_quantity(inside.drop_out->number(), Dimension::voltage) +
                                                "; it lets go below what pulls it in"));
}

void read_insides(Kind& kind, TableReader& table) {
  PointNames points(kind);
  for (const TomlValue* tree : table.tables("inside", 300)) read_inside(kind, *tree, points, table.findings());
  points.refuse_lone_inner_points(table);
  check_coils(kind, table);
  std::vector<ValueText> standards;
  const TomlEntry* written = table.tree().find("value");
  for (const KindValue& value : kind.values)
    standards.push_back({value.name, value.standard, written->value.find(value.name)->value.where});
  fill_insides(kind.insides, kind, standards, table.findings());
  check_coil_volts(kind.insides, table.origin().key("id"), "kind `" + kind.id + "`", table.findings());
}

}  // namespace loomfolio
