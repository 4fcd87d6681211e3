// SPDX-License-Identifier: MIT
// A drawing that is wished within a room: of drawings about as good the one that fits.
#include <doctest/doctest.h>

#include "layout/laid.h"
#include "layout/random_graph.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

Graph small_graph(std::uint64_t seed) {
  GraphRecipe recipe;
  recipe.seed = seed;
  recipe.boxes = 12;
  recipe.wires = 20;
  return make_random_graph(recipe);
}

Laid lay_out_within(const Graph& graph, Grid width, Grid height) {
  LayoutOptions options;
  options.room = {width, height};
  return lay_out(graph, options);
}

bool same_courses(const Laid& a, const Laid& b) {
  if (a.width != b.width || a.height != b.height) return false;
  for (std::size_t i = 0; i < a.courses.size(); ++i)
    if (a.courses[i].points != b.courses[i].points) return false;
  return true;
}

}  // namespace

TEST_CASE("room for any drawing changes none") {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    CAPTURE(seed);
    const Graph graph = small_graph(seed);
    CHECK(same_courses(lay_out(graph), lay_out_within(graph, 1000000, 1000000)));
  }
}

TEST_CASE("a narrower room is kept where another drawing fits, and every drawing keeps its promises") {
  int fitting = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    const Graph graph = small_graph(seed);
    const Laid any = lay_out(graph);
    const Grid width = any.width - any.width / 50;
    const Laid within = lay_out_within(graph, width, any.height);
    fitting += within.width <= width && within.height <= any.height;
    CHECK(verify(with_settled_joints(graph, within), within).empty());
  }
  CHECK(fitting > 0);
}

TEST_CASE("in a room that is far too small a drawing is made all the same") {
  const Graph graph = small_graph(3);
  const Laid laid = lay_out_within(graph, 100, 100);
  CHECK(laid.boxes.size() == graph.boxes.size());
  CHECK(verify(with_settled_joints(graph, laid), laid).empty());
}

TEST_CASE("graphs that begin in the same rows get the same drawing, whatever shape they wish") {
  int alike = 0, unlike = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    const Graph wide = small_graph(seed);
    for (const int share : {80, 60, 40}) {
      Graph narrow = wide;
      narrow.name += " narrower";
      narrow.wished_width = wide.wished_width / 100 * share;
      if (first_rows(narrow) != first_rows(wide)) {
        ++unlike;
        continue;
      }
      ++alike;
      CHECK(same_courses(lay_out(narrow), lay_out(wide)));
    }
  }
  CHECK(alike > 0);
  CHECK(unlike > 0);
}
