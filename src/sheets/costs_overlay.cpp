// SPDX-License-Identifier: MIT
#include "sheets/costs_overlay.h"

#include <iterator>
#include <vector>

#include "base/text.h"
#include "layout/weights.h"
#include "layout/wire_costs.h"
#include "sheets/diagram_tags.h"

namespace loomfolio {
namespace {

constexpr Grid note_pad = 50;  // left and right of a note's words

/// Terms at the end that are 0 are left out, and with only one left the sum as well.
std::string terms_of(const WireCost& cost) {
  std::string text = std::to_string(cost.length_charge);
  if (cost.bend_charge + cost.crossing_charge > 0) text += "+" + std::to_string(cost.bend_charge);
  if (cost.crossing_charge > 0) text += "+" + std::to_string(cost.crossing_charge);
  return cost.bend_charge + cost.crossing_charge > 0 ? text + "=" + std::to_string(cost.total()) : text;
}

}  // namespace

CostNotes find_cost_notes(const DiagramGraph& diagram, const Laid& laid, const TextMeasure& measure) {
  const std::vector<WireCost> costs = find_wire_costs(diagram.graph, laid);
  std::vector<GridBox> taken;
  for (const SpareTag& tag : find_spare_tags(diagram, laid))
    if (tag.is_placed) taken.push_back(tag.box);
  CostNotes notes;
  std::vector<bool> is_noted(costs.size(), false);
  const auto place_all = [&](const auto& text_of) {
    std::vector<NoteSize> sizes(costs.size());
    for (std::size_t w = 0; w < costs.size(); ++w) {
      if (is_noted[w]) continue;
      const TextSize size = measure.measure(text_of(costs[w]), look::small);
      sizes[w] = {to_grid_up(size.width) + 2 * note_pad, to_grid_up(size.ascent + size.descent)};
    }
    for (const PlacedLabel& place : place_wire_notes(diagram.graph, laid, sizes, taken)) {
      const auto w = static_cast<std::size_t>(place.wire);
      is_noted[w] = true;
      taken.push_back(place.box);
      notes.placed.push_back({text_of(costs[w]), place});
    }
  };
  place_all(terms_of);
  const std::vector<bool> is_whole = is_noted;
  place_all([](const WireCost& cost) { return std::to_string(cost.total()); });
  for (std::size_t w = 0; w < costs.size(); ++w)
    if (!is_whole[w]) notes.told_below.push_back(w);
  return notes;
}

void draw_costs(Items& items, const CostNotes& notes, const TextMeasure& measure, Point origin) {
  for (const CostNote& note : notes.placed) {
    const GridBox& box = note.place.box;
    const Millimetres ascent = measure.measure(note.text, look::small).ascent;
    const Point corner = origin + to_mm(GridPoint{box.x0, box.y0});
    if (note.place.is_upright)
      items.push_back(TextItem{{corner.x + ascent, corner.y + to_mm(box.height() - note_pad)}, note.text, look::small,
                               look::accent, Align::left, true});
    else
      add_text(items, {corner.x + to_mm(note_pad), corner.y + ascent}, note.text, look::small, look::accent);
  }
}

std::string costs_text(const SheetContext& context, const LaidDiagram& diagram, const CostNotes& notes) {
  const laying::RouteWeights weights;
  std::string text = context.words()("diagram.costs", {{"bend", std::to_string(weights.bend / grid_per_mm)},
                                                       {"crossing", std::to_string(weights.crossing / grid_per_mm)}});
  const std::vector<WireCost> costs = find_wire_costs(diagram.diagram.graph, diagram.laid);
  std::vector<std::string> told;
  for (std::size_t w : notes.told_below)
    told.push_back(diagram.diagram.labels[w].number + " " + terms_of(costs[w]));
  if (!told.empty()) text += " " + context.words()("diagram.costs_below", {{"wires", join(told, " \u00b7 ")}});
  return text;
}

}  // namespace loomfolio
