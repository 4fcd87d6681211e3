// SPDX-License-Identifier: MIT
// The terminal map: the face of each part and connector at true scale, and what goes to each of its terminals. Parts
// stand near the order of zones, packed so that pages are full, small ones side by side. Parts of one kind share one
// face. Of a machine that a kit is fitted to, only parts that the kit is joined to are shown.
#include <algorithm>
#include <utility>

#include "sheets/anchors.h"
#include "sheets/assembly_plan.h"
#include "sheets/columns.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/page_flow.h"
#include "sheets/packed_blocks.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/terminal_rows.h"

namespace loomfolio {
namespace {

/// Faces larger than this are drawn at a said smaller scale.
constexpr Millimetres most_map_face_width(104), most_map_face_height(96);
/// Faces and captions at most this wide leave room for the table beside them.
constexpr double beside_share = 0.44;
/// A part that is at most so high in one of two columns stands there.
constexpr Millimetres most_half_height(150);
constexpr Millimetres map_entry_gap(6.5);

/// Parts shown together: one part, or all small ones of a kind.
struct PartGroup {
  std::vector<PartId> parts;
};

std::vector<PartId> parts_by_zone(const Build& build) {
  std::vector<PartId> parts;
  for (std::size_t i = 0; i < build.parts.size(); ++i) parts.push_back(PartId{static_cast<std::int32_t>(i)});
  std::stable_sort(parts.begin(), parts.end(),
                   [&](PartId a, PartId b) { return build.part(a).zone < build.part(b).zone; });
  return parts;
}

std::vector<PartGroup> group_parts(const SheetContext& context) {
  const Build& build = context.build();
  std::vector<PartGroup> groups;
  for (const PartId id : parts_by_zone(build)) {
    if (!shows_joints(context, id) || (context.extent == Extent::own && is_told_beside(context, id))) continue;
    const Part& part = build.part(id);
    if (!is_worked_at(build, part)) continue;
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const PartGroup& group) {
      return build.part(group.parts.front()).kind == part.kind;
    });
    if (same == groups.end())
      groups.push_back({{id}});
    else
      same->parts.push_back(id);
  }
  return groups;
}

/// What a hook-up has of its own is marked, and the mark told.
std::string terminals_intro(const SheetContext& context) {
  const Words& words = context.words();
  return context.extent == Extent::own ? words("terminals.own_intro") : words("terminals.intro");
}

class MapMaker {
 public:
  explicit MapMaker(const SheetContext& context)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        wires_{wires_at_terminals(context.build())},
        flow_(context, {"terminals", context.words()("terminals.title"), terminals_intro(context),
                        scale_bar(context.words(), {context.measure(), context.words().is_right_to_left()})}) {}

  std::vector<Sheet> make(std::vector<PartGroup> groups) {
    if (context_.extent == Extent::common)
      for (const PartId part : parts_by_zone(build_))
        if (is_told_beside(context_, part) && is_worked_at_in_any(build_.part(part).id)) groups.push_back({{part}});
    std::vector<FreeBlock> blocks;
    std::vector<Entry> long_ones;
    for (const PartGroup& group : groups) {
      Entry entry = make_entry(group);
      if (!entry.long_table.rows.empty()) {
        long_ones.push_back(std::move(entry));
        continue;
      }
      Block half = is_beside(group) ? Block{} : make_half(group);
      if (half.height >= entry.block.height * 2) half = Block{};
      blocks.push_back({std::move(entry.block), std::move(half)});
    }
    add_packed(flow_, std::move(blocks), map_entry_gap);
    add_long(std::move(long_ones));
    return flow_.take();
  }

 private:
  /// What the map says of one group: whole, or, where that is higher than a page, a head and a table that goes on.
  struct Entry {
    Block block;
    Table long_table = {};  ///< without rows: all is in the block
  };

  /// Tables that go over pages stand at the end.
  void add_long(std::vector<Entry> entries) {
    for (Entry& entry : entries) {
      flow_.add_lead(std::move(entry.block), map_entry_gap);
      add_table(flow_, entry.long_table, look::paragraph_gap * 2);
    }
  }

