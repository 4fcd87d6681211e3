// SPDX-License-Identifier: MIT
// Faults by changing the solved circuit, against solving the faulty circuit anew.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "solve/faults.h"
#include "solve/fault_bench.h"
#include "solve/machine_maker.h"
#include "solve/observe.h"
#include "solve/settle.h"
#include "solve/wire_load.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

struct AnewView {
  const Circuit& circuit;
  const Settled& settled;
  double volts(int node) const { return settled.nodes.floating[static_cast<std::size_t>(node)] ? 0 : settled.nodes.volts[static_cast<std::size_t>(node)]; }
  double amperes(int number) const {
    const Branch& b = circuit.branches[static_cast<std::size_t>(number)];
    if (!is_active(number)) return 0;
    return work(b, settled.nodes.volts[static_cast<std::size_t>(b.a)] - settled.nodes.volts[static_cast<std::size_t>(b.b)]).amperes;
  }
  bool is_active(int number) const { return loomfolio::is_active(circuit.branches[static_cast<std::size_t>(number)], settled.relays, Flash::lit); }
  bool is_pulled_in(int coil) const { return settled.relays.coil_in[static_cast<std::size_t>(coil)] != 0; }
};

// Opening a branch keeps its number: it is turned into a loop on one node.
void cut(Circuit& circuit, int number) { circuit.branches[static_cast<std::size_t>(number)].b = circuit.branches[static_cast<std::size_t>(number)].a; }

bool is_open_fault(FaultType type) {
  return type == FaultType::wire_open || type == FaultType::fuse_blown || type == FaultType::contact_open || type == FaultType::earth_loose ||
         type == FaultType::element_dead;
}

/// The faulty circuit; false for faults this test does not build anew.
bool make_faulty(const Fault& fault, Circuit& circuit) {
  if (!is_open_fault(fault.type)) return false;
  int number = -1;
  if (fault.wire.is_set()) number = circuit.wire_branch[fault.wire.at()];
  if (fault.inside.part.is_set()) number = circuit.inside_branch[fault.inside.part.at()][static_cast<std::size_t>(fault.inside.inside)];
  if (fault.earth.is_set())
    for (std::size_t i = 0; i < circuit.branches.size(); ++i)
      if (circuit.branches[i].origin == BranchOrigin::earth && circuit.branches[i].earth == fault.earth) number = static_cast<int>(i);
  if (number < 0) return false;
  cut(circuit, number);
  return true;
}

const Reading* find_reading(const FaultEffect& effect, TerminalId terminal) {
  for (const Reading& reading : effect.readings)
    if (reading.at == terminal) return &reading;
  return nullptr;
}

bool has_change(const FaultEffect& effect, InsideRef ref, Expected after) {
  return std::any_of(effect.changes.begin(), effect.changes.end(), [&](const StateChange& c) { return c.what == ref && c.after == after; });
}

std::size_t find_fault(const FaultBook& book, FaultType type, auto&& matches) {
  for (std::size_t f = 0; f < book.faults.size(); ++f)
    if (book.faults[f].type == type && matches(book.faults[f])) return f;
  return book.faults.size();
}

}  // namespace

TEST_CASE("every open fault of a machine in every situation: readings and states as if solved anew") {
  const BuildMaker m = make_machine(1, 3);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  int compared = 0;
  for (const Solution& solution : solutions) {
    const Circuit sound = make_circuit(m.build, solution.situation, usual_options(m.build));
    for (std::size_t f = 0; f < book.faults.size(); ++f) {
      const Fault& fault = book.faults[f];
      // A generator's wire changes its regulator, not only the circuit.
      if (fault.wire.is_set() && m.build.terminal(m.build.wire(fault.wire).from).name.starts_with("generator")) continue;
      if (fault.inside.part.is_set() && m.build.part(fault.inside.part).id.starts_with("generator")) continue;
      Circuit circuit = sound;
      if (!make_faulty(fault, circuit)) continue;
      NodeSolver solver(circuit);
      const Settled anew = settle(circuit, solver, solution.relays, Flash::lit);
      REQUIRE(anew.settling == Settling::settled);
      const FaultEffect& effect = book.effect(f, solution.situation.at());
      CHECK(effect.settling == Settling::settled);
      for (int t = 0; t < circuit.terminal_count; ++t) {
        const bool floats = anew.nodes.floating[static_cast<std::size_t>(t)] != 0;
        const double now = anew.nodes.volts[static_cast<std::size_t>(t)], was = solution.terminal_volts[static_cast<std::size_t>(t)].number();
        const Reading* reading = find_reading(effect, TerminalId{t});
        if (floats) {
          CHECK_MESSAGE((std::isnan(was) || (reading && std::isnan(reading->volts))), "fault " << f << " terminal " << m.build.terminals[static_cast<std::size_t>(t)].name);
          continue;
        }
        const double ours = reading ? reading->volts : was;
        CHECK_MESSAGE(std::abs(ours - now) < 0.15, "fault " << f << " situation " << solution.situation.index << " terminal " << m.build.terminals[static_cast<std::size_t>(t)].name
                                                            << ": " << ours << " against " << now << ", sound " << was);
        ++compared;
      }
      const AnewView view{circuit, anew};
      for (std::size_t p = 0; p < m.build.parts.size(); ++p)
        for (std::size_t i = 0; i < m.build.parts[p].insides.size(); ++i) {
          if (m.build.parts[p].insides[i].type != InsideType::lamp) continue;
          const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
          if (ref == fault.inside) continue;
          const Expected before = observed(m.build.parts[p].insides[i], solution.insides[p][i]);
          const Expected after = observed(m.build.parts[p].insides[i], observe(m.build, circuit, ref, view));
          CHECK_MESSAGE(has_change(effect, ref, after) == (before != after), "fault " << f << " situation " << solution.situation.index << " lamp of " << m.build.parts[p].id);
        }
    }
  }
  CHECK(compared > 20000);
}

