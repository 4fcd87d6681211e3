// SPDX-License-Identifier: MIT
// The assembly steps: one action each, numbered through, with a box to tick. What is joined at one part stands in one
// list beside a picture of its terminals.
//
// Of several hook-ups, the steps that all share stand once. Twice they send the reader to the steps of his own hook-up
// and those send him back: for what is cut and spliced on the bench, and for what is joined in the machine. A hook-up's
// own steps are numbered from a hundred of their own, above the common ones: A from 101, B from 201.
#include <algorithm>
#include <optional>
#include <utility>

#include "sheets/fitting_uses.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/step_joints.h"
#include "sheets/step_order.h"
#include "sheets/step_phases.h"
#include "sheets/step_writer.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_joints = 16;  ///< in one list, so that it stands on one page
constexpr std::size_t most_ahead = 7;  // parts that are looked at for one that fits

std::string stage_key(Stage stage) {
  switch (stage) {
    case Stage::prepare:
      return "steps.prepare";
    case Stage::bracket:
      return "steps.bracket";
    case Stage::splices:
      return "steps.splices";
    case Stage::loom:
      return "steps.loom";
    case Stage::earths:
      return "steps.earths";
    case Stage::signals:
      return "steps.signals";
    case Stage::supply:
      return "steps.supply";
    case Stage::plugs:
      return "steps.plugs";
    case Stage::fuses:
      return "steps.fuses";
    case Stage::cold:
      return "steps.cold";
    case Stage::battery:
      return "steps.battery";
    case Stage::tests:
      return "steps.tests";
  }
  return {};
}

/// Number, box, sentence and notes, picture at the far side; a hairline under it.
Block step_row(const PageFlow& flow, const std::string& number, ShownAction shown) {
  const TypeSetting setting = flow.setting();
  const bool is_right_to_left = setting.is_right_to_left;
  const bool has_picture = shown.picture.height.number() > 0;
  const Millimetres picture_width = has_picture ? step_picture_width + look::gutter : Millimetres(0);
  const Millimetres width = flow.width(), text_width = width - step_text_x - picture_width;
  Block text = set_paragraph({std::move(shown.sentence), Align::left, "P"}, text_width, setting);
  for (const std::string& said : shown.notes) {
    Block note = set_paragraph({{{said, look::step_note, look::ink, {}}}, Align::left, "P"}, text_width, setting);
    const Millimetres y = text.height, height = note.height;
    place_block(text.items, std::move(note), {{}, y});
    text.height += height;
  }
  Block row{width, std::max(text.height, shown.picture.height) + step_row_pad * 2, {}};
  place_block(row.items, std::move(text), {is_right_to_left ? width - step_text_x - text_width : step_text_x, step_row_pad});
  const Millimetres picture_at = is_right_to_left ? Millimetres(0) : width - step_picture_width;
  if (has_picture) place_block(row.items, std::move(shown.picture), {picture_at, step_row_pad});
  add_step_marks(row, number, setting);
  return row;
}

std::string steps_intro(const SheetContext& context) {
  if (context.extent == Extent::own) return context.words()("steps.own_intro");
  return context.words()("steps.intro") + " " + context.words()("steps.ends", {{"sheet", sheet_mark("crimps")}});
}

class StepPages {
 public:
  explicit StepPages(const SheetContext& context)
      : context_(context),
        words_(context.words()),
        flow_(context, {"steps", words_("steps.title"), steps_intro(context)}) {}

  std::vector<Sheet> make() {
    const std::vector<StagePlan> plans = plan_assembly(context_.solved, words_);
    if (context_.extent == Extent::whole)
      add_all(plans);
    else if (context_.extent == Extent::common)
      add_common(plans);
    else
      add_own(plans);
    return flow_.take();
  }

 private:
  void add_all(const std::vector<StagePlan>& plans) {
    for (const StagePlan& plan : plans) add_stage(plan);
  }

