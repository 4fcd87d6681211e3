// SPDX-License-Identifier: MIT
// What goes off when a fuse opens, over all situations.
#include <algorithm>

#include "solve/faults.h"
#include "solve/protection_parts.h"

namespace loomfolio {

void study_stops(Study& study) {
  std::vector<Fault> faults;
  for (const FuseRef& fuse : study.fuses) {
    Fault fault;
    fault.type = FaultType::fuse_blown;
    fault.inside = fuse.inside;
    faults.push_back(fault);
  }
  const FaultBook book = solve_these_faults(study.build, study.solutions, faults, {});
  for (std::size_t f = 0; f < faults.size(); ++f)
    for (std::size_t s = 0; s < study.solutions.size(); ++s)
      for (const StateChange& change : book.effect(f, s).changes) {
        auto& stops = study.result.fuses[f].stops;
        const InsideType type = study.build.part(change.what.part).insides[static_cast<std::size_t>(change.what.inside)].type;
        const bool goes_off = change.after == Expected::off || change.after == Expected::dim;
        if (!goes_off || type == InsideType::source) continue;
        if (std::any_of(stops.begin(), stops.end(), [&](const Stopped& s2) { return s2.what == change.what; })) continue;
        stops.push_back({change.what, study.solutions[s].situation});
      }
  for (FuseStudy& fuse : study.result.fuses)
    std::sort(fuse.stops.begin(), fuse.stops.end(), [](const Stopped& a, const Stopped& b) { return a.what < b.what; });
}

}  // namespace loomfolio
