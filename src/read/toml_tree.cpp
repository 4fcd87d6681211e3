// SPDX-License-Identifier: MIT
// The only file that includes toml++. It gives lines and columns, columns counted in characters; here they become bytes.
#define TOML_EXCEPTIONS 0
#define TOML_ENABLE_FORMATTERS 0
#define TOML_MAX_NESTED_VALUES 32
#include <toml++/toml.h>

#include "read/toml_tree.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "diag/line_index.h"
#include "read/source_checks.h"

namespace loomfolio {
namespace {

static_assert(TOML_MAX_NESTED_VALUES == most_nested_values);

/// Bytes of places that toml++ names by line and character.
class Converter {
 public:
  Converter(std::string_view text, std::int32_t file) : text_(text), lines_(text), file_(file) {}

  Where where(const toml::source_region& region) {
    Where where{file_, byte_of(region.begin), byte_of(region.end)};
    where.end = std::max(where.end, where.begin);
    return where;
  }

  TomlValue value(const toml::node& node) {
    TomlValue made;
    made.where = where(node.source());
    node.visit([&](const auto& held) { take(made, held); });
    return made;
  }

 private:
  std::uint32_t byte_of(const toml::source_position& position) {
    if (position.line < 1) return 0;
    const std::size_t line = position.line;
    if (line > lines_.line_count()) return static_cast<std::uint32_t>(text_.size());
    const std::size_t start = lines_.start_of(line);
    const std::size_t end = line < lines_.line_count() ? lines_.start_of(line + 1) : text_.size();
    const std::size_t steps = position.column < 1 ? 0 : position.column - 1;
    return static_cast<std::uint32_t>(std::min(start + step(line, text_.substr(start, end - start), steps), end));
  }

  /// Bytes of the first `characters` characters of a line.
  std::size_t step(std::size_t line, std::string_view text, std::size_t characters) {
    auto [found, is_new] = offsets_.try_emplace(line);
    std::vector<std::uint32_t>& offsets = found->second;
    if (is_new) {
      const bool has_mark = line == 1 && text.starts_with("\xEF\xBB\xBF");
      for (std::size_t i = has_mark ? 3 : 0; i < text.size(); ++i)
        if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) offsets.push_back(static_cast<std::uint32_t>(i));
    }
    return characters < offsets.size() ? offsets[characters] : text.size();
  }

  void take(TomlValue& made, const toml::table& table) {
    made.type = TomlType::table;
    for (const auto& [key, node] : table)
      made.entries.push_back({std::string(key.str()), where(key.source()), value(node)});
    std::stable_sort(made.entries.begin(), made.entries.end(),
                     [](const TomlEntry& a, const TomlEntry& b) { return a.key_where < b.key_where; });
  }
  void take(TomlValue& made, const toml::array& array) {
    made.type = TomlType::array;
    for (const toml::node& node : array) made.items.push_back(value(node));
  }
  void take(TomlValue& made, const toml::value<std::string>& held) {
    made.type = TomlType::text;
    made.text = held.get();
  }
  void take(TomlValue& made, const toml::value<std::int64_t>& held) { number(made, TomlType::whole, static_cast<double>(held.get())); }
  void take(TomlValue& made, const toml::value<double>& held) { number(made, TomlType::decimal, held.get()); }
  void take(TomlValue& made, const toml::value<bool>& held) {
    made.type = TomlType::truth;
    made.truth = held.get();
  }
  template <class DateOrTime>
  void take(TomlValue& made, const toml::value<DateOrTime>&) {
    made.type = TomlType::date;
    made.text = text_.substr(made.where.begin, made.where.end - made.where.begin);
  }
  void number(TomlValue& made, TomlType type, double held) {
    made.type = type;
    made.number = held;
    made.text = text_.substr(made.where.begin, made.where.end - made.where.begin);
  }

