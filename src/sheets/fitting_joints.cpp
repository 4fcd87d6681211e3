// SPDX-License-Identifier: MIT
// Ends that meet other ends: splices and joints to a part's own lead; and those that take no fitting, under a clamp or
// in a cap.
#include <algorithm>

#include "sheets/fitting_strokes.h"

namespace loomfolio {
namespace {

using namespace fitting_paint;
using namespace fitting_place;

constexpr double splice_example_scale = 1.8;  ///< wires leave to both sides

/// Both sides in the barrel, their strands through it: the insulation ends before it.
void spliced_wires(FittingSketch& s) {
  s.splice_side(Side::left, 0, 9, 18);
  s.splice_side(Side::right, right, 19, 10);
}

/// A sleeve over the wires, not lower than that.
void splice_cover(FittingSketch& s, double x, double least_half, double length, double corner) {
  s.box(x, std::max(least_half, s.splice_half() + 0.2), length, look::band_dark, corner);
}

void splice_sleeve(FittingSketch& s, const FittingFacts&) {
  s.splice_side(Side::left, 0, 11, 11);
  s.splice_side(Side::right, right, 14, 14);
  splice_cover(s, 17.4, 2.6, 8, 0.8);
  s.arrow(14.5, -4.6, 21, -4.6);
}

/// All ends bare as far as the barrel is long.
void splice_strip(FittingSketch& s, const FittingFacts&) {
  s.splice_side(Side::left, 0, 6, 12, Strands::straight);
  s.splice_side(Side::right, right, 21, 15, Strands::straight);
  const double below = std::max(1.2, s.splice_half() + 0.2);
  for (const double x : {6.0, 12.0}) s.line(x, below, x, 3.6);
  s.slab(6, 3.8, 6, 6.2, metal, 0.4);
}

void splice_lay(FittingSketch& s, const FittingFacts&) {
  s.slab(10, -2.6, 8, 2.2, metal, 0.4);
  spliced_wires(s);
  s.arrow(14, -6.4, 14, -3.4);
}

/// Over the strands that it holds.
void dented_barrel(FittingSketch& s) {
  s.box(10, 1.7, 8, metal, 0.5);
  s.box(11.4, 0.9, 1.4, dark_metal, 0.3);
  s.box(15.2, 0.9, 1.4, dark_metal, 0.3);
}

void crimped_splice(FittingSketch& s) {
  spliced_wires(s);
  dented_barrel(s);
}

void press_both_dents(FittingSketch& s) {
  draw_press(s, 12.1);
  draw_press(s, 15.9);
}

void splice_crimp(FittingSketch& s, const FittingFacts&) {
  crimped_splice(s);
  press_both_dents(s);
}

void splice_tug(FittingSketch& s, const FittingFacts&) {
  crimped_splice(s);
  s.arrow(6, 4.4, 1, 4.4);
  s.arrow(21, 4.4, 26, 4.4);
}

void splice_look(FittingSketch& s, const FittingFacts&) {
  crimped_splice(s);
  s.lens(14, 0, 5.4);
}

void splice_centre(FittingSketch& s, const FittingFacts&) {
  crimped_splice(s);
  splice_cover(s, 6, 2.5, 17, 1);
  s.arrow(26, -4.6, 18, -4.6);
}

void splice_shrink(FittingSketch& s, const FittingFacts&) {
  s.splice_side(Side::left, 0, 14, 14);
  s.splice_side(Side::right, right, 14, 14);
  splice_cover(s, 5, 2.2, 18, 1.4);
  s.disc(5, 1, 0.6, rubber);
  s.disc(23, 1, 0.6, rubber);
  for (const double x : {9.0, 14.0, 19.0}) s.arrow(x, 6.4, x, 3.2);
}

void bad_splice_twisted(FittingSketch& s) {
  s.splice_side(Side::left, 0, 6, 6);
  s.splice_side(Side::right, right, 22, 22);
  s.twist(6, 22);
  s.box(11, 1.7, 6, metal, 0.5);
  s.point_out(8.4, 0, 2.3);
  s.point_out(19.6, 0, 2.3);
}

void bad_splice_sleeve(FittingSketch& s) {
  crimped_splice(s);
  splice_cover(s, 14.4, 2.6, 11, 1);
  s.point_out(11.2, 0, 3.2);
}

void lead_match(FittingSketch& s, const FittingFacts&) {
  s.box(0, 4.2, 4, housing, 0.6);
  s.box(4, 0.9, 8, look::band_dark, 0);
  s.wire(16, right);
  s.arrow(12, -4, 15, -4);
  s.arrow(20, -4, 16, -4);
}

void lead_strip(FittingSketch& s, const FittingFacts&) {
  s.box(0, 0.9, 6, look::band_dark, 0);
  s.strands(6, 12);
  s.strands(15, 21);
  s.wire(21, right);
  for (const double x : {6.0, 12.0}) s.line(x, 1.2, x, 3.4);
  s.slab(6, 3.8, 6, 6.2, metal, 0.4);
}

void lead_join(FittingSketch& s, const FittingFacts&) {
  s.box(0, 0.9, 9, look::band_dark, 0);
  s.strands(9, 19, 0.8);
  s.wire(19, right);
  dented_barrel(s);
  press_both_dents(s);
}

void lead_cover(FittingSketch& s, const FittingFacts&) {
  s.box(0, 0.9, 8, look::band_dark, 0);
  s.wire(20, right);
  s.box(6, 2.2, 16, look::band, 1.2);
  for (const double x : {9.0, 14.0, 19.0}) s.arrow(x, 6.4, x, 3.2);
}

void cap_push(FittingSketch& s, const FittingFacts& f) {
  s.box(0, 1.4, 5, dark_metal, 0.4);
  s.box(6, 3.4, 10, look::band_dark, 2);
  s.wire(16, right, 3.4);
  s.arrow(16, -5.4, 8, -5.4);
  s.label(18, -4.8, f.click, Align::left);
}

void clamp(FittingSketch& s) {
  s.slab(2, 0.8, 9, 3, metal, 0.3);
  s.slab(2, -3, 9, -0.8, metal, 0.3);
  s.strands(3, 13, 0.5);
  s.wire(12.5, right);
}

void bare_in(FittingSketch& s, const FittingFacts&) {
  clamp(s);
  s.arrow(25, -4, 17, -4);
}

void bare_clamp(FittingSketch& s, const FittingFacts&) {
  clamp(s);
  s.arrow(6.5, -6.4, 6.5, -3.4);
}

}  // namespace

const FittingProcedure& splice_procedure() {
  static const FittingProcedure procedure{{{"splice_sleeve", splice_sleeve},
                                           {"splice_strip", splice_strip},
                                           {"splice_lay", splice_lay},
                                           {"splice_crimp", splice_crimp},
                                           {"splice_tug", splice_tug},
                                           {"look", splice_look},
                                           {"splice_centre", splice_centre},
                                           {"splice_shrink", splice_shrink}},
                                          {{Verdict::good, "good_splice", crimped_splice},
                                           {Verdict::bad, "bad_splice_twisted", bad_splice_twisted},
                                           {Verdict::bad, "bad_splice_sleeve", bad_splice_sleeve}},
                                          splice_example_scale};
  return procedure;
}

const FittingProcedure& lead_procedure() {
  static const FittingProcedure procedure{{{"lead_match", lead_match},
                                           {"shrink_sleeve", draw_sleeve_on},
                                           {"lead_strip", lead_strip},
                                           {"lead_join", lead_join},
                                           {"tug", draw_tug},
                                           {"lead_cover", lead_cover}},
                                          {}};
  return procedure;
}

const FittingProcedure& cap_procedure() {
  static const FittingProcedure procedure{{{"cap_push", cap_push}}, {}};
  return procedure;
}

const FittingProcedure& bare_procedure() {
  static const FittingProcedure procedure{
      {{"strip", draw_strip}, {"bare_in", bare_in}, {"bare_clamp", bare_clamp}, {"tug", draw_tug}}, {}};
  return procedure;
}

}  // namespace loomfolio
