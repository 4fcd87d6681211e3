// SPDX-License-Identifier: MIT
// Between neighbouring gates a curve is straight in log time against log current (common practice, no source), after
// the last gate it keeps its melting energy: t falls with the square of the current.
#include "solve/fuse_curve.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loomfolio {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

// Which of a gate's times.
using GateTime = std::optional<Seconds> FuseGate::*;

const FuseGate* first_gate(const FuseFamily& family, GateTime time) {
  const auto found = std::find_if(family.gates.begin(), family.gates.end(),
                                  [&](const FuseGate& gate) { return (gate.*time).has_value(); });
  return found == family.gates.end() ? nullptr : &*found;
}

// Through those gates that state the time; there must be one.
double along(const FuseFamily& family, GateTime time, double percent) {
  const FuseGate* low = nullptr;
  for (const FuseGate& high : family.gates) {
    if (!(high.*time)) continue;
    if (low && percent <= high.percent) {
      const double from = (low->*time)->number(), to = (high.*time)->number();
      return from * std::pow(percent / low->percent, std::log(to / from) / std::log(high.percent / low->percent));
    }
    low = &high;
  }
  return (low->*time)->number() * (low->percent / percent) * (low->percent / percent);
}

}  // namespace

const FuseFamily& fuse_family(std::string_view id, Amperes rating) {
  const auto& all = fuse_families();
  const FuseFamily* nearest = nullptr;
  for (const FuseFamily& family : all) {
    if (family.id != id) continue;
    if (rating <= family.most_rating) return family;
    nearest = &family;
  }
  return nearest ? *nearest : fuse_family("blade_regular", rating);
}

bool is_known_fuse_family(std::string_view id) {
  for (const FuseFamily& family : fuse_families())
    if (family.id == id) return true;
  return false;
}

Seconds slowest_opening(const FuseFamily& family, Amperes rating, Amperes current) {
  const FuseGate* first = first_gate(family, &FuseGate::most);
  const double percent = 100 * (current / rating);
  if (!first || percent < first->percent * (1 - 1e-12)) return Seconds(infinite);
  return Seconds(along(family, &FuseGate::most, percent));
}

Seconds fastest_opening(const FuseFamily& family, Amperes rating, Amperes current) {
  const double percent = 100 * (current / rating);
  if (family.gates.empty() || percent <= family.gates.front().percent * (1 + 1e-12)) return Seconds(infinite);
  const auto states_least = [](const FuseGate& gate) { return gate.least.has_value(); };
  if (std::count_if(family.gates.begin(), family.gates.end(), states_least) < 2) return Seconds(0);
  return Seconds(along(family, &FuseGate::least, percent));
}

Amperes surely_opens_from(const FuseFamily& family, Amperes rating) {
  for (const FuseGate& gate : family.gates)
    if (gate.most) return rating * (gate.percent / 100);
  return Amperes(infinite);
}

}  // namespace loomfolio
