// SPDX-License-Identifier: MIT
// The fuse chart: which fuse goes where, what it looks like, what it protects, and what stops when it blows.
#include <algorithm>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/columns.h"
#include "sheets/face_drawing.h"
#include "sheets/fuse_list.h"
#include "sheets/fuse_look.h"
#include "sheets/fuse_selection_table.h"
#include "sheets/fuse_study_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/inside_sentences.h"
#include "sheets/names.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/stopped_text.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"

namespace loomfolio {
namespace {

/// A chart of so many fuses begins where its head and first rows stand together.
constexpr std::size_t whole_chart = 3;
constexpr Millimetres chart_room(130);

/// The choice that the kit leaves to the fitter; nothing where it leaves none.
const FuseChoice* choice_of(const SheetContext& context, InsideRef fuse) {
  if (!context.solved.study) return nullptr;
  for (const FuseChoice& choice : context.solved.study->choices)
    if (choice.fuse == fuse && choice.best.number() > 0) return &choice;
  return nullptr;
}

Cell rating_cell(const SheetContext& context, InsideRef ref) {
  const Words& words = context.words();
  const Inside& fuse = inside_of(context.build(), ref);
  const FuseChoice* choice = choice_of(context, ref);
  const std::optional<Amperes> shown = choice == nullptr ? fuse.rating : choice->best;
  if (!shown) return text_cell("");
  Cell cell = text_cell(print_rating(*shown), look::table_bold);
  const std::string colour = fuse_colour_name(fuse.family, *shown, words);
  if (!colour.empty()) cell.lines.push_back({{{colour, look::table, look::ink, {}}}, Align::left, {}});
  cell.picture = fuse_body(fuse.family, *shown);
  return cell;
}

/// Colours the fuses on a face that shows one filled bar a fuse, in the order of the part's fuses. Other faces stay as
/// they are.
void colour_fuses(Block& drawing, const Part& part, const Face& face, int scale, const std::vector<bool>& is_used) {
  std::vector<const Inside*> fuses;
  for (const Inside& inside : part.insides)
    if (inside.type == InsideType::fuse) fuses.push_back(&inside);
  std::vector<const FaceShape*> bars;
  for (const FaceShape& shape : face.shapes)
    if (shape.type == ShapeType::rect && shape.is_filled) bars.push_back(&shape);
  if (bars.size() != fuses.size()) return;
  const Millimetres shift = look::part_line / 2;  // as draw_face leaves room for its outline
  for (std::size_t i = 0; i < bars.size(); ++i) {
    const auto colour = is_used[i] && fuses[i]->rating ? fuse_paint(fuses[i]->family, *fuses[i]->rating) : std::nullopt;
    const FaceShape& bar = *bars[i];
    const Rect rect{bar.points[0].x / scale + shift, bar.points[0].y / scale + shift, bar.width / scale,
                    bar.height / scale};
    add_boxed_rect(drawing.items, rect, colour ? colour->body : look::paper, {look::ink, look::part_line},
                   bar.radius / scale);
    if (!colour) continue;
    const Millimetres middle = rect.y + rect.height / 2;
    add_text(drawing.items, {rect.x + rect.width / 2, baseline_at_middle(middle, look::fuse_on_face)},
             shortest(fuses[i]->rating->number(), 1), look::fuse_on_face, colour->letters, Align::centre);
  }
}

/// A face under its part's name.
Block fuse_face(const PageFlow& flow, const Part& part, const Face& face, const std::vector<bool>& is_used) {
  const Words& words = flow.context().words();
  const int scale = face_scale(face, column_width(flow, 2), Millimetres(80));
  Block block = set_paragraph({{{part.label, look::text_bold, look::ink, {}}}, Align::left, "H3"},
                              column_width(flow, 2), flow.setting());
  Block drawing = draw_face(face, {}, scale, flow.setting().measure);
  if (scale == 1) colour_fuses(drawing, part, face, scale, is_used);
  Block caption =
      face_caption(face, scale, std::min(block.width, std::max(drawing.width, Millimetres(60))), words, flow.setting());
  const Millimetres drawing_y = block.height + Millimetres(1.5),
                    caption_y = drawing_y + drawing.height + Millimetres(1.5);
  block.height = caption_y + caption.height;
  place_block(block.items, std::move(drawing), {{}, drawing_y});
  place_block(block.items, std::move(caption), {{}, caption_y});
  return block;
}

/// The rating that the chart shows.
Amperes shown_rating(const SheetContext& context, const FuseStudy& study) {
  const FuseChoice* choice = choice_of(context, study.fuse);
  return choice == nullptr ? study.rating : choice->best;
}

constexpr Amperes no_more{0.1};  // of all on at once above the most that a situation takes

/// Whether all on at once is more than any situation takes.
bool tells_at_once(const FuseStudy& study) { return study.situation.is_set() && study.at_once > study.load + no_more; }

/// Whether charging an empty battery asks more of it than all that is on.
bool tells_into_empty(const FuseStudy& study) { return study.into_empty > std::max(study.load, study.at_once) + no_more; }

Cell load_cell(const SheetContext& context, const FuseStudy& study) {
  if (!study.situation.is_set()) return text_cell("");
  const Words& words = context.words();
  const Amperes rating = shown_rating(context, study);
  Cell cell = text_cell(words("fuses.load_share", {{"amperes", print_amperes(study.load)},
                                                   {"share", fixed(study.load / rating * 100, 0)}}));
  std::string where = situation_name(context.build().situations[study.situation.at()]);
  if (study.is_uncharged) where += ", " + words("fuses.uncharged");
  cell.lines.push_back({{{where, look::table_small, look::grey, {}}}, Align::left, {}});
  if (tells_at_once(study))
    cell.lines.push_back({{{words("fuses.at_once", {{"amperes", print_amperes(study.at_once)},
                                                    {"share", fixed(study.at_once / rating * 100, 0)}}),
                            look::table, look::ink, {}}},
                          Align::left,
                          {}});
  if (tells_into_empty(study))
    cell.lines.push_back({{{words("fuses.into_empty", {{"amperes", print_amperes(study.into_empty)},
                                                       {"share", fixed(study.into_empty / rating * 100, 0)}}),
                            look::table, look::ink, {}}},
                          Align::left,
                          {}});
  if (context.solved.own_supply.fuses.contains(study.fuse)) cell.lines.push_back({{{words("fuses.without_own"), look::table, look::ink, {}}}, Align::left, {}});
  return cell;
}

/// The wire that carries least, and whether the fuse saves it.
Cell thinnest_cell(const SheetContext& context, const FuseStudy& study) {
  if (!study.thinnest.is_set()) return text_cell("");
  const Wire& wire = context.build().wire(study.thinnest);
  Cell cell = two_line_cell(print_wire_size(wire), context.words()("called.wire", {{"id", wire.id}}));
  const WireProtection& found = context.solved.study->wires[study.thinnest.at()];
  const WireVerdict verdict = found.verdict;
  const std::string_view key = guard_key(verdict, found.carries_135);
  if (!key.empty()) cell.lines.push_back({{{context.words()(key), look::table, look::ink, {}}}, Align::left, {}});
  return cell;
}

Cell position_cell(const SheetContext& context, InsideRef ref) {
  const Inside& fuse = inside_of(context.build(), ref);
  Cell cell =
      two_line_cell(fuse_name(context.build(), ref), fuse_family_name(fuse.family, context.words()), look::table_bold);
  if (choice_of(context, ref) != nullptr)
    cell.lines.push_back({{{context.words()("fuses.choose_short"), look::table, look::ink, {}}}, Align::left, {}});
  return cell;
}

Row fuse_row(const SheetContext& context, InsideRef ref) {
  const Build& build = context.build();
  const FuseStudy* found = study_of(context.solved, ref);
  const FuseStudy study = found == nullptr ? FuseStudy{} : *found;
  Row row;
  row.anchor = fuse_anchor(build, ref);
  row.cells = {rating_cell(context, ref),
               position_cell(context, ref),
               text_cell(found == nullptr ? std::string() : protected_text(context.solved, study, context.words())),
               load_cell(context, study),
               thinnest_cell(context, study),
               text_cell(stopped_text(context.solved, study, context.words()))};
  return row;
}

/// By the part's fuses, in order: whether it is one of those in use.
std::vector<bool> used_ways(const Build& build, PartId id, const std::vector<InsideRef>& fuses) {
  std::vector<bool> is_used;
  const Part& part = build.part(id);
  for (std::size_t i = 0; i < part.insides.size(); ++i)
    if (part.insides[i].type == InsideType::fuse)
      is_used.push_back(std::find(fuses.begin(), fuses.end(), InsideRef{id, static_cast<int>(i)}) != fuses.end());
  return is_used;
}

/// Faces that show no terminals, of parts that hold several of these fuses: the box as one sees it with the lid off.
std::vector<Block> fuse_faces(const PageFlow& flow, const std::vector<InsideRef>& fuses) {
  const Build& build = flow.context().build();
  std::vector<Block> blocks;
  PartId last;
  for (const InsideRef fuse : fuses) {
    if (fuse.part == last) continue;
    last = fuse.part;
    const Part& part = build.part(fuse.part);
    const Kind& kind = build.kind_of(part);
    for (std::size_t f = 0; f < kind.faces.size(); ++f) {
      const bool has_terminals =
          std::any_of(kind.terminals.begin(), kind.terminals.end(),
                      [&](const KindTerminal& terminal) { return terminal.face == static_cast<int>(f); });
      if (!has_terminals) blocks.push_back(fuse_face(flow, part, kind.faces[f], used_ways(build, fuse.part, fuses)));
    }
  }
  return blocks;
}

Table fuse_table(const SheetContext& context, const std::vector<InsideRef>& fuses) {
  const Words& words = context.words();
  Table table;
  table.columns = {{words("fuses.fuse"), CellAlign::near, Wrapping::keeps, 0},
                   {words("fuses.position"), CellAlign::near, Wrapping::wraps, 0.5},
                   {words("fuses.protects"), CellAlign::near, Wrapping::wraps, 1},
                   {words("fuses.load"), CellAlign::near, Wrapping::wraps, 0.8},
                   {words("fuses.smallest_wire"), CellAlign::near, Wrapping::wraps, 0.6},
                   {words("fuses.stops"), CellAlign::near, Wrapping::wraps, 1}};
  for (const InsideRef fuse : fuses) table.rows.push_back(fuse_row(context, fuse));
  return table;
}

/// Outputs of the machine's own units with no wire on these pages: what hangs there the figures cannot know.
void add_uncounted(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Build& build = context.build();
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    const PartId id{static_cast<std::int32_t>(p)};
    if (part.provided != Provider::machine || !shows_part(context, id)) continue;
    std::vector<std::string> marks;
    for (const Inside& inside : part.insides) {
      const int out = inside.type == InsideType::output && inside.nodes.size() > 1 ? inside.nodes[1].terminal : -1;
      if (out >= 0 && is_left_open(build, id, out)) marks.push_back(build.kind_of(part).terminals[static_cast<std::size_t>(out)].id);
    }
    if (!marks.empty())
      flow.add_text(context.words()("fuses.uncounted", {{"part", part.label}, {"terminals", join(marks, ", ")}}), look::text, look::paragraph_gap);
  }
}

}  // namespace

