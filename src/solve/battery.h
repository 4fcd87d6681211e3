// SPDX-License-Identifier: MIT
// The battery's household: does the generator keep up, how long may the machine stand, does the starter get its volts.
#pragma once

#include <optional>
#include <vector>

#include "solve/solution.h"

namespace loomfolio {

/// A situation with the engine running. All currents without sign but `battery`.
struct ChargeBalance {
  SituationId situation;
  Amperes given{0};     ///< by all chargers
  Amperes most{0};      ///< that they can give; 0: no limit stated
  Amperes loads{0};     ///< what everything but the battery takes
  Amperes battery{0};   ///< into the battery; negative: it is being drained
  Volts at_battery{0};
};

/// Engine stopped, every switch at rest.
struct RestDrain {
  Amperes drain{0};
  AmpereHours capacity{0};   ///< 0: no battery states one
  Amperes self{0};           ///< what the battery loses by itself: 3 % of its capacity a month
  double days_to_half = 0;   ///< by the drain alone, to half charge: about where it no longer cranks (common practice); infinite: no drain
  double least_charge = 0.5; ///< share of charge below which the poles sag under `electrics.cranking` while a situation cranks, battery at
                             ///< 25 degC, up to the next tenth; 0.5 (common practice) where none cranks
  double days_to_no_crank = 0;  ///< from full to that, by the drain and 3 % a month of self-discharge
  double days_standing = 0;  ///< the same with self-discharge of 3 % a month (trade page, the most of 1 to 3 % for sealed batteries)
};

/// A situation with the engine cranking, with a warm and a cold battery (25 and -18 degC).
struct CrankingVolts {
  SituationId situation;
  InsideRef motor;
  Amperes warm_amperes{0}, cold_amperes{0};
  Volts warm_battery{0}, cold_battery{0};  ///< at the poles
  Volts warm_motor{0}, cold_motor{0};      ///< over the motor
  Volts feed_drop{0}, return_drop{0};      ///< warm: battery's live pole to motor, motor to earthed pole
};

struct BatteryStudy {
  std::vector<ChargeBalance> riding;
  std::optional<RestDrain> rest;  ///< unset: no battery
  std::vector<CrankingVolts> cranking;
};

BatteryStudy study_battery(const Build& build, const std::vector<Solution>& solutions);

/// Days for a drain to empty half of a capacity.
double days_to_half(AmpereHours capacity, Amperes drain);

/// Rest volts of a 12 V lead-acid battery hours after charge or load, by share of charge (0 .. 1): straight between the rows of a
/// trade table (flooded) and of an owner's manual (sealed); half for 6 V. Not finer than a tenth of the charge.
enum class BatteryType : std::uint8_t { flooded, sealed };
Volts rest_volts(BatteryType type, double charge, Volts nominal);
double charge_from_rest_volts(BatteryType type, Volts volts, Volts nominal);

}  // namespace loomfolio
