// SPDX-License-Identifier: MIT
// By which other switches what fails can be made to work: a stop lamp has two, and a chart's situation sets one.
#pragma once

#include <vector>

#include "solve/bench_situations.h"
#include "solve/diagnose.h"

namespace loomfolio {

/// Switches set otherwise than in the symptoms' situation, so that some of the elements work by another way.
struct OtherWay {
  std::vector<InsideRef> works;   ///< elements of the symptoms
  std::vector<Setting> settings;  ///< what is moved
  std::vector<int> suspects;      ///< into the book's faults: what puts them out there and not so, most likely first
  std::vector<InsideRef> switches;  ///< left in another position, and no suspects: a contact may be worn in one position alone
};

/// For elements that should work in the symptoms' one situation. Each way is one that a situation of the build shows, is of switches
/// that hand or foot works, and is solved with all else as in the symptoms' situation.
std::vector<OtherWay> find_other_ways(const BenchSituations& bench, const FaultBook& book, const std::vector<Symptom>& symptoms);

}  // namespace loomfolio
