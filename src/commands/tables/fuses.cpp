// SPDX-License-Identifier: MIT
#include "check/paths.h"
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"
#include "sheets/fuse_list.h"
#include "sheets/fuse_look.h"
#include "sheets/stopped_text.h"

namespace loomfolio {
namespace {

std::vector<PlainValue> fuse_values(const SolvedBuild& solved, InsideRef ref, const Words& words) {
  const Build& build = solved.build;
  const Inside& fuse = inside_of(build, ref);
  const FuseStudy* found = study_of(solved, ref);
  const FuseStudy study = found == nullptr ? FuseStudy{} : *found;
  const bool is_loaded = study.situation.is_set();
  const Wire* thinnest = study.thinnest.is_set() ? &build.wire(study.thinnest) : nullptr;
  return {plain_inside(build, ref),
          fuse_name(build, ref),
          fuse_family_name(fuse.family, words),
          plain_rating(fuse),
          fuse.rating ? plain_text(fuse_colour_name(fuse.family, *fuse.rating, words)) : PlainValue(),
          found == nullptr ? PlainValue() : plain_text(protected_text(solved, study, words)),
          is_loaded ? plain_number(study.load.number(), 3) : PlainValue(),
          plain_situation(build, study.situation),
          study.at_once.number() > 0 ? plain_number(study.at_once.number(), 3) : PlainValue(),
          study.into_empty.number() > 0 ? plain_number(study.into_empty.number(), 3) : PlainValue(),
          study.prospective.number() > 0 ? plain_number(study.prospective.number(), 0) : PlainValue(),
          thinnest == nullptr ? PlainValue() : PlainValue(thinnest->id),
          thinnest == nullptr ? PlainValue() : plain_number(thinnest->area.number(), 3),
          found == nullptr ? PlainValue() : plain_text(stopped_text(solved, study, words))};
}

}  // namespace

PlainTable make_fuses_table(const SolvedBuild& solved, const Words& words) {
  PlainTable table{{"fuse", "name", "family", "rating_A", "body_colour", "protects", "most_A", "situation", "all_on_A",
                    "empty_battery_A", "dead_short_A", "thinnest_wire", "thinnest_mm2", "stops"},
                   {}};
  for (const InsideRef ref : list_fuses(solved.build)) table.rows.push_back(fuse_values(solved, ref, words));
  return table;
}

}  // namespace loomfolio
