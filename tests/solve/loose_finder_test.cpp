// SPDX-License-Identifier: MIT
// What comes loose, found from the change, against walking the whole circuit.
#include "solve/loose_finder.h"

#include <doctest/doctest.h>

#include "solve/defaults.h"
#include "solve/loose.h"
#include "solve/machine_maker.h"
#include "solve/random_circuit.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

/// Opens and closes a few branches at random and compares; how many nodes changed.
int compare(const Circuit& circuit, std::vector<char> carries, RandomNumbers& random) {
  const auto sound = [&](int b) { return carries[static_cast<std::size_t>(b)] != 0; };
  LooseFinder finder(circuit, sound);
  const auto whole = [&](const std::vector<char>& now, const std::vector<std::pair<int, int>>& joined) {
    return find_loose(circuit, [&](int b) { return now[static_cast<std::size_t>(b)] != 0; }, [](int) { return 1.0; }, joined);
  };
  const std::vector<char> before = whole(carries, {});
  REQUIRE(finder.sound() == before);
  int changes = 0;
  for (int round = 0; round < 60; ++round) {
    std::vector<char> now = carries;
    LooseQuestion question{[&](int b) { return now[static_cast<std::size_t>(b)] != 0; }, {}, {}};
    for (int i = 0; i < 1 + round % 4; ++i) {
      const int b = random.below(static_cast<int>(circuit.branches.size()));
      now[static_cast<std::size_t>(b)] ^= 1;
      question.changed.push_back(b);
    }
    if (round % 5 == 0) question.joined.emplace_back(random.below(circuit.node_count), random.below(circuit.node_count));
    const std::vector<char> expected = whole(now, question.joined);
    std::vector<char> found = before;
    for (const int node : finder.find_changed(question)) found[static_cast<std::size_t>(node)] ^= 1, ++changes;
    CHECK(found == expected);
  }
  return changes;
}

}  // namespace

TEST_CASE("random circuits and a machine: the same nodes are loose as when all is walked") {
  RandomNumbers random(7);
  int changes = 0;
  for (int seed = 0; seed < 40; ++seed) {
    const Circuit circuit = random_circuit(seed);
    std::vector<char> carries;
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) carries.push_back(random.below(4) != 0);
    changes += compare(circuit, carries, random);
  }
  CHECK(changes > 1000);
  const BuildMaker m = make_machine(1);
  const Circuit circuit = make_circuit(m.build, SituationId{3}, usual_options(m.build));
  std::vector<char> carries;
  for (const Branch& branch : circuit.branches) carries.push_back(is_active(branch, rest_state(circuit), Flash::lit) ? 1 : 0);
  CHECK(compare(circuit, carries, random) > 20);
}
