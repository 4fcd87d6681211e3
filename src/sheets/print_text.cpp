// SPDX-License-Identifier: MIT
#include "sheets/print_text.h"

#include <cmath>

#include "base/text.h"

namespace loomfolio {
namespace {

constexpr double mm_per_inch = 25.4;
/// Keeps a number and its unit on one line.
constexpr const char* no_break_space = "\u00a0";

bool is_iso_day(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (i != 4 && i != 7 && (text[i] < '0' || text[i] > '9')) return false;
  const int month = (text[5] - '0') * 10 + text[6] - '0';
  return month >= 1 && month <= 12;
}

std::string without_leading_zero(const std::string& digits) {
  return digits.size() > 1 && digits[0] == '0' ? digits.substr(1) : digits;
}

}  // namespace

std::string print_date(const std::string& iso_day, const Words& words) {
  if (!is_iso_day(iso_day)) return iso_day;
  const std::string month = words("date.month_" + without_leading_zero(iso_day.substr(5, 2)));
  return words("date.day",
               {{"day", without_leading_zero(iso_day.substr(8, 2))}, {"month", month}, {"year", iso_day.substr(0, 4)}});
}

std::string print_length(Metres length, UnitSystem units) {
  if (units == UnitSystem::metric) return fixed(length.number() * 1000, 0);
  return fixed(length.number() * 1000 / mm_per_inch, 1);
}

std::string length_unit(UnitSystem units, const Words& words) {
  return words(units == UnitSystem::metric ? "unit.mm" : "unit.inch");
}

std::string print_small_length(Millimetres length, UnitSystem units, const Words& words) {
  const std::string number =
      units == UnitSystem::metric ? shortest(length.number(), 1) : fixed(length.number() / mm_per_inch, 2);
  return number + no_break_space + length_unit(units, words);
}

std::string print_wire_size(const Wire& wire) {
  std::string size = print_size(wire);
  if (const std::size_t unit = size.find("mm2"); unit != std::string::npos) size.replace(unit, 3, "mm\u00b2");
  if (const std::size_t space = size.find(' '); space != std::string::npos) size.replace(space, 1, no_break_space);
  return size;
}

std::string print_area(SquareMillimetres area) { return shortest(area.number(), 2) + no_break_space + "mm\u00b2"; }

std::string print_amperes(Amperes current) {
  const double size = std::abs(current.number());
  return fixed(size, size < 0.995 ? 2 : size < 99.95 ? 1 : 0);
}

std::string print_volts(Volts volts) { return fixed(volts.number(), 2); }

std::string print_rating(Amperes rating) { return shortest(rating.number(), 1) + no_break_space + "A"; }

std::string print_insulation(Insulation insulation, const Words& words) {
  switch (insulation) {
    case Insulation::thin_wall:
      return words("insulation.thin_wall");
    case Insulation::thick_wall:
      return words("insulation.thick_wall");
    case Insulation::cross_linked:
      return words("insulation.cross_linked");
    case Insulation::silicone:
      return words("insulation.silicone");
    case Insulation::battery_cable:
      return words("insulation.battery_cable");
  }
  return {};
}

const std::string& zone_name(const Zone& zone) { return zone.label.empty() ? zone.id : zone.label; }

std::string short_fingerprint(const std::string& fingerprint) {
  if (fingerprint.size() < 8) return fingerprint;
  return fingerprint.substr(0, 4) + " " + fingerprint.substr(4, 4);
}

}  // namespace loomfolio
