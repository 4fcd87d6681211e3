// SPDX-License-Identifier: MIT
// A small edit leaves what is known where it was.
#include <doctest/doctest.h>

#include "layout/laid.h"
#include "layout/random_graph.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

Graph machine(std::uint64_t seed, int boxes, int wires) {
  GraphRecipe recipe;
  recipe.seed = seed;
  recipe.boxes = boxes;
  recipe.wires = wires;
  recipe.zones = 4;
  return make_random_graph(recipe);
}

/// One more load in the last zone, wired to the control box and to an earth.
Graph with_one_more_load(Graph graph) {
  const int load = static_cast<int>(graph.boxes.size()), last_net = static_cast<int>(graph.wires.size()) + 1000000;
  graph.boxes.push_back({"new load",
                         static_cast<int>(graph.zones.size()) - 1,
                         BoxRole::load,
                         -1,
                         2000,
                         1500,
                         {{"1", Side::left, {0, 500}}, {"2", Side::left, {0, 1000}}}});
  const auto add = [&](const char* name, int box, int terminal, int own_terminal, int net) {
    GraphWire w;
    w.name = name;
    w.from_box = box, w.from_terminal = terminal, w.to_box = load, w.to_terminal = own_terminal;
    w.net = net;
    w.pen = 50;
    w.label_width = 1170, w.label_height = 200;
    for (const GraphWire& other : graph.wires)
      if ((other.from_box == box && other.from_terminal == terminal) ||
          (other.to_box == box && other.to_terminal == terminal))
        w.net = other.net;
    graph.wires.push_back(w);
  };
  add("new 1", 2, 1, 0, last_net);
  add("new 2", 3, 0, 1, last_net + 1);
  return graph;
}

/// Boxes and courses that are not where they were, after taking out the shift of the first box.
int count_changes(const Laid& before, const Laid& after) {
  const Grid dx = after.boxes[0].box.x0 - before.boxes[0].box.x0, dy = after.boxes[0].box.y0 - before.boxes[0].box.y0;
  int changes = 0;
  for (std::size_t b = 0; b < before.boxes.size(); ++b) {
    const GridBox a = before.boxes[b].box;
    changes += GridBox{a.x0 + dx, a.y0 + dy, a.x1 + dx, a.y1 + dy} != after.boxes[b].box;
  }
  for (std::size_t w = 0; w < before.courses.size(); ++w) {
    std::vector<GridPoint> points = before.courses[w].points;
    for (GridPoint& p : points) p = {p.x + dx, p.y + dy};
    changes += points != after.courses[w].points;
  }
  return changes;
}

int count_violations(const Graph& graph, const Laid& laid) { return static_cast<int>(verify(with_settled_joints(graph, laid), laid).size()); }

}  // namespace

// Aim: all ten. In five of them some new wire finds no way through, as joints and channels leave no free track.
TEST_CASE("one more part and two wires move nothing that was there in half of the drawings, and break no promise") {
  int kept = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const Graph graph = machine(seed, 25, 60), edited = with_one_more_load(graph);
    const Laid before = lay_out(graph), after = lay_out(edited, {&before, &graph});
    CAPTURE(seed);
    CHECK(count_violations(edited, after) == 0);
    const int changes = count_changes(before, after);
    kept += changes == 0;
    if (changes) MESSAGE("seed " << seed << ": drawn afresh");
  }
  CHECK(kept >= 5);
}

TEST_CASE("no edit, a new name, other labels and a wire taken away move nothing") {
  const Graph graph = machine(3, 25, 60);
  const Laid before = lay_out(graph);
  const LayoutOptions stay{&before, &graph};
  CHECK(count_changes(before, lay_out(graph, stay)) == 0);
  Graph renamed = graph;
  renamed.boxes[10].name = "another name";
  CHECK(count_changes(before, lay_out(renamed, stay)) == 0);
  Graph relabelled = graph;
  for (GraphWire& w : relabelled.wires) w.label_width += 300;
  CHECK(count_changes(before, lay_out(relabelled, stay)) == 0);
  Graph less = graph;
  less.wires.pop_back();
  Laid cut = before;
  cut.courses.pop_back();
  CHECK(count_changes(cut, lay_out(less, stay)) == 0);
}

TEST_CASE("an earlier drawing of something else is of no use and does no harm") {
  const Graph graph = machine(4, 25, 60), other = machine(5, 12, 20);
  const Laid earlier = lay_out(other), alone = lay_out(graph), beside = lay_out(graph, {&earlier, &other});
  CHECK(count_changes(alone, beside) == 0);
  Laid broken = earlier;
  broken.boxes.clear();
  CHECK(count_changes(alone, lay_out(graph, {&broken, &other})) == 0);
}
