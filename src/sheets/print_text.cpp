// SPDX-License-Identifier: MIT
#include "sheets/print_text.h"

#include <algorithm>

#include "base/text.h"

namespace loomfolio {
namespace {

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

std::string short_fingerprint(const std::string& fingerprint) {
  if (fingerprint.size() < 8) return fingerprint;
  return fingerprint.substr(0, 4) + " " + fingerprint.substr(4, 4);
}

}  // namespace loomfolio
