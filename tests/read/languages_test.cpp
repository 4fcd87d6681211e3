// SPDX-License-Identifier: MIT
// The languages as they are shipped: one that calls itself complete has every text of English and of the part kinds, no
// text that neither has, and the same {places} in each.
#include "read/languages.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "disk_files.h"

using namespace loomfolio;

namespace {

struct Languages {
  Sources sources;
  Diagnostics findings;
  Library library;
  std::map<std::string, std::string, std::less<>> english;  ///< with the kinds' texts under `kind_text.`
  std::vector<std::pair<std::string, LanguageFile>> others;
};

const Languages& shipped_languages() {
  static const Languages loaded = [] {
    Languages l;
    const DiskFiles files;
    l.library = read_library(LOOMFOLIO_SOURCE_FOLDER "/layouts", files, l.sources, l.findings);
    for (const std::string& name : l.library.languages) {
      const auto file = read_language(l.library, name, files, l.sources, l.findings);
      REQUIRE(file);
      if (name == "en")
        l.english = file->texts;
      else
        l.others.emplace_back(name, *file);
    }
    for (const Kind& kind : l.library.kinds)
      for (const std::string& text : list_kind_texts(kind)) l.english["kind_text." + text] = text;
    return l;
  }();
  return loaded;
}

}  // namespace

TEST_CASE("German, Spanish and a language from right to left call themselves complete") {
  bool is_one_from_right = false;
  std::vector<std::string> complete;
  for (const auto& [name, file] : shipped_languages().others) {
    if (file.is_complete) complete.push_back(name);
    is_one_from_right = is_one_from_right || (file.is_complete && file.is_right_to_left);
  }
  CHECK(is_one_from_right);
  CHECK(std::find(complete.begin(), complete.end(), "de") != complete.end());
  CHECK(std::find(complete.begin(), complete.end(), "es") != complete.end());
}

TEST_CASE("a complete language lacks no text that English or a kind has") {
  for (const auto& [name, file] : shipped_languages().others) {
    if (!file.is_complete) continue;
    for (const auto& [key, text] : shipped_languages().english) {
      CAPTURE(name);
      CHECK_MESSAGE(file.texts.find(key) != file.texts.end(), name << " lacks " << key << " = " << text);
    }
  }
}

TEST_CASE("no language has a text that neither English nor a kind has") {
  for (const auto& [name, file] : shipped_languages().others)
    for (const auto& [key, text] : file.texts)
      CHECK_MESSAGE(shipped_languages().english.count(key) == 1, name << " has " << key << " = " << text);
}

TEST_CASE("the places of a translated text are those of the English one") {
  for (const auto& [name, file] : shipped_languages().others)
    for (const auto& [key, text] : file.texts) {
      const auto english = shipped_languages().english.find(key);
      if (english == shipped_languages().english.end()) continue;
      CHECK_MESSAGE(places_of(text) == places_of(english->second), name << " " << key << " = " << text);
    }
}

TEST_CASE("bold marks come in pairs, and as many as in English") {
  const auto stars = [](const std::string& text) { return std::count(text.begin(), text.end(), '*'); };
  for (const auto& [name, file] : shipped_languages().others)
    for (const auto& [key, text] : file.texts) {
      const auto english = shipped_languages().english.find(key);
      if (english == shipped_languages().english.end()) continue;
      CHECK_MESSAGE(stars(text) == stars(english->second), name << " " << key << " = " << text);
    }
}

TEST_CASE("kinds and parts speak the language; what the author wrote stays") {
  Languages l;
  const DiskFiles files;
  l.library = read_library(LOOMFOLIO_SOURCE_FOLDER "/layouts", files, l.sources, l.findings);
  const std::string spec = R"([document]
title = "Rig"
[[zone]]
id = "front"
place = "0.3 m"
[[part]]
id = "button"
kind = "start-button"
zone = "front"
[[part]]
id = "horn"
kind = "horn"
label = "My own horn"
zone = "front"
)";
  Project project = read_spec("rig.toml", spec, l.library, l.sources, l.findings);
  const Words words = read_words(l.library, "de", files, l.sources, l.findings);
  translate_kinds(project, words);
  const Build& build = project.builds.front();
  REQUIRE(build.parts.size() == 2);
  CHECK(build.parts[0].label == "Startknopf");
  CHECK(build.parts[1].label == "My own horn");
  CHECK(build.kind_of(build.parts[1]).name == "Hupe");
  const auto& positions = build.parts[0].insides.front().positions;
  REQUIRE(positions.size() == 2);
  CHECK(positions[0].name == "aus");
  CHECK(positions[1].name == "ein");
  CHECK(build.kind_of(build.parts[0]).insides.front().positions[1].name == "on");  // as the spec calls it
}
