// SPDX-License-Identifier: MIT
#include "sheets/diagram_graph.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "sheets/diagram_flags.h"
#include "sheets/diagram_pairs.h"
#include "sheets/diagram_part.h"
#include "sheets/diagram_tags.h"
#include "sheets/diagram_views.h"
#include "sheets/diagram_wishes.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Grid earth_width = 1500, earth_symbol = 350, earth_words_room = 2400;

struct GraphMaker {
  const GraphRequest& request;
  PartDrawings& drawings;
  std::vector<TerminalUse> uses;
  DiagramGraph made;
  std::map<int, int> zones;  ///< of the build -> of the graph
  struct End {
    int box = -1, terminal = -1;
  };
  std::map<std::pair<std::size_t, int>, End> ends;  ///< (wire of the plan, 0 from / 1 to) -> its end in the graph

  const Build& build() const { return request.build; }
  WireLabel label(WireId id) const {
    if (request.figures == nullptr) return label_of(build().wire(id), request.measure);
    return label_with_figure(build().wire(id), (*request.figures)[id.at()], request.measure);
  }
  const DiagramPlan& plan() const { return request.plans[request.diagram]; }
};

BoxRole role_of(const Kind& kind) {
  if (kind.is_connector) return BoxRole::connector;
  const bool has_coil = std::any_of(kind.insides.begin(), kind.insides.end(),
                                    [](const Inside& i) { return i.type == InsideType::coil || i.flashes; });
  if (kind.group == "supply") return BoxRole::supply;
  if (kind.group == "protection") return BoxRole::fuse;
  if (has_coil) return BoxRole::relay;
  if (kind.group == "control") return BoxRole::control;
  if (kind.group == "switching") {
    const bool is_sensor = std::any_of(kind.insides.begin(), kind.insides.end(), [](const Inside& i) {
      return i.worked_by == "gear" || i.worked_by == "pressure" || i.worked_by == "stand";
    });
    return is_sensor ? BoxRole::sensor : BoxRole::switching;
  }
  return kind.group == "charging" ? BoxRole::control : BoxRole::load;
}

/// Zones that something on the diagram stands in, from the front.
void make_zones(GraphMaker& maker) {
  std::vector<int> found;
  for (WireId id : maker.plan().wires)
    for (TerminalId end : {maker.build().wire(id).from, maker.build().wire(id).to})
      if (maker.build().terminal(end).owner != OwnerType::earth) found.push_back(zone_of(maker.build(), end).index);
  std::sort(found.begin(), found.end(), [&](int a, int b) {
    const Zone &za = maker.build().zones[static_cast<std::size_t>(a)],
               &zb = maker.build().zones[static_cast<std::size_t>(b)];
    return std::pair(za.place, a) < std::pair(zb.place, b);
  });
  found.erase(std::unique(found.begin(), found.end()), found.end());
  for (int zone : found) {
    maker.zones.emplace(zone, static_cast<int>(maker.made.graph.zones.size()));
    maker.made.graph.zones.push_back({maker.build().zones[static_cast<std::size_t>(zone)].label});
  }
}

int zone_in_graph(const GraphMaker& maker, TerminalId terminal) {
  const auto found = maker.zones.find(zone_of(maker.build(), terminal).index);
  return found == maker.zones.end() ? 0 : found->second;
}

TerminalId far_end(const Wire& wire, TerminalId here) { return wire.from == here ? wire.to : wire.from; }

