// SPDX-License-Identifier: MIT
#include "read/quantities.h"

#include <array>
#include <charconv>
#include <cmath>
#include <numbers>
#include <vector>

#include "base/text.h"
#include "read/findings.h"

namespace loomfolio {
namespace {

struct Unit {
  Dimension dimension;
  std::string_view text;
  double factor = 1;   ///< to the dimension's own unit: times this,
  double divisor = 1;  ///< divided by this, so that 350 mm is exactly 0.35 m
  double offset = 0;   ///< added before both
};

constexpr Unit units[] = {
    {Dimension::paper_length, "mm"},
    {Dimension::paper_length, "cm", 10},
    {Dimension::paper_length, "in", 25.4},
    {Dimension::loom_length, "mm", 1, 1000},
    {Dimension::loom_length, "cm", 1, 100},
    {Dimension::loom_length, "m"},
    {Dimension::loom_length, "in", 254, 10000},
    {Dimension::loom_length, "ft", 3048, 10000},
    {Dimension::area, "mm2"},
    {Dimension::area, "AWG"},
    {Dimension::voltage, "V"},
    {Dimension::voltage, "mV", 1, 1000},
    {Dimension::current, "A"},
    {Dimension::current, "mA", 1, 1000},
    {Dimension::resistance, "ohm"},
    {Dimension::resistance, "mohm", 1, 1000},
    {Dimension::resistance, "kohm", 1000},
    {Dimension::power, "W"},
    {Dimension::charge, "Ah"},
    {Dimension::temperature, "degC"},
    {Dimension::temperature, "degF", 5, 9, -32},
    {Dimension::time, "s"},
    {Dimension::time, "ms", 1, 1000},
    {Dimension::torque, "Nm"},
};

/// Other ways to write a unit, and ours.
constexpr std::array<std::string_view, 2> other_spellings[] = {
    {"mm²", "mm2"},  {"sqmm", "mm2"},  {"mm^2", "mm2"}, {"\u03A9", "ohm"}, {"\u2126", "ohm"}, {"mΩ", "mohm"},
    {"kΩ", "kohm"},  {"ohms", "ohm"},  {"R", "ohm"},    {"k", "kohm"},     {"°C", "degC"},    {"C", "degC"},
    {"°F", "degF"},  {"F", "degF"},    {"\"", "in"},    {"inch", "in"},    {"inches", "in"},  {"'", "ft"},
    {"feet", "ft"},  {"foot", "ft"},   {"volt", "V"},   {"volts", "V"},    {"amp", "A"},      {"amps", "A"},
    {"ampere", "A"}, {"amperes", "A"}, {"watt", "W"},   {"watts", "W"},    {"N m", "Nm"},     {"N*m", "Nm"},
    {"meter", "m"},  {"metre", "m"},   {"metres", "m"}, {"ga", "AWG"},     {"gauge", "AWG"},  {"sec", "s"},
};

const Unit* find_unit(std::string_view text, Dimension dimension) {
  for (const Unit& unit : units)
    if (unit.dimension == dimension && unit.text == text) return &unit;
  return nullptr;
}

/// The unit of this dimension that was probably meant.
std::string guess_unit(std::string_view text, Dimension dimension) {
  for (const Unit& unit : units)
    if (unit.dimension == dimension && lower_case(unit.text) == lower_case(text)) return std::string(unit.text);
  for (const auto& [other, ours] : other_spellings)
    if (lower_case(other) == lower_case(text) && find_unit(ours, dimension)) return std::string(ours);
  // "2.5 mm" for a conductor: the square was forgotten
  if (const std::string squared = std::string(text) + "2"; find_unit(squared, dimension)) return squared;
  return {};
}

/// "14", "1/0", "4/0": the gauge as a number, 1/0 being 0 and 4/0 being -3.
std::optional<int> read_gauge(std::string_view text) {
  if (text.size() == 3 && text.ends_with("/0") && text[0] >= '1' && text[0] <= '4') return 1 - (text[0] - '0');
  int gauge = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), gauge);
  if (end.ec != std::errc{} || end.ptr != text.data() + text.size() || gauge < 1 || gauge > 36) return std::nullopt;
  return gauge;
}

struct Pieces {
  std::string number, unit;
};

/// Parts the number from its unit at the first character that cannot belong to a number.
Pieces part(std::string_view text) {
  std::size_t i = 0;
  while (i < text.size()) {
    const char c = text[i];
    const bool is_sign = c == '+' || c == '-';
    const bool is_exponent = (c == 'e' || c == 'E') && i > 0 && i + 1 < text.size() &&
                             (text[i + 1] == '-' || text[i + 1] == '+' || (text[i + 1] >= '0' && text[i + 1] <= '9'));
    if (!is_sign && !is_exponent && (c < '0' || c > '9') && c != '.' && c != ',' && c != '/') break;
    ++i;
  }
  return {trimmed(text.substr(0, i)), trimmed(text.substr(i))};
}

