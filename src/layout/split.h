// SPDX-License-Identifier: MIT
// A build cut into diagrams, by what its wires are for.
//
// A reader comes with a question about a function: why does it not start, where does the horn get its feed? Cut by place,
// the answer lies on five sheets: of the 135 wires of a usual machine about half leave a zone, and each would end in a
// stub twice. Cut by function, every wire is drawn whole, once, between parts that are drawn on that sheet with just the
// terminals it uses; the battery, the key switch, fuse boxes and connectors stand on several sheets, each time in part.
// What a terminal feeds elsewhere is told by one short reference. Zones stay: they are the bands of each sheet.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/build.h"

namespace loomfolio {

/// What wires are for; also the order of the sheets.
enum class Function : std::uint8_t {
  supply, charging, starting, ignition, lighting, signalling, instruments, accessories, control
};
constexpr int function_count = 9;

/// `supply`, `charging` ...: part of sheet ids, and key of the function's words.
std::string_view name_of(Function function);

/// The function each wire is drawn with, by WireId. Computed from the kinds' groups and the ways currents can take.
std::vector<Function> find_functions(const Build& build);

/// One diagram: wires that are drawn whole on it.
struct DiagramPlan {
  std::vector<Function> functions;  ///< in order; several when small ones share a sheet
  std::vector<WireId> wires;        ///< in order
  int number = 1, of = 1;           ///< of the diagrams of the same functions
};

/// Least room in which a diagram can be expected to fit: rough counts, checked by laying it out.
struct SplitBudget {
  int most_parts = 22;   ///< parts and splices on a sheet
  int most_wires = 45;   ///< without those that end in an earth
};

/// All wires of the build, each on exactly one diagram. A build within the budget is one diagram.
std::vector<DiagramPlan> split_build(const Build& build, const SplitBudget& budget);

/// The plan cut in two, for when it did not fit its sheet; just the plan when it cannot be cut.
std::vector<DiagramPlan> halve(const Build& build, const DiagramPlan& plan);

}  // namespace loomfolio
