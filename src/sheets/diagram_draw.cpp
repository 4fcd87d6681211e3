// SPDX-License-Identifier: MIT
#include "sheets/diagram_draw.h"

#include <algorithm>

#include "sheets/anchors.h"
#include "sheets/diagram_wire.h"
#include "sheets/symbols/symbols.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Grid tag_pad = 60;
constexpr Millimetres bar_width{1.6}, flag_reach{3.0}, flag_step{2.9};

struct Drawer {
  Items& items;
  const DiagramInk& ink;
  Point origin;

  Point place(GridPoint p) const { return origin + to_mm(p); }
  const Build& build() const { return ink.build; }
  bool is_live() const { return ink.state != nullptr && ink.state->is_known; }
};

std::string capitals(const std::string& text) {
  std::string out = text;
  for (char& c : out)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return out;
}

void draw_bands(const Drawer& d) {
  for (std::size_t z = 0; z < d.ink.laid.bands.size(); ++z) {
    const GridBox band = d.ink.laid.bands[z];
    const Rect rect{d.origin.x + to_mm(band.x0), d.origin.y + to_mm(band.y0), to_mm(band.width()), to_mm(band.height())};
    add_filled_rect(d.items, rect, look::band, Millimetres(1));
    const FittedText name = fit_text(capitals(d.ink.diagram.graph.zones[z].name), look::zone_name, rect.width - Millimetres(5), d.ink.measure);
    add_text(d.items, {rect.x + Millimetres(2.5), rect.y + Millimetres(4.6)}, name.text, name.style, look::grey);
  }
}

/// Wire ends meet their ring: where a box is larger than the part in it, the end goes on straight to the part.
std::vector<GridPoint> led_to_parts(const Drawer& d, std::size_t wire) {
  std::vector<GridPoint> points = d.ink.laid.courses[wire].points;
  if (points.size() < 2) return points;
  const GraphWire& w = d.ink.diagram.graph.wires[wire];
  const auto lead = [&](int box, int terminal, GridPoint end) {
    const auto b = static_cast<std::size_t>(box);
    const GridBox at = d.ink.laid.boxes[b].box;
    const DiagramBox& content = d.ink.diagram.boxes[b];
    GridBox body = content.body;
    if (d.ink.laid.boxes[b].is_mirrored) body = {at.width() - body.x1, body.y0, at.width() - body.x0, body.y1};
    if (content.content == BoxContent::splice) return GridPoint{end.x, at.y0 + at.height() / 2};
    static_cast<void>(terminal);
    GridPoint p = end;
    if (end.y == at.y0) p.y = at.y0 + body.y0;
    else if (end.y == at.y1) p.y = at.y0 + body.y1;
    else if (end.x == at.x0) p.x = at.x0 + body.x0;
    else if (end.x == at.x1) p.x = at.x0 + body.x1;
    return p;
  };
  points.front() = lead(w.from_box, w.from_terminal, points.front());
  points.back() = lead(w.to_box, w.to_terminal, points.back());
  return points;
}

void draw_wire(const Drawer& d, std::size_t index) {
  WireCourse course = course_of(d.ink.diagram.graph, d.ink.laid, index);
  course.points = led_to_parts(d, index);
  const std::vector<PathPiece> path = path_of(course, d.origin);
  if (path.empty()) return;
  const WireId id = d.ink.diagram.wires[index];
  const Wire& wire = d.build().wire(id);
  if (d.is_live() && !d.ink.state->wires[id.at()].is_live) {
    PathItem item;
    item.pieces = path;
    item.stroke = {true, {look::dead_wire, look::part_line, {}, Cap::butt}};
    d.items.push_back(std::move(item));
    return;
  }
  add_wire(d.items, path, wire.colour, wire_width(wire.area));
}

/// Level wires lie above upright ones where they hop, so upright ones come first; thick before thin.
void draw_wires(const Drawer& d) {
  std::vector<std::size_t> order(d.ink.diagram.wires.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return d.ink.laid.courses[a].hops.size() < d.ink.laid.courses[b].hops.size();
  });
  for (std::size_t wire : order) draw_wire(d, wire);
  for (const GridPoint& dot : d.ink.laid.dots)
    add_circle(d.items, d.place(dot), Millimetres(0.7), {false, {}}, {true, look::ink});
}

