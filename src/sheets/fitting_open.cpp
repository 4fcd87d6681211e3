// SPDX-License-Identifier: MIT
// Open barrels without a seal: contacts of connectors, blade receptacles and bullets.
#include "sheets/fitting_verdicts.h"

namespace loomfolio {
namespace {

using namespace fitting_paint;
using namespace fitting_place;

void contact_push(FittingSketch& s, const FittingFacts& f) {
  draw_cut_housing(s);
  s.contact_body(1);
  s.strands(8.6, 14, 0.5);
  s.conductor_wings(9, Wings::closed);
  s.insulation_wings(13.4, Wings::closed);
  s.wire(15.8, right);
  s.arrow(26, -3.6, 18, -3.6);
  s.label(22, -4.6, f.click);
}

void bad_tongue(FittingSketch& s) {
  s.box(0.2, 1.3, 7.4, metal, 0.3);
  s.line(1.6, -0.5, 4.4, -0.5);
  s.shape({{4.6, -1.3}, {6.4, -0.5}, {6.6, -1.3}}, look::ink);
  draw_good_end(s);
  s.point_out(5.6, -1.2, 2.2);
}

void blade_cover(FittingSketch& s, const FittingFacts&) {
  draw_blade_at_left(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
  s.box(9.4, 3.4, 10, look::band_dark, 0.8);
  s.arrow(24, -5.2, 15, -5.2);
}

void blade_push(FittingSketch& s, const FittingFacts& f) {
  s.slab(0, -1.6, 6, 1.6, dark_metal, 0.2);
  s.box(7, 3.2, 11, look::band_dark, 0.8);
  s.wire(18, right);
  s.arrow(16, -5, 8, -5);
  s.label(19, -4.4, f.click, Align::left);
}

void bullet_cover(FittingSketch& s, const FittingFacts&) {
  draw_bullet_at_left(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
  s.box(8.4, 2.6, 9, look::band_dark, 0.8);
  s.arrow(23, -4.6, 14, -4.6);
}

void bullet_push(FittingSketch& s, const FittingFacts& f) {
  s.box(0, 3, 10, look::band_dark, 1);
  s.box(1, 1.9, 9, dark_metal, 0.4);
  s.box(11, 1.6, 3, metal, 0.8);
  s.box(13, 2.6, 7, look::band_dark, 0.8);
  s.wire(20, right);
  s.arrow(20, -5, 12, -5);
  s.label(22, -4.4, f.click, Align::left);
}

}  // namespace

const FittingProcedure& contact_procedure() {
  static const FittingProcedure procedure = [] {
    FittingProcedure made{{{"strip", draw_strip},
                           {"lay", draw_laid<draw_contact_at_left>},
                           {"conductor", draw_conductor<draw_contact_at_left>},
                           {"insulation", draw_insulation<draw_contact_at_left>},
                           {"look", draw_look<draw_contact_at_left>},
                           {"way_up", draw_way_up},
                           {"push", contact_push},
                           {"tug", draw_tug}},
                          open_examples<draw_contact_at_left>(), verdict_scale, shared_steps<draw_contact_at_left>(),
                          shared_examples<draw_contact_at_left>()};
    made.examples.push_back({Verdict::bad, "bad_tongue", bad_tongue});
    return made;
  }();
  return procedure;
}

const FittingProcedure& blade_procedure() {
  static const FittingProcedure procedure{{{"blade_sleeve", draw_sleeve_on},
                                           {"strip", draw_strip},
                                           {"lay", draw_laid<draw_blade_at_left>},
                                           {"conductor", draw_conductor<draw_blade_at_left>},
                                           {"insulation", draw_insulation<draw_blade_at_left>},
                                           {"look", draw_look<draw_blade_at_left>},
                                           {"blade_cover", blade_cover},
                                           {"blade_push", blade_push},
                                           {"tug", draw_tug}},
                                          open_examples<draw_blade_at_left>(), verdict_scale,
                                          shared_steps<draw_blade_at_left>(), shared_examples<draw_blade_at_left>()};
  return procedure;
}

const FittingProcedure& bullet_procedure() {
  static const FittingProcedure procedure{{{"bullet_sleeve", draw_sleeve_on},
                                           {"strip", draw_strip},
                                           {"lay", draw_laid<draw_bullet_at_left>},
                                           {"conductor", draw_conductor<draw_bullet_at_left>},
                                           {"insulation", draw_insulation<draw_bullet_at_left>},
                                           {"look", draw_look<draw_bullet_at_left>},
                                           {"bullet_cover", bullet_cover},
                                           {"bullet_push", bullet_push},
                                           {"tug", draw_tug}},
                                          open_examples<draw_bullet_at_left>(), verdict_scale,
                                          shared_steps<draw_bullet_at_left>(), shared_examples<draw_bullet_at_left>()};
  return procedure;
}

}  // namespace loomfolio
