// SPDX-License-Identifier: MIT
// Ring terminals: crimped in a closed barrel, covered, bolted to bare metal.
#include "sheets/fitting_strokes.h"

namespace loomfolio {
namespace {

using namespace fitting_paint;
using namespace fitting_place;

constexpr double ring_example_scale = 2.0;  ///< the eye is wide

void crimped_ring(FittingSketch& s) {
  s.wire(14.6, s.reach());
  s.ring(0.2);
  s.box(11.2, 0.8, 1.4, dark_metal, 0.3);
}

/// Strands show at the ring.
void good_ring(FittingSketch& s) {
  crimped_ring(s);
  s.strands(8.2, 9.4, 0.5);
}

/// The barrel beside the bare end, one length for both.
void strip_bare(FittingSketch& s, const FittingFacts&) {
  s.wire(17, right);
  s.strands(12, 17);
  for (const double x : {12.0, 17.0}) s.line(x, 1.2, x, 3.4);
  s.slab(12, 3.8, 5, 6.4, metal, 0.4);
}

void push_in(FittingSketch& s, const FittingFacts&) {
  s.wire(14.6, right);
  s.ring(0.2);
  s.strands(8.8, 9.4);
  s.arrow(25, -4, 17, -4);
}

void crimp(FittingSketch& s, const FittingFacts&) {
  crimped_ring(s);
  draw_press(s, 11.9);
}

void tug(FittingSketch& s, const FittingFacts&) {
  crimped_ring(s);
  s.arrow(4.4, 5.2, 0.2, 5.2);
  s.arrow(21, 5.2, 26, 5.2);
}

void shrink(FittingSketch& s, const FittingFacts&) {
  s.wire(14.6, right);
  s.ring(0.2);
  s.box(9.6, 2, 10, look::band_dark, 1);
  for (const double x : {11.0, 14.0, 17.0}) s.arrow(x, 6.6, x, 3);
}

void clean(FittingSketch& s, const FittingFacts&) {
  s.slab(2, 1, 24, 5, metal, 0);
  s.slab(2, -0.2, 8, 1, look::band_dark, 0);
  s.slab(18, -0.2, 8, 1, look::band_dark, 0);
  s.line(11, 1, 17, 1, false);
  s.arrow(10.6, -2.4, 17.6, -2.4);
  s.arrow(17.4, -4, 10.4, -4);
}

/// Metal, ring, washer and nut, those above the ring raised by `up`.
void bolt_stack(FittingSketch& s, double up) {
  s.slab(2, 2.4, 24, 5.8, metal, 0);
  s.slab(12.6, -3.8 - up * 0.6, 2.8, 2.4, dark_metal, 0.2);
  s.wire(23.4, right, 1.2, 1.4);
  s.slab(19.6, 0.4, 4, 2.3, dark_metal, 0.3);  // the ring's barrel
  s.slab(8, 1.3, 12, 2.4, dark_metal, 0.2);
  s.slab(9.4, 0.1 - up, 9, 1.3 - up, look::paper, 0.2);
  s.slab(10.4, -3.0 - up, 7, 0.1 - up, metal, 0.6);
  s.line(14, -3.0 - up, 14, 0.1 - up);
}

void bolt(FittingSketch& s, const FittingFacts&) {
  bolt_stack(s, 2.4);
  s.arrow(22.5, -5, 22.5, -1);
}

void tighten(FittingSketch& s, const FittingFacts&) {
  bolt_stack(s, 0);
  s.arrow(8.4, -5.2, 19.4, -5.2);
}

/// Pinched where the wire comes out, and split there.
void bad_edge(FittingSketch& s) {
  s.wire(14.8, s.reach());
  s.ring(0.2);
  s.box(13, 1.9, 1.9, dark_metal, 0.3);
  s.line(11.2, 0, 14.9, 0, false);
  s.point_out(13.9, 0, 2.9);
}

void bad_short(FittingSketch& s) {
  s.wire(18, s.reach());
  s.strands(14, 18);
  s.ring(0.2);
  s.box(11.2, 0.8, 1.4, dark_metal, 0.3);
  s.point_out(16.2, 0, 2.4);
}

}  // namespace

const FittingProcedure& ring_procedure() {
  static const FittingProcedure procedure{{{"shrink_sleeve", draw_sleeve_on},
                                           {"ring_strip", strip_bare},
                                           {"ring_in", push_in},
                                           {"ring_crimp", crimp},
                                           {"ring_tug", tug},
                                           {"ring_shrink", shrink},
                                           {"ring_clean", clean},
                                           {"ring_bolt", bolt},
                                           {"ring_tighten", tighten}},
                                          {{Verdict::good, "good_ring", good_ring},
                                           {Verdict::bad, "bad_ring_edge", bad_edge},
                                           {Verdict::bad, "bad_ring_short", bad_short}},
                                          ring_example_scale};
  return procedure;
}

}  // namespace loomfolio
