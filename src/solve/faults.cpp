// SPDX-License-Identifier: MIT
#include "solve/faults.h"

#include <map>

#include "solve/fault_bench.h"
#include "solve/wire_load.h"

namespace loomfolio {
namespace {

// The first of those that change the same branch in the same way.
std::vector<int> find_shared(const std::vector<Fault>& faults, std::vector<std::size_t>& different) {
  std::vector<int> effect_of;
  std::map<WireId, int> joint_of;
  for (std::size_t f = 0; f < faults.size(); ++f) {
    if (faults[f].type == FaultType::bad_joint) {
      const auto [place, is_new] = joint_of.try_emplace(faults[f].wire, static_cast<int>(different.size()));
      effect_of.push_back(place->second);
      if (!is_new) continue;
    } else {
      effect_of.push_back(static_cast<int>(different.size()));
    }
    different.push_back(f);
  }
  return effect_of;
}

}  // namespace

FaultBook solve_these_faults(const Build& build, const std::vector<Solution>& solutions, std::vector<Fault> faults,
                             const FaultOptions& options) {
  FaultBook book;
  book.faults = std::move(faults);
  std::vector<std::size_t> different;
  book.effect_of = find_shared(book.faults, different);
  const std::vector<Amperes> worst = find_worst_currents(build, solutions);
  for (const Solution& solution : solutions) {
    FaultBench bench(build, solution, worst, options);
    std::vector<FaultEffect> effects;
    effects.reserve(different.size());
    for (const std::size_t f : different) effects.push_back(bench.apply(book.faults[f]));
    book.effects.push_back(std::move(effects));
  }
  return book;
}

FaultBook solve_faults(const Build& build, const std::vector<Solution>& solutions, const FaultOptions& options) {
  return solve_these_faults(build, solutions, list_faults(build), options);
}

}  // namespace loomfolio
