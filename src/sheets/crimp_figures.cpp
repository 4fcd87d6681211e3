// SPDX-License-Identifier: MIT
#include "sheets/crimp_figures.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/text.h"
#include "sheets/assembly_plan.h"
#include "sheets/fitting_steps.h"
#include "sheets/hook_ups.h"
#include "sheets/print_text.h"
#include "sheets/pull_force.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

constexpr Millimetres mark_size(4), figure_pad(1), number_width(8);
constexpr int figures_across = 3;
/// A tug at an installed contact stays below that share of what a crimp must bear; NASA-STD-8739.4, as retold.
constexpr double tug_share = 0.8;
/// Nor may it be harder than a lock in a plastic housing bears before its second lock is in: newtons, common practice, no source.
constexpr double most_tug = 20;

Millimetres figure_width(const PageFlow& flow) {
  return (flow.width() - look::gutter * (figures_across - 1)) / figures_across;
}

bool is_mirrored(const PageFlow& flow) { return flow.setting().is_right_to_left; }

/// Blocks side by side in the direction of reading, each row as high as its highest.
std::vector<Block> in_rows(const PageFlow& flow, std::vector<Block> blocks) {
  const Millimetres step = (flow.width() + look::gutter) / figures_across;
  std::vector<Block> rows;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    const auto column = static_cast<int>(i) % figures_across;
    if (column == 0) rows.push_back({flow.width(), {}, {}});
    rows.back().height = std::max(rows.back().height, blocks[i].height);
    const int place = is_mirrored(flow) ? figures_across - 1 - column : column;
    place_block(rows.back().items, std::move(blocks[i]), {step * place, {}});
  }
  return rows;
}

/// A tick or a cross: told apart in grey too.
Block verdict_mark(Verdict verdict) {
  Block block{mark_size, mark_size, {}};
  const auto at = [](double x, double y) { return Point{Millimetres(x), Millimetres(y)}; };
  const Pen pen{look::ink, Millimetres(0.9), {}, Cap::round};
  if (verdict == Verdict::good) {
    add_polyline(block.items, {at(0.4, 2.2), at(1.5, 3.4), at(3.6, 0.6)}, pen);
    return block;
  }
  add_line(block.items, at(0.5, 0.5), at(3.5, 3.5), pen);
  add_line(block.items, at(3.5, 0.5), at(0.5, 3.5), pen);
  return block;
}

SquareMillimetres thinnest(const std::vector<FittingUse>& uses) {
  double least = uses.front().wires.begin()->first.first;
  for (const FittingUse& use : uses) least = std::min(least, use.wires.begin()->first.first);
  return SquareMillimetres(least);
}

std::string tug_text(double newtons, const Words& words) {
  return words("crimps.tug_force", {{"newtons", std::to_string(static_cast<int>(newtons))},
                                    {"kg", shortest(std::floor(newtons / standard_gravity * 2) / 2, 1)}});
}

/// Of the first splice that the fitter makes; none: drawn with one wire a side.
SpliceWires find_splice(const SheetContext& context) {
  const auto wires_of = [](const Build& build, const std::vector<WireId>& ids) {
    std::vector<const Wire*> wires;
    for (const WireId id : ids) wires.push_back(&build.wire(id));
    return wires;
  };
  std::vector<const Build*> builds{&context.build()};
  if (context.hook_ups != nullptr)
    for (const SolvedBuild* other : context.hook_ups->builds) builds.push_back(&other->build);
  for (const Build* build : builds)
    for (const Splice& splice : build->splices) {
      const WireSides sides = sides_at(*build, splice.terminal);
      const SpliceWires wires{wires_of(*build, sides.left), wires_of(*build, sides.right)};
      const auto is_joined = [](const Wire* wire) { return is_joined_by_fitter(*wire); };
      if (!wires.left.empty() && !wires.right.empty() && std::all_of(wires.left.begin(), wires.left.end(), is_joined) &&
          std::all_of(wires.right.begin(), wires.right.end(), is_joined))
        return wires;
    }
  return {};
}

