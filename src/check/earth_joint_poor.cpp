// SPDX-License-Identifier: MIT
// A frame return above 5 mohm, the most that the FAA handbook allows from an earth point to any device.

#include "base/text.h"
#include "check/rules.h"

namespace loomfolio::rules {

constexpr Ohms most_frame_return{0.005};

void earth_joint_poor(const Facts& facts, Diagnostics& findings) {
  for (const Earth& earth : facts.build.earths) {
    if (!earth.resistance || *earth.resistance <= most_frame_return) continue;
    findings.push_back(make_diagnostic(DiagnosticId::earth_joint_poor, earth.origin.key("resistance"),
                                       "earth `" + earth.id + "` returns through " +
                                           shortest(earth.resistance->number() * 1000, 1) +
                                           " mohm of frame; 5 mohm is the most for an earth",
                                       "run an earth wire to the battery instead of using the frame"));
  }
}

}  // namespace loomfolio::rules
