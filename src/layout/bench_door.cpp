// SPDX-License-Identifier: MIT
#include "layout/bench_door.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <tuple>

#include "base/json.h"
#include "base/text.h"
#include "layout/measure.h"
#include "layout/verify.h"

namespace loomfolio {
namespace {

Grid grid_of(const Json& mm) {
  return static_cast<Grid>(std::lround(std::clamp(mm.number_or(0), -1e6, 1e6) * grid_per_mm));
}

BoxRole role_of(const std::string& word) {
  static const std::map<std::string, BoxRole> roles = {
      {"battery", BoxRole::supply},     {"fuses", BoxRole::fuse},  {"control", BoxRole::control},
      {"switch", BoxRole::switching},   {"relay", BoxRole::relay}, {"sensor", BoxRole::sensor},
      {"splice", BoxRole::splice},      {"earth", BoxRole::earth}, {"connector", BoxRole::connector},
      {"reference", BoxRole::reference}};
  const auto it = roles.find(word);
  return it == roles.end() ? BoxRole::load : it->second;
}

Side side_named(const std::string& letter) {
  return letter == "N" ? Side::top : letter == "E" ? Side::right : letter == "S" ? Side::bottom : Side::left;
}

/// Zones in the order in which a motorcycle has them where we know the word, else as they come.
int zone_named(Graph& graph, const std::string& name) {
  for (std::size_t z = 0; z < graph.zones.size(); ++z)
    if (graph.zones[z].name == name) return static_cast<int>(z);
  graph.zones.push_back({name});
  return static_cast<int>(graph.zones.size()) - 1;
}

void put_known_zones_first(Graph& graph, const Json& parts) {
  for (const char* name : {"front", "frame", "engine", "rear"})
    for (const Json& p : parts.items)
      if (p.at("zone").text == name) {
        zone_named(graph, name);
        break;
      }
}

using Terminals = std::map<std::string, std::pair<int, int>>;

/// A name that a file gives twice stays with the first part, and its wires too.
std::string unused_name(const Graph& graph, std::string name) {
  const auto is_taken = [&](const GraphBox& box) { return box.name == name; };
  while (std::any_of(graph.boxes.begin(), graph.boxes.end(), is_taken)) name += "'";
  return name;
}

void read_part(const Json& part, Graph& graph, Terminals& terminals) {
  GraphBox box;
  box.name = unused_name(graph, part.at("id").text);
  box.role = role_of(part.at("role").text);
  box.zone = zone_named(graph, part.at("zone").text);
  box.width = grid_of(part.at("width"));
  box.height = grid_of(part.at("height"));
  for (const Json& t : part.at("terminals").items) {
    terminals.try_emplace(t.at("id").text, static_cast<int>(graph.boxes.size()),
                          static_cast<int>(box.terminals.size()));
    box.terminals.push_back({t.at("id").text, side_named(t.at("side").text), {grid_of(t.at("x")), grid_of(t.at("y"))}});
  }
  graph.boxes.push_back(std::move(box));
}

bool read_wire(const Json& wire, const Terminals& terminals, std::map<std::string, int>& nets, Graph& graph) {
  const auto from = terminals.find(wire.at("from").text), to = terminals.find(wire.at("to").text);
  if (from == terminals.end() || to == terminals.end()) return false;
  GraphWire w;
  w.name = wire.at("id").text;
  std::tie(w.from_box, w.from_terminal) = from->second;
  std::tie(w.to_box, w.to_terminal) = to->second;
  w.net = nets.try_emplace(wire.at("net").text, static_cast<int>(nets.size())).first->second;
  w.pen = 50;
  w.label_width = grid_of(wire.at("labelWidth"));
  w.label_height = grid_of(wire.at("labelHeight"));
  graph.wires.push_back(std::move(w));
  return true;
}

/// Wires that share a terminal are one net, whatever the file calls their nets.
void join_nets(Graph& graph) {
  std::map<std::pair<int, int>, int> net_of_terminal;
  for (bool changed = true; changed;) {
    changed = false;
    for (GraphWire& w : graph.wires)
      for (const auto& terminal : {std::pair{w.from_box, w.from_terminal}, std::pair{w.to_box, w.to_terminal}}) {
        int& net = net_of_terminal.try_emplace(terminal, w.net).first->second;
        if (net == w.net) continue;
        net = w.net = std::min(net, w.net);
        changed = true;
      }
  }
}

std::string describe(const Graph& graph, const Laid& laid, double milliseconds) {
  const laying::Quality q = laying::measure(laid);
  return graph.name + ": " + std::to_string(graph.boxes.size()) + " boxes, " + std::to_string(graph.wires.size()) +
         " wires, " + fixed(milliseconds, 1) + " ms, " + std::to_string(q.crossings) + " crossings, " +
         std::to_string(q.bends) + " bends, " + std::to_string(q.length / grid_per_mm) + " mm, " +
         std::to_string(verify(with_settled_joints(graph, laid), laid).size()) + " broken promises, " +
         std::to_string(laid.warnings.size()) + " without a label";
}

std::string mm(Grid g) { return shortest(g / static_cast<double>(grid_per_mm), 2); }

}  // namespace

Graph read_bench_graph(const std::string& graph_json, std::string& error) {
  const Json json = read_json(graph_json, error);
  if (!error.empty()) return {};
  Graph graph;
  graph.name = json.at("name").text;
  put_known_zones_first(graph, json.at("parts"));
  Terminals terminals;
  for (const Json& p : json.at("parts").items) read_part(p, graph, terminals);
  std::map<std::string, int> nets;
  for (const Json& w : json.at("wires").items)
    if (!read_wire(w, terminals, nets, graph)) {
      error = "wire `" + w.at("id").text + "` ends at a terminal that is not there";
      return {};
    }
  join_nets(graph);
  return graph;
}

std::string write_bench_layout(const Graph& graph, const Laid& laid, double milliseconds) {
  std::string out =
      "{\"graph\": " + quote_json(graph.name) + ", \"engine\": \"loomfolio\", \"ms\": " + fixed(milliseconds, 1);
  out += ",\n\"parts\": {";
  for (std::size_t b = 0; b < graph.boxes.size(); ++b)
    out += (b ? ",\n" : "\n") + quote_json(graph.boxes[b].name) + ": [" + mm(laid.boxes[b].box.x0) + ", " +
           mm(laid.boxes[b].box.y0) + "]";
  out += "},\n\"wires\": {";
  for (std::size_t w = 0; w < graph.wires.size(); ++w) {
    out += (w ? ",\n" : "\n") + quote_json(graph.wires[w].name) + ": [";
    const auto& points = laid.courses[w].points;
    for (std::size_t i = 0; i < points.size(); ++i)
      out += std::string(i ? ", " : "") + "[" + mm(points[i].x) + ", " + mm(points[i].y) + "]";
    out += "]";
  }
  out += "},\n\"labels\": {";
  std::map<int, const PlacedLabel*> labels;
  for (const PlacedLabel& l : laid.labels) labels.try_emplace(l.wire, &l);
  const char* separator = "\n";
  for (const auto& [wire, l] : labels) {
    out += separator + quote_json(graph.wires[wire].name) + ": {\"x\": " + mm(l->box.x0) + ", \"y\": " + mm(l->box.y0) +
           ", \"width\": " + mm(l->box.width()) + ", \"height\": " + mm(l->box.height()) + "}";
    separator = ",\n";
  }
  return out + "},\n\"page\": {\"width\": " + mm(laid.width) + ", \"height\": " + mm(laid.height) + "}}\n";
}

std::string lay_out_bench_json(const std::string& graph_json, std::string& error, const std::string& earlier_json,
                               BenchFigures* figures) {
  const Graph graph = read_bench_graph(graph_json, error);
  if (!error.empty()) return {};
  Graph earlier_graph;
  Laid earlier, laid;
  LayoutOptions options;
  if (!earlier_json.empty()) {
    earlier_graph = read_bench_graph(earlier_json, error);
    if (!error.empty()) return {};
    earlier = lay_out(earlier_graph);
    options = {&earlier, &earlier_graph};
  }
  std::vector<double> times;
  for (int i = 0; i < 3; ++i) {
    const auto start = std::chrono::steady_clock::now();
    laid = lay_out(graph, options);
    times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    if (times[0] > 2000) break;
  }
  std::sort(times.begin(), times.end());
  if (figures != nullptr) figures->text = describe(graph, laid, times[times.size() / 2]);
  return write_bench_layout(graph, laid, times[times.size() / 2]);
}

}  // namespace loomfolio