/// Wires at a terminal in the order of what they lead to, from the front of the machine.
std::vector<std::size_t> in_order(const GraphMaker& maker, TerminalId terminal) {
  std::vector<std::size_t> wires = maker.uses[terminal.at()].wires;
  const auto place = [&](std::size_t w) {
    const TerminalId far = far_end(maker.build().wire(maker.plan().wires[w]), terminal);
    const bool is_earth = maker.build().terminal(far).owner == OwnerType::earth;
    return std::pair(is_earth ? zone_in_graph(maker, terminal) : zone_in_graph(maker, far), w);
  };
  std::stable_sort(wires.begin(), wires.end(), [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
  return wires;
}

void note_end(GraphMaker& maker, std::size_t wire, TerminalId terminal, GraphMaker::End end) {
  const Wire& w = maker.build().wire(maker.plan().wires[wire]);
  const int which = w.from == terminal ? 0 : 1;
  // A wire from a terminal to itself has both ends here.
  if (which == 0 && maker.ends.count({wire, 0}) != 0)
    maker.ends[{wire, 1}] = end;
  else
    maker.ends[{wire, which}] = end;
}

/// Where the wires of one half of a connector lead, on average.
struct Pull {
  int count = 0, zones = 0, roles = 0;  ///< sums over the wires: zones rearward, ranks below the supply

  bool leads_forward() const { return zones < 0; }
  bool leads_rearward() const { return zones > 0; }
};

Pull pull_of(const GraphMaker& maker, const Part& part, bool is_a) {
  Pull pull;
  const Kind& kind = maker.build().kind_of(part);
  for (const Inside& inside : kind.insides) {
    if (inside.nodes.size() < 2) continue;
    const int local = inside.nodes[is_a ? 0 : 1].terminal;
    if (local < 0) continue;
    const TerminalId terminal = part.terminals[static_cast<std::size_t>(local)];
    for (std::size_t w : maker.uses[terminal.at()].wires) {
      const Terminal& far = maker.build().terminal(far_end(maker.build().wire(maker.plan().wires[w]), terminal));
      if (far.owner == OwnerType::earth) continue;
      const TerminalId far_id = far_end(maker.build().wire(maker.plan().wires[w]), terminal);
      ++pull.count;
      pull.zones += zone_in_graph(maker, far_id) - maker.zones.at(part.zone.index);
      const bool is_part = far.owner == OwnerType::part;
      const auto owner = static_cast<std::size_t>(far.owner_index);
      pull.roles +=
          static_cast<int>(is_part ? role_of(maker.build().kind_of(maker.build().parts[owner])) : BoxRole::connector);
    }
  }
  return pull;
}

/// Upright where both halves' wires go the same way across the sheet: level, one half would look away from its ends.
ConnectorLie lie_of(const GraphMaker& maker, const Part& part) {
  const Pull a = pull_of(maker, part, true), b = pull_of(maker, part, false);
  if (a.count == 0 || b.count == 0) return ConnectorLie::level;
  const bool go_together = (a.leads_forward() && b.leads_forward()) || (a.leads_rearward() && b.leads_rearward());
  if (!go_together) return ConnectorLie::level;
  return b.roles * a.count < a.roles * b.count ? ConnectorLie::b_above : ConnectorLie::a_above;
}

const PartDrawing& draw_for(const GraphMaker& maker, PartId id) {
  const Part& part = maker.build().part(id);
  InsideRequest inside{maker.build(), id, maker.request.measure, {}, inside_styles()};
  for (TerminalId terminal : part.terminals) {
    const TerminalUse& use = maker.uses[terminal.at()];
    const int ends = static_cast<int>(use.wires.size()) + (use.elsewhere.empty() ? 0 : 1);
    inside.ends.push_back(use.is_shown ? ends : -1);
  }
  if (maker.build().kind_of(part).is_connector) inside.lie = lie_of(maker, part);
  return maker.drawings.draw(inside);
}

GridBox larger(GridBox a, GridBox b) {
  const auto up = [](Grid g) { return (g + module - 1) / module * module; };
  return {up(std::max(a.x0, b.x0)), up(std::max(a.y0, b.y0)), up(std::max(a.x1, b.x1)), up(std::max(a.y1, b.y1))};
}

GridPoint on_box(GridPoint tap, Side side, const GridBox& body, Grid width, Grid height) {
  const GridPoint p{tap.x + body.x0, tap.y + body.y0};
  switch (side) {
    case Side::top:
      return {p.x, 0};
    case Side::bottom:
      return {p.x, height};
    case Side::left:
      return {0, p.y};
    case Side::right:
      return {width, p.y};
  }
  return p;
}

/// Words in lines of at most `room`; the first line has `taken` less.
std::vector<std::string> wrap(const std::string& text, const TextMeasure& measure, Grid room, Grid taken = 0) {
  std::vector<std::string> lines;
  for (const std::string& word : split(text, ' ')) {
    const std::string longer = lines.empty() ? word : lines.back() + " " + word;
    const Grid width = to_grid_up(measure.measure(longer, look::small).width) + (lines.size() <= 1 ? taken : 0);
    if (!lines.empty() && width <= room)
      lines.back() = longer;
    else
      lines.push_back(word);
  }
  return lines;
}

/// A wire's end on a part or splice.
struct Tap {
  std::size_t wire = 0;
  TerminalId terminal;
  GridPoint at;
  Side side = Side::top;
};

Grid pen_of(const GraphMaker& maker, std::size_t wire) {
  return to_grid(wire_width(maker.build().wire(maker.plan().wires[wire]).area));
}

const Earth* earth_of(const GraphMaker& maker, std::size_t wire, TerminalId here) {
  const Terminal& far = maker.build().terminal(far_end(maker.build().wire(maker.plan().wires[wire]), here));
  return far.owner == OwnerType::earth ? &maker.build().earths[static_cast<std::size_t>(far.owner_index)] : nullptr;
}

LocalEarth local_earth(const GraphMaker& maker, const Tap& tap, WordSide words) {
  const Earth* earth = earth_of(maker, tap.wire, tap.terminal);
  const WireId wire = maker.plan().wires[tap.wire];
  LocalEarth local{wire, static_cast<int>(earth - maker.build().earths.data()), tap.at, words, {}, {}};
  local.label = maker.label(wire);
  const Grid id = to_grid_up(maker.request.measure.measure(earth->id + " ", look::terminal_name).width);
  local.lines = wrap(earth->label, maker.request.measure, earth_words_room, id);
  return local;
}

/// Takes the outermost taps of the bottom side out of `taps` where they lead to earth: their symbol stands under the
/// part.
std::vector<LocalEarth> take_local_earths(const GraphMaker& maker, std::vector<Tap>& taps, const std::vector<Flag>& flags) {
  std::vector<LocalEarth> found;
  for (WordSide words : {WordSide::right, WordSide::left}) {
    const bool is_right = words == WordSide::right;
    std::size_t outer = taps.size();
    const auto lies_further = [&](GridPoint a, GridPoint b) { return is_right ? a.x > b.x : a.x < b.x; };
    for (std::size_t i = 0; i < taps.size(); ++i)
      if (taps[i].side == Side::bottom && (outer == taps.size() || lies_further(taps[i].at, taps[outer].at))) outer = i;
    if (outer == taps.size()) continue;
    const Tap tap = taps[outer];
    const Earth* earth = earth_of(maker, tap.wire, tap.terminal);
    const auto is_beyond = [&](GridPoint p) { return lies_further(p, tap.at); };
    const bool is_hemmed =
        std::any_of(flags.begin(), flags.end(),
                    [&](const Flag& f) { return f.side == Side::bottom && is_beyond(f.tap); }) ||
        std::any_of(found.begin(), found.end(), [&](const LocalEarth& e) { return is_beyond(e.tap); });
    if (earth == nullptr || is_hemmed) continue;
    found.push_back(local_earth(maker, tap, words));
    taps.erase(taps.begin() + static_cast<std::ptrdiff_t>(outer));
  }
  return found;
}

/// Room that an earth's words take beside its symbol.
Grid width_of_words(const GraphMaker& maker, const LocalEarth& local) {
  const Earth& earth = maker.build().earths[static_cast<std::size_t>(local.earth)];
  Grid widest = local.label.width;
  for (std::size_t i = 0; i < local.lines.size(); ++i) {
    Grid width = to_grid_up(maker.request.measure.measure(local.lines[i], look::small).width);
    if (i == 0) width += to_grid_up(maker.request.measure.measure(earth.id + " ", look::terminal_name).width);
    widest = std::max(widest, width);
  }
  return widest;
}

/// How far earths reach out of the body.
GridBox earth_room(const GraphMaker& maker, const std::vector<LocalEarth>& earths, Grid width) {
  GridBox room;
  for (const LocalEarth& local : earths) {
    const Grid words = earth_words_gap + width_of_words(maker, local);
    room.y1 = std::max(
        {room.y1, earth_stub + earth_symbol + 50, 150 + earth_line * (1 + static_cast<Grid>(local.lines.size()))});
    if (local.words == WordSide::right)
      room.x1 = std::max(room.x1, local.tap.x + words - width);
    else
      room.x0 = std::max(room.x0, words - local.tap.x);
  }
  return room;
}

/// Taps of a terminal's wires, in order, and of its flag beside them. A wire to earth stands outermost on the lower side,
/// where its symbol can hang straight under the part.
void add_taps(const GraphMaker& maker, TerminalId terminal, const PlacedTerminal& placed, std::vector<Tap>& taps,
              std::vector<Flag>& flags) {
  std::vector<std::size_t> wires = in_order(maker, terminal);
  const bool has_flag = !maker.uses[terminal.at()].elsewhere.empty();
  std::size_t flag_at = wires.size();
  if (placed.side == Side::bottom) {
    const auto is_earth = [&](std::size_t w) { return earth_of(maker, w, terminal) != nullptr; };
    std::stable_partition(wires.begin(), wires.end(), [&](std::size_t w) { return !is_earth(w); });
    if (has_flag && !wires.empty() && is_earth(wires.back())) flag_at = 0;  // else it would hang between two wires
  }
  std::size_t next = 0;
  for (std::size_t wire : wires) {
    if (next == flag_at) ++next;
    taps.push_back({wire, terminal, placed.taps[next++], placed.side});
  }
  if (has_flag)
    flags.push_back({terminal, placed.taps[flag_at], placed.side, maker.uses[terminal.at()].elsewhere, 0, WordSide::middle});
}

void add_part(GraphMaker& maker, PartId id) {
  const Part& part = maker.build().part(id);
  DiagramBox box;
  box.index = id.index;
  box.drawing = draw_for(maker, id);
  GraphBox graph_box;
  graph_box.name = "part " + part.id;
  graph_box.role = role_of(maker.build().kind_of(part));
  graph_box.may_mirror = box.drawing.may_mirror;
  graph_box.zone = maker.zones.at(part.zone.index);
  const auto number = static_cast<int>(maker.made.boxes.size());
  std::vector<Tap> taps;
  for (const PlacedTerminal& placed : box.drawing.terminals)
    add_taps(maker, part.terminals[static_cast<std::size_t>(placed.terminal)], placed, taps, box.flags);
  std::vector<FlagNeighbour> wires;
  for (const Tap& tap : taps) wires.push_back({tap.at, tap.side, pen_of(maker, tap.wire) / 2});
  settle_flags(box.flags, wires);
  box.earths = take_local_earths(maker, taps, box.flags);
  const GridBox room = larger(flag_room(box.flags, box.drawing.width), earth_room(maker, box.earths, box.drawing.width));
  box.body = {room.x0, room.y0, room.x0 + box.drawing.width, room.y0 + box.drawing.height};
  graph_box.width = box.body.x1 + room.x1;
  graph_box.height = box.body.y1 + room.y1;
  for (const Tap& tap : taps) {
    note_end(maker, tap.wire, tap.terminal, {number, static_cast<int>(graph_box.terminals.size())});
    graph_box.terminals.push_back({maker.build().terminal(tap.terminal).name, tap.side,
                                   on_box(tap.at, tap.side, box.body, graph_box.width, graph_box.height)});
  }
  maker.made.graph.boxes.push_back(std::move(graph_box));
  maker.made.boxes.push_back(std::move(box));
}

/// The first of the splice's wires that goes to earth hangs under it: its place is the last of the lower side.
std::vector<LocalEarth> take_splice_earth(const GraphMaker& maker, const Splice& splice, std::vector<std::size_t>& wires) {
  const auto found = std::find_if(wires.begin(), wires.end(),
                                  [&](std::size_t wire) { return earth_of(maker, wire, splice.terminal) != nullptr; });
  if (found == wires.end()) return {};
  std::vector<LocalEarth> earths{local_earth(maker, {*found, splice.terminal, {}, Side::bottom}, WordSide::right)};
  wires.erase(found);
  return earths;
}

/// Room that name and flag take right of the core, above a level wire.
Grid splice_words(const GraphMaker& maker, const Splice& splice) {
  const Grid name = to_grid_up(maker.request.measure.measure(splice.id, look::terminal_name).width) + 200;
  const auto sheets = static_cast<Grid>(maker.uses[splice.terminal.at()].elsewhere.size());
  return name + (sheets > 0 ? flag_stub + sheets * flag_width : 0);
}

void add_splice(GraphMaker& maker, int index) {
  const Splice& splice = maker.build().splices[static_cast<std::size_t>(index)];
  const TerminalUse& use = maker.uses[splice.terminal.at()];
  DiagramBox box;
  box.content = BoxContent::splice;
  box.index = index;
  std::vector<std::size_t> wires = in_order(maker, splice.terminal);
  box.earths = take_splice_earth(maker, splice, wires);
  if (!use.elsewhere.empty()) box.flags.push_back({splice.terminal, {}, Side::right, use.elsewhere, flag_stub});
  GraphBox graph_box;
  graph_box.name = "splice " + splice.id;
  graph_box.role = BoxRole::splice;
  graph_box.zone = maker.zones.at(splice.zone.index);
  graph_box.joint.pitch = 2 * module;
  graph_box.joint.slots_below = static_cast<int>(box.earths.size());
  graph_box.joint.pad = larger({0, 0, splice_words(maker, splice), 0}, earth_room(maker, box.earths, 0));
  graph_box.width = graph_box.joint.pad.x1 + 2 * module;
  graph_box.height = 2 * module + graph_box.joint.pad.y1;
  const auto number = static_cast<int>(maker.made.boxes.size());
  for (std::size_t wire : wires) {
    note_end(maker, wire, splice.terminal, {number, static_cast<int>(graph_box.terminals.size())});
    graph_box.terminals.push_back({splice.id, Side::top, {module, 0}});  // the engine finds its place
  }
  maker.made.graph.boxes.push_back(std::move(graph_box));
  maker.made.boxes.push_back(std::move(box));
}

/// An earth symbol for one wire end, near what it earths.
void add_earth(GraphMaker& maker, std::size_t wire, TerminalId terminal) {
  const int index = maker.build().terminal(terminal).owner_index;
  const Earth& earth = maker.build().earths[static_cast<std::size_t>(index)];
  const TerminalId far = far_end(maker.build().wire(maker.plan().wires[wire]), terminal);
  DiagramBox box;
  box.content = BoxContent::earth;
  box.index = index;
  box.lines = wrap(earth.label, maker.request.measure, 2 * earth_width);
  Grid widest = to_grid_up(maker.request.measure.measure(earth.id, look::terminal_name).width);
  for (const std::string& line : box.lines)
    widest = std::max(widest, to_grid_up(maker.request.measure.measure(line, look::small).width));
  GraphBox graph_box;
  graph_box.name = "earth " + earth.id + " of wire " + maker.build().wire(maker.plan().wires[wire]).id;
  graph_box.role = BoxRole::earth;
  graph_box.zone = maker.build().terminal(far).owner == OwnerType::earth ? 0 : zone_in_graph(maker, far);
  graph_box.width = std::max<Grid>(earth_width / 2, (widest + 2 * module - 1) / (2 * module) * 2 * module);
  graph_box.height =
      (earth_symbol + earth_line * (1 + static_cast<Grid>(box.lines.size())) + 60 + module - 1) / module * module;
  graph_box.terminals.push_back({earth.id, Side::top, {graph_box.width / 2 / module * module, 0}});
  box.body = {0, 0, graph_box.width, graph_box.height};
  note_end(maker, wire, terminal, {static_cast<int>(maker.made.boxes.size()), 0});
  maker.made.graph.boxes.push_back(std::move(graph_box));
  maker.made.boxes.push_back(std::move(box));
}

bool is_local(const GraphMaker& maker, WireId wire) {
  return std::any_of(maker.made.boxes.begin(), maker.made.boxes.end(), [wire](const DiagramBox& box) {
    return std::any_of(box.earths.begin(), box.earths.end(), [wire](const LocalEarth& e) { return e.wire == wire; });
  });
}

void add_boxes(GraphMaker& maker) {
  const Build& build = maker.build();
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const auto& terminals = build.parts[p].terminals;
    if (std::any_of(terminals.begin(), terminals.end(),
                    [&](TerminalId t) { return !maker.uses[t.at()].wires.empty(); }))
      add_part(maker, PartId{static_cast<std::int32_t>(p)});
  }
  for (std::size_t s = 0; s < build.splices.size(); ++s)
    if (!maker.uses[build.splices[s].terminal.at()].wires.empty()) add_splice(maker, static_cast<int>(s));
  for (std::size_t w = 0; w < maker.plan().wires.size(); ++w)
    for (TerminalId end : {build.wire(maker.plan().wires[w]).from, build.wire(maker.plan().wires[w]).to})
      if (build.terminal(end).owner == OwnerType::earth && !is_local(maker, maker.plan().wires[w]))
        add_earth(maker, w, end);
}

void add_wires(GraphMaker& maker) {
  const Build& build = maker.build();
  for (std::size_t w = 0; w < maker.plan().wires.size(); ++w) {
    const Wire& wire = build.wire(maker.plan().wires[w]);
    const auto from = maker.ends.find({w, 0}), to = maker.ends.find({w, 1});
    if (from == maker.ends.end() || to == maker.ends.end()) continue;
    const WireLabel label = maker.label(maker.plan().wires[w]);
    GraphWire graph_wire;
    graph_wire.name = wire.id;
    graph_wire.from_box = from->second.box;
    graph_wire.from_terminal = from->second.terminal;
    graph_wire.to_box = to->second.box;
    graph_wire.to_terminal = to->second.terminal;
    // Each wire has taps of its own, so wires never share a line, be they one net or not: on the machine they do not
    // either, and each shows its own colours from end to end.
    graph_wire.net = static_cast<int>(maker.made.graph.wires.size());
    graph_wire.pen = pen_of(maker, w);
    graph_wire.label_width = label.width;
    graph_wire.label_height = label.height;
    graph_wire.bundle = wire.cable.empty() ? std::to_string(std::min(graph_wire.from_box, graph_wire.to_box)) + "-" +
                                                 std::to_string(std::max(graph_wire.from_box, graph_wire.to_box))
                                           : wire.cable;
    maker.made.graph.wires.push_back(std::move(graph_wire));
    maker.made.wires.push_back(maker.plan().wires[w]);
    maker.made.labels.push_back(label);
  }
}

}  // namespace

