// SPDX-License-Identifier: MIT
#include "sheets/step_writer.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/cut_list.h"
#include "sheets/face_drawing.h"
#include "sheets/fitting_picture.h"
#include "sheets/fitting_text.h"
#include "sheets/fuse_look.h"
#include "sheets/fuse_selection_table.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/step_joints.h"
#include "sheets/wire_star.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr Millimetres whole_face_width(34), whole_face_height(14);

struct SignalMark {
  std::string_view mark;
  Signal signal;
};
constexpr std::array<SignalMark, 4> signal_marks{{{"DANGER:", Signal::danger},
                                                  {"WARNING:", Signal::warning},
                                                  {"CAUTION:", Signal::caution},
                                                  {"NOTICE:", Signal::notice}}};

/// An author's caution: the signal word that it begins with, or CAUTION.
Panel author_panel(const std::string& caution) {
  for (const SignalMark& entry : signal_marks)
    if (caution.starts_with(entry.mark)) return {entry.signal, trimmed(caution.substr(entry.mark.size())), {}, {}};
  return {Signal::caution, caution, {}, {}};
}

class StepWriter {
 public:
  explicit StepWriter(const SheetContext& context)
      : context_(context), build_(context.build()), words_(context.words()) {}

  ShownAction show(const Action& action) const {
    switch (action.type) {
      case ActionType::find:
        return show_find(action.part);
      case ActionType::mount:
        return show_mount(action.part);
      case ActionType::unplug:
        return {sentence("steps.unplug", {{"part", build_.part(action.part).label}}), {}, {}};
      case ActionType::free_wire:
        return show_free_wire(action);
      case ActionType::plug:
        return show_plug(action.part);
      case ActionType::clean_earth:
        return show_earth(action, "steps.clean_earth");
      case ActionType::undo_earth:
        return show_earth(action, "steps.undo_earth");
      case ActionType::body_return:
        return {sentence("steps.body_return", {{"part", build_.part(action.part).label}}), {}, {}};
      case ActionType::make_splice:
        return show_splice(build_.splices[static_cast<std::size_t>(action.splice.index)]);
      case ActionType::lay_wires:
        return show_run(action);
      case ActionType::take_fuse:
        return {sentence("steps.take_fuse", {{"place", fuse_name(build_, action.fuse)}}), {}, {}};
      case ActionType::lay_fuse:
        return show_fuse(action.fuse);
      case ActionType::ready_ring:
        return show_ring(build_.wire(action.wires.front()), action.terminal);
      case ActionType::join_end:
      case ActionType::clip_test_fuse:
      case ActionType::join_for_test:
      case ActionType::part_again:
      case ActionType::unclip_test_fuse:
      case ActionType::cover_pole:
        return show_pole(action);
      case ActionType::author:
        return show_author(action);
      default:
        return show_plain(action);
    }
  }

 private:
  using Places = std::vector<std::pair<std::string, std::string>>;

  std::vector<Span> sentence(std::string_view key, const Places& places) const {
    return marked_spans(words_(key, places), look::text, look::text_bold);
  }

  ShownAction plain(const std::string& key, const Places& places) const {
    ShownAction shown{sentence(key, places), {}, {}};
    if (words_.has(key + "_note")) shown.notes.push_back(words_(key + "_note"));
    return shown;
  }

  static std::string_view plain_key(ActionType type) {
    switch (type) {
      case ActionType::key_off:
        return "steps.key_off";
      case ActionType::remove_covers:
        return "steps.remove_covers";
      case ActionType::disconnect:
        return "steps.disconnect";
      case ActionType::remove_battery:
        return "steps.remove_battery";
      case ActionType::remove_tank:
        return "steps.remove_tank";
      case ActionType::take_battery:
        return "steps.take_battery";
      case ActionType::check_clear:
        return "steps.check_clear";
      case ActionType::cut_wires:
        return "steps.cut_wires";
      case ActionType::check_way:
        return "steps.check_way";
      case ActionType::tie_loom:
        return "steps.tie_loom";
      case ActionType::test_cold:
        return "steps.test_cold";
      case ActionType::test_first:
        return "steps.test_first";
      case ActionType::refit_tank:
        return "steps.refit_tank";
      case ActionType::open_tap:
        return "steps.open_tap";
      case ActionType::test_live:
        return "steps.test_live";
      case ActionType::refit_covers:
        return "steps.refit_covers";
      default:
        return "steps.author";
    }
  }

