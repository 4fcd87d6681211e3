// SPDX-License-Identifier: MIT
#include "sheets/fitted_ends.h"

#include <set>

#include "sheets/assembly_plan.h"
#include "sheets/fitting_picture.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

/// A splice's barrel, and the joint to a part's own lead, hold every wire for itself.
bool is_one_fitting(const Build& build, TerminalId terminal) {
  const FittingShape shape = fitting_shape(build, terminal);
  return shares_fitting(build, terminal) && shape != FittingShape::splice && shape != FittingShape::lead;
}

}  // namespace

std::vector<FittedEnd> find_fitted_ends(const Build& build) {
  std::vector<FittedEnd> ends;
  std::set<std::size_t> done;  // terminals whose one fitting is counted
  const auto wires_at = wires_at_terminals(build);
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const Wire& wire = build.wires[w];
    if (!is_joined_by_fitter(wire)) continue;
    for (const TerminalId terminal : {wire.from, wire.to}) {
      const std::vector<WireId>& all = wires_at[terminal.at()];
      if (!is_one_fitting(build, terminal) || all.size() < 2) {
        const WireId id{static_cast<std::int32_t>(w)};
        ends.push_back({terminal, {id}, {id}, wire.area, print_wire_size(wire)});
        continue;
      }
      if (!done.insert(terminal.at()).second) continue;
      FittedEnd shared{terminal, {}, all, total_area(build, all), print_area(total_area(build, all))};
      for (const WireId id : all)
        if (is_joined_by_fitter(build.wire(id))) shared.wires.push_back(id);
      ends.push_back(std::move(shared));
    }
  }
  return ends;
}

}  // namespace loomfolio
