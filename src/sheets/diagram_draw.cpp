// SPDX-License-Identifier: MIT
#include "sheets/diagram_draw.h"

#include <algorithm>
#include <cstdlib>

#include "base/text.h"
#include "sheets/anchors.h"
#include "sheets/diagram_drawer.h"
#include "sheets/diagram_live.h"
#include "sheets/diagram_tags.h"
#include "sheets/diagram_wire.h"
#include "sheets/symbols/symbols.h"
#include "sheets/terminal_anchor.h"
#include "sheets/trunk_draw.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Millimetres terminal_bar_width{1.6}, splice_dot{1.1};

std::string capitals(const std::string& text) {
  std::string out = text;
  for (char& c : out)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return out;
}

/// Words in lines no wider than `room`, two at most.
std::vector<std::string> wrapped(const std::string& text, const TextStyle& style, Millimetres room,
                                 const TextMeasure& measure) {
  std::vector<std::string> lines;
  for (const std::string& word : split(text, ' ')) {
    const std::string longer = lines.empty() ? word : lines.back() + " " + word;
    const bool goes_on = !lines.empty() && (lines.size() == 2 || measure.measure(longer, style).width <= room);
    if (goes_on)
      lines.back() = longer;
    else
      lines.push_back(word);
  }
  return lines;
}

/// Where the wires of a splice meet.
struct SpliceCore {
  Grid x0 = 0, x1 = 0, y = 0;  ///< ends and height of its bar
  Grid half_height = 0;        ///< from the bar to where wires enter
  Grid earth_x = 0;            ///< of the earth that hangs under it
  Grid words_x = 0;
};

SpliceCore core_of(const GraphBox& graph_box, const GridBox& at) {
  const GraphJoint& joint = graph_box.joint;
  SpliceCore core;
  core.half_height = joint.pitch / 2;
  core.y = at.y0 + joint.pad.y0 + core.half_height;
  const Grid left = at.x0 + joint.pad.x0, right = at.x1 - joint.pad.x1;
  core.words_x = right - joint.pitch / 2 + 150;
  int below = joint.slots_below;
  std::vector<Grid> taps;
  for (const GraphTerminal& t : graph_box.terminals) {
    if (t.side == Side::top || t.side == Side::bottom) taps.push_back(at.x0 + t.at.x);
    below += t.side == Side::bottom ? 1 : 0;
  }
  core.earth_x = (left + right) / 2 + (below - 1) * joint.pitch / 2;
  if (joint.slots_below > 0) taps.push_back(core.earth_x);
  if (taps.empty()) taps.push_back((left + right) / 2);
  core.x0 = *std::min_element(taps.begin(), taps.end());
  core.x1 = *std::max_element(taps.begin(), taps.end());
  core.words_x = std::max(core.words_x, core.x1 + 150);
  return core;
}

void draw_bands(const DiagramDrawer& d) {
  for (std::size_t z = 0; z < d.ink.laid.bands.size(); ++z) {
    if (d.ink.diagram.graph.zones[z].name.empty()) continue;
    const GridBox band = d.ink.laid.bands[z];
    // The name has a strip of its own above what the layout used.
    Rect rect{d.origin.x + to_mm(band.x0), d.origin.y + to_mm(band.y0) - to_mm(zone_head), to_mm(band.width()),
              to_mm(band.height() + zone_head)};
    if (d.ink.bands_end) rect.height = std::min(rect.height, *d.ink.bands_end - rect.y);
    add_filled_rect(d.items, rect, look::band, Millimetres(1));
    // A long name takes two lines.
    const std::vector<std::string> lines = wrapped(capitals(d.ink.diagram.graph.zones[z].name), look::zone_name,
                                                   rect.width - Millimetres(5), d.ink.measure);
    Millimetres y = rect.y + Millimetres(lines.size() > 1 ? 3.8 : 5.2);
    for (const std::string& line : lines) {
      add_text(d.items, {rect.x + Millimetres(2.5), y}, line, look::zone_name, look::grey);
      y += Millimetres(3);
    }
  }
}

