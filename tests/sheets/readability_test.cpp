// SPDX-License-Identifier: MIT
// English that a first-time fitter reads once: short sentences in the words file, an easy grade on the printed pages,
// and every term of the glossary explained and printed only where it is used.
#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "base/text.h"
#include "disk_files.h"
#include "sheets/glossary.h"
#include "sheets/reading_ease.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

Words english() {
  const DiskFiles files;
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(std::string(LOOMFOLIO_SOURCE_FOLDER) + "/layouts", files, sources, findings);
  return read_words(library, "en", files, sources, findings);
}

/// Tables whose sentences tell a person what to do, or warn.
const std::vector<std::string> plain_tables = {"steps.", "tests.", "safety.", "faults.", "glossary.", "crimps."};

std::string base_of(const std::string& id) {
  const std::string last = split(id, '/').back();
  return last.substr(0, last.find('-'));
}

/// The paragraphs of a sheet: texts between a P's or list body's tags, lines joined.
std::vector<std::string> paragraphs_of(const Sheet& sheet) {
  std::vector<std::string> paragraphs;
  std::vector<bool> is_text;
  std::string now;
  for (const Item& item : sheet.items) {
    if (const auto* open = std::get_if<TagOpenItem>(&item))
      is_text.push_back(open->tag == "P" || open->tag == "TD" || open->tag == "LBody");
    if (const auto* text = std::get_if<TextItem>(&item); text != nullptr && !is_text.empty() && is_text.back())
      now += text->text + " ";
    if (std::holds_alternative<TagCloseItem>(item)) {
      is_text.pop_back();
      if (!now.empty()) paragraphs.push_back(now);
      now.clear();
    }
  }
  return paragraphs;
}

/// Sentences of five words or more: figures and names alone are no sentences.
std::vector<std::string> sentences_on(const Folio& folio, const std::vector<std::string>& kinds) {
  std::vector<std::string> all;
  for (const Sheet& sheet : folio.sheets) {
    if (std::find(kinds.begin(), kinds.end(), base_of(sheet.id)) == kinds.end()) continue;
    for (const std::string& paragraph : paragraphs_of(sheet))
      for (const std::string& sentence : sentences_of(paragraph))
        if (words_of_sentence(sentence).size() >= 5) all.push_back(sentence);
  }
  return all;
}

}  // namespace

TEST_CASE("the measure itself: sentences, syllables, and the grade of a known text") {
  CHECK(sentences_of("Key off. Put in a 7.5 A fuse: it holds. Done").size() == 4);
  CHECK(words_of_sentence("Put in a 7.5 A fuse.") == std::vector<std::string>{"Put", "in", "a", "7.5", "A", "fuse"});
  CHECK(count_syllables("fuse") == 1);
  CHECK(count_syllables("table") == 2);
  CHECK(count_syllables("battery") == 3);
  CHECK(count_syllables("the") == 1);
  // 6 words, 6 syllables, 1 sentence: 0.39 x 6 + 11.8 x 1 - 15.59.
  CHECK(kincaid_grade({"The cat sat on the mat."}) == doctest::Approx(-1.45));
  CHECK(kincaid_grade(
            {"Insulation deterioration necessitates immediate replacement of electrical distribution conductors."}) >
        15);
}

TEST_CASE("steps, tests, faults and cautions: no sentence of the English words has more than 20 words") {
  const Words words = english();
  int counted = 0;
  for (const auto& [key, text] : words.texts()) {
    const bool is_plain = std::any_of(plain_tables.begin(), plain_tables.end(),
                                      [&](const std::string& table) { return key.starts_with(table); });
    if (!is_plain) continue;
    for (const std::string& sentence : sentences_of(text)) {
      ++counted;
      CHECK_MESSAGE(words_of_sentence(sentence).size() <= 20, key << ": " << sentence);
    }
  }
  CHECK(counted > 300);
}

TEST_CASE("the printed steps, tests, faults and safety pages of every sample read at grade 7 or below (Kincaid 1975)") {
  for (const std::string& name : sample_names()) {
    const SampleFolio& sample = shared_sample(name);
    for (const std::string kind : {"steps", "tests", "faults", "safety"}) {
      const std::vector<std::string> sentences = sentences_on(sample.composed().folio, {kind});
      CAPTURE(name);
      CAPTURE(kind);
      REQUIRE(sentences.size() > 10);
      CHECK(kincaid_grade(sentences) <= 7);
    }
  }
}

TEST_CASE("the glossary: every entry has both halves, and only what is printed is explained") {
  const Words words = english();
  int entries = 0;
  for (const auto& [key, text] : words.texts()) {
    if (!key.starts_with("glossary.") || key == "glossary.title" || key == "glossary.intro") continue;
    ++entries;
    const std::string suffix = "_means";
    const bool is_meaning = key.ends_with(suffix);
    CHECK_MESSAGE(words.has(is_meaning ? key.substr(0, key.size() - suffix.size()) : key + suffix), key);
  }
  CHECK(entries > 40);
  CHECK(is_printed("the relay clicks", "Relay"));
  CHECK_FALSE(is_printed("relays click", "relay"));
  CHECK_FALSE(is_printed("the ringlet", "ring"));

  const SampleFolio& kit = shared_sample("driving-lamp-kit");
  std::string glossary, others;
  for (const Sheet& sheet : kit.composed().folio.sheets)
    for (const Item& item : sheet.items)
      if (const auto* text = std::get_if<TextItem>(&item))
        (base_of(sheet.id) == "glossary" ? glossary : others) += text->text + " ";
  std::transform(others.begin(), others.end(), others.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  REQUIRE_FALSE(glossary.empty());
  for (const auto& [key, text] : words.texts()) {
    if (!key.starts_with("glossary.") || key.ends_with("_means") || !words.has(key + "_means")) continue;
    const std::vector<std::string> forms = glossary_forms(text);
    const bool is_used =
        std::any_of(forms.begin(), forms.end(), [&](const std::string& form) { return is_printed(others, form); });
    CHECK_MESSAGE((glossary.find(words(key + "_means").substr(0, 12)) != std::string::npos) == is_used, key);
  }
}
