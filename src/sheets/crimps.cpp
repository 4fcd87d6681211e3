// SPDX-License-Identifier: MIT
// Crimps and connectors: for each kind of fitting that the build uses, which sizes go into it, how it is made, a figure
// a step, and good and bad ones side by side. Last, how hard a spare must hold.
#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <utility>

#include "base/text.h"
#include "sheets/fitting_steps.h"
#include "sheets/fitting_uses.h"
#include "sheets/hook_ups.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/pull_force.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

constexpr Millimetres step_height(21), example_height(14), mark_size(4), ruler_pad(3);
constexpr int steps_across = 4, examples_across = 4;
/// A tug at an installed contact stays below that share of what a crimp must bear; NASA-STD-8739.4, as retold.
constexpr double tug_share = 0.8;
/// Nor may it be harder than a lock in a plastic housing bears before its second lock is in: newtons, common practice, no source.
constexpr double most_tug = 20;
constexpr double standard_gravity = 9.80665;

struct Procedure {
  FittingShape shape;
  std::string_view title;  ///< of the words
};

constexpr std::array<Procedure, 9> procedures{{{FittingShape::sealed, "crimps.sealed_title"},
                                               {FittingShape::contact, "crimps.contact_title"},
                                               {FittingShape::blade, "crimps.blade_title"},
                                               {FittingShape::ring, "crimps.ring_title"},
                                               {FittingShape::bullet, "crimps.bullet_title"},
                                               {FittingShape::splice, "crimps.splice_title"},
                                               {FittingShape::lead, "crimps.lead_title"},
                                               {FittingShape::cap, "crimps.cap_title"},
                                               {FittingShape::bare, "crimps.bare_title"}}};

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

class CrimpPages {
 public:
  explicit CrimpPages(const SheetContext& context)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        flow_(context, {"crimps", words_("crimps.title"), words_("crimps.intro")}) {
    if (context.hook_ups == nullptr) builds_.push_back(&build_);
    if (context.hook_ups != nullptr)
      for (const SolvedBuild* solved : context.hook_ups->builds) builds_.push_back(&solved->build);
  }

  std::vector<Sheet> make() {
    const auto uses = find_fitting_uses(builds_, words_);
    flow_.add(
        make_panel(panel_from_words(words_, Signal::notice, "crimps.panel"), flow_.width(), words_, flow_.setting()),
        {});
    add_pull_table();
    for (const Procedure& procedure : procedures) {
      const auto found = uses.find(procedure.shape);
      if (found != uses.end()) add_procedure(procedure, found->second);
    }
    return flow_.take();
  }

 private:
  void add_procedure(const Procedure& procedure, const std::vector<FittingUse>& uses) {
    // Families follow each other; head, table and first pictures stay together.
    std::vector<Block> rows = in_rows(step_blocks(procedure.shape, uses), steps_across);
    std::vector<Block> examples = example_rows(procedure.shape, *uses.front().wires.begin()->second.front());
    Millimetres height = Millimetres(22) + look::line_step(look::table) * (2.5 * static_cast<double>(uses.size()));
    if (!rows.empty()) height += rows.front().height + look::gutter;
    flow_.add_heading(words_(procedure.title), std::min(height, flow_.full_room() * 0.8));
    flow_.items().push_back(AnchorItem{fitting_anchor(procedure.shape), {}});
    add_table(flow_, fit_table(procedure.shape, uses), look::paragraph_gap);
    add_rulers(uses);
    for (Block& row : rows) flow_.add(std::move(row), look::gutter);
    add_examples(std::move(examples));
  }

