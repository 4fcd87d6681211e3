// SPDX-License-Identifier: MIT
// The safety page: what the signal words mean, then one panel a hazard, the battery's first. All of it holds for every
// step.
#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"
#include "sheets/columns.h"
#include "sheets/names.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

using Places = std::vector<std::pair<std::string, std::string>>;

struct Hazard {
  Signal signal;
  std::string_view key;
};

// Battery short, hydrogen and fuel can kill or maim; hot tools and parts that move injure; wrong polarity only breaks
// things. A wire that burns for want of a fitting fuse burns the machine and whoever stands beside it.
constexpr std::array<Hazard, 10> hazards{{
    {Signal::warning, "safety.battery"},
    {Signal::warning, "safety.hydrogen"},
    {Signal::warning, "safety.fuel"},
    {Signal::warning, "safety.fuses"},
    {Signal::warning, "safety.exhaust"},
    {Signal::warning, "safety.stand"},
    {Signal::warning, "safety.road"},
    {Signal::caution, "safety.hot_work"},
    {Signal::caution, "safety.moving"},
    {Signal::notice, "safety.electronics"},
}};

/// As wide as the longest signal word of the language asks.
Millimetres signal_bar_width(const PageFlow& flow) {
  const Words& words = flow.context().words();
  Millimetres width(37);
  for (const char* word : {"signal.danger", "signal.warning", "signal.caution", "signal.notice"})
    width = std::max(width, flow.setting().measure.measure(words(word), look::signal_word).width + Millimetres(14));
  return width;
}

/// A small bar with the signal word as panels show it, and its meaning beside it.
Block signal_meaning(Signal signal, std::string_view meaning, const PageFlow& flow, Millimetres width) {
  const Words& words = flow.context().words();
  const Millimetres bar_width = signal_bar_width(flow);
  Block block{width, {}, {}};
  Block bar = signal_bar(signal, bar_width, words, flow.setting());
  Block text = set_text(words(meaning), look::text, width - bar_width - look::gutter, flow.setting());
  block.height = std::max(bar.height, text.height) + Millimetres(1);
  const Millimetres y = (bar.height - std::min(text.height, bar.height)) / 2;
  const bool is_right_to_left = flow.setting().is_right_to_left;
  place_block(block.items, std::move(bar), {is_right_to_left ? width - bar_width : Millimetres(0), {}});
  place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : bar_width + look::gutter, y});
  return block;
}

/// Figures of FAA AC 43.13-1B, chapter 11: clamps 24 in apart, wires 6 in from fuel lines, 3/8 in clear of a hole's
/// edge.
Places routing_figures(const SheetContext& context) {
  const bool is_metric = context.build().document.units == UnitSystem::metric;
  const auto length = [&](double mm, const char* inches) {
    const std::string unit = length_unit(context.build().document.units, context.words());
    return (is_metric ? shortest(mm, 0) : std::string(inches)) + "\u00a0" + unit;
  };
  return {{"support", length(600, "24")}, {"fuel", length(150, "6")}, {"edge", length(10, "3/8")}};
}

/// The row of what to do at once that speaks of the starter.
constexpr int starter_row = 4;

bool has_starter(const FolioInput& input) {
  return std::any_of(input.builds.begin(), input.builds.end(), [](const SolvedBuild& solved) {
    const Build& build = solved.build;
    return std::any_of(build.parts.begin(), build.parts.end(),
                       [&](const Part& part) { return build.kind_of(part).group == "starting"; });
  });
}

/// Rows of two texts, `key`_1a and `key`_1b and so on: what, and what then. One may be left out.
void add_pairs(PageFlow& flow, const std::string& key, const Places& places, int left_out = 0) {
  const Words& words = flow.context().words();
  Table table;
  table.columns = {{words(key + "_head_a"), CellAlign::near, Wrapping::wraps, 1},
                   {words(key + "_head_b"), CellAlign::near, Wrapping::wraps, 2}};
  for (int i = 1; words.has(key + "_" + std::to_string(i) + "a"); ++i) {
    if (i == left_out) continue;
    const std::string row = key + "_" + std::to_string(i);
    table.rows.push_back(
        {{text_cell(words(row + "a"), look::text_bold), text_cell(words(row + "b", places), look::text)}});
  }
  flow.add_heading(words(key + "_title"));
  flow.items().push_back(AnchorItem{key, {}});
  add_table(flow, table, look::paragraph_gap);
}

void add_signal_words(PageFlow& flow) {
  const Millimetres width = column_width(flow, 2);
  std::vector<Block> blocks;
  blocks.push_back(signal_meaning(Signal::danger, "safety.danger_means", flow, width));
  blocks.push_back(signal_meaning(Signal::warning, "safety.warning_means", flow, width));
  blocks.push_back(signal_meaning(Signal::caution, "safety.caution_means", flow, width));
  blocks.push_back(signal_meaning(Signal::notice, "safety.notice_means", flow, width));
  add_columns(flow, std::move(blocks), {2, Millimetres(1.5)}, {});
}

}  // namespace

std::vector<Sheet> make_safety(const SheetContext& context) {
  const Words& words = context.words();
  PageFlow flow(context, {"safety", words("safety.title"), words("safety.intro")});
  add_signal_words(flow);
  const auto poles = pole_names(context.build(), words);
  std::vector<Block> panels;
  for (const Hazard& hazard : hazards)
    panels.push_back(make_panel(panel_from_words(words, hazard.signal, std::string(hazard.key), poles),
                                column_width(flow, 2), words, flow.setting()));
  add_columns(flow, std::move(panels), {2, look::gutter}, look::block_gap);
  add_pairs(flow, "safety.wrong", poles, has_starter(context.input) ? 0 : starter_row);
  add_pairs(flow, "safety.route", routing_figures(context));
  flow.add_heading(words("safety.law"));
  flow.add_text(words("safety.law_text"), look::text, look::paragraph_gap);
  return flow.take();
}

}  // namespace loomfolio
