// SPDX-License-Identifier: MIT
// TOML as a small tree of our own, each value with its byte range. toml++ stays behind this header.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diag/diagnostic.h"

namespace loomfolio {

enum class TomlType : std::uint8_t { table, array, text, whole, decimal, truth, date };

struct TomlEntry;

struct TomlValue {
  TomlType type = TomlType::table;
  Where where;        ///< the value; for a table under a header, the header
  std::string text;   ///< text without its quotes; dates and numbers as written
  double number = 0;  ///< whole, decimal
  bool truth = false;
  std::vector<TomlValue> items;    ///< array
  std::vector<TomlEntry> entries;  ///< table, in the order of the file
  const TomlEntry* find(std::string_view key) const;
};

struct TomlEntry {
  std::string key;
  Where key_where;
  TomlValue value;
};

constexpr std::size_t most_source_bytes = 4u << 20;  ///< a larger file is refused unread
constexpr int most_nested_values = 32;               ///< arrays and inline tables within one another
constexpr int most_key_pieces = 16;                  ///< pieces of one dotted key

/// 'a text', 'an array': how a message calls a type.
std::string_view call_type(TomlType type);

/// The tree of `sources.files[file]`, or nothing and one finding that says where it cannot be read.
std::optional<TomlValue> parse_toml(const Sources& sources, std::int32_t file, Diagnostics& findings);

}  // namespace loomfolio
