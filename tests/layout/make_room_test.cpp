// SPDX-License-Identifier: MIT
// A run that is drawn too near others gets its room, and nothing changes its order or shape.
#include "layout/make_room.h"

#include <doctest/doctest.h>

using namespace loomfolio;
using namespace loomfolio::laying;

namespace {

/// Two parts side by side and upright runs between them, each of its own figure. All lengths in 0.01 mm.
struct Alley {
  Graph graph;
  std::vector<int> figure;
  std::vector<char> is_new;
  std::vector<PlacedBox> boxes;
  std::vector<Course> courses;
  std::vector<GridBox> bands;

  Alley(Grid left, Grid right) {
    graph.boxes.resize(4);
    boxes = {{{left - 1000, 0, left, 4000}},
             {{right, 0, right + 1000, 4000}},
             {{left - 20000, -30000, right + 20000, -20000}},
             {{left - 20000, 20000, right + 20000, 30000}}};
    for (std::size_t b = 0; b < boxes.size(); ++b) {
      graph.boxes[b].width = boxes[b].box.width();
      graph.boxes[b].height = boxes[b].box.height();
    }
  }
  void add_terminals(Grid x) {
    graph.boxes[2].terminals.push_back({"", Side::bottom, {x - boxes[2].box.x0, boxes[2].box.height()}});
    graph.boxes[3].terminals.push_back({"", Side::top, {x - boxes[3].box.x0, 0}});
  }
  /// From the part far above to the one far below, through the alley at `x`, with a bend on each side of it.
  void add(Grid x, Grid out, bool has_come_later) {
    GraphWire wire;
    wire.from_box = 2, wire.to_box = 3, wire.pen = 50;
    wire.from_terminal = wire.to_terminal = static_cast<int>(graph.wires.size());
    add_terminals(x + out);
    const Grid y = 1000 + out / 2;
    figure.push_back(static_cast<int>(graph.wires.size()));
    graph.wires.push_back(wire);
    is_new.push_back(has_come_later);
    courses.push_back(
        {{{x + out, -20000}, {x + out, -y}, {x, -y}, {x, 4000 + y}, {x + out, 4000 + y}, {x + out, 20000}}, {}});
  }
  bool make_room_now() {
    Crowded crowded{graph, figure, is_new, boxes, courses, bands};
    return make_room(crowded, Spacing{});
  }
  Grid x_of(int wire) const { return courses[wire].points[2].x; }
};

const Grid apart = Spacing{}.least + 50, clear_of_part = Spacing{}.clear + 25;

}  // namespace

TEST_CASE("a run between two others pushes them aside, and the parts stay") {
  Alley alley(0, 3000);
  alley.add(1400, 6000, false);
  alley.add(1600, 8000, false);
  alley.add(1500, 10000, true);
  REQUIRE(alley.make_room_now());
  CHECK(alley.x_of(2) - alley.x_of(0) >= apart);
  CHECK(alley.x_of(1) - alley.x_of(2) >= apart);
  CHECK(alley.x_of(0) >= clear_of_part);
  CHECK(alley.boxes[0].box.x1 == 0);
  CHECK(alley.boxes[1].box.x0 == 3000);
  CHECK(alley.courses[0].points.size() == 6);
}

TEST_CASE("where runs cannot give way, a part moves by just what is missing") {
  Alley alley(0, 2 * clear_of_part + apart);
  alley.add(clear_of_part, 6000, false);
  alley.add(clear_of_part + apart, 8000, false);
  alley.add(clear_of_part + apart / 2, 10000, true);
  REQUIRE(alley.make_room_now());
  CHECK(alley.x_of(2) - alley.x_of(0) >= apart);
  CHECK(alley.x_of(1) - alley.x_of(2) >= apart);
  CHECK(alley.boxes[1].box.x0 - alley.boxes[0].box.x1 == 2 * clear_of_part + 2 * apart);
}

TEST_CASE("between two runs that end at terminals of one part there is no room, and all stays as it was") {
  Alley alley(0, 3000);
  alley.add(1000, 100, false);
  alley.add(1200, 100, false);
  alley.add(1100, 6000, true);
  for (const int wire : {0, 1}) {
    const Grid x = alley.x_of(wire);
    alley.courses[wire].points = {{x, -20000}, {x, 20000}};
    alley.graph.boxes[2].terminals[wire].at.x = x - alley.boxes[2].box.x0;
    alley.graph.boxes[3].terminals[wire].at.x = x - alley.boxes[3].box.x0;
  }
  const auto before = alley.courses[2].points;
  CHECK_FALSE(alley.make_room_now());
  CHECK(alley.courses[2].points == before);
}

TEST_CASE("a part that has become wider pushes what is at its right") {
  Alley alley(0, 3000);
  alley.add(clear_of_part, 6000, false);
  alley.graph.boxes[0].width += 700;
  REQUIRE(alley.make_room_now());
  CHECK(alley.boxes[0].box == GridBox{-1000, 0, 700, 4000});
  CHECK(alley.x_of(0) == 700 + clear_of_part);
  CHECK(alley.boxes[1].box.x0 == 3000);
}

TEST_CASE("a part that has become wider and leans left leaves alone what is at its right") {
  Alley alley(0, 3000);
  alley.add(clear_of_part, 6000, false);
  alley.graph.boxes[0].width += 700;
  Crowded crowded{alley.graph, alley.figure, alley.is_new, alley.boxes, alley.courses, alley.bands};
  crowded.lean.resize(alley.boxes.size());
  crowded.lean[0].x = 700;
  REQUIRE(make_room(crowded, Spacing{}));
  CHECK(alley.boxes[0].box == GridBox{-1700, 0, 0, 4000});
  CHECK(alley.x_of(0) == clear_of_part);
  CHECK(alley.boxes[1].box.x0 == 3000);
}
