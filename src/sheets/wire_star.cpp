// SPDX-License-Identifier: MIT
#include "sheets/wire_star.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "sheets/fitting_paint.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/wire_cells.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

// All lengths in mm: a wire leaves the joint, bends within `fan` to its own line, runs `straight`, and is named after
// `label_gap`.
constexpr Millimetres fan(11), straight(5), label_gap(1.6), row_pitch(8.6), joint_half(7), label_gap_across(0.4);

enum class Towards { left, right };

struct Fan {
  Point joint;  ///< where the wires enter it
  Towards towards = Towards::right;
  Millimetres label_room;
  Millimetres pitch;  ///< between the lines of two wires
  std::vector<Point> entries = {};  ///< by wire, where each enters a barrel of its own; empty: side by side at the joint
};

/// A gentle S from `from`, its first control at `away`, to the wire's own line, then straight.
std::vector<PathPiece> fan_path(const Fan& f, Millimetres row_y, Point from, Point away) {
  const double sign = f.towards == Towards::right ? 1 : -1;
  const Millimetres bend = f.joint.x + fan * sign, end = bend + straight * sign;
  const Millimetres middle = f.joint.x + fan * (sign * 0.5);
  return {PathMove{from}, PathCurve{away, {middle, row_y}, {bend, row_y}}, PathLine{{end, row_y}}};
}

/// Sets a line smaller, down to the least size, while it is too wide.
void shrink_to_fit(Paragraph& line, Millimetres room, const TextMeasure& measure) {
  const auto width = [&] {
    Millimetres sum;
    for (const Span& span : line.spans) sum += measure.measure(span.text, span.style).width;
    return sum;
  };
  while (width() > room && line.spans.front().style.points > look::least_points)
    for (Span& span : line.spans) span.style.points = std::max(look::least_points, span.style.points - 0.5);
}

/// Number and code of a wire, and below them where it goes.
struct StarLabel {
  Block name, where;
  Millimetres height() const { return name.height + where.height; }
};

StarLabel make_label(const SheetContext& context, const Wire& wire, TerminalId here, Towards towards, Millimetres room) {
  const TerminalId end = other_end(wire, here);
  Paragraph name{{{wire.id, look::table_mono_bold, look::ink, {}},
                  {"  " + wire.colour.text(), look::table_mono, look::ink, {}},
                  {"  " + print_wire_size(wire), look::table, look::ink, {}}},
                 towards == Towards::right ? Align::left : Align::right,
                 {}};
  const std::string mark = terminal_mark(context.build(), end);
  Paragraph where{{{owner_name(context.build(), end, context.words()), look::table, look::ink, {}}}, name.align, {}};
  if (!mark.empty()) where.spans.push_back({" " + mark, look::table_bold, look::ink, {}});
  const TypeSetting setting{context.measure()};
  for (Paragraph* line : {&name, &where}) shrink_to_fit(*line, room, context.measure());
  return {set_paragraph(name, room, setting), set_paragraph(where, room, setting)};
}

/// From one wire's line to the next: more than usual where a long name takes two lines.
Millimetres pitch_for(const SheetContext& context, const std::vector<WireId>& wires, TerminalId here, Millimetres room) {
  Millimetres pitch = row_pitch;
  for (const WireId wire : wires)
    pitch = std::max(pitch, make_label(context, context.build().wire(wire), here, Towards::right, room).height() + label_gap_across);
  return pitch;
}

void add_label(Items& items, const SheetContext& context, const Wire& wire, TerminalId here, const Fan& f,
               Millimetres row_y) {
  const double sign = f.towards == Towards::right ? 1 : -1;
  const Millimetres x = f.joint.x + (fan + straight + label_gap) * sign;
  StarLabel label = make_label(context, wire, here, f.towards, f.label_room);
  const Millimetres left = f.towards == Towards::right ? x : x - f.label_room;
  const Millimetres top = row_y - label.height() / 2, below = top + label.name.height;
  items.push_back(TagOpenItem{"P", {}});
  place_block(items, std::move(label.name), {left, top});
  place_block(items, std::move(label.where), {left, below});
  items.push_back(TagCloseItem{});
}

