// SPDX-License-Identifier: MIT
// Labels to cut out and stick on: one for each end of each wire, with its number, its colour, and the terminal it goes
// to.
#include <utility>

#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/print_text.h"
#include "sheets/right_to_left.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {
namespace {

constexpr int labels_across = 4;
constexpr Millimetres label_height(9.5), label_pad(1.6);

/// A name that is too long, up to its first comma, else without its last words: 'Regulator and rectifier' of one with a
/// single phase.
std::string short_name(std::string name, Millimetres room, const TextMeasure& measure) {
  const auto is_long = [&] { return measure.measure(name, look::table_small).width > room; };
  if (is_long()) name = name.substr(0, name.find(','));
  while (is_long() && name.find(' ') != std::string::npos) name.resize(name.rfind(' '));
  return name;
}

/// One flag. The number stands first, so that it is read when the flag is folded round the wire.
Block label_block(const SheetContext& context, const Wire& wire, TerminalId end, Millimetres width) {
  const Build& build = context.build();
  Block block{width, label_height, {}};
  const TextMeasure& measure = context.measure();
  add_text(block.items, {label_pad, Millimetres(4.1)}, wire.id, look::label_number);
  const Millimetres right = width - label_pad;
  const std::string size = print_wire_size(wire);
  add_text(block.items, {right, Millimetres(4)}, size, look::small, look::ink, Align::right);
  const Millimetres code_right = right - measure.measure(size, look::small).width - label_pad;
  add_text(block.items, {code_right, Millimetres(4)}, wire.colour.text(), look::wire_code, look::ink, Align::right);
  // The terminal's mark first: a long name of its part may be cut short.
  const std::string mark = terminal_mark(build, end);
  Millimetres x = label_pad;
  if (!mark.empty()) {
    add_text(block.items, {x, Millimetres(7.9)}, mark, look::table_bold);
    x += measure.measure(mark, look::table_bold).width + label_pad;
  }
  const FittedText where = fit_text(short_name(owner_name(build, end, context.words()), right - x, measure), look::table,
                                    right - x, measure);
  add_text(block.items, {x, Millimetres(7.9)}, where.text, where.style);
  return mirrored_if(context.words().is_right_to_left(), std::move(block));
}

/// A row of labels with cut lines round each.
Block label_row(std::vector<Block> labels, Millimetres width) {
  Block row{width, label_height, {}};
  const Pen cut{look::grey, look::thin_line, {Millimetres(1.2), Millimetres(1)}};
  const Millimetres step = width / labels_across;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const Millimetres x = step * static_cast<double>(i);
    row.items.push_back(TagOpenItem{"P", {}});
    place_block(row.items, std::move(labels[i]), {x, {}});
    row.items.push_back(TagCloseItem{});
    add_rect(row.items, {x, {}, step, label_height}, cut);
  }
  return row;
}

/// Labels of the wires that the context shows and that the kit brings.
std::vector<Block> label_rows(const SheetContext& context, Millimetres width) {
  const Build& build = context.build();
  std::vector<Block> rows, row;
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const Wire& wire = build.wires[w];
    if (wire.provided == Provider::machine || !shows_wire(context, WireId{static_cast<std::int32_t>(w)})) continue;
    for (const TerminalId end : {wire.from, wire.to}) {
      row.push_back(label_block(context, wire, end, width / labels_across));
      if (row.size() == labels_across) rows.push_back(label_row(std::exchange(row, {}), width));
    }
  }
  if (!row.empty()) rows.push_back(label_row(std::move(row), width));
  return rows;
}

void add_labels(PageFlow& flow, const SheetContext& context, const std::string& heading) {
  std::vector<Block> rows = label_rows(context, flow.width());
  if (rows.empty()) return;
  if (!heading.empty()) flow.add_heading(heading, label_height * 2);
  for (std::size_t i = 0; i < rows.size(); ++i)
    flow.add(std::move(rows[i]), i == 0 && !heading.empty() ? look::paragraph_gap : Millimetres(0));
}

}  // namespace

std::vector<Sheet> make_label_strips(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"labels", words("labels.title"), words("labels.intro")});
  if (context.hook_ups == nullptr) {
    add_labels(flow, context, {});
    return flow.take();
  }
  SheetContext common = context;
  common.extent = Extent::common;
  add_labels(flow, common, words("hook_up.common"));
  for (std::size_t b = 0; b < context.hook_ups->builds.size(); ++b) {
    SheetContext own{context.input, *context.hook_ups->builds[b], {}, {}};
    own.hook_ups = context.hook_ups;
    own.build_index = b;
    own.extent = Extent::own;
    add_labels(flow, own, hook_up_title(own));
  }
  return flow.take();
}

}  // namespace loomfolio
