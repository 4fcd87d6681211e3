// SPDX-License-Identifier: MIT
// Space is a result of the layout, so whether a diagram fits is known only when it is laid out. Each is tried on the
// usual paper, then on the larger one; what fits neither is cut in two, and all are tried again, as the references
// among them have changed.
#include "sheets/diagram_plan.h"

#include <algorithm>
#include <set>

#include "sheets/diagram_draw.h"
#include "sheets/drawing_rooms.h"
#include "sheets/look.h"
#include "sheets/placement_book.h"

namespace loomfolio {
namespace {

constexpr Millimetres legend_room{11};
constexpr int most_split_rounds = 60;
constexpr double parts_per_area = 20.0 / (380.0 * 230.0), wires_per_area = 32.0 / (380.0 * 230.0);  // mm2 of drawing
/// A fuller diagram is not tried at full size on the usual paper: of 49 of samples and test machines seven fitted there, none with more
/// than 28 wires on that area.
constexpr double most_on_usual = 40.0 / (380.0 * 230.0);

struct Papers {
  PageShape usual;
  PageShape larger;
  bool has_larger = false;
};

Papers papers_of(const FolioInput& input) {
  Papers papers{across_page(input.drawing_paper), {}, input.larger_paper != nullptr};
  papers.larger = papers.has_larger ? across_page(*input.larger_paper) : papers.usual;
  return papers;
}

double drawing_area(const PageShape& page) {
  const Rect room = drawing_room(page);
  return room.width.number() * room.height.number();
}

SplitBudget budget_of(const PageShape& page) {
  const double area = drawing_area(page);
  return {std::max(6, static_cast<int>(parts_per_area * area)), std::max(8, static_cast<int>(wires_per_area * area))};
}

/// How much smaller the drawing must be to fit the place.
double scale_to_fit(const Laid& laid, const Rect& place) {
  return std::min({1.0, place.width / to_mm(laid.width), place.height / to_mm(laid.height + zone_head)});
}

int count_hops(const Laid& laid) {
  int hops = 0;
  for (const Course& course : laid.courses) hops += static_cast<int>(course.hops.size());
  return hops;
}

/// Whether `a` is the better drawing: full size first, then fewer crossings; else the one that shrinks least.
bool is_better(const LaidDiagram& a, const LaidDiagram& b) {
  if (a.scale != b.scale) return a.scale > b.scale;
  return std::pair(count_hops(a.laid), a.laid.warnings.size()) < std::pair(count_hops(b.laid), b.laid.warnings.size());
}

void take(LaidDiagram& diagram, Laid laid, const Rect& place) {
  diagram.asked = diagram.diagram.graph;
  diagram.laid = std::move(laid);
  diagram.diagram.graph = with_settled_joints(diagram.diagram.graph, diagram.laid);
  diagram.scale = scale_to_fit(diagram.laid, place);
}

/// What a plan is called on that page, from print to print.
std::string name_on(const SheetContext& context, const DiagramPlan& plan, const PageShape& page) {
  std::string name = context.build().variant + "/diagram";
  for (const Function function : plan.functions) name += " " + std::string(name_of(function));
  return name + " " + std::to_string(plan.number) + " on " + std::to_string(to_grid(page.body.width));
}

/// The layout aims at the shape it is asked for and may miss it: a few shapes are asked for, and the best result taken.
LaidDiagram lay_out_on(const SheetContext& context, LaidDiagram diagram, const PageShape& page, double least_scale) {
  const Rect room = drawing_room(page);
  diagram.page = page;
  return lay_out_best(wish_for_shapes(diagram, room, {1.0, 0.75, 0.55}), {name_on(context, diagram.plan, page), room, least_scale, is_better},
                      context.input.placements);
}

/// On the usual paper at full size if that goes, else on the larger.
LaidDiagram choose_page(const SheetContext& context, const std::vector<DiagramPlan>& plans, std::size_t index, PartDrawings& drawings) {
  const Papers papers = papers_of(context.input);
  LaidDiagram diagram;
  diagram.plan = plans[index];
  diagram.diagram = make_diagram_graph({context.build(), plans, index, context.measure(), nullptr, &drawings});
  PlacementBook* book = context.input.placements;
  const auto wires = static_cast<double>(diagram.diagram.graph.wires.size());
  if (papers.has_larger && wires <= most_on_usual * drawing_area(papers.usual)) {
    const std::string name = name_on(context, diagram.plan, papers.usual);
    if (book == nullptr || !book->was_refused(name)) {
      LaidDiagram usual = lay_out_on(context, diagram, papers.usual, 1);
      if (usual.scale >= 1) return usual;
    }
    if (book != nullptr) book->refuse(name);
  }
  return lay_out_on(context, std::move(diagram), papers.larger, look::least_scale);
}

void name_sheets(const SheetContext& context, std::vector<LaidDiagram>& diagrams) {
  for (LaidDiagram& diagram : diagrams) {
    diagram.title = title_of(diagram.plan, context.words());
    diagram.id = context.id_prefix + "diagram";
    if (diagrams.size() == 1) continue;
    for (Function function : diagram.plan.functions) diagram.id += "-" + std::string(name_of(function));
    if (diagram.plan.number > 1) diagram.id += "-" + std::to_string(diagram.plan.number);
  }
}

void number_alike(std::vector<DiagramPlan>& plans) {
  for (std::size_t i = 0; i < plans.size(); ++i) {
    plans[i].number = 1;
    plans[i].of = 0;
    for (std::size_t j = 0; j < plans.size(); ++j) {
      if (plans[j].functions != plans[i].functions) continue;
      ++plans[i].of;
      if (j < i) ++plans[i].number;
    }
  }
}

/// Of shapes that would give the same drawing the first is enough.
void drop_alike(std::vector<LaidDiagram>& asked) {
  std::set<FirstRows> known;
  std::erase_if(asked, [&](const LaidDiagram& diagram) { return !known.insert(first_rows(diagram.diagram.graph)).second; });
}

}  // namespace

std::vector<LaidDiagram> wish_for_shapes(const LaidDiagram& diagram, const Rect& place, const std::vector<double>& shapes) {
  std::vector<LaidDiagram> asked(shapes.size(), diagram);
  for (std::size_t s = 0; s < shapes.size(); ++s) {
    asked[s].diagram.graph.wished_width = to_grid(place.width * shapes[s]);
    asked[s].diagram.graph.wished_height = to_grid(place.height) - zone_head;
  }
  return asked;
}

LaidDiagram lay_out_best(std::vector<LaidDiagram> asked, const BestOf& best_of, const PlacementBook* book) {
  for (std::size_t d = 0; d < asked.size(); ++d)
    asked[d].diagram.graph.name = best_of.name + " shape " + std::to_string(d + 1);
  if (book != nullptr)
    for (LaidDiagram& diagram : asked) {
      auto near = book->find_near(diagram.diagram.graph);
      if (!near || scale_to_fit(*near, best_of.place) < best_of.least_scale) continue;
      take(diagram, std::move(*near), best_of.place);
      return std::move(diagram);
    }
  drop_alike(asked);
  LayoutOptions options;
  options.room = {to_grid(best_of.place.width / best_of.least_scale),
                  to_grid(best_of.place.height / best_of.least_scale) - zone_head};
  std::vector<Laid> laid;
  if (!best_of.ends_at_full_size) {
    std::vector<Graph> graphs;
    for (const LaidDiagram& diagram : asked) graphs.push_back(diagram.diagram.graph);
    laid = lay_out_each(graphs, options);
  }
  std::size_t best = 0;
  for (std::size_t d = 0; d < asked.size(); ++d) {
    if (best_of.ends_at_full_size) laid.push_back(lay_out(asked[d].diagram.graph, options));
    take(asked[d], std::move(laid[d]), best_of.place);
    if (best_of.is_better(asked[d], asked[best])) best = d;
    if (best_of.ends_at_full_size && asked[d].scale >= 1) break;
  }
  return std::move(asked[best]);
}

Rect drawing_room(const PageShape& page) {
  const Rect& body = page.body;
  return {body.x, body.y + drawing_title_room, body.width, body.height - drawing_title_room - legend_room};
}

std::string title_of(const DiagramPlan& plan, const Words& words) {
  const auto name = [&](Function f) { return words("function." + std::string(name_of(f))); };
  const auto next_name = [&](Function f) { return words("function_next." + std::string(name_of(f))); };
  std::string title;
  if (plan.functions.size() > 3) {
    title = words("diagram.whole");
  } else {
    title = name(plan.functions.front());
    for (std::size_t i = 1; i < plan.functions.size(); ++i) {
      const bool is_last = i + 1 == plan.functions.size();
      title = words(is_last ? "diagram.two" : "diagram.several",
                    {{"first", title}, {"second", next_name(plan.functions[i])}});
    }
  }
  if (plan.of < 2) return title;
  return words("page.numbered", {{"title", title}, {"number", std::to_string(plan.number)}});
}

std::vector<LaidDiagram> lay_out_diagrams(const SheetContext& context) {
  const Papers papers = papers_of(context.input);
  std::vector<DiagramPlan> plans = split_build(context.build(), budget_of(papers.larger));
  std::vector<LaidDiagram> diagrams;
  PartDrawings drawings;
  for (int round = 0; round < most_split_rounds; ++round) {
    diagrams.clear();
    bool is_whole = true;
    for (std::size_t i = 0; i < plans.size() && is_whole; ++i) {
      diagrams.push_back(choose_page(context, plans, i, drawings));
      if (diagrams.back().scale >= look::least_scale) continue;
      const std::vector<DiagramPlan> halves = halve(context.build(), plans[i]);
      if (halves.size() < 2) continue;
      plans[i] = halves[0];
      plans.insert(plans.begin() + static_cast<std::ptrdiff_t>(i) + 1, halves[1]);
      number_alike(plans);
      is_whole = false;
    }
    if (is_whole) break;
  }
  if (context.input.placements != nullptr)
    for (const LaidDiagram& diagram : diagrams) context.input.placements->keep(diagram.asked, diagram.laid);
  name_sheets(context, diagrams);
  return diagrams;
}

}  // namespace loomfolio
