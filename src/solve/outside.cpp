// SPDX-License-Identifier: MIT
// Outside diameters over the insulation, greatest, in mm: defaults for seal fit and for the heat balance. A page that prints one
// says that it is a default; the figure on the reel in hand goes before it.
#include <algorithm>

#include "solve/conductor.h"

namespace loomfolio {
namespace {

using enum FigureStatus;

// Thin wall: trade data sheet quoting ISO 6722 / LV 112 type B; rows of 0.22, 0.35, 1.25, 5, 8, 16 and up ISO 6722-1 from memory.
const std::vector<OutsideRow> thin_wall = {
    {0.22, 1.2, memory}, {0.35, 1.4, memory}, {0.5, 1.7, trade}, {0.75, 1.9, trade}, {1, 2.1, trade},    {1.25, 2.3, memory},
    {1.5, 2.4, trade},   {2, 2.8, trade},     {2.5, 3.0, trade}, {3, 3.4, trade},    {4, 3.7, trade},    {4.5, 4.1, trade},
    {6, 4.3, trade},     {8.5, 5.6, trade},   {10, 6.0, trade},  {16, 7.2, memory},  {25, 8.7, memory},  {35, 10.4, memory},
    {50, 12.2, memory}};

// Thick wall: ISO 6722-1, from memory.
const std::vector<OutsideRow> thick_wall = {{0.5, 2.3, memory}, {0.75, 2.5, memory}, {1, 2.7, memory},   {1.5, 3.0, memory},
                                            {2.5, 3.6, memory}, {4, 4.4, memory},    {6, 5.0, memory},   {10, 6.5, memory},
                                            {16, 8.3, memory},  {25, 10.4, memory},  {35, 11.6, memory}, {50, 13.5, memory},
                                            {70, 15.5, memory}};

// Cross-linked: one trade data sheet quoting SAE J1128 (20 to 8 AWG), taken as greatest.
const std::vector<OutsideRow> cross_linked = {{0.518, 2.4, trade}, {0.823, 2.6, trade}, {1.309, 3.0, trade}, {2.081, 3.5, trade},
                                              {3.309, 4.1, trade}, {5.261, 4.8, trade}, {8.366, 5.9, trade}};

// Battery cable: JIS C 3406 rows 8 to 100 mm2, trade data sheet.
const std::vector<OutsideRow> battery_cable = {{5.228, 4.9, trade},  {7.952, 5.8, trade},  {10.02, 6.9, trade},
                                               {13.36, 8.0, trade},  {20.61, 8.8, trade},  {35.19, 11.5, trade},
                                               {42.73, 12.1, trade}, {54.29, 13.8, trade}, {63.84, 14.4, trade},
                                               {84.96, 17.0, trade}, {109.1, 18.6, trade}};

// Silicone lead: no table found; the thick-wall figures stand in, from memory.

double between(const OutsideRow& low, const OutsideRow& high, double area) {
  return low.most + (high.most - low.most) * (area - low.area) / (high.area - low.area);
}

}  // namespace

const std::vector<OutsideRow>& outside_rows(Insulation insulation) {
  switch (insulation) {
    case Insulation::thin_wall: return thin_wall;
    case Insulation::cross_linked: return cross_linked;
    case Insulation::battery_cable: return battery_cable;
    case Insulation::thick_wall:
    case Insulation::silicone: return thick_wall;
  }
  return thick_wall;
}

OutsideDiameter outside_diameter(const Wire& wire) {
  if (wire.outside) return {*wire.outside, given};
  const auto& rows = outside_rows(wire.insulation);
  const double area = size_of(wire).area.number();
  for (const OutsideRow& row : rows)
    if (std::abs(area / row.area - 1) < 0.015) {
      const bool stands_in = wire.insulation == Insulation::silicone;
      return {Millimetres(row.most), stands_in ? memory : row.status};
    }
  // No such row: the next larger row's figure would be safe for a hole, but not for a seal; take the straight line, from memory.
  std::size_t high = 1;
  while (high + 1 < rows.size() && rows[high].area < area) ++high;
  return {Millimetres(std::max(0.8, between(rows[high - 1], rows[high], area))), memory};
}

Celsius insulation_rating(Insulation insulation) {
  switch (insulation) {
    case Insulation::cross_linked: return Celsius(125);
    case Insulation::silicone: return Celsius(180);
    case Insulation::thin_wall:
    case Insulation::thick_wall:
    case Insulation::battery_cable: return Celsius(105);
  }
  return Celsius(105);
}

}  // namespace loomfolio
