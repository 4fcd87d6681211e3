// SPDX-License-Identifier: MIT
#include "sheets/fitting_verdicts.h"

#include <algorithm>

namespace loomfolio {
namespace {

using namespace fitting_paint;
using namespace fitting_place;

constexpr double brush = barrel - 0.8;  ///< where strand ends show before the front wings
constexpr double shared_half = 2.2;     ///< of rear wings round two insulations

/// Seen from above, the two wings lie open beside the wire.
void open_flaps(FittingSketch& s, double x, double length, double inner, double outer) {
  for (const double side : {-1.0, 1.0})
    s.shape({{x, inner * side},
             {x, (outer - 0.6) * side},
             {x + 0.5, outer * side},
             {x + length - 0.5, outer * side},
             {x + length, (outer - 0.6) * side},
             {x + length, inner * side}},
            metal);
}

void shared_wires(FittingSketch& s) { s.splice_side(Side::right, s.reach(), wire_start, brush); }

}  // namespace

void draw_good_end(FittingSketch& s) {
  draw_tail(s);
  s.strands(brush, wire_start);
  s.conductor_wings(barrel, Wings::closed);
  s.insulation_wings(rear_wings, Wings::closed);
}

void draw_stray_strands(FittingSketch& s) {
  draw_good_end(s);
  s.strand({{barrel + 3.5, -0.5}, {barrel + 2.4, -1.7}, {barrel - 0.6, -2.6}});
  s.strand({{barrel + 3.7, -0.5}, {barrel + 2.8, -2.0}, {barrel + 0.8, -3.4}});
  s.strand({{barrel + 3.9, -0.5}, {barrel + 3.2, -2.3}, {barrel + 2.2, -3.6}});
}

void draw_wings_on_insulation(FittingSketch& s) {
  s.wire(barrel - 0.4, s.reach());
  s.box(barrel, 1.6, 3, metal, 0.7);
  s.line(barrel + 1.5, -1.6, barrel + 1.5, 1.6);
  s.insulation_wings(rear_wings, Wings::closed);
  s.point_out(barrel + 1.5, 0, 3.1);
}

void draw_short_strands(FittingSketch& s) {
  draw_tail(s);
  s.strands(barrel + 1.6, wire_start);
  s.conductor_wings(barrel, Wings::closed);
  s.box(barrel - 0.1, 0.75, 1.5, look::ink, 0.3);  // the empty wings
  s.insulation_wings(rear_wings, Wings::closed);
  s.point_out(barrel + 0.5, 0, 2.3);
}

void draw_open_grip(FittingSketch& s) {
  open_flaps(s, rear_wings, 2.4, 1.2, 3.8);
  draw_tail(s);
  s.strands(brush, wire_start);
  s.conductor_wings(barrel, Wings::closed);
}

void draw_shared_strip(FittingSketch& s, const FittingFacts& f) {
  const double end = 6 + f.strip;
  s.splice_side(Side::right, s.reach(), end, 6, Strands::straight);
  s.dimension(6, end, std::max(3.0, s.splice_half() + 1.2), f.strip_text);
}

void draw_shared_lay(FittingSketch& s) {
  s.insulation_wings(rear_wings, Wings::open, shared_half);
  s.conductor_wings(barrel, Wings::open);
  shared_wires(s);
  s.arrow(11.2, -6.4, 11.2, -3.4);
}

void draw_shared_crimp(FittingSketch& s) {
  shared_wires(s);
  s.conductor_wings(barrel, Wings::closed);
  s.insulation_wings(rear_wings, Wings::closed, shared_half);
  s.arrow(19, 4.6, 25, 4.6);
}

void draw_shared_stray(FittingSketch& s) {
  s.splice_side(Side::right, s.reach(), wire_start, wire_start);
  for (const double bend : {0.0, 0.5, 1.0})
    s.strand({{wire_start, -0.7 - bend * 0.6}, {barrel + 2.6, -1.6 - bend * 0.7}, {barrel - 0.4, -1.8 - bend}});
  s.strands(brush, wire_start, 0.5);
  s.conductor_wings(barrel, Wings::closed);
  s.insulation_wings(rear_wings, Wings::closed, shared_half);
}

void draw_shared_grip(FittingSketch& s) {
  shared_wires(s);
  s.conductor_wings(barrel, Wings::closed);
  s.slab(rear_wings, -0.1, 2.4, shared_half + 0.1, metal, 0.6);
  s.line(rear_wings + 1.2, -0.1, rear_wings + 1.2, shared_half + 0.1);
  s.point_out(rear_wings + 1.2, -1, 1.9);
}

void bad_twisted(FittingSketch& s) {
  s.splice_side(Side::right, s.reach(), wire_start, wire_start);
  s.twist(wire_start - 8, wire_start);
}

}  // namespace loomfolio
