// SPDX-License-Identifier: MIT
// Circuits of all laws that look random and are the same everywhere.
#pragma once

#include "solve/circuit.h"
#include "solve/random_numbers.h"

namespace loomfolio::test {

inline Branch conductor(RandomNumbers& random) {
  Branch branch;
  branch.ohms = Ohms(random.spread(0.002, 50));
  return branch;
}

inline Branch battery(RandomNumbers& random, bool is_12_volt) {
  Branch branch;
  branch.law = Law::source;
  branch.volts = Volts(is_12_volt ? random.between(11.5, 13.2) : random.between(5.5, 6.6));
  branch.ohms = branch.charge_ohms = Ohms(random.spread(0.005, 0.1));
  if (random.below(2)) branch.charge_ohms = Ohms(random.spread(0.2, 3));
  return branch;
}

inline Branch filament(RandomNumbers& random) {
  Branch branch;
  branch.law = Law::lamp;
  branch.volts = Volts(random.below(2) ? 13.5 : 6.75);
  branch.amperes = Amperes(random.spread(0.1, 6));
  branch.ohms = branch.volts / branch.amperes * 0.1;
  return branch;
}

inline Branch any_law(RandomNumbers& random) {
  Branch branch;
  branch.volts = Volts(12);
  branch.ohms = Ohms(random.spread(0.01, 0.2));
  branch.amperes = Amperes(random.spread(0.2, 8));
  switch (random.below(8)) {
    case 0:
    case 1:
    case 2: return filament(random);
    case 3:
      branch.law = Law::diode;
      branch.volts = Volts(random.between(0.25, 2));
      return branch;
    case 4: branch.law = Law::constant_current; return branch;
    case 5: branch.law = Law::limited; return branch;
    default: return conductor(random);
  }
}

inline Branch generator(RandomNumbers& random) {
  Branch branch;
  branch.law = Law::charger;
  branch.volts = Volts(random.between(13.5, 14.8));
  branch.ohms = Ohms(random.spread(0.01, 0.05));
  branch.amperes = Amperes(random.spread(2, 30));
  return branch;
}

// A battery, a tree of conductors that reaches most nodes, and branches of any law between any two.
inline Circuit random_circuit(int seed) {
  RandomNumbers random(static_cast<std::uint64_t>(seed) + 1);
  Circuit circuit;
  circuit.node_count = 4 + random.below(40);
  circuit.reference = circuit.frame = random.below(circuit.node_count);
  const auto add = [&](int a, int b, Branch branch) {
    branch.a = a;
    branch.b = b;
    circuit.branches.push_back(branch);
  };
  const int plus = (circuit.reference + 1) % circuit.node_count;
  const bool is_12_volt = random.below(3) != 0;
  add(plus, circuit.reference, battery(random, is_12_volt));
  for (int node = 0; node < circuit.node_count; ++node) {
    if (node == circuit.reference || random.below(10) == 0) continue;  // some are left hanging, some float
    add(node, random.below(circuit.node_count), conductor(random));
  }
  const int extra = 2 + random.below(circuit.node_count);
  for (int i = 0; i < extra; ++i) add(random.below(circuit.node_count), random.below(circuit.node_count), any_law(random));
  if (!is_12_volt) return circuit;
  if (random.below(2)) add(plus, circuit.reference, generator(random));
  // A unit that draws constant power sits near the battery: far off it may have two working points, and neither answer is wrong.
  Branch unit;
  unit.law = Law::constant_power;
  unit.volts = Volts(12);
  unit.amperes = Amperes(random.spread(0.1, 3));
  add(plus, circuit.reference, unit);
  return circuit;
}

}  // namespace loomfolio::test