  /// Faces beside the table or above it, whichever is less high.
  Entry make_entry(const PartGroup& group) const {
    const Millimetres room = flow_.width() * beside_share, most = flow_.full_room() - map_entry_gap;
    Table table = make_table(group);
    Block head = make_head(group, flow_.width()), faces = make_faces(group, room);
    Block under = make_faces(group, flow_.width()), rows = table_block(table, flow_.width(), flow_.setting());
    const Millimetres under_gap = under.height.number() > 0 ? look::paragraph_gap * 2 : Millimetres(0);
    const Millimetres stacked = head.height + under.height + under_gap + rows.height;
    if (faces.width <= room && faces.height.number() > 0) {
      Block narrow = table_block(table, flow_.width() - faces.width - look::gutter * 1.5, flow_.setting());
      const Millimetres height = head.height + std::max(faces.height, narrow.height);
      if (height <= std::min(most, stacked)) return {beside(std::move(head), std::move(faces), std::move(narrow))};
    }
    const Millimetres y = head.height;
    head.height += under.height + under_gap;
    place_block(head.items, std::move(under), {{}, y});
    if (stacked > most) return {std::move(head), std::move(table)};
    const Millimetres below = head.height;
    head.height += rows.height;
    place_block(head.items, std::move(rows), {{}, below});
    return {std::move(head)};
  }

  /// The part as it stands in one of two columns: name, face, a narrow table; nothing where it is too large for that.
  Block make_half(const PartGroup& group) const {
    const Millimetres width = column_width(flow_, 2);
    Block faces = make_faces(group, width);
    if (faces.width > width || faces.height.number() <= 0) return {};
    Table table = narrowed(make_table(group));
    Block rows = table_block(table, width, flow_.setting());
    Block block = make_head(group, width);
    for (Block* part : {&faces, &rows}) {
      const Millimetres y = block.height, height = part->height;
      place_block(block.items, std::move(*part), {{}, y});
      block.height = y + height + (part == &faces ? look::paragraph_gap : Millimetres(0));
    }
    return block.height > most_half_height ? Block{} : block;
  }

  /// The size stands under the colour.
  static Table narrowed(Table table) {
    constexpr std::size_t colour = 2, size = 3;
    table.columns.erase(table.columns.begin() + size);
    for (Row& row : table.rows) {
      if (row.is_group) continue;
      for (Paragraph& line : row.cells[size].lines) {
        if (line.spans.front().text.empty()) continue;
        line.spans.front().style = look::table_small;
        row.cells[colour].lines.push_back(std::move(line));
      }
      row.cells.erase(row.cells.begin() + size);
    }
    return table;
  }

  /// Name, kind and zone over a rule.
  Block make_head(const PartGroup& group, Millimetres width) const {
    const Part& first = build_.part(group.parts.front());
    const Kind& kind = build_.kind_of(first);
    const bool is_one = group.parts.size() == 1;
    const std::string name = is_one ? first.label : kind.name;
    const std::string beside = is_one
                                   ? (kind.name == first.label ? "" : kind.name)
                                   : words_("terminals.parts_alike", {{"count", std::to_string(group.parts.size())}});
    std::vector<Span> spans{{name, look::heading, look::ink, {}}, {"   " + beside, look::table, look::grey, {}}};
    if (is_one)
      spans.push_back({(beside.empty() ? "" : ", ") + zone_name(build_.zone(first.zone)), look::table, look::grey, {}});
    Block block = set_paragraph({spans, Align::left, "H3"}, width, flow_.setting());
    for (const PartId part : group.parts)
      block.items.insert(block.items.begin(), AnchorItem{part_anchor(build_.part(part)), {}});
    block.height += Millimetres(0.8);
    block.items.push_back(TagOpenItem{"Artifact", {}});
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
    block.items.push_back(TagCloseItem{});
    block.height += Millimetres(2.5);
    return block;
  }

  /// All faces that hold terminals: one under the other, or side by side where that fits and is less high.
  Block make_faces(const PartGroup& group, Millimetres room) const {
    const Part& part = build_.part(group.parts.front());
    const Kind& kind = build_.kind_of(part);
    const LabelCodes codes =
        group.parts.size() == 1 && !is_beside(group) ? LabelCodes::with_colours : LabelCodes::marks_only;
    std::vector<Block> faces;
    for (std::size_t f = 0; f < kind.faces.size(); ++f) {
      const auto labels = face_labels(context_, wires_, part, static_cast<int>(f), codes);
      if (!labels.empty()) faces.push_back(make_face(kind.faces[f], labels));
    }
    Millimetres widest_face, total;
    for (const Block& face : faces) widest_face = std::max(widest_face, face.width), total += face.width + look::gutter;
    const Millimetres line_room = widest_face <= room ? room : flow_.width();
    return total - look::gutter <= line_room ? line_up(std::move(faces)) : pile(std::move(faces));
  }