/// Draws one side's wires, their lines centred on the joint.
void add_fan(Items& items, const SheetContext& context, const std::vector<WireId>& wires, TerminalId here,
             const Fan& f) {
  const auto count = static_cast<double>(wires.size());
  for (std::size_t i = 0; i < wires.size(); ++i) {
    const double place = static_cast<double>(i) - (count - 1) / 2;
    const Wire& wire = context.build().wire(wires[i]);
    const Millimetres row_y = f.joint.y + f.pitch * place;
    // Wires enter the joint side by side, so that each can be followed.
    Point from{f.joint.x, f.joint.y + Millimetres(std::clamp(place * 1.1, -1.8, 1.8))}, away{f.joint.x, from.y};
    away.x += fan * (f.towards == Towards::right ? 0.5 : -0.5);
    if (!f.entries.empty()) {
      from = f.entries[i];
      away = {from.x + (from.x - f.joint.x + joint_half) * 0.5, from.y + (from.y - f.joint.y) * 0.5};
    }
    add_wire(items, fan_path(f, row_y, from, away), wire.colour, wire_width(wire.area) + look::swatch_extra * 0.5);
    add_label(items, context, wire, here, f, row_y);
  }
}

/// A crimped barrel in a shrunk sleeve.
void add_barrel(Items& items, Point centre) {
  const Millimetres half = joint_half;
  add_boxed_rect(
      items,
      {centre.x - half - Millimetres(2.5), centre.y - Millimetres(3.6), half * 2 + Millimetres(5), Millimetres(7.2)},
      look::band_dark, {look::grey, look::line}, Millimetres(2.4));
  add_boxed_rect(items, {centre.x - half, centre.y - Millimetres(2.6), half * 2, Millimetres(5.2)}, fitting_paint::metal,
                 {look::ink, look::part_line}, Millimetres(0.8));
  for (const double dx : {-3.2, 3.2})
    add_boxed_rect(items,
                   {centre.x + Millimetres(dx - 0.8), centre.y - Millimetres(1.9), Millimetres(1.6), Millimetres(3.8)},
                   Colour{0xa9, 0xab, 0xae}, {look::ink, look::thin_line}, Millimetres(0.5));
}

/// Where the barrels of rings on one bolt end, fanned out as they are stacked; one alone points straight.
std::vector<Point> barrel_ends(Point centre, std::size_t count) {
  constexpr double most_apart = 34, most_spread = 75;  // degrees
  std::vector<Point> ends;
  const double apart = count > 1 ? std::min(most_apart, 2 * most_spread / static_cast<double>(count - 1)) : 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double angle = (static_cast<double>(i) - (static_cast<double>(count) - 1) / 2) * apart * std::numbers::pi / 180;
    ends.push_back({centre.x + joint_half * std::cos(angle), centre.y + joint_half * std::sin(angle)});
  }
  return ends;
}

/// Ring terminals under a bolt head on a piece of fitting_paint::metal, seen from above, and the earth sign.
void add_bolt(Items& items, Point centre, const std::vector<Point>& ends) {
  constexpr Millimetres half(1.5);
  for (const Point& end : ends) {
    const double x = (end.x - centre.x) / joint_half, y = (end.y - centre.y) / joint_half;
    const Point aside{half * -y, half * x};
    add_polygon(items, {{centre.x + aside.x, centre.y + aside.y}, {end.x + aside.x, end.y + aside.y},
                        {end.x - aside.x, end.y - aside.y}, {centre.x - aside.x, centre.y - aside.y}}, fitting_paint::metal, {look::ink, look::line});
  }
  add_circle(items, centre, Millimetres(4.2), {true, {look::ink, look::part_line}}, {true, fitting_paint::metal});
  std::vector<Point> hexagon;
  for (const auto& [x, y] :
       {std::pair(1.0, 0.0), {0.5, 0.866}, {-0.5, 0.866}, {-1.0, 0.0}, {-0.5, -0.866}, {0.5, -0.866}})
    hexagon.push_back({centre.x + Millimetres(2.9 * x), centre.y + Millimetres(2.9 * y)});
  add_polygon(items, hexagon, look::paper, {look::ink, look::part_line});
  const Pen bar{look::ink, look::heavy_line};
  const Millimetres stem_x = centre.x - Millimetres(10);
  add_line(items, {centre.x - Millimetres(4.2), centre.y}, {stem_x, centre.y}, bar);
  for (int i = 0; i < 3; ++i) {
    const Millimetres x = stem_x - Millimetres(1.3 * i), side(3.4 - 1.1 * i);
    add_line(items, {x, centre.y - side}, {x, centre.y + side}, bar);
  }
}

