// SPDX-License-Identifier: MIT
// The keys of an element inside a part: which type takes which, what each must be, and where it is kept. Both a kind
// and a part that gives its own values write through this table.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "model/kind.h"
#include "read/table_reader.h"

namespace loomfolio {

/// A key that holds a quantity (`words` empty) or one of a few words.
struct InsideKey {
  std::string_view key;
  QuantityRule rule{};
  std::span<const std::string_view> words;
  void (*set_number)(Inside&, double) = nullptr;
  void (*set_word)(Inside&, const std::string&) = nullptr;
};

/// What elements of one type take.
struct InsideTypeRule {
  std::string_view word;  ///< as written: "lamp"
  InsideType type;
  std::vector<std::string_view> keys;
  std::vector<std::string_view> one_of;  ///< at least one of these must be given; may be empty
};

const InsideKey* find_inside_key(std::string_view key);
const std::vector<InsideTypeRule>& inside_type_rules();

/// Writes a value as text into an element; false, and `fault`, when the text does not fit the key.
bool write_inside_key(Inside& inside, const InsideKey& key, const std::string& text, QuantityFault& fault);

}  // namespace loomfolio
