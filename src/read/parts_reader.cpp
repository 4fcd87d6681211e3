// SPDX-License-Identifier: MIT
// Parts: their kind, and the values that they give it.
#include <algorithm>

#include "base/text.h"
#include "read/draft.h"
#include "read/inside_keys.h"
#include "read/kind_reader.h"

namespace loomfolio {
namespace {

/// A misspelt kind, else those whose id holds the word: of `relay`, all relays.
std::string suggest_kind(const std::string& word, const std::vector<std::string>& ids) {
  const std::string nearest = suggest(word, ids, "");
  if (!nearest.empty()) return nearest;
  std::vector<std::string> related;
  for (const std::string& id : ids)
    if (word.size() >= 3 && id.find(word) != std::string::npos) related.push_back(id);
  if (!related.empty()) return "there are " + list_words(related);
  return "`loomfolio parts` lists the kinds; a [[kind]] in the spec adds one";
}

KindId read_kind_name(const SpecDraft& draft, TableReader& table) {
  const PlacedText name = table.placed_line("kind", Need::must);
  if (!name.where.is_set()) return {};
  std::vector<std::string> ids;
  for (std::size_t i = 0; i < draft.kinds.size(); ++i) {
    if (draft.kinds[i].id == name.text) return {static_cast<std::int32_t>(i)};
    ids.push_back(draft.kinds[i].id);
  }
  table.report(DiagnosticId::unknown_kind, name.where, "there is no kind " + quoted(name.text),
               suggest_kind(name.text, ids));
  return {};
}

/// What a value must be, from the first place that uses it; nothing for free text.
const InsideKey* find_use(const Kind& kind, const std::string& value) {
  for (const ValueUse& use : kind.value_uses)
    if (use.value == value) return find_inside_key(use.key);
  return nullptr;
}

ValueText read_value(const Kind& kind, const KindValue& value, const Part& part, TableReader& table) {
  const TomlEntry* entry = table.take(value.name);
  if (!entry) {
    if (value.standard.empty())
      table.report(DiagnosticId::missing_key, table.where(),
                   "part `" + part.id + "` lacks `" + value.name + "`, which kind `" + kind.id + "` leaves to it");
    return {value.name, value.standard, {}};
  }
  const InsideKey* use = find_use(kind, value.name);
  const TomlValue& given = entry->value;
  if (use && use->set_number && (given.type == TomlType::whole || given.type == TomlType::decimal)) {
    table.parse(given, value.name, use->rule);
    return {value.name, value.standard, {}};
  }
  const PlacedText text = table.placed_line(value.name, Need::must);
  return {value.name, text.where.is_set() ? text.text : value.standard, text.where};
}

void read_values(Part& part, const Kind& kind, TableReader& table) {
  std::vector<ValueText> given;
  for (const KindValue& value : kind.values) {
    const ValueText text = read_value(kind, value, part, table);
    part.values.emplace_back(text.name, text.text);
    if (text.where.is_set()) given.push_back(text);
  }
  part.insides = kind.insides;
  fill_insides(part.insides, kind, given, table.findings());
  if (!given.empty())
    check_coil_volts(part.insides, table.origin().key("id"), "part `" + part.id + "`", table.findings());
  part.value_text = fill(kind.value_text, part.values);
}

void read_fuse_choice(Part& part, TableReader& table) {
  constexpr QuantityRule rating_rule{Dimension::current, {0.1, 500}};
  const auto range = table.range("fuse_choice", rating_rule);
  if (!range) return;
  part.fuse_choice.push_back({Amperes(range->first), Amperes(range->second)});
  const bool has_fuse =
      std::any_of(part.insides.begin(), part.insides.end(), [](const Inside& i) { return i.type == InsideType::fuse; });
  if (!has_fuse && part.kind.is_set())
    table.report(DiagnosticId::not_a_fuse, table.origin().key("fuse_choice"),
                 "part `" + part.id + "` holds no fuse; only a fuse may be left to the fitter");
}

void read_cavity_plugs(Part& part, const SpecDraft& draft, TableReader& table) {
  static constexpr Choice<PlugSource> sources[] = {
      {"bag", PlugSource::bag}, {"fitted", PlugSource::fitted}, {"none", PlugSource::nowhere}};
  const auto source = table.choice<PlugSource>("cavity_plugs", sources, Need::may);
  if (!source) return;
  part.plugs = *source;
  if (!part.kind.is_set()) return;
  const std::vector<KindTerminal>& terminals = draft.kinds[part.kind.at()].terminals;
  const bool is_sealed = std::any_of(terminals.begin(), terminals.end(), [](const KindTerminal& terminal) {
    return terminal.form == TerminalForm::sealed;
  });
  if (!is_sealed)
    table.report(DiagnosticId::no_sealed_cavity, table.origin().key("cavity_plugs"),
                 "part `" + part.id + "` has no sealed cavity; only such a cavity takes a plug");
}

}  // namespace

std::optional<Provider> read_provider(TableReader& table) {
  static constexpr Choice<Provider> providers[] = {{"kit", Provider::kit}, {"machine", Provider::machine}};
  return table.choice<Provider>("provided", providers, Need::may);
}

std::vector<Part> read_parts(const SpecDraft& draft, TableReader& owner, const std::string& prefix) {
  std::vector<Part> parts;
  for (const TomlValue* tree : owner.tables("part", 5000)) {
    TableReader table(*tree, "[[" + prefix + "part]]", owner.findings());
    Part part;
    part.origin = table.origin();
    part.id = table.id("id", Need::must);
    part.kind = read_kind_name(draft, table);
    part.zone = read_zone_name(draft, table);
    part.label = table.line("label", Need::may);
    part.note = table.prose("note", Need::may);
    part.provided = read_provider(table).value_or(Provider::kit);
    if (part.kind.is_set()) {
      const Kind& kind = draft.kinds[part.kind.at()];
      if (part.label.empty()) part.label = kind.name;
      read_values(part, kind, table);
    }
    read_fuse_choice(part, table);
    read_cavity_plugs(part, draft, table);
    if (part.kind.is_set()) table.refuse_unknown_keys();
    parts.push_back(std::move(part));
  }
  return parts;
}

std::vector<Splice> read_splices(const SpecDraft& draft, TableReader& owner, const std::string& prefix) {
  std::vector<Splice> splices;
  for (const TomlValue* tree : owner.tables("splice", 5000)) {
    TableReader table(*tree, "[[" + prefix + "splice]]", owner.findings());
    Splice splice;
    splice.origin = table.origin();
    splice.id = table.id("id", Need::must);
    splice.zone = read_zone_name(draft, table);
    splice.label = table.line("label", Need::may);
    if (splice.label.empty()) splice.label = splice.id;
    splice.note = table.prose("note", Need::may);
    table.refuse_unknown_keys();
    splices.push_back(std::move(splice));
  }
  return splices;
}

std::vector<Earth> read_earths(const SpecDraft& draft, TableReader& owner, const std::string& prefix) {
  constexpr QuantityRule resistance_rule{Dimension::resistance, {0, 10}};
  std::vector<Earth> earths;
  for (const TomlValue* tree : owner.tables("earth", 500)) {
    TableReader table(*tree, "[[" + prefix + "earth]]", owner.findings());
    Earth earth;
    earth.origin = table.origin();
    earth.id = table.id("id", Need::must);
    earth.zone = read_zone_name(draft, table);
    earth.label = table.line("label", Need::may);
    if (earth.label.empty()) earth.label = earth.id;
    earth.place = table.line("place", Need::may);
    earth.thread = table.line("thread", Need::may);
    earth.resistance = table.quantity<Ohms>("resistance", resistance_rule);
    table.refuse_unknown_keys();
    earths.push_back(std::move(earth));
  }
  return earths;
}

}  // namespace loomfolio