TEST_CASE("what a person would see: relay wire, burnt lamp, chafed wire, stuck contact, loose earth") {
  const BuildMaker m = make_machine(1, 3);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  const InsideRef lamp_ref = m.inside("lamp0-0", "lamp"), side = m.inside("side0-0", "lamp");
  const std::size_t on = 3;  // situation s3: function 0 is on, engine running
  REQUIRE(observed(m.build.part(lamp_ref.part).insides[0], solutions[on].insides[lamp_ref.part.at()][0]) == Expected::on);

  const std::size_t coil_wire = find_fault(book, FaultType::wire_open, [&](const Fault& f) { return m.build.wire(f.wire).to == m.find("relay0-0.86"); });
  REQUIRE(coil_wire < book.faults.size());
  CHECK(has_change(book.effect(coil_wire, on), lamp_ref, Expected::off));
  CHECK(has_change(book.effect(coil_wire, on), m.inside("relay0-0", "coil"), Expected::off));

  const std::size_t burnt = find_fault(book, FaultType::element_dead, [&](const Fault& f) { return f.inside == lamp_ref; });
  CHECK(has_change(book.effect(burnt, on), lamp_ref, Expected::off));
  CHECK(!has_change(book.effect(burnt, on), side, Expected::off));

  const std::size_t chafed = find_fault(book, FaultType::wire_to_earth, [&](const Fault& f) { return m.build.wire(f.wire).to == m.find("fed0-0"); });
  REQUIRE(book.effect(chafed, on).blown.size() == 1);
  CHECK(book.effect(chafed, on).blown[0] == m.inside("fuse0-0", "fuse"));
  CHECK(has_change(book.effect(chafed, on), side, Expected::off));
  CHECK(book.effect(chafed, 0).blown.empty());

  const std::size_t stuck = find_fault(book, FaultType::contact_stuck, [&](const Fault& f) { return f.inside == m.inside("relay0-0", "contact-coil"); });
  const std::size_t dark = 4;  // key on, function 0 off
  REQUIRE(observed(m.build.part(lamp_ref.part).insides[0], solutions[dark].insides[lamp_ref.part.at()][0]) == Expected::off);
  CHECK(has_change(book.effect(stuck, dark), lamp_ref, Expected::on));
  CHECK(book.effect(stuck, 0).changes.empty());

  const std::size_t phase = find_fault(book, FaultType::wire_open, [&](const Fault& f) { return m.build.wire(f.wire).from == m.find("generator0-0.W"); });
  REQUIRE(phase < book.faults.size());
  const std::size_t regulator = find_fault(book, FaultType::charger_dead, [&](const Fault&) { return true; });
  CHECK(has_change(book.effect(regulator, 1), m.inside("regulator0-0", "regulator"), Expected::off));
}

TEST_CASE("both joints of a wire are one fault to the circuit; weights add up to the trade's") {
  const BuildMaker m = make_machine(1, 2);
  const FaultBook book = solve_faults(m.build, solve_all(m.build), {});
  double bulbs = 0;
  for (std::size_t f = 0; f < book.faults.size(); ++f) {
    const Fault& fault = book.faults[f];
    if (f + 1 < book.faults.size() && fault.type == FaultType::bad_joint && book.faults[f + 1].type == FaultType::bad_joint && book.faults[f + 1].wire == fault.wire)
      CHECK(book.effect_of[f] == book.effect_of[f + 1]);
    const bool is_bulb = fault.type == FaultType::element_dead && m.build.part(fault.inside.part).insides[static_cast<std::size_t>(fault.inside.inside)].type == InsideType::lamp;
    if (is_bulb) bulbs += fault.weight;
  }
  CHECK(bulbs == doctest::Approx(25));
}
