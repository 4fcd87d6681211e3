// SPDX-License-Identifier: MIT
// Labels to cut out and stick on: one for each end of each wire, with its number, its colour, and the terminal it goes
// to.
#include <algorithm>
#include <utility>

#include "base/text.h"
#include "sheets/hook_up_tables.h"
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

/// One flag. The number stands first, so that it is read when the flag is folded round the wire; `letters` say which
/// hook-ups have the wire.
Block label_block(const SheetContext& context, const Build& build, const Wire& wire, TerminalId end,
                  const std::string& letters, Millimetres width) {
  Block block{width, label_height, {}};
  const TextMeasure& measure = context.measure();
  add_text(block.items, {label_pad, Millimetres(4.1)}, wire.id, look::label_number);
  Millimetres right = width - label_pad;
  const std::string size = print_wire_size(wire);
  add_text(block.items, {right, Millimetres(4)}, size, look::small, look::ink, Align::right);
  const Millimetres code_right = right - measure.measure(size, look::small).width - label_pad;
  add_text(block.items, {code_right, Millimetres(4)}, wire.colour.text(), look::wire_code, look::ink, Align::right);
  if (!letters.empty()) {
    add_text(block.items, {right, Millimetres(7.9)}, letters, look::table_bold, look::ink, Align::right);
    right -= measure.measure(letters, look::table_bold).width + label_pad;
  }
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

/// A wire that the kit brings, and the hook-ups that have it; none: all.
struct Labelled {
  const Build* build = nullptr;
  WireId wire;
  std::vector<std::size_t> hook_ups = {};
};

std::vector<Labelled> wires_shown(const SheetContext& context) {
  std::vector<Labelled> wires;
  for (std::size_t w = 0; w < context.build().wires.size(); ++w)
    if (const WireId id{static_cast<std::int32_t>(w)};
        context.build().wire(id).provided == Provider::kit && shows_wire(context, id))
      wires.push_back({&context.build(), id});
  return wires;
}

/// Wires that not all hook-ups have, each once, by number.
std::vector<Labelled> wires_of_some(const SheetContext& context) {
  std::vector<Labelled> wires;
  std::vector<std::string> texts;
  for (SheetContext& own : own_contexts(context)) {
    own.extent = Extent::own;
    for (Labelled& one : wires_shown(own)) {
      const std::string text = describe_wire(*one.build, one.build->wire(one.wire));
      const auto same = static_cast<std::size_t>(std::find(texts.begin(), texts.end(), text) - texts.begin());
      if (same == texts.size()) {
        texts.push_back(text);
        wires.push_back(std::move(one));
      }
      wires[same].hook_ups.push_back(own.build_index);
    }
  }
  std::stable_sort(wires.begin(), wires.end(), [](const Labelled& a, const Labelled& b) {
    return is_numbered_before(a.build->wire(a.wire).id, b.build->wire(b.wire).id);
  });
  return wires;
}

std::vector<Block> label_rows(const SheetContext& context, const std::vector<Labelled>& wires, Millimetres width) {
  std::vector<Block> rows, row;
  for (const Labelled& one : wires) {
    const Wire& wire = one.build->wire(one.wire);
    for (const TerminalId end : {wire.from, wire.to}) {
      row.push_back(label_block(context, *one.build, wire, end, letters_text(one.hook_ups), width / labels_across));
      if (row.size() == labels_across) rows.push_back(label_row(std::exchange(row, {}), width));
    }
  }
  if (!row.empty()) rows.push_back(label_row(std::move(row), width));
  return rows;
}

void add_labels(PageFlow& flow, const std::vector<Labelled>& wires, const std::string& heading,
                const std::string& note = {}) {
  std::vector<Block> rows = label_rows(flow.context(), wires, flow.width());
  if (rows.empty()) return;
  if (!heading.empty()) flow.add_heading(heading, label_height * 2);
  if (!note.empty()) flow.add_text(note, look::text, look::paragraph_gap);
  for (std::size_t i = 0; i < rows.size(); ++i)
    flow.add(std::move(rows[i]), i == 0 && !heading.empty() ? look::paragraph_gap : Millimetres(0));
}

}  // namespace

std::vector<Sheet> make_label_strips(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"labels", words("labels.title"), words("labels.intro")});
  if (context.hook_ups == nullptr) {
    add_labels(flow, wires_shown(context), {});
    return flow.take();
  }
  SheetContext common = context;
  common.extent = Extent::common;
  add_labels(flow, wires_shown(common), words("hook_up.common"));
  add_labels(flow, wires_of_some(context), words("hook_up.wires"), words("labels.letters"));
  return flow.take();
}

}  // namespace loomfolio
