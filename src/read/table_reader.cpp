// SPDX-License-Identifier: MIT
#include "read/table_reader.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "diag/excerpt.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_id = 40, most_line = 200, most_prose = 2000;

bool is_id_byte(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c == '_' ||
         static_cast<unsigned char>(c) >= 0x80;
}

/// Characters that a page cannot show, or that would turn its text round.
bool has_control(const std::string& text) { return printable(text) != text; }

}  // namespace

bool is_id(std::string_view text) {
  return !text.empty() && count_characters(text) <= most_id && std::all_of(text.begin(), text.end(), is_id_byte);
}

bool is_terminal_id(std::string_view text) {
  return !text.empty() && count_characters(text) <= most_id &&
         std::all_of(text.begin(), text.end(), [](char c) { return is_id_byte(c) || c == '+' || c == '/'; });
}

TableReader::TableReader(const TomlValue& table, std::string name, Diagnostics& findings)
    : table_(table), name_(std::move(name)), findings_(findings) {}

void TableReader::report(DiagnosticId id, Where where, std::string message, std::string hint,
                         std::vector<DiagnosticNote> notes) {
  Diagnostic finding = make_diagnostic(id, where, std::move(message), std::move(hint));
  finding.notes = std::move(notes);
  add_finding(findings_, std::move(finding));
}

bool TableReader::holds_at_most(const TomlValue& list, std::size_t most, std::string_view key) {
  if (list.items.size() <= most) return true;
  report(DiagnosticId::too_many_values, list.items[most].where,
         quoted(key) + " stands " + std::to_string(list.items.size()) + " times; at most " + std::to_string(most) +
             " are read");
  return false;
}

const TomlEntry* TableReader::take(std::string_view key, Need need) {
  if (std::find(known_.begin(), known_.end(), key) == known_.end()) known_.emplace_back(key);
  const TomlEntry* entry = table_.find(key);
  if (!entry && need == Need::must) missing_.emplace_back(key);
  return entry;
}

TableReader::~TableReader() { report_missing(); }

void TableReader::report_missing() {
  for (const std::string& key : missing_)
    report(DiagnosticId::missing_key, table_.where, name_ + " lacks " + quoted(key));
  missing_.clear();
}

bool TableReader::expect_type(const TomlValue& value, TomlType type, std::string_view key) {
  if (value.type == type) return true;
  std::string hint;
  if (type == TomlType::text && value.type != TomlType::table && value.type != TomlType::array)
    hint = "write it in quotes: \"" +
           (value.type == TomlType::truth ? std::string(value.truth ? "true" : "false") : value.text) + "\"";
  report(DiagnosticId::wrong_type, value.where,
         quoted(key) + " of " + name_ + " is " + std::string(call_type(value.type)) + "; it must be " +
             std::string(call_type(type)),
         hint);
  return false;
}

std::optional<std::string> TableReader::text_of(const TomlValue& value, std::string_view key,
                                                std::size_t most_characters) {
  if (!expect_type(value, TomlType::text, key)) return std::nullopt;
  const std::string& text = value.text;
  if (count_characters(text) <= most_characters) return text;
  report(DiagnosticId::text_too_long, value.where,
         quoted(key) + " has " + std::to_string(count_characters(text)) + " characters; at most " +
             std::to_string(most_characters) + " fit");
  return std::nullopt;
}

PlacedText TableReader::one_line(const TomlValue& value, std::string_view key, Need need) {
  const std::optional<std::string> whole = text_of(value, key, most_line);
  if (!whole) return {};
  const std::string text = trimmed(*whole);
  if (has_control(text))
    report(DiagnosticId::control_character, value.where,
           quoted(key) + " holds a line end or another control character; it is one line of text");
  else if (text.empty() && need == Need::must)
    report(DiagnosticId::empty_text, value.where, quoted(key) + " of " + name_ + " is empty");
  else
    return {text, value.where};
  return {};
}

PlacedText TableReader::placed_line(std::string_view key, Need need) {
  const TomlEntry* entry = take(key, need);
  return entry ? one_line(entry->value, key, need) : PlacedText{};
}

std::string TableReader::line(std::string_view key, Need need) { return placed_line(key, need).text; }

std::string TableReader::prose(std::string_view key, Need need) {
  const TomlEntry* entry = take(key, need);
  if (!entry) return {};
  std::optional<std::string> text = text_of(entry->value, key, most_prose);
  if (!text) return {};
  for (char& c : *text)
    if (c == '\n' || c == '\r' || c == '\t') c = ' ';
  std::string even;
  for (const char c : trimmed(*text))
    if (c != ' ' || !even.ends_with(' ')) even += c;
  if (has_control(even))
    report(DiagnosticId::control_character, entry->value.where, quoted(key) + " holds a control character");
  else if (even.empty() && need == Need::must)
    report(DiagnosticId::empty_text, entry->value.where, quoted(key) + " of " + name_ + " is empty");
  else
    return even;
  return {};
}

std::string TableReader::id(std::string_view key, Need need) {
  const PlacedText written = placed_line(key, need);
  if (written.where.is_set() && !is_id(written.text))
    report(DiagnosticId::bad_id, written.where,
           quoted(written.text) + " cannot be an id; an id is 1 to " + std::to_string(most_id) +
               " letters, digits, `-` or `_`");
  return written.text;  // also a bad one: what names it is then no second mistake
}

