// SPDX-License-Identifier: MIT
#include "sheets/cut_list.h"

#include <algorithm>
#include <utility>

#include "sheets/columns.h"
#include "sheets/print_text.h"
#include "sheets/right_to_left.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_groups.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Millimetres cut_row_height(5.2), head_height(7), box_size(3), number_x(5), length_right(32), ends_x(35);
/// Wires in a column before a reel's head is repeated.
constexpr std::size_t most_in_block = 9;

enum class Head : std::uint8_t { first, repeated };

Block group_head(const SheetContext& context, const WireGroup& group, Head head, Millimetres width) {
  const Build& build = context.build();
  const Wire& first = build.wire(group.wires.front());
  const TypeSetting setting{context.measure()};
  Block block{width, head_height, {}};
  Block swatch = wire_swatch(first.colour, first.area, Millimetres(12));
  const Millimetres x = swatch.width + Millimetres(2.5), y = Millimetres(3.4) - swatch.height / 2;
  place_block(block.items, std::move(swatch), {{}, y});
  Paragraph text{{{first.colour.text(), look::table_mono_bold, look::ink, {}},
                  {"  " + print_wire_size(first) + ", " + print_insulation(first.insulation, context.words()),
                   look::table,
                   look::ink,
                   {}}},
                 Align::left,
                 "H3"};
  place_block(block.items, set_paragraph(text, width - x, setting), {x, Millimetres(1.6)});
  if (head == Head::repeated) {
    add_text(block.items, {width, Millimetres(4.5)}, context.words()("page.continued"), look::table, look::grey, Align::right);
  } else if (group.has_all_lengths) {
    const std::string total = print_reel_length(group.total, build.document.units) + "\u00a0" +
                              reel_unit(build.document.units, context.words());
    add_text(block.items, {width, Millimetres(4.5)}, context.words()("cuts.total", {{"length", total}}), look::table,
             look::ink, Align::right);
  }
  add_line(block.items, {{}, head_height}, {width, head_height}, {look::ink, look::part_line});
  return mirrored_if(context.words().is_right_to_left(), std::move(block));
}

Block wire_line(const SheetContext& context, WireId id, Millimetres width) {
  const Build& build = context.build();
  const Wire& wire = build.wire(id);
  Block block{width, cut_row_height, {}};
  const Millimetres baseline(3.8);
  add_rect(block.items, {{}, (cut_row_height - box_size) / 2, box_size, box_size}, {look::ink, look::line});
  add_text(block.items, {number_x, baseline}, wire.id, look::table_mono_bold);
  const std::string unit = "\u00a0" + length_unit(build.document.units, context.words());
  add_text(block.items, {length_right, baseline},
           wire.length ? print_length(*wire.length, build.document.units) + unit : context.words()("cuts.measure"),
           look::table, look::ink, Align::right);
  const FittedText purpose = fit_text(wire.purpose, look::table_small, width - ends_x, context.measure());
  add_text(block.items, {ends_x, baseline}, purpose.text, purpose.style, look::grey);
  add_line(block.items, {{}, cut_row_height}, {width, cut_row_height}, {look::hairline_grey, look::thin_line});
  return mirrored_if(context.words().is_right_to_left(), std::move(block));
}

/// A reel's wires under their head; a long reel is split, its head repeated.
std::vector<Block> group_blocks(const SheetContext& context, const WireGroup& group, Millimetres width) {
  std::vector<Block> blocks;
  for (std::size_t first = 0; first < group.wires.size();) {
    Block block = group_head(context, group, first == 0 ? Head::first : Head::repeated, width);
    std::size_t end = std::min(group.wires.size(), first + most_in_block);
    if (end + 1 == group.wires.size()) --end;  // no wire alone under a repeated head
    for (std::size_t i = first; i < end; ++i) {
      place_block(block.items, wire_line(context, group.wires[i], width), {{}, block.height});
      block.height += cut_row_height;
    }
    blocks.push_back(std::move(block));
    first = end;
  }
  return blocks;
}

}  // namespace

void add_cut_list(PageFlow& flow, Millimetres gap) {
  const SheetContext& context = flow.context();
  const Millimetres width = column_width(flow, 2);
  std::vector<Block> blocks;
  for (const WireGroup& group : group_wires(context))
    for (Block& block : group_blocks(context, group, width)) blocks.push_back(std::move(block));
  if (!blocks.empty()) add_columns(flow, std::move(blocks), {2, look::group_space}, gap);
}

std::vector<Sheet> make_cut_list(const SheetContext& context) {
  // Where there are several hook-ups, it stands in their parts lists.
  if (context.hook_ups != nullptr || group_wires(context).empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"cuts", words("cuts.title"), words("cuts.intro")});
  add_cut_list(flow, {});
  return flow.take();
}

}  // namespace loomfolio
