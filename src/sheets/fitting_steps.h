// SPDX-License-Identifier: MIT
// How each kind of wire end is made, a figure a step; and good and bad ones side by side.
#pragma once

#include <string>
#include <vector>

#include "sheets/fitting_picture.h"
#include "sheets/fitting_sketch.h"

namespace loomfolio {

/// Figures of steps, and of good and bad ones, are drawn about twice true size, three in a row.
inline constexpr double step_scale = 1.95, verdict_scale = 2.2;
/// Of a step's figure, and of one of the good and bad ones.
inline constexpr Millimetres step_figure_height(25.5), verdict_figure_height(17.5);

/// What the figures and sentences of a fitting's steps say of the wires that it is used on.
struct FittingFacts {
  const Wire& wire;        ///< the one drawn
  double strip = 5;        ///< mm, as drawn
  std::string strip_text;  ///< '5 mm (0.2 in)'
  std::string tug_text;    ///< '71 N (7 kg)'; empty: not known
  std::string click;       ///< the word that a figure shows where it clicks
};

struct FittingStep {
  std::string key;  ///< of its sentence
  void (*draw)(FittingSketch& sketch, const FittingFacts& facts);
};

enum class Verdict : std::uint8_t { good, bad };
struct FittingExample {
  Verdict verdict;
  std::string key;  ///< of its sentence
  void (*draw)(FittingSketch& sketch);
};

/// Steps in order of work, one action each; good examples before bad ones, none where there is nothing to judge.
struct FittingProcedure {
  std::vector<FittingStep> steps;
  std::vector<FittingExample> examples;
  double example_scale = verdict_scale;
  /// Where several wires share one: what is otherwise then, and how that goes wrong.
  std::vector<FittingStep> shared = {};
  std::vector<FittingExample> shared_examples = {};
};

const FittingProcedure& fitting_procedure(FittingShape shape);

// Each family has a file of its own.
const FittingProcedure& sealed_procedure();
const FittingProcedure& contact_procedure();
const FittingProcedure& blade_procedure();
const FittingProcedure& bullet_procedure();
const FittingProcedure& ring_procedure();
const FittingProcedure& splice_procedure();
const FittingProcedure& lead_procedure();
const FittingProcedure& cap_procedure();
const FittingProcedure& bare_procedure();

}  // namespace loomfolio
