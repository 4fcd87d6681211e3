// SPDX-License-Identifier: MIT
// What the layout engine is given: boxes with terminals at fixed places on their sides, and wires between them. It knows no
// electrics; earth symbols, splices and off-sheet references are boxes like any other.
#pragma once

#include <string>
#include <vector>

#include "base/geometry.h"

namespace loomfolio {

/// What a box is to the eye: decides its rank (supply above, earth below) and how it may be placed.
enum class BoxRole : std::uint8_t { supply, fuse, control, switching, relay, load, sensor, connector, splice, earth, reference };

/// Terminals of one name on one side of a box are one terminal drawn wide, a place for each wire: the engine chooses which wire gets which.
struct GraphTerminal {
  std::string name;
  Side side = Side::top;
  GridPoint at;  ///< from the box's top left, on its edge
  friend bool operator==(const GraphTerminal&, const GraphTerminal&) = default;
};

/// Whether two terminals of a box are one drawn wide.
inline bool are_one_terminal(const GraphTerminal& a, const GraphTerminal& b) { return a.side == b.side && a.name == b.name && !a.name.empty(); }

/// A joint of wires, a splice: each wire may join from any side, so the engine chooses sides and places of the terminals, and with
/// them the size of the box. Around the core, where the wires meet, a room is kept for words and symbols.
struct GraphJoint {
  Grid pitch = 0;       ///< between two terminals of a side; also height of the core; 0: the box is no joint
  GridBox pad;          ///< room around the core: left, above, right, below
  int slots_below = 0;  ///< places kept at the right end of the core's lower side, for earth symbols that hang there
  friend bool operator==(const GraphJoint&, const GraphJoint&) = default;
};

struct GraphBox {
  std::string name;   ///< unique; ties are broken by it
  int zone = 0;       ///< index into Graph::zones
  BoxRole role = BoxRole::load;
  int rank = -1;      ///< wished row, 0 on top; -1: the engine decides
  Grid width = 0, height = 0;
  std::vector<GraphTerminal> terminals;
  bool may_mirror = false;  ///< left-right mirror keeps its meaning
  GraphJoint joint;
  int partner = -1;         ///< box to stand beside, mirrored: left and right lamps; -1: none
  std::vector<Side> pins;   ///< edges of its zone's band where it must stand: one, or two that meet in a corner
  std::vector<int> apart;   ///< boxes that it does not stand beside
  friend bool operator==(const GraphBox&, const GraphBox&) = default;
};

struct GraphWire {
  std::string name;
  int from_box = -1, from_terminal = -1, to_box = -1, to_terminal = -1;
  int net = -1;               ///< wires that share a terminal or meet in a splice are one net and may touch
  Grid pen = 100;             ///< drawn width
  Grid label_width = 0, label_height = 0;  ///< 0: no label
  std::string bundle;         ///< wires with the same word run together where that is possible
  std::vector<int> apart;     ///< wires that do not run close beside it
  friend bool operator==(const GraphWire&, const GraphWire&) = default;
};

struct GraphZone {
  std::string name;
  friend bool operator==(const GraphZone&, const GraphZone&) = default;
};

struct Graph {
  std::string name;
  std::vector<GraphZone> zones;  ///< left to right, as they should stand
  std::vector<GraphBox> boxes;
  std::vector<GraphWire> wires;
  Grid wished_width = 38200, wished_height = 24700;  ///< inside of the frame; a wish, space is a result
  friend bool operator==(const Graph&, const Graph&) = default;
};

}  // namespace loomfolio
