// SPDX-License-Identifier: MIT
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"
#include "sheets/print_text.h"

namespace loomfolio {

PlainTable make_parts_table(const SolvedBuild& solved, const Words&) {
  const Build& build = solved.build;
  PlainTable table{{"part", "label", "kind", "kind_name", "value", "zone", "from_whom", "note", "cavity_plugs"}, {}};
  for (const Part& part : build.parts) {
    const Kind& kind = build.kind_of(part);
    table.rows.push_back({part.id, part.label, kind.id, kind.name, plain_text(part.value_text),
                          part.zone.is_set() ? PlainValue(zone_name(build.zones[part.zone.at()])) : PlainValue(),
                          plain_provider(part.provided), plain_text(part.note), plain_plugs(part.plugs)});
  }
  return table;
}

}  // namespace loomfolio
