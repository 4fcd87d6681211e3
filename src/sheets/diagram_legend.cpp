// SPDX-License-Identifier: MIT
#include "sheets/diagram_legend.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "sheets/costs_overlay.h"
#include "sheets/diagram_cables.h"
#include "sheets/drawing_rooms.h"
#include "sheets/trunk_draw.h"
#include "sheets/diagram_tags.h"
#include "sheets/diagram_wire.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/symbols/symbols.h"
#include "sheets/text_flow.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Millimetres entry_gap{5}, sign_gap{1.2};

/// A sign with its meaning. The sign is drawn with its left end at (0, 0), its middle on y = 0.
struct Entry {
  Items sign;
  Millimetres sign_width;
  std::string text;
};

Point at(double x, double y) { return {Millimetres(x), Millimetres(y)}; }

bool has_symbol(const LaidDiagram& diagram, Symbol symbol) {
  return std::any_of(diagram.diagram.boxes.begin(), diagram.diagram.boxes.end(), [symbol](const DiagramBox& box) {
    return std::any_of(box.drawing.symbols.begin(), box.drawing.symbols.end(),
                       [symbol](auto& s) { return s.symbol == symbol; });
  });
}

template <class Test>
bool any_box(const LaidDiagram& diagram, Test test) {
  return std::any_of(diagram.diagram.boxes.begin(), diagram.diagram.boxes.end(), test);
}

/// A wire of the diagram as example: a striped one when there is one.
Entry label_entry(const SheetContext& context, const LaidDiagram& diagram) {
  const Build& build = context.build();
  const auto& wires = diagram.plan.wires;
  const auto striped =
      std::find_if(wires.begin(), wires.end(), [&](WireId id) { return !build.wire(id).colour.stripe.empty(); });
  const Wire& wire = build.wire(striped == wires.end() ? wires.front() : *striped);
  const WireLabel label = label_of(wire, context.measure());
  Entry entry;
  add_wire(entry.sign, std::vector<Point>{at(0, 0), at(9, 0)}, wire.colour, wire_width(wire.area));
  const Millimetres number = to_mm(label.number_width), gap = context.measure().measure(" ", look::wire_code).width;
  const Millimetres base = baseline_at_middle(Millimetres(0), look::wire_code);
  add_text(entry.sign, {Millimetres(10.5), base}, label.number, look::wire_number);
  add_wire_code(entry.sign, {Millimetres(10.5) + number + gap, base}, label.code, look::ink, TextRun::level, context.measure());
  entry.sign_width = Millimetres(10.5) + to_mm(label.width);
  const bool is_awg = wire.size_text.ends_with("AWG");
  std::string key = wire.colour.stripe.empty() ? "diagram.legend_label_plain" : "diagram.legend_label";
  if (is_awg) key += "_awg";
  const auto colour = [&](const std::string& letters) { return context.words()("colour." + letters); };
  entry.text = context.words()(key, {{"number", wire.id},
                                     {"base", colour(wire.colour.base)},
                                     {"stripe", wire.colour.stripe.empty() ? "" : colour(wire.colour.stripe)},
                                     {"size", is_awg ? print_size(wire) : shortest(wire.area.number(), 2)},
                                     {"unit", "mm²"}});
  return entry;
}

/// White on black, as the numbers of wires that not all hook-ups have.
/// With the number of a wire for which it is so.
Entry mark_entry(const TextMeasure& measure, const std::string& example) {
  Entry entry;
  const Millimetres width = measure.measure(example, look::wire_number).width + Millimetres(0.8);
  add_filled_rect(entry.sign, {Millimetres(0), Millimetres(-1.5), width, Millimetres(3)}, look::ink);
  add_text(entry.sign, {Millimetres(0.4), baseline_at_middle(Millimetres(0), look::wire_number)}, example,
           look::wire_number, look::paper);
  entry.sign_width = width;
  return entry;
}

Entry hop_entry() {
  Entry entry;
  add_line(entry.sign, at(4.5, -2), at(4.5, 2), {look::ink, Millimetres(0.7), {}, Cap::butt});
  const std::vector<PathPiece> path = path_of({{{0, 40}, {900, 40}}, {{{450, 40}, 130, 130}}}, {});
  PathItem item;
  item.pieces = path;
  item.stroke = {true, {look::ink, Millimetres(0.7), {}, Cap::butt}};
  entry.sign.push_back(std::move(item));
  entry.sign_width = Millimetres(9);
  return entry;
}

Entry several_entry() {
  Entry entry;
  add_boxed_rect(entry.sign, {Millimetres(0), Millimetres(-1), Millimetres(7), Millimetres(2)}, look::paper,
                 {look::ink, look::part_line}, Millimetres(1));
  entry.sign_width = Millimetres(7);
  return entry;
}

