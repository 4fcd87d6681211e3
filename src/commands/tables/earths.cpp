// SPDX-License-Identifier: MIT
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"
#include "sheets/fitting_text.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

/// Where wires meet.
struct MeetingPlace {
  std::string type, id, label, thread;
  ZoneId zone;
  TerminalId terminal;
};

std::vector<MeetingPlace> places_of(const Build& build) {
  std::vector<MeetingPlace> places;
  for (const Earth& earth : build.earths)
    places.push_back({"earth", earth.id, earth.label.empty() ? earth.place : earth.label, earth.thread, earth.zone, earth.terminal});
  for (const Splice& splice : build.splices)
    places.push_back({"splice", splice.id, splice.label, {}, splice.zone, splice.terminal});
  return places;
}

}  // namespace

PlainTable make_earths_table(const SolvedBuild& solved, const Words& words) {
  const Build& build = solved.build;
  PlainTable table{{"place", "type", "label", "zone", "thread", "wire", "colour", "size_mm2", "other_end", "fitting"}, {}};
  for (const MeetingPlace& place : places_of(build))
    for (const Wire& wire : build.wires) {
      if (wire.from != place.terminal && wire.to != place.terminal) continue;
      const TerminalId other = wire.from == place.terminal ? wire.to : wire.from;
      table.rows.push_back({place.id, place.type, plain_text(place.label),
                            place.zone.is_set() ? PlainValue(zone_name(build.zones[place.zone.at()])) : PlainValue(),
                            plain_text(place.thread), wire.id, wire.colour.text(), plain_number(wire.area.number(), 3),
                            build.terminal(other).name, plain_text(fitting_name(build, place.terminal, words))});
    }
  return table;
}

}  // namespace loomfolio
