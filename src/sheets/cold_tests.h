// SPDX-License-Identifier: MIT
// What is measured in ohms before the battery is joined: insulation behind each fuse, and parts on their own.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"

namespace loomfolio {

/// Red probe behind a fuse, black on bare frame; battery and all fuses out, every switch at rest.
struct InsulationTest {
  InsideRef fuse;
  TerminalId at;        ///< the fuse's lower terminal
  bool is_open = true;  ///< the sound machine shows nothing
  bool beeps = false;   ///< so little that a beeper sounds although nothing is wrong
  Ohms least{0};        ///< that a sound machine shows; meaningless while `is_open`
};
std::vector<InsulationTest> find_insulation_tests(const Build& build);

/// A coil or winding whose resistance the spec or its kind states, across two terminals of its part.
struct PartOhms {
  InsideRef what;
  std::string first, second;  ///< marks of the terminals
  Ohms ohms{0}, least{0}, most{0};
};
std::vector<PartOhms> find_part_ohms(const Build& build);

/// '0.35 ohm sign', '4.2', '200', '1.5 k': two to three figures, with the sign.
std::string print_ohms(Ohms ohms);

}  // namespace loomfolio
