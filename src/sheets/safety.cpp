// SPDX-License-Identifier: MIT
// The safety page: what the signal words mean, then one panel a hazard, the battery's first. All of it holds for every
// step.
#include <array>
#include <utility>

#include "sheets/columns.h"
#include "sheets/panel.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {
namespace {

struct Hazard {
  Signal signal;
  std::string_view key;
};

// Battery short, hydrogen and fuel can kill or maim; hot tools and parts that move injure; wrong polarity only breaks
// things.
constexpr std::array<Hazard, 9> hazards{{
    {Signal::warning, "safety.battery"},
    {Signal::warning, "safety.hydrogen"},
    {Signal::warning, "safety.fuel"},
    {Signal::warning, "safety.stand"},
    {Signal::warning, "safety.road"},
    {Signal::caution, "safety.hot_work"},
    {Signal::caution, "safety.moving"},
    {Signal::notice, "safety.fuses"},
    {Signal::notice, "safety.electronics"},
}};

/// Names of the poles by what is earthed on this machine.
std::vector<std::pair<std::string, std::string>> pole_names(const Build& build, const Words& words) {
  const std::string negative = words("safety.negative"), positive = words("safety.positive");
  const bool is_positive_earth = build.electrics.is_positive_earth;
  return {{"earthed", is_positive_earth ? positive : negative}, {"live", is_positive_earth ? negative : positive}};
}

/// A small bar with the signal word as panels show it, and its meaning beside it.
Block signal_meaning(Signal signal, std::string_view meaning, const PageFlow& flow, Millimetres width) {
  const Words& words = flow.context().words();
  const Millimetres bar_width(37);
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
  flow.add_heading(words("safety.law"));
  flow.add_text(words("safety.law_text"), look::text, look::paragraph_gap);
  return flow.take();
}

}  // namespace loomfolio
