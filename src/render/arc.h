// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>

#include "sheets/sheet.h"

namespace loomfolio {

/// Degrees that an arc turns through, clockwise: more than 0, at most 360. An end before its start goes once round.
inline double sweep_of(const PathArc& arc) {
  const double turn = arc.to_degrees - arc.from_degrees;
  if (turn >= 360) return 360;
  const double rest = std::fmod(turn, 360);
  return rest < 0 ? rest + 360 : rest;
}

/// A whole circle stands for itself: no line leads to it from what was drawn before.
inline bool is_whole_circle(const PathArc& arc) { return sweep_of(arc) >= 360; }

}  // namespace loomfolio
