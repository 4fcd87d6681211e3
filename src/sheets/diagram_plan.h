// SPDX-License-Identifier: MIT
// The diagrams of a build, laid out: which there are, on which paper each stands, what it is called. Other pages ask
// here where a wire is drawn.
#pragma once

#include <string>
#include <vector>

#include "layout/laid.h"
#include "sheets/diagram_graph.h"
#include "sheets/folio.h"
#include "sheets/frame.h"

namespace loomfolio {

struct LaidDiagram {
  DiagramPlan plan;
  DiagramGraph diagram;
  Graph asked;  ///< the graph before its joints were settled
  Laid laid;
  PageShape page;
  double scale = 1;  ///< of the drawing on its page, from look::least_scale
  std::string id;    ///< of its sheet, with the context's prefix: 'diagram-starting'
  std::string title;
};

/// The diagram with a wish for each of these shares of the place's width.
std::vector<LaidDiagram> wish_for_shapes(const LaidDiagram& diagram, const Rect& place, const std::vector<double>& shapes);

/// What drawings that differ only in the shape asked for share: their name from print to print, the place that they must fit at
/// `least_scale`, and which of two is better.
struct BestOf {
  std::string name;
  Rect place;
  double least_scale = 1;
  bool (*is_better)(const LaidDiagram& a, const LaidDiagram& b) = nullptr;
  bool ends_at_full_size = false;  ///< what is drawn at full size is good enough: no further one is laid out
};

/// Lays out drawings that have plan, graph and page, at least one, and gives the best of them; the first that stays near the print
/// before, while it fits.
LaidDiagram lay_out_best(std::vector<LaidDiagram> asked, const BestOf& best_of, const PlacementBook* book);

/// Splits and lays out until every diagram fits a sheet. Same context, same result.
std::vector<LaidDiagram> lay_out_diagrams(const SheetContext& context);

/// Where on its page a diagram is drawn: what title and legend leave.
Rect drawing_room(const PageShape& page);

/// 'Supply and charging', 'Signals (2)'.
std::string title_of(const DiagramPlan& plan, const Words& words);

}  // namespace loomfolio
