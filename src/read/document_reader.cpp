// SPDX-License-Identifier: MIT
// [document], [electrics] and the zones.
#include <algorithm>

#include "read/draft.h"

namespace loomfolio {
namespace {

constexpr Choice<Scope> scopes[] = {{"machine", Scope::machine}, {"kit", Scope::kit}};
constexpr Choice<UnitSystem> systems[] = {{"metric", UnitSystem::metric}, {"imperial", UnitSystem::imperial}};
constexpr Choice<bool> poles[] = {{"negative", false}, {"positive", true}};
constexpr QuantityRule machine_volts_rule{Dimension::voltage, {1, 60}};
constexpr QuantityRule drop_rule{Dimension::voltage, {0.01, 6}};
constexpr QuantityRule ambient_rule{Dimension::temperature, {-40, 120}};
constexpr QuantityRule zone_place_rule{Dimension::loom_length, {0, 10}};

/// A word that must be among those the library has.
void read_known(std::string& into, std::string_view key, const std::vector<std::string>& known, DiagnosticId id,
                TableReader& table) {
  const PlacedText written = table.placed_line(key, Need::may);
  if (!written.where.is_set()) return;
  into = written.text;
  if (std::find(known.begin(), known.end(), written.text) == known.end())
    table.report(id, written.where, "there is no " + std::string(key) + " `" + written.text + "`",
                 suggest_and_list(written.text, known, "there are"));
}

void read_drop_limits(Electrics& electrics, TableReader& table) {
  const TomlValue* tree = table.table("drop");
  if (!tree) return;
  TableReader drop(*tree, "`drop`", table.findings());
  DropLimits& limits = electrics.drop_limits;
  for (auto& [key, limit] : {std::pair<std::string_view, Volts*>{"starter", &limits.starter},
                             {"charging", &limits.charging},
                             {"lighting", &limits.lighting},
                             {"ignition", &limits.ignition},
                             {"control", &limits.control},
                             {"other", &limits.other}})
    drop.quantity_into(*limit, key, drop_rule);
  drop.refuse_unknown_keys();
}

/// Figures are given for 12 V; a 6 V or 24 V machine starts from the same shares of its nominal voltage.
void scale_to_nominal(Electrics& electrics) {
  const double scale = electrics.nominal / Volts(12);
  DropLimits& limits = electrics.drop_limits;
  for (Volts* volts : {&electrics.resting, &electrics.running, &electrics.cranking, &limits.starter, &limits.charging,
                       &limits.lighting, &limits.ignition, &limits.control, &limits.other})
    *volts = *volts * scale;
}

}  // namespace

Document read_document(TableReader& spec, const Library& library) {
  Document document;
  const TomlEntry* entry = spec.take("document", Need::must);
  if (!entry || !spec.expect_type(entry->value, TomlType::table, "document")) return document;
  TableReader table(entry->value, "[document]", spec.findings());
  document.origin = table.origin();
  document.title = table.line("title", Need::must);
  document.subtitle = table.line("subtitle", Need::may);
  document.scope = table.choice<Scope>("scope", scopes, Need::may).value_or(Scope::machine);
  document.job = table.line("job", Need::may);
  document.revision = table.line("revision", Need::may);
  document.date = read_date(table, Need::may);
  std::vector<std::string> papers;
  for (const Paper& paper : library.papers) papers.push_back(paper.id);
  read_known(document.paper, "paper", papers, DiagnosticId::unknown_paper, table);
  read_known(document.language, "language", library.languages, DiagnosticId::unknown_language, table);
  document.units = table.choice<UnitSystem>("units", systems, Need::may).value_or(UnitSystem::metric);
  document.workshop = table.line("workshop", Need::may);
  document.checked_by = table.line("checked_by", Need::may);
  table.refuse_unknown_keys();
  return document;
}

Electrics read_electrics(TableReader& spec) {
  Electrics electrics;
  const TomlValue* tree = spec.table("electrics");
  if (!tree) return electrics;
  TableReader table(*tree, "[electrics]", spec.findings());
  electrics.origin = table.origin();
  table.quantity_into(electrics.nominal, "nominal", machine_volts_rule);
  scale_to_nominal(electrics);
  electrics.is_positive_earth = table.choice<bool>("earth", poles, Need::may).value_or(false);
  table.quantity_into(electrics.resting, "resting", machine_volts_rule);
  table.quantity_into(electrics.running, "running", machine_volts_rule);
  table.quantity_into(electrics.cranking, "cranking", machine_volts_rule);
  table.quantity_into(electrics.ambient, "ambient", ambient_rule);
  read_drop_limits(electrics, table);
  table.refuse_unknown_keys();
  return electrics;
}

std::vector<Zone> read_zones(TableReader& spec) {
  std::vector<Zone> zones;
  for (const TomlValue* tree : spec.tables("zone", 60)) {
    TableReader table(*tree, "[[zone]]", spec.findings());
    Zone zone;
    zone.origin = table.origin();
    zone.id = table.id("id", Need::must);
    zone.label = table.line("label", Need::may);
    if (zone.label.empty()) zone.label = zone.id;
    zone.place = table.quantity<Metres>("place", zone_place_rule, Need::must).value_or(Metres(0));
    table.refuse_unknown_keys();
    for (const Zone& other : zones)
      if (!zone.id.empty() && other.id == zone.id) {
        table.report(DiagnosticId::duplicate_id, zone.origin.key("id"), "there are two zones `" + zone.id + "`", {},
                     {{other.origin.key("id"), "the first stands here"}});
        break;
      }
    zones.push_back(zone);
  }
  return zones;
}

ZoneId read_zone_name(const SpecDraft& draft, TableReader& table) {
  const PlacedText name = table.placed_line("zone", Need::must);
  if (!name.where.is_set()) return {};
  std::vector<std::string> ids;
  for (std::size_t i = 0; i < draft.zones.size(); ++i) {
    if (draft.zones[i].id == name.text) return {static_cast<std::int32_t>(i)};
    ids.push_back(draft.zones[i].id);
  }
  table.report(DiagnosticId::unknown_zone, name.where, "there is no zone `" + name.text + "`",
               ids.empty() ? "the spec has no [[zone]]" : suggest_and_list(name.text, ids, "the zones are"));
  return {};
}

}  // namespace loomfolio
