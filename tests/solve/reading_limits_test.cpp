// SPDX-License-Identifier: MIT
#include "solve/reading_limits.h"

#include <doctest/doctest.h>

#include <cmath>

#include "solve/machine_maker.h"

using namespace loomfolio;
using namespace loomfolio::test;

TEST_CASE(
    "what the solved machine reads lies between the limits, and they are no wider than a battery and its joints make "
    "them") {
  const BuildMaker m = make_machine(1, 2);
  for (const Solution& solution : solve_all(m.build)) {
    const ReadingLimits limits = find_reading_limits(m.build, solution);
    for (std::size_t t = 0; t < limits.least.size(); ++t) {
      const double volts = solution.terminal_volts[t].number();
      if (std::isnan(volts)) continue;
      CHECK(limits.least[t].number() < volts);
      CHECK(limits.most[t].number() > volts);
      CHECK(limits.most[t].number() - limits.least[t].number() < 3.5);
    }
  }
}

TEST_CASE(
    "at rest the battery's pole may read what the trade table gives for three quarters charge, less the meter's "
    "error") {
  const BuildMaker m = make_machine(1, 2);
  const Solution rest = solve_situation(m.build, SituationId{0});
  const ReadingLimits limits = find_reading_limits(m.build, rest);
  double highest = 0, least = 0, most = 0;
  for (std::size_t t = 0; t < limits.least.size(); ++t)
    if (rest.terminal_volts[t].number() > highest)
      highest = rest.terminal_volts[t].number(), least = limits.least[t].number(), most = limits.most[t].number();
  // 12.7 V full, 12.4 V at three quarters (trade table): 0.3 V less; the meter half a per cent and two digits more.
  CHECK(std::abs(least - (highest - 0.3 - 0.005 * (highest - 0.3) - 0.02)) < 0.02);
  // Fresh from the charger a sealed battery rests at 12.9 to 13.1 V: common practice, no source.
  CHECK(std::abs(most - (highest + 0.5 + 0.005 * (highest + 0.5) + 0.02)) < 0.02);
}
