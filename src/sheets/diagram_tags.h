// SPDX-License-Identifier: MIT
// Labels for wires that the layout found no room beside: set on the wire itself, which shows on either side of the tag,
// or beside a wire so short that the tag would cover it. A label is never lost: what has no place is told in the
// legend. Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"
#include "sheets/diagram_graph.h"

namespace loomfolio {

/// Between neighbours that still read as side by side, at most.
inline constexpr Grid side_by_side_gap = 700;

/// Between the words of a wire's label and its edge.
inline constexpr Grid tag_pad = 60;

struct SpareTag {
  std::size_t wire = 0;  ///< of the graph
  GridBox box;
  bool is_upright = false;
  bool is_number_only = false;  ///< colour and size are then told in the legend
  bool ends_at_wire = false;    ///< stands left of an upright wire: shorter words keep to its right end
  bool is_placed = true;        ///< false: nowhere on the drawing; the legend says between which terminals it runs
};

/// A tag for each wire without a label, and for each that its own label would cover from end to end, where there is
/// room for one beside it: it then stands instead of the label. In order of wires.
std::vector<SpareTag> find_spare_tags(const DiagramGraph& diagram, const Laid& laid);

/// The labels that are drawn: not those of wires with a spare tag, nor a second one within sight of the first.
std::vector<PlacedLabel> labels_to_draw(const Laid& laid, const std::vector<SpareTag>& tags);

/// Where labels and spare tags stand.
std::vector<GridBox> words_on_wires(const DiagramGraph& diagram, const Laid& laid);

}  // namespace loomfolio