/// Wire ends meet their ring: where a box is larger than the part in it, the end goes on straight to the part.
std::vector<GridPoint> led_to_parts(const DiagramDrawer& d, std::size_t wire) {
  std::vector<GridPoint> points = d.ink.laid.courses[wire].points;
  if (points.size() < 2) return points;
  const GraphWire& w = d.ink.diagram.graph.wires[wire];
  const auto lead = [&](int box, int terminal, GridPoint end) {
    const auto b = static_cast<std::size_t>(box);
    const GridBox at = d.ink.laid.boxes[b].box;
    const DiagramBox& content = d.ink.diagram.boxes[b];
    GridBox body = content.body;
    if (d.ink.laid.boxes[b].is_mirrored) body = {at.width() - body.x1, body.y0, at.width() - body.x0, body.y1};
    if (content.content == BoxContent::splice) {
      const SpliceCore core = core_of(d.ink.diagram.graph.boxes[b], at);
      const Side side = d.ink.diagram.graph.boxes[b].terminals[static_cast<std::size_t>(terminal)].side;
      if (side == Side::top || side == Side::bottom) return GridPoint{end.x, core.y};
      return GridPoint{side == Side::left ? core.x0 : core.x1, core.y};
    }
    GridPoint p = end;
    if (end.y == at.y0)
      p.y = at.y0 + body.y0;
    else if (end.y == at.y1)
      p.y = at.y0 + body.y1;
    else if (end.x == at.x0)
      p.x = at.x0 + body.x0;
    else if (end.x == at.x1)
      p.x = at.x0 + body.x1;
    return p;
  };
  points.front() = lead(w.from_box, w.from_terminal, points.front());
  points.back() = lead(w.to_box, w.to_terminal, points.back());
  return points;
}

struct DrawnWire {
  std::size_t index = 0;
  WireCourse course;
  std::vector<std::vector<PathPiece>> paths;
};

DrawnWire make_wire(const DiagramDrawer& d, std::size_t index) {
  DrawnWire made{index, course_of(d.ink.diagram.graph, d.ink.laid, index), {}};
  made.course.points = led_to_parts(d, index);
  hop_over_trunks(made.course, d.ink.trunks);
  made.paths = paths_of(made.course, index, d.ink.trunks, d.origin);
  return made;
}

void ink_wire(const DiagramDrawer& d, std::size_t index, const std::vector<PathPiece>& path, HollowLines lines) {
  const WireId id = d.ink.diagram.wires[index];
  const Wire& wire = d.build().wire(id);
  if (path.empty()) return;
  if (!d.is_live())
    add_wire(d.items, path, wire.colour, wire_width(wire.area));
  else
    add_wire_in_state(d.items, path, wire, d.ink.state->wires[id.at()], lines);
}

bool passes(const WireCourse& upright, const DrawnHop& hop) {
  for (std::size_t i = 1; i < upright.points.size(); ++i) {
    const auto [a, b] = std::minmax(upright.points[i - 1], upright.points[i]);
    if (a.x == b.x && std::abs(a.x - hop.at.x) <= hop.half && a.y < hop.at.y && b.y > hop.at.y) return true;
  }
  return false;
}

/// A hop lies above what it goes over. No order of whole wires does that where two hop over each other.
void draw_hops(const DiagramDrawer& d, const std::vector<DrawnWire>& drawn) {
  for (std::size_t w = 0; w < drawn.size(); ++w) {
    const DrawnWire& wire = drawn[w];
    const bool is_hollow = d.is_live() && d.ink.state->wires[d.ink.diagram.wires[wire.index].at()].liveness == Liveness::waiting;
    const bool is_covered = std::any_of(drawn.begin() + static_cast<std::ptrdiff_t>(w) + 1, drawn.end(), [&](const DrawnWire& later) {
      return std::any_of(wire.course.hops.begin(), wire.course.hops.end(), [&](const DrawnHop& hop) { return passes(later.course, hop); });
    });
    if (!is_hollow && !is_covered) continue;
    for (const std::vector<PathPiece>& path : wire.paths)
      for (const std::vector<PathPiece>& hop : hops_along(path, wire.course, d.origin)) ink_wire(d, wire.index, hop, HollowLines::whole);
  }
}

/// What lies level lies above what it crosses.
void draw_trunks(const DiagramDrawer& d, bool level) {
  for (const Trunk& trunk : d.ink.trunks)
    if (trunk.is_level == level) draw_trunk(d.items, d.ink.diagram, trunk, d.origin);
}

