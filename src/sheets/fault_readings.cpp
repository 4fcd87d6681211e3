// SPDX-License-Identifier: MIT
// What stands on a fault chart's arrows.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/cold_tests.h"
#include "sheets/fault_words.h"

namespace loomfolio {
namespace {

std::string_view watch_key(Expected state, bool is_lamp) {
  switch (state) {
    case Expected::off:
      return is_lamp ? "faults.it_is_dark" : "faults.it_rests";
    case Expected::dim:
      return is_lamp ? "faults.it_is_dim" : "faults.it_is_weak";
    case Expected::flashing:
      return "faults.it_flashes";
    case Expected::on:
    case Expected::charging:
      break;
  }
  return is_lamp ? "faults.it_lights" : "faults.it_works";
}

double shown_least(const ProbeOutcome& outcome) {
  return std::max(outcome.least, outcome.most > 0 ? 0.0 : outcome.least);
}

}  // namespace

std::string FaultWords::ohms_reading(const Probe& probe, const ProbeOutcome& outcome) const {
  const Inside& inside = inside_of(build_, probe.what);
  if (inside.type == InsideType::diode) {
    if (outcome.is_reversed) return words_("faults.diode_reversed");
    return words_(outcome.is_open ? "faults.diode_open" : "faults.diode_whole");
  }
  if (inside.is_winding) return words_(outcome.is_open ? "faults.winding_bad" : "faults.winding_whole");
  const bool beeps = inside.type == InsideType::fuse || inside.type == InsideType::lamp;
  if (outcome.is_open) return words_(beeps ? "faults.no_beep" : "faults.no_ohms");
  if (beeps) return words_("faults.beep");
  if (inside.resistance && inside.resistance->number() < 1) return words_("faults.shorted");
  return inside.resistance ? words_("faults.ohms", {{"ohms", shortest(inside.resistance->number(), 1)}})
                           : words_("faults.some_ohms");
}

std::string FaultWords::reading_of(const Probe& probe, const ProbeOutcome& outcome) const {
  switch (probe.type) {
    case ProbeType::volts:
      if (outcome.is_astray) return words_("faults.not_near_zero");
      return words_("faults.volts", {{"least", fixed(shown_least(outcome), 1)}, {"most", fixed(outcome.most, 1)}});
    case ProbeType::alternating: {
      const double least = std::round(generator_gives.number() * build_.electrics.nominal.number() / 12);
      const bool is_pair = inside_of(build_, probe.what).fed_by.size() < 3;
      const std::string_view dead = is_pair ? "faults.not_alike_pair" : "faults.not_alike";
      const std::string_view alive = is_pair ? "faults.alike_pair" : "faults.alike";
      return words_(outcome.is_open ? dead : alive, {{"volts", fixed(least, 0)}});
    }
    case ProbeType::new_fuse:
      return words_(outcome.is_open ? "faults.blows" : "faults.holds");
    case ProbeType::short_to_earth:
      if (!outcome.is_open) return words_("faults.shorted");
      return std::isinf(probe.sound_ohms.number())
                 ? words_("faults.not_shorted_open")
                 : words_("faults.not_shorted", {{"ohms", print_ohms(sound_floor(probe.sound_ohms))}});
    case ProbeType::ohms:
      return ohms_reading(probe, outcome);
    case ProbeType::watch:
      break;
  }
  return words_(watch_key(outcome.state, inside_of(build_, probe.what).type == InsideType::lamp));
}

/// Outcomes that lead to the same stand on one arrow.
std::string FaultWords::reading(const FaultChart& chart, const ChartBox& box, const ChartExit& exit) const {
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(box.probe)];
  const auto outcome = [&](int index) -> const ProbeOutcome& {
    return probe.outcomes[static_cast<std::size_t>(index)];
  };
  if (exit.also.empty()) return reading_of(probe, outcome(exit.outcome));
  std::vector<int> all = exit.also;
  all.push_back(exit.outcome);
  std::sort(all.begin(), all.end());
  const int last = static_cast<int>(probe.outcomes.size()) - 1;
  const bool is_run = all.back() - all.front() + 1 == static_cast<int>(all.size());
  const bool is_volts = probe.type == ProbeType::volts && !build_.electrics.is_positive_earth;
  const bool is_astray = std::any_of(all.begin(), all.end(), [&](int i) { return outcome(i).is_astray; });
  if (is_volts && is_run && !is_astray && all.back() == last)
    return words_("faults.volts_over", {{"least", fixed(shown_least(outcome(all.front())), 1)}});
  if (is_volts && is_run && !is_astray && all.front() == 0)
    return words_("faults.volts_under", {{"most", fixed(outcome(all.back()).most, 1)}});
  std::string said;
  for (const int index : all)
    said = said.empty() ? reading_of(probe, outcome(index))
                        : words_("faults.either", {{"first", said}, {"second", reading_of(probe, outcome(index))}});
  return said;
}

}  // namespace loomfolio
