// SPDX-License-Identifier: MIT
#include "bench/svg_dump.h"

#include "base/text.h"

namespace loomfolio {
namespace {

std::string mm(Grid g) { return shortest(g / 100.0, 2); }

std::string rect(GridBox b, const std::string& style) {
  return "<rect x='" + mm(b.x0) + "' y='" + mm(b.y0) + "' width='" + mm(b.width()) + "' height='" + mm(b.height()) + "' " + style + "/>\n";
}

std::string text(GridPoint at, const std::string& words, const std::string& style) {
  return "<text x='" + mm(at.x) + "' y='" + mm(at.y) + "' font-family='B612' " + style + ">" + words + "</text>\n";
}

/// The hops on a level stretch, in the direction of travel.
std::string hops_along(const Course& course, GridPoint a, GridPoint b) {
  std::vector<Hop> hops;
  for (const Hop& h : course.hops)
    if (h.at.y == a.y && h.at.x > std::min(a.x, b.x) && h.at.x < std::max(a.x, b.x)) hops.push_back(h);
  std::string d;
  const bool right = b.x > a.x;
  for (std::size_t k = 0; k < hops.size(); ++k) {
    const Hop& h = hops[right ? k : hops.size() - 1 - k];
    const Grid from = right ? h.at.x - h.half : h.at.x + h.half, to = right ? h.at.x + h.half : h.at.x - h.half;
    d += " L" + mm(from) + "," + mm(a.y) + " C" + mm(from) + "," + mm(a.y - 130) + " " + mm(to) + "," + mm(a.y - 130) + " " + mm(to) + "," +
         mm(a.y);
  }
  return d;
}

std::string path(const Course& course) {
  std::string d;
  for (std::size_t i = 0; i < course.points.size(); ++i) {
    const GridPoint p = course.points[i];
    if (i > 0 && course.points[i - 1].y == p.y) d += hops_along(course, course.points[i - 1], p);
    d += (i ? " L" : "M") + mm(p.x) + "," + mm(p.y);
  }
  return d;
}

const char* colour_of(int net) {
  static const char* colours[] = {"#c22", "#06c", "#282", "#b60", "#808", "#088", "#555", "#c08", "#660", "#224"};
  return colours[static_cast<unsigned>(net) % 10];
}

std::string draw_box(const GraphBox& box, const PlacedBox& placed) {
  const GridBox b = placed.box;
  std::string out = rect(b, "fill='white' stroke='#1a1a1a' stroke-width='0.35'");
  out += text({(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2 + 80}, box.name, "font-size='2.6' text-anchor='middle'");
  for (const GraphTerminal& t : box.terminals) {
    const Grid x = placed.is_mirrored ? b.x1 - t.at.x : b.x0 + t.at.x;
    out += "<circle cx='" + mm(x) + "' cy='" + mm(b.y0 + t.at.y) + "' r='0.6' fill='white' stroke='black' stroke-width='0.25'/>\n";
  }
  return out;
}

std::string draw_label(const GraphWire& wire, const PlacedLabel& l) {
  const std::string colour = colour_of(wire.net);
  const std::string frame = rect(l.box, "fill='#fff' stroke='" + colour + "' stroke-width='0.1'");
  if (!l.is_upright) return frame + text({l.box.x0, l.box.y1 - 40}, wire.name, "font-size='2'");
  return frame + text({0, 0}, wire.name, "font-size='2' transform='translate(" + mm(l.box.x1 - 40) + "," + mm(l.box.y1) + ") rotate(-90)'");
}

}  // namespace

std::string dump_svg(const Graph& graph, const Laid& laid) {
  std::string out = "<svg xmlns='http://www.w3.org/2000/svg' width='" + mm(laid.width) + "mm' height='" + mm(laid.height) +
                    "mm' viewBox='0 0 " + mm(laid.width) + " " + mm(laid.height) + "'>\n" +
                    "<rect width='100%' height='100%' fill='white'/>\n";
  for (std::size_t z = 0; z < laid.bands.size(); ++z) {
    out += rect(laid.bands[z], "fill='#f4f4f2'");
    out += text({laid.bands[z].x0 + 150, 400}, graph.zones[z].name, "font-size='2.6' fill='#777'");
  }
  for (std::size_t w = 0; w < laid.courses.size(); ++w)
    out += "<path d='" + path(laid.courses[w]) + "' fill='none' stroke='" + colour_of(graph.wires[w].net) + "' stroke-width='" +
           mm(std::max<Grid>(40, graph.wires[w].pen)) + "'/>\n";
  for (GridPoint p : laid.dots) out += "<circle cx='" + mm(p.x) + "' cy='" + mm(p.y) + "' r='0.6'/>\n";
  for (std::size_t b = 0; b < laid.boxes.size(); ++b) out += draw_box(graph.boxes[b], laid.boxes[b]);
  for (const PlacedLabel& l : laid.labels) out += draw_label(graph.wires[l.wire], l);
  return out + "</svg>\n";
}

}  // namespace loomfolio
