// SPDX-License-Identifier: MIT
#include "commands/tables/plain_table.h"

#include <cmath>

#include "base/json.h"
#include "base/text.h"

namespace loomfolio {
namespace {

constexpr int most_decimals = 4;

std::string csv_field(const PlainValue& value) {
  if (const auto* number = std::get_if<double>(&value)) return shortest(*number, most_decimals);
  const auto* text = std::get_if<std::string>(&value);
  if (text == nullptr) return {};
  if (text->find_first_of("\",\r\n") == std::string::npos) return *text;
  std::string quoted = "\"";
  for (const char c : *text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

std::string json_value(const PlainValue& value) {
  if (const auto* number = std::get_if<double>(&value)) return shortest(*number, most_decimals);
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? "null" : quote_json(*text);
}

}  // namespace

PlainValue plain_number(double number, int decimals) {
  if (!std::isfinite(number)) return {};
  const double scale = std::pow(10.0, decimals);
  return std::round(number * scale) / scale;
}

std::string write_csv(const PlainTable& table) {
  std::string csv = join(table.columns, ",") + "\r\n";
  for (const auto& row : table.rows) {
    for (std::size_t c = 0; c < row.size(); ++c) csv += (c > 0 ? "," : "") + csv_field(row[c]);
    csv += "\r\n";
  }
  return csv;
}

std::string write_json(const PlainTable& table) {
  std::vector<std::string> objects;
  for (const auto& row : table.rows) {
    std::vector<std::string> members;
    for (std::size_t c = 0; c < table.columns.size(); ++c)
      members.push_back(quote_json(table.columns[c]) + ": " + json_value(row[c]));
    objects.push_back("  {" + join(members, ", ") + "}");
  }
  return objects.empty() ? "[]\n" : "[\n" + join(objects, ",\n") + "\n]\n";
}

}  // namespace loomfolio
