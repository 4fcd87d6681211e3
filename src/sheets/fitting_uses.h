// SPDX-License-Identifier: MIT
// Which fittings a build uses, on which wires, and what they take.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "model/words.h"
#include "sheets/fitting_picture.h"

namespace loomfolio {

/// Wires that go into one fitting together.
struct SharedFitting {
  std::string place;  ///< 'Key switch 15'
  std::vector<const Wire*> wires;
  std::vector<std::size_t> hook_ups;  ///< builds that have it
};

/// Wire ends of one shape at terminals that take the same.
struct FittingUse {
  std::string name;  ///< of the fitting
  std::optional<Range<SquareMillimetres>> takes;
  std::optional<Range<Millimetres>> insulation;
  std::optional<Millimetres> strip;
  std::map<std::pair<double, std::string>, std::vector<const Wire*>> wires;  ///< by area and printed size of what goes
                                                                             ///< in; the first wire of each fitting
  std::map<std::pair<double, std::string>, std::vector<std::size_t>> counts;  ///< likewise: ends in each build
  std::vector<std::string>
      places;  ///< labels of the parts that it goes to, each once; fittings of one name differ in it
  std::vector<SharedFitting> shared;  ///< each once, whatever hook-ups have it
};

/// By shape, in the shapes' order; each list in the order of first use, rings by thread and size. A wire that several hook-ups share stands among
/// `wires` once. Ends that the machine brings are left out.
std::map<FittingShape, std::vector<FittingUse>> find_fitting_uses(const std::vector<const Build*>& builds,
                                                                  const Words& words);

enum class Fit : std::uint8_t { unknown, fits, too_small, too_large };

/// A name for the place of the shape among the crimps ("crimps").
std::string fitting_anchor(FittingShape shape);

/// Whether a wire of that area goes into it.
Fit fits(const FittingUse& use, SquareMillimetres area);

}  // namespace loomfolio
