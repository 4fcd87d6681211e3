// SPDX-License-Identifier: MIT
// What lets the starter turn, proved before there is power: where the way to earth opens and closes with gear, clutch
// and stand.
#pragma once

#include <vector>

#include "model/build.h"

namespace loomfolio {

enum class ColdReading : std::uint8_t { open, beeps, diode };

/// Red probe on the wire at `at`, its part unplugged, black on bare frame, all fuses out, the switches as `settings` say.
struct InterlockTest {
  TerminalId at;
  std::vector<Setting> settings;  ///< without the key, which does not matter then
  ColdReading shows = ColdReading::open;
};

/// One a situation in which the starter's button is pressed, at that terminal of a relay or control unit that is earthed
/// in those where the starter must turn and open in those where it must not; of several the one of least ohms. Empty where no terminal is so: an
/// interlock in the supply, or none.
std::vector<InterlockTest> find_interlock_tests(const Build& build);

}  // namespace loomfolio
