// SPDX-License-Identifier: MIT
#include "solve/faults.h"

#include <map>
#include <optional>

#include "base/side_by_side.h"
#include "solve/fault_bench.h"
#include "solve/wire_load.h"

namespace loomfolio {
namespace {

// Where a fault changes the circuit, for those that several faults share: the two joints of a wire; chafed wires that
// end together.
std::optional<std::pair<FaultType, int>> shared_place(const Build& build, const Fault& fault) {
  if (fault.type == FaultType::bad_joint) return {{fault.type, fault.wire.index}};
  if (fault.type == FaultType::wire_to_earth || fault.type == FaultType::wire_to_live)
    return {{fault.type, build.wire(fault.wire).to.index}};
  return std::nullopt;
}

// The first of those that change the same place in the same way.
std::vector<int> find_shared(const Build& build, const std::vector<Fault>& faults,
                             std::vector<std::size_t>& different) {
  std::vector<int> effect_of;
  std::map<std::pair<FaultType, int>, int> known;
  for (std::size_t f = 0; f < faults.size(); ++f) {
    const int next = static_cast<int>(different.size());
    const auto place = shared_place(build, faults[f]);
    effect_of.push_back(place ? known.try_emplace(*place, next).first->second : next);
    if (effect_of.back() == next) different.push_back(f);
  }
  return effect_of;
}

}  // namespace

FaultBook solve_these_faults(const Build& build, const std::vector<Solution>& solutions, std::vector<Fault> faults,
                             const FaultOptions& options) {
  FaultBook book;
  book.faults = std::move(faults);
  std::vector<std::size_t> different;
  book.effect_of = find_shared(build, book.faults, different);
  const std::vector<Amperes> worst = find_worst_currents(build, solutions);
  book.effects.resize(solutions.size());
  work_side_by_side(solutions.size(), [&](std::size_t s) {
    FaultBench bench(build, solutions[s], worst, options);
    book.effects[s].reserve(different.size());
    for (const std::size_t f : different) book.effects[s].push_back(bench.apply(book.faults[f]));
  });
  return book;
}

FaultBook solve_faults(const Build& build, const std::vector<Solution>& solutions, const FaultOptions& options) {
  return solve_these_faults(build, solutions, list_faults(build), options);
}

}  // namespace loomfolio