bool TableReader::truth(std::string_view key, bool standard) {
  const TomlEntry* entry = take(key);
  return entry && expect_type(entry->value, TomlType::truth, key) ? entry->value.truth : standard;
}

std::optional<int> TableReader::whole(std::string_view key, int least, int most) {
  const TomlEntry* entry = take(key);
  if (!entry || !expect_type(entry->value, TomlType::whole, key)) return std::nullopt;
  if (entry->value.number >= least && entry->value.number <= most) return static_cast<int>(entry->value.number);
  report(DiagnosticId::out_of_range, entry->value.where,
         quoted(entry->value.text) + " is out of range; " + quoted(key) + " is from " + std::to_string(least) + " to " +
             std::to_string(most));
  return std::nullopt;
}

std::optional<double> TableReader::parse(const TomlValue& value, std::string_view key, const QuantityRule& rule) {
  if (value.type == TomlType::whole || value.type == TomlType::decimal) {
    report(DiagnosticId::bare_number, value.where,
           quoted(value.text) + " has no unit; " + std::string(call_dimension(rule.dimension)) +
               " is written with one of " + list_units(rule.dimension));
    return std::nullopt;
  }
  if (!expect_type(value, TomlType::text, key)) return std::nullopt;
  QuantityFault fault;
  const std::optional<double> number = parse_quantity(value.text, rule.dimension, rule.limits, fault);
  if (!number) report(fault.id, value.where, fault.message, fault.hint);
  return number;
}

std::optional<double> TableReader::number(std::string_view key, Need need, const QuantityRule& rule) {
  const TomlEntry* entry = take(key, need);
  return entry ? parse(entry->value, key, rule) : std::nullopt;
}

std::optional<std::pair<double, double>> TableReader::range(std::string_view key, const QuantityRule& rule) {
  const TomlValue* pair = array(key);
  if (!pair) return std::nullopt;
  if (pair->items.size() != 2) {
    report(DiagnosticId::wrong_count, pair->where,
           quoted(key) + " holds " + std::to_string(pair->items.size()) +
               " values; it takes two, the least and the greatest");
    return std::nullopt;
  }
  const auto least = parse(pair->items[0], key, rule);
  const auto most = parse(pair->items[1], key, rule);
  if (!least || !most) return std::nullopt;
  if (*least <= *most) return std::pair(*least, *most);
  report(DiagnosticId::range_backwards, pair->where,
         quoted(key) + " runs from " + pair->items[0].text + " to " + pair->items[1].text + "; the least comes first");
  return std::nullopt;
}

std::vector<PlacedText> TableReader::lines(std::string_view key) {
  std::vector<PlacedText> made;
  const TomlValue* list = array(key);
  if (!list) return made;
  for (const TomlValue& item : list->items)
    if (const PlacedText text = one_line(item, key, Need::must); text.where.is_set()) made.push_back(text);
  return made;
}

void TableReader::refuse_word(std::string_view key, const PlacedText& written, const std::vector<std::string>& words) {
  report(DiagnosticId::unknown_word, written.where, quoted(written.text) + " is no " + quoted(key) + " of " + name_,
         suggest_and_list(written.text, words, "it is one of"));
}

const TomlValue* TableReader::table(std::string_view key) {
  constexpr std::size_t most = 300;
  const TomlEntry* entry = take(key);
  if (!entry || !expect_type(entry->value, TomlType::table, key)) return nullptr;
  if (entry->value.entries.size() <= most) return &entry->value;
  report(DiagnosticId::too_many_values, entry->value.entries[most].key_where,
         quoted(key) + " has " + std::to_string(entry->value.entries.size()) + " keys; at most " +
             std::to_string(most) + " are read");
  return nullptr;
}

const TomlValue* TableReader::array(std::string_view key, std::size_t most) {
  const TomlEntry* entry = take(key);
  if (!entry || !expect_type(entry->value, TomlType::array, key) || !holds_at_most(entry->value, most, key))
    return nullptr;
  return &entry->value;
}

std::vector<const TomlValue*> TableReader::tables(std::string_view key, std::size_t most) {
  std::vector<const TomlValue*> made;
  const TomlEntry* entry = take(key);
  if (!entry) return made;
  if (entry->value.type == TomlType::table) {
    report(DiagnosticId::wrong_type, entry->value.where,
           "[" + std::string(key) + "] is one table; there may be several of it", "write [[" + std::string(key) + "]]");
    return made;
  }
  if (!expect_type(entry->value, TomlType::array, key) || !holds_at_most(entry->value, most, key)) return made;
  for (const TomlValue& item : entry->value.items)
    if (expect_type(item, TomlType::table, key)) made.push_back(&item);
  return made;
}

void TableReader::refuse_unknown_keys() {
  for (const TomlEntry& entry : table_.entries) {
    if (std::find(known_.begin(), known_.end(), entry.key) != known_.end()) continue;
    report(DiagnosticId::unknown_key, entry.key_where, name_ + " has no key " + quoted(entry.key),
           suggest_and_list(entry.key, known_, "its keys are"));
    std::erase(missing_, guess_word(entry.key, known_));
  }
  report_missing();
}

Origin TableReader::origin() const {
  Origin made{table_.where, {}};
  for (const TomlEntry& entry : table_.entries) made.keys.emplace_back(entry.key, entry.value.where);
  return made;
}

}  // namespace loomfolio
