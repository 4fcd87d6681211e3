// SPDX-License-Identifier: MIT
// Figures are 27 mm of the thing wide. Lengths of fittings are those of common ones, from memory; what counts, the
// strip length, comes from the facts.
#include "sheets/fitting_steps.h"

namespace loomfolio {
namespace {

using namespace fitting_paint;
using Sketch = FittingSketch;
using Facts = FittingFacts;

constexpr double right = 27;  ///< edge of a figure
constexpr double barrel = 8;  ///< where the conductor wings of a blade or contact begin

// ---- what many share
// ---------------------------------------------------------------------------------------------------

void draw_strip(Sketch& s, const Facts& f) {
  const double end = 6 + f.strip;
  s.strands(6, end);
  s.wire(end, right);
  s.dimension(6, end, 3.4, f.strip_text);
}

void draw_sleeve_on(Sketch& s, const Facts&) {
  s.wire(4, right);
  s.box(14, 2.6, 9, look::band_dark, 0.8);
  s.arrow(8, -4, 15, -4);
}

void tail(Sketch& s) { s.wire(barrel + 5.2, right); }

void draw_wire_in(Sketch& s, Wings conductor, Wings insulation) {
  if (insulation == Wings::open) s.insulation_wings(barrel + 4.6, Wings::open);
  tail(s);
  s.strands(barrel - 0.5, barrel + 5.2);
  s.conductor_wings(barrel, conductor);
  if (insulation == Wings::closed) s.insulation_wings(barrel + 4.6, Wings::closed);
}

void press(Sketch& s, double x) {
  s.arrow(x, -6.4, x, -3.2);
  s.arrow(x, 6.4, x, 3.2);
}

void draw_tug(Sketch& s, const Facts& f) {
  s.box(0, 4.4, 13, housing, 0.6);
  s.wire(13, 21);
  s.arrow(21, 0, 26.6, 0);
  if (!f.tug_text.empty()) s.label(20, 5.4, f.tug_text);
}

// ---- blade
// -------------------------------------------------------------------------------------------------------------

void blade_conductor(Sketch& s, const Facts&) {
  s.blade_body(0.2);
  draw_wire_in(s, Wings::closed, Wings::open);
  press(s, barrel + 1.5);
}
void blade_insulation(Sketch& s, const Facts&) {
  s.blade_body(0.2);
  draw_wire_in(s, Wings::closed, Wings::closed);
  press(s, barrel + 5.8);
}
void blade_push(Sketch& s, const Facts& f) {
  s.slab(0, -1.6, 6, 1.6, dark_metal, 0.2);
  s.box(7, 3.2, 11, look::band_dark, 0.8);
  s.wire(18, right);
  s.arrow(16, -5, 8, -5);
  s.label(19, -4.4, f.click, Align::left);
}

// ---- contacts of connectors
// --------------------------------------------------------------------------------------------

void contact_conductor(Sketch& s, const Facts&) {
  s.contact_body(0.2);
  draw_wire_in(s, Wings::closed, Wings::open);
  press(s, barrel + 1.5);
}
void contact_insulation(Sketch& s, const Facts&) {
  s.contact_body(0.2);
  draw_wire_in(s, Wings::closed, Wings::closed);
  press(s, barrel + 5.8);
}

/// The housing cut open. Its lock slopes towards the entry at the right, so that the tongue slides under it, and stands
/// upright behind the tongue of a contact that is home.
void housing(Sketch& s, double x) {
  s.slab(x, -5, 15, -2.4, fitting_paint::housing, 0.4);
  s.slab(x, 2.4, 15, 5, fitting_paint::housing, 0.4);
  s.shape({{x + 7.6, -2.4}, {x + 7.6, -1.5}, {x + 9, -2.4}}, look::ink);
}
void contact_way_up(Sketch& s, const Facts&) {
  housing(s, 0);
  s.contact_body(16.5);
  s.wire(24, right);
  s.arrow(21.6, -6.4, 21.6, -3);
}
void contact_push(Sketch& s, const Facts& f) {
  housing(s, 0);
  s.contact_body(1);
  s.strands(8.6, 14, 0.5);
  s.conductor_wings(9, Wings::closed);
  s.insulation_wings(13.4, Wings::closed);
  s.wire(15.8, right);
  s.arrow(26, -3.6, 18, -3.6);
  s.label(22, -4.6, f.click);
}

// ---- sealed
// ------------------------------------------------------------------------------------------------------------

void sealed_lock_out(Sketch& s, const Facts&) {
  s.box(4, 5, 13, fitting_paint::housing, 0.8);
  for (const double y : {-2.4, 2.4}) s.disc(13.5, y, 1.4, look::paper);
  s.slab(19.5, -4, 2.4, 4, rubber, 0.4);
  s.line(17, -3, 19.5, -3);
  s.line(17, 3, 19.5, 3);
  s.arrow(20.7, -5.2, 26, -5.2);
}
void sealed_seal_on(Sketch& s, const Facts&) {
  s.wire(4, right);
  s.seal(13);
  s.arrow(5, -4.6, 12, -4.6);
}
void sealed_strip(Sketch& s, const Facts& f) {
  const double end = 4 + f.strip;
  s.strands(4, end);
  s.wire(end, right);
  s.seal(end + 4);
  s.dimension(4, end, 3.4, f.strip_text);
}
void sealed_conductor(Sketch& s, const Facts&) {
  s.contact_body(0.2);
  draw_wire_in(s, Wings::closed, Wings::open);
  s.seal(18.6);
  press(s, barrel + 1.5);
}
void sealed_seal_wings(Sketch& s, const Facts&) {
  s.contact_body(0.2);
  tail(s);
  s.strands(barrel - 0.5, barrel + 5.2);
  s.conductor_wings(barrel, Wings::closed);
  s.seal(12.6);
  s.insulation_wings(12.6, Wings::closed, 2.0);
  press(s, 13.8);
}
void sealed_push(Sketch& s, const Facts& f) {
  housing(s, 0);
  s.contact_body(1);
  s.strands(8.6, 12, 0.5);
  s.conductor_wings(8.8, Wings::closed);
  s.wire(13, right);
  s.seal(12);
  s.arrow(26, -3.8, 20, -3.8);
  s.label(24, -4.8, f.click);
}
void sealed_lock_back(Sketch& s, const Facts& f) {
  s.box(4, 5, 13, fitting_paint::housing, 0.8);
  for (const double y : {-2.4, 2.4}) s.disc(12.5, y, 1.4, copper);
  s.slab(15.4, -4, 1.6, 4, rubber, 0.3);
  s.arrow(25, 0, 18, 0);
  s.label(22, -1.8, f.click);
}
void sealed_plug(Sketch& s, const Facts&) {
  s.box(0.5, 5, 11, fitting_paint::housing, 0.8);
  s.disc(6, -2.4, 1.4, copper);
  s.disc(6, 2.4, 1.4, look::paper);
  s.slab(15, 1.2, 5, 3.6, rubber, 0.4);
  for (const double x : {15.4, 17.2}) s.slab(x, 0.7, 1, 4.1, rubber, 0.3);
  s.slab(20, 0.4, 1.4, 4.4, rubber, 0.3);
  s.arrow(26, 6, 17, 6);
}

// ---- ring
// --------------------------------------------------------------------------------------------------------------

void ring_crimp(Sketch& s, const Facts&) {
  s.wire(14.6, right);
  s.ring(0.2);
  s.box(11.2, 0.8, 1.4, dark_metal, 0.3);
  press(s, 11.9);
}
void ring_strip(Sketch& s, const Facts&) {
  s.wire(17, right);
  s.strands(10, 17);
  s.line(9.4, 2.6, 14.4, 2.6);
  s.line(9.4, 2, 9.4, 3.2);
  s.line(14.4, 2, 14.4, 3.2);
  s.slab(9.4, 3.6, 5, 6.4, metal, 0.4);
}
void ring_shrink(Sketch& s, const Facts&) {
  s.wire(14.6, right);
  s.ring(0.2);
  s.box(9.6, 2, 10, look::band_dark, 1);
  for (const double x : {11.0, 14.0, 17.0}) s.arrow(x, 6.6, x, 3);
}
void ring_clean(Sketch& s, const Facts&) {
  s.slab(2, 1, 24, 5, metal, 0);
  s.slab(2, -0.2, 8, 1, look::band_dark, 0);
  s.slab(18, -0.2, 8, 1, look::band_dark, 0);
  s.line(11, 1, 17, 1, false);
  s.arrow(10.6, -2.4, 17.6, -2.4);
  s.arrow(17.4, -4, 10.4, -4);
}
void ring_bolt(Sketch& s, const Facts&) {
  s.slab(2, 2, 24, 5.4, metal, 0);
  s.slab(8, 0.9, 12, 2, dark_metal, 0.2);
  s.wire(20, right, 1.2);
  s.slab(9.4, -0.3, 9, 0.9, look::paper, 0.2);
  s.slab(10.4, -3.4, 7, -0.3, metal, 0.6);
  s.line(14, -3.4, 14, -0.3);
  s.arrow(9, -5, 19, -5);
}

// ---- bullet
// ------------------------------------------------------------------------------------------------------------

void bullet_body(Sketch& s) {
  s.box(0.6, 1.6, 6.8, metal, 1.5);
  s.box(5.2, 1.6, 1.2, dark_metal, 0.2);
}
void bullet_conductor(Sketch& s, const Facts&) {
  bullet_body(s);
  draw_wire_in(s, Wings::closed, Wings::open);
  press(s, barrel + 1.5);
}
void bullet_insulation(Sketch& s, const Facts&) {
  bullet_body(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
  press(s, barrel + 5.8);
}
void bullet_push(Sketch& s, const Facts& f) {
  s.box(0, 3, 10, look::band_dark, 1);
  s.box(1, 1.9, 9, dark_metal, 0.4);
  s.box(11, 1.6, 3, metal, 0.8);
  s.box(13, 2.6, 7, look::band_dark, 0.8);
  s.wire(20, right);
  s.arrow(20, -5, 12, -5);
  s.label(22, -4.4, f.click, Align::left);
}

// ---- splice
// ------------------------------------------------------------------------------------------------------------

void splice_sleeve(Sketch& s, const Facts&) {
  s.wire(0, 8);
  s.strands(8, 12);
  s.strands(15, 19);
  s.wire(19, right);
  s.box(20, 2.6, 6.8, look::band_dark, 0.8);
  s.arrow(17, -4.6, 22, -4.6);
}
void splice_lay(Sketch& s, const Facts&) {
  s.wire(0, 9);
  s.wire(19, right);
  s.strands(9, 19, 0.8);
  s.slab(10, 0.8, 8, 2.2, metal, 0.4);
  s.line(10.2, 0.8, 10.2, -2.6, false);
  s.line(17.8, 0.8, 17.8, -2.6, false);
}
void splice_crimp(Sketch& s, const Facts&) {
  s.wire(0, 9);
  s.wire(19, right);
  s.strands(9, 19, 0.8);
  s.box(10, 1.7, 8, metal, 0.5);
  s.box(11.4, 0.9, 1.4, dark_metal, 0.3);
  s.box(15.2, 0.9, 1.4, dark_metal, 0.3);
  press(s, 14);
}
void splice_shrink(Sketch& s, const Facts&) {
  s.wire(0, right);
  s.box(5, 2.4, 18, look::band_dark, 1.4);
  s.disc(5, 1, 0.6, rubber);
  s.disc(23, 1, 0.6, rubber);
  for (const double x : {9.0, 14.0, 19.0}) s.arrow(x, 6.6, x, 3.4);
}

// ---- lead, cap, bare
// ---------------------------------------------------------------------------------------------------

void lead_match(Sketch& s, const Facts&) {
  s.box(0, 0.9, 9, look::band_dark, 0);
  s.strands(9, 12);
  s.strands(16, 19);
  s.wire(19, right);
  s.arrow(10, -4, 14, -4);
  s.arrow(18, -4, 14.2, -4);
}
void lead_join(Sketch& s, const Facts&) {
  s.box(0, 0.9, 8, look::band_dark, 0);
  s.wire(20, right);
  s.box(7, 2.4, 14, look::band, 0.8);
  s.box(9, 1.5, 4.6, metal, 1.4);
  s.box(14.2, 1.5, 4.6, metal, 0.4);
}
void cap_push(Sketch& s, const Facts& f) {
  s.box(0, 1.4, 5, dark_metal, 0.4);
  s.box(6, 3.4, 10, look::band_dark, 2);
  s.wire(16, right, 3.4);
  s.arrow(16, -5.4, 8, -5.4);
  s.label(18, -4.8, f.click, Align::left);
}
void bare_clamp(Sketch& s, const Facts&) {
  s.slab(2, 0.8, 9, 3, metal, 0.3);
  s.slab(2, -3, 9, -0.8, metal, 0.3);
  s.strands(3, 13, 0.5);
  s.wire(12.5, right);
  s.arrow(6.5, -6.6, 6.5, -3.4);
}

// ---- good and bad
// ------------------------------------------------------------------------------------------------------

using BodyDrawer = void (*)(Sketch&);
void contact_at_left(Sketch& s) { s.contact_body(0.2); }
void blade_at_left(Sketch& s) { s.blade_body(0.2); }

template <BodyDrawer Body>
void good_open(Sketch& s) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
}
template <BodyDrawer Body>
void bad_strands_out(Sketch& s) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::closed);
  s.line(barrel + 3.2, -0.4, barrel + 0.4, -2.8, false);
  s.line(barrel + 3.2, -0.4, barrel + 1.4, -3.2, false);
}
template <BodyDrawer Body>
void bad_insulation_under(Sketch& s) {
  Body(s);
  s.wire(barrel + 1, right);
  s.strands(barrel - 0.2, barrel + 1.2);
  s.box(barrel, 1.5, 3, metal, 0.5);
  s.line(barrel + 1.5, -1.5, barrel + 1.5, 1.5);
  s.insulation_wings(barrel + 4.6, Wings::closed, 1.5);
}
template <BodyDrawer Body>
void bad_short(Sketch& s) {
  Body(s);
  s.wire(barrel + 5.2, right);
  s.strands(barrel + 1.8, barrel + 5.2);
  s.conductor_wings(barrel, Wings::closed);
  s.insulation_wings(barrel + 4.6, Wings::closed);
}
template <BodyDrawer Body>
void bad_loose_grip(Sketch& s) {
  Body(s);
  draw_wire_in(s, Wings::closed, Wings::open);
}
void bad_tongue(Sketch& s) {
  s.box(0.2, 1.3, 7.4, metal, 0.3);
  s.line(4.6, -1.4, 6.6, -1.4, false);
  draw_wire_in(s, Wings::closed, Wings::closed);
}
void good_sealed(Sketch& s) {
  s.contact_body(0.2);
  tail(s);
  s.strands(barrel - 0.5, barrel + 5.2);
  s.conductor_wings(barrel, Wings::closed);
  s.seal(12.6);
  s.insulation_wings(12.6, Wings::closed, 2.0);
}
void bad_seal_reversed(Sketch& s) {
  s.contact_body(0.2);
  tail(s);
  s.strands(barrel - 0.5, barrel + 5.2);
  s.conductor_wings(barrel, Wings::closed);
  s.seal(12.4, true);
}
void bad_seal_cut(Sketch& s) {
  good_sealed(s);
  s.line(12.2, -3.2, 13.4, 0.4, false);
  s.line(13.4, 0.4, 12.8, 0.8, false);
}
void good_ring(Sketch& s) {
  s.wire(14.6, right);
  s.ring(0.2);
  s.box(11.2, 0.8, 1.4, dark_metal, 0.3);
}
void bad_ring_edge(Sketch& s) {
  s.wire(14.6, right);
  s.ring(0.2);
  s.box(13.2, 0.8, 1.2, dark_metal, 0.3);
}
void bad_ring_short(Sketch& s) {
  s.wire(17.6, right);
  s.strands(14, 17.6);
  s.ring(0.2);
  s.box(11.2, 0.8, 1.4, dark_metal, 0.3);
}
void good_splice(Sketch& s) {
  s.wire(0, 9);
  s.wire(19, right);
  s.strands(8.5, 19.5, 0.8);
  s.box(10, 1.7, 8, metal, 0.5);
  s.box(11.4, 0.9, 1.4, dark_metal, 0.3);
  s.box(15.2, 0.9, 1.4, dark_metal, 0.3);
}
void bad_splice_twisted(Sketch& s) {
  s.wire(0, 7);
  s.wire(21, right);
  for (double x = 7; x < 21; x += 2) {
    s.line(x, -0.8, x + 2, 0.8, false);
    s.line(x, 0.8, x + 2, -0.8, false);
  }
  s.box(10, 1.7, 8, metal, 0.5);
}
void bad_splice_sleeve(Sketch& s) {
  good_splice(s);
  s.box(12, 2.6, 13, look::band_dark, 1);
}

