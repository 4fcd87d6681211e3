// SPDX-License-Identifier: MIT
// Which meter readings prove a build, situation by situation: each consumer once, in the first situation in which it
// works.
#pragma once

#include <string>
#include <vector>

#include "sheets/figures.h"

namespace loomfolio {

/// A reading with the black probe on the battery's earthed pole.
struct ExpectedReading {
  InsideRef consumer;
  Expected state = Expected::on;  ///< how it works then
  TerminalId feed;                ///< red probe here
  Volts feed_volts;
  TerminalId back;  ///< its return; unset when it is inside the part
  Volts back_volts;
};

struct SituationReadings {
  SituationId situation;
  std::vector<ExpectedReading> readings;  ///< of consumers that no earlier situation proved
  std::vector<InsideRef> stay_off;        ///< what the spec says must be off there
};

/// By situation, in order; empty without solutions.
std::vector<SituationReadings> find_readings(const SolvedBuild& solved);

}  // namespace loomfolio