/// Level wires lie above upright ones where they hop, so upright ones come first; thick before thin.
void draw_wires(const DiagramDrawer& d) {
  std::vector<std::size_t> order(d.ink.diagram.wires.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return d.ink.laid.courses[a].hops.size() < d.ink.laid.courses[b].hops.size();
  });
  draw_trunks(d, false);
  std::vector<DrawnWire> drawn;
  for (std::size_t wire : order) drawn.push_back(make_wire(d, wire));
  for (const DrawnWire& wire : drawn)
    for (const std::vector<PathPiece>& path : wire.paths) ink_wire(d, wire.index, path, HollowLines::broken);
  draw_hops(d, drawn);
  draw_trunks(d, true);
  for (const GridPoint& dot : d.ink.laid.dots)
    add_circle(d.items, d.place(dot), Millimetres(0.7), {false, {}}, {true, look::ink});
}

void draw_cable_rings(const DiagramDrawer& d) {
  for (const CableRing& ring : d.ink.rings) {
    Rect rect = to_mm(ring.box);
    add_ellipse(d.items, {d.origin.x + rect.x, d.origin.y + rect.y, rect.width, rect.height}, {look::ink, look::part_line});
  }
}

/// A wire that goes straight down, for `stub`, to an earth symbol; the words stand beside it.
void draw_local_earth(const DiagramDrawer& d, const LocalEarth& local, Point origin, Grid stub, EarthWidth width = EarthWidth::usual) {
  const Wire& wire = d.build().wire(local.wire);
  const Earth& earth = d.build().earths[static_cast<std::size_t>(local.earth)];
  const bool is_right = local.words == WordSide::right;
  const Point top = origin + to_mm(local.tap), foot{top.x, top.y + to_mm(stub)};
  const bool is_live = is_wire_live(d, local.wire);
  if (!d.is_live())
    add_wire(d.items, std::vector<Point>{top, foot}, wire.colour, wire_width(wire.area));
  else
    draw_live_stub(d.items, top, foot, wire, d.ink.state->wires[local.wire.at()],
                   d.build().terminal(wire.to).owner == OwnerType::earth ? 1 : -1);
  draw_earth(d.items, foot, {look::ink, look::heavy_line, look::paper}, width);
  const Colour colour = is_live ? look::ink : look::grey;
  const Millimetres side = to_mm(earth_words_gap), edge = is_right ? top.x + side : top.x - side;
  Millimetres y = top.y + Millimetres(1.3);
  const WireLabel label = in_situation(d, local.wire, local.label);
  const Rect tag{is_right ? edge : edge - to_mm(label.width), y, to_mm(label.width), to_mm(label.height)};
  draw_label(d, local.wire, label, {tag.x, tag.y}, colour);
  d.items.push_back(LinkItem{tag, d.ink.id_prefix + "wires", wire_anchor(wire)});
  d.items.push_back(AnchorItem{wire_anchor(wire), {tag.x, tag.y}});
  y += to_mm(local.label.height) + Millimetres(2.4);
  const Millimetres id = d.ink.measure.measure(earth.id + " ", look::terminal_name).width,
                    text_x = is_right ? edge + to_mm(tag_pad) : edge - to_mm(tag_pad);
  for (std::size_t i = 0; i < local.lines.size(); ++i) {
    const Millimetres line = d.ink.measure.measure(local.lines[i], look::small).width + (i == 0 ? id : Millimetres(0));
    const Millimetres x = is_right ? text_x : text_x - line;
    if (i == 0) add_text(d.items, {x, y}, earth.id, look::terminal_name);
    add_text(d.items, {x + (i == 0 ? id : Millimetres(0)), y}, local.lines[i], look::small);
    if (i == 0)
      d.items.push_back(
          LinkItem{{x, y - Millimetres(2.4), line, Millimetres(3)}, d.ink.id_prefix + "earths", earth_anchor(earth)});
    y += to_mm(earth_line);
  }
}

WordSide mirrored_words(WordSide side) {
  if (side == WordSide::middle) return side;
  return side == WordSide::right ? WordSide::left : WordSide::right;
}

/// Earths under a part; `at` is the body's top left.
void draw_local_earths(const DiagramDrawer& d, std::size_t b, Point at, Grid width) {
  constexpr Grid symbols_apart = 700;
  const bool is_mirrored = d.ink.laid.boxes[b].is_mirrored;
  const std::vector<LocalEarth>& earths = d.ink.diagram.boxes[b].earths;
  const bool are_close = earths.size() == 2 && std::abs(earths[0].tap.x - earths[1].tap.x) < symbols_apart;
  for (LocalEarth local : earths) {
    if (is_mirrored) {
      local.tap.x = width - local.tap.x;
      local.words = mirrored_words(local.words);
    }
    draw_local_earth(d, local, at, earth_stub, are_close ? EarthWidth::narrow : EarthWidth::usual);
  }
}

