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
#include "sheets/put_below.h"
#include "sheets/right_to_left.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {
namespace {

constexpr int labels_across = 4;
constexpr Millimetres label_height(9.5), label_pad(1.6), first_line(4.1), second_line(7.9);
constexpr Millimetres back_height(8.2);  // two lines
constexpr Millimetres fold_note_height(3.6);

/// Half of a flag: what is seen from one side once it is folded.
constexpr Millimetres half_room(Millimetres width) { return width / 2 - label_pad * 2; }

/// A lead from the coil to a plug: who touches it gets a shock.
bool is_high_tension(const Build& build, const Wire& wire) {
  const auto is_plugged_on = [&](TerminalId end) {
    const KindTerminal* terminal = kind_terminal_of(build, end);
    return terminal != nullptr && terminal->form == TerminalForm::push_on;
  };
  return is_plugged_on(wire.from) || is_plugged_on(wire.to);
}

/// The side read first: number and colour, size and `letters`, which say which hook-ups have the wire. `danger`: in the size's place.
void add_front(Items& items, const Wire& wire, const std::string& danger, const std::string& letters, Millimetres width,
               const TextMeasure& measure) {
  const Millimetres right = width / 2 - label_pad;
  add_text(items, {label_pad, first_line}, wire.id, look::label_number);
  add_text(items, {right, first_line}, wire.colour.text(), look::wire_code, look::ink, Align::right);
  const TextStyle style = danger.empty() ? look::small : look::table_bold;
  const FittedText said =
      fit_text(danger.empty() ? print_wire_size(wire) : danger, style, letters.empty() ? right - label_pad : (right - label_pad) * 0.75, measure);
  add_text(items, {label_pad, second_line}, said.text, said.style);
  if (letters.empty()) return;
  const FittedText fitted =
      fit_text(letters, look::table_bold, right - label_pad * 2 - measure.measure(said.text, said.style).width, measure);
  add_text(items, {right, second_line}, fitted.text, fitted.style, look::ink, Align::right);
}

/// Without one word: what stands behind a comma tells left from right, so of 'Turn signal, front left' the first goes; of others the last.
/// Empty when there is but one.
std::string without_a_word(const std::string& name) {
  const std::size_t first = name.find(' '), last = name.rfind(' '), comma = name.find(',');
  if (last == std::string::npos) return {};
  return comma != std::string::npos && first < comma ? name.substr(first + 1) : name.substr(0, last);
}

/// The other side: the terminal's mark, then the name of its part. A name of more than two lines is set smaller, and only then loses
/// words; a word too long for a line is set smaller too.
Block back_block(const SheetContext& context, const Build& build, TerminalId end, Millimetres width,
                 const TypeSetting& setting) {
  const std::string mark = terminal_mark(build, end);
  const auto set = [&](const FittedText& name) {
    std::vector<Span> spans;
    TextStyle bold = look::table_bold;
    bold.points -= look::table_small.points - name.style.points;
    if (!mark.empty()) spans.push_back({mark + " ", bold, look::ink, {}});
    spans.push_back({name.text, name.style, look::ink, {}});
    return set_paragraph({std::move(spans), Align::left, {}}, half_room(width), setting);
  };
  std::string name = owner_name(build, end, context.words());
  TextStyle style = look::table_small;
  while (true) {
    Block block = set({name, style});
    if (block.height <= back_height) return block;
    if (style.points - 0.5 >= look::least_points) {
      style.points -= 0.5;
      continue;
    }
    std::string shorter = without_a_word(name);
    if (shorter.empty()) return set(fit_text(name, look::table_small, half_room(width), context.measure()));
    name = std::move(shorter);
    while (name.ends_with(',')) name.pop_back();
  }
}

/// One flag, laid with its middle round the wire and folded there: two sides.
Block label_block(const PageFlow& flow, const Build& build, const Wire& wire, TerminalId end,
                  const std::string& letters, Millimetres width) {
  const SheetContext& context = flow.context();
  Block front{width, label_height, {}};
  const std::string danger = is_high_tension(build, wire) ? context.words()("labels.high_tension") : std::string();
  add_front(front.items, wire, danger, letters, width, context.measure());
  const bool is_right_to_left = context.words().is_right_to_left();
  Block block = mirrored_if(is_right_to_left, std::move(front));
  Block back = back_block(context, build, end, width, flow.setting());
  const Millimetres x = is_right_to_left ? label_pad : width / 2 + label_pad;
  place_block(block.items, std::move(back), {x, (label_height - back.height) / 2});
  return block;
}

/// A row of labels with cut lines round each and a fold line through the middle of each.
Block label_row(std::vector<Block> labels, Millimetres width) {
  Block row{width, label_height, {}};
  const Pen cut{look::grey, look::thin_line, {Millimetres(1.2), Millimetres(1)}};
  const Pen fold{look::grey, look::thin_line, {Millimetres(0.4), Millimetres(0.8)}};
  const Millimetres step = width / labels_across;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const Millimetres x = step * static_cast<double>(i);
    row.items.push_back(TagOpenItem{"P", {}});
    place_block(row.items, std::move(labels[i]), {x, {}});
    row.items.push_back(TagCloseItem{});
    add_rect(row.items, {x, {}, step, label_height}, cut);
    add_line(row.items, {x + step / 2, {}}, {x + step / 2, label_height}, fold);
  }
  return row;
}

