// SPDX-License-Identifier: MIT
#include <algorithm>

#include "base/text.h"
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"
#include "sheets/print_text.h"

namespace loomfolio {

PlainTable make_cuts_table(const SolvedBuild& solved, const Words& words) {
  std::vector<const Wire*> wires;
  for (const Wire& wire : solved.build.wires)
    if (wire.provided == Provider::kit) wires.push_back(&wire);
  std::stable_sort(wires.begin(), wires.end(), [](const Wire* a, const Wire* b) {
    if (a->area != b->area) return a->area < b->area;
    if (a->insulation != b->insulation) return a->insulation < b->insulation;
    if (a->colour.text() != b->colour.text()) return a->colour.text() < b->colour.text();
    return is_numbered_before(a->id, b->id);
  });
  PlainTable table{{"size_mm2", "size_as_given", "insulation", "colour", "wire", "length_mm", "purpose"}, {}};
  for (const Wire* wire : wires)
    table.rows.push_back({plain_number(wire->area.number(), 3), plain_text(wire->size_text),
                          print_insulation(wire->insulation, words), wire->colour.text(), wire->id, plain_length(wire->length),
                          plain_text(wire->purpose)});
  return table;
}

}  // namespace loomfolio
