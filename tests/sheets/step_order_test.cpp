// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "sheets/sample_sheets.h"
#include "sheets/step_order.h"

using namespace loomfolio;

TEST_CASE("the part that is joined next: in order while it fits, else the tallest that does") {
  const std::vector<Millimetres> heights{Millimetres(80), Millimetres(30), Millimetres(60), Millimetres(50)};
  CHECK(choose_next(heights, Millimetres(80)) == 0);
  CHECK(choose_next(heights, Millimetres(79)) == 2);
  CHECK(choose_next(heights, Millimetres(55)) == 3);
  CHECK(choose_next(heights, Millimetres(20)) == 0);
  CHECK(choose_next({}, Millimetres(20)) == 0);
}
