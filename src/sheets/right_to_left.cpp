// SPDX-License-Identifier: MIT
#include "sheets/right_to_left.h"

#include <algorithm>
#include <string_view>
#include <utility>
#include <variant>

#include "sheets/characters.h"

namespace loomfolio {
namespace {

constexpr std::string_view reads_right_to_left = "\u200f", reads_left_to_right = "\u200e";

bool is_latin(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// Hebrew and Arabic letters, U+0590 to U+07FF: first bytes D6 to DF in UTF-8.
bool begins_from_right(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  return first >= 0xD6 && first <= 0xDF;
}

bool holds_from_right(const std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (begins_from_right(text, i)) return true;
  return false;
}

/// Where the number that begins at `at` ends: digits with points, commas and hyphens between.
std::size_t end_of_number(const std::string& text, std::size_t at) {
  const auto joins = [&](std::size_t i) {
    const bool is_joint = text[i] == '.' || text[i] == ',' || text[i] == '/' || text[i] == '-';
    return is_joint && i + 1 < text.size() && is_digit_byte(text[i + 1]);
  };
  while (at < text.size() && (is_digit_byte(text[at]) || joins(at))) ++at;
  return at;
}

/// Whether a Latin unit follows: 'A', ' mm', with a plain or a no-break space between, or none.
bool has_unit(const std::string& text, std::size_t end) {
  if (end < text.size() && text[end] == ' ')
    ++end;
  else if (text.compare(end, 2, "\u00a0") == 0)
    end += 2;
  return end < text.size() && (is_latin(text[end]) || text.compare(end, 2, "\u03a9") == 0);
}

/// A piece of a mixed line: its spaces or brackets belong to what stands before or behind it.
bool leans_on_neighbours(const std::string& text) {
  if (text.empty()) return false;
  const auto count = [&](char c) { return std::count(text.begin(), text.end(), c); };
  return text.front() == ' ' || text.back() == ' ' || count('(') != count(')');
}

/// Bytes of the sign at the end of a terminal's mark, 'B−', which stays behind its letter; 0: none.
std::size_t pole_sign_length(const std::string& text, std::size_t at) {
  constexpr std::string_view minus = "\u2212";
  const bool is_minus = text.compare(at, minus.size(), minus) == 0;
  const std::size_t length = is_minus ? minus.size() : text[at] == '+' || text[at] == '-' ? 1 : 0;
  return at + length == text.size() || text[at + length] == ' ' ? length : 0;
}

Point turned(Point at, Millimetres sum) { return {sum - at.x, at.y}; }

struct Turner {
  Millimetres sum;

  void operator()(PathItem& item) const {
    for (PathPiece& piece : item.pieces)
      if (std::holds_alternative<PathArc>(piece)) return move_path(item);
    for (PathPiece& piece : item.pieces) {
      if (auto* move = std::get_if<PathMove>(&piece)) move->to = turned(move->to, sum);
      if (auto* line = std::get_if<PathLine>(&piece)) line->to = turned(line->to, sum);
      if (auto* curve = std::get_if<PathCurve>(&piece)) {
        curve->control_1 = turned(curve->control_1, sum);
        curve->control_2 = turned(curve->control_2, sum);
        curve->to = turned(curve->to, sum);
      }
    }
  }
  void operator()(RectItem& item) const { item.rect.x = sum - item.rect.right(); }
  void operator()(TextItem& item) const {
    item.at = turned(item.at, sum);
    if (item.align != Align::centre) item.align = item.align == Align::left ? Align::right : Align::left;
  }
  void operator()(LinkItem& item) const { item.rect.x = sum - item.rect.right(); }
  void operator()(AnchorItem& item) const { item.at = turned(item.at, sum); }
  void operator()(TagOpenItem&) const {}
  void operator()(TagCloseItem&) const {}

 private:
  void move_path(PathItem& item) const {
    for (const PathPiece& piece : item.pieces)
      if (const auto* arc = std::get_if<PathArc>(&piece)) {
        Item moved = std::move(item);
        move_item(moved, {sum - arc->centre.x * 2, {}});
        item = std::get<PathItem>(std::move(moved));
        return;
      }
  }
};

}  // namespace

void mirror_items(Items& items, Millimetres sum) {
  for (Item& item : items) std::visit(Turner{sum}, item);
}

Block mirrored_if(bool is_right_to_left, Block block) {
  if (is_right_to_left) mirror_items(block.items, block.width);
  return block;
}

std::string with_reading_marks(const std::string& text) {
  if (!holds_from_right(text) && !leans_on_neighbours(text)) return text;
  std::string marked(reads_right_to_left);
  bool is_inside_word = false;  // letters right before: 'E1', 'R12'
  for (std::size_t at = 0; at < text.size();) {
    if (const std::size_t sign = pole_sign_length(text, at); is_inside_word && sign > 0) {
      marked += text.substr(at, sign);
      at += sign;
      marked += reads_left_to_right;
      is_inside_word = false;
      continue;
    }
    if (!is_digit_byte(text[at])) {
      is_inside_word = is_latin(text[at]);
      marked += text[at++];
      continue;
    }
    const std::size_t end = end_of_number(text, at);
    if (!is_inside_word && has_unit(text, end)) marked += reads_left_to_right;
    marked.append(text, at, end - at);
    at = end;
  }
  return marked;
}

void put_reading_marks(Folio& folio) {
  for (Sheet& sheet : folio.sheets)
    for (Item& item : sheet.items) {
      if (auto* text = std::get_if<TextItem>(&item)) text->text = with_reading_marks(text->text);
      if (auto* tag = std::get_if<TagOpenItem>(&item)) tag->alt = with_reading_marks(tag->alt);
    }
}

}  // namespace loomfolio
