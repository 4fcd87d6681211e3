// SPDX-License-Identifier: MIT
#include "diag/excerpt.h"

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace loomfolio {
namespace {

constexpr std::string_view unprintable = "\xEF\xBF\xBD";
constexpr std::string_view cut_mark = "...";

/// Bytes of the first character; 0 when it is broken.
std::size_t character_length(std::string_view text) {
  for (std::size_t length = 1; length <= std::min<std::size_t>(4, text.size()); ++length)
    if (is_utf8(text.substr(0, length))) return length;
  return 0;
}

/// C0, DEL, C1 and the characters that turn the direction of text: any of them could make a terminal show something
/// else.
bool is_control(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  if (character.size() == 1) return byte(0) < 0x20 || byte(0) == 0x7F;
  if (character.size() == 2) return byte(0) == 0xC2 && byte(1) < 0xA0;
  if (character.size() != 3 || byte(0) != 0xE2) return false;
  return (byte(1) == 0x80 && byte(2) >= 0xAA && byte(2) <= 0xAE) ||
         (byte(1) == 0x81 && byte(2) >= 0xA6 && byte(2) <= 0xA9);
}

/// One character as shown.
struct Cell {
  std::string text;
  std::size_t byte = 0, column = 0, width = 0;
};

std::vector<Cell> make_cells(std::string_view line) {
  std::vector<Cell> cells;
  std::size_t column = 0;
  for (std::size_t byte = 0; byte < line.size();) {
    const std::size_t length = character_length(line.substr(byte));
    const std::string_view character = line.substr(byte, std::max<std::size_t>(1, length));
    Cell cell{std::string(character), byte, column, 1};
    if (character == "\t")
      cell.width = count_columns(character, column), cell.text.assign(cell.width, ' ');
    else if (length == 0 || is_control(character))
      cell.text = unprintable;
    else
      cell.width = count_columns(character, column);
    column += cell.width;
    byte += character.size();
    cells.push_back(std::move(cell));
  }
  return cells;
}

}  // namespace

std::string printable(std::string_view text) {
  std::string made;
  while (!text.empty()) {
    const std::size_t length = character_length(text);
    const std::string_view character = text.substr(0, std::max<std::size_t>(1, length));
    if (character == "\n" || character == "\t" || character == "\r")
      made += ' ';
    else if (length == 0 || is_control(character))
      made += unprintable;
    else
      made += character;
    text.remove_prefix(character.size());
  }
  return made;
}

Excerpt make_excerpt(std::string_view line, std::size_t begin, std::size_t end, std::size_t most_columns) {
  begin = std::min(begin, line.size());
  end = std::clamp(end, begin, line.size());
  // A line of megabytes is not walked as a whole; tabs before the window no longer matter there.
  const std::size_t near = most_columns * 16;
  const std::size_t skipped = begin > near ? begin - near / 2 : 0;
  const std::string_view walked = line.substr(skipped, near * 2);
  const std::vector<Cell> cells = make_cells(walked);
  const std::size_t total = cells.empty() ? 0 : cells.back().column + cells.back().width;
  std::size_t caret = total, caret_end = total;
  for (const Cell& cell : cells) {
    if (cell.byte + skipped >= begin) caret = std::min(caret, cell.column);
    if (cell.byte + skipped >= end) caret_end = std::min(caret_end, cell.column);
  }
  const bool is_whole = skipped == 0 && total <= most_columns && skipped + walked.size() == line.size();
  const std::size_t first = is_whole || caret < most_columns * 2 / 3 ? 0 : caret - most_columns / 3;
  const bool cuts_front = first > 0 || skipped > 0;
  const std::size_t last = is_whole ? total : std::min(total, first + most_columns);
  Excerpt made;
  std::size_t shown_from = last;
  if (cuts_front) made.line = cut_mark;
  for (const Cell& cell : cells)
    if (cell.column >= first && cell.column + cell.width <= last) {
      shown_from = std::min(shown_from, cell.column);
      made.line += cell.text;
    }
  if (last < total || skipped + walked.size() < line.size()) made.line += cut_mark;
  made.caret.assign((cuts_front ? cut_mark.size() : 0) + caret - std::min(caret, shown_from), ' ');
  made.caret += '^';
  const std::size_t tilde_end = std::min(caret_end, last);
  if (tilde_end > caret + 1) made.caret.append(tilde_end - caret - 1, '~');
  return made;
}

}  // namespace loomfolio