Millimetres star_height(std::size_t rows, Millimetres pitch) {
  return pitch * static_cast<double>(std::max<std::size_t>(rows, 1)) + Millimetres(1);
}

}  // namespace

WireSides sides_at(const Build& build, TerminalId terminal) {
  WireSides sides;
  for (std::size_t i = 0; i < build.wires.size(); ++i) {
    const WireId id{static_cast<std::int32_t>(i)};
    if (build.wires[i].to == terminal)
      sides.left.push_back(id);
    else if (build.wires[i].from == terminal)
      sides.right.push_back(id);
  }
  const auto take_first = [](std::vector<WireId>& from, std::vector<WireId>& to) {
    if (!to.empty() || from.size() < 2) return;
    to.push_back(from.front());
    from.erase(from.begin());
  };
  take_first(sides.right, sides.left);
  take_first(sides.left, sides.right);
  return sides;
}

SquareMillimetres total_area(const Build& build, const std::vector<WireId>& wires) {
  SquareMillimetres total;
  for (const WireId wire : wires) total += build.wire(wire).area;
  return total;
}

Block splice_star(const SheetContext& context, const Splice& splice, Millimetres width) {
  const WireSides sides = sides_at(context.build(), splice.terminal);
  const Millimetres room = width / 2 - joint_half - fan - straight - label_gap;
  const Millimetres pitch = std::max(pitch_for(context, sides.left, splice.terminal, room),
                                     pitch_for(context, sides.right, splice.terminal, room));
  Block block{width, star_height(std::max(sides.left.size(), sides.right.size()), pitch), {}};
  const Point centre{width / 2, block.height / 2};
  block.items.push_back(TagOpenItem{"Figure", context.words()("earths.splice_picture", {{"id", splice.id}})});
  add_fan(block.items, context, sides.left, splice.terminal, {{centre.x - joint_half, centre.y}, Towards::left, room, pitch});
  add_fan(block.items, context, sides.right, splice.terminal,
          {{centre.x + joint_half, centre.y}, Towards::right, room, pitch});
  add_barrel(block.items, centre);
  block.items.push_back(TagCloseItem{});
  return block;
}

Block earth_star(const SheetContext& context, const Earth& earth, Millimetres width) {
  const WireSides sides = sides_at(context.build(), earth.terminal);
  std::vector<WireId> wires = sides.left;
  wires.insert(wires.end(), sides.right.begin(), sides.right.end());
  std::sort(wires.begin(), wires.end());
  const Millimetres start = Millimetres(20) + joint_half, room = width - start - fan - straight - label_gap;
  const Millimetres pitch = pitch_for(context, wires, earth.terminal, room);
  Block block{width, std::max(star_height(wires.size(), pitch), Millimetres(10)), {}};
  const Point centre{Millimetres(20), block.height / 2};
  const std::vector<Point> ends = barrel_ends(centre, wires.size());
  block.items.push_back(TagOpenItem{"Figure", context.words()("earths.earth_picture", {{"id", earth.id}})});
  add_fan(block.items, context, wires, earth.terminal,
          {{start, centre.y}, Towards::right, room, pitch, ends});
  add_bolt(block.items, centre, ends);
  block.items.push_back(TagCloseItem{});
  return block;
}

}  // namespace loomfolio
