// SPDX-License-Identifier: MIT
#include "solve/conductor.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loomfolio {
namespace {

struct AreaFigure {
  double area;    // mm2
  double figure;  // ohm/km or mm2
};

// IEC 60228:2004 table 3, class 5 plain copper, ohm/km at 20 degC; rows below 0.5: ISO 6722-1, from memory.
constexpr AreaFigure class_5[] = {{0.13, 136}, {0.22, 84.4}, {0.35, 54.4}, {0.5, 39.0},  {0.75, 26.0}, {1, 19.5},
                                  {1.5, 13.3}, {2.5, 7.98},  {4, 4.95},    {6, 3.30},    {10, 1.91},   {16, 1.21},
                                  {25, 0.78},  {35, 0.554},  {50, 0.386},  {70, 0.272},  {95, 0.206}};

// Trade copies of the marine table: SAE minimum area in circular mils by gauge.
struct GaugeMetal {
  int gauge;
  double circular_mils;
};
constexpr GaugeMetal sae_least[] = {{18, 1537},  {16, 2336},  {14, 3702},  {12, 5833},   {10, 9343},   {8, 14810},  {6, 24538},
                                    {4, 37360},  {2, 62450},  {1, 77790},  {0, 98980},   {-1, 125100}, {-2, 158600}, {-3, 205500}};

constexpr double square_mm_per_cmil = 5.067075e-4;
constexpr double copper_ohm_mm2_per_km = 17.241;  // IACS 100 %, NBS Handbook 100
constexpr double askew = 1.12;  // strands lie askew, are tinned, and vary: what AC 43.13-1B table 11-9 has over the bare metal

// Straight in log-log between rows; beyond the ends the product of area and figure stays.
double between_rows(double area) {
  const auto* first = std::begin(class_5);
  const auto* last = std::end(class_5) - 1;
  if (area <= first->area) return first->figure * first->area / area;
  if (area >= last->area) return last->figure * last->area / area;
  const auto* high = std::lower_bound(first, last + 1, area, [](const AreaFigure& row, double a) { return row.area < a; });
  const auto* low = high - 1;
  const double step = high->figure / low->figure;
  if (area == high->area) return low->figure * step;
  return low->figure * std::pow(step, std::log(area / low->area) / std::log(high->area / low->area));
}

}  // namespace

Millimetres awg_diameter(int gauge) { return Millimetres(0.127 * std::pow(92.0, (36 - gauge) / 39.0)); }

SquareMillimetres awg_area(int gauge) {
  const double d = awg_diameter(gauge).number();
  return SquareMillimetres(std::numbers::pi / 4 * d * d);
}

double circular_mils(SquareMillimetres area) { return area.number() / square_mm_per_cmil; }

std::string awg_text(int gauge) {
  return (gauge > 0 ? std::to_string(gauge) : std::to_string(1 - gauge) + "/0") + " AWG";
}

SquareMillimetres least_metal(const ConductorSize& size) {
  if (size.system == SizeSystem::metric) return size.area;
  for (const GaugeMetal& row : sae_least)
    if (std::abs(awg_area(row.gauge) / size.area - 1) < 0.02) return SquareMillimetres(row.circular_mils * square_mm_per_cmil);
  return size.area * 0.92;
}

ConductorSize size_of(const Wire& wire) {
  if (wire.area.number() <= 0) return {SquareMillimetres(1), SizeSystem::metric};
  return {wire.area, wire.size_text.ends_with("AWG") ? SizeSystem::awg : SizeSystem::metric};
}

Ohms resistance_at_20(const ConductorSize& size) {
  if (size.system == SizeSystem::awg) return Ohms(askew * copper_ohm_mm2_per_km / least_metal(size).number() / 1000);
  return Ohms(between_rows(size.area.number()) / 1000);
}

double copper_factor(Celsius temperature) { return (234.5 + temperature.number()) / 254.5; }

Ohms resistance_per_metre(const ConductorSize& size, Celsius temperature) {
  return resistance_at_20(size) * copper_factor(temperature);
}

Metres length_of(const Wire& wire) { return wire.length.value_or(Metres(1)); }

Ohms wire_resistance(const Wire& wire, Celsius temperature) {
  return resistance_per_metre(size_of(wire), temperature) * length_of(wire).number();
}

}  // namespace loomfolio
