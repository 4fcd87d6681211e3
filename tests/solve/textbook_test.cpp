// SPDX-License-Identifier: MIT
// Circuits whose answers are printed elsewhere, or follow by hand: at the level of nodes and branches.
#include <doctest/doctest.h>

#include "solve/newton.h"

using namespace loomfolio;

namespace {

struct Network {
  Circuit circuit;
  explicit Network(int nodes) {
    circuit.node_count = nodes;
    circuit.reference = 0;
    circuit.frame = 0;
  }
  int add(int a, int b, Branch branch) {
    branch.a = a;
    branch.b = b;
    circuit.branches.push_back(branch);
    return static_cast<int>(circuit.branches.size()) - 1;
  }
  int resistor(int a, int b, double ohms) {
    Branch branch;
    branch.ohms = Ohms(ohms);
    return add(a, b, branch);
  }
  int source(int plus, int minus, double volts, double ohms) {
    Branch branch;
    branch.law = Law::source;
    branch.volts = Volts(volts);
    branch.ohms = branch.charge_ohms = Ohms(ohms);
    return add(plus, minus, branch);
  }
  int lamp(int a, int b, double watts, double volts) {
    Branch branch;
    branch.law = Law::lamp;
    branch.volts = Volts(volts);
    branch.amperes = Amperes(watts / volts);
    branch.ohms = Ohms(0.1 * volts * volts / watts);
    return add(a, b, branch);
  }
  NodeVolts solve() const {
    NodeSolver solver(circuit);
    NodeVolts nodes = solver.solve({}, Flash::lit, {});
    CHECK(nodes.has_settled);
    return nodes;
  }
};

constexpr double stiff = 1e-6;  // ohm: the least resistance a branch may have

}  // namespace

TEST_CASE("two sources, three resistors: Kuphaldt, Lessons In Electric Circuits I, network analysis") {
  Network n(4);
  n.source(1, 0, 28, stiff);
  n.source(3, 0, 7, stiff);
  n.resistor(1, 2, 4);
  n.resistor(2, 0, 2);
  n.resistor(2, 3, 1);
  const NodeVolts v = n.solve();
  CHECK(v.volts[2] == doctest::Approx(8.0).epsilon(1e-5));
  CHECK((v.volts[1] - v.volts[2]) / 4 == doctest::Approx(5.0).epsilon(1e-5));
  CHECK(v.volts[2] / 2 == doctest::Approx(4.0).epsilon(1e-5));
  CHECK((v.volts[2] - v.volts[3]) / 1 == doctest::Approx(1.0).epsilon(1e-4));
}

TEST_CASE("unbalanced bridge: Kuphaldt, same chapter (printed to 4 figures; finer ones derived)") {
  Network n(4);
  n.source(1, 0, 24, stiff);
  n.resistor(1, 2, 150);
  n.resistor(1, 3, 50);
  n.resistor(2, 3, 100);
  n.resistor(2, 0, 300);
  n.resistor(3, 0, 250);
  const NodeVolts v = n.solve();
  CHECK(v.volts[2] == doctest::Approx(17.655172).epsilon(1e-6));
  CHECK(v.volts[3] == doctest::Approx(19.310345).epsilon(1e-6));
  CHECK((v.volts[1] - v.volts[2]) / 150 == doctest::Approx(0.042299).epsilon(1e-4));
  CHECK((v.volts[1] - v.volts[3]) / 50 == doctest::Approx(0.093793).epsilon(1e-4));
  CHECK((v.volts[3] - v.volts[2]) / 100 == doctest::Approx(0.016552).epsilon(1e-4));
}

