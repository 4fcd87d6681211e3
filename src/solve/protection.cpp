// SPDX-License-Identifier: MIT
#include "solve/protection.h"

#include "base/side_by_side.h"
#include "solve/protection_parts.h"

namespace loomfolio {
namespace {

// The weakest short: battery at nominal volts, everything hot.
CircuitOptions hot_options(const Build& build) {
  CircuitOptions options;
  options.wire_temperature = Celsius(105);
  options.fuses = FuseHeat::hot;
  options.emf = build.electrics.nominal;
  return options;
}

// The strongest: rested battery, cold wires.
CircuitOptions cold_options() {
  CircuitOptions options;
  options.wire_temperature = Celsius(20);
  return options;
}

}  // namespace

ProtectionStudy study_protection(const Build& build, const std::vector<Solution>& solutions) {
  Study study{build, solutions, find_fuses(build), {}, {}};
  study.benches.resize(solutions.size());
  work_side_by_side(solutions.size(), [&](std::size_t s) {
    study.benches[s] = {solutions[s].situation,
                        std::make_unique<ShortBench>(build, solutions[s], hot_options(build), study.fuses),
                        std::make_unique<ShortBench>(build, solutions[s], cold_options(), study.fuses)};
  });
  study_wires(study);
  study_fuses(study);
  study_inrush(study);
  study_pairs(study);
  study_choices(study);
  study_leads(study);
  study_stops(study);
  return std::move(study.result);
}

}  // namespace loomfolio
