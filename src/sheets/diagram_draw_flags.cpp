// SPDX-License-Identifier: MIT
// The flags that say on which sheets a terminal's other wires are.
#include "sheets/diagram_drawer.h"

namespace loomfolio {
namespace {

constexpr Millimetres flag_step{2.9};  // from line to line

struct FlagWay {
  double x = 0, y = 0;
};

FlagWay way_of(Side side) {
  switch (side) {
    case Side::top:
      return {0, -1};
    case Side::bottom:
      return {0, 1};
    case Side::left:
      return {-1, 0};
    case Side::right:
      return {1, 0};
  }
  return {};
}

}  // namespace

void draw_flag(const DiagramDrawer& d, const Flag& flag, Point at, Side side, FlagLines stacking) {
  const FlagWay way = way_of(side);
  const Millimetres reach = to_mm(flag.reach);
  const Point tip{at.x + reach * way.x, at.y + reach * way.y};
  const Pen pen{look::accent, look::part_line, {}, Cap::butt};
  const Point neck{tip.x - Millimetres(1.2 * way.x), tip.y - Millimetres(1.2 * way.y)};
  add_line(d.items, {at.x + Millimetres(1 * way.x), at.y + Millimetres(1 * way.y)}, neck, pen);
  const Millimetres across_x(0.75 * way.y), across_y(0.75 * way.x);
  add_polygon(d.items, {tip, {neck.x + across_x, neck.y + across_y}, {neck.x - across_x, neck.y - across_y}},
              look::accent, {look::accent, Millimetres(0)});
  const bool is_level = side == Side::left || side == Side::right;
  const auto lines = static_cast<double>(flag.diagrams.size());
  for (std::size_t i = 0; i < flag.diagrams.size(); ++i) {
    const FlagTarget target = d.ink.target_of(flag.diagrams[i], flag.terminal);
    const double nth = static_cast<double>(i);
    Point base;
    Align align = Align::centre;
    if (is_level) {
      align = side == Side::left ? Align::right : Align::left;
      const bool is_row = stacking == FlagLines::in_a_row;
      const Millimetres along = is_row ? to_mm(flag_width) * nth : Millimetres(0),
                        down = is_row ? Millimetres(0) : flag_step * (nth - (lines - 1) / 2);
      base = {tip.x + (Millimetres(0.5) + along) * way.x, tip.y + Millimetres(0.95) + down};
    } else {
      base = {tip.x, side == Side::bottom ? tip.y + Millimetres(2.5) + flag_step * nth
                                          : tip.y - Millimetres(0.6) - flag_step * (lines - 1 - nth)};
      if (flag.words != WordSide::middle) {
        const bool is_left = flag.words == WordSide::left;
        align = is_left ? Align::right : Align::left;
        base.x = base.x + Millimetres(is_left ? 1.5 : -1.5);
      }
    }
    add_text(d.items, base, target.text, look::flag, look::accent, align);
    const Millimetres width(9);
    const Millimetres x = align == Align::centre ? base.x - width / 2 : align == Align::left ? base.x : base.x - width;
    d.items.push_back(LinkItem{{x, base.y - Millimetres(2.4), width, Millimetres(3)}, target.sheet, target.anchor});
  }
}

}  // namespace loomfolio
