// SPDX-License-Identifier: MIT
// Greedy line breaking: spans are cut into pieces between which a line may break, each piece is measured once, and
// lines take pieces until the next would not fit. Neighbouring pieces of one span in one line are then joined again
// into one text.
#include "sheets/text_flow.h"

#include <algorithm>
#include <array>
#include <span>
#include <string_view>
#include <utility>

#include "base/text.h"
#include "sheets/characters.h"
#include "sheets/reference.h"

namespace loomfolio {
namespace {

/// Widths are rounded up piece by piece, so a line that fits exactly may add up to a little more.
constexpr Millimetres slack(0.15);

/// An unbreakable piece: its text without and with the spaces that follow it.
struct Piece {
  std::size_t span = 0;
  std::string text;
  std::string spaces;
  Millimetres width, spaces_width;
  bool breaks_after = true;
};

struct Line {
  std::vector<Piece> pieces;
  Millimetres width;  ///< without the spaces at its end
};

std::size_t character_length(unsigned char first) { return first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4; }

/// East Asian ideographs, kana and hangul, which break anywhere. Their closing signs (U+3001 to U+3011) may not begin a
/// line.
bool is_east_asian(std::string_view character) {
  if (character.size() != 3) return false;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(character[i])); };
  const unsigned code = ((byte(0) & 0x0F) << 12) | ((byte(1) & 0x3F) << 6) | (byte(2) & 0x3F);
  return (code >= 0x3040 && code <= 0x9FFF) || (code >= 0xAC00 && code <= 0xD7A3);
}

/// Whether `text` goes on at `at` with a unit that its figure is read with, whatever sign follows it.
bool is_unit_at(const std::string& text, std::size_t at) {
  static constexpr std::array<std::string_view, 30> units{
      "V", "mV", "A", "mA", "W", "Ah", "Ω", "kΩ", "ohm", "mm", "mm²", "cm", "m", "ft", "kg", "g",
      "N", "Nm", "s", "ms", "min", "Hz", "°C", "°F", "%", "AWG", "kPa", "K", "mΩ", "N·m"};
  const std::size_t end = std::min(text.find_first_of(" .,;:)/\x1f", at), text.size());
  const std::string_view word(text.data() + at, end - at);
  return std::find(units.begin(), units.end(), word) != units.end();
}

class PieceCutter {
 public:
  PieceCutter(const Paragraph& paragraph, const TextMeasure& measure) : paragraph_(paragraph), measure_(measure) {}

  std::vector<Piece> cut() {
    for (std::size_t i = 0; i < paragraph_.spans.size(); ++i) cut_span(i);
    if (!pieces_.empty()) pieces_.back().breaks_after = true;
    return std::move(pieces_);
  }

 private:
  void cut_span(std::size_t index) {
    const std::string& text = paragraph_.spans[index].text;
    std::string word;
    for (std::size_t i = 0; i < text.size();) {
      if (text[i] == '\x1f') {  // a reference's mark stays whole
        const std::size_t end = std::min(text.find('\x1f', i + 1), text.size() - 1);
        word += text.substr(i, end + 1 - i);
        i = end + 1;
        continue;
      }
      const std::size_t length = std::min(character_length(static_cast<unsigned char>(text[i])), text.size() - i);
      const std::string_view character(text.data() + i, length);
      i += length;
      if (character == " ") {
        std::size_t count = 1;
        while (i < text.size() && text[i] == ' ') ++i, ++count;
        const bool is_figure = !word.empty() && word.back() >= '0' && word.back() <= '9' && is_unit_at(text, i);
        finish(index, std::exchange(word, {}), std::string(count, ' '), !is_figure);
        continue;
      }
      word += character;
      // Numbers, and the capitals of a code, do not break at a hyphen or slash: they would read as two.
      const bool may_break_inside = (character == "-" || character == "/") && word.size() > 1 && i < text.size() &&
                                    is_letter_byte(word[word.size() - 2]) && is_letter_byte(text[i]) &&
                                    !(is_capital_byte(word[word.size() - 2]) && is_capital_byte(text[i]));
      if (may_break_inside || is_east_asian(character)) finish(index, std::exchange(word, {}), {}, true);
    }
    if (!word.empty()) finish(index, std::move(word), {}, false);
  }

