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

/// Splits and lays out until every diagram fits a sheet. Same context, same result.
std::vector<LaidDiagram> lay_out_diagrams(const SheetContext& context);

/// Where on its page a diagram is drawn: what title and legend leave.
Rect drawing_room(const PageShape& page);

/// 'Supply and charging', 'Signals (2)'.
std::string title_of(const DiagramPlan& plan, const Words& words);

}  // namespace loomfolio
