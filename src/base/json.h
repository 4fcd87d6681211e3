// SPDX-License-Identifier: MIT
// A small JSON reader: for placements that we wrote ourselves and for benchmark files.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loomfolio {

enum class JsonKind : std::uint8_t { null, boolean, number, text, array, object };

/// One value. Members keep their order; of members with one name the first counts.
struct Json {
  JsonKind kind = JsonKind::null;
  bool boolean = false;
  double number = 0;
  std::string text;
  std::vector<Json> items;
  std::vector<std::pair<std::string, Json>> members;

  /// The member of that name, or a null value.
  const Json& at(std::string_view name) const;
  std::string text_or(std::string_view otherwise) const;
  double number_or(double otherwise) const;
};

/// Reads one JSON text (RFC 8259), nested at most 200 deep. On bad input gives null and says in `error` what and at which byte.
Json read_json(std::string_view text, std::string& error);

/// `text` in quotes, escaped for JSON.
std::string quote_json(std::string_view text);

}  // namespace loomfolio