  void finish(std::size_t span, std::string text, std::string spaces, bool breaks_after) {
    const TextStyle& style = paragraph_.spans[span].style;
    Piece piece{span, std::move(text), std::move(spaces), {}, {}, breaks_after};
    if (!piece.text.empty()) piece.width = measure_.measure(widest(piece.text), style).width;
    if (!piece.spaces.empty()) piece.spaces_width = measure_.measure(piece.spaces, style).width;
    pieces_.push_back(std::move(piece));
  }

  const Paragraph& paragraph_;
  const TextMeasure& measure_;
  std::vector<Piece> pieces_;
};

/// Pieces that belong together: a word may change style in its middle.
using Word = std::span<Piece>;

std::vector<Word> join_words(std::vector<Piece>& pieces) {
  std::vector<Word> words;
  auto first = pieces.begin();
  for (auto piece = first; piece != pieces.end(); ++piece) {
    if (!piece->breaks_after) continue;
    words.emplace_back(first, piece + 1);
    first = piece + 1;
  }
  return words;
}

Millimetres width_of(Word word) {
  Millimetres width;
  for (std::size_t i = 0; i < word.size(); ++i)
    width += word[i].width + (i + 1 < word.size() ? word[i].spaces_width : Millimetres());
  return width;
}

class LineBreaker {
 public:
  LineBreaker(const Paragraph& paragraph, Millimetres width, const TextMeasure& measure)
      : paragraph_(paragraph), width_(width), measure_(measure) {}

  /// Takes the pieces of the words.
  std::vector<Line> break_lines(const std::vector<Word>& words) {
    for (const Word word : words) add(word);
    finish_line();
    return std::move(lines_);
  }

 private:
  void add(Word word) {
    const Millimetres needed = width_of(word);
    if (!line_.pieces.empty() && line_.width + pending_spaces_ + needed > width_ + slack) finish_line();
    if (needed > width_ + slack) return add_broken(word);
    for (Piece& piece : word) append(std::move(piece));
  }

  void append(Piece piece) {
    line_.width += pending_spaces_ + piece.width;
    pending_spaces_ = piece.spaces_width;
    line_.pieces.push_back(std::move(piece));
  }

  /// A word wider than the line goes in character by character.
  void add_broken(Word word) {
    for (const Piece& piece : word) {
      const TextStyle& style = paragraph_.spans[piece.span].style;
      for (std::size_t i = 0; i < piece.text.size();) {
        const std::size_t length =
            std::min(character_length(static_cast<unsigned char>(piece.text[i])), piece.text.size() - i);
        Piece one{piece.span, piece.text.substr(i, length), {}, {}, {}, true};
        one.width = measure_.measure(one.text, style).width;
        i += length;
        if (i >= piece.text.size()) one.spaces = piece.spaces, one.spaces_width = piece.spaces_width;
        if (!line_.pieces.empty() && line_.width + pending_spaces_ + one.width > width_) finish_line();
        append(std::move(one));
      }
    }
  }

  void finish_line() {
    if (!line_.pieces.empty()) lines_.push_back(std::move(line_));
    line_ = {};
    pending_spaces_ = {};
  }

  const Paragraph& paragraph_;
  Millimetres width_;
  const TextMeasure& measure_;
  std::vector<Line> lines_;
  Line line_;
  Millimetres pending_spaces_;
};

/// Neighbouring pieces of one span, joined.
struct SpanRun {
  std::size_t span = 0;
  std::string text;
  Millimetres width;
  Millimetres gap_after;
};

std::vector<SpanRun> join_runs(const Line& line) {
  std::vector<SpanRun> runs;
  for (std::size_t i = 0; i < line.pieces.size(); ++i) {
    const Piece& piece = line.pieces[i];
    const bool is_last = i + 1 == line.pieces.size();
    const bool goes_on = !is_last && line.pieces[i + 1].span == piece.span;
    if (runs.empty() || runs.back().span != piece.span) runs.push_back({piece.span, {}, {}, {}});
    SpanRun& run = runs.back();
    run.text += piece.text;
    run.width += piece.width;
    if (goes_on) {
      run.text += piece.spaces;
      run.width += piece.spaces_width;
    } else if (!is_last) {
      run.gap_after = piece.spaces_width;
    }
  }
  return runs;
}

Millimetres line_start(const Line& line, Align align, Millimetres width, bool is_right_to_left) {
  if (align == Align::centre) return (width - line.width) / 2;
  const bool at_left = (align == Align::left) != is_right_to_left;
  return at_left ? Millimetres(0) : width - line.width;
}

