// SPDX-License-Identifier: MIT
// A table for other programs: named columns, and cells that are text, a number or nothing.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loomfolio {

/// monostate: not known, or there is none.
using PlainValue = std::variant<std::monostate, std::string, double>;

struct PlainTable {
  std::vector<std::string> columns;  ///< small letters and underscores; one with a unit ends in it: `length_mm`
  std::vector<std::vector<PlainValue>> rows;  ///< each as long as `columns`
};

/// Rounded to `decimals` digits after the point.
PlainValue plain_number(double number, int decimals);

/// RFC 4180 with a head; lines end in CR LF, nothing gives an empty field. A number has a point, whatever the language.
std::string write_csv(const PlainTable& table);

/// An array of objects, one a line; nothing gives null.
std::string write_json(const PlainTable& table);

}  // namespace loomfolio
