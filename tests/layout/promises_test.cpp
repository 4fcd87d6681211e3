// SPDX-License-Identifier: MIT
// Every promise of a drawing holds on every random graph.
#include <doctest/doctest.h>

#include "layout/laid.h"
#include "layout/random_graph.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

std::string complaints(const Graph& graph, const Laid& laid) {
  std::string out;
  for (const Violation& v : verify(with_settled_joints(graph, laid), laid)) out += std::string(name_of(v.promise)) + ": " + v.what + "\n";
  return out;
}

bool same(const Laid& a, const Laid& b) {
  for (std::size_t i = 0; i < a.boxes.size(); ++i)
    if (a.boxes[i].box != b.boxes[i].box || a.boxes[i].is_mirrored != b.boxes[i].is_mirrored) return false;
  for (std::size_t i = 0; i < a.courses.size(); ++i)
    if (a.courses[i].points != b.courses[i].points) return false;
  return a.width == b.width && a.height == b.height && a.dots == b.dots && a.labels.size() == b.labels.size();
}

}  // namespace

TEST_CASE("a thousand small graphs keep every promise") {
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    GraphRecipe recipe;
    recipe.seed = seed;
    recipe.boxes = 5 + static_cast<int>(seed % 11);
    recipe.wires = 6 + static_cast<int>(seed % 17);
    recipe.zones = 1 + static_cast<int>(seed % 4);
    recipe.references = static_cast<int>(seed % 3);
    recipe.widest_pen = seed % 2 ? 100 : 220;
    const Graph graph = make_random_graph(recipe);
    CAPTURE(seed);
    CHECK(complaints(graph, lay_out(graph)) == "");
  }
}

TEST_CASE("twenty graphs of the size of a whole machine keep every promise") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    GraphRecipe recipe;
    recipe.seed = 5000 + seed;
    recipe.boxes = 60;
    recipe.wires = 150;
    recipe.zones = 4;
    const Graph graph = make_random_graph(recipe);
    CAPTURE(seed);
    CHECK(complaints(graph, lay_out(graph)) == "");
  }
}

TEST_CASE("the same graph gives the same drawing") {
  GraphRecipe recipe;
  recipe.boxes = 25;
  recipe.wires = 60;
  const Graph graph = make_random_graph(recipe);
  CHECK(same(lay_out(graph), lay_out(graph)));
}

TEST_CASE("a graph of nothing and graphs of almost nothing are drawn") {
  CHECK(lay_out(Graph{}).boxes.empty());
  Graph lone;
  lone.zones.push_back({"only"});
  lone.boxes.push_back({"lamp", 0, BoxRole::load, -1, 2000, 1000, {}});
  CHECK(complaints(lone, lay_out(lone)) == "");
}
