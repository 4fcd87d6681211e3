// SPDX-License-Identifier: MIT
// Drawings go into text and come back whole; a damaged text is refused and never half believed.
#include <doctest/doctest.h>

#include "layout/placement_text.h"
#include "layout/random_graph.h"

using namespace loomfolio;

namespace {

Placements some_placements() {
  Placements placements;
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    GraphRecipe recipe;
    recipe.seed = seed;
    recipe.boxes = 8;
    recipe.wires = 14;
    recipe.zones = 2;
    Graph graph = make_random_graph(recipe);
    graph.name = "drawing \"" + std::to_string(seed) + "\", \u00e4";
    placements[graph.name] = KeptDrawing{graph, lay_out(graph)};
  }
  placements["too large"] = std::nullopt;
  return placements;
}

}  // namespace

TEST_CASE("placements come back as they were written") {
  const Placements placements = some_placements();
  const std::string text = write_placements(placements);
  const auto back = read_placements(text);
  REQUIRE(back.has_value());
  CHECK(back->size() == placements.size());
  for (const auto& [name, kept] : placements) {
    CAPTURE(name);
    REQUIRE(back->count(name) == 1);
    const auto& read = back->at(name);
    REQUIRE(read.has_value() == kept.has_value());
    if (kept) CHECK(read->graph == kept->graph);
    // The same graph gives the very same drawing.
    if (kept) CHECK(lay_out_near(kept->graph, read->laid, read->graph).has_value());
  }
  CHECK(write_placements(*back) == text);
}

TEST_CASE("a placement that is cut short, or whose numbers point nowhere, is refused") {
  const Placements placements = some_placements();
  const Graph& graph = placements.begin()->second->graph;
  const std::string text = write_placements(placements);
  for (std::size_t length = 0; length + 2 < text.size(); length += 97) {
    CAPTURE(length);
    CHECK(!read_placements(std::string_view(text).substr(0, length)).has_value());
  }
  CHECK(!read_placements("{}").has_value());
  CHECK(!read_placements("not a placement").has_value());
  // Each number in turn made far too large: refused, or still a whole drawing; never a crash.
  std::size_t refused = 0;
  for (std::size_t at = text.find_first_of("0123456789"); at != std::string::npos && at < 6000;
       at = text.find_first_of("0123456789", at + 7)) {
    std::string wrong = text;
    wrong.insert(at, "77777777");
    const auto read = read_placements(wrong);
    if (!read) ++refused;
    if (!read) continue;
    for (const auto& [name, kept] : *read)
      if (kept) lay_out_near(graph, kept->laid, kept->graph);
  }
  CHECK(refused > 50);
}
