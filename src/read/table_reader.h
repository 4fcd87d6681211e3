// SPDX-License-Identifier: MIT
// One table of a TOML file, asked key by key. It remembers which keys were asked for, so that those left over are
// unknown.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "diag/diagnostic.h"
#include "diag/source.h"
#include "read/findings.h"
#include "read/quantities.h"
#include "read/toml_tree.h"

namespace loomfolio {

/// Must the key be there?
enum class Need : std::uint8_t { must, may };

/// A word and what it stands for, as in `form = "blade"`.
template <class T>
struct Choice {
  std::string_view word;
  T meaning;
};

/// What a quantity must be.
struct QuantityRule {
  Dimension dimension;
  Limits limits;
};

/// A text and where it stands.
struct PlacedText {
  std::string text;
  Where where;
};

/// An id's characters: letters, digits, `-`, `_`; not more than 40.
bool is_id(std::string_view text);
/// A terminal's: as an id, and `+` and `/`.
bool is_terminal_id(std::string_view text);

class TableReader {
 public:
  /// `name` is what messages call the table: "[[wire]]".
  TableReader(const TomlValue& table, std::string name, Diagnostics& findings);
  /// Reports the missing keys that refuse_unknown_keys() has not dealt with.
  ~TableReader();
  TableReader(const TableReader&) = delete;
  TableReader& operator=(const TableReader&) = delete;

  /// The entry of that key, or nullptr; from now on the key is known.
  const TomlEntry* take(std::string_view key, Need need = Need::may);

  /// A line of text: never empty when it must be there; no line ends or other control characters.
  std::string line(std::string_view key, Need need);
  PlacedText placed_line(std::string_view key, Need need);
  /// Sentences: line ends become spaces.
  std::string prose(std::string_view key, Need need);
  std::string id(std::string_view key, Need need);
  bool truth(std::string_view key, bool standard);
  std::optional<int> whole(std::string_view key, int least, int most);
  std::optional<double> number(std::string_view key, Need need, const QuantityRule& rule);
  /// [least, most] of a quantity, both with units.
  std::optional<std::pair<double, double>> range(std::string_view key, const QuantityRule& rule);
  std::vector<PlacedText> lines(std::string_view key);

  template <class Q>
  std::optional<Q> quantity(std::string_view key, const QuantityRule& rule, Need need = Need::may) {
    const std::optional<double> read = number(key, need, rule);
    return read ? std::optional<Q>(Q(*read)) : std::nullopt;
  }
  /// Keeps what `into` holds when the key is not there.
  template <class Q>
  void quantity_into(Q& into, std::string_view key, const QuantityRule& rule) {
    if (const auto read = number(key, Need::may, rule)) into = Q(*read);
  }

  template <class T>
  std::optional<T> choice(std::string_view key, std::span<const Choice<T>> choices, Need need) {
    const PlacedText written = placed_line(key, need);
    if (!written.where.is_set()) return std::nullopt;
    for (const Choice<T>& choice : choices)
      if (choice.word == written.text) return choice.meaning;
    std::vector<std::string> words;
    for (const Choice<T>& choice : choices) words.emplace_back(choice.word);
    refuse_word(key, written, words);
    return std::nullopt;
  }

  /// The table under that key, of not more than 300 keys.
  const TomlValue* table(std::string_view key);
  /// The tables under [[key]], not more than `most` of them.
  std::vector<const TomlValue*> tables(std::string_view key, std::size_t most);
  /// The array under that key, of not more than `most` values.
  const TomlValue* array(std::string_view key, std::size_t most = 500);

  /// A finding for every key that was never asked for. One that looks like a missing key explains that too.
  void refuse_unknown_keys();

  void report(DiagnosticId id, Where where, std::string message, std::string hint = {},
              std::vector<DiagnosticNote> notes = {});
  /// True, or a finding, when a value has the type.
  bool expect_type(const TomlValue& value, TomlType type, std::string_view key);
  std::optional<double> parse(const TomlValue& value, std::string_view key, const QuantityRule& rule);
  /// A text of one line; without a place, and a finding, when it is none.
  PlacedText one_line(const TomlValue& value, std::string_view key, Need need);
  /// True, or a finding, when an array is short enough.
  bool holds_at_most(const TomlValue& list, std::size_t most, std::string_view key);
  void refuse_word(std::string_view key, const PlacedText& written, const std::vector<std::string>& words);

  Origin origin() const;
  Where where() const { return table_.where; }
  const std::string& name() const { return name_; }
  Diagnostics& findings() { return findings_; }
  const TomlValue& tree() const { return table_; }

 private:
  void report_missing();
  std::optional<std::string> text_of(const TomlValue& value, std::string_view key, std::size_t most_characters);

  const TomlValue& table_;
  std::string name_;
  Diagnostics& findings_;
  std::vector<std::string> known_, missing_;
};

}  // namespace loomfolio
