// SPDX-License-Identifier: MIT
// The assembly steps: one action each, numbered through, with a box to tick and a picture of what is joined.
#include <algorithm>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/assembly_plan.h"
#include "sheets/face_drawing.h"
#include "sheets/fitting_picture.h"
#include "sheets/fuse_look.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

constexpr Millimetres number_width(13), box_size(4.2), text_x(21), picture_width(44), row_pad(1.3), least_row(9.5);

std::string stage_key(Stage stage) {
  switch (stage) {
    case Stage::bracket:
      return "steps.bracket";
    case Stage::splices:
      return "steps.splices";
    case Stage::earths:
      return "steps.earths";
    case Stage::signals:
      return "steps.signals";
    case Stage::supply:
      return "steps.supply";
    case Stage::fuses:
      return "steps.fuses";
    case Stage::battery:
      return "steps.battery";
  }
  return {};
}

std::string_view join_key(FittingShape shape) {
  switch (shape) {
    case FittingShape::blade:
      return "steps.join_blade";
    case FittingShape::ring:
      return "steps.join_ring";
    case FittingShape::sealed:
      return "steps.join_sealed";
    case FittingShape::contact:
      return "steps.join_contact";
    case FittingShape::bullet:
      return "steps.join_bullet";
    case FittingShape::splice:
      return "steps.join_splice";
    case FittingShape::lead:
      return "steps.join_lead";
    case FittingShape::bare:
      return "steps.join_bare";
    case FittingShape::cap:
      return "steps.join_cap";
  }
  return {};
}

/// A picture of what the action handles, and what it says.
struct Shown {
  std::vector<Span> sentence;
  std::string note;
  Block picture;
};

class StepWriter {
 public:
  explicit StepWriter(const SheetContext& context)
      : context_(context), build_(context.build()), words_(context.words()) {}

  Shown show(const Action& action) const {
    switch (action.type) {
      case ActionType::mount:
        return show_mount(action.part);
      case ActionType::join_end:
        return show_join(action.wire, action.terminal);
      case ActionType::make_splice:
        return show_splice(build_.splices[static_cast<std::size_t>(action.splice.index)]);
      case ActionType::lay_fuse:
        return show_fuse(action.fuse);
      case ActionType::author:
        return {{{action.text, look::text, look::ink, {}}}, {}, {}};
    }
    return {};
  }

 private:
  using Places = std::vector<std::pair<std::string, std::string>>;

  std::vector<Span> sentence(std::string_view key, const Places& places) const {
    return marked_spans(words_(key, places), look::text, look::text_bold);
  }

  Shown show_mount(PartId id) const {
    const Part& part = build_.part(id);
    const Kind& kind = build_.kind_of(part);
    Shown shown{sentence("steps.mount", {{"part", part.label}}), part.note.empty() ? kind.mounting : part.note, {}};
    if (kind.faces.empty()) return shown;
    const Face& face = kind.faces.front();
    const int scale = face_scale(face, Millimetres(38), Millimetres(24));
    shown.picture = draw_face(face, {}, scale, context_.measure());
    return shown;
  }

  Shown show_join(WireId id, TerminalId terminal) const {
    const Wire& wire = build_.wire(id);
    const FittingShape shape = fitting_shape(build_, terminal);
    const std::string mark = terminal_mark(build_, terminal);
    const std::string owner = owner_name(build_, terminal, words_);
    const Places places{{"wire", wire.id},
                        {"colour", wire.colour.text()},
                        {"part", owner},
                        {"terminal", mark},
                        {"place", mark.empty() ? owner : owner + "\u00a0" + mark}};
    return {sentence(join_key(shape), places), torque_note(terminal), fitting_picture(shape, wire, picture_width)};
  }

  /// Only what the terminal states; studs without a figure say whose figure holds.
  std::string torque_note(TerminalId id) const {
    const KindTerminal* terminal = kind_terminal_of(build_, id);
    if (terminal == nullptr || terminal->form != TerminalForm::stud) return {};
    if (!terminal->torque) return words_("steps.torque_by_maker");
    return words_("steps.torque", {{"torque", shortest(terminal->torque->number(), 1)}});
  }

  Shown show_splice(const Splice& splice) const {
    const WireSides sides = sides_at(build_, splice.terminal);
    Shown shown{sentence("steps.make_splice",
                         {{"id", splice.id}, {"left", list_wires(sides.left)}, {"right", list_wires(sides.right)}}),
                splice.note,
                {}};
    shown.picture = splice_picture(wires_of(sides.left), wires_of(sides.right), picture_width);
    return shown;
  }

  std::vector<const Wire*> wires_of(const std::vector<WireId>& ids) const {
    std::vector<const Wire*> wires;
    for (const WireId id : ids) wires.push_back(&build_.wire(id));
    return wires;
  }

  std::string list_wires(const std::vector<WireId>& wires) const {
    std::vector<std::string> ids;
    for (const WireId wire : wires) ids.push_back(build_.wire(wire).id);
    return join(ids, ", ");
  }

