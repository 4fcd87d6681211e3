// SPDX-License-Identifier: MIT
// Opening times between gates. Check values were computed from the same gates by hand (gates: ISO 8820-3 from memory, DIN 72581-3
// form E from a trade page, UL/CSA 248-14 from a maker's guide).
#include <doctest/doctest.h>

#include <cmath>

#include "solve/fuse_curve.h"

using namespace loomfolio;

namespace {
double slowest(const char* family, double percent) {
  return slowest_opening(fuse_family(family, Amperes(20)), Amperes(20), Amperes(0.2 * percent)).number();
}
double fastest(const char* family, double percent) {
  return fastest_opening(fuse_family(family, Amperes(20)), Amperes(20), Amperes(0.2 * percent)).number();
}
}  // namespace

TEST_CASE("between gates: straight in log time against log current; beyond the last: constant energy") {
  struct Row { double percent, c_least, c_most, e_least, e_most; };
  for (const Row& row : {Row{150, 0.379473, 195.0533, 24.10951, 723.2854}, Row{180, 0.190915, 14.82978, 4.977289, 149.3187},
                         Row{250, 0.0885523, 1.996300, 0.798520, 25.47427}, Row{300, 0.0575681, 0.942818, 0.377127, 12.65071},
                         Row{500, 0.0252846, 0.172359, 0.0689437, 1.931363}, Row{1000, 0.0072, 0.036, 0.0144, 0.36}}) {
    CAPTURE(row.percent);
    CHECK(fastest("blade_regular", row.percent) == doctest::Approx(row.c_least).epsilon(1e-5));
    CHECK(slowest("blade_regular", row.percent) == doctest::Approx(row.c_most).epsilon(1e-5));
    CHECK(fastest("blade_maxi", row.percent) == doctest::Approx(row.e_least).epsilon(1e-5));
    CHECK(slowest("blade_maxi", row.percent) == doctest::Approx(row.e_most).epsilon(1e-5));
  }
}

TEST_CASE("opening is not promised below 135 %, and the fuse must carry its first gate") {
  CHECK(std::isinf(slowest("blade_regular", 134.9)));
  CHECK(slowest("blade_regular", 135) == doctest::Approx(1800));
  CHECK(std::isinf(fastest("blade_regular", 110)));
  CHECK(fastest("blade_regular", 135) == doctest::Approx(0.75));
  CHECK(std::isinf(slowest("glass_ul", 130)));
  CHECK(slowest("glass_ul", 200) == doctest::Approx(120));
  CHECK(fastest("glass_ul", 200) == 0);
  CHECK(surely_opens_from(fuse_family("blade_mini", Amperes(10)), Amperes(10)).number() == doctest::Approx(13.5));
}

TEST_CASE("families") {
  CHECK(fuse_family("glass_ul", Amperes(35)).gates[2].most->number() == 240);
  CHECK(fuse_family("no such", Amperes(10)).id == "blade_regular");
  CHECK(!is_known_fuse_family("no such"));
}
