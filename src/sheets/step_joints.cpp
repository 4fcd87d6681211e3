// SPDX-License-Identifier: MIT
#include "sheets/step_joints.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "sheets/anchors.h"
#include "sheets/face_drawing.h"
#include "sheets/fitting_text.h"
#include "sheets/fitting_uses.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/wire_look.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

constexpr Millimetres faces_width(58), most_step_face_width(44), most_step_face_height(60), least_face_height(12), joint_row_height(7),
    narrow_face(25), wire_x(step_text_x), mark_x(57), fact_x(74.5), swatch_length(9), swatch_gap(1.6),
    manner_gap(2.5);  // above the second way of making ends at a part

/// Beside so many rows a face keeps its caption at its side.
constexpr std::size_t few_rows = 3;

std::string_view do_key(FittingShape shape) {
  switch (shape) {
    case FittingShape::blade:
      return "steps.do_blade";
    case FittingShape::ring:
      return "steps.do_ring";
    case FittingShape::sealed:
    case FittingShape::contact:
      return "steps.do_contact";
    case FittingShape::bullet:
      return "steps.do_bullet";
    case FittingShape::splice:
    case FittingShape::lead:
      return "steps.do_lead";
    case FittingShape::bare:
      return "steps.do_bare";
    case FittingShape::cap:
      return "steps.do_cap";
  }
  return {};
}

/// What is done alike, with one tool, is said once.
struct Manner {
  FittingShape shape = FittingShape::ring;
  std::vector<std::string_view> tools;  ///< on one bolt a cable and a thin wire may meet
  friend bool operator==(const Manner&, const Manner&) = default;
};

class JointWriter {
 public:
  JointWriter(const SheetContext& context, Millimetres width)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        setting_{context.measure(), context.words().is_right_to_left()},
        width_(width) {}

  Block make(const std::vector<Action>& actions, const std::function<std::string()>& next_number) {
    Block faces = make_faces(actions);
    const bool has_faces = faces.height.number() > 0;
    rows_width_ = has_faces ? width_ - faces_width - look::gutter : width_;
    Block rows{rows_width_, {}, {}};
    std::vector<Action> left = actions;
    while (!left.empty()) {
      const Manner manner = manner_of(left.front());
      if (rows.height.number() > 0) rows.height += manner_gap;
      stack(rows, head(manner));
      for (const Action& action : left)
        if (manner_of(action) == manner) stack(rows, row(action, next_number()));
      left.erase(
          std::remove_if(left.begin(), left.end(), [&](const Action& action) { return manner_of(action) == manner; }),
          left.end());
    }
    Block block{width_, std::max(rows.height, faces.height), {}};
    place_block(block.items, std::move(rows), {side(Millimetres(0), rows_width_), {}});
    if (has_faces) place_block(block.items, std::move(faces), {side(width_ - faces_width, faces_width), {}});
    return block;
  }

 private:
  Millimetres side(Millimetres from_near, Millimetres size) const {
    return setting_.is_right_to_left ? width_ - from_near - size : from_near;
  }

  static void stack(Block& below, Block block) {
    const Millimetres y = below.height, height = block.height;
    place_block(below.items, std::move(block), {{}, y});
    below.height = y + height;
  }

  Manner manner_of(const Action& action) const {
    const FittingShape shape = fitting_shape(build_, action.terminal);
    Manner manner{shape, {}};
    for (const WireId wire : action.wires)
      if (const std::string_view tool = tool_key(shape, build_.wire(wire));
          std::find(manner.tools.begin(), manner.tools.end(), tool) == manner.tools.end())
        manner.tools.push_back(tool);
    return manner;
  }

