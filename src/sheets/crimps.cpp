// SPDX-License-Identifier: MIT
// Crimps and connectors: for each kind of fitting that the build uses, a large picture of a good one, the procedure,
// and which sizes go into it. Last, how hard a spare must hold.
#include <algorithm>
#include <set>
#include <utility>

#include "base/text.h"
#include "sheets/fitting_uses.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/pull_force.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

constexpr double picture_scale = 3.2;
constexpr Millimetres picture_wire(30), picture_room(108), callout_drop(7);

/// A place on the fitting's picture (mm from its left, unscaled) and what to see there.
struct Callout {
  double x;
  std::string_view key;
};

struct Procedure {
  FittingShape shape;
  std::string_view key;  ///< of the words: title, sentences _1, _2 ...
  std::vector<Callout> callouts;
};

// Places as fitting_picture draws them.
const std::vector<Procedure> procedures{
    {FittingShape::blade,
     "crimps.blade",
     {{7.8, "crimps.see_strands"},
      {9.5, "crimps.see_conductor"},
      {11.8, "crimps.see_window"},
      {13.8, "crimps.see_insulation"}}},
    {FittingShape::contact,
     "crimps.contact",
     {{5.5, "crimps.see_lance"},
      {7.6, "crimps.see_strands"},
      {9.3, "crimps.see_conductor"},
      {11.6, "crimps.see_window"},
      {13.6, "crimps.see_insulation"}}},
    {FittingShape::sealed,
     "crimps.sealed",
     {{5.5, "crimps.see_lance"},
      {9.3, "crimps.see_conductor"},
      {11.6, "crimps.see_window"},
      {13.6, "crimps.see_seal_neck"},
      {17.4, "crimps.see_seal"}}},
    {FittingShape::ring, "crimps.ring", {{4.4, "crimps.see_hole"}, {11.8, "crimps.see_dent"}}},
    {FittingShape::bullet,
     "crimps.bullet",
     {{5.2, "crimps.see_groove"}, {8.1, "crimps.see_conductor"}, {12.4, "crimps.see_insulation"}}},
    {FittingShape::splice, "crimps.splice", {{4, "crimps.see_dent"}, {12.4, "crimps.see_sleeve"}}},
    {FittingShape::lead, "crimps.lead", {{7.5, "crimps.see_home"}, {12.6, "crimps.see_sleeve"}}},
    {FittingShape::cap, "crimps.cap", {{4, "crimps.see_cap"}}},
    {FittingShape::bare, "crimps.bare", {{3, "crimps.see_bare"}}},
};

class CrimpPages {
 public:
  explicit CrimpPages(const SheetContext& context)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        flow_(context, {"crimps", words_("crimps.title"), words_("crimps.intro")}) {}

  std::vector<Sheet> make() {
    const auto uses = find_fitting_uses(build_, words_);
    flow_.add(
        make_panel(panel_from_words(words_, Signal::notice, "crimps.panel"), flow_.width(), words_, flow_.setting()),
        {});
    for (const Procedure& procedure : procedures) {
      const auto found = uses.find(procedure.shape);
      if (found != uses.end()) add_procedure(procedure, found->second);
    }
    add_pull_table();
    return flow_.take();
  }

 private:
  void add_procedure(const Procedure& procedure, const std::vector<FittingUse>& uses) {
    const std::string key(procedure.key);
    Block picture = good_one(procedure, uses);
    Block steps = procedure_steps(key, flow_.width() - picture.width - look::gutter * 1.5);
    Block both{flow_.width(), std::max(picture.height, steps.height), {}};
    const Millimetres x = picture.width + look::gutter * 1.5;
    place_block(both.items, std::move(picture), {});
    place_block(both.items, std::move(steps), {x, {}});
    flow_.add_heading(words_(key + "_title"), both.height + Millimetres(20));
    flow_.add(std::move(both), look::paragraph_gap);
    add_table(flow_, fit_table(uses), look::gutter);
  }

