// SPDX-License-Identifier: MIT
// Copper conductors: metal area by gauge, resistance at a temperature, outside diameter over the insulation.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "model/build.h"

namespace loomfolio {

/// How a size was named. The two differ in metal: see resistance_at_20().
enum class SizeSystem : std::uint8_t { metric, awg };

struct ConductorSize {
  SquareMillimetres area;  ///< as named: nominal mm2, or the geometric area of the gauge
  SizeSystem system = SizeSystem::metric;
};

/// Diameter and area of a solid round conductor: 0.127 mm x 92^((36-n)/39), ASTM B258 (formula from memory; diameters agree
/// with published tables). `gauge`: 36 ... 1, 0 for 1/0, -1 for 2/0, -2 for 3/0, -3 for 4/0.
Millimetres awg_diameter(int gauge);
SquareMillimetres awg_area(int gauge);
/// Area in circular mils: 1 cmil = 5.067075e-4 mm2.
double circular_mils(SquareMillimetres area);
/// '14 AWG', '1/0 AWG'.
std::string awg_text(int gauge);

/// Metal that a wire sold as that gauge holds at least: SAE J378/J1127/J1128 minimum area (basis from memory, figures from
/// trade copies of the marine table); 0.92 of the geometric area where the table has no row.
SquareMillimetres least_metal(const ConductorSize& size);

/// Size of a wire as its spec names it; a wire still without size counts as 1 mm2.
ConductorSize size_of(const Wire& wire);

/// Greatest resistance of one metre at 20 degC. Metric: IEC 60228:2004 table 3, class 5 plain copper (below 0.5 mm2 ISO 6722,
/// from memory). Gauge: 17.241 ohm mm2/km (IACS, NBS Handbook 100) over
/// least_metal(), and 12 % more for strands askew, tinned and at the low end: the figures of AC 43.13-1B table 11-9 within 3 %,
/// that of 4/0 AWG 6 % below.
Ohms resistance_at_20(const ConductorSize& size);

/// Factor (234.5 + T) / 254.5 for copper, AC 43.13-1B page 11-22 and IEC 60228.
double copper_factor(Celsius temperature);
Ohms resistance_per_metre(const ConductorSize& size, Celsius temperature);

/// Length a wire is taken to have: its own, or 1 m where the spec gives none.
Metres length_of(const Wire& wire);
Ohms wire_resistance(const Wire& wire, Celsius temperature);

/// Where a figure came from, for a page that must say which was used.
enum class FigureStatus : std::uint8_t { given, published, trade, memory };

struct OutsideDiameter {
  Millimetres most;  ///< greatest outside diameter
  FigureStatus status = FigureStatus::memory;
};

/// Outside diameter over the insulation: the spec's own figure, else the default of the tables (ISO 6722, SAE J1127/J1128, JIS C 3406).
OutsideDiameter outside_diameter(const Wire& wire);

/// One published or remembered row of outside diameters.
struct OutsideRow {
  double area;  ///< mm2
  double most;  ///< mm
  FigureStatus status;
};
/// Rows of one family, by area.
const std::vector<OutsideRow>& outside_rows(Insulation insulation);

/// Conductor temperature that the insulation stands in service. Thin and thick wall 105 degC (ISO 6722 class B in vehicle use is
/// 100; the trade sheets say 105), cross-linked 125, silicone 180, battery cable 105. From memory except thin wall (trade sheet).
Celsius insulation_rating(Insulation insulation);

}  // namespace loomfolio