/// Above the fold line of the first label: 'fold here'.
Block fold_note(const PageFlow& flow) {
  Block note{flow.width(), fold_note_height, {}};
  const Millimetres x = flow.width() / labels_across / 2;
  note.items.push_back(TagOpenItem{"P", {}});
  add_text(note.items, {x, Millimetres(2.2)}, flow.context().words()("labels.fold"), look::small, look::ink, Align::centre);
  note.items.push_back(TagCloseItem{});
  add_line(note.items, {x, Millimetres(2.7)}, {x, fold_note_height}, {look::ink, look::thin_line});
  return note;
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

std::vector<Block> label_rows(const PageFlow& flow, const std::vector<Labelled>& wires) {
  const Millimetres width = flow.width();
  std::vector<Block> rows, row;
  for (const Labelled& one : wires) {
    const Wire& wire = one.build->wire(one.wire);
    for (const TerminalId end : {wire.from, wire.to}) {
      row.push_back(label_block(flow, *one.build, wire, end, letters_text(one.hook_ups), width / labels_across));
      if (row.size() == labels_across) rows.push_back(label_row(std::exchange(row, {}), width));
    }
  }
  if (!row.empty()) rows.push_back(label_row(std::move(row), width));
  return rows;
}

enum class FoldNote : std::uint8_t { shown, left_out };

void add_labels(PageFlow& flow, const std::vector<Labelled>& wires, const std::string& heading,
                FoldNote fold, const std::string& note = {}) {
  std::vector<Block> rows = label_rows(flow, wires);
  if (rows.empty()) return;
  if (!heading.empty()) flow.add_heading(heading);
  if (!note.empty()) flow.add_lead(note, look::paragraph_gap);
  if (fold == FoldNote::shown) {
    Block first = fold_note(flow);
    put_below(first, std::move(rows.front()));
    rows.front() = std::move(first);
  }
  for (std::size_t i = 0; i < rows.size(); ++i)
    flow.add(std::move(rows[i]), i == 0 && !heading.empty() ? look::paragraph_gap : Millimetres(0));
}

}  // namespace

std::vector<Sheet> make_label_strips(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"labels", words("labels.title"), words("labels.intro")});
  if (context.hook_ups == nullptr) {
    add_labels(flow, wires_shown(context), {}, FoldNote::shown);
    return flow.take();
  }
  SheetContext common = context;
  common.extent = Extent::common;
  add_labels(flow, wires_shown(common), words("hook_up.common"), FoldNote::shown);
  add_labels(flow, wires_of_some(context), words("hook_up.wires"), FoldNote::left_out, words("labels.letters"));
  return flow.take();
}

}  // namespace loomfolio
