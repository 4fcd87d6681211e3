// SPDX-License-Identifier: MIT
// Dots where three ends of one node meet, hops where one inner wire passes over another, and the baselines of texts.
#include <algorithm>
#include <bit>

#include "layout/inside_finish.h"

namespace loomfolio::inside {
namespace {

struct Stretch {
  int node = -1;
  GridPoint a, b;  ///< a <= b
  std::size_t line = 0;
  bool is_level() const { return a.y == b.y; }
};

std::vector<Stretch> stretches_of(const PartDrawing& drawing) {
  std::vector<Stretch> found;
  for (std::size_t l = 0; l < drawing.lines.size(); ++l) {
    const InnerLine& line = drawing.lines[l];
    if (line.style != InnerStyle::wire) continue;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      const GridPoint a = std::min(line.points[i - 1], line.points[i]),
                      b = std::max(line.points[i - 1], line.points[i]);
      found.push_back({line.node, a, b, l});
    }
  }
  return found;
}

/// Which of the four directions leave `at` along the stretch.
unsigned directions(const Stretch& s, GridPoint at) {
  unsigned found = 0;
  if (s.is_level() && s.a.y == at.y && at.x >= s.a.x && at.x <= s.b.x)
    found |= (at.x > s.a.x ? 1U : 0U) | (at.x < s.b.x ? 2U : 0U);
  if (!s.is_level() && s.a.x == at.x && at.y >= s.a.y && at.y <= s.b.y)
    found |= (at.y > s.a.y ? 4U : 0U) | (at.y < s.b.y ? 8U : 0U);
  return found;
}

}  // namespace

void put_dots(PartDrawing& drawing) {
  const std::vector<Stretch> stretches = stretches_of(drawing);
  std::vector<GridPoint> dots;
  for (const Stretch& s : stretches)
    for (GridPoint at : {s.a, s.b}) {
      unsigned found = 0;
      for (const Stretch& other : stretches)
        if (other.node == s.node) found |= directions(other, at);
      if (std::popcount(found) >= 3) dots.push_back(at);
    }
  std::sort(dots.begin(), dots.end());
  dots.erase(std::unique(dots.begin(), dots.end()), dots.end());
  drawing.dots = std::move(dots);
}

void put_hops(PartDrawing& drawing) {
  const std::vector<Stretch> stretches = stretches_of(drawing);
  for (const Stretch& level : stretches) {
    if (!level.is_level()) continue;
    for (const Stretch& upright : stretches) {
      if (upright.is_level() || upright.node == level.node) continue;
      const GridPoint at{upright.a.x, level.a.y};
      if (at.x > level.a.x && at.x < level.b.x && at.y > upright.a.y && at.y < upright.b.y)
        drawing.lines[level.line].hops.push_back(at);
    }
  }
  for (InnerLine& line : drawing.lines) {
    std::sort(line.hops.begin(), line.hops.end());
    line.hops.erase(std::unique(line.hops.begin(), line.hops.end()), line.hops.end());
  }
}

void put_baselines(const Plan& plan, PartDrawing& drawing) {
  for (InnerText& text : drawing.texts) {
    const TextSize size = plan.request->measure.measure(text.text, text.style);
    text.baseline = {text.box.x0, text.box.y0 + to_grid(size.ascent)};
  }
}

void put_terminal_names(const Plan& plan, PartDrawing& drawing) {
  constexpr Grid from_edge = 130, beside = 70, above = 40;
  for (const PlacedTerminal& terminal : drawing.terminals) {
    const std::string& name = plan.kind->terminals[static_cast<std::size_t>(terminal.terminal)].id;
    const FlowSize size = size_in_flow(plan, name, plan.request->styles.terminal, false);
    GridPoint corner;
    switch (terminal.side) {
      case Side::top:
        corner = {terminal.lead.x + beside, from_edge};
        break;
      case Side::bottom:
        corner = {terminal.lead.x + beside, drawing.height - from_edge - size.y};
        break;
      case Side::left:
        corner = {from_edge, terminal.lead.y - above - size.y};
        break;
      case Side::right:
        corner = {drawing.width - from_edge - size.x, terminal.lead.y - above - size.y};
        break;
    }
    drawing.texts.push_back({TextRole::terminal,
                             name,
                             plan.request->styles.terminal,
                             {corner.x, corner.y, corner.x + size.x, corner.y + size.y},
                             {}});
  }
}

}  // namespace loomfolio::inside
