// SPDX-License-Identifier: MIT
// How hard a crimp must hold when a spare is pulled apart.
#pragma once

#include <optional>
#include <string_view>

#include "base/quantity.h"

namespace loomfolio {

/// m/s2, by definition: what a hung weight pulls with.
inline constexpr double standard_gravity = 9.80665;

/// A row of the table: the wire's gauge and the least force, in newtons and in pounds-force.
struct PullForce {
  std::string_view gauge;
  SquareMillimetres area;
  double newtons = 0, pounds = 0;
};

/// The row for the next smaller gauge, so that no more is asked than the standard asks; nothing under 26 AWG.
/// Source: UL 486A, pull-out of copper conductors from crimped connectors.
std::optional<PullForce> pull_force(SquareMillimetres area);

}  // namespace loomfolio
