// SPDX-License-Identifier: MIT
#include "commands/tables/compare_tables.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"

namespace loomfolio {
namespace {

constexpr double share_told = 0.02, least_told = 0.01;  // of a computed figure; A or V

std::string say(const PlainValue& value) {
  if (const auto* number = std::get_if<double>(&value)) return shortest(*number, 4);
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? "nothing" : text->find(' ') == std::string::npos ? *text : "'" + *text + "'";
}

using Row = std::vector<PlainValue>;
using KeyedRows = std::vector<std::pair<std::string, const Row*>>;

KeyedRows key_rows(const PlainTable& table, std::size_t keys) {
  KeyedRows keyed;
  std::map<std::string, int> seen;
  for (const Row& row : table.rows) {
    std::vector<std::string> words;
    for (std::size_t k = 0; k < keys; ++k) words.push_back(say(row[k]));
    std::string key = join(words, ", ");
    if (const int again = ++seen[key]; again > 1) key += " (" + std::to_string(again) + ")";
    keyed.emplace_back(std::move(key), &row);
  }
  return keyed;
}

const Row* find_row(const KeyedRows& rows, const std::string& key) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.first == key; });
  return found == rows.end() ? nullptr : found->second;
}

bool is_same(const PlainValue& older, const PlainValue& newer, const std::string& column) {
  const auto *a = std::get_if<double>(&older), *b = std::get_if<double>(&newer);
  const bool is_computed = column.ends_with("_A") || column.ends_with("_V");
  if (a == nullptr || b == nullptr || !is_computed) return older == newer;
  return std::abs(*a - *b) < std::max(least_told, share_told * std::max(std::abs(*a), std::abs(*b)));
}

std::string say_row(const PlainTable& table, const Row& row, std::size_t keys) {
  std::vector<std::string> words;
  for (std::size_t c = keys; c < row.size(); ++c)
    if (!std::holds_alternative<std::monostate>(row[c])) words.push_back(table.columns[c] + " " + say(row[c]));
  return join(words, ", ");
}

}  // namespace

std::vector<std::string> compare_tables(const PlainTable& older, const PlainTable& newer, std::size_t keys) {
  const KeyedRows before = key_rows(older, keys), after = key_rows(newer, keys);
  const bool is_one_value = newer.columns.size() == keys + 1;  // named by its row
  const auto name = [&](std::size_t column) { return is_one_value ? std::string() : newer.columns[column] + " "; };
  std::vector<std::string> lines;
  for (const auto& [key, row] : after) {
    const Row* earlier = find_row(before, key);
    if (earlier == nullptr) {
      lines.push_back("+ " + key + ": " + say_row(newer, *row, keys));
      continue;
    }
    std::vector<std::string> changes;
    for (std::size_t c = keys; c < row->size(); ++c)
      if (!is_same((*earlier)[c], (*row)[c], newer.columns[c]))
        changes.push_back(name(c) + say((*earlier)[c]) + " -> " + say((*row)[c]));
    if (!changes.empty()) lines.push_back(key + ": " + join(changes, ", "));
  }
  for (const auto& [key, row] : before)
    if (find_row(after, key) == nullptr) lines.push_back("- " + key + ": " + say_row(older, *row, keys));
  return lines;
}

}  // namespace loomfolio
