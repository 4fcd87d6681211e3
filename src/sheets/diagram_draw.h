// SPDX-License-Identifier: MIT
// Inks a laid-out diagram: bands, wires, parts, splices, earths, labels, flags.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "layout/laid.h"
#include "sheets/diagram_cables.h"
#include "sheets/diagram_graph.h"
#include "sheets/diagram_part.h"
#include "sheets/diagram_trunks.h"
#include "sheets/draw.h"

namespace loomfolio {

/// Where a flag leads: the text of its line, and the link.
struct FlagTarget {
  std::string text;  ///< may hold marks that are resolved later
  std::string sheet, anchor;
};

/// What a person would find on a wire.
enum class Liveness : std::uint8_t {
  dead,     ///< no volts, or none that anything holds there
  waiting,  ///< volts, but no current
  flowing,
};

/// A wire in a situation.
struct WireState {
  Liveness liveness = Liveness::dead;
  double direction = 0;  ///< > 0: current flows from the first to the second end of the wire, < 0: back; 0: to and fro
  std::string figure;    ///< '8.4 A'; may be empty
};

/// What a situation adds; empty vectors: the diagram is drawn at rest, in the wires' colours.
struct DiagramState {
  bool is_known = false;
  std::vector<PartState> parts;  ///< by part of the build
  std::vector<WireState> wires;  ///< by WireId
};

struct DiagramInk {
  const Build& build;
  const DiagramGraph& diagram;
  const Laid& laid;
  const TextMeasure& measure;
  std::function<FlagTarget(std::size_t diagram, TerminalId terminal)> target_of;
  std::string id_prefix;  ///< of the sheets that wires and earths are linked to
  const DiagramState* state = nullptr;
  std::vector<bool> marked = {};  ///< by WireId: its number stands white on black; empty: none
  std::vector<CableRing> rings = {};
  std::vector<Trunk> trunks = {};
  std::optional<Millimetres> bands_end = std::nullopt;  ///< no band reaches below it, where text stands close under the drawing
};

/// Height of the strip with the zones' names, above the laid-out area.
constexpr Grid zone_head = 800;

/// Draws everything with the top left of the laid-out area at `origin`; the zones' names stand above it.
void draw_diagram(Items& items, const DiagramInk& ink, Point origin);

}  // namespace loomfolio
