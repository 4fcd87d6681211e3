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

/// The build with every fuse pulled.
Build with_fuses_out(Build build);

/// Diodes that a meter reaches from outside: both ends are terminals.
std::vector<InsideRef> find_diodes(const Build& build);

/// '0.35 ohm sign', '4.2', '200', '1.5 k': two to three figures, with the sign.
std::string print_ohms(Ohms ohms);

/// What a beeping meter may show at most where so much is solved: half an ohm for leads and meter, in steps of a half.
Ohms beep_limit(double ohms);

/// What a meter shows at least where nothing is shorted, told so that a person remembers it: 1, 2, 5, 10 ... not above
/// 1 kilohm, since a short reads under an ohm. Three tenths are left for parts as they come and filaments cold and warm.
Ohms sound_floor(Ohms sound);

/// Cables on the battery's earthed pole.
struct EarthedCables {
  std::vector<WireId> all;
  std::vector<WireId> straps;  ///< those that reach frame or engine without the others
  bool has_others = false;     ///< the machine's own, which the build does not show
};
EarthedCables find_earthed_cables(const Build& build);

/// The wires from a terminal to the metal that earths it, over connectors and splices; empty when there is no such way.
std::vector<WireId> way_to_earth(const Build& build, TerminalId from);

}  // namespace loomfolio
