// SPDX-License-Identifier: MIT
// Inks a part as the layout placed it: box, inner wires, symbols, terminals, texts.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "layout/inside_drawing.h"
#include "sheets/draw.h"
#include "sheets/symbols/symbols.h"

namespace loomfolio {

/// Two nodes of a part that are joined: by a closed contact, a switch, a link.
struct NodeJoint {
  int a = -1, b = -1;
};

/// What a situation does to the part; not known: the part is drawn at rest. Nodes: terminals first, then inner points.
struct PartState {
  bool is_known = false;
  std::vector<bool> live_nodes;                          ///< by node: current passes there
  std::vector<bool> held_nodes;                          ///< by node: volts, with or without current
  std::vector<bool> fed;                                 ///< by terminal: a wire there carries current
  std::vector<bool> passed;                              ///< by Part::insides: current passes it
  std::vector<SymbolState> insides;                      ///< by Part::insides
  std::vector<std::vector<NodeJoint>> joints;            ///< by Part::insides: what it joins as it stands
  std::vector<NodeJoint> links;                          ///< what is always joined
  std::vector<int> positions;                            ///< by Part::insides: of a switch, where it stands
  std::vector<std::vector<std::string>> position_names;  ///< by Part::insides: of a switch
  std::vector<std::string> marks;                        ///< by terminal: its id
  std::vector<std::string> figures;                      ///< by terminal: '12.4 V'; may be empty

  bool is_live(int node) const { return is_set(live_nodes, node); }
  bool is_held(int node) const { return is_set(held_nodes, node); }

 private:
  /// A line may have no node: -1.
  static bool is_set(const std::vector<bool>& by_node, int node) {
    return node >= 0 && static_cast<std::size_t>(node) < by_node.size() && by_node[static_cast<std::size_t>(node)];
  }
};

/// Stands between a terminal's mark and the room kept for its figure, in kinds made by reserve_figures.
inline constexpr std::string_view figure_gap = "\u2002";

/// The type sizes of our look, as layout takes them.
InsideStyles inside_styles();

/// Draws the part, its top left at `at`.
void draw_part(Items& items, const PartDrawing& drawing, Point at, const TextMeasure& measure, const PartState& state = {});

}  // namespace loomfolio
