// SPDX-License-Identifier: MIT
#include "solve/battery.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/branch_law.h"
#include "solve/defaults.h"
#include "solve/settle.h"
#include "solve/supply.h"

namespace loomfolio {
namespace {

constexpr double self_discharge_a_month = 0.03;

template <class Visit>
void for_each_inside(const Build& build, InsideType type, Visit visit) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i)
      if (build.parts[p].insides[i].type == type) visit(InsideRef{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, build.parts[p].insides[i]);
}

const InsideState& state_of(const Solution& solution, InsideRef ref) {
  return solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
}

ChargeBalance balance(const Build& build, const Solution& solution) {
  ChargeBalance b;
  b.situation = solution.situation;
  bool has_limit = true;
  for_each_inside(build, InsideType::charger, [&](InsideRef ref, const Inside& inside) {
    const InsideState& state = state_of(solution, ref);
    b.given += Amperes(std::max(0.0, -state.amperes.number()));
    if (inside.power && state.is_on) b.most += *inside.power / inside.at_voltage.value_or(build.electrics.running);
    else if (state.is_on) has_limit = false;
  });
  if (!has_limit) b.most = Amperes(0);
  // Of batteries in series each counts by its share of the volts: one current through both is one current.
  for_each_inside(build, InsideType::source, [&](InsideRef ref, const Inside& inside) {
    const double share = nominal_share(build.electrics, inside);
    b.battery += state_of(solution, ref).amperes * share;
    b.at_battery = std::max(b.at_battery, state_of(solution, ref).volts / share);
  });
  b.loads = b.given - b.battery;
  return b;
}

struct Solved {
  Circuit circuit;
  Settled settled;
  double volts(int node) const { return settled.nodes.volts[static_cast<std::size_t>(node)]; }
  const Branch* branch(InsideRef ref) const {
    const int number = circuit.inside_branch[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    return number < 0 ? nullptr : &circuit.branches[static_cast<std::size_t>(number)];
  }
  double over(const Branch& b) const { return volts(b.a) - volts(b.b); }
};

Solved solve_with(const Build& build, const Situation& situation, const RelayState* relays, const CircuitOptions& options) {
  Solved solved;
  solved.circuit = make_circuit(build, situation, options);
  NodeSolver solver(solved.circuit);
  if (relays) {
    solved.settled.relays = *relays;
    solved.settled.nodes = solver.solve(*relays, Flash::lit, {});
  } else {
    solved.settled = settle(solved.circuit, solver, rest_state(solved.circuit), Flash::lit);
  }
  return solved;
}

std::optional<RestDrain> find_rest(const Build& build) {
  Situation at_rest;
  at_rest.name = "rest";
  const Solved solved = solve_with(build, at_rest, nullptr, usual_options(build));
  std::optional<RestDrain> rest;
  for_each_inside(build, InsideType::source, [&](InsideRef ref, const Inside& inside) {
    if (!rest) rest.emplace();
    const double share = nominal_share(build.electrics, inside);
    if (inside.capacity) rest->capacity += *inside.capacity * share;
    if (const Branch* b = solved.branch(ref)) rest->drain -= Amperes(work(*b, solved.over(*b)).amperes) * share;
  });
  if (!rest) return rest;
  if (std::abs(rest->drain.number()) < 1e-7) rest->drain = Amperes(0);  // shut diodes' leaks of the model
  rest->self = Amperes(rest->capacity.number() * self_discharge_a_month / (30 * 24));
  rest->days_to_half = days_to_half(rest->capacity, rest->drain);
  rest->days_standing = days_to_half(rest->capacity, rest->drain + rest->self);
  return rest;
}

/// Volts of the machine's supply, from those over one battery: of batteries in series that is a share of them.
Volts supply_volts(const Build& build, InsideRef battery, Volts over) {
  const Inside& inside = build.part(battery.part).insides[static_cast<std::size_t>(battery.inside)];
  return Volts(std::abs(over.number())) / nominal_share(build.electrics, inside);
}

void find_cranking(const Build& build, const Solution& solution, InsideRef motor, std::vector<CrankingVolts>& found) {
  const Situation& situation = build.situations[solution.situation.at()];
  const Solved warm = solve_with(build, situation, &solution.relays, usual_options(build));
  CircuitOptions cold_options = usual_options(build);
  cold_options.battery_ohm_volts = standard::cold_cranking_ohm_volts_cold;
  const Solved cold = solve_with(build, situation, &solution.relays, cold_options);
  const InsideRef source = find_supply_poles(build).live;
  const Branch* battery = source.part.is_set() ? warm.branch(source) : nullptr;
  const Branch* turns = warm.branch(motor);
  if (!battery || !turns) return;
  CrankingVolts c;
  c.situation = solution.situation;
  c.motor = motor;
  c.warm_amperes = Amperes(std::abs(work(*turns, warm.over(*turns)).amperes));
  c.cold_amperes = Amperes(std::abs(work(*turns, cold.over(*turns)).amperes));
  c.warm_battery = supply_volts(build, source, Volts(warm.over(*battery)));
  c.cold_battery = supply_volts(build, source, Volts(cold.over(*battery)));
  c.warm_motor = Volts(std::abs(warm.over(*turns)));
  c.cold_motor = Volts(std::abs(cold.over(*turns)));
  // The motor's end that is nearer to the earthed pole's volts is its return.
  const double low = std::min(std::abs(warm.volts(turns->a)), std::abs(warm.volts(turns->b)));
  c.return_drop = Volts(low);
  c.feed_drop = c.warm_battery - c.warm_motor - c.return_drop;
  found.push_back(c);
}

// The battery as it is at that charge: its rest volts fall as tabled, its resistance rises, at half charge by a half (from memory).
CircuitOptions options_at(const Build& build, double charge) {
  CircuitOptions options = usual_options(build);
  const Volts nominal = build.electrics.nominal;
  options.emf = build.electrics.resting - (rest_volts(BatteryType::flooded, 1, nominal) - rest_volts(BatteryType::flooded, charge, nominal));
  options.battery_ohm_volts = standard::cold_cranking_ohm_volts * (2 - charge);
  return options;
}

bool cranks_at(const Build& build, const Solution& solution, double charge) {
  const Solved solved =
      solve_with(build, build.situations[solution.situation.at()], &solution.relays, options_at(build, charge));
  const InsideRef source = find_supply_poles(build).live;
  const Branch* battery = solved.branch(source);
  return battery && supply_volts(build, source, Volts(solved.over(*battery))) >= build.electrics.cranking;
}

// Between a charge at which it cranks and one at which it does not, halved; the worst of the situations that crank.
void find_end_of_cranking(const Build& build, const std::vector<Solution>& solutions, const std::vector<CrankingVolts>& cranking,
                          RestDrain& rest) {
  if (!cranking.empty()) rest.least_charge = 0;
  for (const CrankingVolts& one : cranking)
    for (const Solution& solution : solutions) {
      if (solution.situation != one.situation) continue;
      double high = 1, low = 0;
      if (!cranks_at(build, solution, high)) low = 1;
      else if (cranks_at(build, solution, low)) high = 0;
      while (high - low > 0.005) (cranks_at(build, solution, (high + low) / 2) ? high : low) = (high + low) / 2;
      rest.least_charge = std::max(rest.least_charge, high);
    }
  rest.least_charge = std::ceil(rest.least_charge * 10 - 1e-9) / 10;  // the volts of a charge are known to a tenth of it
  rest.days_to_no_crank = days_to_half(rest.capacity * (2 * (1 - rest.least_charge)), rest.drain + rest.self);
}

// Full and empty ends as tabled: share of charge, volts.
struct RestRow {
  double charge, volts;
};
constexpr RestRow flooded_rows[] = {{0, 11.9}, {0.25, 12.0}, {0.5, 12.2}, {0.75, 12.4}, {1, 12.7}};
constexpr RestRow sealed_rows[] = {{0.25, 12.0}, {0.5, 12.3}, {0.75, 12.6}, {1, 12.8}};

template <std::size_t N>
double between(const RestRow (&rows)[N], double RestRow::*from, double RestRow::*to, double at) {
  std::size_t high = 1;
  while (high + 1 < N && rows[high].*from < at) ++high;
  const RestRow &l = rows[high - 1], &h = rows[high];
  return l.*to + (h.*to - l.*to) * (at - l.*from) / (h.*from - l.*from);
}

}  // namespace

BatteryStudy study_battery(const Build& build, const std::vector<Solution>& solutions) {
  BatteryStudy study;
  study.rest = find_rest(build);
  for (const Solution& solution : solutions) {
    const EngineState engine = build.situations[solution.situation.at()].engine;
    if (engine == EngineState::running) study.riding.push_back(balance(build, solution));
    if (engine != EngineState::cranking) continue;
    for_each_inside(build, InsideType::motor, [&](InsideRef ref, const Inside&) {
      const bool is_starter = build.kind_of(build.part(ref.part)).group == "starting";
      if (is_starter && std::abs(state_of(solution, ref).amperes.number()) > 1) find_cranking(build, solution, ref, study.cranking);
    });
  }
  if (study.rest) find_end_of_cranking(build, solutions, study.cranking, *study.rest);
  return study;
}

double days_to_half(AmpereHours capacity, Amperes drain) {
  if (drain.number() <= 0) return std::numeric_limits<double>::infinity();
  return capacity.number() * 0.5 / (drain.number() * 24);
}

Volts rest_volts(BatteryType type, double charge, Volts nominal) {
  const double volts = type == BatteryType::flooded ? between(flooded_rows, &RestRow::charge, &RestRow::volts, charge)
                                                    : between(sealed_rows, &RestRow::charge, &RestRow::volts, charge);
  return Volts(volts) * (nominal.number() / 12);
}

double charge_from_rest_volts(BatteryType type, Volts volts, Volts nominal) {
  const double at = volts.number() * 12 / nominal.number();
  const double charge = type == BatteryType::flooded ? between(flooded_rows, &RestRow::volts, &RestRow::charge, at)
                                                     : between(sealed_rows, &RestRow::volts, &RestRow::charge, at);
  return std::clamp(charge, 0.0, 1.0);
}

}  // namespace loomfolio
