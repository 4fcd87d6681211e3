// SPDX-License-Identifier: MIT
#include <cmath>

#include "solve/protection.h"

namespace loomfolio {
namespace {

constexpr int points = 200;     // along a curve, evenly in log current
constexpr double slowly = 3.5;  // x rating: below it a blade fuse may take longer than half a second

double along(Amperes from, Amperes to, int point) {
  return from.number() * std::pow(to / from, static_cast<double>(point) / points);
}

}  // namespace

std::optional<Amperes> hurts_from(const JudgeRequest& r) {
  const Amperes sure = surely_opens_from(r.family, r.rating);
  for (int i = 0; i <= points; ++i) {
    const Amperes current(along(sure, std::max(r.greatest, r.least), i));
    if (slowest_opening(r.family, r.rating, current) > withstands(r.wire, r.ambient, r.ampacity, current)) return current;
  }
  return std::nullopt;
}

WireVerdict judge_wire(const JudgeRequest& r) {
  if (r.greatest <= r.ampacity) return WireVerdict::limited;
  if (r.rating > r.ampacity) return WireVerdict::fuse_too_large;
  if (r.least < surely_opens_from(r.family, r.rating)) return WireVerdict::fuse_may_not_open;
  if (hurts_from(r)) return WireVerdict::wire_hurt_first;
  return r.least < r.rating * slowly ? WireVerdict::opens_slowly : WireVerdict::is_protected;
}

Selectivity judge_pair(const FuseFamily& upper, Amperes upper_rating, const FuseFamily& lower, Amperes lower_rating,
                       Amperes prospective, Amperes& fails_from) {
  fails_from = Amperes(0);
  if (prospective <= lower_rating) return Selectivity::proven;
  for (int i = 0; i <= points; ++i) {
    const Amperes current(along(lower_rating, prospective, i));
    const Seconds first = fastest_opening(upper, upper_rating, current);
    if (std::isinf(first.number())) continue;
    if (slowest_opening(lower, lower_rating, current) < first) continue;
    fails_from = current;
    return Selectivity::not_proven;
  }
  return Selectivity::proven;
}

}  // namespace loomfolio
