// SPDX-License-Identifier: MIT
#include "layout/drawn_machine.h"

#include <map>
#include <tuple>

namespace loomfolio {

const DrawnMachine& drawn_machine(std::uint64_t seed, int boxes, int wires) {
  static std::map<std::tuple<std::uint64_t, int, int>, DrawnMachine> drawn;
  const auto [at, is_new] = drawn.try_emplace({seed, boxes, wires});
  if (!is_new) return at->second;
  GraphRecipe recipe;
  recipe.seed = seed;
  recipe.boxes = boxes;
  recipe.wires = wires;
  recipe.zones = 4;
  at->second.graph = make_random_graph(recipe);
  at->second.laid = lay_out(at->second.graph);
  return at->second;
}

}  // namespace loomfolio