  /// The anchor of those tests; empty for other actions.
  static std::string_view part_of_tests(ActionType type) {
    switch (type) {
      case ActionType::test_cold:
        return "cold";
      case ActionType::test_first:
        return "first";
      case ActionType::test_live:
        return "live";
      default:
        return {};
    }
  }

  /// What its key ends with when it is told in several steps.
  static std::string turn_of(const Action& action) {
    return action.turn == 0 ? std::string() : "_" + std::to_string(action.turn);
  }

  /// Actions that are alike on every machine.
  ShownAction show_plain(const Action& action) const {
    const ActionType type = action.type;
    Places places = pole_names(build_, words_);
    const bool is_cut = type == ActionType::cut_wires;
    if (is_cut) {
      places.emplace_back("sheet", context_.hook_ups != nullptr
                                       ? sheet_mark(context_.id_prefix + "parts", cut_list_anchor)
                                       : sheet_mark(context_.id_prefix + "cuts"));
      places.emplace_back("labels", sheet_mark("labels"));
    }
    if (type == ActionType::check_way) places.emplace_back("sheet", sheet_mark("safety", "safety.route"));
    if (const std::string_view part = part_of_tests(type); !part.empty())
      places.emplace_back("sheet", sheet_of_tests(context_, part));
    ShownAction shown = plain(std::string(plain_key(type)) + turn_of(action), places);
    // The warning stands before the step that handles the tank.
    const bool is_tank = (type == ActionType::remove_tank && action.turn == 1) || type == ActionType::refit_tank;
    if (is_tank)
      shown.warning = panel_from_words(words_, Signal::warning, "steps.fuel");
    return shown;
  }

  ShownAction show_author(const Action& action) const {
    ShownAction shown{{{action.text, look::text, look::ink, {}}}, {}, {}};
    if (!action.caution.empty()) shown.warning = author_panel(action.caution);
    return shown;
  }

  ShownAction show_free_wire(const Action& action) const {
    const KindTerminal* terminal = kind_terminal_of(build_, action.terminal);
    const bool is_cavity = terminal != nullptr && is_in_housing(terminal->form);
    return {sentence("steps.free_wire" + turn_of(action) + (is_cavity && action.turn == 1 ? "_cavity" : ""),
                     {{"wires", wire_ids(build_, action.wires)},
                      {"part", build_.part(action.part).label},
                      {"mark", terminal_mark(build_, action.terminal)}}),
            {},
            {}};
  }

  ShownAction show_plug(PartId id) const {
    const Part& part = build_.part(id);
    const bool is_connector = build_.kind_of(part).is_connector;
    return {sentence(is_connector ? "steps.plug_halves" : "steps.plug_part", {{"part", part.label}}), {}, {}};
  }

  /// Of the wires, those that the pages show.
  std::vector<WireId> shown_wires(const std::vector<WireId>& wires) const {
    std::vector<WireId> shown;
    const bool is_all = context_.extent == Extent::whole || context_.hook_ups == nullptr;
    for (const WireId wire : wires)
      if (is_all || shows_wire(context_, wire)) shown.push_back(wire);
    return shown;
  }

  ShownAction show_run(const Action& action) const {
    const std::vector<WireId> wires = shown_wires(action.wires);
    return {sentence(wires.size() == 1 ? "steps.lay_wire" : "steps.lay_wires",
                     {{"from", zone_name(build_.zone(action.from))},
                      {"to", zone_name(build_.zone(action.to))},
                      {"wires", wire_ids(build_, wires)}}),
            {},
            {}};
  }

  ShownAction show_ring(const Wire& wire, TerminalId pole) const {
    const Places places{{"wire", wire.id},
                        {"colour", wire.colour.text()},
                        {"ring", fitting_text(build_, pole, words_)},
                        {"size", print_wire_size(wire)},
                        {"tool", words_(tool_key(FittingShape::ring, wire))}};
    return {sentence("steps.ready_ring", places), {}, fitting_picture(FittingShape::ring, wire, step_picture_width)};
  }

  /// What is done with the rings of one pole.
  ShownAction show_pole(const Action& action) const {
    Places places = pole_names(build_, words_);
    places.emplace_back("wires", wire_ids(build_, action.wires));
    places.emplace_back("pole", terminal_mark(build_, action.terminal));
    const std::string number = action.wires.size() == 1 ? "_one" : "";
    return plain(std::string(pole_key(action)) + turn_of(action) + number, places);
  }