TEST_CASE("batteries in parallel: two answers printed in trade and school texts") {
  SUBCASE("100 V 5 ohm and 95 V 3 ohm across 80 ohm: 1.069 A, 0.115 A, 94.66 V") {
    Network n(2);
    n.source(1, 0, 100, 5);
    n.source(1, 0, 95, 3);
    n.resistor(1, 0, 80);
    const double v = n.solve().volts[1];
    CHECK(v == doctest::Approx(94.656489).epsilon(1e-7));
    CHECK((100 - v) / 5 == doctest::Approx(1.068702).epsilon(1e-6));
    CHECK((95 - v) / 3 == doctest::Approx(0.114504).epsilon(1e-5));
  }
  SUBCASE("jump start: College Physics chapter 18, problem 26 (1.7e2 A, 0.28 A; finer figures derived)") {
    Network n(2);
    n.source(1, 0, 12, 0.01);
    n.source(1, 0, 10, 1.0);
    n.resistor(1, 0, 0.06);
    const double v = n.solve().volts[1];
    CHECK(v == doctest::Approx(10.283286).epsilon(1e-7));
    CHECK(v / 0.06 == doctest::Approx(171.388).epsilon(1e-5));
    CHECK((10 - v) / 1.0 == doctest::Approx(-0.283286).epsilon(1e-5));
  }
}

TEST_CASE("filament behind a resistance: derived by bisection of the law I = I0 (V/V0)^0.55") {
  const auto run = [](double emf) {
    Network n(3);
    n.source(1, 0, emf, 0.020);
    n.resistor(1, 2, 0.096);  // 0.003 + 0.010 + 0.008 + 0.015 + 0.050 + 0.010
    n.lamp(2, 0, 68, 13.2);
    return n.solve();
  };
  const NodeVolts rested = run(12.6);
  CHECK(rested.volts[2] == doctest::Approx(12.032109).epsilon(1e-7));
  CHECK(rested.volts[1] == doctest::Approx(12.502088).epsilon(1e-7));
  CHECK((rested.volts[1] - rested.volts[2]) / 0.096 == doctest::Approx(4.895615).epsilon(1e-6));
  const NodeVolts running = run(14.4);
  CHECK(running.volts[2] == doctest::Approx(13.787929).epsilon(1e-7));
  CHECK(running.volts[2] * (running.volts[1] - running.volts[2]) / 0.096 == doctest::Approx(72.7516).epsilon(1e-5));
  Network cold(3);
  cold.source(1, 0, 12.6, 0.020);
  cold.resistor(1, 2, 0.096);
  cold.resistor(2, 0, 0.1 * 13.2 * 13.2 / 68);
  CHECK(cold.solve().volts[2] / 0.256235 == doctest::Approx(33.8496).epsilon(1e-5));
}

TEST_CASE("diode of a fixed 0.7 V before a coil with a resistor across: closed form") {
  Network n(4);
  n.source(1, 0, 12.6, stiff);
  n.resistor(1, 2, 0.5);
  // A junction that drops the same at 0.149 A as at 1 A has its law shifted: forward is stated at 1 A.
  Branch diode;
  diode.law = Law::diode;
  diode.volts = Volts(0.7);
  n.add(2, 3, diode);
  n.resistor(3, 0, 90);
  n.resistor(3, 0, 680);
  const NodeVolts v = n.solve();
  const double amperes = (v.volts[1] - v.volts[2]) / 0.5;
  // By hand with the drop this junction has at that current: 0.7 V x ln(0.1488/1e-12) / ln(1/1e-12) = 0.6517 V.
  const double drop = 0.7 * std::log(amperes / 1e-12 + 1) / std::log(1 / 1e-12 + 1);
  CHECK(v.volts[2] - v.volts[3] == doctest::Approx(drop).epsilon(1e-5));
  const double parallel = 90.0 * 680 / 770;
  CHECK(amperes == doctest::Approx((12.6 - drop) / (0.5 + parallel)).epsilon(1e-6));
  // The textbook's fixed 0.7 V: 0.148786 A, 11.825607 V over the coil; ours within the 0.05 V that the junction drops less.
  CHECK(amperes == doctest::Approx(0.148786).epsilon(0.005));
  CHECK(v.volts[3] == doctest::Approx(11.825607).epsilon(0.005));
}

TEST_CASE("plain diode: 10 V, 1 kohm, 9.3 mA with a fixed 0.7 V in a course text") {
  Network n(3);
  n.source(1, 0, 10, stiff);
  n.resistor(1, 2, 1000);
  Branch diode;
  diode.law = Law::diode;
  diode.volts = Volts(0.7);
  n.add(2, 0, diode);
  const NodeVolts v = n.solve();
  CHECK((v.volts[1] - v.volts[2]) / 1000 == doctest::Approx(0.0093).epsilon(0.02));
  Network back(3);
  back.source(1, 0, 10, stiff);
  back.resistor(1, 2, 1000);
  back.add(0, 2, diode);
  CHECK(back.solve().volts[2] == doctest::Approx(10.0).epsilon(1e-4));
}