std::vector<Sheet> make_fuse_chart(const SheetContext& context) {
  std::vector<InsideRef> fuses;
  for (const InsideRef fuse : list_fuses(context.build()))
    if (shows_fuse(context, fuse.part)) fuses.push_back(fuse);
  if (fuses.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"fuses", words("fuses.title"), words("fuses.intro")});
  if (fuses.size() >= whole_chart) flow.keep(chart_room);
  if (context.extent != Extent::own)
    flow.add(make_panel(panel_from_words(words, Signal::warning, "fuses.panel"), flow.width(), words, flow.setting()),
             {});
  add_table(flow, fuse_table(context, fuses));
  if (context.extent == Extent::common && fuses.size() < list_fuses(context.build()).size())
    flow.add_text(words("fuses.others"), look::text, look::paragraph_gap);
  const auto tells_any = [&](bool (*tells)(const FuseStudy&)) {
    return std::any_of(fuses.begin(), fuses.end(), [&](InsideRef fuse) {
      const FuseStudy* study = study_of(context.solved, fuse);
      return study != nullptr && tells(*study);
    });
  };
  if (tells_any(tells_at_once)) flow.add_text(words("fuses.at_once_note"), look::text, look::paragraph_gap);
  if (std::any_of(fuses.begin(), fuses.end(), [&](InsideRef fuse) { return context.solved.own_supply.fuses.contains(fuse); }))
    flow.add_text(words("fuses.without_own_note"), look::text, look::paragraph_gap);
  if (tells_any(tells_into_empty)) flow.add_text(words("fuses.into_empty_note"), look::text, look::paragraph_gap);
  add_uncounted(flow);
  add_fuse_choices(flow);
  add_fuse_selections(flow);
  add_columns(flow, fuse_faces(flow, fuses), {2, look::block_gap}, look::heading_gap);
  add_unfused_leads(flow);
  add_fuse_order(flow);
  add_fuse_curves(flow);
  return flow.take();
}

}  // namespace loomfolio
