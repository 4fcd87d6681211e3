// SPDX-License-Identifier: MIT
// Source texts and places in them.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loomfolio {

/// A text that was read: a build spec, a kind file, a words file.
struct SourceFile {
  std::string name;  ///< as the user gave it, for messages
  std::string text;
};

/// A byte range [begin, end) of one source file; file -1 means 'no place'.
struct Where {
  std::int32_t file = -1;
  std::uint32_t begin = 0, end = 0;
  bool is_set() const { return file >= 0; }
  friend auto operator<=>(const Where&, const Where&) = default;
};

/// Where an item of the spec was written: its whole table, and the value of each of its keys.
struct Origin {
  Where table;
  std::vector<std::pair<std::string, Where>> keys;
  /// The place of that key's value; the table's head when the key was not written.
  Where key(std::string_view name) const {
    for (const auto& [key_name, where] : keys)
      if (key_name == name) return where;
    return table;
  }
  bool has(std::string_view name) const {
    for (const auto& k : keys)
      if (k.first == name) return true;
    return false;
  }
};

/// All source files of a run, in the order they were opened.
struct Sources {
  std::vector<SourceFile> files;
};

}  // namespace loomfolio
