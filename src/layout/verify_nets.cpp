// SPDX-License-Identifier: MIT
// The strongest test reads the drawing as a person does. Lines that lie on each other, corners that meet and lines that meet at a
// dot are joined; lines that only cross are not. What is then joined must be exactly what the wires join.
#include "layout/verify_nets.h"

#include <algorithm>
#include <bit>
#include <map>
#include <numeric>
#include <set>

#include "layout/weights.h"

namespace loomfolio::laying {
namespace {

class Groups {
 public:
  explicit Groups(std::size_t count) : root_(count) { std::iota(root_.begin(), root_.end(), 0); }
  int find(int i) {
    while (root_[i] != i) i = root_[i] = root_[root_[i]];
    return i;
  }
  void join(int a, int b) { root_[std::max(find(a), find(b))] = std::min(find(a), find(b)); }

 private:
  std::vector<int> root_;
};

struct Reading {
  const Graph& graph;
  const Laid& laid;
  const std::vector<Segment>& segments;
  std::vector<Violation>& out;
  std::vector<int> figure;   ///< by wire: wires that share a terminal are one figure

  void say(Promise p, std::string what) const { out.push_back({p, std::move(what)}); }
  const std::string& wire(int w) const { return graph.wires[w].name; }
};

std::vector<int> find_figures(const Graph& graph) {
  Groups groups(graph.wires.size());
  std::map<std::pair<int, int>, int> first;
  for (int w = 0; w < static_cast<int>(graph.wires.size()); ++w) {
    const GraphWire& g = graph.wires[w];
    groups.join(w, first.try_emplace({g.from_box, g.from_terminal}, w).first->second);
    groups.join(w, first.try_emplace({g.to_box, g.to_terminal}, w).first->second);
  }
  std::vector<int> out;
  for (int w = 0; w < static_cast<int>(graph.wires.size()); ++w) out.push_back(groups.find(w));
  return out;
}

bool is_end_stretch(const Reading& r, const Segment& s) {
  return s.index == 0 || s.index == static_cast<int>(r.laid.courses[s.wire].points.size()) - 2;
}

/// Terminals that stand closer together than wires may run excuse the stretches that leave them.
bool is_excused(const Reading& r, const Segment& a, const Segment& b) {
  if (!is_end_stretch(r, a) || !is_end_stretch(r, b) || a.at == b.at) return false;
  const auto boxes = [&](const Segment& s) {
    const GraphWire& g = r.graph.wires[s.wire];
    std::set<int> out;
    if (s.index == 0) out.insert(g.from_box);
    if (s.index > 0 || r.laid.courses[s.wire].points.size() == 2) out.insert(g.to_box);
    return out;
  };
  for (int box : boxes(a))
    if (boxes(b).count(box)) return true;
  return false;
}

void check_distance(const Reading& r) {
  Grid widest = 0;
  for (const GraphWire& w : r.graph.wires) widest = std::max(widest, w.pen);
  const Grid least = Spacing{}.least;
  for_each_parallel(r.segments, least + widest, [&](const Segment& a, const Segment& b) {
    if (r.figure[a.wire] == r.figure[b.wire]) return;
    const Grid needed = least + (r.graph.wires[a.wire].pen + r.graph.wires[b.wire].pen) / 2;
    if (std::abs(a.at - b.at) < needed && !is_excused(r, a, b))
      r.say(Promise::nets_apart, r.wire(a.wire) + " and " + r.wire(b.wire) + " run too near each other");
  });
}

void check_crossings(const Reading& r) {
  for_each_meeting(r.segments, [&](const Segment& level, const Segment& upright) {
    if (r.figure[level.wire] == r.figure[upright.wire]) return;
    if (!crosses(level, upright)) r.say(Promise::nets_cross_square, r.wire(level.wire) + " and " + r.wire(upright.wire) + " touch");
  });
}

enum Ways : unsigned { way_right = 1, way_left = 2, way_down = 4, way_up = 8 };

unsigned ways_at(const Segment& s, GridPoint p) {
  if (s.at != (s.is_level ? p.y : p.x)) return 0;
  const Grid along = s.is_level ? p.x : p.y;
  if (along < s.low || along > s.high) return 0;
  return (along > s.low ? (s.is_level ? way_left : way_up) : 0u) | (along < s.high ? (s.is_level ? way_right : way_down) : 0u);
}

bool hops_at(const Course& course, GridPoint p) {
  return std::any_of(course.hops.begin(), course.hops.end(), [&](const Hop& h) { return h.at.y == p.y && std::abs(h.at.x - p.x) <= h.half; });
}

/// Within a figure, lines part only at dots; where they cross, one hops.
void check_dots(const Reading& r) {
  const std::set<GridPoint> dots(r.laid.dots.begin(), r.laid.dots.end());
  std::map<int, std::vector<const Segment*>> figures;
  for (const Segment& s : r.segments) figures[r.figure[s.wire]].push_back(&s);
  for (const auto& [figure, own] : figures) {
    std::set<GridPoint> meetings;
    for (const Segment* level : own)
      for (const Segment* upright : own)
        if (level->is_level && !upright->is_level && ways_at(*level, {upright->at, level->at}) && ways_at(*upright, {upright->at, level->at}))
          meetings.insert({upright->at, level->at});
    for (GridPoint p : meetings) {
      unsigned ways = 0;
      for (const Segment* s : own) ways |= ways_at(*s, p);
      const int count = std::popcount(ways);
      const bool hopped = std::any_of(own.begin(), own.end(), [&](const Segment* s) { return s->is_level && hops_at(r.laid.courses[s->wire], p); });
      if (count == 4 && !hopped) r.say(Promise::joints_dotted, "four ways meet in the figure of " + r.wire(figure));
      if ((count == 3) != (dots.count(p) > 0)) r.say(Promise::joints_dotted, "a joint and a dot do not agree in the figure of " + r.wire(figure));
    }
  }
}

/// Joins segments as the eye does.
Groups join_lines(const Reading& r) {
  const std::set<GridPoint> dots(r.laid.dots.begin(), r.laid.dots.end());
  Groups groups(r.segments.size());
  for (std::size_t i = 1; i < r.segments.size(); ++i)
    if (r.segments[i].wire == r.segments[i - 1].wire) groups.join(static_cast<int>(i), static_cast<int>(i) - 1);
  const auto index = [&](const Segment& s) { return static_cast<int>(&s - r.segments.data()); };
  for_each_parallel(r.segments, 1, [&](const Segment& a, const Segment& b) { groups.join(index(a), index(b)); });
  for_each_meeting(r.segments, [&](const Segment& level, const Segment& upright) {
    const GridPoint p{upright.at, level.at};
    const bool corner = (p.x == level.low || p.x == level.high) && (p.y == upright.low || p.y == upright.high);
    if (corner || dots.count(p)) groups.join(index(level), index(upright));
  });
  return groups;
}

void check_netlist(const Reading& r) {
  Groups lines = join_lines(r);
  std::map<int, int> net_of_line;      // each joined figure carries one net
  std::map<std::pair<int, int>, int> line_at_terminal;
  for (int i = 0; i < static_cast<int>(r.segments.size()); ++i) {
    const int w = r.segments[i].wire;
    const GraphWire& g = r.graph.wires[w];
    const int line = lines.find(i);
    const auto [it, is_new] = net_of_line.try_emplace(line, w);
    if (!is_new && r.graph.wires[it->second].net != g.net)
      r.say(Promise::connected_as_meant, r.wire(w) + " is joined with " + r.wire(it->second));
    for (const auto& terminal : {std::pair{g.from_box, g.from_terminal}, std::pair{g.to_box, g.to_terminal}}) {
      const auto [at, first] = line_at_terminal.try_emplace(terminal, line);
      if (!first && at->second != line) r.say(Promise::connected_as_meant, r.wire(w) + " is not joined with what shares its terminal");
    }
  }
}

}  // namespace

void verify_nets(const Graph& graph, const Laid& laid, const std::vector<Segment>& segments, std::vector<Violation>& out) {
  const Reading reading{graph, laid, segments, out, find_figures(graph)};
  check_distance(reading);
  check_crossings(reading);
  check_dots(reading);
  check_netlist(reading);
}

}  // namespace loomfolio::laying
