// SPDX-License-Identifier: MIT
// The heat a metre of wire makes must leave it:
//
//     I2 R(Tc)  =  (Tc - Ts) / T1  =  pi D (hc + hr) (Ts - Ta)
//
// through the insulation (T1 = rho / 2 pi ln(D / d)), then by moving air and by radiation. hc is a horizontal cylinder's after
// Churchill and Chu 1975 with air by power laws (textbook relations, from memory); the outcome is held against the published tables
// in the tests. Surface temperature Ts is found by halving: what the insulation passes falls with Ts, what the air takes rises.
#include "solve/ampacity.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace loomfolio {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double kelvin = 273.15;
constexpr double stefan_boltzmann = 5.670374e-8;  // W/(m2 K4)
constexpr double gravity = 9.80665;               // m/s2
constexpr double prandtl = 0.71;                  // of air
constexpr double copper_heat = 3.45e6;            // J/(m3 K)

double convection(double surface, double air, double diameter) {
  const double film = (surface + air) / 2 + kelvin;
  const double conducts = 0.0241 * std::pow(film / kelvin, 0.81);
  const double viscosity = 1.32e-5 * std::pow(film / kelvin, 1.76);
  const double rayleigh = gravity * (surface - air) * diameter * diameter * diameter * prandtl / (film * viscosity * viscosity);
  const double shape = std::pow(1 + std::pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27);
  const double nusselt = std::pow(0.60 + 0.387 * std::pow(std::max(rayleigh, 0.0), 1.0 / 6) / shape, 2);
  return conducts * nusselt / diameter;
}

double radiation(double surface, double air, double emissivity) {
  const double s = surface + kelvin, a = air + kelvin;
  return emissivity * stefan_boltzmann * (s * s + a * a) * (s + a);
}

// Bundle curves: rows by number of wires 1 .. 19, columns 20, 40, 60, 80, 100 % of the bundle's capacity in use.
constexpr double bundle_rows[19][5] = {
    {1, 1, 1, 1, 1},
    {0.9675, 0.92, 0.91, 0.87, 0.825},
    {0.935, 0.855, 0.815, 0.77, 0.725},
    {0.9075, 0.805, 0.75, 0.705, 0.66},
    {0.875, 0.76, 0.695, 0.65, 0.61},
    {0.85, 0.725, 0.655, 0.605, 0.5725},
    {0.82, 0.695, 0.625, 0.57, 0.54},
    {0.795, 0.6675, 0.595, 0.5425, 0.5125},
    {0.775, 0.645, 0.575, 0.52, 0.485},
    {0.755, 0.6225, 0.55, 0.5, 0.465},
    {0.735, 0.6, 0.53, 0.48, 0.445},
    {0.715, 0.585, 0.515, 0.465, 0.43},
    {0.6975, 0.5675, 0.495, 0.4475, 0.415},
    {0.685, 0.5525, 0.48, 0.435, 0.3975},
    {0.67, 0.54, 0.465, 0.42, 0.385},
    {0.6575, 0.5275, 0.455, 0.41, 0.37},
    {0.645, 0.515, 0.4425, 0.3975, 0.36},
    {0.635, 0.505, 0.4325, 0.3875, 0.35},
    {0.625, 0.495, 0.4225, 0.38, 0.3425}};
// 35 wires at 20 %: 0.52, from memory. The same fall is taken for the other columns: 0.625 (19 / N)^0.3012.
const double bundle_fall = std::log(0.625 / 0.52) / std::log(35.0 / 19);

// The curves fall with about the 0.37th power of the load share for 19 wires, the 0.10th for two; below their 20 % they are continued
// with half of that, from memory, up to 1: a bundle that hardly works cools the one wire that does.
constexpr double below_curves = 0.2, least_curve_share = 0.2;

double bundle_row(int wires, double load_share) {
  const double* row = bundle_rows[std::clamp(wires, 1, 19) - 1];
  const double place = std::clamp((load_share - 0.2) / 0.2, 0.0, 4.0);
  const auto low = std::min(static_cast<std::size_t>(place), std::size_t{3});
  return row[low] + (row[low + 1] - row[low]) * (place - static_cast<double>(low));
}

}  // namespace

