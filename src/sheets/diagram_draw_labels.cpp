// SPDX-License-Identifier: MIT
// The words of the wires: labels that the layout placed, and tags on or beside the wires that got none.
#include <algorithm>

#include "sheets/anchors.h"
#include "sheets/diagram_drawer.h"
#include "sheets/diagram_tags.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

bool is_marked(const DiagramDrawer& d, WireId wire) { return wire.at() < d.ink.marked.size() && d.ink.marked[wire.at()]; }

/// Behind the number of a marked wire.
constexpr Millimetres mark_pad(0.35);

}  // namespace

bool is_wire_live(const DiagramDrawer& d, WireId wire) {
  return !d.is_live() || d.ink.state->wires[wire.at()].liveness != Liveness::dead;
}

WireLabel in_situation(const DiagramDrawer& d, WireId wire, WireLabel words) {
  if (!d.is_live()) return words;
  words.width -= figure_room(words.figure, d.ink.measure);
  words.figure = d.ink.state->wires[wire.at()].figure;
  words.width += figure_room(words.figure, d.ink.measure);
  return words;
}

void draw_label(const DiagramDrawer& d, WireId id, const WireLabel& words, Point at, Colour colour) {
  const TextSize size = d.ink.measure.measure(words.number, look::wire_number);
  const Millimetres gap = d.ink.measure.measure(" ", look::wire_code).width, pad = to_mm(tag_pad);
  const Millimetres own = to_mm(words.number_width);
  if (is_marked(d, id))
    add_filled_rect(d.items, {at.x + pad - mark_pad, at.y, own + mark_pad * 2, to_mm(words.height)}, colour);
  add_text(d.items, {at.x + pad, at.y + size.ascent}, words.number, look::wire_number,
           is_marked(d, id) ? look::paper : colour);
  const Point code{at.x + pad + own + gap, at.y + size.ascent};
  const Millimetres code_width = add_wire_code(d.items, code, words.code, colour, TextRun::level, d.ink.measure);
  if (words.figure.empty()) return;
  add_text(d.items, {code.x + code_width + gap, code.y}, words.figure, look::flow_figure, look::accent);
}

namespace {

void draw_upright_label(const DiagramDrawer& d, WireId id, const WireLabel& words, const Rect& rect, Colour colour) {
  const TextSize size = d.ink.measure.measure(words.number, look::wire_number);
  const Millimetres gap = d.ink.measure.measure(" ", look::wire_code).width, own = to_mm(words.number_width);
  const Point at{rect.x + size.ascent, rect.bottom() - to_mm(tag_pad)};
  if (is_marked(d, id))
    add_filled_rect(d.items, {rect.x, at.y - own - mark_pad, rect.width, own + mark_pad * 2}, colour);
  d.items.push_back(
      TextItem{at, words.number, look::wire_number, is_marked(d, id) ? look::paper : colour, Align::left, true});
  const Millimetres code =
      add_wire_code(d.items, {at.x, at.y - own - gap}, words.code, colour, TextRun::upright, d.ink.measure);
  if (words.figure.empty()) return;
  d.items.push_back(
      TextItem{{at.x, at.y - own - gap - code - gap}, words.figure, look::flow_figure, look::accent, Align::left, true});
}

/// On the wire itself, or beside it.
void draw_spare_tag(const DiagramDrawer& d, const SpareTag& tag) {
  const WireId id = d.ink.diagram.wires[tag.wire];
  WireLabel words = in_situation(d, id, d.ink.diagram.labels[tag.wire]);
  if (tag.is_number_only) {
    words.code.clear();
    words.figure.clear();
    words.width = tag.is_upright ? tag.box.height() : tag.box.width();
  }
  Point corner = d.place({tag.box.x0, tag.box.y0});
  Rect rect{corner.x, corner.y, to_mm(tag.box.width()), to_mm(tag.box.height())};
  if (tag.is_upright && d.is_live()) {  // as long as its words
    rect.y = rect.bottom() - to_mm(words.width);
    rect.height = to_mm(words.width);
  }
  if (tag.ends_at_wire) corner.x = rect.right() - to_mm(words.width);
  const Colour colour = is_wire_live(d, id) ? look::ink : look::grey;
  add_filled_rect(d.items, {corner.x, rect.y, tag.is_upright ? rect.width : to_mm(words.width), rect.height}, look::paper);
  if (tag.is_upright)
    draw_upright_label(d, id, words, rect, colour);
  else
    draw_label(d, id, words, corner, colour);
  d.items.push_back(LinkItem{rect, d.ink.id_prefix + "wires", wire_anchor(d.build().wire(id))});
  d.items.push_back(AnchorItem{wire_anchor(d.build().wire(id)), corner});
}

}  // namespace

void draw_labels(const DiagramDrawer& d) {
  std::vector<bool> is_anchored(d.ink.diagram.wires.size(), false);
  const std::vector<SpareTag> tags = find_spare_tags(d.ink.diagram, d.ink.laid);
  for (const PlacedLabel& label : labels_to_draw(d.ink.laid, tags)) {
    const auto w = static_cast<std::size_t>(label.wire);
    const WireId id = d.ink.diagram.wires[w];
    const WireLabel words = in_situation(d, id, d.ink.diagram.labels[w]);
    const Point corner = d.place({label.box.x0, label.box.y0});
    Rect rect{corner.x, corner.y, to_mm(label.box.width()), to_mm(label.box.height())};
    if (label.is_upright && d.is_live()) {  // as long as its words
      rect.y = rect.bottom() - to_mm(words.width);
      rect.height = to_mm(words.width);
    }
    const Colour colour = is_wire_live(d, id) ? look::ink : look::grey;
    if (label.is_upright)
      draw_upright_label(d, id, words, rect, colour);
    else
      draw_label(d, id, words, corner, colour);
    d.items.push_back(LinkItem{rect, d.ink.id_prefix + "wires", wire_anchor(d.build().wire(id))});
    if (!is_anchored[w]) d.items.push_back(AnchorItem{wire_anchor(d.build().wire(id)), corner});
    is_anchored[w] = true;
  }
  for (const SpareTag& tag : tags)
    if (tag.is_placed) draw_spare_tag(d, tag);
}

}  // namespace loomfolio
