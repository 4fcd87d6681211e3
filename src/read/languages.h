// SPDX-License-Identifier: MIT
// What a language says: its file of words, and the kinds in its words.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "read/read.h"

namespace loomfolio {

/// One file of layouts/words/ as it is written: `table.key` and its text. Texts of kinds stand under `kind_text.`,
/// keyed by the kind's own English.
struct LanguageFile {
  bool is_right_to_left = false;
  bool is_complete = false;  ///< says of itself that it lacks nothing that English has
  std::map<std::string, std::string, std::less<>> texts;
  std::map<std::string, Where, std::less<>> places;
};
std::optional<LanguageFile> read_language(const Library& library, const std::string& language, const Files& files,
                                          Sources& sources, Diagnostics& diagnostics);

/// The `{name}` places of a text, sorted, each once.
std::vector<std::string> places_of(const std::string& text);

/// What a kind prints and a language may say in its own words: name, about, mounting, purposes of terminals, names and
/// keying of faces, names of elements and switch positions. Letters and figures alone are left out, and so is what is
/// written on the part itself (the texts in a face's drawing).
std::vector<std::string> list_kind_texts(const Kind& kind);

/// Puts the language's words into every kind and part. A part that bears its kind's name bears the translated one;
/// labels, notes and all else that the spec's author wrote stay as they are. A kind's switch positions keep the names
/// that the spec uses; its parts' bear the translated ones.
void translate_kinds(Project& project, const Words& words);

/// Terminals' marks that end with a hyphen, '-' and 'B-', print with the minus sign (U+2212). Only for pages: specs and
/// tables for other programs keep the hyphen.
void set_minus_signs(Project& project);

}  // namespace loomfolio
