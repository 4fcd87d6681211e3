// SPDX-License-Identifier: MIT
// From a diagram's plan to what the layout engine takes: a box for each part, splice and earth symbol, with room for its
// inside, and a wire for each wire.
#pragma once

#include <string>
#include <vector>

#include "layout/graph.h"
#include "layout/inside_drawing.h"
#include "layout/split.h"

namespace loomfolio {

enum class BoxContent : std::uint8_t { part, splice, earth };

/// A small mark beside a terminal: its other wires are drawn on these sheets. It takes the place of a reference with a
/// course of its own: as every wire is drawn whole somewhere, a reader needs no more than where to turn to.
struct Flag {
  TerminalId terminal;
  GridPoint tap;                     ///< within the body
  Side side = Side::top;
  std::vector<std::size_t> diagrams; ///< indices of the diagrams
};

/// What stands in a box of the graph. `body` is the drawn part within the box, which may be larger: flags stand outside.
struct DiagramBox {
  BoxContent content = BoxContent::part;
  int index = -1;            ///< part, splice or earth
  PartDrawing drawing;       ///< of a part
  GridBox body;
  std::vector<Flag> flags;
  std::vector<std::string> lines;  ///< of an earth: its words, wrapped
};

/// Text of a wire's label: its number, then colour and size.
struct WireLabel {
  std::string number, code;
  Grid number_width = 0, width = 0, height = 0;
};

struct DiagramGraph {
  Graph graph;
  std::vector<DiagramBox> boxes;     ///< by Graph::boxes
  std::vector<WireId> wires;         ///< by Graph::wires
  std::vector<WireLabel> labels;     ///< by Graph::wires
};

struct GraphRequest {
  const Build& build;
  const std::vector<DiagramPlan>& plans;
  std::size_t diagram = 0;           ///< index into plans
  const TextMeasure& measure;
  Grid wished_width = 38200, wished_height = 24700;
};

DiagramGraph make_diagram_graph(const GraphRequest& request);

WireLabel label_of(const Wire& wire, const TextMeasure& measure);

}  // namespace loomfolio