FittingFacts facts_of(const std::vector<FittingUse>& uses, const Words& words) {
  const FittingUse& first = uses.front();
  const Wire& wire = *first.wires.begin()->second.front();
  FittingFacts facts{wire, 5, words("crimps.strip_by_maker"), {}, words("crimps.click")};
  if (first.strip) {
    facts.strip = first.strip->number();
    facts.strip_text = both_units(*first.strip, words);
  }
  const bool is_one =
      std::all_of(uses.begin(), uses.end(), [&](const FittingUse& use) { return use.strip == first.strip; });
  if (!is_one) facts.strip_text = words("crimps.strip_by_table");
  if (const auto force = pull_force(thinnest(uses)))
    facts.tug_text = tug_text(std::min(force->newtons * tug_share, most_tug), words);
  return facts;
}

Block figure_block(const PageFlow& flow, Block figure, const std::string& number, const std::string& sentence) {
  const Millimetres width = figure_width(flow);
  Block block{width, step_figure_height, {}};
  add_rect(block.items, {{}, {}, width, step_figure_height}, {look::hairline_grey, look::line}, Millimetres(1));
  block.items.push_back(TagOpenItem{"Figure", sentence});
  place_block(block.items, std::move(figure), {figure_pad, {}});
  block.items.push_back(TagCloseItem{});
  Block text = set_text(sentence, look::text, width - number_width, flow.setting());
  const bool is_right = is_mirrored(flow);
  const Millimetres y = step_figure_height + figure_pad;
  add_text(block.items, {is_right ? width : Millimetres(0), y + look::line_step(look::text) * look::baseline_share},
           number, look::heading, look::ink, is_right ? Align::right : Align::left);
  block.height = y + text.height;
  place_block(block.items, std::move(text), {is_right ? Millimetres(0) : number_width, y});
  return block;
}

}  // namespace

std::string both_units(Millimetres length, const Words& words) {
  return words("crimps.both_units", {{"mm", print_small_length(length, UnitSystem::metric, words)},
                                     {"inch", print_small_length(length, UnitSystem::imperial, words)}});
}

std::vector<Block> step_rows(const PageFlow& flow, FittingShape shape, const std::vector<FittingUse>& uses) {
  const Words& words = flow.context().words();
  const FittingFacts facts = facts_of(uses, words);
  const SpliceWires splice = shape == FittingShape::splice ? find_splice(flow.context()) : SpliceWires{};
  std::vector<Block> blocks;
  for (const FittingStep& step : fitting_procedure(shape).steps) {
    FittingSketch sketch(figure_width(flow) - figure_pad * 2, step_figure_height, step_scale, facts.wire);
    if (shape == FittingShape::splice) sketch.set_splice(splice);
    step.draw(sketch, facts);
    const std::string sentence =
        words("crimps.step_" + step.key, {{"strip", facts.strip_text}, {"tug", facts.tug_text}});
    blocks.push_back(figure_block(flow, sketch.take(), std::to_string(blocks.size() + 1), sentence));
  }
  return in_rows(flow, std::move(blocks));
}

std::vector<Block> example_rows(const PageFlow& flow, FittingShape shape, const Wire& wire) {
  const Words& words = flow.context().words();
  const Millimetres width = figure_width(flow), height = verdict_figure_height;
  const SpliceWires splice = shape == FittingShape::splice ? find_splice(flow.context()) : SpliceWires{};
  std::vector<Block> blocks;
  for (const FittingExample& example : fitting_procedure(shape).examples) {
    FittingSketch sketch(width - mark_size - figure_pad, height, verdict_scale, wire);
    if (shape == FittingShape::splice) sketch.set_splice(splice);
    example.draw(sketch);
    Block block{width, height, {}};
    const std::string sentence = words("crimps." + example.key);
    block.items.push_back(TagOpenItem{"Figure", sentence});
    const bool is_right = is_mirrored(flow);
    place_block(block.items, sketch.take(), {is_right ? Millimetres(0) : mark_size + figure_pad, {}});
    block.items.push_back(TagCloseItem{});
    place_block(block.items, verdict_mark(example.verdict),
                {is_right ? width - mark_size : Millimetres(0), (height - mark_size) / 2});
    Block text = set_text(sentence, look::text, width, flow.setting());
    block.height += text.height;
    place_block(block.items, std::move(text), {{}, height});
    blocks.push_back(std::move(block));
  }
  return in_rows(flow, std::move(blocks));
}

}  // namespace loomfolio
