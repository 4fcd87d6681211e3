// SPDX-License-Identifier: MIT
#include "sheets/fitting_strokes.h"

namespace loomfolio {

using namespace fitting_paint;
using namespace fitting_place;

void draw_strip(FittingSketch& s, const FittingFacts& f) {
  const double end = 6 + f.strip;
  s.strands(6, end);
  s.wire(end, right);
  s.dimension(6, end, 3.4, f.strip_text);
}

void draw_sleeve_on(FittingSketch& s, const FittingFacts&) {
  s.wire(4, right);
  s.box(14, 2.6, 9, look::band_dark, 0.8);
  s.arrow(8, -4, 15, -4);
}

void draw_tug(FittingSketch& s, const FittingFacts& f) {
  s.box(0, 4.4, 13, housing, 0.6);
  s.wire(13, 21);
  s.arrow(21, 0, 26.6, 0);
  if (!f.tug_text.empty()) s.label(20, 5.4, f.tug_text);
}

void draw_tail(FittingSketch& s) { s.wire(wire_start, s.reach()); }

void draw_wire_in(FittingSketch& s, Wings conductor, Wings insulation) {
  if (insulation == Wings::open) s.insulation_wings(rear_wings, Wings::open);
  if (conductor == Wings::open) s.conductor_wings(barrel, Wings::open);
  draw_tail(s);
  s.strands(barrel - 0.5, wire_start);
  if (conductor == Wings::closed) s.conductor_wings(barrel, Wings::closed);
  if (insulation == Wings::closed) s.insulation_wings(rear_wings, Wings::closed);
}

void draw_press(FittingSketch& s, double x) {
  s.arrow(x, -6.2, x, -3.2);
  s.arrow(x, 6.0, x, 3.2);
}

void draw_cut_housing(FittingSketch& s) {
  s.slab(0, -5, 15, -2.4, housing, 0.4);
  s.slab(0, 2.4, 15, 5, housing, 0.4);
  s.shape({{7.6, -2.4}, {7.6, -1.5}, {9, -2.4}}, look::ink);
}

void draw_way_up(FittingSketch& s, const FittingFacts&) {
  draw_cut_housing(s);
  s.contact_body(15.6);
  s.wire(26, right);
  s.strands(23, 26, 0.5);
  s.conductor_wings(23, Wings::closed);
  s.arrow(20.6, -6.2, 20.6, -3);
}

void draw_contact_at_left(FittingSketch& s) { s.contact_body(0.2); }

void draw_blade_at_left(FittingSketch& s) { s.blade_body(0.2); }

void draw_bullet_at_left(FittingSketch& s) {
  s.box(0.6, 1.6, 6.8, metal, 1.5);
  s.box(5.2, 1.6, 1.2, dark_metal, 0.2);
}

}  // namespace loomfolio