Side mirrored_side(Side side) {
  if (side == Side::left) return Side::right;
  return side == Side::right ? Side::left : side;
}

void draw_part_box(const DiagramDrawer& d, std::size_t b) {
  const DiagramBox& content = d.ink.diagram.boxes[b];
  const PlacedBox& placed = d.ink.laid.boxes[b];
  const Part& part = d.build().parts[static_cast<std::size_t>(content.index)];
  const Grid x = placed.is_mirrored ? placed.box.width() - content.body.x1 : content.body.x0;
  const Point at = d.place({placed.box.x0 + x, placed.box.y0 + content.body.y0});
  const PartState state = d.is_live() ? d.ink.state->parts[static_cast<std::size_t>(content.index)] : PartState{};
  d.items.push_back(AnchorItem{part_anchor(part), at});
  for (const PlacedTerminal& terminal : content.drawing.terminals) {
    GridPoint tap = terminal.taps.front();
    if (placed.is_mirrored) tap.x = content.drawing.width - tap.x;
    const TerminalId id = part.terminals[static_cast<std::size_t>(terminal.terminal)];
    d.items.push_back(AnchorItem{terminal_anchor(d.build().terminal(id)), at + to_mm(tap)});
  }
  draw_local_earths(d, b, at, content.body.width());
  draw_part(d.items, placed.is_mirrored ? mirrored(content.drawing) : content.drawing, at, d.ink.measure, state);
  for (Flag flag : content.flags) {
    if (placed.is_mirrored) {
      flag.tap.x = content.drawing.width - flag.tap.x;
      flag.words = mirrored_words(flag.words);
    }
    draw_flag(d, flag, at + to_mm(flag.tap), placed.is_mirrored ? mirrored_side(flag.side) : flag.side);
  }
}

/// A dot where no more than one wire comes from each side, else a bar along which they join.
void draw_splice(const DiagramDrawer& d, std::size_t b) {
  const DiagramBox& content = d.ink.diagram.boxes[b];
  const GridBox box = d.ink.laid.boxes[b].box;
  const SpliceCore core = core_of(d.ink.diagram.graph.boxes[b], box);
  const Splice& splice = d.build().splices[static_cast<std::size_t>(content.index)];
  for (const LocalEarth& local : content.earths) {
    LocalEarth placed = local;
    placed.tap = {core.earth_x, core.y};
    draw_local_earth(d, placed, d.place({0, 0}), earth_stub + core.half_height);
  }
  const Point from = d.place({core.x0, core.y}), to = d.place({core.x1, core.y});
  if (core.x0 == core.x1)
    add_circle(d.items, from, splice_dot, {false, {}}, {true, look::ink});
  else
    add_line(d.items, from, to, {look::ink, terminal_bar_width, {}, Cap::round});
  d.items.push_back(AnchorItem{splice_anchor(splice), from});
  const Millimetres name_x = d.place({core.words_x, 0}).x, name_y = from.y - Millimetres(0.9);
  add_text(d.items, {name_x, name_y}, splice.id, look::terminal_name);
  const Millimetres after = name_x + d.ink.measure.measure(splice.id, look::terminal_name).width;
  for (const Flag& flag : content.flags)
    draw_flag(d, flag, {after - Millimetres(0.2), name_y - Millimetres(0.95)}, Side::right, FlagLines::in_a_row);
}

void draw_earth_box(const DiagramDrawer& d, std::size_t b) {
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
    add_text(d.items, {top.x, y}, line, look::small, look::ink, Align::centre);
  }
  d.items.push_back(LinkItem{to_mm(placed.box), d.ink.id_prefix + "earths", earth_anchor(earth)});
  auto& link = std::get<LinkItem>(d.items.back());
  link.rect.x += d.origin.x;
  link.rect.y += d.origin.y;
}

}  // namespace

void draw_diagram(Items& items, const DiagramInk& ink, Point origin) {
  const DiagramDrawer d{items, ink, origin};
  draw_bands(d);
  draw_wires(d);
  if (d.is_live()) draw_flow(items, ink, origin);
  draw_cable_rings(d);
  draw_labels(d);
  for (std::size_t b = 0; b < ink.diagram.boxes.size(); ++b) {
    switch (ink.diagram.boxes[b].content) {
      case BoxContent::part:
        draw_part_box(d, b);
        break;
      case BoxContent::splice:
        draw_splice(d, b);
        break;
      case BoxContent::earth:
        draw_earth_box(d, b);
        break;
    }
  }
}

}  // namespace loomfolio
