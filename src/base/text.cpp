// SPDX-License-Identifier: MIT
#include "base/text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <utility>

namespace loomfolio {
namespace {

struct Decoded {
  char32_t character = 0xFFFD;
  std::size_t length = 1;
  bool sound = false;
};

Decoded decode(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return {first, 1, true};
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || text.size() < length) return {};
  char32_t value = first & (0xFF >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return {};
    value = (value << 6) | (byte(i) & 0x3F);
  }
  const char32_t least = length == 2 ? 0x80 : length == 3 ? 0x800 : 0x10000;
  if (value < least || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF)) return {};
  return {value, length, true};
}

bool is_combining(char32_t c) {
  return (c >= 0x300 && c <= 0x36F) || (c >= 0x591 && c <= 0x5BD) || (c >= 0x64B && c <= 0x65F) ||
         (c >= 0x1AB0 && c <= 0x1AFF) || (c >= 0x20D0 && c <= 0x20FF) || (c >= 0xFE20 && c <= 0xFE2F) || c == 0x200B ||
         c == 0x200D || (c >= 0xFE00 && c <= 0xFE0F);
}

bool is_wide(char32_t c) {
  return (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) ||
         (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
         (c >= 0xFFE0 && c <= 0xFFE6) || (c >= 0x1F300 && c <= 0x1F64F) || (c >= 0x20000 && c <= 0x3FFFD);
}

/// Optimal string alignment: insertions, deletions, changes, swaps of neighbours, each 1.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j) {
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[a.size()][b.size()];
}

}  // namespace

std::size_t count_characters(std::string_view utf8) {
  std::size_t count = 0;
  for (; !utf8.empty(); ++count) utf8.remove_prefix(decode(utf8).length);
  return count;
}

std::size_t count_columns(std::string_view utf8, std::size_t start_column) {
  std::size_t column = start_column;
  while (!utf8.empty()) {
    const Decoded d = decode(utf8);
    if (d.character == U'\t')
      column += 8 - column % 8;
    else if (!is_combining(d.character))
      column += is_wide(d.character) ? 2 : 1;
    utf8.remove_prefix(d.length);
  }
  return column - start_column;
}

std::string find_nearest(std::string_view word, const std::vector<std::string>& candidates) {
  if (word.size() > 64) return {};
  const std::size_t limit = std::max<std::size_t>(1, word.size() / 3);
  std::size_t best = limit + 1;
  std::string nearest;
  for (const std::string& candidate : candidates) {
    if (candidate.size() > word.size() + limit || word.size() > candidate.size() + limit) continue;
    const std::size_t distance = edit_distance(word, candidate);
    if (distance < best) best = distance, nearest = candidate;
  }
  return nearest;
}

std::string fixed(double number, int decimals) {
  char buffer[64];
  auto end = std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::fixed, decimals);
  if (end.ec != std::errc{})
    end = std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::scientific, 6);
  std::string text(buffer, end.ptr);
  if (text.starts_with('-') && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string shortest(double number, int decimals) {
  std::string text = fixed(number, decimals);
  if (text.find('.') != std::string::npos && text.find('e') == std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
  }
  return text;
}

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> pieces;
  for (;;) {
    const std::size_t at = text.find(separator);
    pieces.emplace_back(text.substr(0, at));
    if (at == std::string_view::npos) return pieces;
    text.remove_prefix(at + 1);
  }
}

std::string join(const std::vector<std::string>& words, std::string_view separator) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += separator;
    text += word;
  }
  return text;
}

bool is_numbered_before(std::string_view a, std::string_view b) {
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t i = 0, k = 0;
  const auto number_at = [&](std::string_view text, std::size_t& at) {
    const std::size_t first = std::min(text.find_first_not_of('0', at), text.size());
    at = first;
    while (at < text.size() && is_digit(text[at])) ++at;
    return text.substr(first, at - first);
  };
  while (i < a.size() && k < b.size()) {
    if (is_digit(a[i]) && is_digit(b[k])) {
      const std::string_view x = number_at(a, i), y = number_at(b, k);
      if (x.size() != y.size()) return x.size() < y.size();
      if (x != y) return x < y;
    } else if (a[i] != b[k]) {
      return static_cast<unsigned char>(a[i]) < static_cast<unsigned char>(b[k]);
    } else {
      ++i, ++k;
    }
  }
  return a.size() - i < b.size() - k;
}

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1));
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const Decoded d = decode(text);
    if (!d.sound) return false;
    text.remove_prefix(d.length);
  }
  return true;
}

std::string fill(std::string_view pattern, const std::vector<std::pair<std::string, std::string>>& values) {
  std::string text;
  while (!pattern.empty()) {
    const std::size_t open = pattern.find('{');
    text += pattern.substr(0, open);
    if (open == std::string_view::npos) break;
    pattern.remove_prefix(open);
    const std::size_t close = pattern.find('}');
    if (close == std::string_view::npos) {
      text += pattern;
      break;
    }
    const std::string_view name = pattern.substr(1, close - 1);
    const auto found = std::find_if(values.begin(), values.end(), [&](const auto& v) { return v.first == name; });
    if (found != values.end())
      text += found->second;
    else
      text += pattern.substr(0, close + 1);
    pattern.remove_prefix(close + 1);
  }
  return text;
}

std::string fingerprint(std::string_view text) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  std::string digits(16, '0');
  for (int i = 15; i >= 0; --i, hash >>= 4) digits[static_cast<std::size_t>(i)] = "0123456789abcdef"[hash & 15];
  return digits;
}

}  // namespace loomfolio
