// SPDX-License-Identifier: MIT
#include <algorithm>
#include <set>

#include "base/text.h"
#include "read/draft.h"

namespace loomfolio {
namespace {

constexpr Choice<Insulation> insulations[] = {{"thin_wall", Insulation::thin_wall},
                                              {"thick_wall", Insulation::thick_wall},
                                              {"cross_linked", Insulation::cross_linked},
                                              {"silicone", Insulation::silicone},
                                              {"battery_cable", Insulation::battery_cable}};
// What a motorcycle's loom may hold, wide on both sides; no source, common practice.
constexpr QuantityRule size_rule{Dimension::area, {0.1, 150}};
constexpr QuantityRule length_rule{Dimension::loom_length, {0.005, 30}};
constexpr QuantityRule outside_rule{Dimension::paper_length, {0.5, 40}};

void read_size(Wire& wire, TableReader& table) {
  const TomlEntry* entry = table.take("size", Need::must);
  if (!entry) return;
  if (entry->value.type == TomlType::text && trimmed(entry->value.text) == "auto") {
    wire.is_auto_size = true;
    wire.size_text = "auto";
    return;
  }
  const auto area = table.parse(entry->value, "size", size_rule);
  if (!area) return;
  wire.area = SquareMillimetres(*area);
  wire.size_text = trimmed(entry->value.text);
}

WireDraft read_wire(const TomlValue& tree, const std::string& prefix, Diagnostics& findings) {
  TableReader table(tree, "[[" + prefix + "wire]]", findings);
  WireDraft draft;
  Wire& wire = draft.wire;
  wire.origin = table.origin();
  wire.id = table.id("id", Need::may);
  draft.from = table.placed_line("from", Need::must);
  draft.to = table.placed_line("to", Need::must);
  wire.colour = read_colour(table);
  read_size(wire, table);
  wire.length = table.quantity<Metres>("length", length_rule);
  wire.insulation = table.choice<Insulation>("insulation", insulations, Need::may).value_or(Insulation::thin_wall);
  wire.outside = table.quantity<Millimetres>("outside", outside_rule);
  wire.purpose = table.line("purpose", Need::may);
  wire.cable = table.line("cable", Need::may);
  draft.provided = read_provider(table);
  table.refuse_unknown_keys();
  return draft;
}

}  // namespace

std::vector<WireDraft> read_wires(TableReader& owner, const std::string& prefix) {
  std::vector<WireDraft> wires;
  for (const TomlValue* tree : owner.tables("wire", 20000)) wires.push_back(read_wire(*tree, prefix, owner.findings()));
  return wires;
}

void number_wires(SpecDraft& draft) {
  std::vector<std::vector<WireDraft>*> lists = {&draft.base.wires};
  for (VariantDraft& variant : draft.variants) lists.push_back(&variant.items.wires);
  std::set<std::string> given;
  for (const auto* list : lists)
    for (const WireDraft& wire : *list) given.insert(wire.wire.id);
  int number = 1;
  for (auto* list : lists)
    for (WireDraft& wire : *list) {
      if (!wire.wire.id.empty()) continue;
      while (given.count(std::to_string(number))) ++number;
      wire.wire.id = std::to_string(number++);
    }
}

}  // namespace loomfolio
