// SPDX-License-Identifier: MIT
// The sentences of a language: tables of texts, flattened to `table.key`.
#include <algorithm>

#include "read/languages.h"
#include "read/paper_reader.h"
#include "read/table_reader.h"

namespace loomfolio {
namespace {

using Texts = std::map<std::string, std::string, std::less<>>;

constexpr std::string_view kind_prefix = "kind_text.";

void flatten(const TomlValue& table, const std::string& prefix, LanguageFile& language, Diagnostics& findings) {
  for (const TomlEntry& entry : table.entries) {
    const std::string key = prefix + entry.key;
    if (entry.value.type == TomlType::table)
      flatten(entry.value, key + ".", language, findings);
    else if (entry.value.type == TomlType::text) {
      language.texts[key] = entry.value.text;
      language.places[key] = entry.value.where;
    } else if (key == "right_to_left" && entry.value.type == TomlType::truth)
      language.is_right_to_left = entry.value.truth;
    else if (key == "complete" && entry.value.type == TomlType::truth)
      language.is_complete = entry.value.truth;
    else
      add_finding(findings, make_diagnostic(DiagnosticId::wrong_type, entry.value.where,
                                            "`" + key + "` is " + std::string(call_type(entry.value.type)) +
                                                "; a words file holds texts"));
  }
}

/// What may be translated: English's texts, and the kinds' under the key they have in a language.
Texts gather_english(const Texts& english, const Library& library) {
  Texts all = english;
  for (const Kind& kind : library.kinds)
    for (const std::string& text : list_kind_texts(kind)) all[std::string(kind_prefix) + text] = text;
  return all;
}

/// A translation must have English's keys and, in each text, no place that English does not fill.
void compare_with_english(const LanguageFile& language, const Texts& english, Diagnostics& findings) {
  std::vector<std::string> keys;
  for (const auto& [key, text] : english) keys.push_back(key);
  for (const auto& [key, text] : language.texts) {
    const auto same = english.find(key);
    if (same == english.end()) {
      add_finding(findings, make_diagnostic(DiagnosticId::unknown_words_key, language.places.at(key),
                                            "English has no text `" + key + "`; it would never be printed",
                                            suggest(key, keys, "")));
      continue;
    }
    const auto known = places_of(same->second);
    for (const std::string& name : places_of(text))
      if (!std::binary_search(known.begin(), known.end(), name))
        add_finding(findings,
                    make_diagnostic(DiagnosticId::unknown_words_place, language.places.at(key),
                                    "`{" + name + "}` is filled by nothing; English has no such place here",
                                    known.empty() ? "English has none at all" : "its places are " + list_words(known)));
  }
}

}  // namespace

std::vector<std::string> places_of(const std::string& text) {
  std::vector<std::string> names;
  for (std::size_t open = text.find('{'); open != std::string::npos; open = text.find('{', open + 1)) {
    const std::size_t close = text.find('}', open);
    if (close == std::string::npos) break;
    names.push_back(text.substr(open + 1, close - open - 1));
  }
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

std::optional<LanguageFile> read_language(const Library& library, const std::string& name, const Files& files,
                                          Sources& sources, Diagnostics& findings) {
  const auto tree = read_toml_file(library.folder + "/words/" + name + ".toml", files, sources, findings);
  if (!tree) return std::nullopt;
  LanguageFile language;
  flatten(*tree, "", language, findings);
  return language;
}

Words read_words(const Library& library, const std::string& language, const Files& files, Sources& sources,
                 Diagnostics& diagnostics) {
  const std::string wanted = language.empty() ? "en" : language;
  if (std::find(library.languages.begin(), library.languages.end(), wanted) == library.languages.end()) {
    add_finding(diagnostics,
                make_diagnostic(DiagnosticId::unknown_language, {}, "there are no words for language `" + wanted + "`",
                                suggest_and_list(wanted, library.languages, "there are words for")));
    return {};
  }
  const auto english = read_language(library, "en", files, sources, diagnostics);
  Texts texts = english ? english->texts : Texts{};
  if (wanted == "en") return Words(wanted, false, std::move(texts));
  const auto other = read_language(library, wanted, files, sources, diagnostics);
  if (!other) return Words("en", false, std::move(texts));
  compare_with_english(*other, gather_english(texts, library), diagnostics);
  for (const auto& [key, text] : other->texts) texts.insert_or_assign(key, text);
  return Words(wanted, other->is_right_to_left, std::move(texts));
}

}  // namespace loomfolio