TEST_CASE("cranking with the ignition on: closed form") {
  Network n(4);
  n.source(1, 0, 12.6, 0.018);
  n.resistor(1, 2, 0.0015 + 0.001 + 0.001);
  n.resistor(2, 0, 0.075);
  n.resistor(1, 3, 0.03);
  n.resistor(3, 0, 2.4);
  const NodeVolts v = n.solve();
  CHECK(v.volts[1] == doctest::Approx(10.188349).epsilon(1e-7));
  CHECK(v.volts[2] == doctest::Approx(9.734091).epsilon(1e-7));
  CHECK(v.volts[2] / 0.075 == doctest::Approx(129.7879).epsilon(1e-6));
  CHECK(v.volts[3] == doctest::Approx(10.062567).epsilon(1e-7));
  CHECK(v.volts[3] / 2.4 == doctest::Approx(4.192736).epsilon(1e-6));
}

TEST_CASE("two lamps on one bad earth: closed form") {
  Network n(3);
  n.source(1, 0, 13.5, stiff);
  n.resistor(1, 2, 7);
  n.resistor(1, 2, 29);
  n.resistor(2, 0, 0.5);
  const NodeVolts v = n.solve();
  CHECK(v.volts[2] == doctest::Approx(1.099548).epsilon(1e-6));
  CHECK((13.5 - v.volts[2]) / 7 == doctest::Approx(1.771493).epsilon(1e-6));
  CHECK((13.5 - v.volts[2]) / 29 == doctest::Approx(0.427602).epsilon(1e-6));
}

TEST_CASE("sneak path of an open rear earth: closed form") {
  Network n(4);
  n.source(1, 0, 13.5, stiff);
  n.resistor(1, 2, 7);    // stop filament to the common that lost its earth
  n.resistor(3, 2, 29);   // tail filament, fed backwards
  n.resistor(3, 0, 48);   // instrument lamp
  const NodeVolts v = n.solve();
  CHECK(v.volts[3] / 48 == doctest::Approx(0.160714).epsilon(1e-5));
  CHECK(v.volts[3] == doctest::Approx(7.714286).epsilon(1e-6));
  CHECK(v.volts[2] - v.volts[3] == doctest::Approx(4.660714).epsilon(1e-6));
  CHECK(13.5 - v.volts[2] == doctest::Approx(1.125).epsilon(1e-5));
}

TEST_CASE("an island without a path to the reference is found and changes nothing") {
  Network n(4);
  n.source(1, 0, 12, 0.1);
  n.resistor(1, 0, 5.9);
  n.resistor(2, 3, 10);
  const NodeVolts v = n.solve();
  CHECK(v.volts[1] == doctest::Approx(11.8));
  CHECK(!v.floating[1]);
  CHECK(v.floating[2]);
  CHECK(v.floating[3]);
}

TEST_CASE("a charging battery takes less than it gives; a full generator stops at its limit") {
  Network n(2);
  Branch battery;
  battery.law = Law::source;
  battery.volts = Volts(12.6);
  battery.ohms = Ohms(0.02);
  battery.charge_ohms = Ohms(1.6);
  n.add(1, 0, battery);
  Branch charger;
  charger.law = Law::charger;
  charger.volts = Volts(14.2);
  charger.ohms = Ohms(0.02);
  charger.amperes = Amperes(20);
  n.add(1, 0, charger);
  SUBCASE("no load: (14.2 - 12.6) / (1.6 + 0.02)") {
    CHECK((n.solve().volts[1] - 12.6) / 1.6 == doctest::Approx(1.6 / 1.62).epsilon(1e-6));
  }
  SUBCASE("more load than the generator gives: the battery makes up the rest") {
    n.resistor(1, 0, 0.5);
    const double v = n.solve().volts[1];
    CHECK(v == doctest::Approx((20 + 12.6 / 0.02) / (1 / 0.5 + 1 / 0.02)).epsilon(1e-6));
  }
}
