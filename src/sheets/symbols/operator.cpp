// SPDX-License-Identifier: MIT
// What works a switch, at the end of a dashed link from its blade.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {
namespace {

using Spot = Pencil::Spot;
constexpr double link_end = -4.3;  // where the link ends

void draw_key(Pencil& pencil) {
  pencil.circle({link_end - 0.5, -0.8}, 0.7);
  pencil.line({{link_end - 0.5, -0.1}, {link_end - 0.5, 1.6}, {link_end + 0.2, 1.6}});
  pencil.line({{link_end - 0.5, 0.9}, {link_end + 0.2, 0.9}});
}

void draw_gear(Pencil& pencil) {
  pencil.circle({link_end - 0.2, 0}, 0.75);
  for (const Spot& tooth : {Spot{0, -1.25}, {1.08, -0.62}, {1.08, 0.62}, {0, 1.25}, {-1.08, 0.62}, {-1.08, -0.62}})
    pencil.line({{link_end - 0.2 + tooth.first * 0.62, tooth.second * 0.62}, {link_end - 0.2 + tooth.first, tooth.second}});
}

void draw_pressure(Pencil& pencil) {
  pencil.box({link_end - 1.1, -1.3}, {link_end + 1.1, 1.3});
  pencil.letters({link_end, 0}, "p", look::small);
}

}  // namespace

void draw_operator(Pencil& pencil, Operator worked_by, Pencil::Spot blade) {
  if (worked_by == Operator::none || worked_by == Operator::coil) return;
  pencil.dashed(blade, {link_end + 0.2, blade.second});
  switch (worked_by) {
    case Operator::hand:
      pencil.line({{link_end, -1.2}, {link_end, 1.2}});
      break;
    case Operator::push:
      pencil.line({{link_end + 0.6, -1.3}, {link_end, -1.3}, {link_end, 1.3}, {link_end + 0.6, 1.3}});
      break;
    case Operator::foot:
      pencil.line({{link_end - 1, 1.4}, {link_end, 0}, {link_end - 0.6, -1.3}});
      pencil.line({{link_end - 1, -1.3}, {link_end - 0.1, -1.3}});
      break;
    case Operator::pressure:
      draw_pressure(pencil);
      break;
    case Operator::gear:
      draw_gear(pencil);
      break;
    case Operator::key:
      draw_key(pencil);
      break;
    case Operator::clutch:
      pencil.line({{link_end, 0}, {link_end - 0.4, -1.4}});
      pencil.disc({link_end, 0}, 0.45);
      pencil.line({{link_end, 0}, {link_end - 0.4, 1.4}});
      break;
    case Operator::stand:
      pencil.line({{link_end, -1.3}, {link_end - 0.8, 1.2}});
      pencil.line({{link_end - 1.4, 1.2}, {link_end, 1.2}});
      break;
    case Operator::none:
    case Operator::coil:
      break;
  }
}

}  // namespace loomfolio