  Block make_face(const Face& face, const std::vector<FaceLabel>& labels) const {
    const int scale = face_scale(face, most_map_face_width, most_map_face_height);
    Block block = draw_face(face, labels, scale, context_.measure());
    block.width = std::max(block.width, Millimetres(46));
    Block caption = face_caption(face, scale, block.width, words_, flow_.setting());
    const Millimetres y = block.height + Millimetres(1.5), height = caption.height;
    place_block(block.items, std::move(caption), {{}, y});
    block.height = y + height;
    return block;
  }

  static Block pile(std::vector<Block> faces) {
    Block all;
    for (Block& face : faces) {
      const Millimetres y = all.height + (all.height.number() > 0 ? look::block_gap : Millimetres(0));
      all.height = y + face.height;
      all.width = std::max(all.width, face.width);
      place_block(all.items, std::move(face), {{}, y});
    }
    return all;
  }

  static Block line_up(std::vector<Block> faces) {
    Block all;
    for (Block& face : faces) {
      const Millimetres x = all.width + (all.width.number() > 0 ? look::gutter : Millimetres(0));
      all.width = x + face.width;
      all.height = std::max(all.height, face.height);
      place_block(all.items, std::move(face), {x, {}});
    }
    return all;
  }

  Table make_table(const PartGroup& group) const {
    if (is_beside(group)) return beside_table(build_.part(group.parts.front()).id);
    Table table{terminal_columns(words_), {}};
    for (const PartId id : group.parts) {
      const Part& part = build_.part(id);
      if (group.parts.size() > 1)
        table.rows.push_back(group_row(part.label + ", " + zone_name(build_.zone(part.zone))));
      const NameTerminals names = id == group.parts.front() ? NameTerminals::yes : NameTerminals::no;
      for (Row& row : terminal_rows(context_, wires_, part, names)) table.rows.push_back(std::move(row));
    }
    return table;
  }

  /// A part that all hook-ups have, joined otherwise in each.
  bool is_beside(const PartGroup& group) const {
    return context_.extent == Extent::common && is_told_beside(context_, group.parts.front());
  }

  bool is_worked_at_in_any(const std::string& part_id) const {
    return std::any_of(context_.hook_ups->builds.begin(), context_.hook_ups->builds.end(), [&](const SolvedBuild* one) {
      return std::any_of(one->build.parts.begin(), one->build.parts.end(),
                         [&](const Part& part) { return part.id == part_id && is_worked_at(one->build, part); });
    });
  }

  Table beside_table(const std::string& part_id) const {
    std::vector<HookUpTable> tables;
    for (SheetContext& own : own_contexts(context_)) {
      own.id_prefix.clear();
      const Build& build = own.build();
      const TerminalWires wires{wires_at_terminals(build)};
      for (const Part& part : build.parts)
        if (part.id == part_id)
          tables.push_back(
              {own.build_index, {terminal_columns(words_), terminal_rows(own, wires, part, NameTerminals::yes)}});
    }
    Table table = merge_tables(context_, std::move(tables), {1});
    // What goes to one terminal stands together, in the order of the terminals.
    std::vector<std::string> marks;
    const auto place_of = [&](const Row& row) {
      const std::string& mark = row.cells.front().lines.front().spans.front().text;
      const auto found = std::find(marks.begin(), marks.end(), mark);
      if (found == marks.end()) return marks.push_back(mark), marks.size() - 1;
      return static_cast<std::size_t>(found - marks.begin());
    };
    for (const Row& row : table.rows) place_of(row);
    std::stable_sort(table.rows.begin(), table.rows.end(),
                     [&](const Row& a, const Row& b) { return place_of(a) < place_of(b); });
    return table;
  }

  Block beside(Block head, Block faces, Block rows) const {
    Block block{flow_.width(), head.height + std::max(faces.height, rows.height), {}};
    const Millimetres y = head.height, table_x = flow_.width() - rows.width;
    place_block(block.items, std::move(head), {});
    place_block(block.items, std::move(faces), {{}, y});
    place_block(block.items, std::move(rows), {table_x, y});
    return block;
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  TerminalWires wires_;
  PageFlow flow_;
};

}  // namespace

std::vector<Sheet> make_terminal_map(const SheetContext& context) {
  std::vector<PartGroup> groups = group_parts(context);
  if (groups.empty()) return {};
  return MapMaker(context).make(std::move(groups));
}

}  // namespace loomfolio
