// SPDX-License-Identifier: MIT
// Paragraphs set to a width: words wrapped, in one or several styles, from left or from right.
#pragma once

#include <string>
#include <vector>

#include "model/words.h"
#include "sheets/draw.h"

namespace loomfolio {

/// Where a piece of text leads; no sheet: nowhere.
struct LinkTarget {
  std::string sheet, anchor;
  bool is_set() const { return !sheet.empty(); }
};

/// A run of text in one style.
struct Span {
  std::string text;
  TextStyle style = look::text;
  Colour colour = look::ink;
  LinkTarget link = {};
};

struct Paragraph {
  std::vector<Span> spans;
  Align align = Align::left;  ///< `left` means the side from which the language reads
  std::string tag = "P";      ///< structure tag; empty: none
};

/// What text setting needs to know of face and language.
struct TypeSetting {
  const TextMeasure& measure;
  bool is_right_to_left = false;
};

/// The paragraph as a block of that width; its height is a whole number of line steps, the first baseline within the
/// first. Breaks after spaces, hyphens and slashes and between East Asian characters, but not between a figure and its
/// unit, nor in a code's capitals; a word wider than the line is broken anywhere.
Block set_paragraph(const Paragraph& paragraph, Millimetres width, const TypeSetting& setting);

/// One style, no links.
Block set_text(const std::string& text, const TextStyle& style, Millimetres width, const TypeSetting& setting);

/// A point of a list: `mark`, a bullet or number, and its text, of which every line keeps clear of it by `hang`.
Block set_list_item(const Span& mark, std::vector<Span> text, Millimetres hang, Millimetres width, const TypeSetting& setting);

/// Splits '*bold*' marks of a sentence from words/ into spans.
std::vector<Span> marked_spans(std::string_view text, const TextStyle& plain, const TextStyle& bold);

/// The height of `lines` lines of that style.
Millimetres lines_height(int lines, const TextStyle& style);

}  // namespace loomfolio
