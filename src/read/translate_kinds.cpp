// SPDX-License-Identifier: MIT
// Kinds and parts in the language of the pages. Kinds are read, solved and checked in English; only what is printed
// changes.
#include <algorithm>
#include <functional>

#include "base/text.h"
#include "model/kind_text.h"
#include "read/languages.h"

namespace loomfolio {
namespace {

using EachText = std::function<void(std::string&)>;

void visit_positions(std::vector<Inside>& insides, const EachText& each) {
  for (Inside& inside : insides)
    for (SwitchPosition& position : inside.positions) each(position.name);
}

void visit_kind(Kind& kind, const EachText& each) {
  for (std::string* text : {&kind.name, &kind.about, &kind.mounting, &kind.value_text}) each(*text);
  for (KindTerminal& terminal : kind.terminals) each(terminal.name);
  for (Face& face : kind.faces) {
    each(face.name);
    each(face.keying);
  }
  for (Inside& inside : kind.insides) each(inside.name);
}

/// Two letters in a row outside a `{place}`.
bool holds_a_word(const std::string& text) {
  int letters = 0;
  bool is_in_place = false;
  for (const char c : text) {
    if (c == '{' || c == '}') is_in_place = c == '{';
    const bool is_letter = !is_in_place && ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'));
    letters = is_letter ? letters + 1 : 0;
    if (letters == 2) return true;
  }
  return false;
}

void translate_part(Part& part, const Kind& english, const Kind& translated, const EachText& each) {
  if (part.label == english.name) part.label = translated.name;
  if (english.value_text != translated.value_text) part.value_text = fill(translated.value_text, part.values);
  for (Inside& inside : part.insides) each(inside.name);
  visit_positions(part.insides, each);
}

}  // namespace

std::vector<std::string> list_kind_texts(const Kind& kind) {
  std::vector<std::string> texts;
  Kind copy = kind;
  const auto add = [&](const std::string& text) {
    if (holds_a_word(text) && std::find(texts.begin(), texts.end(), text) == texts.end()) texts.push_back(text);
  };
  visit_kind(copy, add);
  visit_positions(copy.insides, add);
  // A sprung switch without a name is spoken of by its id.
  for (const Inside& inside : kind.insides)
    if (inside.is_sprung && inside.name.empty()) add(inside.id);
  return texts;
}

void translate_kinds(Project& project, const Words& words) {
  const EachText each = [&](std::string& text) {
    if (!text.empty()) text = translate_kind_text(text, words);
  };
  for (Build& build : project.builds) {
    const std::vector<Kind> english = build.kinds;
    for (Kind& kind : build.kinds) visit_kind(kind, each);
    for (Part& part : build.parts) translate_part(part, english[part.kind.at()], build.kinds[part.kind.at()], each);
  }
}

void set_minus_signs(Project& project) {
  for (Build& build : project.builds)
    for (Kind& kind : build.kinds)
      for (KindTerminal& terminal : kind.terminals)
        if (terminal.id.ends_with('-')) terminal.id.replace(terminal.id.size() - 1, 1, "\u2212");
}

}  // namespace loomfolio
