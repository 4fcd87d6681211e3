// SPDX-License-Identifier: MIT
// Which meter readings prove a build, situation by situation: each consumer once for each way by which it is fed, and
// each charger at the battery.
#pragma once

#include <string>
#include <vector>

#include "sheets/figures.h"

namespace loomfolio {

/// A reading with the black probe on the battery's earthed pole.
struct ExpectedReading {
  InsideRef consumer;             ///< or a charger, which is read at the battery's live pole
  Expected state = Expected::on;  ///< how it works then
  TerminalId feed;                ///< red probe here
  Volts feed_volts;
  TerminalId back;  ///< its return; unset when it is inside the part
  Volts back_volts;
  std::vector<InsideRef> way;  ///< switches and contacts that its current passes, and those of the relays on the way
};

/// Whether a gear is in while it is tested: the rear wheel may turn.
enum class Gear : std::uint8_t { neutral, in };

struct SituationReadings {
  SituationId situation;
  std::vector<Setting> settings;  ///< as tested: in neutral where nothing tested depends on the gear
  Gear gear = Gear::neutral;
  std::vector<ExpectedReading> readings;  ///< of consumers that no earlier situation proved; motors each time
  std::vector<InsideRef> stay_off;        ///< what the spec says must be off there
  Solution solution;                      ///< of the build as tested
};

/// By situation, in order; empty without solutions. Solves a situation anew to see whether it needs its gear.
std::vector<SituationReadings> find_readings(const SolvedBuild& solved);

/// The build with that situation as it is tested.
Build as_tested(const Build& build, const SituationReadings& readings);

}  // namespace loomfolio
