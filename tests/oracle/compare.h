// SPDX-License-Identifier: MIT
// Circuits solved here and by ngspice, node by node.
#pragma once

#include <string>
#include <vector>

#include "solve/newton.h"

namespace loomfolio::test {

struct Question {
  std::string name;
  std::string netlist;
  NodeVolts ours;
};

struct Verdict {
  std::string trouble;                  ///< ngspice could not be run
  int answered = 0, from_nothing = 0;   ///< circuits; those without a starting point near our answer
  int nodes = 0;
  std::vector<std::string> differences; ///< nodes apart by more than 0.1 % and 1 mV
  std::vector<std::string> unanswered;  ///< circuits in which ngspice finds no operating point
};

/// Where ngspice, started from nothing, finds no answer it is asked again from our answer rounded to a tenth of a volt: it then
/// still has to satisfy its own equations.
Verdict compare_with_ngspice(const std::vector<Question>& questions);

}  // namespace loomfolio::test
