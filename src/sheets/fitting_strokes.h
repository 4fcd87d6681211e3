// SPDX-License-Identifier: MIT
// What the figures of several fittings share. They are 27 mm of the thing wide. Lengths of fittings are those of common
// ones, from memory; what counts, the strip length, comes from the facts.
#pragma once

#include "sheets/fitting_steps.h"

namespace loomfolio {

namespace fitting_place {
inline constexpr double right = 27;        ///< edge of a figure
inline constexpr double barrel = 8;        ///< where the conductor wings of a blade or contact begin
inline constexpr double wire_start = 13.2;  ///< where the insulation begins in an open barrel
inline constexpr double rear_wings = 12.6;
}  // namespace fitting_place

/// The strip length between two ticks.
void draw_strip(FittingSketch& sketch, const FittingFacts& facts);
/// A sleeve slid onto the wire before anything else.
void draw_sleeve_on(FittingSketch& sketch, const FittingFacts& facts);
/// The wire held fast at the left and pulled.
void draw_tug(FittingSketch& sketch, const FittingFacts& facts);

/// The insulated wire as it leaves an open barrel.
void draw_tail(FittingSketch& sketch);
/// A wire in an open barrel whose wings stand open or are crimped.
void draw_wire_in(FittingSketch& sketch, Wings conductor, Wings insulation);
/// Jaws from above and below.
void draw_press(FittingSketch& sketch, double x);
/// The housing cut open. Its lock slopes towards the entry at the right, so that the tongue slides under it, and stands
/// upright behind the tongue of a contact that is home.
void draw_cut_housing(FittingSketch& sketch);
void draw_way_up(FittingSketch& sketch, const FittingFacts& facts);

using BodyDrawer = void (*)(FittingSketch&);

void draw_contact_at_left(FittingSketch& sketch);
void draw_blade_at_left(FittingSketch& sketch);
void draw_bullet_at_left(FittingSketch& sketch);

/// Wires are laid into open barrels, crimped and looked at alike, whatever these mate with.
template <BodyDrawer Body>
void draw_laid(FittingSketch& s, const FittingFacts&) {
  Body(s);
  draw_wire_in(s, Wings::open, Wings::open);
  s.arrow(11.2, -6.4, 11.2, -3.4);
}
template <BodyDrawer Body>
void draw_conductor(FittingSketch& s, const FittingFacts&) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::open);
  draw_press(s, fitting_place::barrel + 1.5);
}
template <BodyDrawer Body>
void draw_insulation(FittingSketch& s, const FittingFacts&) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
  draw_press(s, fitting_place::rear_wings + 1.2);
}
template <BodyDrawer Body>
void draw_look(FittingSketch& s, const FittingFacts&) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
  s.lens(fitting_place::barrel + 3, 0, 4.4);
}

template <BodyDrawer Body>
void good_open(FittingSketch& s) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
}
template <BodyDrawer Body>
void bad_strands_out(FittingSketch& s) {
  good_open<Body>(s);
  s.line(fitting_place::barrel + 3.2, -0.4, fitting_place::barrel + 0.4, -2.8, false);
  s.line(fitting_place::barrel + 3.2, -0.4, fitting_place::barrel + 1.4, -3.2, false);
}
template <BodyDrawer Body>
void bad_insulation_under(FittingSketch& s) {
  Body(s);
  s.wire(fitting_place::barrel + 1, fitting_place::right);
  s.strands(fitting_place::barrel - 0.2, fitting_place::barrel + 1.2);
  s.box(fitting_place::barrel, 1.5, 3, fitting_paint::metal, 0.5);
  s.line(fitting_place::barrel + 1.5, -1.5, fitting_place::barrel + 1.5, 1.5);
  s.insulation_wings(fitting_place::rear_wings, Wings::closed, 1.5);
}
template <BodyDrawer Body>
void bad_short(FittingSketch& s) {
  Body(s);
  s.wire(fitting_place::wire_start, fitting_place::right);
  s.strands(fitting_place::barrel + 1.8, fitting_place::wire_start);
  s.conductor_wings(fitting_place::barrel, Wings::closed);
  s.insulation_wings(fitting_place::rear_wings, Wings::closed);
}
template <BodyDrawer Body>
void bad_loose_grip(FittingSketch& s) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::open);
}

/// Open barrels fail alike.
template <BodyDrawer Body>
std::vector<FittingExample> open_examples() {
  return {{Verdict::good, "good_open", good_open<Body>},
          {Verdict::bad, "bad_strands_out", bad_strands_out<Body>},
          {Verdict::bad, "bad_insulation_under", bad_insulation_under<Body>},
          {Verdict::bad, "bad_short", bad_short<Body>},
          {Verdict::bad, "bad_loose_grip", bad_loose_grip<Body>}};
}

}  // namespace loomfolio
