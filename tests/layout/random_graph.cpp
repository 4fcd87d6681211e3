// SPDX-License-Identifier: MIT
#include "layout/random_graph.h"

#include <algorithm>
#include <numeric>

namespace loomfolio {
namespace {

constexpr Grid pitch = 500;

/// A linear congruential generator with an output mix (64 bit, after Knuth's MMIX constants).
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed * 2654435761u + 99) { roll(7), roll(7); }
  int roll(int sides) {
    state_ = state_ * 6364136223846793005u + 1442695040888963407u;
    return static_cast<int>((state_ >> 33) % static_cast<std::uint64_t>(sides));
  }
  bool chance(int percent) { return roll(100) < percent; }

 private:
  std::uint64_t state_;
};

struct Sides {
  int top = 0, right = 0, bottom = 0, left = 0;
};

GraphBox make_box(const std::string& name, BoxRole role, int zone, Sides sides) {
  GraphBox box;
  box.name = name;
  box.role = role;
  box.zone = zone;
  const bool tiny = role == BoxRole::splice;
  box.width = tiny ? 200 : std::max<Grid>(2000, (std::max(sides.top, sides.bottom) + 1) * pitch);
  box.height = tiny ? 200 : std::max<Grid>(1000, (std::max(sides.left, sides.right) + 1) * pitch);
  const auto add = [&](Side side, int count) {
    const bool across = side == Side::top || side == Side::bottom;
    const Grid length = across ? box.width : box.height;
    for (int i = 0; i < count; ++i) {
      const Grid along = length / 2 + (2 * i - (count - 1)) * pitch / 2;
      const GridPoint at{side == Side::left ? 0 : side == Side::right ? box.width : along,
                         side == Side::top ? 0 : side == Side::bottom ? box.height : along};
      box.terminals.push_back({std::to_string(box.terminals.size() + 1), side, at});
    }
  };
  add(Side::top, sides.top);
  add(Side::right, sides.right);
  add(Side::bottom, sides.bottom);
  add(Side::left, sides.left);
  return box;
}

GraphBox make_ordinary(const std::string& name, int zone, Dice& dice) {
  static constexpr BoxRole roles[] = {BoxRole::load, BoxRole::load, BoxRole::switching, BoxRole::sensor, BoxRole::relay, BoxRole::connector};
  Sides sides;
  const int terminals = 2 + dice.roll(6);
  const int lean = dice.roll(3);   // some parts are wired above and below, some at their ends, some all round
  for (int i = 0; i < terminals; ++i) {
    const int side = lean == 0 ? dice.roll(2) * 2 : lean == 1 ? dice.roll(2) * 2 + 1 : dice.roll(4);
    ++(side == 0 ? sides.top : side == 1 ? sides.right : side == 2 ? sides.bottom : sides.left);
  }
  GraphBox box = make_box(name, roles[dice.roll(6)], zone, sides);
  box.may_mirror = dice.chance(50);
  return box;
}

/// Every other splice is a joint, whose terminals the engine places.
GraphBox make_splice(const std::string& name, int zone, int number, Dice& dice) {
  GraphBox box = make_box(name, BoxRole::splice, zone, {1, 1, 1, 1});
  if (number % 2 == 0) return box;
  box.joint.pitch = pitch;
  box.joint.pad = {dice.roll(2) * 250, 0, dice.roll(4) * 500, dice.roll(3) * 500};
  box.joint.slots_below = dice.roll(2);
  return box;
}

void add_boxes(Graph& graph, const GraphRecipe& recipe, Dice& dice) {
  const auto zone = [&] { return dice.roll(recipe.zones); };
  graph.boxes.push_back(make_box("battery", BoxRole::supply, zone(), {1, 0, 1, 0}));
  graph.boxes.push_back(make_box("fuses", BoxRole::fuse, zone(), {2, 4, 0, 1}));
  graph.boxes.push_back(make_box("control", BoxRole::control, zone(), {2, 3, 2, 3}));
  for (int i = 0; i < 1 + recipe.boxes / 20; ++i)
    graph.boxes.push_back(make_box("earth" + std::to_string(i), BoxRole::earth, zone(), {1, 0, 0, 0}));
  for (int i = 0; i < recipe.boxes / 8; ++i)
    graph.boxes.push_back(make_splice("splice" + std::to_string(i), zone(), i, dice));
  while (static_cast<int>(graph.boxes.size()) < recipe.boxes)
    graph.boxes.push_back(make_ordinary("part" + std::to_string(graph.boxes.size()), zone(), dice));
}

