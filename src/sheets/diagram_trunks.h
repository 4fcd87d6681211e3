// SPDX-License-Identifier: MIT
// Wires that run side by side from one thing to another, drawn as one thick course with their numbers on it; at both ends they fan
// out. Only diagram_*.cpp include this.
#pragma once

#include <optional>
#include <vector>

#include "base/text_measure.h"
#include "layout/laid.h"
#include "sheets/diagram_graph.h"

namespace loomfolio {

/// A stretch of a wire that a trunk takes in: from point `index` of its course to the next.
struct TrunkWire {
  std::size_t wire = 0;  ///< of the graph
  std::size_t index = 0;
  Grid at = 0;      ///< its own track
  Grid joins = 0;   ///< where it meets the trunk's end, across
};

/// From `low` to `high` along it the wires leave their own tracks; between the fans they are one course.
struct Trunk {
  bool is_level = false;
  Grid low = 0, high = 0, fan = 0;
  Grid at = 0, width = 0;         ///< middle of the thick course, across; its drawn width
  std::vector<TrunkWire> wires;   ///< from the least track to the greatest
  Grid words_at = 0;              ///< along: middle of the numbers
  GridBox thick() const;          ///< the thick course alone
  GridBox whole() const;          ///< with its fans, on their own tracks
};

/// The trunks of a diagram, the largest first; a stretch is in one of them at most. The author's gathered wires, from two; else wires
/// from one part to another, from four where they run far enough: fewer are easier followed each alone. Fans and numbers keep clear of
/// labels, tags, parts and other wires; those may cross the thick course.
std::vector<Trunk> find_trunks(const Build& build, const DiagramGraph& diagram, const Laid& laid, const TextMeasure& measure);

/// '12 · 13 · 14': what stands on it.
std::string trunk_words(const DiagramGraph& diagram, const Trunk& trunk);

}  // namespace loomfolio
