// SPDX-License-Identifier: MIT
//
//     +-----------------+   0 to 0.3 V   +----------------+
//     | 1  Volts. Red.. |--------------->| Mend: wire 12  |
//     |                 |   5.1 to 6 V   +----------------+
//     |                 |---------------> go to 4
//     +-----------------+
//       | 12 to 12.6 V
//       v
//     +-----------------+
//     | 2  ...          |
//
#include "sheets/fault_chart.h"

#include <algorithm>
#include <utility>

#include "base/text.h"

namespace loomfolio {
namespace {

constexpr Millimetres question_share(65), arrow_width(27.6), number_room(8), box_inset(1.4), down_gap(6.4), row_gap(2.6),
    exit_gap(1.4);
constexpr Millimetres lowered_by(0.4);  // a line of text stands high in its step
constexpr Millimetres disc(2.6), head_length(2.2), head_half(0.9);
constexpr TextStyle largest_reading{FaceName::sans, Weight::bold, 8};

bool is_same(const Span& a, const Span& b) {
  return a.text == b.text && a.style == b.style && a.colour == b.colour && a.link.sheet == b.link.sheet && a.link.anchor == b.link.anchor;
}

bool is_same(const Paragraph& a, const Paragraph& b) {
  return a.align == b.align && a.tag == b.tag &&
         std::equal(a.spans.begin(), a.spans.end(), b.spans.begin(), b.spans.end(),
                    [](const Span& x, const Span& y) { return is_same(x, y); });
}

class ChartDrawing {
 public:
  ChartDrawing(Millimetres width, const ChartStyle& style, SetParagraphs& texts) : width_(width), style_(style), texts_(texts) {
    block_.width = width;
  }

  Block draw(const std::vector<DrawnBox>& boxes) {
    choose_reading_size(boxes);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      draw_row(boxes[i], static_cast<int>(i) + 1);
      if (boxes[i].below >= 0)
        draw_down(boxes[i].exits[static_cast<std::size_t>(boxes[i].below)]);
      else if (i + 1 < boxes.size())
        block_.height += row_gap;
    }
    return std::move(block_);
  }

 private:
  /// All readings of a chart are of one size, that of the longest over an arrow.
  void choose_reading_size(const std::vector<DrawnBox>& boxes) {
    for (const DrawnBox& box : boxes)
      for (std::size_t e = 0; e < box.exits.size(); ++e)
        if (static_cast<int>(e) != box.below)
          reading_.points = std::min(reading_.points, fitted_reading(box.exits[e].reading).style.points);
  }

  FittedText fitted_reading(const std::string& reading) const {
    return fit_text(reading, reading_, arrow_width - head_length - Millimetres(0.8), style_.setting.measure);
  }

  /// Mirrors for languages that read from the right.
  Millimetres x(Millimetres from_near, Millimetres size = {}) const {
    return style_.setting.is_right_to_left ? width_ - from_near - size : from_near;
  }

  Block stack(const std::vector<Paragraph>& lines, Millimetres width) {
    Block all{width, {}, {}};
    for (const Paragraph& line : lines) {
      Block block = texts_.set(line, width);
      const Millimetres y = all.height, height = block.height;
      place_block(all.items, std::move(block), {{}, y});
      all.height = y + height;
    }
    return all;
  }

  struct PlacedExit {
    const DrawnExit* exit;
    Block text;
    Millimetres y, height;
  };

  Millimetres end_width() const { return width_ - question_share - arrow_width; }

  std::vector<PlacedExit> place_exits(const DrawnBox& box) {
    std::vector<PlacedExit> placed;
    Millimetres y;
    for (std::size_t e = 0; e < box.exits.size(); ++e) {
      if (static_cast<int>(e) == box.below) continue;
      const DrawnExit& exit = box.exits[e];
      std::vector<Paragraph> lines = exit.end;
      if (exit.next >= 0)
        lines = {{{{fill(style_.go_to, {{"number", std::to_string(exit.next + 1)}}), look::text_bold, look::ink, {}}},
                  Align::left,
                  "P"}};
      PlacedExit p{&exit, stack(lines, end_width() - box_inset * 2), y, {}};
      p.height = std::max(p.text.height + box_inset * 1.2, Millimetres(7.0));
      y += p.height + exit_gap;
      placed.push_back(std::move(p));
    }
    return placed;
  }

