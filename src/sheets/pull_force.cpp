// SPDX-License-Identifier: MIT
#include "sheets/pull_force.h"

#include <array>

namespace loomfolio {
namespace {

struct PullRow {
  std::string_view gauge;
  double area;    ///< mm2
  double pounds;  ///< lbf
};

// UL 486A; 10 AWG and larger as restated in makers' data sheets.
constexpr std::array<PullRow, 15> pull_rows{{{"26 AWG", 0.13, 3},
                                             {"24 AWG", 0.2, 5},
                                             {"22 AWG", 0.324, 8},
                                             {"20 AWG", 0.519, 13},
                                             {"18 AWG", 0.823, 20},
                                             {"16 AWG", 1.31, 30},
                                             {"14 AWG", 2.08, 50},
                                             {"12 AWG", 3.31, 70},
                                             {"10 AWG", 5.261, 80},
                                             {"8 AWG", 8.367, 90},
                                             {"6 AWG", 13.3, 100},
                                             {"4 AWG", 21.15, 140},
                                             {"2 AWG", 33.6, 180},
                                             {"1/0 AWG", 53.5, 250},
                                             {"2/0 AWG", 67.4, 300}}};

constexpr double newtons_per_pound = 4.4482216;
/// Areas of one gauge differ by a few per cent from table to table.
constexpr double same_gauge = 1.03;

}  // namespace

std::optional<PullForce> pull_force(SquareMillimetres area) {
  std::optional<PullForce> found;
  for (const PullRow& row : pull_rows)
    if (row.area <= area.number() * same_gauge)
      found = PullForce{row.gauge, SquareMillimetres(row.area), row.pounds * newtons_per_pound, row.pounds};
  return found;
}

}  // namespace loomfolio
