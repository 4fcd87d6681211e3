// SPDX-License-Identifier: MIT
// Between neighbouring gates a curve is straight in log time against log current (common practice, no source), after the last gate
// it keeps its melting energy: t falls with the square of the current.
#include "solve/fuse_curve.h"

#include <cmath>
#include <limits>

namespace loomfolio {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

struct CurvePoint {
  double percent, seconds;
};

double along(const std::vector<CurvePoint>& points, double percent) {
  for (std::size_t i = 1; i < points.size(); ++i) {
    const CurvePoint &low = points[i - 1], &high = points[i];
    if (percent > high.percent) continue;
    return low.seconds * std::pow(percent / low.percent, std::log(high.seconds / low.seconds) / std::log(high.percent / low.percent));
  }
  const CurvePoint& last = points.back();
  return last.seconds * (last.percent / percent) * (last.percent / percent);
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
  std::vector<CurvePoint> points;
  for (const FuseGate& gate : family.gates)
    if (gate.most) points.push_back({gate.percent, gate.most->number()});
  const double percent = 100 * (current / rating);
  if (points.empty() || percent < points.front().percent * (1 - 1e-12)) return Seconds(infinite);
  return Seconds(along(points, percent));
}

Seconds fastest_opening(const FuseFamily& family, Amperes rating, Amperes current) {
  const double percent = 100 * (current / rating);
  if (family.gates.empty() || percent <= family.gates.front().percent * (1 + 1e-12)) return Seconds(infinite);
  std::vector<CurvePoint> points;
  for (const FuseGate& gate : family.gates)
    if (gate.least) points.push_back({gate.percent, gate.least->number()});
  if (points.size() < 2) return Seconds(0);
  return Seconds(along(points, percent));
}

Amperes surely_opens_from(const FuseFamily& family, Amperes rating) {
  for (const FuseGate& gate : family.gates)
    if (gate.most) return rating * (gate.percent / 100);
  return Amperes(infinite);
}

}  // namespace loomfolio
