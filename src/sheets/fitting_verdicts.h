// SPDX-License-Identifier: MIT
// Good and bad crimps of open barrels. What is wrong is drawn larger than life and has a ring round it, so that it is seen
// at arm's length and in grey. And what several wires in one barrel need.
#pragma once

#include <vector>

#include "sheets/fitting_strokes.h"

namespace loomfolio {

// The wire's end behind the mating part, which is drawn before.
void draw_good_end(FittingSketch& sketch);
void draw_stray_strands(FittingSketch& sketch);
void draw_wings_on_insulation(FittingSketch& sketch);
void draw_short_strands(FittingSketch& sketch);
void draw_open_grip(FittingSketch& sketch);

// Likewise with several wires: side by side, all strands in the front wings, all insulations in the rear ones. After
// NASA-STD-8739.4: parallel, not twisted; that the rear wings hold all is common practice, no source.
void draw_shared_strip(FittingSketch& sketch, const FittingFacts& facts);
void draw_shared_lay(FittingSketch& sketch);
void draw_shared_crimp(FittingSketch& sketch);
void draw_shared_stray(FittingSketch& sketch);
void draw_shared_grip(FittingSketch& sketch);
void bad_twisted(FittingSketch& sketch);

template <BodyDrawer Body, BodyDrawer End>
void draw_example(FittingSketch& s) {
  Body(s);
  End(s);
}
template <BodyDrawer Body, BodyDrawer End>
void draw_shared_step(FittingSketch& s, const FittingFacts&) {
  Body(s);
  End(s);
}

/// Open barrels fail alike, whatever they mate with.
template <BodyDrawer Body>
std::vector<FittingExample> open_examples() {
  return {{Verdict::good, "good_open", draw_example<Body, draw_good_end>},
          {Verdict::bad, "bad_strands_out", draw_example<Body, draw_stray_strands>},
          {Verdict::bad, "bad_insulation_under", draw_example<Body, draw_wings_on_insulation>},
          {Verdict::bad, "bad_short", draw_example<Body, draw_short_strands>},
          {Verdict::bad, "bad_loose_grip", draw_example<Body, draw_open_grip>}};
}

template <BodyDrawer Body>
std::vector<FittingStep> shared_steps() {
  return {{"shared_strip", draw_shared_strip},
          {"shared_lay", draw_shared_step<Body, draw_shared_lay>},
          {"shared_tug", draw_shared_step<Body, draw_shared_crimp>}};
}
template <BodyDrawer Body>
std::vector<FittingExample> shared_examples() {
  return {{Verdict::bad, "bad_shared_out", draw_example<Body, draw_shared_stray>},
          {Verdict::bad, "bad_shared_grip", draw_example<Body, draw_shared_grip>},
          {Verdict::bad, "bad_splice_twisted", bad_twisted}};
}

}  // namespace loomfolio
