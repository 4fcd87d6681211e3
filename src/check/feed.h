// SPDX-License-Identifier: MIT
// Whether an element can be fed at all, from the plan alone: every switch and contact that could close taken as
// closed.
#pragma once

#include <string>
#include <vector>

#include "check/facts.h"

namespace loomfolio {

/// What can be reached from the poles of the supplies without passing a load.
struct Poles {
  bool any_source = false;
  std::vector<bool> from_live, from_earth;  ///< by PathPoint
};
Poles reach_poles(const Facts& facts);

enum class Feed : std::uint8_t {
  whole,      ///< one end reaches the supply, the other earth
  no_supply,  ///< an end reaches earth, none the supply
  no_return,  ///< an end reaches the supply, none earth
  one_sided,  ///< both poles are reached, but by the same end
  nothing,    ///< neither
  unused,     ///< stands at a terminal that the build leaves open, as it may
};
Feed feed_of(const Facts& facts, const Poles& poles, InsideRef inside);

/// The rest of the sentence '... `horn`': ' has no way to earth'.
std::string say_missing(Feed feed);

/// True when every terminal of the element has a wire.
bool is_wired(const Facts& facts, InsideRef inside);

/// Loads that could be fed but are on in no situation; none while a situation is unsettled.
std::vector<InsideRef> loads_never_on(const Facts& facts);

/// The live poles of all supplies.
std::vector<PathPoint> live_points(const Facts& facts);

/// Wire of the starter's own path, the listed exception from fusing. By its size: 8 mm2 and up, common practice, no
/// source.
bool is_starter_cable(const Wire& wire);

/// True when only metal lies between the point and a starter motor.
bool feeds_starter(const Facts& facts, PathPoint point);

/// A motor that turns only while cranking, or one of the group 'starting'.
bool is_starter_motor(const Build& build, InsideRef inside);

}  // namespace loomfolio