  Block head(const Manner& manner) const {
    const std::string sheet = sheet_mark("crimps", fitting_anchor(manner.shape));
    std::vector<std::string> tools;
    for (const std::string_view tool : manner.tools) tools.push_back(words_(tool));
    const std::string text =
        words_(do_key(manner.shape), {{"sheet", sheet}}) + " " + words_("steps.tool", {{"tool", join(tools, "; ")}});
    Block block = set_text(text, look::text, rows_width_, setting_);
    block.height += Millimetres(1);
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::hairline_grey, look::thin_line});
    return block;
  }

  Block row(const Action& action, const std::string& number) const {
    Block row{rows_width_, step_row_pad, {}};
    Millimetres y = step_row_pad;
    for (const WireId wire : action.wires) y = put_wire(row, build_.wire(wire), y);
    put(row, terminal_text(action.terminal), look::text_bold, mark_x, fact_x - mark_x - Millimetres(1), step_row_pad);
    Millimetres facts_end = step_row_pad;
    for (const std::string& fact : facts_of(action))
      facts_end = put(row, fact, look::table, fact_x, rows_width_ - fact_x, facts_end);
    row.height = std::max(y, facts_end);
    if (const std::string told = together(action); !told.empty())
      row.height = put(row, told, look::text, wire_x, rows_width_ - wire_x, row.height);
    row.height += step_row_pad;
    add_step_marks(row, number, setting_);
    return row;
  }

  /// Text at a place of the row; gives where it ends.
  Millimetres put(Block& row, const std::string& text, const TextStyle& style, Millimetres x, Millimetres width,
                  Millimetres y) const {
    // Smaller letters stand on the baseline of the running ones.
    const Millimetres down = (look::line_step(look::text) - look::line_step(style)) * look::baseline_share;
    Block block = set_text(text, style, width, setting_);
    const Millimetres height = std::max(block.height + down, look::line_step(look::text));
    place_block(row.items, std::move(block), {setting_.is_right_to_left ? row.width - x - width : x, y + down});
    return y + height;
  }

  /// A piece of the wire, its number and its colour.
  Millimetres put_wire(Block& row, const Wire& wire, Millimetres y) const {
    Block swatch = wire_swatch(wire.colour, wire.area, swatch_length);
    const Millimetres middle = y + look::line_step(look::text) / 2, half = swatch.height / 2;
    place_block(row.items, std::move(swatch),
                {setting_.is_right_to_left ? row.width - wire_x - swatch_length : wire_x, middle - half});
    const Millimetres x = wire_x + swatch_length + swatch_gap, width = mark_x - x;
    Block text = set_paragraph(
        {{{wire.id, look::text_bold, look::ink, {}}, {" " + wire.colour.text(), look::text, look::ink, {}}},
         Align::left,
         {}},
        width, setting_);
    const Millimetres height = text.height;
    place_block(row.items, std::move(text), {setting_.is_right_to_left ? row.width - x - width : x, y});
    return y + height;
  }

  /// The terminal's mark; 'E2' of an earth, which the head above names in full.
  std::string terminal_text(TerminalId id) const {
    const std::string mark = terminal_mark(build_, id);
    return mark.empty() ? build_.terminal(id).name : mark;
  }

  /// Size and length of each wire; 'Blade 6.3, strip 6 mm' once, of rings on one bolt with their number.
  std::vector<std::string> facts_of(const Action& action) const {
    std::vector<std::string> facts, fitting;
    for (const WireId id : action.wires) {
      const Wire& wire = build_.wire(id);
      const std::string length = wire.length ? ", " + print_length(*wire.length, build_.document.units) + "\u00a0" +
                                                   length_unit(build_.document.units, words_)
                                             : "";
      facts.push_back(print_wire_size(wire) + length);
    }
    for (const std::string& text :
         {fitting_text(build_, action.terminal, words_), strip_text(build_, action.terminal, words_)})
      if (!text.empty()) fitting.push_back(text);
    if (!fitting.empty() && action.wires.size() > 1 && !shares_fitting(build_, action.terminal))
      fitting.front() = std::to_string(action.wires.size()) + " \u00d7 " + fitting.front();
    if (!fitting.empty()) facts.push_back(join(fitting, ", "));
    return facts;
  }

  /// How several wires go onto one terminal: in one fitting, or as rings on one bolt.
  std::string together(const Action& action) const {
    if (!shares_fitting(build_, action.terminal)) return rings_text(action);
    std::string text;
    std::vector<WireId> all = action.wires;
    all.insert(all.end(), action.machines.begin(), action.machines.end());
    if (all.size() < 2) return text;
    const std::string area = print_area(total_area(build_, all));
    if (action.machines.empty()) return words_("steps.one_fitting", {{"wires", wire_ids(build_, all)}, {"area", area}});
    return words_("steps.one_fitting_machine",
                  {{"old", wire_ids(build_, action.machines)}, {"wires", wire_ids(build_, action.wires)}, {"area", area}});
  }

  std::string rings_text(const Action& action) const {
    const KindTerminal* terminal = kind_terminal_of(build_, action.terminal);
    std::string text;
    std::vector<WireId> all = action.wires;
    all.insert(all.end(), action.machines.begin(), action.machines.end());
    std::stable_sort(all.begin(), all.end(),
                     [&](WireId a, WireId b) { return build_.wire(a).area.number() > build_.wire(b).area.number(); });
    if (all.size() > 1) text = words_("steps.ring_order", {{"wires", wire_ids(build_, all)}}) + " ";
    if (!action.machines.empty())
      text += words_("steps.ring_machine", {{"wires", wire_ids(build_, action.machines)}}) + " ";
    const bool is_known = terminal != nullptr && terminal->torque.has_value();
    return text + (is_known ? words_("steps.torque", {{"torque", shortest(terminal->torque->number(), 1)}})
                            : words_("steps.torque_by_maker"));
  }

  /// The part's faces that hold these terminals, each terminal named with its wires, seen as the caption says.
  Block make_faces(const std::vector<Action>& actions) const {
    Block all{faces_width, {}, {}};
    const Terminal& first = build_.terminal(actions.front().terminal);
    if (first.owner != OwnerType::part) return all;
    const Part& part = build_.parts[static_cast<std::size_t>(first.owner_index)];
    const Kind& kind = build_.kind_of(part);
    std::vector<LabelledFace> faces;
    for (std::size_t f = 0; f < kind.faces.size(); ++f) {
      std::vector<FaceLabel> labels;
      for (const Action& action : actions) {
        const KindTerminal* terminal = kind_terminal_of(build_, action.terminal);
        if (terminal != nullptr && terminal->face == static_cast<int>(f))
          labels.push_back({terminal->at, terminal->id, {wire_ids(build_, action.wires)}});
      }
      if (labels.empty()) continue;
      faces.push_back({&kind.faces[f], std::move(labels)});
    }
    int scale = 1;  // of all: two halves of a connector are compared
    for (const LabelledFace& face : faces) scale = std::max(scale, scale_of(face, actions.size()));
    for (const LabelledFace& face : faces) {
      stack(all, face_with_caption(face, scale, actions.size()));
      all.height += Millimetres(2);
    }
    // The part's own map stands with a hook-up's sheets where its wires differ.
    const PartId id{build_.terminal(actions.front().terminal).owner_index};
    const bool is_beside = context_.extent == Extent::common && is_told_beside(context_, id);
    if (all.height.number() <= 0 || !(shows_joints(context_, id) || is_beside)) return all;
    const std::string where =
        words_("steps.on_map", {{"sheet", sheet_mark(context_.id_prefix + "terminals", part_anchor(part))}});
    stack(all, set_text(where, look::table, faces_width, setting_));
    return all;
  }

  struct LabelledFace {
    const Face* face;
    std::vector<FaceLabel> labels;
  };

  /// Beside few rows a large face stands smaller.
  int scale_of(const LabelledFace& labelled, std::size_t rows) const {
    const Millimetres height = std::min(most_step_face_height, least_face_height + joint_row_height * static_cast<double>(rows));
    int scale = face_scale(*labelled.face, most_step_face_width, height);
    while (scale < 10 && draw_face(*labelled.face, labelled.labels, scale, context_.measure()).width > faces_width)
      scale = scale == 1 ? 2 : scale == 2 ? 5 : 10;
    return scale;
  }

  Block face_with_caption(const LabelledFace& labelled, int scale, std::size_t rows) const {
    const Face& face = *labelled.face;
    Block drawn = draw_face(face, labelled.labels, scale, context_.measure());
    if (rows <= few_rows && drawn.width <= narrow_face) return caption_beside(face, scale, std::move(drawn));
    Block block{faces_width, {}, {}};
    const Millimetres x = (faces_width - drawn.width) / 2, y = drawn.height + Millimetres(1);
    place_block(block.items, std::move(drawn), {x, {}});
    Face plain = face;  // which way up it is stands on the terminal map
    plain.keying.clear();
    Block caption = face_caption(plain, scale, faces_width, words_, setting_);
    block.height = y + caption.height;
    place_block(block.items, std::move(caption), {{}, y});
    return block;
  }

  /// A narrow face with its caption at the far side: as low as the few rows that it stands beside.
  Block caption_beside(const Face& face, int scale, Block drawn) const {
    const Millimetres width = faces_width - narrow_face - look::gutter / 2;
    Block caption = face_caption(face, scale, width, words_, setting_);
    Block block{faces_width, std::max(drawn.height, caption.height), {}};
    const Millimetres inset = (narrow_face - drawn.width) / 2, down = (block.height - caption.height) / 2;
    const bool is_right_to_left = setting_.is_right_to_left;
    place_block(block.items, std::move(drawn), {is_right_to_left ? faces_width - narrow_face + inset : inset, {}});
    place_block(block.items, std::move(caption), {is_right_to_left ? Millimetres(0) : faces_width - width, down});
    return block;
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  TypeSetting setting_;
  Millimetres width_, rows_width_;
};

}  // namespace

