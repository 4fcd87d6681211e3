// SPDX-License-Identifier: MIT
#include "sheets/step_writer.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/face_drawing.h"
#include "sheets/fitting_picture.h"
#include "sheets/fitting_text.h"
#include "sheets/fuse_look.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

constexpr Millimetres end_width(24), face_width(26), face_height(15), whole_face_width(38), whole_face_height(22);

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

/// Which tool makes that end.
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

class StepWriter {
 public:
  explicit StepWriter(const SheetContext& context)
      : context_(context), build_(context.build()), words_(context.words()) {}

  ShownAction show(const Action& action) const {
    switch (action.type) {
      case ActionType::disconnect:
        return plain("steps.disconnect", pole_names(build_, words_));
      case ActionType::find:
        return show_find(action.part);
      case ActionType::mount:
        return show_mount(action.part);
      case ActionType::check_clear:
        return plain("steps.check_clear", {});
      case ActionType::clean_earth:
        return show_earth(build_.earths[static_cast<std::size_t>(action.earth.index)]);
      case ActionType::body_return:
        return show_body(action.part);
      case ActionType::join_end:
        return show_join(action.wire, action.terminal);
      case ActionType::make_splice:
        return show_splice(build_.splices[static_cast<std::size_t>(action.splice.index)]);
      case ActionType::lay_fuse:
        return show_fuse(action.fuse);
      case ActionType::cut_wires:
        return plain("steps.cut_wires", {{"sheet", sheet_mark(context_.id_prefix + "cuts")}});
      case ActionType::test_fuse:
        return plain("steps.test_fuse", pole_names(build_, words_));
      case ActionType::test_cold:
        return plain("steps.test_cold", {{"sheet", sheets_of(context_, "tests")}});
      case ActionType::test_live:
        return plain("steps.test_live", {{"sheet", sheets_of(context_, "tests")}});
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

  ShownAction plain(const std::string& key, const Places& places) const {
    ShownAction shown{sentence(key, places), {}, {}};
    if (words_.has(key + "_note")) shown.notes.push_back(words_(key + "_note"));
    return shown;
  }

  ShownAction show_find(PartId id) const {
    const Part& part = build_.part(id);
    ShownAction shown{
        sentence("steps.find", {{"part", part.label}, {"zone", zone_name(build_.zone(part.zone))}}), {}, {}};
    if (!part.note.empty()) shown.notes.push_back(part.note);
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

  ShownAction show_body(PartId id) const {
    return {sentence("steps.body_return", {{"part", build_.part(id).label}}),
            {words_("steps.body_return_note")},
            whole_face(build_.part(id))};
  }

  /// The part as one sees it, without marks.
  Block whole_face(const Part& part) const {
    const Kind& kind = build_.kind_of(part);
    if (kind.faces.empty()) return {};
    const Face& face = kind.faces.front();
    return draw_face(face, {}, face_scale(face, whole_face_width, whole_face_height), context_.measure());
  }

  ShownAction show_earth(const Earth& earth) const {
    const std::string place = earth.place.empty() ? earth.label : earth.place;
    ShownAction shown{sentence("steps.clean_earth", {{"id", earth.id}, {"place", place}}), {}, {}};
    shown.notes.push_back(words_("steps.clean_earth_note"));
    return shown;
  }

  ShownAction show_join(WireId id, TerminalId terminal) const {
    const Wire& wire = build_.wire(id);
    const FittingShape shape = fitting_shape(build_, terminal);
    const std::string mark = terminal_mark(build_, terminal);
    const std::string owner = place_name(terminal);
    const Places places{{"wire", wire.id},
                        {"colour", wire.colour.text()},
                        {"part", owner},
                        {"terminal", mark},
                        {"place", mark.empty() ? owner : owner + "\u00a0" + mark}};
    ShownAction shown{sentence(join_key(shape), places), {end_note(wire, terminal, shape)}, {}};
    if (const std::string torque = torque_note(terminal); !torque.empty()) shown.notes.push_back(torque);
    shown.picture = join_picture(wire, terminal, shape);
    return shown;
  }

  /// 'your machine's Key switch' where the machine has it.
  std::string place_name(TerminalId id) const {
    const std::string name = owner_name(build_, id, words_);
    const Terminal& terminal = build_.terminal(id);
    if (terminal.owner != OwnerType::part) return name;
    const Part& part = build_.parts[static_cast<std::size_t>(terminal.owner_index)];
    return part.provided == Provider::machine ? words_("steps.machine_part", {{"part", name}}) : name;
  }

  /// 'Wire 250 mm, 1.5 mm2; blade 6.3, strip 6 mm. Crimping tool for open barrels.'
  std::string end_note(const Wire& wire, TerminalId terminal, FittingShape shape) const {
    std::vector<std::string> facts;
    if (wire.length)
      facts.push_back(print_length(*wire.length, build_.document.units) + "\u00a0" +
                      length_unit(build_.document.units, words_));
    facts.push_back(print_wire_size(wire));
    const std::string fitting = fitting_text(build_, terminal, words_);
    if (!fitting.empty()) facts.push_back(fitting);
    const std::string strip = strip_text(build_, terminal, words_);
    if (!strip.empty()) facts.push_back(strip);
    facts.push_back(words_(tool_key(shape, wire)));
    return join(facts, ", ");
  }

  /// The wire's end with its fitting, and at its left the face that it goes into, its terminal marked.
  Block join_picture(const Wire& wire, TerminalId terminal, FittingShape shape) const {
    Block fitting = fitting_picture(shape, wire, end_width);
    const KindTerminal* place = kind_terminal_of(build_, terminal);
    if (place == nullptr || place->face < 0) return fitting;
    const Part& part = build_.parts[static_cast<std::size_t>(build_.terminal(terminal).owner_index)];
    const Face& face = build_.kind_of(part).faces[static_cast<std::size_t>(place->face)];
    Block block = marked_face(face, place->at, face_scale(face, face_width, face_height));
    const Millimetres x = step_picture_width - end_width, height = std::max(block.height, fitting.height);
    Block both{step_picture_width, height, {}};
    const Millimetres face_y = (height - block.height) / 2, fitting_y = (height - fitting.height) / 2;
    place_block(both.items, std::move(block), {{}, face_y});
    place_block(both.items, std::move(fitting), {x, fitting_y});
    return both;
  }

  /// A ring and a dot round the terminal: seen in grey and from afar.
  Block marked_face(const Face& face, Point at, int scale) const {
    Block block = draw_face(face, {}, scale, context_.measure());
    const Millimetres shift = look::part_line / 2;  // as draw_face leaves room for its outline
    const Point middle{at.x / scale + shift, at.y / scale + shift};
    add_circle(block.items, middle, Millimetres(1.9), {true, {look::paper, Millimetres(1.6)}}, {});
    add_circle(block.items, middle, Millimetres(1.9), {true, {look::ink, look::frame_line}}, {});
    add_circle(block.items, middle, Millimetres(0.7), {false, {}}, {true, look::ink});
    return block;
  }

  /// Only what the terminal states; studs without a figure say whose figure holds.
  std::string torque_note(TerminalId id) const {
    const KindTerminal* terminal = kind_terminal_of(build_, id);
    if (terminal == nullptr || terminal->form != TerminalForm::stud) return {};
    if (!terminal->torque) return words_("steps.torque_by_maker");
    return words_("steps.torque", {{"torque", shortest(terminal->torque->number(), 1)}});
  }

  ShownAction show_splice(const Splice& splice) const {
    const WireSides sides = sides_at(build_, splice.terminal);
    ShownAction shown{
        sentence("steps.make_splice",
                 {{"id", splice.id}, {"left", list_wires(sides.left)}, {"right", list_wires(sides.right)}}),
        {words_("steps.tool_splice")},
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

  std::string list_wires(const std::vector<WireId>& wires) const {
    std::vector<std::string> ids;
    for (const WireId wire : wires) ids.push_back(build_.wire(wire).id);
    return join(ids, ", ");
  }

  ShownAction show_fuse(InsideRef ref) const {
    const Inside& fuse = inside_of(build_, ref);
    const std::string place = fuse_name(build_, ref);
    if (!build_.part(ref.part).fuse_choice.empty())
      return {sentence("steps.lay_fuse_chosen", {{"place", place}}), {}, {}};
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

/// An earth of that id and place stands in every hook-up, whatever wires meet there.
bool is_earth_of_all(const SheetContext& context, const Earth& earth) {
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    return std::any_of(other->build.earths.begin(), other->build.earths.end(),
                       [&](const Earth& found) { return found.id == earth.id && found.place == earth.place; });
  });
}

bool is_step_of_all(const SheetContext& context, const Action& action) {
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    return std::any_of(other->build.steps.begin(), other->build.steps.end(), [&](const AuthorStep& found) {
      return found.text == action.text && found.caution == action.caution;
    });
  });
}

bool is_action_of_all(const SheetContext& context, const Action& action) {
  SheetContext common = context;
  common.extent = Extent::common;
  switch (action.type) {
    case ActionType::find:
    case ActionType::mount:
    case ActionType::body_return:
      return shows_part(common, action.part);
    case ActionType::clean_earth:
      return is_earth_of_all(context, context.build().earths[static_cast<std::size_t>(action.earth.index)]);
    case ActionType::join_end:
      return shows_wire(common, action.wire);
    case ActionType::make_splice:
      return shows_splice(common, action.splice);
    case ActionType::lay_fuse:
      return shows_part(common, action.fuse.part);
    case ActionType::author:
      return is_step_of_all(context, action);
    case ActionType::disconnect:
    case ActionType::check_clear:
    case ActionType::cut_wires:
    case ActionType::test_fuse:
    case ActionType::test_cold:
    case ActionType::test_live:
      return true;
  }
  return true;
}

}  // namespace

ShownAction show_action(const SheetContext& context, const Action& action) { return StepWriter(context).show(action); }

bool shows_action(const SheetContext& context, const Action& action) {
  if (context.extent == Extent::whole || context.hook_ups == nullptr) return true;
  // The common wires are cut before the common steps, a hook-up's own before its own.
  if (action.type == ActionType::cut_wires) return true;
  return is_action_of_all(context, action) == (context.extent == Extent::common);
}

std::string sheets_of(const SheetContext& context, const std::string& run) {
  const Words& words = context.words();
  if (context.extent != Extent::common || context.hook_ups == nullptr)
    return words("chooser.sheet", {{"sheet", sheet_mark(context.id_prefix + run)}});
  std::vector<std::string> sheets;
  for (std::size_t b = 0; b < context.hook_ups->builds.size(); ++b) {
    const std::string sheet = sheet_mark(context.hook_ups->builds[b]->build.variant + "/" + run);
    sheets.push_back(words("hook_up.letters", {{"letter", hook_up_letter(b)}, {"sheet", sheet}}));
  }
  return join(sheets, ", ");
}

}  // namespace loomfolio