enum class Tongue : std::uint8_t { none, locks };

/// Open barrels fail alike, whatever they mate with.
template <BodyDrawer Body>
std::vector<FittingExample> open_examples(Tongue tongue) {
  std::vector<FittingExample> examples{{Verdict::good, "good_open", good_open<Body>},
                                       {Verdict::bad, "bad_strands_out", bad_strands_out<Body>},
                                       {Verdict::bad, "bad_insulation_under", bad_insulation_under<Body>},
                                       {Verdict::bad, "bad_short", bad_short<Body>},
                                       {Verdict::bad, "bad_loose_grip", bad_loose_grip<Body>}};
  if (tongue == Tongue::locks) examples.push_back({Verdict::bad, "bad_tongue", bad_tongue});
  return examples;
}

}  // namespace

const std::vector<FittingStep>& fitting_steps(FittingShape shape) {
  static const std::vector<FittingStep> blade{{"blade_1", draw_sleeve_on},    {"strip", draw_strip},
                                              {"conductor", blade_conductor}, {"insulation", blade_insulation},
                                              {"blade_2", blade_push},        {"tug", draw_tug}};
  static const std::vector<FittingStep> contact{
      {"strip", draw_strip},      {"conductor", contact_conductor}, {"insulation", contact_insulation},
      {"way_up", contact_way_up}, {"push", contact_push},           {"tug", draw_tug}};
  static const std::vector<FittingStep> sealed{{"lock_out", sealed_lock_out},
                                               {"seal_on", sealed_seal_on},
                                               {"strip", sealed_strip},
                                               {"conductor", sealed_conductor},
                                               {"seal_wings", sealed_seal_wings},
                                               {"way_up", contact_way_up},
                                               {"push", sealed_push},
                                               {"tug", draw_tug},
                                               {"lock_back", sealed_lock_back},
                                               {"plug", sealed_plug}};
  static const std::vector<FittingStep> ring{{"ring_1", draw_sleeve_on}, {"ring_2", ring_strip}, {"ring_3", ring_crimp},
                                             {"ring_4", ring_shrink},    {"ring_5", ring_clean}, {"ring_6", ring_bolt}};
  static const std::vector<FittingStep> bullet{{"bullet_1", draw_sleeve_on},    {"strip", draw_strip},
                                               {"conductor", bullet_conductor}, {"insulation", bullet_insulation},
                                               {"bullet_2", bullet_push},       {"tug", draw_tug}};
  static const std::vector<FittingStep> splice{
      {"splice_1", splice_sleeve}, {"splice_2", splice_lay}, {"splice_3", splice_crimp}, {"splice_4", splice_shrink}};
  static const std::vector<FittingStep> lead{{"lead_1", lead_match}, {"lead_2", lead_join}, {"tug", draw_tug}};
  static const std::vector<FittingStep> cap{{"cap_1", cap_push}};
  static const std::vector<FittingStep> bare{{"strip", draw_strip}, {"bare_1", bare_clamp}};
  switch (shape) {
    case FittingShape::blade:
      return blade;
    case FittingShape::contact:
      return contact;
    case FittingShape::sealed:
      return sealed;
    case FittingShape::ring:
      return ring;
    case FittingShape::bullet:
      return bullet;
    case FittingShape::splice:
      return splice;
    case FittingShape::lead:
      return lead;
    case FittingShape::cap:
      return cap;
    case FittingShape::bare:
      return bare;
  }
  return bare;
}

