// SPDX-License-Identifier: MIT
// Which readings a person with a meter can tell apart. For diagnose_probes.cpp only.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "solve/diagnose.h"
#include "solve/reading_limits.h"

namespace loomfolio {

namespace sorting {
inline constexpr double gap = 1.0;           // V on 12 V
inline constexpr double most_share = 0.49;   // of a gap: ranges stay apart
inline constexpr double near_nothing = 0.3;  // V on 12 V: what a place without volts may read
}  // namespace sorting

/// Readings of one terminal, sorted into outcomes where a gap lies between them.
class VoltSorter {
 public:
  VoltSorter(const Build& build, double sound, double least, double most, double pole_share,
             double greatest)
      : scale_(build.electrics.nominal.number() / 12),
        sign_(build.electrics.is_positive_earth ? -1 : 1),
        sound_(sound),
        least_(least),
        most_(most),
        share_(pole_share),
        greatest_(greatest) {}

  /// False when all look the same, or where a figure beyond the poles stands beside others.
  bool sort(const std::vector<double>& readings, std::vector<int>& column, Probe& probe) const {
    std::vector<std::size_t> order(readings.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return readings[a] < readings[b]; });
    column.assign(readings.size(), 0);
    for (std::size_t i = 0; i < order.size(); ++i) {
      const double now = readings[order[i]];
      if (i == 0 || now - readings[order[i - 1]] >= sorting::gap * scale_) probe.outcomes.push_back({now, now});
      probe.outcomes.back().most = now;
      column[order[i]] = static_cast<int>(probe.outcomes.size()) - 1;
    }
    mark(probe.outcomes);
    widen(probe.outcomes);
    const auto astray =
        std::count_if(probe.outcomes.begin(), probe.outcomes.end(), [](const auto& o) { return o.is_astray; });
    return probe.outcomes.size() > 1 && (astray == 0 || probe.outcomes.size() == 2);
  }

 private:
  void mark(std::vector<ProbeOutcome>& outcomes) const {
    for (ProbeOutcome& o : outcomes) {
      o.is_sound = sound_ > o.least - sorting::gap * scale_ / 2 && sound_ < o.most + sorting::gap * scale_ / 2;
      o.is_astray = std::min(o.least * sign_, o.most * sign_) < -sorting::near_nothing * scale_;
    }
  }

  double tolerance(double volts) const { return sorting::near_nothing * scale_ + share_ * std::abs(volts); }

  void widen(std::vector<ProbeOutcome>& outcomes) const {
    const std::vector<ProbeOutcome> bare = outcomes;
    for (std::size_t i = 0; i < bare.size(); ++i) {
      ProbeOutcome& o = outcomes[i];
      // As wide as a sound machine may differ, no more; where it reads nothing, a dead place has some tenths of a volt.
      if (o.is_sound && !std::isnan(least_) && std::abs(sound_) >= sorting::gap * scale_) {
        const double error = std::abs(sound_) * sound::meter_share + sound::meter_digits.number();
        o.least = std::min(o.least - error, least_), o.most = std::max(o.most + error, most_);
      } else {
        o.least -= tolerance(o.least);
        o.most += tolerance(o.most);
      }
      if (i > 0) o.least = std::max(o.least, bare[i].least - sorting::most_share * (bare[i].least - bare[i - 1].most));
      if (i + 1 < bare.size())
        o.most = std::min(o.most, bare[i].most + sorting::most_share * (bare[i + 1].least - bare[i].most));
      // Nothing reads more than a sound battery does then.
      if (sign_ > 0) o.most = std::min(o.most, std::max(greatest_, bare[i].most));
      if (sign_ < 0) o.least = std::max(o.least, std::min(greatest_, bare[i].least));
    }
  }

  double scale_, sign_, sound_, least_, most_, share_, greatest_;
};

}  // namespace loomfolio
