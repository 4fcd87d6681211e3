// SPDX-License-Identifier: MIT
// The diagrams: title, drawing, legend.
#include <algorithm>
#include <iterator>

#include "base/text.h"
#include "sheets/anchors.h"
#include "sheets/costs_overlay.h"
#include "sheets/diagram_draw.h"
#include "sheets/diagram_legend.h"
#include "sheets/diagram_plan.h"
#include "sheets/drawing_head.h"
#include "sheets/drawing_rooms.h"
#include "sheets/hook_ups.h"
#include "sheets/overview.h"
#include "sheets/reference.h"
#include "sheets/scale_items.h"
#include "sheets/sheet_makers.h"
#include "sheets/terminal_anchor.h"

namespace loomfolio {
namespace {

constexpr Millimetres legend_gap{4};  // between a drawing and its legend
constexpr Millimetres least_gap{1};   // the same where a long legend leaves no more

/// What the diagram shows: its parts that are no connectors, in order.
std::string parts_on(const SheetContext& context, const LaidDiagram& diagram) {
  std::string text;
  for (const DiagramBox& box : diagram.diagram.boxes) {
    if (box.content != BoxContent::part) continue;
    const Part& part = context.build().parts[static_cast<std::size_t>(box.index)];
    if (context.build().kind_of(part).is_connector) continue;
    text += (text.empty() ? "" : " · ") + part.label;
  }
  return text;
}

/// Where the terminal stands on another diagram.
std::string anchor_of(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  const auto index = static_cast<std::size_t>(terminal.owner_index);
  switch (terminal.owner) {
    case OwnerType::part:
      return terminal_anchor(terminal);
    case OwnerType::splice:
      return splice_anchor(build.splices[index]);
    case OwnerType::earth:
      return earth_anchor(build.earths[index]);
  }
  return {};
}

Sheet draw_sheet(const SheetContext& context, const std::vector<LaidDiagram>& diagrams, const LaidDiagram& diagram) {
  Sheet sheet;
  sheet.id = diagram.id;
  sheet.title = diagram.title;
  sheet.width = diagram.page.width;
  sheet.height = diagram.page.height;
  const Rect& body = diagram.page.body;
  Items& items = sheet.items;
  add_drawing_head(items, context, body, diagram.title);
  items.push_back(TagOpenItem{"P", {}});
  const FittedText subtitle = fit_text(parts_on(context, diagram), look::table, body.width, context.measure());
  add_text(items, {body.x, body.y + Millimetres(11.5)}, subtitle.text, subtitle.style, look::grey);
  items.push_back(TagCloseItem{});

  const Words& words = context.words();
  items.push_back(
      TagOpenItem{"Figure", words("diagram.alternative", {{"title", diagram.title},
                                                          {"parts", std::to_string(diagram.diagram.boxes.size())},
                                                          {"wires", std::to_string(diagram.plan.wires.size())}})});
  const Rect room = drawing_room(diagram.page);
  const Millimetres width = to_mm(diagram.laid.width), height = to_mm(diagram.laid.height + zone_head);
  DiagramFinds finds{find_cable_rings(context.build(), diagram.diagram, diagram.laid),
                     find_trunks(context.build(), diagram.diagram, diagram.laid, context.measure()), {}};
  if (context.input.options.overlay == Overlay::costs)
    finds.costs = find_cost_notes(diagram.diagram, diagram.laid, context.measure());
  Block legend = make_legend(context, diagram, finds, body.width);
  const Millimetres foot = body.bottom() - legend.height + Millimetres(2), free = foot - legend_gap - room.y;
  // Hook-ups are compared side by side, so their drawings keep one scale.
  const double growth = context.id_prefix.empty() ? std::min(room.width / width, free / height) : 1;
  const double fitting = std::max((free + legend_gap - least_gap) / height, look::least_scale);
  const double scale = std::min(diagram.scale < 1 ? diagram.scale : std::clamp(growth, 1.0, most_drawing_growth), fitting);
  const Point middle{room.x + room.width / 2,
                     room.y + std::max(std::min(room.height / 2, free - height * scale / 2), height * scale / 2)};
  const Point corner{middle.x - width / 2, middle.y - height / 2 + to_mm(zone_head)};
  DiagramInk ink{context.build(), diagram.diagram, diagram.laid, context.measure(), {}, context.id_prefix, nullptr, {}, finds.rings,
                 finds.trunks};
  for (std::size_t w = 0; w < context.build().wires.size(); ++w)
    ink.marked.push_back(differs(context, WireId{static_cast<std::int32_t>(w)}));
  ink.target_of = [&](std::size_t other, TerminalId terminal) {
    const std::string anchor = anchor_of(context.build(), terminal);
    return FlagTarget{sheet_mark(diagrams[other].id) + " " + cell_mark(diagrams[other].id, anchor), diagrams[other].id,
                      anchor};
  };
  Items drawing;
  draw_diagram(drawing, ink, corner);
  if (finds.costs) draw_costs(drawing, *finds.costs, context.measure(), corner);
  if (scale != 1) scale_items(drawing, middle, scale);
  std::move(drawing.begin(), drawing.end(), std::back_inserter(items));
  items.push_back(TagCloseItem{});

  items.push_back(TagOpenItem{"P", {}});
  place_block(items, std::move(legend), {body.x, foot});
  items.push_back(TagCloseItem{});
  return sheet;
}

}  // namespace

std::vector<Sheet> make_diagrams(const SheetContext& context) {
  const std::vector<LaidDiagram> diagrams = lay_out_diagrams(context);
  std::vector<Sheet> sheets;
  // A single diagram is its own overview.
  if (diagrams.size() > 1) sheets.push_back(make_overview(context, diagrams));
  for (const LaidDiagram& diagram : diagrams) sheets.push_back(draw_sheet(context, diagrams, diagram));
  return sheets;
}

}  // namespace loomfolio
