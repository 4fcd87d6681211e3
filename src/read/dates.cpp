// SPDX-License-Identifier: MIT
// Dates by ISO 8601: 2026-11-02.
#include <array>

#include "base/text.h"
#include "read/draft.h"

namespace loomfolio {
namespace {

int to_number(std::string_view digits) {
  int number = 0;
  for (const char c : digits) number = c >= '0' && c <= '9' && number >= 0 ? number * 10 + (c - '0') : -1;
  return number;
}

bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const int year = to_number(text.substr(0, 4)), month = to_number(text.substr(5, 2)),
            day = to_number(text.substr(8, 2));
  if (year < 1900 || month < 1 || month > 12 || day < 1) return false;
  constexpr std::array<int, 12> days = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool is_leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return day <= days[static_cast<std::size_t>(month - 1)] + (month == 2 && is_leap ? 1 : 0);
}

}  // namespace

std::string read_date(TableReader& table, Need need) {
  const TomlEntry* entry = table.take("date", need);
  if (!entry) return {};
  const bool is_plain = entry->value.type == TomlType::date;
  if (!is_plain && !table.expect_type(entry->value, TomlType::text, "date")) return {};
  const std::string text = trimmed(entry->value.text);
  if (is_date(text)) return text;
  table.report(DiagnosticId::bad_date, entry->value.where,
               quoted(text) + " is no date; a date is year-month-day, as in \"2026-11-02\"");
  return {};
}

}  // namespace loomfolio