void add_step_marks(Block& row, const std::string& number, const TypeSetting& setting) {
  const bool is_right_to_left = setting.is_right_to_left;
  const Millimetres baseline = step_row_pad + look::line_step(look::text) * look::baseline_share;
  const Millimetres box_x = is_right_to_left ? row.width - step_box_x - step_box_size : step_box_x;
  Items marks{TagOpenItem{"Lbl", {}}};
  add_text(marks, {is_right_to_left ? row.width : Millimetres(0), baseline}, number, look::heading, look::ink,
           is_right_to_left ? Align::right : Align::left);
  marks.push_back(TagCloseItem{});
  add_rect(marks, {box_x, baseline - step_box_size + Millimetres(0.5), step_box_size, step_box_size},
           {look::ink, look::part_line});
  marks.push_back(TagOpenItem{"LBody", {}});
  marks.insert(marks.end(), std::make_move_iterator(row.items.begin()), std::make_move_iterator(row.items.end()));
  marks.push_back(TagCloseItem{});
  row.items = std::move(marks);
  row.items.insert(row.items.begin(), TagOpenItem{"LI", {}});
  row.items.push_back(TagCloseItem{});
  add_line(row.items, {{}, row.height}, {row.width, row.height}, {look::hairline_grey, look::thin_line});
}

Block joint_block(const SheetContext& context, const std::vector<Action>& actions, Millimetres width,
                  const std::function<std::string()>& next_number) {
  return JointWriter(context, width).make(actions, next_number);
}

std::string_view tool_key(FittingShape shape, const Wire& wire) {
  if (wire.insulation == Insulation::battery_cable) return "steps.tool_cable";
  switch (shape) {
    case FittingShape::blade:
    case FittingShape::contact:
    case FittingShape::bullet:
      return "steps.tool_open";
    case FittingShape::sealed:
      return "steps.tool_sealed";
    case FittingShape::ring:
      return "steps.tool_ring";
    case FittingShape::splice:
    case FittingShape::lead:
      return "steps.tool_splice";
    case FittingShape::bare:
    case FittingShape::cap:
      return "steps.tool_none";
  }
  return {};
}

}  // namespace loomfolio
