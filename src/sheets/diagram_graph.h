// SPDX-License-Identifier: MIT
// From a diagram's plan to what the layout engine takes: a box for each part, splice and earth symbol, with room for
// its inside, and a wire for each wire.
#pragma once

#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "layout/graph.h"
#include "layout/inside_drawing.h"
#include "layout/split.h"

namespace loomfolio {

enum class BoxContent : std::uint8_t { part, splice, earth };

/// Where words stand: right or left of what they belong to, or in line with it.
enum class WordSide : std::uint8_t { right, left, middle };

/// A small mark beside a terminal: its other wires are drawn on these sheets. It takes the place of a reference with a
/// course of its own: as every wire is drawn whole somewhere, a reader needs no more than where to turn to.
struct Flag {
  TerminalId terminal;
  GridPoint tap;  ///< within the body
  Side side = Side::top;
  std::vector<std::size_t> diagrams;  ///< indices of the diagrams
  Grid reach = 0;                     ///< length of its stub
  WordSide words = WordSide::middle;  ///< of an upright stub: away from a wire that stands close beside it
};

/// Text of a wire's label: its number, then colour and size; in a situation colour and amperes.
struct WireLabel {
  std::string number, code, figure;
  Grid number_width = 0, width = 0, height = 0;
};

/// A wire that goes from the part straight to an earth symbol under it. It has no course in the graph: the symbol
/// stands within the part's box.
struct LocalEarth {
  WireId wire;
  int earth = -1;
  GridPoint tap;  ///< within the body, on its bottom edge
  WordSide words = WordSide::right;
  WireLabel label;
  std::vector<std::string> lines;  ///< the earth's words, the first beside its id
};

/// What stands in a box of the graph. `body` is the drawn part within the box, which may be larger: flags stand
/// outside.
struct DiagramBox {
  BoxContent content = BoxContent::part;
  int index = -1;       ///< part, splice or earth
  PartDrawing drawing;  ///< of a part
  GridBox body;
  std::vector<Flag> flags;
  std::vector<LocalEarth> earths;
  std::vector<std::string> lines;  ///< of an earth: its words, wrapped
};

struct DiagramGraph {
  Graph graph;
  std::vector<DiagramBox> boxes;  ///< by Graph::boxes
  std::vector<WireId> wires;      ///< by Graph::wires; those with local earths are not among them
  std::vector<WireLabel> labels;  ///< by Graph::wires
};

/// Parts of one build as drawn, each once for the ends and the lie that graphs ask for. Zones may differ between the graphs.
class PartDrawings {
 public:
  const PartDrawing& draw(const InsideRequest& request);

 private:
  std::map<std::tuple<PartId, std::vector<int>, ConnectorLie>, PartDrawing> made_;
};

struct GraphRequest {
  const Build& build;
  const std::vector<DiagramPlan>& plans;
  std::size_t diagram = 0;  ///< index into plans
  const TextMeasure& measure;
  const std::vector<std::string>* figures = nullptr;  ///< by WireId: the widest its label must hold in place of the size
  PartDrawings* drawings = nullptr;                   ///< shared with other graphs of the build; null: of this graph alone
};

DiagramGraph make_diagram_graph(const GraphRequest& request);

WireLabel label_of(const Wire& wire, const TextMeasure& measure);
/// What a figure adds to the label's width, with the gap before it; 0 for none.
Grid figure_room(const std::string& figure, const TextMeasure& measure);
/// Colour and a figure.
WireLabel label_with_figure(const Wire& wire, const std::string& figure, const TextMeasure& measure);

// Measures of what is drawn outside a part's body, shared by layout and drawing.
constexpr Grid earth_stub = 550, earth_words_gap = 400, earth_line = 280, flag_stub = 300, flag_line = 290,
               flag_width = 1000;

}  // namespace loomfolio
