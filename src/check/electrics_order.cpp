// SPDX-License-Identifier: MIT
// Battery volts that cannot be: at rest below cranking, running below rest, or far from nominal.
#include "check/rules.h"

namespace loomfolio::rules {

void electrics_order(const Facts& facts, Diagnostics& findings) {
  const Electrics& e = facts.build.electrics;
  const auto say_wrong = [&](std::string_view key, std::string message, std::string hint) {
    findings.push_back(
        make_diagnostic(DiagnosticId::electrics_order, e.origin.key(key), std::move(message), std::move(hint)));
  };
  if (e.cranking >= e.resting)
    say_wrong("cranking", "cranking volts of " + say(e.cranking) + " are not below the " + say(e.resting) + " at rest",
              "a battery sags when it cranks");
  if (e.running <= e.resting)
    say_wrong("running", "running volts of " + say(e.running) + " are not above the " + say(e.resting) + " at rest",
              "a battery is charged only above its volts at rest");
  const double share = e.resting / e.nominal;
  if (share < 0.9 || share > 1.2)
    say_wrong("resting", "resting volts of " + say(e.resting) + " do not fit a nominal " + say(e.nominal),
              "a charged lead-acid battery rests at about 1.05 of nominal");
}

}  // namespace loomfolio::rules