  Shown show_fuse(InsideRef ref) const {
    const Inside& fuse = inside_of(build_, ref);
    if (!fuse.rating) return {sentence("steps.lay_fuse_unknown", {{"place", fuse_name(build_, ref)}}), {}, {}};
    const std::string colour = fuse_colour_name(fuse.family, *fuse.rating, words_);
    const Places places{{"rating", print_rating(*fuse.rating) + (colour.empty() ? "" : " " + colour)},
                        {"place", fuse_name(build_, ref)}};
    return {sentence("steps.lay_fuse", places), {}, fuse_body(fuse.family, *fuse.rating)};
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
};

/// Number, box, sentence and note, picture at the far side; a hairline under it.
Block step_row(const PageFlow& flow, int number, Shown shown) {
  const TypeSetting setting = flow.setting();
  const bool is_right_to_left = setting.is_right_to_left;
  const Millimetres width = flow.width(), text_width = width - text_x - picture_width - look::gutter;
  Block text = set_paragraph({std::move(shown.sentence), Align::left, "P"}, text_width, setting);
  if (!shown.note.empty()) {
    Block note = set_paragraph({{{shown.note, look::text, look::grey, {}}}, Align::left, "P"}, text_width, setting);
    const Millimetres y = text.height, height = note.height;
    place_block(text.items, std::move(note), {{}, y});
    text.height += height;
  }
  const Millimetres content = std::max({least_row, text.height, shown.picture.height});
  Block row{width, content + row_pad * 2, {}};
  const Millimetres middle = row.height / 2;
  const auto x = [&](Millimetres from_near, Millimetres size) {
    return is_right_to_left ? width - from_near - size : from_near;
  };
  row.items.push_back(TagOpenItem{"LI", {}});
  row.items.push_back(TagOpenItem{"Lbl", {}});
  add_text(row.items, {x({}, {}), baseline_at_middle(middle, look::step_number)}, std::to_string(number),
           look::step_number, look::ink, is_right_to_left ? Align::right : Align::left);
  row.items.push_back(TagCloseItem{});
  add_rect(row.items, {x(number_width, box_size), middle - box_size / 2, box_size, box_size},
           {look::ink, look::part_line});
  const Millimetres text_y = middle - text.height / 2, picture_y = middle - shown.picture.height / 2;
  row.items.push_back(TagOpenItem{"LBody", {}});
  place_block(row.items, std::move(text), {x(text_x, text_width), text_y});
  row.items.push_back(TagCloseItem{});
  const Millimetres picture_at = is_right_to_left ? Millimetres(0) : width - picture_width;
  place_block(row.items, std::move(shown.picture), {picture_at, picture_y});
  row.items.push_back(TagCloseItem{});
  add_line(row.items, {{}, row.height}, {width, row.height}, {look::hairline_grey, look::thin_line});
  return row;
}

class StepPages {
 public:
  explicit StepPages(const SheetContext& context)
      : context_(context),
        words_(context.words()),
        writer_(context),
        flow_(context, {"steps", words_("steps.title"), words_("steps.intro")}) {}

  std::vector<Sheet> make() {
    for (const StagePlan& plan : plan_assembly(context_.solved, words_)) add_stage(plan);
    return flow_.take();
  }

 private:
  void add_stage(const StagePlan& plan) {
    const std::string key = stage_key(plan.stage);
    flow_.add_heading(words_(key + "_title"), Millimetres(45));
    if (words_.has(key + "_text")) flow_.add_text(words_(key + "_text"), look::text, look::paragraph_gap);
    if (words_.has(key + "_hazard")) {
      const Signal signal = plan.stage == Stage::fuses ? Signal::notice : Signal::warning;
      auto values = pole_names(context_.build(), words_);
      values.emplace_back("sheet", sheet_mark(context_.id_prefix + "tests"));
      flow_.add(make_panel(panel_from_words(words_, signal, key, values), flow_.width(), words_, flow_.setting()),
                look::gutter);
    }
    for (const ActionGroup& group : plan.groups) add_group(group);
  }

  void add_group(const ActionGroup& group) {
    for (std::size_t i = 0; i < group.actions.size(); ++i) {
      const Action& action = group.actions[i];
      Block row = step_row(flow_, ++number_, writer_.show(action));
      Block head = i == 0 && !group.title.empty() ? group_head(group.title) : Block{};
      Block caution = action.caution.empty() ? Block{}
                                             : make_panel({Signal::caution, action.caution, {}, {}}, flow_.width(),
                                                          words_, flow_.setting());
      flow_.keep(head.height + caution.height + row.height + look::block_gap);
      if (head.height.number() > 0) flow_.add(std::move(head), look::gutter);
      if (caution.height.number() > 0) flow_.add(std::move(caution), look::paragraph_gap);
      flow_.add(std::move(row), {});
    }
  }

  Block group_head(const std::string& title) const {
    Block block =
        set_paragraph({{{title, look::text_bold, look::ink, {}}}, Align::left, "H3"}, flow_.width(), flow_.setting());
    block.height += Millimetres(0.8);
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
    return block;
  }

  const SheetContext& context_;
  const Words& words_;
  StepWriter writer_;
  PageFlow flow_;
  int number_ = 0;
};

}  // namespace

std::vector<Sheet> make_steps(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  return StepPages(context).make();
}

}  // namespace loomfolio