std::optional<double> read_number(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  double number = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
  if (end.ptr != text.data() + text.size() || text.empty()) return std::nullopt;
  if (end.ec == std::errc::result_out_of_range) return HUGE_VAL;
  return end.ec == std::errc{} ? std::optional(number) : std::nullopt;
}

std::string ask_for_unit(Dimension dimension) {
  return std::string(call_dimension(dimension)) + " is written with one of " + list_units(dimension);
}

QuantityFault explain_number(const std::string& written, Dimension dimension) {
  const std::string what = std::string(call_dimension(dimension));
  if (written.find(',') != std::string::npos)
    return {DiagnosticId::not_a_number,
            quoted(written) + " is not a number; " + what + " has a decimal point, no comma",
            {}};
  return {DiagnosticId::not_a_number, quoted(written) + " is not a number; " + what + " is a number and a unit", {}};
}

QuantityFault explain_unit(std::string_view whole, const Pieces& pieces, Dimension dimension) {
  if (pieces.unit.empty())
    return {DiagnosticId::bare_number, quoted(whole) + " has no unit; " + ask_for_unit(dimension), {}};
  std::string hint;
  if (const std::string guess = guess_unit(pieces.unit, dimension); !guess.empty())
    hint = "write \"" + pieces.number + " " + guess + "\"";
  return {DiagnosticId::wrong_unit, "unit " + quoted(pieces.unit) + " does not fit; " + ask_for_unit(dimension), hint};
}

}  // namespace

SquareMillimetres area_of_gauge(int gauge) {
  const double diameter = 0.127 * std::pow(92.0, (36.0 - gauge) / 39.0);
  return SquareMillimetres(std::numbers::pi / 4 * diameter * diameter);
}

std::string_view call_dimension(Dimension dimension) {
  switch (dimension) {
    case Dimension::paper_length:
      return "a length";
    case Dimension::loom_length:
      return "a length";
    case Dimension::area:
      return "a conductor size";
    case Dimension::voltage:
      return "a voltage";
    case Dimension::current:
      return "a current";
    case Dimension::resistance:
      return "a resistance";
    case Dimension::power:
      return "a power";
    case Dimension::charge:
      return "a battery capacity";
    case Dimension::temperature:
      return "a temperature";
    case Dimension::time:
      return "a time";
    case Dimension::torque:
      return "a torque";
  }
  return "a quantity";
}

std::string list_units(Dimension dimension) {
  std::vector<std::string> fitting;
  for (const Unit& unit : units)
    if (unit.dimension == dimension) fitting.push_back("`" + std::string(unit.text) + "`");
  return join(fitting, ", ");
}

std::string print_quantity(double number, Dimension dimension) {
  for (const Unit& unit : units)
    if (unit.dimension == dimension && unit.factor == 1 && unit.divisor == 1)
      return shortest(number, 6) + " " + std::string(unit.text);
  return shortest(number, 6);
}

std::optional<double> parse_quantity(std::string_view text, Dimension dimension, Limits limits, QuantityFault& fault) {
  const std::string whole = trimmed(text);
  const Pieces pieces = part(whole);
  if (pieces.number.empty()) {
    fault = explain_number(whole, dimension);
    return std::nullopt;
  }
  const Unit* unit = find_unit(pieces.unit, dimension);
  const bool is_gauge = unit && unit->text == "AWG";
  std::optional<double> number;
  if (is_gauge) {
    const std::optional<int> gauge = read_gauge(pieces.number);
    if (!gauge) {
      fault = {DiagnosticId::out_of_range,
               quoted(whole) + " is no wire gauge; gauges run from 4/0 to 1/0 AWG and from 1 to 36 AWG",
               {}};
      return std::nullopt;
    }
    number = area_of_gauge(*gauge).number();
  } else {
    number = read_number(pieces.number);
    if (!number)
      fault = explain_number(pieces.number, dimension);
    else if (!unit)
      fault = explain_unit(whole, pieces, dimension);
    if (!number || !unit) return std::nullopt;
    number = (*number + unit->offset) * unit->factor / unit->divisor;
  }
  // A hair of slack, so that "0.5 in" may equal a limit given in millimetres.
  const double slack = 1e-9 * std::max(std::abs(limits.least), std::abs(limits.most));
  if (*number >= limits.least - slack && *number <= limits.most + slack) return number;
  fault = {DiagnosticId::out_of_range,
           quoted(whole) + " is out of range; here " + std::string(call_dimension(dimension)) + " is from " +
               print_quantity(limits.least, dimension) + " to " + print_quantity(limits.most, dimension),
           {}};
  return std::nullopt;
}

}  // namespace loomfolio