const std::vector<FittingExample>& fitting_examples(FittingShape shape) {
  static const std::vector<FittingExample> contact = open_examples<contact_at_left>(Tongue::locks);
  static const std::vector<FittingExample> blade = open_examples<blade_at_left>(Tongue::none);
  static const std::vector<FittingExample> bullet = open_examples<bullet_body>(Tongue::none);
  static const std::vector<FittingExample> sealed{{Verdict::good, "good_sealed", good_sealed},
                                                  {Verdict::bad, "bad_seal_reversed", bad_seal_reversed},
                                                  {Verdict::bad, "bad_seal_cut", bad_seal_cut},
                                                  {Verdict::bad, "bad_strands_out", bad_strands_out<contact_at_left>}};
  static const std::vector<FittingExample> ring{{Verdict::good, "good_ring", good_ring},
                                                {Verdict::bad, "bad_ring_edge", bad_ring_edge},
                                                {Verdict::bad, "bad_ring_short", bad_ring_short}};
  static const std::vector<FittingExample> splice{{Verdict::good, "good_splice", good_splice},
                                                  {Verdict::bad, "bad_splice_twisted", bad_splice_twisted},
                                                  {Verdict::bad, "bad_splice_sleeve", bad_splice_sleeve}};
  static const std::vector<FittingExample> none;
  switch (shape) {
    case FittingShape::blade:
      return blade;
    case FittingShape::contact:
      return contact;
    case FittingShape::bullet:
      return bullet;
    case FittingShape::sealed:
      return sealed;
    case FittingShape::ring:
      return ring;
    case FittingShape::splice:
      return splice;
    case FittingShape::lead:
    case FittingShape::cap:
    case FittingShape::bare:
      return none;
  }
  return none;
}

}  // namespace loomfolio
