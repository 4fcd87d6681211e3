// SPDX-License-Identifier: MIT
#include "oracle/compare.h"

#include <cmath>
#include <set>
#include <sstream>

#include "oracle/spice_runner.h"

namespace loomfolio::test {
namespace {

// Needed where ngspice steps back and forth over the corner of a regulator's or an output's limit.
std::string start_near(const NodeVolts& nodes) {
  std::string text;
  for (std::size_t node = 0; node < nodes.volts.size(); ++node)
    text += ".nodeset v(n" + std::to_string(node) + ")=" + std::to_string(std::round(10 * nodes.volts[node]) / 10) + "\n";
  return text;
}

/// Names of the nodes that the elements of a netlist join.
std::set<std::string> nodes_of(const std::string& netlist) {
  std::set<std::string> nodes;
  std::istringstream lines(netlist);
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || std::string("RVBD").find(line[0]) == std::string::npos) continue;
    std::istringstream words(line);
    std::string element, a, b;
    words >> element >> a >> b;
    for (const std::string& node : {a, b})
      if (node.starts_with("n")) nodes.insert(node);
  }
  return nodes;
}

bool agree(double ours, double theirs) { return std::abs(ours - theirs) <= std::max(0.001, 0.001 * std::abs(theirs)); }

}  // namespace

Verdict compare_with_ngspice(const std::vector<Question>& questions) {
  Verdict verdict;
  std::vector<std::string> netlists;
  for (const Question& q : questions) netlists.push_back(q.netlist);
  SpiceAnswers theirs = ask_ngspice(netlists);
  verdict.trouble = theirs.trouble;
  std::vector<std::size_t> again;
  std::vector<std::string> nearer;
  for (std::size_t i = 0; i < questions.size(); ++i) {
    if (!theirs.nodes[i].empty()) continue;
    again.push_back(i);
    nearer.push_back(netlists[i] + start_near(questions[i].ours));
  }
  verdict.from_nothing = static_cast<int>(questions.size() - again.size());
  for (const SpiceWay way : {SpiceWay::newton, SpiceWay::transient}) {
    const SpiceAnswers next = ask_ngspice(nearer, way);
    for (std::size_t i = 0; i < again.size(); ++i)
      if (theirs.nodes[again[i]].empty()) theirs.nodes[again[i]] = next.nodes[i];
  }
  for (std::size_t i = 0; i < questions.size(); ++i) {
    if (theirs.nodes[i].empty()) {
      verdict.unanswered.push_back(questions[i].name);
      continue;
    }
    ++verdict.answered;
    for (const std::string& node : nodes_of(questions[i].netlist))
      if (!theirs.nodes[i].contains(node)) verdict.differences.push_back(questions[i].name + " " + node + ": ngspice says nothing");
    for (const auto& [name, volts] : theirs.nodes[i]) {
      const double ours = questions[i].ours.volts[static_cast<std::size_t>(std::stoi(name.substr(1)))];
      ++verdict.nodes;
      if (!agree(ours, volts))
        verdict.differences.push_back(questions[i].name + " " + name + ": " + std::to_string(ours) + " V, ngspice " + std::to_string(volts));
    }
  }
  return verdict;
}

}  // namespace loomfolio::test
