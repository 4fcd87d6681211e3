// SPDX-License-Identifier: MIT
// Labels to cut out and stick on: one for each end of each wire, with its number, its colour, and the terminal it goes
// to.
#include <utility>

#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {
namespace {

constexpr int labels_across = 4;
constexpr Millimetres label_height(9.5), label_pad(1.6);

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
  const std::string mark = terminal_mark(build, end);
  const std::string place = owner_name(build, end, context.words()) + (mark.empty() ? "" : " " + mark);
  const FittedText where = fit_text(place, look::table, width - label_pad * 2, measure);
  add_text(block.items, {label_pad, Millimetres(7.9)}, where.text, where.style);
  return block;
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

}  // namespace

std::vector<Sheet> make_label_strips(const SheetContext& context) {
  const Build& build = context.build();
  if (build.wires.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"labels", words("labels.title"), words("labels.intro")});
  const Millimetres width = flow.width() / labels_across;
  std::vector<Block> row;
  for (const Wire& wire : build.wires)
    for (const TerminalId end : {wire.from, wire.to}) {
      row.push_back(label_block(context, wire, end, width));
      if (row.size() < labels_across) continue;
      flow.add(label_row(std::exchange(row, {}), flow.width()), {});
    }
  if (!row.empty()) flow.add(label_row(std::move(row), flow.width()), {});
  return flow.take();
}

}  // namespace loomfolio
