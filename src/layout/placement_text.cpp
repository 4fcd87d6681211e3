// SPDX-License-Identifier: MIT
#include "layout/placement_text.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/json.h"

namespace loomfolio {
namespace {

constexpr std::string_view format_name = "loomfolio placement 1";

// ---- writing ----------------------------------------------------------------------------------------------------------

class Writer {
 public:
  std::string take() { return std::move(text_); }

  void member(std::string_view name) { item(), text_ += quote_json(name), text_ += ':', is_first_ = true; }
  void open(char bracket) { item(), text_ += bracket, is_first_ = true; }
  void close(char bracket) { text_ += bracket, is_first_ = false; }
  void number(long long value) { item(), text_ += std::to_string(value); }
  void text(std::string_view value) { item(), text_ += quote_json(value); }
  void nothing() { item(), text_ += "null"; }
  void line() { text_ += "\n"; }

  void box(const GridBox& b) {
    for (const Grid g : {b.x0, b.y0, b.x1, b.y1}) number(g);
  }
  void numbers(const std::vector<int>& numbers) {
    open('[');
    for (const int n : numbers) number(n);
    close(']');
  }
  void terminals(const std::vector<GraphTerminal>& terminals) {
    open('[');
    for (const GraphTerminal& t : terminals) {
      open('[');
      text(t.name), number(static_cast<int>(t.side)), number(t.at.x), number(t.at.y);
      close(']');
    }
    close(']');
  }

 private:
  /// A comma between two items of one bracket.
  void item() {
    if (!is_first_) text_ += ",";
    is_first_ = false;
  }

  std::string text_;
  bool is_first_ = true;
};

void write_graph(Writer& out, const Graph& graph) {
  out.member("graph"), out.open('{');
  out.member("name"), out.text(graph.name);
  out.member("wish"), out.open('['), out.number(graph.wished_width), out.number(graph.wished_height), out.close(']');
  out.member("zones"), out.open('[');
  for (const GraphZone& zone : graph.zones) out.text(zone.name);
  out.close(']'), out.member("boxes"), out.open('[');
  for (const GraphBox& box : graph.boxes) {
    out.open('['), out.text(box.name);
    for (const long long n : {static_cast<long long>(box.zone), static_cast<long long>(box.role), static_cast<long long>(box.rank),
                              static_cast<long long>(box.width), static_cast<long long>(box.height),
                              static_cast<long long>(box.may_mirror), static_cast<long long>(box.partner)})
      out.number(n);
    out.terminals(box.terminals);
    out.number(box.joint.pitch), out.box(box.joint.pad), out.number(box.joint.slots_below);
    if (!box.pins.empty() || !box.apart.empty()) {  // seldom: other boxes end here
      out.open('[');
      for (const Side side : box.pins) out.number(static_cast<int>(side));
      out.close(']'), out.numbers(box.apart);
    }
    out.close(']');
  }
  out.close(']'), out.member("wires"), out.open('[');
  for (const GraphWire& wire : graph.wires) {
    out.open('['), out.text(wire.name);
    for (const int n : {wire.from_box, wire.from_terminal, wire.to_box, wire.to_terminal, wire.net, wire.pen, wire.label_width,
                        wire.label_height})
      out.number(n);
    out.text(wire.bundle);
    if (!wire.apart.empty()) out.numbers(wire.apart);
    out.close(']');
  }
  out.close(']'), out.close('}');
}

void write_laid(Writer& out, const Laid& laid) {
  out.member("laid"), out.open('{');
  out.member("size"), out.open('['), out.number(laid.width), out.number(laid.height), out.close(']');
  out.member("boxes"), out.open('[');
  for (const PlacedBox& box : laid.boxes) out.open('['), out.box(box.box), out.number(box.is_mirrored), out.close(']');
  out.close(']'), out.member("joints"), out.open('[');
  for (const SettledJoint& joint : laid.joints) {
    out.open('['), out.number(joint.box), out.number(joint.width), out.number(joint.height);
    out.terminals(joint.terminals), out.close(']');
  }
  out.close(']'), out.member("bands"), out.open('[');
  for (const GridBox& band : laid.bands) out.open('['), out.box(band), out.close(']');
  out.close(']'), out.member("courses"), out.open('[');
  for (const Course& course : laid.courses) {
    out.open('['), out.open('[');
    for (const GridPoint p : course.points) out.number(p.x), out.number(p.y);
    out.close(']'), out.open('[');
    for (const Hop& hop : course.hops) out.number(hop.at.x), out.number(hop.at.y), out.number(hop.half);
    out.close(']'), out.close(']');
  }
  out.close(']'), out.member("dots"), out.open('[');
  for (const GridPoint p : laid.dots) out.number(p.x), out.number(p.y);
  out.close(']'), out.member("labels"), out.open('[');
  for (const PlacedLabel& label : laid.labels) {
    out.open('['), out.number(label.wire), out.box(label.box), out.number(label.is_upright), out.number(label.at_from_end);
    out.close(']');
  }
  out.close(']'), out.member("charges"), out.open('[');
  for (const Charge& charge : laid.charges)
    out.open('['), out.number(charge.wire), out.text(charge.reason), out.number(charge.cost), out.close(']');
  out.close(']'), out.member("warnings"), out.open('[');
  for (const LayoutWarning& warning : laid.warnings)
    out.open('['), out.text(warning.wire), out.text(warning.message), out.close(']');
  out.close(']'), out.close('}');
}

// ---- reading ----------------------------------------------------------------------------------------------------------

/// Takes items of an array in turn; remembers when one was missing, of another kind, or out of its range.
class Reader {
 public:
  Reader(const Json& array, bool& is_whole) : array_(array), is_whole_(is_whole) {
    if (array.kind != JsonKind::array) is_whole_ = false;
  }