HeatBalance balance_heat(const HeatBalanceRequest& request) {
  const double rating = request.rating.number(), air = request.ambient.number();
  if (rating <= air) return {Amperes(0), request.ambient, 0, 0};
  const double outside = request.outside.number() / 1000, inside = request.conductor.number() / 1000;
  const double through = request.thermal_resistivity / (2 * pi) * std::log(std::max(outside / inside, 1.0001));
  double low = air, high = rating;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    const double passed = (rating - middle) / through;
    const double taken = pi * outside * (convection(middle, air, outside) + radiation(middle, air, request.emissivity)) * (middle - air);
    (taken < passed ? low : high) = middle;
  }
  const double watts = (rating - high) / through;
  const double ohms = request.per_metre_at_20.number() * copper_factor(request.rating);
  return {Amperes(std::sqrt(watts / ohms)), Celsius(high), convection(high, air, outside), radiation(high, air, request.emissivity)};
}

HeatBalanceRequest heat_balance_of(const Wire& wire, Celsius ambient) {
  HeatBalanceRequest request;
  const ConductorSize size = size_of(wire);
  request.per_metre_at_20 = resistance_at_20(size);
  request.outside = outside_diameter(wire).most;
  // A bunched conductor is about 1.15 times as thick as the solid one of its metal (JIS C 3406 rows: 1.11 to 1.19).
  const double stranded = 1.15 * std::sqrt(4 * size.area.number() / pi);
  request.conductor = Millimetres(std::min(stranded, request.outside.number() - 0.4));
  request.rating = insulation_rating(wire.insulation);
  request.ambient = ambient;
  request.thermal_resistivity = wire.insulation == Insulation::cross_linked ? 3.5 : 5.0;
  return request;
}

double bundle_factor(int wires, double load_share) {
  const double factor = bundle_row(wires, load_share);
  const double crowded = wires <= 19 ? factor : factor * std::pow(19.0 / wires, bundle_fall);
  if (load_share >= least_curve_share || wires <= 1) return crowded;
  return std::min(1.0, crowded * std::pow(least_curve_share / std::max(load_share, 0.01), below_curves));
}

Amperes ampacity(const Wire& wire, Celsius ambient, Bundle bundle) {
  return balance_heat(heat_balance_of(wire, ambient)).amperes * bundle_factor(bundle.wires, bundle.load_share);
}

double short_circuit_factor(Celsius start, Celsius end) {
  return 226 * std::sqrt(std::log((234.5 + end.number()) / (234.5 + start.number())));
}

Celsius short_circuit_limit(Insulation insulation) {
  switch (insulation) {
    case Insulation::cross_linked: return Celsius(250);
    case Insulation::silicone: return Celsius(350);
    case Insulation::thin_wall:
    case Insulation::thick_wall:
    case Insulation::battery_cable: return Celsius(160);
  }
  return Celsius(160);
}

// dT/dt = (I2 R20 (1 + a (T - 20)) - G (T - Ta)) / C is a straight line in T; G is such that `carries` holds the rating.
Seconds withstands(const Wire& wire, Celsius ambient, Amperes carries, Amperes current) {
  const ConductorSize size = size_of(wire);
  const double start = insulation_rating(wire.insulation).number(), end = short_circuit_limit(wire.insulation).number();
  const double ohms = resistance_at_20(size).number(), air = ambient.number();
  const double heat = least_metal(size).number() * 1e-6 * copper_heat;
  const double rise = std::max(start - air, 1.0);
  const double gives = carries.number() * carries.number() * ohms * copper_factor(Celsius(start)) / rise;
  const double square = current.number() * current.number() * ohms;
  const auto speed = [&](double temperature) {
    return (square * copper_factor(Celsius(temperature)) - gives * (temperature - air)) / heat;
  };
  const double first = speed(start), last = speed(end);
  if (first <= 0 || last <= 0) return Seconds(std::numeric_limits<double>::infinity());
  const double ratio = last / first;
  if (std::abs(ratio - 1) < 1e-9) return Seconds((end - start) / first);
  return Seconds((end - start) / (last - first) * std::log(ratio));
}

Amperes melting_current(double circular_mils, Seconds time, Celsius ambient) {
  const double ratio = (1083 - ambient.number()) / (234 + ambient.number()) + 1;
  return Amperes(circular_mils * std::sqrt(std::log10(ratio) / (33 * time.number())));
}

}  // namespace loomfolio
