// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "render/render_helper.h"

namespace loomfolio {

TEST_CASE("a dump has an item a line") {
  Sheet sheet = test::small_folio().sheets[1];
  PathItem path;
  path.pieces = {PathMove{test::at(1, 2)}, PathLine{test::at(3.456, 2)},
                 PathArc{test::at(3, 4), Millimetres(2), -90, 0},
                 PathCurve{test::at(1, 1), test::at(2, 2), test::at(3, -0.001)}, PathClose{}};
  path.stroke.pen = {{1, 2, 255}, Millimetres(1.4), {Millimetres(3.2), Millimetres(1.6)}, Cap::round};
  sheet.items.push_back(path);
  sheet.items.push_back(TextItem{test::at(1, 2), "a \"b\" \\ c\nd", {}, {}, Align::right, true});
  CHECK(render_dump(sheet) ==
        R"(sheet "two" "Sheet two" 420.00 x 297.00 label "D-1" group "Diagrams"
H1 {
text 20.00 20.00 "Heading of two" sans bold 18 #1a1a1a
}
Figure "a relay on sheet two" {
rect 20.00 40.00 50.00 x 30.00 corner 4.00 stroke 0.35 #1a1a1a fill #cc2222
text 25.00 50.00 "87a" mono bold 7.5 #005f73
}
anchor 20.00 40.00 "relay"
link 20.00 40.00 50.00 x 30.00 "one" "relay"
path M 1.00 2.00 L 3.46 2.00 A 3.00 4.00 2.00 -90 0 C 1.00 1.00 2.00 2.00 3.00 0.00 Z stroke 1.40 #0102ff dashes 3.20 1.60 round
text 1.00 2.00 "a \"b\" \\ c\nd" sans 10 #000000 right upright
)");
}

}  // namespace loomfolio
