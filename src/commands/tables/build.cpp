// SPDX-License-Identifier: MIT
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"

namespace loomfolio {

PlainTable make_build_table(const SolvedBuild& solved, const Words&) {
  const Document& document = solved.build.document;
  const Electrics& electrics = solved.build.electrics;
  PlainTable table{{"value", "is"}, {}};
  const auto add = [&](const char* name, PlainValue value) { table.rows.push_back({std::string(name), std::move(value)}); };
  add("title", plain_text(document.title));
  add("subtitle", plain_text(document.subtitle));
  add("job", plain_text(document.job));
  add("revision", plain_text(document.revision));
  add("date", plain_text(document.date));
  add("workshop", plain_text(document.workshop));
  add("checked_by", plain_text(document.checked_by));
  add("language", plain_text(document.language));
  add("paper", plain_text(document.paper));
  add("units", std::string(document.units == UnitSystem::metric ? "metric" : "imperial"));
  add("nominal_V", plain_number(electrics.nominal.number(), 2));
  add("resting_V", plain_number(electrics.resting.number(), 2));
  add("running_V", plain_number(electrics.running.number(), 2));
  add("cranking_V", plain_number(electrics.cranking.number(), 2));
  add("earth", std::string(electrics.is_positive_earth ? "positive" : "negative"));
  add("ambient_degC", plain_number(electrics.ambient.number(), 1));
  return table;
}

}  // namespace loomfolio