void draw_labels(const Drawer& d) {
  std::vector<bool> is_anchored(d.ink.diagram.wires.size(), false);
  for (const PlacedLabel& label : d.ink.laid.labels) {
    const auto w = static_cast<std::size_t>(label.wire);
    const Wire& wire = d.build().wire(d.ink.diagram.wires[w]);
    const WireLabel& words = d.ink.diagram.labels[w];
    const Rect rect{d.origin.x + to_mm(label.box.x0), d.origin.y + to_mm(label.box.y0), to_mm(label.box.width()), to_mm(label.box.height())};
    const TextSize size = d.ink.measure.measure(words.number, look::wire_number);
    const Colour colour = d.is_live() && !d.ink.state->wires[d.ink.diagram.wires[w].at()].is_live ? look::grey : look::ink;
    add_filled_rect(d.items, rect, look::paper);
    TextItem number{{}, words.number, look::wire_number, colour, Align::left, label.is_upright};
    TextItem code{{}, words.code, look::wire_code, colour, Align::left, label.is_upright};
    const Millimetres gap = d.ink.measure.measure(" ", look::wire_code).width, pad = to_mm(tag_pad), own = to_mm(words.number_width);
    if (label.is_upright) {
      number.at = {rect.x + size.ascent, rect.bottom() - pad};
      code.at = {number.at.x, number.at.y - own - gap};
    } else {
      number.at = {rect.x + pad, rect.y + size.ascent};
      code.at = {number.at.x + own + gap, number.at.y};
    }
    d.items.push_back(std::move(number));
    d.items.push_back(std::move(code));
    d.items.push_back(LinkItem{rect, "wires", wire_anchor(wire)});
    if (!is_anchored[w]) d.items.push_back(AnchorItem{wire_anchor(wire), {rect.x, rect.y}});
    is_anchored[w] = true;
  }
}

struct FlagWay {
  double x = 0, y = 0;
};

FlagWay way_of(Side side) {
  switch (side) {
    case Side::top: return {0, -1};
    case Side::bottom: return {0, 1};
    case Side::left: return {-1, 0};
    case Side::right: return {1, 0};
  }
  return {};
}

/// A short stub with an arrowhead, and under it the sheets where the other wires are.
void draw_flag(const Drawer& d, const Flag& flag, Point at, Side side) {
  const FlagWay way = way_of(side);
  const Point tip{at.x + flag_reach * way.x, at.y + flag_reach * way.y};
  const Pen pen{look::accent, look::part_line, {}, Cap::butt};
  const Point neck{tip.x - Millimetres(1.2 * way.x), tip.y - Millimetres(1.2 * way.y)};
  add_line(d.items, {at.x + Millimetres(1 * way.x), at.y + Millimetres(1 * way.y)}, neck, pen);
  const Millimetres across_x(0.75 * way.y), across_y(0.75 * way.x);
  add_polygon(d.items, {tip, {neck.x + across_x, neck.y + across_y}, {neck.x - across_x, neck.y - across_y}}, look::accent, {look::accent, Millimetres(0)});
  const bool is_level = side == Side::left || side == Side::right;
  const auto lines = static_cast<double>(flag.diagrams.size());
  for (std::size_t i = 0; i < flag.diagrams.size(); ++i) {
    const FlagTarget target = d.ink.target_of(flag.diagrams[i], flag.terminal);
    const double nth = static_cast<double>(i);
    Point base;
    Align align = Align::centre;
    if (is_level) {
      align = side == Side::left ? Align::right : Align::left;
      base = {tip.x + Millimetres(0.5 * way.x), tip.y + Millimetres(0.9) + flag_step * (nth - (lines - 1) / 2)};
    } else {
      base = {tip.x, side == Side::bottom ? tip.y + Millimetres(2.5) + flag_step * nth : tip.y - Millimetres(0.6) - flag_step * (lines - 1 - nth)};
    }
    add_text(d.items, base, target.text, look::flag, look::accent, align);
    const Millimetres width(9);
    const Millimetres x = align == Align::centre ? base.x - width / 2 : align == Align::left ? base.x : base.x - width;
    d.items.push_back(LinkItem{{x, base.y - Millimetres(2.4), width, Millimetres(3)}, target.sheet, target.anchor});
  }
}

Side mirrored_side(Side side) {
  if (side == Side::left) return Side::right;
  return side == Side::right ? Side::left : side;
}

