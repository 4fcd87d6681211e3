// SPDX-License-Identifier: MIT
// Current through one branch for a given voltage over it, and how steeply it changes. All laws but constant power rise with
// voltage, so that a circuit of them has one answer.
#pragma once

#include "solve/circuit.h"

namespace loomfolio {

/// Bare numbers: this is where the matrix begins. Amperes and siemens.
struct Working {
  double amperes = 0;
  double siemens = 0;
};

inline constexpr double least_branch_ohms = 1e-6;  ///< ohm: a branch that has less counts as this

/// At `volts` over the branch, a minus b.
Working work(const Branch& branch, double volts);

/// A straight line to start from, as amperes at 0 V and slope: filaments hot, generators holding their voltage, diodes shut.
Working starting_line(const Branch& branch);

/// Whether the law bends: anything but a conductor.
inline bool is_bent(Law law) { return law != Law::conductor; }

/// Volts at which a filament's hot law meets its cold resistance.
double cold_knee(const Branch& lamp);

/// Exponential diode: saturation current and the volts in its exponent, set so that it drops `Branch::volts` at 1 A.
inline constexpr double diode_saturation = 1e-12;  ///< A
inline constexpr double diode_leak = 1e-9;         ///< S, beside the junction
double diode_scale(const Branch& diode);

}  // namespace loomfolio