  void draw_row(const DrawnBox& box, int number) {
    const Millimetres top = block_.height;
    Block question = stack(box.question, question_share - number_room - box_inset);
    std::vector<PlacedExit> exits = place_exits(box);
    const Millimetres exits_height = exits.empty() ? Millimetres(0) : exits.back().y + exits.back().height;
    const Millimetres height = std::max({question.height + box_inset * 2, exits_height, Millimetres(9)});
    if (!box.question.empty())
      draw_question(std::move(question), {x({}, question_share), top, question_share, height}, number);
    for (PlacedExit& exit : exits) draw_exit(exit, top + (height - exits_height) / 2, !box.question.empty());
    block_.height = top + height;
  }

  void draw_question(Block text, const Rect& rect, int number) {
    add_boxed_rect(block_.items, rect, look::paper, {look::ink, look::part_line}, Millimetres(1.2));
    const Point centre{x(number_room / 2), rect.y + rect.height / 2};
    add_circle(block_.items, centre, disc, {false, {}}, {true, look::ink});
    add_text(block_.items, {centre.x, baseline_at_middle(centre.y, look::text_bold)}, std::to_string(number),
             look::text_bold, look::paper, Align::centre);
    const Point at{x(number_room, text.width), rect.y + (rect.height - text.height) / 2 + lowered_by};
    place_block(block_.items, std::move(text), at);
  }

  void draw_exit(PlacedExit& exit, Millimetres offset, bool has_arrow) {
    const Millimetres y = offset + exit.y, middle = y + exit.height / 2, near = question_share + arrow_width;
    const bool is_end = exit.exit->next < 0;
    if (is_end) {
      add_filled_rect(block_.items, {x(near, end_width()), y, end_width(), exit.height}, look::band, Millimetres(0.6));
      add_filled_rect(block_.items, {x(near, Millimetres(0.9)), y, Millimetres(0.9), exit.height}, look::ink);
    } else {
      add_boxed_rect(block_.items, {x(near, Millimetres(24)), y, Millimetres(24), exit.height}, look::paper,
                     {look::ink, look::part_line}, exit.height / 2);
    }
    if (has_arrow) draw_arrow(middle, exit.exit->reading);
    const Point at{x(near + box_inset * 1.3, exit.text.width), middle - exit.text.height / 2 + lowered_by};
    place_block(block_.items, std::move(exit.text), at);
  }

  void draw_arrow(Millimetres y, const std::string& reading) {
    const Millimetres from = question_share, to = question_share + arrow_width - Millimetres(0.4);
    const Pen pen{look::ink, look::part_line};
    add_line(block_.items, {x(from), y}, {x(to - head_length), y}, pen);
    add_polygon(block_.items, {{x(to), y}, {x(to - head_length), y - head_half}, {x(to - head_length), y + head_half}},
                look::ink, {look::ink, Millimetres(0)});
    const FittedText text = fitted_reading(reading);
    add_text(block_.items, {x(from + (arrow_width - head_length) / 2), y - Millimetres(1.4)}, text.text, text.style,
             look::ink, Align::centre);
  }

  /// The arrow to the box below, its reading beside it.
  void draw_down(const DrawnExit& exit) {
    const Millimetres at = number_room / 2, top = block_.height, bottom = top + down_gap - Millimetres(0.3);
    add_line(block_.items, {x(at), top}, {x(at), bottom - head_length}, {look::ink, look::part_line});
    add_polygon(block_.items,
                {{x(at), bottom}, {x(at) - head_half, bottom - head_length}, {x(at) + head_half, bottom - head_length}},
                look::ink, {look::ink, Millimetres(0)});
    const Align near = style_.setting.is_right_to_left ? Align::right : Align::left;
    add_text(block_.items, {x(at + Millimetres(2.4)), top + down_gap / 2 + Millimetres(1.1)}, exit.reading,
             reading_, look::ink, near);
    block_.height = top + down_gap;
  }

  Millimetres width_;
  const ChartStyle& style_;
  SetParagraphs& texts_;
  TextStyle reading_ = largest_reading;
  Block block_;
};

}  // namespace

Block SetParagraphs::set(const Paragraph& paragraph, Millimetres width) {
  const auto known = std::find_if(known_.begin(), known_.end(), [&](const auto& one) {
    return one.second.width == width && is_same(one.first, paragraph);
  });
  if (known != known_.end()) return known->second;
  return known_.emplace_back(paragraph, set_paragraph(paragraph, width, setting_)).second;
}

Block draw_fault_chart(const std::vector<DrawnBox>& boxes, Millimetres width, const ChartStyle& style, SetParagraphs& texts) {
  return ChartDrawing(width, style, texts).draw(boxes);
}

}  // namespace loomfolio
