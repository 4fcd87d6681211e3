// SPDX-License-Identifier: MIT
// Quantities as written in a spec: a number and its unit.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.h"
#include "diag/diagnostic.h"

namespace loomfolio {

/// What a quantity measures. The number read is in the unit named here.
enum class Dimension : std::uint8_t {
  paper_length,  ///< mm
  loom_length,   ///< m
  area,          ///< mm2
  voltage,       ///< V
  current,       ///< A
  resistance,    ///< ohm
  power,         ///< W
  charge,        ///< Ah
  temperature,   ///< degC
  time,          ///< s
  torque,        ///< Nm
};

/// The least and the greatest sensible number, both allowed, in the dimension's unit.
struct Limits {
  double least = 0, most = 0;
};

/// Why a text is no quantity of the dimension asked for.
struct QuantityFault {
  DiagnosticId id{};
  std::string message, hint;
};

/// Reads "2.5 mm2", "14 AWG", "350mm". Nothing, and `fault`, when it is none, has a wrong unit or lies outside
/// `limits`.
std::optional<double> parse_quantity(std::string_view text, Dimension dimension, Limits limits, QuantityFault& fault);

/// "`mm2`, `AWG`": the units that fit.
std::string list_units(Dimension dimension);
/// "a length", "a current".
std::string_view call_dimension(Dimension dimension);
/// A number of the dimension with its unit: "0.5 A".
std::string print_quantity(double number, Dimension dimension);

/// Metal of an American wire gauge: ASTM B258, d = 0.127 mm x 92^((36 - n) / 39); 1/0 is gauge 0, 4/0 gauge -3.
SquareMillimetres area_of_gauge(int gauge);

}  // namespace loomfolio