/// Spaces at a run's ends become gaps beside it: in a line from right to left a Latin word would be drawn with them at the
/// wrong side. Gives the gap before the run.
Millimetres take_spaces_off(SpanRun& run, const TextStyle& style, const TextMeasure& measure) {
  constexpr std::string_view kinds[] = {"\u00a0", " "};
  std::string_view kept = run.text, last = run.text;
  std::size_t before = 0;
  do {
    last = kept;
    for (const std::string_view space : kinds) {
      if (kept.starts_with(space)) kept.remove_prefix(space.size()), ++before;
      if (kept.ends_with(space)) kept.remove_suffix(space.size());
    }
  } while (last.size() != kept.size());
  if (kept.size() == run.text.size()) return {};
  const Millimetres width = measure.measure(widest(kept), style).width;
  const Millimetres gap = measure.measure(std::string(before, ' '), style).width;
  run.gap_after += std::max(Millimetres(0), run.width - width - gap);
  run.width = width;
  run.text = std::string(kept);
  return gap;
}

void place_line(Items& items, const Line& line, Millimetres start, Millimetres baseline, const Paragraph& paragraph,
                const TypeSetting& setting) {
  const bool is_right_to_left = setting.is_right_to_left;
  Millimetres x = is_right_to_left ? start + line.width : start;
  for (SpanRun& run : join_runs(line)) {
    const Span& span = paragraph.spans[run.span];
    if (is_right_to_left) x -= take_spaces_off(run, span.style, setting.measure);
    const Millimetres left = is_right_to_left ? x - run.width : x;
    const Align align = is_right_to_left ? Align::right : Align::left;
    if (span.link.is_set()) {
      const Millimetres up = look::line_step(span.style) * 0.8;
      items.push_back(
          LinkItem{{left, baseline - up, run.width, look::line_step(span.style)}, span.link.sheet, span.link.anchor});
    }
    add_text(items, {x, baseline}, std::move(run.text), span.style, span.colour, align);
    const Millimetres step = run.width + run.gap_after;
    x = is_right_to_left ? x - step : x + step;
  }
}

}  // namespace

Block set_paragraph(const Paragraph& paragraph, Millimetres width, const TypeSetting& setting) {
  Block block{width, {}, {}};
  Millimetres step;
  for (const Span& span : paragraph.spans) step = std::max(step, look::line_step(span.style));
  std::vector<Piece> pieces = PieceCutter(paragraph, setting.measure).cut();
  const std::vector<Line> lines = LineBreaker(paragraph, width, setting.measure).break_lines(join_words(pieces));
  if (!paragraph.tag.empty()) block.items.push_back(TagOpenItem{paragraph.tag, {}});
  for (const Line& line : lines) {
    const Millimetres start = line_start(line, paragraph.align, width, setting.is_right_to_left);
    place_line(block.items, line, start, block.height + step * look::baseline_share, paragraph, setting);
    block.height += step;
  }
  if (!paragraph.tag.empty()) block.items.push_back(TagCloseItem{});
  return block;
}

Block set_text(const std::string& text, const TextStyle& style, Millimetres width, const TypeSetting& setting) {
  return set_paragraph({{{text, style, look::ink, {}}}, Align::left, "P"}, width, setting);
}

Block set_list_item(const Span& mark, std::vector<Span> text, Millimetres hang, Millimetres width, const TypeSetting& setting) {
  Block sign = set_paragraph({{mark}, Align::left, "Lbl"}, hang, setting);
  Block body = set_paragraph({std::move(text), Align::left, "LBody"}, width - hang, setting);
  Block block{width, body.height, {TagOpenItem{"LI", {}}}};
  place_block(block.items, std::move(sign), {setting.is_right_to_left ? width - hang : Millimetres(0), {}});
  place_block(block.items, std::move(body), {setting.is_right_to_left ? Millimetres(0) : hang, {}});
  block.items.push_back(TagCloseItem{});
  return block;
}

std::vector<Span> marked_spans(std::string_view text, const TextStyle& plain, const TextStyle& bold) {
  std::vector<Span> spans;
  bool is_bold = false;
  for (const std::string& part : split(text, '*')) {
    if (!part.empty()) spans.push_back({part, is_bold ? bold : plain, look::ink, {}});
    is_bold = !is_bold;
  }
  return spans;
}

Millimetres lines_height(int lines, const TextStyle& style) { return look::line_step(style) * lines; }

}  // namespace loomfolio
