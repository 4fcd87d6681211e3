// SPDX-License-Identifier: MIT
#include "layout/streets.h"

namespace loomfolio::laying {

Streets make_streets(const Plan& plan) {
  Streets s;
  s.row_bodies.resize(plan.rows.size());
  s.alleys.resize(plan.bodies.size() + plan.rows.size());
  for (int r = 0; r < static_cast<int>(plan.rows.size()); ++r) {
    int left = -1;
    for (const auto& column : plan.rows[r])
      for (int b : column) {
        s.row_bodies[r].push_back(b);
        s.alleys[alley_right_of(plan, r, left)] = {r, left, b};
        left = b;
      }
    s.alleys[alley_right_of(plan, r, left)] = {r, left, -1};
  }
  return s;
}

}  // namespace loomfolio::laying
