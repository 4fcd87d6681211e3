// SPDX-License-Identifier: MIT
// The selection table of a fuse left to the fitter, each cell proved by a protection study of the build that it speaks
// of.
#include "solve/fuse_choice.h"

#include <doctest/doctest.h>

#include "solve/small_builds.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

/// The fuse left to the fitter, from 2 to 30 A; its wire 2 m long.
BuildMaker one_lamp(double area, double rating) {
  BuildMaker m = fused_lamp({rating, area, 2.0});
  m.build.parts[1].fuse_choice = {{Amperes(2), Amperes(30)}};
  return m;
}
constexpr std::size_t feed = 2;

std::vector<FuseSelection> select(const BuildMaker& m) {
  return select_fuses(m.build, study_protection(m.build, solve_all(m.build)));
}

/// The study of the build with that size and that fuse, whole.
bool is_saved(double area, double rating) {
  BuildMaker m = one_lamp(area, rating);
  m.build.parts[1].fuse_choice.clear();
  return study_protection(m.build, solve_all(m.build)).wires[feed].verdict <= WireVerdict::opens_slowly;
}

}  // namespace

TEST_CASE("a selection table: every cell is what a study of that very build says") {
  const auto all = select(one_lamp(1.0, 10));
  REQUIRE(all.size() == 1);
  const FuseSelection& table = all[0];
  REQUIRE(table.rows.size() == 10);  // 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30
  REQUIRE(table.sizes.size() >= 3);
  const double bag[] = {2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30};
  int fitting = 0, thin = 0;
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    const FuseLoadRow& row = table.rows[r];
    CHECK(row.load.number() == doctest::Approx(0.75 * bag[r]));
    CHECK(row.power.number() == doctest::Approx(12 * 0.75 * bag[r]));
    REQUIRE(row.cells.size() == table.sizes.size());
    for (std::size_t s = 0; s < table.sizes.size(); ++s) {
      const double area = table.sizes[s].area.number();
      const FuseFitCell& cell = row.cells[s];
      CAPTURE(area);
      CAPTURE(row.load.number());
      if (cell.fit == FuseFit::fits) {
        ++fitting;
        CHECK(cell.rating.number() == bag[r]);
        CHECK(is_saved(area, cell.rating.number()));
      } else {
        ++thin;
        CHECK(cell.fit == FuseFit::wire_too_thin);
        for (std::size_t more = r; more < std::size(bag); ++more) CHECK(!is_saved(area, bag[more]));
      }
    }
  }
  CHECK(fitting > 0);
  CHECK(thin > 0);
  CHECK(table.rows.back().cells.back().fit == FuseFit::fits);  // the last column takes every fuse of the bag
}

TEST_CASE("a bag with less than the row's load says so; a fuse with one rating offers what is on sale") {
  BuildMaker m = one_lamp(1.0, 5);
  m.build.parts[1].fuse_choice = {{Amperes(5), Amperes(5)}, {Amperes(10), Amperes(10)}};
  const auto all = select(m);
  REQUIRE(all.size() == 1);
  REQUIRE(all[0].rows.size() == 2);
  CHECK(all[0].rows[0].load.number() == doctest::Approx(3.75));
  CHECK(all[0].rows[1].load.number() == doctest::Approx(7.5));
  m.build.parts[1].fuse_choice.clear();
  CHECK(select(m).empty());
  const FuseSelection any =
      select_fuse(m.build, study_protection(m.build, solve_all(m.build)), m.inside("fuse", "fuse"));
  CHECK(any.rows.size() == fuse_ratings("blade_regular").size());
}
