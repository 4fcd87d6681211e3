// SPDX-License-Identifier: MIT
// How each kind of wire end is made, a figure a step; and good and bad ones side by side.
#pragma once

#include <string>
#include <vector>

#include "sheets/fitting_picture.h"
#include "sheets/fitting_sketch.h"

namespace loomfolio {

/// Figures of steps are drawn one and a half times true size, those of good and bad ones a little smaller.
inline constexpr double step_scale = 1.5, verdict_scale = 1.3;

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

/// In order of work; empty for shapes that need none.
const std::vector<FittingStep>& fitting_steps(FittingShape shape);

enum class Verdict : std::uint8_t { good, bad };
struct FittingExample {
  Verdict verdict;
  std::string key;  ///< of its sentence
  void (*draw)(FittingSketch& sketch);
};

/// Good ones first.
const std::vector<FittingExample>& fitting_examples(FittingShape shape);

}  // namespace loomfolio