  void add_common(const std::vector<StagePlan>& plans) {
    const bool ends_shared = is_end_shared(context_);
    for (const Phase phase : {Phase::bench, Phase::machine, Phase::end}) {
      if (phase == Phase::end && !ends_shared) return;
      for (const StagePlan& plan : plans)
        if (phase_of(plan.stage) == phase) add_stage(plan);
      if (phase == Phase::bench) add_ways_out("bench", true);
      if (phase == Phase::machine) add_ways_out("machine", ends_shared);
    }
  }

  void add_own(const std::vector<StagePlan>& plans) {
    const bool ends_shared = is_end_shared(context_);
    number_ = own_steps_from(context_, context_.build_index);
    for (const StagePlan& plan : plans)
      if (own_phase_of(plan.stage) == Phase::bench) add_stage(plan);
    add_way_back("bench");
    is_anchor_due_ = true;
    for (const StagePlan& plan : plans)
      if ((ends_shared ? own_phase_of(plan.stage) : phase_of(plan.stage)) == Phase::machine) add_stage(plan);
    if (is_anchor_due_) flow_.items().push_back(AnchorItem{"machine", {}});
    is_anchor_due_ = false;
    if (ends_shared) return add_way_back("machine");
    is_end_ = true;
    for (const StagePlan& plan : plans)
      if (phase_of(plan.stage) == Phase::end) add_stage(plan);
  }

  void add_stage(const StagePlan& plan) {
    std::vector<Waiting> shown;
    for (const ActionGroup& group : plan.groups) {
      ActionGroup kept{group.title, group.part, {}, group.note_key};
      for (const Action& action : group.actions)
        if (is_step_shown(context_, plan.stage, action) ||
            (is_end_ && !is_asked_before(context_, plan.stage, action)))
          kept.actions.push_back(action);
      if (!kept.actions.empty()) shown.push_back({std::move(kept)});
    }
    if (shown.empty()) return;
    add_stage_head(plan.stage);
    while (!shown.empty()) {
      const auto next = shown.begin() + static_cast<std::ptrdiff_t>(next_to_add(plan.stage, shown));
      const ActionGroup group = std::move(next->group);
      shown.erase(next);
      add_group(group);
    }
  }

  /// A group that is still to be added, with its height once that was asked for.
  struct Waiting {
    ActionGroup group;
    std::optional<Millimetres> height = std::nullopt;
  };

  /// Parts may be joined in any order: one that still fits on the sheet goes before one that does not.
  std::size_t next_to_add(Stage stage, std::vector<Waiting>& groups) const {
    std::vector<Millimetres> heights;
    if (stage != Stage::signals) return 0;
    for (auto& [group, height] : groups) {
      const bool is_all_joints = !group.title.empty() && is_joint(group.actions, 0) &&
                                 std::all_of(group.actions.begin(), group.actions.end(), [](const Action& action) {
                                   return action.type == ActionType::join_end;
                                 });
      if (!is_all_joints || heights.size() > most_ahead) break;
      if (!height) height = height_of(group);
      heights.push_back(*height);
    }
    return choose_next(heights, flow_.room());
  }

  Millimetres height_of(const ActionGroup& group) const {
    Millimetres height = group_head(group).height + look::gutter;
    for (std::size_t i = 0; i < group.actions.size(); i += most_joints) {
      const std::vector<Action> joints(
          group.actions.begin() + static_cast<std::ptrdiff_t>(i),
          group.actions.begin() + static_cast<std::ptrdiff_t>(std::min(i + most_joints, group.actions.size())));
      height += joint_block(context_, joints, flow_.width(), [] { return std::string("100"); }).height + look::gutter;
    }
    return height;
  }