  /// The fitting drawn large on one of its wires, with what to look for.
  Block good_one(const Procedure& procedure, const std::vector<FittingUse>& uses) const {
    const Wire& wire = build_.wire(uses.front().wires.begin()->second.front());
    Block fitting = fitting_picture(procedure.shape, wire, picture_wire);
    scale_block(fitting, picture_scale);
    std::vector<Block> texts;
    Millimetres below;
    const Millimetres room = picture_room / static_cast<double>(procedure.callouts.size()) - Millimetres(2);
    for (const Callout& callout : procedure.callouts) {
      texts.push_back(set_text(words_(callout.key), look::table, std::min(room, Millimetres(34)), flow_.setting()));
      below = std::max(below, texts.back().height);
    }
    Block block{picture_room, fitting.height + callout_drop + below, {}};
    const Millimetres axis = fitting.height / 2, text_y = fitting.height + callout_drop;
    block.items.push_back(TagOpenItem{"Figure", words_("crimps.picture", {{"fitting", uses.front().name}})});
    place_block(block.items, std::move(fitting), {});
    block.items.push_back(TagCloseItem{});
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const Millimetres text_x = (room + Millimetres(2)) * static_cast<double>(i);
      const Millimetres place(procedure.callouts[i].x * picture_scale);
      const Point start{place, axis}, end{text_x + Millimetres(4), text_y - Millimetres(0.8)};
      add_polyline(block.items, {start, {place, axis + Millimetres(12)}, {end.x, text_y - Millimetres(3)}, end},
                   {look::ink, look::thin_line});
      add_circle(block.items, start, look::leader_dot, {false, {}}, {true, look::ink});
      place_block(block.items, std::move(texts[i]), {text_x, text_y});
    }
    return block;
  }

  /// The sentences of the words, numbered.
  Block procedure_steps(const std::string& key, Millimetres width) const {
    Block block{width, {}, {}};
    const Millimetres indent(5.5);
    block.items.push_back(TagOpenItem{"L", {}});
    for (int i = 1; words_.has(key + "_" + std::to_string(i)); ++i) {
      Block text = set_text(words_(key + "_" + std::to_string(i)), look::text, width - indent, flow_.setting());
      add_text(block.items, {{}, block.height + look::line_step(look::text) * look::baseline_share}, std::to_string(i),
               look::text_bold);
      const Millimetres height = text.height;
      place_block(block.items, std::move(text), {indent, block.height});
      block.height += height + Millimetres(0.6);
    }
    block.items.push_back(TagCloseItem{});
    return block;
  }

  template <class T, class Print>
  std::string range_text(const std::optional<Range<T>>& range, const Print& print) const {
    if (!range) return words_("crimps.by_maker");
    return words_("crimps.range", {{"least", print(range->least)}, {"most", print(range->most)}});
  }

  Table fit_table(const std::vector<FittingUse>& uses) const {
    Table table;
    table.columns = {{words_("crimps.fitting"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("crimps.takes"), CellAlign::near, Wrapping::wraps, 0.7},
                     {words_("crimps.insulation"), CellAlign::near, Wrapping::wraps, 0.7},
                     {words_("crimps.strip"), CellAlign::near, Wrapping::wraps, 0.6},
                     {words_("crimps.used_on"), CellAlign::near, Wrapping::wraps, 1.2}};
    const UnitSystem units = build_.document.units;
    for (const FittingUse& use : uses) {
      Cell sizes;
      for (const auto& [size, wires] : use.wires)
        sizes.lines.push_back({{{size_line(use, size, wires.size()), look::table, look::ink, {}}}, Align::left, {}});
      table.rows.push_back(
          {{text_cell(use.name.empty() ? words_("parts.splice") : use.name, look::table_bold),
            text_cell(range_text(use.takes, [](SquareMillimetres a) { return print_area(a); })),
            text_cell(range_text(use.insulation, [&](Millimetres d) { return print_small_length(d, units, words_); })),
            text_cell(use.strip ? print_small_length(*use.strip, units, words_) : words_("crimps.by_maker")),
            std::move(sizes)}});
    }
    return table;
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
    for (const Wire& wire : build_.wires) sizes.insert({wire.area.number(), print_wire_size(wire)});
    const bool is_metric = build_.document.units == UnitSystem::metric;
    Table table;
    table.columns = {{words_("crimps.wire"), CellAlign::near, Wrapping::keeps, 0.3},
                     {words_("crimps.gauge"), CellAlign::near, Wrapping::keeps, 0.3},
                     {words_(is_metric ? "crimps.newtons" : "crimps.pounds"), CellAlign::far, Wrapping::keeps, 0},
                     {words_("crimps.as_weight"), CellAlign::far, Wrapping::keeps, 0},
                     {"", CellAlign::near, Wrapping::wraps, 1}};
    constexpr double standard_gravity = 9.80665;
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
  PageFlow flow_;
};

}  // namespace

std::vector<Sheet> make_crimps(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  return CrimpPages(context).make();
}

}  // namespace loomfolio
