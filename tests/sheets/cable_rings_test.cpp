// SPDX-License-Identifier: MIT
// Rings around wires that are twisted together or share a sheath.
#include <doctest/doctest.h>

#include <string>

#include "sheets/diagram_cables.h"

using namespace loomfolio;

namespace {

/// Level wires 4 mm apart from top to bottom, 60 mm long, each labelled along its first 15 mm.
struct Loom {
  Build build;
  DiagramGraph diagram;
  Laid laid;

  explicit Loom(const std::vector<std::string>& cables) {
    laid.width = 7000, laid.height = 5000;
    for (const std::string& cable : cables) {
      const Grid y = 1000 + 400 * static_cast<Grid>(build.wires.size());
      add(cable, {500, y}, {6500, y});
      laid.labels.push_back({static_cast<int>(build.wires.size()) - 1, {520, y - 350, 2020, y - 70}});
    }
  }
  void add(const std::string& cable, GridPoint from, GridPoint to) {
    WireId id;
    id.index = static_cast<std::int32_t>(build.wires.size());
    Wire wire;
    wire.id = std::to_string(id.index);
    wire.cable = cable;
    build.wires.push_back(wire);
    GraphWire graph_wire;
    graph_wire.name = wire.id;
    graph_wire.pen = 100;
    diagram.graph.wires.push_back(graph_wire);
    diagram.wires.push_back(id);
    diagram.labels.push_back({wire.id, "BK 1", "", 200, 1500, 280});
    laid.courses.push_back({{from, to}, {}});
  }
  std::vector<CableRing> rings() const { return find_cable_rings(build, diagram, laid); }
};

using Wires = std::vector<std::size_t>;

}  // namespace

TEST_CASE("wires of one cable side by side get one ring, across them all and no other") {
  const std::vector<CableRing> rings = Loom({"a", "a", "a", "", "b"}).rings();
  REQUIRE(rings.size() == 1);
  CHECK(rings[0].wires == Wires{0, 1, 2});
  CHECK(rings[0].box.y0 < 950);
  CHECK(rings[0].box.y1 > 1850);
  CHECK(rings[0].box.y1 < 2150);
  CHECK(rings[0].box.x0 > 2020);  // not on the labels
}

TEST_CASE("a foreign wire between two of a cable leaves them without a ring") {
  CHECK(Loom({"a", "", "a"}).rings().empty());
  CHECK(Loom({"a", "b", "a", "b"}).rings().empty());
  CHECK(Loom({"", ""}).rings().empty());
}

TEST_CASE("two cables get a ring each") {
  const std::vector<CableRing> rings = Loom({"a", "a", "b", "b"}).rings();
  REQUIRE(rings.size() == 2);
  CHECK(rings[0].wires == Wires{0, 1});
  CHECK(rings[1].wires == Wires{2, 3});
}

TEST_CASE("a ring stands clear of a wire that crosses, and of parts") {
  Loom loom({"a", "a"});
  loom.add("", {3500, 500}, {3500, 3000});
  PlacedBox part;
  part.box = {3600, 500, 4500, 900};
  loom.laid.boxes.push_back(part);
  const std::vector<CableRing> rings = loom.rings();
  REQUIRE(rings.size() == 1);
  CHECK(rings[0].box.x0 <= rings[0].box.x1);
  CHECK((rings[0].box.x1 < 3450 || rings[0].box.x0 > 4500));
}

TEST_CASE("where labels fill the run there is no room for a ring") {
  Loom loom({"a", "a"});
  loom.laid.labels[1].box.x0 = 1900, loom.laid.labels[1].box.x1 = 6400;
  CHECK(loom.rings().empty());
}
