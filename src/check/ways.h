// SPDX-License-Identifier: MIT
// The ways current can take in one solved situation: which feed a load, and what stands open on the way of a starved
// one.
//
// Idea: a search outward from the load over everything that joins two points, closed or not. A closed step is free, an
// open one costs; a step through another load costs a little, so that a way without one is preferred. The cheapest way
// to the supply and the cheapest way to earth are what a person would follow with a finger on the diagram.
#pragma once

#include <string>
#include <vector>

#include "check/facts.h"
#include "check/feed.h"

namespace loomfolio {

enum class Step : std::uint8_t {
  closed,        ///< metal, a fuse, a diode, a closed switch, contact or output
  through_load,  ///< current passes, but another load takes its share
  open,          ///< a switch, contact or output that stands open
  barred,        ///< a supply itself: ways end there
};

/// One situation as it settled.
struct Seen {
  const Facts& facts;
  const Situation& situation;
  const Solution& solution;
};

/// What that bridge is in that situation.
Step step_of(const Seen& seen, const Bridge& bridge);

struct Way {
  bool found = false;
  std::vector<int> bridges;      ///< from the load outward; indices into Paths::bridges
  std::vector<InsideRef> open;   ///< open elements on it, from the load outward
  std::vector<InsideRef> loads;  ///< loads it passes
};

enum class Toward : std::uint8_t { supply, earth };

/// Both ways of a load: the assignment of its two ends to supply and earth that is cheaper.
struct LoadWays {
  Way to_supply, to_earth;
};

/// Ways in one situation, for many loads: what each bridge is there and where ways end is found out once.
class WayFinder {
 public:
  /// What `seen` holds must outlive it.
  explicit WayFinder(const Seen& seen);
  LoadWays find(InsideRef load);

 private:
  struct Ends {
    Way supply, earth;
  };
  Ends search_from(PathPoint from, InsideRef load);
  Way way_to(PathPoint from, PathPoint to) const;

  Seen seen_;
  std::vector<Step> steps_;               // by bridge
  std::vector<std::uint8_t> is_pole_;     // by point: 1 supply, 2 earth
  PathPoint first_supply_ = -1, first_earth_ = -1;  // lowest of the poles
  std::vector<int> cost_, by_;            // by point: cheapest cost so far, and the bridge that led there
  std::vector<PathPoint> reached_;
};

/// The same for one load.
LoadWays find_load_ways(const Seen& seen, InsideRef load);

/// The elements on a way that a person would name: fuses, switches, contacts, loads. '`fuses.f2`, `lamp-relay.make`'.
std::string say_way(const Build& build, const Paths& paths, const Way& way);

/// All of a way, wire by wire: 'wire `12`, `tail.stop`, wires `9`, `10`'. What joins inside a part unnamed is left out.
std::string say_way_with_wires(const Build& build, const Paths& paths, const Way& way);

}  // namespace loomfolio
