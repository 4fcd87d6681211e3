// SPDX-License-Identifier: MIT
// Asks ngspice for the operating points of many circuits in one process.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace loomfolio::test {

struct SpiceAnswers {
  std::vector<std::map<std::string, double>> nodes;  ///< by circuit: volts by node name; empty where it found none
  std::string trouble;                               ///< why nothing could be run; empty when it ran
};

/// `netlists` as write_netlist() gives them. Leaves no file behind.
/// By Newton steps alone, or with a transient run to the operating point where those do not end.
enum class SpiceWay { newton, transient };

SpiceAnswers ask_ngspice(const std::vector<std::string>& netlists, SpiceWay way = SpiceWay::newton);

}  // namespace loomfolio::test