  std::string_view pole_key(const Action& action) const {
    switch (action.type) {
      case ActionType::clip_test_fuse:
        return "steps.clip_test_fuse";
      case ActionType::join_for_test:
        return "steps.join_for_test";
      case ActionType::part_again:
        return "steps.part_again";
      case ActionType::unclip_test_fuse:
        return "steps.unclip_test_fuse";
      case ActionType::cover_pole:
        return "steps.cover_pole";
      default:
        return action.terminal == live_pole(build_) ? "steps.join_live" : "steps.join_earthed";
    }
  }

  ShownAction show_find(PartId id) const {
    const Part& part = build_.part(id);
    ShownAction shown{
        sentence("steps.find", {{"part", part.label}, {"zone", zone_name(build_.zone(part.zone))}}), {}, {}};
    if (!part.note.empty()) shown.notes.push_back(part.note);
    shown.notes.push_back(
        words_("steps.find_map", {{"sheet", sheet_mark(context_.id_prefix + "terminals", part_anchor(part))}}));
    shown.picture = whole_face(part);
    return shown;
  }

  ShownAction show_mount(PartId id) const {
    const Part& part = build_.part(id);
    ShownAction shown{sentence("steps.mount", {{"part", part.label}}), {}, whole_face(part)};
    for (const std::string& note : {build_.kind_of(part).mounting, part.note})
      if (!note.empty()) shown.notes.push_back(note);
    return shown;
  }

  /// On a small picture words would lie over the lines; the signs of a battery's poles stay.
  static void leave_words_out(Face& face) {
    const auto is_word = [](const FaceShape& shape) { return shape.type == ShapeType::text && shape.text.size() > 3; };
    face.shapes.erase(std::remove_if(face.shapes.begin(), face.shapes.end(), is_word), face.shapes.end());
  }

  /// The part as one sees it, without marks.
  Block whole_face(const Part& part) const {
    const Kind& kind = build_.kind_of(part);
    if (kind.faces.empty()) return {};
    Face face = kind.faces.front();
    const int scale = face_scale(face, whole_face_width, whole_face_height);
    if (scale > 1) leave_words_out(face);
    return draw_face(face, {}, scale, context_.measure());
  }

  ShownAction show_earth(const Action& action, std::string_view key) const {
    const Earth& earth = build_.earths[static_cast<std::size_t>(action.earth.index)];
    const std::string place = earth.place.empty() ? earth.label : earth.place;
    return {sentence(key, {{"id", earth.id}, {"place", place}, {"wires", wire_ids(build_, action.wires)}}), {}, {}};
  }

  ShownAction show_splice(const Splice& splice) const {
    const WireSides sides = sides_at(build_, splice.terminal);
    ShownAction shown{
        sentence("steps.make_splice",
                 {{"id", splice.id}, {"left", wire_ids(build_, sides.left)}, {"right", wire_ids(build_, sides.right)}}),
        {},
        {}};
    if (!splice.note.empty()) shown.notes.push_back(splice.note);
    shown.picture = splice_picture(wires_of(sides.left), wires_of(sides.right), step_picture_width);
    return shown;
  }

  std::vector<const Wire*> wires_of(const std::vector<WireId>& ids) const {
    std::vector<const Wire*> wires;
    for (const WireId id : ids) wires.push_back(&build_.wire(id));
    return wires;
  }

  ShownAction show_fuse(InsideRef ref) const {
    const Inside& fuse = inside_of(build_, ref);
    const std::string place = fuse_name(build_, ref);
    if (!build_.part(ref.part).fuse_choice.empty())
      return {sentence("steps.lay_fuse_chosen",
                       {{"place", place},
                        {"sheet", sheet_mark(context_.id_prefix + "fuses", choice_anchor(context_, ref))}}),
              {},
              {}};
    if (!fuse.rating) return {sentence("steps.lay_fuse_unknown", {{"place", place}}), {}, {}};
    const std::string colour = fuse_colour_name(fuse.family, *fuse.rating, words_);
    const Places places{{"rating", print_rating(*fuse.rating) + (colour.empty() ? "" : " " + colour)},
                        {"place", place}};
    return {sentence("steps.lay_fuse", places), {}, fuse_body(fuse.family, *fuse.rating)};
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
};

}  // namespace

ShownAction show_action(const SheetContext& context, const Action& action) { return StepWriter(context).show(action); }

std::string sheet_of_tests(const SheetContext& context, std::string_view anchor) {
  return context.words()("chooser.sheet", {{"sheet", sheet_mark("tests", anchor)}});
}

}  // namespace loomfolio
