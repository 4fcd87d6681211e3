// SPDX-License-Identifier: MIT
#include "sheets/decimal_sign.h"

#include <algorithm>
#include <variant>

#include "sheets/characters.h"

namespace loomfolio {
namespace {


/// What stands between words: spaces, the no-break space's bytes, brackets, and marks that end a sentence's part.
bool ends_word(const std::string& text, std::size_t at) {
  constexpr std::string_view ends = " ()[]/:;=\n\x1f";
  return ends.find(text[at]) != std::string_view::npos || text.compare(at, 2, "\u00a0") == 0 ||
         (at > 0 && text.compare(at - 1, 2, "\u00a0") == 0);
}

/// Where the point of a decimal number stands in a word; npos when the word is none.
std::size_t find_decimal_point(const std::string& word) {
  std::size_t at = 0;
  while (at < word.size() && !is_digit_byte(word[at]) && word[at] != '.') ++at;
  constexpr std::string_view minus = "\u2212";
  const std::string before = word.substr(0, at);
  if (!before.empty() && before != "-" && before != "+" && before != "<" && before != ">" && before != minus)
    return std::string::npos;
  const std::size_t first = at;
  while (at < word.size() && is_digit_byte(word[at])) ++at;
  const std::size_t point = at;
  if (point == first || point + 1 >= word.size() || word[point] != '.' || !is_digit_byte(word[point + 1]))
    return std::string::npos;
  at = point + 1;
  while (at < word.size() && is_digit_byte(word[at])) ++at;
  // A unit or a stop may follow; another point, digit or hyphen makes it the name of something.
  const auto is_of_a_name = [&](std::size_t i) {
    return is_digit_byte(word[i]) || word[i] == '-' || word[i] == '_' || (word[i] == '.' && i + 1 < word.size());
  };
  for (; at < word.size(); ++at)
    if (is_of_a_name(at)) return std::string::npos;
  return point;
}

bool looks_decimal(const std::string& text) { return find_decimal_point(text) != std::string::npos; }

}  // namespace

std::string with_decimal_sign(const std::string& text, const std::string& sign, const std::vector<std::string>& kept) {
  std::string result;
  for (std::size_t from = 0; from < text.size();) {
    if (ends_word(text, from)) {
      result += text[from++];
      continue;
    }
    std::size_t to = from;
    while (to < text.size() && !ends_word(text, to)) ++to;
    std::string word = text.substr(from, to - from);
    const std::size_t point = find_decimal_point(word);
    const std::string bare = word.substr(0, word.find_last_not_of(",.") + 1);
    const bool is_kept = std::find(kept.begin(), kept.end(), bare) != kept.end();
    if (point != std::string::npos && !is_kept) word.replace(point, 1, sign);
    result += word;
    from = to;
  }
  return result;
}

std::vector<std::string> list_kept_words(const std::vector<Build>& builds) {
  std::vector<std::string> kept;
  const auto keep = [&](const std::string& text) {
    if (looks_decimal(text) && std::find(kept.begin(), kept.end(), text) == kept.end()) kept.push_back(text);
  };
  for (const Build& build : builds) {
    for (const std::string* text : {&build.document.job, &build.document.revision}) keep(*text);
    for (const Change& change : build.changes) keep(change.revision);
    for (const Wire& wire : build.wires) keep(wire.id);
    for (const Splice& splice : build.splices) keep(splice.id);
    for (const Earth& earth : build.earths) keep(earth.id);
    for (const Kind& kind : build.kinds)
      for (const KindTerminal& terminal : kind.terminals) keep(terminal.id);
  }
  return kept;
}

void put_decimal_sign(Folio& folio, const std::string& sign, const std::vector<Build>& builds) {
  if (sign == ".") return;
  const std::vector<std::string> kept = list_kept_words(builds);
  for (Sheet& sheet : folio.sheets)
    for (Item& item : sheet.items) {
      if (auto* text = std::get_if<TextItem>(&item)) text->text = with_decimal_sign(text->text, sign, kept);
      if (auto* tag = std::get_if<TagOpenItem>(&item)) tag->alt = with_decimal_sign(tag->alt, sign, kept);
    }
}

}  // namespace loomfolio