  void add_stage_head(Stage stage) {
    const std::string key = stage_key(stage);
    Block panel;
    if (words_.has(key + "_hazard")) {
      const Signal signal = stage == Stage::fuses ? Signal::notice : Signal::warning;
      auto values = pole_names(context_.build(), words_);
      values.emplace_back("sheet", sheet_of_tests(context_, "first"));
      panel = make_panel(panel_from_words(words_, signal, key, values), flow_.width(), words_, flow_.setting());
    }
    flow_.add_heading(words_(key + "_title"));
    if (is_anchor_due_) flow_.items().push_back(AnchorItem{"machine", {}});
    is_anchor_due_ = false;
    if (!return_anchor_.empty()) flow_.items().push_back(AnchorItem{std::exchange(return_anchor_, {}), {}});
    if (words_.has(key + "_text")) flow_.add_lead(words_(key + "_text"), look::paragraph_gap);
    is_under_title_ = !words_.has(key + "_text");
    is_under_lead_ = words_.has(key + "_text");
    if (panel.height.number() <= 0) return;
    flow_.add_lead(std::move(panel), look::paragraph_gap);
    is_under_lead_ = true;
  }

  /// Joins stand in lists beside the part's faces, all else in rows of its own.
  void add_group(const ActionGroup& group) {
    Block head = group_head(group);
    std::size_t i = 0;
    while (i < group.actions.size()) {
      std::vector<Action> joints;
      while (is_joint(group.actions, i + joints.size()) && joints.size() < most_joints)
        joints.push_back(group.actions[i + joints.size()]);
      if (joints.empty())
        add_row(std::move(head), group.actions[i++]);
      else
        add_joints(std::move(head), joints);
      i += joints.size();
      head = Block{};
    }
  }

  bool is_joint(const std::vector<Action>& actions, std::size_t i) const {
    return i < actions.size() && actions[i].type == ActionType::join_end &&
           actions[i].terminal != live_pole(context_.build()) && actions[i].terminal != earthed_pole(context_.build());
  }

  void add_joints(Block head, const std::vector<Action>& joints) {
    Block block = joint_block(context_, joints, flow_.width(), [this] { return next_number(); });
    flow_.keep(head.height + block.height + look::gutter);
    is_under_lead_ = false;
    if (head.height.number() > 0) flow_.add(std::move(head), look::gutter);
    is_under_title_ = false;
    flow_.add(std::move(block), Millimetres(0.8));
  }

  void add_row(Block head, const Action& action) {
    ShownAction shown = show_action(context_, action);
    Block warning = shown.warning ? make_panel(*shown.warning, flow_.width(), words_, flow_.setting()) : Block{};
    Block row = step_row(flow_, next_number(), std::move(shown));
    flow_.keep(head.height + warning.height + row.height + look::block_gap);
    const bool has_head = head.height.number() > 0 && warning.height.number() == 0;
    const bool is_under_title = std::exchange(is_under_title_, false);
    if (head.height.number() > 0) flow_.add(std::move(head), is_under_title ? look::paragraph_gap : look::gutter);
    const bool is_under_lead = std::exchange(is_under_lead_, false);
    const bool needs_air = warning.height.number() > 0 || is_under_lead;
    const Millimetres air = needs_air && !has_head ? look::paragraph_gap : Millimetres(0);
    if (warning.height.number() > 0) flow_.add(std::move(warning), look::paragraph_gap);
    if (action.type == ActionType::part_again && action.turn == 1) row.items.insert(row.items.begin(), AnchorItem{"after first power", {}});
    flow_.add(std::move(row), air);
  }

  std::string next_number() { return std::to_string(++number_); }

  /// Title over a rule, and what holds for all actions of the group.
  Block group_head(const ActionGroup& group) const {
    Block block{flow_.width(), {}, {}};
    if (!group.title.empty()) block = titled(group.title);
    if (group.note_key.empty()) return block;
    const std::string sheet = sheet_mark("crimps", fitting_anchor(FittingShape::splice));
    Block note = set_text(words_(group.note_key, {{"sheet", sheet}}), look::text, flow_.width(), flow_.setting());
    const Millimetres y = block.height + (block.height.number() > 0 ? Millimetres(0.8) : Millimetres(0));
    block.height = y + note.height;
    place_block(block.items, std::move(note), {{}, y});
    return block;
  }

