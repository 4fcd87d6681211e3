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
#include "sheets/text_flow.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

constexpr Millimetres mark_size(7), figure_pad(1), number_width(8);
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

/// A tick on white or a cross on black: told apart at arm's length, and in grey.
Block verdict_mark(Verdict verdict) {
  Block block{mark_size, mark_size, {}};
  const auto at = [](double x, double y) { return Point{mark_size * x, mark_size * y}; };
  const bool is_good = verdict == Verdict::good;
  const Pen edge{look::ink, Millimetres(0.6)}, pen{is_good ? look::ink : look::paper, Millimetres(1.2), {}, Cap::round};
  add_circle(block.items, at(0.5, 0.5), mark_size * 0.45, {true, edge}, {true, is_good ? look::paper : look::ink});
  if (is_good) {
    add_polyline(block.items, {at(0.27, 0.52), at(0.44, 0.69), at(0.73, 0.33)}, pen);
    return block;
  }
  add_line(block.items, at(0.32, 0.32), at(0.68, 0.68), pen);
  add_line(block.items, at(0.68, 0.32), at(0.32, 0.68), pen);
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

std::vector<Block> figure_rows(const PageFlow& flow, const std::vector<FittingStep>& steps, const FittingFacts& facts,
                               const SpliceWires& wires) {
  const Words& words = flow.context().words();
  std::vector<Block> blocks;
  for (const FittingStep& step : steps) {
    FittingSketch sketch(figure_width(flow) - figure_pad * 2, step_figure_height, step_scale, facts.wire);
    sketch.set_splice(wires);
    step.draw(sketch, facts);
    const std::string sentence =
        words("crimps.step_" + step.key, {{"strip", facts.strip_text}, {"tug", facts.tug_text}});
    blocks.push_back(figure_block(flow, sketch.take(), std::to_string(blocks.size() + 1), sentence));
  }
  return in_rows(flow, std::move(blocks));
}

/// The figure beside its mark, and under them what it shows, the fault's name in bold.
Block verdict_block(const PageFlow& flow, Verdict verdict, Block figure, const std::string& sentence) {
  const Millimetres width = figure_width(flow), height = verdict_figure_height;
  const bool is_right = is_mirrored(flow);
  Block block{width, height, {}};
  std::vector<Span> spans = marked_spans(sentence, look::text, look::text_bold);
  std::string said;
  for (const Span& span : spans) said += span.text;
  block.items.push_back(TagOpenItem{"Figure", said});
  place_block(block.items, std::move(figure), {is_right ? Millimetres(0) : mark_size + figure_pad, {}});
  block.items.push_back(TagCloseItem{});
  place_block(block.items, verdict_mark(verdict),
              {is_right ? width - mark_size : Millimetres(0), (height - mark_size) / 2});
  Block text = set_paragraph({std::move(spans), Align::left, "P"}, width, flow.setting());
  block.height += text.height;
  place_block(block.items, std::move(text), {{}, height});
  return block;
}

std::vector<Block> verdict_rows(const PageFlow& flow, const std::vector<FittingExample>& examples, double scale,
                                const Wire& wire, const SpliceWires& wires) {
  std::vector<Block> blocks;
  for (const FittingExample& example : examples) {
    FittingSketch sketch(figure_width(flow) - mark_size - figure_pad, verdict_figure_height, scale, wire);
    sketch.set_splice(wires);
    example.draw(sketch);
    blocks.push_back(
        verdict_block(flow, example.verdict, sketch.take(), flow.context().words()("crimps." + example.key)));
  }
  return in_rows(flow, std::move(blocks));
}

}  // namespace

std::string both_units(Millimetres length, const Words& words) {
  return words("crimps.both_units", {{"mm", print_small_length(length, UnitSystem::metric, words)},
                                     {"inch", print_small_length(length, UnitSystem::imperial, words)}});
}

std::vector<Block> step_rows(const PageFlow& flow, FittingShape shape, const std::vector<FittingUse>& uses) {
  const SpliceWires splice = shape == FittingShape::splice ? find_splice(flow.context()) : SpliceWires{};
  return figure_rows(flow, fitting_procedure(shape).steps, facts_of(uses, flow.context().words()), splice);
}

std::vector<Block> example_rows(const PageFlow& flow, FittingShape shape, const Wire& wire) {
  const SpliceWires splice = shape == FittingShape::splice ? find_splice(flow.context()) : SpliceWires{};
  // Black insulation, mid strands, light metal: whatever the wire's colours, the three stay apart in grey.
  Wire plain = wire;
  plain.colour = {"BK", {}};
  const FittingProcedure& procedure = fitting_procedure(shape);
  return verdict_rows(flow, procedure.examples, procedure.example_scale, plain, splice);
}

std::vector<Block> shared_rows(const PageFlow& flow, FittingShape shape, const std::vector<FittingUse>& uses) {
  const auto use = std::find_if(uses.begin(), uses.end(), [](const FittingUse& one) { return !one.shared.empty(); });
  const FittingProcedure& procedure = fitting_procedure(shape);
  if (use == uses.end() || procedure.shared.empty()) return {};
  const SpliceWires wires{{}, use->shared.front().wires};
  const FittingFacts facts = facts_of(uses, flow.context().words());
  std::vector<Block> rows = figure_rows(flow, procedure.shared, facts, wires);
  for (Block& row : verdict_rows(flow, procedure.shared_examples, verdict_scale, facts.wire, wires))
    rows.push_back(std::move(row));
  return rows;
}

}  // namespace loomfolio
