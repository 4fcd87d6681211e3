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

}  // namespace loomfolio
