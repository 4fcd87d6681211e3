// SPDX-License-Identifier: MIT
// Whole prints in every language: no English left on the pages but what the spec's author wrote.
#include "read/languages.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "base/text.h"
#include "memory_files.h"

using namespace loomfolio;

namespace {

/// Every text that a page may print in one language: its own and the kinds', without what stands in {places}.
std::vector<std::string> texts_of(const std::string& language) {
  static Sources sources;
  static Diagnostics findings;
  static const DiskFiles disk;
  static const Library library = read_library(LOOMFOLIO_SOURCE_FOLDER "/layouts", disk, sources, findings);
  const auto file = read_language(library, language, disk, sources, findings);
  REQUIRE(file);
  std::vector<std::string> texts;
  for (const auto& [key, text] : file->texts)
    if (key != "name") texts.push_back(text);
  if (language == "en")
    for (const Kind& kind : library.kinds)
      for (const std::string& text : list_kind_texts(kind)) texts.push_back(text);
  return texts;
}

/// The texts of a printed folio, item by item, from its text dump.
std::vector<std::string> printed_texts(const MemoryFiles& files) {
  std::vector<std::string> texts;
  for (const auto& [path, dump] : files.held) {
    if (!path.ends_with(".txt")) continue;
    for (const std::string& line : split(dump, '\n')) {
      const std::string item = trimmed(line);
      const std::size_t open = item.find('"');
      if (!item.starts_with("text ") || open == std::string::npos) continue;
      texts.push_back(item.substr(open + 1, item.rfind('"') - open - 1));
    }
  }
  return texts;
}

/// Splits at {places} and *bold* marks, so that each piece stands as it is printed.
std::vector<std::string> printed_pieces(const std::string& text) {
  std::vector<std::string> pieces(1);
  bool is_in_place = false;
  for (const char c : text) {
    if (c == '{' || c == '*' || c == '}') {
      if (!pieces.back().empty()) pieces.emplace_back();
      is_in_place = c == '{';
    } else if (!is_in_place) {
      pieces.back() += c;
    }
  }
  std::vector<std::string> kept;
  for (const std::string& piece : pieces)
    if (!trimmed(piece).empty()) kept.push_back(trimmed(piece));
  return kept;
}

bool has_two_words(const std::string& text) { return trimmed(text).find(' ') != std::string::npos && text.size() >= 9; }

/// Printed texts of two words or more that are a piece of an English text, and neither of one of the language's own nor
/// of the spec.
std::vector<std::string> find_english(const std::vector<std::string>& printed, const std::string& language,
                                      const std::string& spec) {
  std::vector<std::string> english, own, found;
  for (const std::string& text : texts_of("en"))
    for (const std::string& piece : printed_pieces(text)) english.push_back(piece);
  for (const std::string& text : texts_of(language))
    for (const std::string& piece : printed_pieces(text)) own.push_back(piece);
  const auto holds = [](const std::vector<std::string>& texts, const std::string& part) {
    return std::any_of(texts.begin(), texts.end(), [&](const auto& t) { return t.find(part) != std::string::npos; });
  };
  for (const std::string& text : printed) {
    const std::string part = trimmed(text);
    if (has_two_words(part) && holds(english, part) && !holds(own, part) && spec.find(part) == std::string::npos)
      found.push_back(part);
  }
  return found;
}

/// The small spec printed in a language as text, page-01.txt and on; once for all tests.
const MemoryFiles& pages_in(const std::string& language) {
  static std::map<std::string, MemoryFiles> printed;
  if (const auto known = printed.find(language); known != printed.end()) return known->second;
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran ran = run_with(files, {"print", "lamp.toml", "--language", language, "-o", "page.txt"});
  CHECK(ran.code == 0);
  CHECK(ran.err.find("warning") == std::string::npos);
  return printed[language] = std::move(files);
}

std::vector<std::string> print_in(const std::string& language) { return printed_texts(pages_in(language)); }

bool is_printed(const std::vector<std::string>& texts, const std::string& text) {
  return std::find(texts.begin(), texts.end(), text) != texts.end();
}

}  // namespace

TEST_CASE("the search for English finds it on an English page") {
  const auto printed = print_in("en");
  CHECK(find_english(printed, "de", small_spec()).size() > 50);
}

TEST_CASE("no English is left on pages in another language") {
  for (const std::string language : {"de", "es", "he"}) {
    CAPTURE(language);
    const auto printed = print_in(language);
    REQUIRE(printed.size() > 200);
    for (const std::string& text : find_english(printed, language, small_spec()))
      FAIL_CHECK(language << " prints English: " << text);
  }
}

TEST_CASE("German pages have German words, figures with a comma, and the author's own labels") {
  const auto printed = print_in("de");
  CHECK(is_printed(printed, "Sicherheit"));
  CHECK(is_printed(printed, "2. November 2026"));
  CHECK(is_printed(printed, "Zusatzscheinwerfer"));  // a part without a label bears its kind's name
  CHECK(is_printed(printed, "First lamp"));          // the author's title
  const auto holds = [&](const std::string& part) {
    return std::any_of(printed.begin(), printed.end(),
                       [&](const std::string& t) { return t.find(part) != std::string::npos; });
  };
  CHECK(holds("1,5\u00a0mm\u00b2"));
  CHECK_FALSE(holds("1.5\u00a0mm\u00b2"));
}

TEST_CASE("Hebrew pages are turned round: the title strip begins at the right") {
  const auto place_of = [&](const std::string& language, const std::string& head) {
    double last = -1;
    for (const std::string& line : split(pages_in(language).held.at("page-01.txt"), '\n'))
      if (const std::string item = trimmed(line); item.starts_with("text ") && item.find(head) != std::string::npos)
        last = std::stod(split(item, ' ')[1]);
    return last;
  };
  CHECK(place_of("en", "\"Job\"") < place_of("en", "\"Sheet\""));
  const double job = place_of("he", "\u05e2\u05d1\u05d5\u05d3\u05d4"),
               sheet = place_of("he", "\u05d2\u05d9\u05dc\u05d9\u05d5\u05df");
  CHECK(sheet > 0);
  CHECK(job > sheet);
}