struct Place {
  int box, terminal;
};

/// The terminal of a box that fewest wires reach.
Place freest(const std::vector<std::vector<int>>& load, int box) {
  const auto& own = load[box];
  return {box, static_cast<int>(std::min_element(own.begin(), own.end()) - own.begin())};
}

void add_wire(Graph& graph, std::vector<std::vector<int>>& load, int a, int b, const GraphRecipe& recipe, Dice& dice) {
  const Place from = freest(load, a);
  ++load[from.box][from.terminal];
  const Place to = freest(load, b);
  ++load[to.box][to.terminal];
  GraphWire w;
  w.name = "w" + std::to_string(graph.wires.size() + 1);
  w.from_box = from.box, w.from_terminal = from.terminal, w.to_box = to.box, w.to_terminal = to.terminal;
  w.pen = 40 + dice.roll(recipe.widest_pen - 39);
  w.label_width = 900 + dice.roll(900);
  w.label_height = 200;
  graph.wires.push_back(std::move(w));
}

void number_nets(Graph& graph) {
  std::vector<int> first;
  int count = 0;
  for (const GraphBox& b : graph.boxes) {
    first.push_back(count);
    count += static_cast<int>(b.terminals.size());
  }
  std::vector<int> root(static_cast<std::size_t>(count));
  std::iota(root.begin(), root.end(), 0);
  const auto find = [&](int i) {
    while (root[i] != i) i = root[i] = root[root[i]];
    return i;
  };
  for (std::size_t b = 0; b < graph.boxes.size(); ++b)
    if (graph.boxes[b].role == BoxRole::splice)
      for (std::size_t t = 1; t < graph.boxes[b].terminals.size(); ++t) root[find(first[b] + static_cast<int>(t))] = find(first[b]);
  for (const GraphWire& w : graph.wires) root[find(first[w.from_box] + w.from_terminal)] = find(first[w.to_box] + w.to_terminal);
  for (GraphWire& w : graph.wires) w.net = find(first[w.from_box] + w.from_terminal);
}

void add_references(Graph& graph, std::vector<std::vector<int>>& load, const GraphRecipe& recipe, Dice& dice) {
  const int parts = static_cast<int>(graph.boxes.size());
  for (int i = 0; i < recipe.references; ++i) {
    const Side side = dice.chance(50) ? Side::left : Side::right;
    GraphBox box;
    box.name = "reference" + std::to_string(i);
    box.role = BoxRole::reference;
    box.zone = dice.roll(recipe.zones);
    box.width = 2000;
    box.height = 500;
    box.terminals.push_back({"1", side, {side == Side::left ? 0 : box.width, 250}});
    graph.boxes.push_back(box);
    load.push_back({0});
    add_wire(graph, load, dice.roll(parts), static_cast<int>(graph.boxes.size()) - 1, recipe, dice);
  }
}

}  // namespace

Graph make_random_graph(const GraphRecipe& recipe) {
  Dice dice(recipe.seed);
  Graph graph;
  graph.name = "seed " + std::to_string(recipe.seed);
  for (int z = 0; z < recipe.zones; ++z) graph.zones.push_back({"zone" + std::to_string(z)});
  add_boxes(graph, recipe, dice);
  std::vector<std::vector<int>> load;
  for (const GraphBox& b : graph.boxes) load.emplace_back(b.terminals.size(), 0);
  const int boxes = static_cast<int>(graph.boxes.size());
  for (int tries = 0; static_cast<int>(graph.wires.size()) < recipe.wires && tries < 100 * recipe.wires; ++tries) {
    const int a = dice.roll(boxes), b = dice.chance(25) ? dice.roll(3) : dice.roll(boxes);
    const bool near = dice.chance(65);
    if (a == b || (near && graph.boxes[a].zone != graph.boxes[b].zone)) continue;
    add_wire(graph, load, a, b, recipe, dice);
  }
  add_references(graph, load, recipe, dice);
  number_nets(graph);
  return graph;
}

}  // namespace loomfolio
