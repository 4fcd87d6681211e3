// SPDX-License-Identifier: MIT
#include "base/text.h"
#include "check/paths.h"
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"
#include "model/spec_words.h"

namespace loomfolio {
namespace {

std::string name_of(const Build& build, InsideRef ref) { return std::get<std::string>(plain_inside(build, ref)); }

}  // namespace

PlainTable make_situations_table(const SolvedBuild& solved, const Words&) {
  const Build& build = solved.build;
  PlainTable table{{"situation", "label", "engine", "switches", "expected"}, {}};
  for (const Situation& situation : build.situations) {
    std::vector<std::string> switches, expected;
    for (const Setting& setting : situation.settings) {
      const Inside& actuator = inside_of(build, setting.actuator);
      switches.push_back(name_of(build, setting.actuator) + "=" + actuator.positions[static_cast<std::size_t>(setting.position)].name);
    }
    for (const Expectation& wanted : situation.expectations)
      expected.push_back(name_of(build, wanted.what) + "=" + std::string(spec_word(wanted.state)));
    table.rows.push_back({situation.name, plain_text(situation.label), std::string(spec_word(situation.engine)),
                          plain_text(join(switches, ", ")), plain_text(join(expected, ", "))});
  }
  return table;
}

}  // namespace loomfolio
