// SPDX-License-Identifier: MIT
// Contacts of sealed connectors: each wire brings its seal, and the housing a lock for all of them.
#include "sheets/fitting_verdicts.h"

namespace loomfolio {
namespace {

using namespace fitting_paint;
using namespace fitting_place;

/// A housing of two cavities, seen from the wires' side of things.
void two_cavities(FittingSketch& s, double x, double length, double cavities, Colour upper, Colour lower) {
  s.box(x, 5, length, housing, 0.8);
  s.disc(cavities, -2.4, 1.4, upper);
  s.disc(cavities, 2.4, 1.4, lower);
}

void lock_out(FittingSketch& s, const FittingFacts&) {
  two_cavities(s, 4, 13, 13.5, look::paper, look::paper);
  s.slab(19.5, -4, 2.4, 4, rubber, 0.4);
  s.line(17, -3, 19.5, -3);
  s.line(17, 3, 19.5, 3);
  s.arrow(20.7, -5.6, 26, -5.6);
}

void seal_on(FittingSketch& s, const FittingFacts&) {
  s.wire(4, right);
  s.seal(13);
  s.arrow(5, -4.6, 12, -4.6);
}

void strip_behind_seal(FittingSketch& s, const FittingFacts& f) {
  const double end = 4 + f.strip;
  s.strands(4, end);
  s.wire(end, right);
  s.seal(end + 4);
  s.dimension(4, end, 3.4, f.strip_text);
}

void lay(FittingSketch& s, const FittingFacts&) {
  s.contact_body(0.2);
  s.insulation_wings(rear_wings, Wings::open, 2.0);
  s.conductor_wings(barrel, Wings::open);
  draw_tail(s);
  s.strands(barrel - 0.5, wire_start);
  s.seal(rear_wings);
  s.arrow(11.2, -6.4, 11.2, -3.4);
}

void conductor(FittingSketch& s, const FittingFacts&) {
  s.contact_body(0.2);
  s.insulation_wings(rear_wings, Wings::open, 2.0);
  draw_tail(s);
  s.strands(barrel - 0.5, wire_start);
  s.conductor_wings(barrel, Wings::closed);
  s.seal(rear_wings);
  draw_press(s, barrel + 1.5);
}

void sealed_contact(FittingSketch& s) {
  s.contact_body(0.2);
  draw_tail(s);
  s.strands(barrel - 0.5, wire_start);
  s.conductor_wings(barrel, Wings::closed);
  s.seal(rear_wings);
  s.insulation_wings(rear_wings, Wings::closed, 2.0);
}

void seal_wings(FittingSketch& s, const FittingFacts&) {
  sealed_contact(s);
  draw_press(s, rear_wings + 1.2);
}

void look_at_it(FittingSketch& s, const FittingFacts&) {
  sealed_contact(s);
  s.lens(barrel + 3.4, 0, 4.4);
}

void push(FittingSketch& s, const FittingFacts& f) {
  draw_cut_housing(s);
  s.contact_body(4);
  s.wire(14.5, right);
  s.strands(11, 14.5, 0.5);
  s.conductor_wings(11.4, Wings::closed);
  s.seal(15.6);
  s.insulation_wings(15.6, Wings::closed, 2.0);
  s.arrow(27, -3.8, 23.6, -3.8);
  s.label(24.8, -4.8, f.click);
}

void lock_back(FittingSketch& s, const FittingFacts& f) {
  two_cavities(s, 4, 13, 12.5, copper, copper);
  s.slab(15.4, -4, 1.6, 4, rubber, 0.3);
  s.arrow(25, 0, 18, 0);
  s.label(22, -1.8, f.click);
}

void plug(FittingSketch& s, const FittingFacts&) {
  two_cavities(s, 0.5, 11, 6, copper, look::paper);
  s.slab(14.5, 1.2, 5, 3.6, rubber, 0.4);
  for (const double x : {14.9, 16.7}) s.slab(x, 0.7, 1, 4.1, rubber, 0.3);
  s.slab(19.5, 0.4, 1.4, 4.4, rubber, 0.3);
  s.arrow(27, 2.4, 22, 2.4);
}

/// Contact and crimped strands, up to where the seal begins.
void crimped_end(FittingSketch& s) {
  s.contact_body(0.2);
  draw_tail(s);
  s.strands(barrel - 0.8, wire_start);
  s.conductor_wings(barrel, Wings::closed);
}

void bad_seal_reversed(FittingSketch& s) {
  crimped_end(s);
  s.seal(12.4, true);
  s.point_out(13.6, 0, 3.4);
}

void bad_seal_cut(FittingSketch& s) {
  sealed_contact(s);
  s.shape({{rear_wings + 2.2, -2.3}, {rear_wings + 3.6, -2.3}, {rear_wings + 2.4, 0.9}}, look::ink);
  s.point_out(rear_wings + 2.7, -1, 2.3);
}

void bad_no_seal_grip(FittingSketch& s) {
  crimped_end(s);
  s.insulation_wings(rear_wings, Wings::closed);
  s.seal(15.3);
  s.point_out(rear_wings + 1.4, 0, 2.5);
}

void bad_strands(FittingSketch& s) {
  s.contact_body(0.2);
  draw_stray_strands(s);
  s.seal(rear_wings);
  s.insulation_wings(rear_wings, Wings::closed, 2.0);
}

void bad_insulation(FittingSketch& s) {
  s.contact_body(0.2);
  draw_wings_on_insulation(s);
  s.seal(rear_wings + 0.2);
  s.insulation_wings(rear_wings + 0.2, Wings::closed, 2.0);
}

}  // namespace

const FittingProcedure& sealed_procedure() {
  static const FittingProcedure procedure{{{"lock_out", lock_out},
                                           {"seal_on", seal_on},
                                           {"strip", strip_behind_seal},
                                           {"lay_sealed", lay},
                                           {"conductor", conductor},
                                           {"seal_wings", seal_wings},
                                           {"look", look_at_it},
                                           {"way_up", draw_way_up},
                                           {"push", push},
                                           {"tug", draw_tug},
                                           {"lock_back", lock_back},
                                           {"plug", plug}},
                                          {{Verdict::good, "good_sealed", sealed_contact},
                                           {Verdict::bad, "bad_seal_reversed", bad_seal_reversed},
                                           {Verdict::bad, "bad_seal_cut", bad_seal_cut},
                                           {Verdict::bad, "bad_strands_out", bad_strands},
                                           {Verdict::bad, "bad_insulation_under", bad_insulation},
                                           {Verdict::bad, "bad_seal_loose", bad_no_seal_grip}}};
  return procedure;
}

}  // namespace loomfolio