Entry flag_entry() {
  Entry entry;
  add_line(entry.sign, at(0, 0), at(2, 0), {look::accent, look::part_line, {}, Cap::butt});
  add_polygon(entry.sign, {at(3, 0), at(1.8, -0.75), at(1.8, 0.75)}, look::accent, {look::accent, Millimetres(0)});
  add_text(entry.sign, {Millimetres(3.5), baseline_at_middle(Millimetres(0), look::flag)}, "7 B2", look::flag,
           look::accent);
  entry.sign_width = Millimetres(10);
  return entry;
}

Entry splice_entry() {
  Entry entry;
  add_circle(entry.sign, at(1.1, 0), Millimetres(1.1), {false, {}}, {true, look::ink});
  add_line(entry.sign, at(4.4, 0), at(8.2, 0), {look::ink, Millimetres(1.6), {}, Cap::round});
  entry.sign_width = Millimetres(9);
  return entry;
}

Entry earth_entry() {
  Entry entry;
  draw_earth(entry.sign, at(3.4, -1.75), {look::ink, look::heavy_line, look::paper});
  entry.sign_width = Millimetres(6);
  return entry;
}

Entry symbol_entry(Symbol kind, Heading heading) {
  Entry entry;
  PlacedSymbol symbol;
  symbol.symbol = kind;
  symbol.heading = heading;
  symbol.at = {450, 0};
  draw_symbol(entry.sign, symbol, {}, {look::ink, look::part_line, look::paper});
  entry.sign_width = Millimetres(9);
  return entry;
}

Entry link_entry() {
  Entry entry;
  add_line(entry.sign, at(0, 0), at(8, 0), {look::ink, look::line, {Millimetres(0.9), Millimetres(0.6)}, Cap::butt});
  entry.sign_width = Millimetres(8);
  return entry;
}

Entry cable_entry() {
  Entry entry;
  for (const double y : {-0.7, 0.7}) add_line(entry.sign, at(0, y), at(9, y), {look::ink, Millimetres(0.5), {}, Cap::butt});
  add_ellipse(entry.sign, {Millimetres(3.7), Millimetres(-1.8), Millimetres(1.6), Millimetres(3.6)}, {look::ink, look::part_line});
  entry.sign_width = Millimetres(9);
  return entry;
}

Entry trunk_entry() {
  Entry entry;
  draw_trunk_sign(entry.sign, at(0, 0), Millimetres(11));
  entry.sign_width = Millimetres(11);
  return entry;
}

std::vector<Entry> entries_for(const SheetContext& context, const LaidDiagram& diagram, const DiagramFinds& finds) {
  std::vector<Entry> entries;
  if (!diagram.plan.wires.empty()) entries.push_back(label_entry(context, diagram));
  const auto add = [&](bool is_used, Entry entry, std::string_view key) {
    if (!is_used) return;
    entry.text = context.words()(key);
    entries.push_back(std::move(entry));
  };
  const auto own = std::find_if(diagram.plan.wires.begin(), diagram.plan.wires.end(), [&](WireId id) { return differs(context, id); });
  if (own != diagram.plan.wires.end()) add(true, mark_entry(context.measure(), context.build().wire(*own).id), "hook_up.legend");
  add(std::any_of(diagram.laid.courses.begin(), diagram.laid.courses.end(),
                  [](const Course& c) { return !c.hops.empty(); }),
      hop_entry(), "diagram.legend_hop");
  add(any_box(diagram,
              [](const DiagramBox& b) {
                return std::any_of(b.drawing.terminals.begin(), b.drawing.terminals.end(),
                                   [](auto& t) { return t.taps.size() > 1; });
              }),
      several_entry(), "diagram.legend_several");
  add(!finds.rings.empty(), cable_entry(), "diagram.legend_cable");
  add(!finds.trunks.empty(), trunk_entry(), "diagram.legend_trunk");
  add(any_box(diagram, [](const DiagramBox& b) { return !b.flags.empty(); }), flag_entry(), "diagram.legend_flag");
  add(any_box(diagram, [](const DiagramBox& b) { return b.content == BoxContent::splice; }), splice_entry(),
      "diagram.legend_splice");
  add(any_box(diagram, [](const DiagramBox& b) { return b.content == BoxContent::earth || !b.earths.empty(); }),
      earth_entry(), "diagram.legend_earth");
  add(has_symbol(diagram, Symbol::contact_pair), symbol_entry(Symbol::contact_pair, Heading::right),
      "diagram.legend_pair");
  add(has_symbol(diagram, Symbol::fuse), symbol_entry(Symbol::fuse, Heading::right), "diagram.legend_fuse");
  add(any_box(diagram,
              [](const DiagramBox& b) {
                return std::any_of(b.drawing.lines.begin(), b.drawing.lines.end(),
                                   [](auto& l) { return l.style == InnerStyle::link; });
              }),
      link_entry(), "diagram.legend_link");
  return entries;
}