WireLabel label_of(const Wire& wire, const TextMeasure& measure) {
  WireLabel label;
  label.number = wire.id;
  std::string size = wire.is_auto_size && wire.area.number() <= 0 ? std::string() : print_size(wire);
  if (size.ends_with(" mm2")) size.resize(size.size() - 4);
  label.code = wire.colour.text() + (size.empty() ? "" : " " + size);
  const TextSize number = measure.measure(label.number, look::wire_number),
                 code = measure.measure(" " + label.code, look::wire_code);
  label.number_width = to_grid_up(number.width);
  label.width = label.number_width + to_grid_up(code.width) + 2 * tag_pad;
  label.height = to_grid_up(number.ascent + number.descent);
  return label;
}

Grid figure_room(const std::string& figure, const TextMeasure& measure) {
  return figure.empty() ? 0 : to_grid_up(measure.measure(" ", look::wire_code).width + measure.measure(figure, look::flow_figure).width);
}

WireLabel label_with_figure(const Wire& wire, const std::string& figure, const TextMeasure& measure) {
  WireLabel label = label_of(wire, measure);
  label.code = wire.colour.text();
  label.figure = figure;
  const TextSize code = measure.measure(" " + label.code, look::wire_code);
  label.width = label.number_width + to_grid_up(code.width) + 2 * tag_pad;
  label.width += figure_room(figure, measure);
  return label;
}

const PartDrawing& PartDrawings::draw(const InsideRequest& request) {
  const auto [found, is_new] = made_.try_emplace({request.part, request.ends, request.lie});
  if (is_new) found->second = draw_inside(request);
  return found->second;
}

DiagramGraph make_diagram_graph(const GraphRequest& request) {
  PartDrawings own;
  GraphMaker maker{request, request.drawings != nullptr ? *request.drawings : own, find_uses(request), {}, {}, {}};
  maker.made.graph.name = "diagram " + std::to_string(request.diagram);
  make_zones(maker);
  add_boxes(maker);
  add_wires(maker);
  add_pairs(maker.build(), maker.made);
  add_wishes(maker.build(), maker.made);
  return std::move(maker.made);
}

}  // namespace loomfolio