  std::string_view text_;
  LineIndex lines_;
  std::int32_t file_;
  std::map<std::size_t, std::vector<std::uint32_t>> offsets_;  ///< of each character of a line
};

/// The table under whose header the text ends.
const toml::table* find_open_table(const toml::table& table) {
  const toml::table* open = &table;
  for (const auto& [key, node] : table) {
    const toml::table* inner = node.as_table();
    if (const toml::array* array = node.as_array(); array && !array->empty()) inner = array->back().as_table();
    if (!inner || inner->is_inline()) continue;
    const toml::table* candidate = find_open_table(*inner);
    if (candidate->source().begin >= open->source().begin) open = candidate;
  }
  return open;
}

/// Where the thing that a line defines anew stands first: the text before that line is read and the name looked up in it.
std::optional<Where> find_first_definition(std::string_view text, std::size_t line_start, const std::string& name,
                                           std::int32_t file) {
  const std::string_view before = text.substr(0, line_start);
  const toml::parse_result result = toml::parse(before);
  if (!result) return std::nullopt;
  const bool is_header = trimmed(text.substr(line_start, 64)).starts_with('[');
  const toml::table& root = is_header ? result.table() : *find_open_table(result.table());
  const toml::node_view<const toml::node> found = root.at_path(name);
  if (!found) return std::nullopt;
  return Converter(before, file).where(found.node()->source());
}

/// The second writing itself: toml++ places it behind the key.
Where find_second(std::string_view text, std::size_t line_start, const std::string& name, Where behind) {
  const std::size_t begin = text.substr(0, std::max<std::size_t>(behind.begin, line_start + name.size())).rfind(name);
  if (begin == std::string_view::npos || begin < line_start) return behind;
  return {behind.file, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + name.size())};
}

/// A number followed by letters after '=': a quantity without its quotes.
std::string find_bare_quantity(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return {};
  std::string value = trimmed(line.substr(equals + 1, line.find('#', equals) - equals - 1));
  if (value.empty() || value.find_first_of("\"'[{") != std::string::npos) return {};
  const bool starts_as_number = (value[0] >= '0' && value[0] <= '9') || value[0] == '-' || value[0] == '.';
  const bool has_letter = std::any_of(value.begin(), value.end(), [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); });
  return starts_as_number && has_letter ? value : std::string();
}

std::string quoted_piece(std::string_view text) {
  const std::size_t open = text.find('\'');
  const std::size_t close = text.rfind('\'');
  return open == close ? std::string() : std::string(text.substr(open + 1, text.find('\'', open + 1) - open - 1));
}

Diagnostic explain(const toml::parse_error& error, std::string_view text, std::int32_t file) {
  const Where where = Converter(text, file).where(error.source());
  std::string why(error.description());
  const LineIndex lines(text);
  const std::size_t line = lines.line_of(where.begin);
  if (why.find("cannot redefine existing") != std::string::npos) {
    const std::string name = quoted_piece(why.substr(why.find("existing")));
    Diagnostic twice = make_diagnostic(DiagnosticId::key_twice, find_second(text, lines.start_of(line), name, where), "`" + name + "` is written twice; a key or table stands once");
    if (const auto first = find_first_definition(text, lines.start_of(line), name, file))
      twice.notes.push_back({*first, "it stands here first"});
    return twice;
  }
  if (why.find("exceeded maximum nested value depth") != std::string::npos)
    return make_diagnostic(DiagnosticId::nested_too_deep, where,
                           "more than " + std::to_string(most_nested_values) + " arrays and tables within one another");
  constexpr std::string_view opening = "Error while parsing ";
  if (why.starts_with(opening)) why.replace(0, opening.size(), "in this ");
  if (const std::size_t at = why.find("encountered end-of-file"); at != std::string::npos) why.replace(at, 23, "the file ends here");
  Diagnostic broken = make_diagnostic(DiagnosticId::toml_syntax, where, "this is not TOML: " + why);
  const std::string quantity = find_bare_quantity(lines.text_of(line));
  if (!quantity.empty()) broken.hint = "a quantity is a text: write \"" + quantity + "\" with its quotes";
  return broken;
}

}  // namespace

const TomlEntry* TomlValue::find(std::string_view key) const {
  for (const TomlEntry& entry : entries)
    if (entry.key == key) return &entry;
  return nullptr;
}

std::string_view call_type(TomlType type) {
  switch (type) {
    case TomlType::table: return "a table";
    case TomlType::array: return "an array";
    case TomlType::text: return "a text";
    case TomlType::whole: return "a whole number";
    case TomlType::decimal: return "a number";
    case TomlType::truth: return "true or false";
    case TomlType::date: return "a date";
  }
  return "a value";
}

std::optional<TomlValue> parse_toml(const Sources& sources, std::int32_t file, Diagnostics& findings) {
  const std::string& text = sources.files[static_cast<std::size_t>(file)].text;
  if (!check_source(text, file, findings)) return std::nullopt;
  const toml::parse_result result = toml::parse(std::string_view(text));
  if (!result) {
    findings.push_back(explain(result.error(), text, file));
    return std::nullopt;
  }
  TomlValue tree = Converter(text, file).value(result.table());
  tree.where = {file, 0, 0};
  return tree;
}

}  // namespace loomfolio