void draw_part_box(const Drawer& d, std::size_t b) {
  const DiagramBox& content = d.ink.diagram.boxes[b];
  const PlacedBox& placed = d.ink.laid.boxes[b];
  const Part& part = d.build().parts[static_cast<std::size_t>(content.index)];
  const Grid x = placed.is_mirrored ? placed.box.width() - content.body.x1 : content.body.x0;
  const Point at = d.place({placed.box.x0 + x, placed.box.y0 + content.body.y0});
  const PartState state = d.is_live() ? d.ink.state->parts[static_cast<std::size_t>(content.index)] : PartState{};
  d.items.push_back(AnchorItem{part_anchor(part), at});
  draw_part(d.items, placed.is_mirrored ? mirrored(content.drawing) : content.drawing, at, state);
  for (const Flag& flag : content.flags) {
    GridPoint tap = flag.tap;
    if (placed.is_mirrored) tap.x = content.drawing.width - tap.x;
    draw_flag(d, flag, at + to_mm(tap), placed.is_mirrored ? mirrored_side(flag.side) : flag.side);
  }
}

void draw_splice(const Drawer& d, std::size_t b) {
  const DiagramBox& content = d.ink.diagram.boxes[b];
  const PlacedBox& placed = d.ink.laid.boxes[b];
  const Splice& splice = d.build().splices[static_cast<std::size_t>(content.index)];
  const Grid y = placed.box.y0 + placed.box.height() / 2;
  const Grid width = content.body.width(), x0 = placed.is_mirrored ? placed.box.x1 - width : placed.box.x0;
  const Pen bar{look::ink, bar_width, {}, Cap::round};
  const Grid inset = std::min<Grid>(width / 2, 2 * module - 50);
  Point from = d.place({x0 + inset, y}), to = d.place({x0 + width - inset, y});
  if (!(from.x < to.x)) to.x = from.x + Millimetres(0.01);
  add_line(d.items, from, to, bar);
  d.items.push_back(AnchorItem{splice_anchor(splice), from});
  const Millimetres name_x = to_mm(x0 + width) + d.origin.x - to_mm(inset) + Millimetres(1.5);
  add_text(d.items, {name_x, baseline_at_middle(from.y, look::terminal_name)}, splice.id, look::terminal_name);
  const Millimetres after = name_x + d.ink.measure.measure(splice.id, look::terminal_name).width;
  for (const Flag& flag : content.flags) draw_flag(d, flag, {after - Millimetres(0.2), from.y}, Side::right);
}

void draw_earth_box(const Drawer& d, std::size_t b) {
  const DiagramBox& content = d.ink.diagram.boxes[b];
  const PlacedBox& placed = d.ink.laid.boxes[b];
  const Earth& earth = d.build().earths[static_cast<std::size_t>(content.index)];
  const GridPoint tap = d.ink.diagram.graph.boxes[b].terminals[0].at;
  const Grid x = placed.is_mirrored ? placed.box.x1 - tap.x : placed.box.x0 + tap.x;
  const Point top = d.place({x, placed.box.y0});
  draw_earth(d.items, top, {look::ink, look::heavy_line, look::paper});
  Millimetres y = top.y + Millimetres(6.2);
  add_text(d.items, {top.x, y}, earth.id, look::terminal_name, look::ink, Align::centre);
  for (const std::string& line : content.lines) {
    y += Millimetres(2.7);
    add_text(d.items, {top.x, y}, line, look::least, look::ink, Align::centre);
  }
  d.items.push_back(LinkItem{to_mm(placed.box), "earths", earth_anchor(earth)});
  auto& link = std::get<LinkItem>(d.items.back());
  link.rect.x += d.origin.x;
  link.rect.y += d.origin.y;
}

}  // namespace

void draw_diagram(Items& items, const DiagramInk& ink, Point origin) {
  const Drawer d{items, ink, origin};
  draw_bands(d);
  draw_wires(d);
  draw_labels(d);
  for (std::size_t b = 0; b < ink.diagram.boxes.size(); ++b) {
    switch (ink.diagram.boxes[b].content) {
      case BoxContent::part: draw_part_box(d, b); break;
      case BoxContent::splice: draw_splice(d, b); break;
      case BoxContent::earth: draw_earth_box(d, b); break;
    }
  }
}

}  // namespace loomfolio
