// SPDX-License-Identifier: MIT
#include "sheets/panel.h"

#include <utility>

namespace loomfolio {
namespace {

struct SignalLook {
  std::string_view word;
  Colour bar, letters;
};

SignalLook look_of(Signal signal) {
  switch (signal) {
    case Signal::danger:
      return {"signal.danger", look::safety_red, look::paper};
    case Signal::warning:
      return {"signal.warning", look::safety_orange, look::ink};
    case Signal::caution:
      return {"signal.caution", look::safety_yellow, look::ink};
    case Signal::notice:
      return {"signal.notice", look::safety_blue, look::paper};
  }
  return {};
}

void draw_bar(Block& block, Signal signal, const Words& words, const TypeSetting& setting) {
  const SignalLook look_now = look_of(signal);
  add_filled_rect(block.items, {{}, {}, block.width, look::signal_bar}, look_now.bar);
  const std::string word = words(look_now.word);
  const Millimetres middle = look::signal_bar / 2;
  const Millimetres triangle_height(5);
  Millimetres at = look::panel_pad;
  if (signal != Signal::notice) {
    Block triangle = alert_triangle(triangle_height, look_now.letters, look_now.bar);
    const Millimetres step = triangle.width + Millimetres(2.2);
    const Millimetres x = setting.is_right_to_left ? block.width - at - triangle.width : at;
    place_block(block.items, std::move(triangle), {x, middle - triangle_height / 2 - Millimetres(0.15)});
    at += step;
  }
  const Millimetres x = setting.is_right_to_left ? block.width - at : at;
  block.items.push_back(TagOpenItem{"P", {}});
  add_text(block.items, {x, baseline_at_middle(middle, look::signal_word)}, word, look::signal_word, look_now.letters,
           setting.is_right_to_left ? Align::right : Align::left);
  block.items.push_back(TagCloseItem{});
}

void add_lines(Block& block, const Paragraph& paragraph, Millimetres indent, const TypeSetting& setting) {
  Block text = set_paragraph(paragraph, block.width - look::panel_pad * 2 - indent, setting);
  const Millimetres x = setting.is_right_to_left ? look::panel_pad : look::panel_pad + indent;
  const Millimetres height = text.height;
  place_block(block.items, std::move(text), {x, block.height});
  block.height += height;
}

/// An action: a small square before it, as a point on a list that is to be done.
void add_action(Block& block, const std::string& sentence, const TypeSetting& setting) {
  const Millimetres indent(4), size(1.3);
  const Millimetres x = setting.is_right_to_left ? block.width - look::panel_pad - size : look::panel_pad;
  const Millimetres y = block.height + look::line_step(look::text) / 2 - size / 2;
  block.items.push_back(TagOpenItem{"LI", {}});
  add_filled_rect(block.items, {x, y, size, size}, look::ink);
  add_lines(block, {{{sentence, look::text, look::ink, {}}}, Align::left, "LBody"}, indent, setting);
  block.items.push_back(TagCloseItem{});
}

}  // namespace

Block alert_triangle(Millimetres height, Colour triangle, Colour mark) {
  // The mark is a drawn wedge over a dot, in shares of the height.
  const auto at = [&](double x, double y) { return Point{height * x, height * y}; };
  const double half = 0.577;  // half the side of an equilateral triangle of height 1
  Block block{height * (2 * half), height, {}};
  const Pen round_edge{triangle, height * 0.12, {}, Cap::round};
  add_polygon(block.items, {at(half, 0.1), at(2 * half - 0.1, 0.94), at(0.1, 0.94)}, triangle, round_edge);
  add_polygon(block.items,
              {at(half - 0.075, 0.34), at(half + 0.075, 0.34), at(half + 0.035, 0.67), at(half - 0.035, 0.67)}, mark,
              Pen{mark, Millimetres(0)});
  add_circle(block.items, at(half, 0.79), height * 0.068, {false, {}}, {true, mark});
  return block;
}

Block signal_bar(Signal signal, Millimetres width, const Words& words, const TypeSetting& setting) {
  Block block{width, look::signal_bar, {}};
  draw_bar(block, signal, words, setting);
  add_rect(block.items, {{}, {}, width, block.height}, {look::ink, look::heavy_line});
  return block;
}

Block make_panel(const Panel& panel, Millimetres width, const Words& words, const TypeSetting& setting) {
  Block block{width, {}, {}};
  block.items.push_back(TagOpenItem{"Sect", {}});
  draw_bar(block, panel.signal, words, setting);
  block.height = look::signal_bar + Millimetres(2);
  add_lines(block, {{{panel.hazard, look::text_bold, look::ink, {}}}, Align::left, "P"}, {}, setting);
  if (!panel.outcome.empty())
    add_lines(block, {{{panel.outcome, look::text, look::ink, {}}}, Align::left, "P"}, {}, setting);
  if (!panel.avoid.empty()) {
    block.height += Millimetres(1);
    block.items.push_back(TagOpenItem{"L", {}});
    for (const std::string& action : panel.avoid) add_action(block, action, setting);
    block.items.push_back(TagCloseItem{});
  }
  block.height += Millimetres(2.2);
  add_rect(block.items, {{}, {}, width, block.height}, {look::ink, look::heavy_line});
  block.items.push_back(TagCloseItem{});
  return block;
}

Block make_reminder(const std::string& text, Millimetres width, const Words& words, const TypeSetting& setting) {
  const Millimetres triangle(5), text_x = triangle + Millimetres(2);
  Block lines = set_text(words("signal.warning") + ": " + text, look::text_bold, width - text_x, setting);
  Block block{width, std::max(lines.height, triangle), {}};
  place_block(block.items, alert_triangle(triangle, look::safety_orange, look::ink),
              {setting.is_right_to_left ? width - triangle : Millimetres(0), {}});
  place_block(block.items, std::move(lines), {setting.is_right_to_left ? Millimetres(0) : text_x, {}});
  return block;
}

Panel panel_from_words(const Words& words, Signal signal, const std::string& key,
                       const std::vector<std::pair<std::string, std::string>>& values) {
  Panel panel{signal, words(key + "_hazard", values), {}, {}};
  if (words.has(key + "_outcome")) panel.outcome = words(key + "_outcome", values);
  for (int i = 1; words.has(key + "_avoid_" + std::to_string(i)); ++i)
    panel.avoid.push_back(words(key + "_avoid_" + std::to_string(i), values));
  return panel;
}

}  // namespace loomfolio