/// 'BK black   BN brown ...': the letters in use.
std::string colours_used(const SheetContext& context, const LaidDiagram& diagram) {
  constexpr std::string_view order[] = {"BK", "BN", "RD", "OG", "YE", "GN", "BU",  "VT",
                                        "GY", "WH", "PK", "GD", "TQ", "SR", "GNYE"};
  std::set<std::string, std::less<>> used;
  for (WireId id : diagram.plan.wires) {
    used.insert(context.build().wire(id).colour.base);
    used.insert(context.build().wire(id).colour.stripe);
  }
  std::string text;
  for (std::string_view letters : order)
    if (used.count(letters) != 0)
      text +=
          (text.empty() ? "" : "    ") + std::string(letters) + " " + context.words()("colour." + std::string(letters));
  return text;
}

}  // namespace

std::string wire_run_text(const Build& build, WireId id, const Words& words) {
  const auto end = [&](TerminalId terminal) {
    const std::string mark = terminal_mark(build, terminal);
    return owner_name(build, terminal, words) + (mark.empty() ? "" : " " + mark);
  };
  return words("diagram.run", {{"from", end(build.wire(id).from)}, {"to", end(build.wire(id).to)}});
}

/// '17 BU/WH 0.75': wires whose tag had room for their number alone; '19 BK 1, relay 31 to E3': had none at all.
std::string wires_told_below(const SheetContext& context, const LaidDiagram& diagram) {
  std::vector<std::string> numbered, unnumbered;
  for (const SpareTag& tag : find_spare_tags(diagram.diagram, diagram.laid)) {
    const WireLabel& label = diagram.diagram.labels[tag.wire];
    if (!tag.is_number_only) continue;
    if (tag.is_placed)
      numbered.push_back(label.number + " " + label.code);
    else
      unnumbered.push_back(label.number + " " + label.code + ", " +
                           wire_run_text(context.build(), diagram.diagram.wires[tag.wire], context.words()));
  }
  std::string text;
  if (!numbered.empty()) text = context.words()("diagram.numbers_only", {{"wires", join(numbered, " \u00b7 ")}});
  if (!unnumbered.empty())
    text +=
        (text.empty() ? "" : "   ") + context.words()("diagram.no_number", {{"wires", join(unnumbered, " \u00b7 ")}});
  return text;
}

Block make_legend(const SheetContext& context, const LaidDiagram& diagram, const DiagramFinds& finds, Millimetres width) {
  Block block;
  block.width = width;
  Millimetres x(0), y = legend_line_height / 2;
  for (Entry& entry : entries_for(context, diagram, finds)) {
    const Millimetres text = context.measure().measure(entry.text, look::small).width,
                      whole = entry.sign_width + sign_gap + text;
    if (x > Millimetres(0) && x + whole > width) {
      x = Millimetres(0);
      y += legend_line_height;
    }
    place_block(block.items, Block{entry.sign_width, legend_line_height, std::move(entry.sign)}, {x, y});
    add_text(block.items, {x + entry.sign_width + sign_gap, baseline_at_middle(y, look::small)}, entry.text,
             look::small);
    x += whole + entry_gap;
  }
  std::vector<std::string> notes{wires_told_below(context, diagram)};
  if (finds.costs) notes.push_back(costs_text(context, diagram, *finds.costs));
  const auto width_of = [&](const std::string& text) { return context.measure().measure(text, look::small).width; };
  for (const std::string& note : notes) {
    if (note.empty()) continue;
    if (x + width_of(note) <= width && !context.words().is_right_to_left()) {  // beside the last signs: a line less
      add_text(block.items, {x, baseline_at_middle(y, look::small)}, note, look::small);
      x = width;
      continue;
    }
    const Block told = set_paragraph({{{note, look::small, look::ink, {}}}, Align::left, {}}, width,
                                     {context.measure(), context.words().is_right_to_left()});
    place_block(block.items, told, {Millimetres(0), y + legend_line_height / 2 + Millimetres(0.6)});
    y += told.height;
  }
  y += legend_line_height;
  const std::string note = context.words()("diagram.rest_state");
  add_text(block.items, {Millimetres(0), baseline_at_middle(y, look::small)}, note, look::small);
  const std::string colours = colours_used(context, diagram);
  const bool is_beside = width_of(note) + entry_gap * 2 + width_of(colours) <= width;
  if (!is_beside) y += legend_line_height;
  const FittedText fitted = fit_text(colours, look::small, width, context.measure());
  add_text(block.items, {is_beside ? width : Millimetres(0), baseline_at_middle(y, look::small)}, fitted.text,
           fitted.style, look::ink, is_beside ? Align::right : Align::left);
  block.height = y + legend_line_height / 2;
  return block;
}

}  // namespace loomfolio