  bool has_more() const { return array_.kind == JsonKind::array && next_ < array_.items.size(); }
  const Json& item(JsonKind kind) {
    static const Json none;
    if (!has_more() || array_.items[next_].kind != kind) {
      is_whole_ = false;
      ++next_;
      return none;
    }
    return array_.items[next_++];
  }
  /// A whole number from `least` to `most`.
  int number(int least = -most_grid, int most = most_grid) {
    const double value = item(JsonKind::number).number;
    const bool fits = value >= least && value <= most && value == std::floor(value);
    if (!fits) is_whole_ = false;
    return fits ? static_cast<int>(value) : 0;
  }
  int index(std::size_t size) { return number(0, static_cast<int>(size) - 1); }
  std::string text() { return item(JsonKind::text).text; }
  GridBox box() {
    GridBox b;
    b.x0 = number(), b.y0 = number(), b.x1 = number(), b.y1 = number();
    if (b.x1 < b.x0 || b.y1 < b.y0) is_whole_ = false;
    return b;
  }
  Reader array() { return {item(JsonKind::array), is_whole_}; }
  std::vector<int> numbers() {
    std::vector<int> made;
    for (Reader all = array(); all.has_more();) made.push_back(all.number(0));
    return made;
  }
  std::vector<GraphTerminal> terminals() {
    std::vector<GraphTerminal> made;
    for (Reader all = array(); all.has_more();) {
      Reader one = all.array();
      GraphTerminal t;
      t.name = one.text();
      t.side = static_cast<Side>(one.number(0, 3));
      t.at.x = one.number(), t.at.y = one.number();
      made.push_back(std::move(t));
    }
    return made;
  }

  static constexpr int most_grid = 100'000'000;  ///< a kilometre of paper