  Block titled(const std::string& title) const {
    Block block =
        set_paragraph({{{title, look::text_bold, look::ink, {}}}, Align::left, "H3"}, flow_.width(), flow_.setting());
    block.height += Millimetres(0.8);
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
    return block;
  }

  /// A line in a box that leads somewhere.
  Block way(const std::vector<std::pair<std::string, LinkTarget>>& lines, const std::string& head) const {
    const Millimetres width = flow_.width(), pad = look::panel_pad;
    Block block{width, pad, {}};
    const auto put = [&](const Paragraph& paragraph) {
      Block text = set_paragraph(paragraph, width - pad * 2, flow_.setting());
      const Millimetres height = text.height;
      place_block(block.items, std::move(text), {pad, block.height});
      block.height += height;
    };
    put({{{head, look::heading, look::ink, {}}}, Align::left, "P"});
    block.height += Millimetres(1);
    for (const auto& [text, target] : lines) put({{{text, look::text_bold, look::accent, target}}, Align::left, "P"});
    block.height += pad;
    add_rect(block.items, {{}, {}, width, block.height}, {look::ink, look::heavy_line}, Millimetres(1.5));
    return block;
  }

  /// To the part of each hook-up's own steps that comes next; `part` names it and the place to come back to.
  void add_ways_out(const std::string& part, bool comes_back) {
    std::vector<std::pair<std::string, LinkTarget>> lines;
    for (std::size_t b = 0; b < context_.hook_ups->builds.size(); ++b) {
      const Build& build = context_.hook_ups->builds[b]->build;
      const LinkTarget target{build.variant + "/steps", part == "bench" ? std::string() : part};
      const std::string label = build.variant_label.empty() ? build.variant : build.variant_label;
      const int done = own_steps_from(context_, b) + (part == "bench" ? 0 : own_bench_steps(context_, b));
      lines.push_back(
          {words_(
               comes_back ? "steps.way_out" : "steps.way_on",
               {{"letter", hook_up_letter(b)},
                {"label", label},
                {"sheet", sheet_mark(target.sheet, target.anchor)},
                {"first", std::to_string(done + 1)},
                {"step", std::to_string(number_ + 1)}}),
           target});
    }
    Block block = way(lines, words_("steps.way_out_" + part));
    flow_.add(std::move(block), look::heading_gap);
    return_anchor_ = return_anchor_of(part);
  }

  /// At the common step with which a reader goes on who comes back from his own.
  static std::string return_anchor_of(const std::string& part) { return "go on after " + part; }

  void add_way_back(const std::string& part) {
    const LinkTarget target{"steps", return_anchor_of(part)};
    const int step = common_steps(context_, part == "bench" ? Phase::bench : Phase::machine) + 1;
    const std::string text = words_(
        "steps.way_back", {{"sheet", sheet_mark(target.sheet, target.anchor)}, {"step", std::to_string(step)}});
    flow_.add(way({{text, target}}, words_("steps.way_back_title")), look::block_gap);
  }

  const SheetContext& context_;
  const Words& words_;
  PageFlow flow_;
  int number_ = 0;
  bool is_end_ = false;         ///< from here on every action of a stage is shown
  bool is_under_title_ = false;  ///< a note that comes next stands right below a stage's title
  bool is_under_lead_ = false;  ///< the next row stands right below a stage's text or panel
  std::string return_anchor_;   ///< due at the next head
  bool is_anchor_due_ = false;  ///< the next head is where a reader comes in again
};

}  // namespace

std::vector<Sheet> make_steps(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  return StepPages(context).make();
}

}  // namespace loomfolio
