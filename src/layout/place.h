// SPDX-License-Identifier: MIT
// Choosing rows and the order in them, before any wire is routed.
#pragma once

#include <functional>

#include "layout/plan.h"

namespace loomfolio::laying {

/// Pass: a row for each body: supply above, earth below, as many rows as suit the wished shape of the sheet.
void rank_bodies(Plan& plan);

/// How far below the supply a body belongs: 0 supply, 40 earth.
int depth_of(const Plan& plan, int body);

/// Pass: order in rows, mirroring, and rows again, by moving single bodies and exchanging pairs while an estimate of
/// length and bends falls.
void arrange(Plan& plan);

enum class Start : std::uint8_t {
  filled,   ///< bodies in rows by rank alone
  arranged  ///< after `arrange`
};

/// How long and how widely places are searched.
struct Search {
  Start start = Start::arranged;
  std::size_t spots = 12;  ///< places tried for a body in each sweep
  int sweeps = 24;         ///< at most
};

/// Whether places as they stand after the first sweep are worth searching on.
using IsHopeless = std::function<bool(const Plan& plan)>;

/// Pass: places again, judged by a rough drawing with its crossings. False when they were hopeless: they stay as one sweep has left them.
bool refine(Plan& plan, const Search& search, const IsHopeless& is_hopeless = {});

/// The estimate: length, bends and flow against the current, with bodies at estimated places.
class PlacementEstimate {
 public:
  explicit PlacementEstimate(const Plan& plan);
  /// At least `bound` once it is known to be no less.
  long cost(const Plan& plan, long bound = INT64_MAX);

 private:
  struct Tie {
    int pin_a, pin_b;
  };
  void place(const Plan& plan);
  long cost_of(const Plan& plan, const Tie& tie) const;
  std::vector<Tie> ties_;  ///< one a wire
  std::vector<Grid> x_, y_, alley_;
};

}  // namespace loomfolio::laying