  /// Blocks side by side, each row as high as its highest.
  std::vector<Block> in_rows(std::vector<Block> blocks, int across) const {
    const Millimetres step = (flow_.width() + look::gutter) / across;
    std::vector<Block> rows;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      const auto column = static_cast<int>(i) % across;
      if (column == 0) rows.push_back({flow_.width(), {}, {}});
      rows.back().height = std::max(rows.back().height, blocks[i].height);
      place_block(rows.back().items, std::move(blocks[i]), {step * column, {}});
    }
    return rows;
  }

  Millimetres share(int across) const { return (flow_.width() - look::gutter * (across - 1)) / across; }

  static SquareMillimetres thinnest(const std::vector<FittingUse>& uses) {
    double least = uses.front().wires.begin()->first.first;
    for (const FittingUse& use : uses) least = std::min(least, use.wires.begin()->first.first);
    return SquareMillimetres(least);
  }

  FittingFacts facts_of(const std::vector<FittingUse>& uses) const {
    const FittingUse& first = uses.front();
    const Wire& wire = *first.wires.begin()->second.front();
    FittingFacts facts{wire, 5, words_("crimps.strip_by_maker"), {}, words_("crimps.click")};
    if (first.strip) {
      facts.strip = first.strip->number();
      facts.strip_text = both_units(*first.strip);
    }
    const bool is_one =
        std::all_of(uses.begin(), uses.end(), [&](const FittingUse& use) { return use.strip == first.strip; });
    if (!is_one) facts.strip_text = words_("crimps.strip_by_table");
    if (const auto force = pull_force(thinnest(uses))) facts.tug_text = tug_text(std::min(force->newtons * tug_share, most_tug));
    return facts;
  }

  /// '6 mm (0.24 in)': one number, told twice.
  std::string both_units(Millimetres length) const {
    return words_("crimps.both_units", {{"mm", print_small_length(length, UnitSystem::metric, words_)},
                                        {"inch", print_small_length(length, UnitSystem::imperial, words_)}});
  }

  std::string tug_text(double newtons) const {
    return words_("crimps.tug_force", {{"newtons", std::to_string(static_cast<int>(newtons))},
                                       {"kg", shortest(std::floor(newtons / standard_gravity * 2) / 2, 1)}});
  }

  /// A figure with its number, the sentence under it.
  std::vector<Block> step_blocks(FittingShape shape, const std::vector<FittingUse>& uses) const {
    const FittingFacts facts = facts_of(uses);
    const Millimetres width = share(steps_across);
    std::vector<Block> blocks;
    for (const FittingStep& step : fitting_steps(shape)) {
      FittingSketch sketch(width, step_height, step_scale, facts.wire);
      step.draw(sketch, facts);
      const std::string sentence =
          words_("crimps.step_" + step.key, {{"strip", facts.strip_text}, {"tug", facts.tug_text}});
      blocks.push_back(figure_block(sketch.take(), width, std::to_string(blocks.size() + 1), sentence));
    }
    return blocks;
  }

  Block figure_block(Block figure, Millimetres width, const std::string& number, const std::string& sentence) const {
    Block block{width, step_height, {}};
    add_rect(block.items, {{}, {}, width, step_height}, {look::hairline_grey, look::line}, Millimetres(1));
    block.items.push_back(TagOpenItem{"Figure", sentence});
    place_block(block.items, std::move(figure), {Millimetres(0.6), {}});
    block.items.push_back(TagCloseItem{});
    const Millimetres indent(7);
    Block text = set_text(sentence, look::text, width - indent, flow_.setting());
    add_text(block.items, {{}, step_height + Millimetres(1) + look::line_step(look::text) * look::baseline_share},
             number, look::heading);
    block.height = step_height + Millimetres(1) + text.height;
    place_block(block.items, std::move(text), {indent, step_height + Millimetres(1)});
    return block;
  }

  /// Strip lengths at true size: the wire is laid on the page.
  void add_rulers(const std::vector<FittingUse>& uses) {
    std::vector<Millimetres> lengths;
    for (const FittingUse& use : uses)
      if (use.strip && std::find(lengths.begin(), lengths.end(), *use.strip) == lengths.end())
        lengths.push_back(*use.strip);
    if (lengths.empty()) return;
    Block block{flow_.width(), Millimetres(7), {}};
    const FittedText head = fit_text(words_("crimps.ruler"), look::text, flow_.width() * 0.5, context_.measure());
    const Millimetres baseline = baseline_at_middle(Millimetres(3.5), look::text);
    add_text(block.items, {{}, baseline}, head.text, head.style);
    Millimetres x = context_.measure().measure(head.text, head.style).width + ruler_pad;
    for (const Millimetres length : lengths) {
      add_filled_rect(block.items, {x, Millimetres(1.6), length, Millimetres(3.8)}, look::ink);
      x += length + Millimetres(1.5);
      const std::string text = both_units(length);
      add_text(block.items, {x, baseline}, text, look::text_bold);
      x += context_.measure().measure(text, look::text_bold).width + ruler_pad * 2;
    }
    flow_.add(std::move(block), look::paragraph_gap);
  }

  /// Good and bad side by side, a sentence each.
  std::vector<Block> example_rows(FittingShape shape, const Wire& wire) const {
    std::vector<Block> blocks;
    const Millimetres width = share(examples_across);
    for (const FittingExample& example : fitting_examples(shape)) {
      FittingSketch sketch(width, example_height, verdict_scale, wire);
      example.draw(sketch);
      Block block{width, example_height, {}};
      const std::string sentence = words_("crimps." + example.key);
      block.items.push_back(TagOpenItem{"Figure", sentence});
      place_block(block.items, sketch.take(), {mark_size + Millimetres(1), {}});
      block.items.push_back(TagCloseItem{});
      place_block(block.items, verdict_mark(example.verdict), {{}, (example_height - mark_size) / 2});
      Block text = set_text(sentence, look::text, width, flow_.setting());
      block.height += text.height;
      place_block(block.items, std::move(text), {{}, example_height});
      blocks.push_back(std::move(block));
    }
    return in_rows(std::move(blocks), examples_across);
  }

  void add_examples(std::vector<Block> rows) {
    if (rows.empty()) return;
    Block head = set_paragraph({{{words_("crimps.examples"), look::text_bold, look::ink, {}}}, Align::left, "H3"},
                               flow_.width(), flow_.setting());
    flow_.keep(head.height + rows.front().height + look::block_gap);
    flow_.add(std::move(head), look::block_gap);
    for (Block& row : rows) flow_.add(std::move(row), look::paragraph_gap);
  }

  template <class T, class Print>
  std::string range_text(const std::optional<Range<T>>& range, const Print& print) const {
    if (!range) return words_("crimps.by_maker");
    if (range->least == range->most) return print(range->least);
    return words_("crimps.range", {{"least", print(range->least)}, {"most", print(range->most)}});
  }

  Table fit_table(FittingShape shape, const std::vector<FittingUse>& uses) const {
    const bool is_ring = shape == FittingShape::ring;  // grips the metal alone
    Table table;
    table.columns = {{words_("crimps.fitting"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("crimps.takes"), CellAlign::near, Wrapping::wraps, 0.7},
                     {words_("crimps.insulation"), CellAlign::near, Wrapping::wraps, 0.7},
                     {words_("crimps.strip"), CellAlign::near, Wrapping::wraps, 0.7},
                     {words_("crimps.used_on"), CellAlign::near, Wrapping::wraps, 1.2}};
    const UnitSystem units = build_.document.units;
    for (const FittingUse& use : uses) {
      Cell sizes;
      for (const auto& [size, wires] : use.wires)
        sizes.lines.push_back({{{size_line(use, size, wires.size()), look::table, look::ink, {}}}, Align::left, {}});
      table.rows.push_back(
          {{two_line_cell(use.name.empty() ? words_("parts.splice") : use.name, places_text(uses, use),
                          look::table_bold),
            text_cell(range_text(use.takes, [](SquareMillimetres a) { return print_area(a); })),
            text_cell(is_ring ? "\u2013" : range_text(use.insulation, [&](Millimetres d) {
              return print_small_length(d, units, words_);
            })),
            text_cell(use.strip ? both_units(*use.strip) : words_(is_ring ? "crimps.as_barrel" : "crimps.by_maker")),
            std::move(sizes)}});
    }
    return table;
  }

  /// Where it goes, when another fitting bears the same name; at most three places.
  std::string places_text(const std::vector<FittingUse>& uses, const FittingUse& use) const {
    constexpr std::size_t most = 3;
    const auto alike = [&](const FittingUse& other) { return other.name == use.name; };
    if (std::count_if(uses.begin(), uses.end(), alike) < 2) return {};
    std::vector<std::string> places(
        use.places.begin(), use.places.begin() + static_cast<std::ptrdiff_t>(std::min(most, use.places.size())));
    return words_("crimps.for_places", {{"places", join(places, ", ") + (use.places.size() > most ? " \u2026" : "")}});
  }

  std::string size_line(const FittingUse& use, const std::pair<double, std::string>& size, std::size_t count) const {
    const char* key = nullptr;
    switch (fits(use, SquareMillimetres(size.first))) {
      case Fit::unknown:
        key = "crimps.unknown";
        break;
      case Fit::fits:
        key = "crimps.fits";
        break;
      case Fit::too_small:
        key = "crimps.too_small";
        break;
      case Fit::too_large:
        key = "crimps.too_large";
        break;
    }
    return words_(key, {{"count", std::to_string(count)}, {"size", size.second}});
  }

  void add_pull_table() {
    std::set<std::pair<double, std::string>> sizes;
    for (const Build* build : builds_)
      for (const Wire& wire : build->wires)
        if (wire.provided == Provider::kit) sizes.insert({wire.area.number(), print_wire_size(wire)});
    const bool is_metric = build_.document.units == UnitSystem::metric;
    Table table;
    table.columns = {{words_("crimps.wire"), CellAlign::near, Wrapping::keeps, 0.3},
                     {words_("crimps.gauge"), CellAlign::near, Wrapping::keeps, 0.3},
                     {words_(is_metric ? "crimps.newtons" : "crimps.pounds"), CellAlign::far, Wrapping::keeps, 0},
                     {words_("crimps.as_weight"), CellAlign::far, Wrapping::keeps, 0},
                     {"", CellAlign::near, Wrapping::wraps, 1}};
    for (const auto& [area, text] : sizes)
      if (const auto force = pull_force(SquareMillimetres(area)))
        table.rows.push_back({{text_cell(text), text_cell(std::string(force->gauge)),
                               text_cell(fixed(is_metric ? force->newtons : force->pounds, 0)),
                               text_cell(fixed(force->newtons / standard_gravity, 0) + "\u00a0kg"), text_cell("")}});
    if (table.rows.empty()) return;
    flow_.add_heading(words_("crimps.pull_title"), Millimetres(40));
    flow_.add_text(words_("crimps.pull_text"), look::text, look::paragraph_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  std::vector<const Build*> builds_;  ///< all hook-ups
  PageFlow flow_;
};

}  // namespace

std::vector<Sheet> make_crimps(const SheetContext& context) {
  // The common pages show the fittings of every hook-up.
  if (context.build().wires.empty() || context.extent == Extent::own) return {};
  return CrimpPages(context).make();
}

}  // namespace loomfolio