 private:
  const Json& array_;
  bool& is_whole_;
  std::size_t next_ = 0;
};

bool all_below(const std::vector<int>& numbers, std::size_t count) {
  return std::all_of(numbers.begin(), numbers.end(), [count](int n) { return n < static_cast<int>(count); });
}

Graph read_graph(const Json& json, bool& is_whole) {
  Graph graph;
  graph.name = json.at("name").text;
  Reader wish(json.at("wish"), is_whole);
  graph.wished_width = wish.number(), graph.wished_height = wish.number();
  for (Reader zones(json.at("zones"), is_whole); zones.has_more();) graph.zones.push_back({zones.text()});
  for (Reader boxes(json.at("boxes"), is_whole); boxes.has_more();) {
    Reader one = boxes.array();
    GraphBox box;
    box.name = one.text();
    box.zone = one.number(0, std::max(0, static_cast<int>(graph.zones.size()) - 1));
    box.role = static_cast<BoxRole>(one.number(0, static_cast<int>(BoxRole::reference)));
    box.rank = one.number(), box.width = one.number(0), box.height = one.number(0);
    box.may_mirror = one.number(0, 1) == 1;
    box.partner = one.number(-1);
    box.terminals = one.terminals();
    box.joint.pitch = one.number(0);
    box.joint.pad = one.box();
    box.joint.slots_below = one.number(0);
    if (one.has_more()) {
      for (Reader pins = one.array(); pins.has_more();) box.pins.push_back(static_cast<Side>(pins.number(0, 3)));
      box.apart = one.numbers();
    }
    graph.boxes.push_back(std::move(box));
  }
  for (const GraphBox& box : graph.boxes)
    if (box.partner >= static_cast<int>(graph.boxes.size()) || !all_below(box.apart, graph.boxes.size())) is_whole = false;
  for (Reader wires(json.at("wires"), is_whole); wires.has_more() && is_whole;) {
    Reader one = wires.array();
    GraphWire wire;
    wire.name = one.text();
    const auto end = [&](int& box, int& terminal) {
      box = one.index(graph.boxes.size());
      terminal = is_whole ? one.index(graph.boxes[static_cast<std::size_t>(box)].terminals.size()) : 0;
    };
    end(wire.from_box, wire.from_terminal), end(wire.to_box, wire.to_terminal);
    wire.net = one.number(-1), wire.pen = one.number(0), wire.label_width = one.number(0), wire.label_height = one.number(0);
    wire.bundle = one.text();
    if (one.has_more()) wire.apart = one.numbers();
    graph.wires.push_back(std::move(wire));
  }
  for (const GraphWire& wire : graph.wires)
    if (!all_below(wire.apart, graph.wires.size())) is_whole = false;
  return graph;
}

Laid read_laid(const Json& json, const Graph& graph, bool& is_whole) {
  Laid laid;
  const int wires = static_cast<int>(graph.wires.size());
  Reader size(json.at("size"), is_whole);
  laid.width = size.number(0), laid.height = size.number(0);
  for (Reader boxes(json.at("boxes"), is_whole); boxes.has_more();) {
    Reader one = boxes.array();
    PlacedBox box;
    box.box = one.box();
    box.is_mirrored = one.number(0, 1) == 1;
    laid.boxes.push_back(box);
  }
  for (Reader joints(json.at("joints"), is_whole); joints.has_more();) {
    Reader one = joints.array();
    SettledJoint joint;
    joint.box = one.number(-1, static_cast<int>(graph.boxes.size()) - 1);
    joint.width = one.number(0), joint.height = one.number(0);
    joint.terminals = one.terminals();
    if (joint.box >= 0 && joint.terminals.size() != graph.boxes[static_cast<std::size_t>(joint.box)].terminals.size())
      is_whole = false;
    laid.joints.push_back(std::move(joint));
  }
  for (Reader bands(json.at("bands"), is_whole); bands.has_more();) laid.bands.push_back(bands.array().box());
  for (Reader courses(json.at("courses"), is_whole); courses.has_more();) {
    Reader one = courses.array(), points = one.array(), hops = one.array();
    Course course;
    while (points.has_more()) {
      GridPoint p;
      p.x = points.number(), p.y = points.number();
      course.points.push_back(p);
    }
    while (hops.has_more()) {
      Hop hop;
      hop.at.x = hops.number(), hop.at.y = hops.number(), hop.half = hops.number(0);
      course.hops.push_back(hop);
    }
    if (course.points.size() < 2) is_whole = false;
    laid.courses.push_back(std::move(course));
  }
  for (Reader dots(json.at("dots"), is_whole); dots.has_more();) {
    GridPoint p;
    p.x = dots.number(), p.y = dots.number();
    laid.dots.push_back(p);
  }
  for (Reader labels(json.at("labels"), is_whole); labels.has_more();) {
    Reader one = labels.array();
    PlacedLabel label;
    label.wire = one.number(0, wires - 1);
    label.box = one.box();
    label.is_upright = one.number(0, 1) == 1, label.at_from_end = one.number(0, 1) == 1;
    laid.labels.push_back(label);
  }
  for (Reader charges(json.at("charges"), is_whole); charges.has_more();) {
    Reader one = charges.array();
    Charge charge;
    charge.wire = one.number(-1, wires - 1);
    charge.reason = one.text();
    charge.cost = one.number();
    laid.charges.push_back(std::move(charge));
  }
  for (Reader warnings(json.at("warnings"), is_whole); warnings.has_more();) {
    Reader one = warnings.array();
    LayoutWarning warning;
    warning.wire = one.text(), warning.message = one.text();
    laid.warnings.push_back(std::move(warning));
  }
  const bool is_complete = laid.boxes.size() == graph.boxes.size() && laid.courses.size() == graph.wires.size() &&
                           (laid.bands.empty() || laid.bands.size() == graph.zones.size());
  if (!is_complete) is_whole = false;
  return laid;
}

}  // namespace

std::string write_placements(const Placements& placements) {
  Writer out;
  out.open('{'), out.member("format"), out.text(format_name), out.member("drawings"), out.open('{'), out.line();
  for (const auto& [name, kept] : placements) {
    out.member(name);
    if (!kept) {
      out.nothing();
    } else {
      out.open('{'), write_graph(out, kept->graph), write_laid(out, kept->laid), out.close('}');
    }
    out.line();
  }
  out.close('}'), out.close('}'), out.line();
  return out.take();
}

std::optional<Placements> read_placements(std::string_view text) {
  std::string error;
  const Json json = read_json(text, error);
  if (!error.empty() || json.at("format").text != format_name || json.at("drawings").kind != JsonKind::object) return std::nullopt;
  Placements placements;
  bool is_whole = true;
  for (const auto& [name, kept] : json.at("drawings").members) {
    if (kept.kind == JsonKind::null) {
      placements.emplace(name, std::nullopt);
      continue;
    }
    KeptDrawing drawing;
    drawing.graph = read_graph(kept.at("graph"), is_whole);
    if (is_whole) drawing.laid = read_laid(kept.at("laid"), drawing.graph, is_whole);
    if (!is_whole) return std::nullopt;
    placements.emplace(name, std::move(drawing));
  }
  return placements;
}

}  // namespace loomfolio
