// SPDX-License-Identifier: MIT
#include "sheets/fault_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/assembly_plan.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/setting_text.h"

namespace loomfolio {
namespace {

std::string_view failing_key(const Build& build, const Symptom& symptom) {
  const Inside& inside = inside_of(build, symptom.what);
  const std::string& group = build.kind_of(build.part(symptom.what.part)).group;
  switch (inside.type) {
    case InsideType::lamp:
      return symptom.expected == Expected::flashing ? "faults.no_flash" : "faults.no_light";
    case InsideType::charger:
      return "faults.no_charge";
    case InsideType::motor:
      return group == "starting" ? "faults.no_start" : "faults.no_turn";
    default:
      break;
  }
  if (group == "ignition") return "faults.no_spark";
  return group == "signalling" ? "faults.no_sound" : "faults.no_work";
}

std::string_view odd_key(const Build& build, const Symptom& symptom) {
  const bool is_lamp = inside_of(build, symptom.what).type == InsideType::lamp;
  if (build.kind_of(build.part(symptom.what.part)).group == "ignition") return "faults.runs_on";
  if (symptom.seen == Expected::dim) return symptom.expected == Expected::off ? "faults.glows" : "faults.weak";
  if (symptom.expected == Expected::flashing) return "faults.steady";
  if (symptom.expected == Expected::dim) return "faults.too_strong";
  return is_lamp ? "faults.lights_always" : "faults.works_always";
}

constexpr TextStyle small_print{FaceName::sans, Weight::regular, 9}, small_bold{FaceName::sans, Weight::bold, 9};

Paragraph paragraph(std::vector<Span> spans) { return {std::move(spans), Align::left, "P"}; }

}  // namespace

/// 'Turn signal, front left' within a sentence: 'turn signal (front left)'. Abbreviations keep their capitals.
std::string name_in_sentence(std::string name) {
  const bool is_word = name.size() > 1 && std::islower(static_cast<unsigned char>(name[1])) != 0;
  if (is_word) name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
  const std::size_t comma = name.find(", ");
  if (comma == std::string::npos) return name;
  return name.substr(0, comma) + " (" + name.substr(comma + 2) + ")";
}

FaultWords::FaultWords(const SheetContext& context, const FaultPlan& plan, std::size_t blown)
    : context_(context),
      build_(context.build()),
      words_(context.words()),
      plan_(plan),
      blown_(blown),
      situations_(plan.bench.build.situations) {}

std::string FaultWords::element(InsideRef what) const {
  const Inside& inside = inside_of(build_, what);
  const std::string& label = build_.part(what.part).label;
  return inside.name.empty() ? label : label + ", " + inside.name;
}

std::string FaultWords::symptom(const Symptom& symptom) const {
  const std::string_view key = symptom.seen == Expected::off ? failing_key(build_, symptom) : odd_key(build_, symptom);
  return words_(key, {{"part", called(symptom.what)}});
}

/// A lamp of the instrument that has a name of its own.
bool FaultWords::is_tell_tale(InsideRef what) const {
  const Inside& inside = inside_of(build_, what);
  return inside.type == InsideType::lamp && !inside.name.empty() &&
         build_.kind_of(build_.part(what.part)).group == "instruments";
}

std::string FaultWords::called(InsideRef what) const {
  if (!is_tell_tale(what)) return name_in_sentence(element(what));
  return words_("faults.no_light_part",
                {{"name", inside_of(build_, what).name}, {"part", name_in_sentence(build_.part(what.part).label)}});
}

std::string FaultWords::situation(SituationId id) const {
  const std::string& name = situation_name(situations_[id.at()]);
  if (situations_[id.at()].engine == build_.situations[id.at()].engine) return name;
  return words_("faults.engine_off", {{"situation", name}});
}

/// Nobody sets an engine to cranking: it should do so.
std::string FaultWords::engine_text(EngineState engine) const {
  return words_(engine == EngineState::cranking ? std::string_view("faults.should_crank") : engine_key(engine));
}

std::string FaultWords::settings(SituationId id) const {
  const Situation& situation = situations_[id.at()];
  std::vector<std::string> settings;
  for (const Setting& setting : situation.settings) settings.push_back(setting_text(build_, setting));
  if (settings.empty()) settings.push_back(words_("situations.all_at_rest"));
  settings.push_back(engine_text(situation.engine));
  return join(settings, "; ");
}

std::string FaultWords::place(TerminalId at) const {
  const std::string mark = terminal_mark(build_, at), owner = owner_name(build_, at, words_);
  return mark.empty() ? owner : owner + "\u00a0" + mark;
}

std::string FaultWords::ask_ohms(const Probe& probe) const {
  const Inside& inside = inside_of(build_, probe.what);
  if (inside.type == InsideType::fuse) return words_("faults.ask_fuse", {{"fuse", fuse_name(build_, probe.what)}});
  if (inside.type == InsideType::lamp) return words_("faults.ask_bulb", {{"part", element(probe.what)}});
  std::vector<std::string> marks;
  for (const Inside::Node& node : inside.nodes)
    if (node.terminal >= 0)
      marks.push_back(
          build_.kind_of(build_.part(probe.what.part)).terminals[static_cast<std::size_t>(node.terminal)].id);
  if (marks.size() < 2) return words_("faults.ask_element_alone", {{"part", element(probe.what)}});
  return words_("faults.ask_element", {{"part", element(probe.what)}, {"first", marks[0]}, {"second", marks[1]}});
}

std::string FaultWords::ask_short(const Probe& probe) const {
  std::string ask;
  if (!probe.taken_out.empty()) {
    std::vector<NamedElement> bulbs;
    for (const InsideRef bulb : probe.taken_out) bulbs.push_back({bulb, {}});
    ask = words_("faults.take_out", {{"list", list_elements(build_, bulbs)}}) + " ";
  }
  const char* key = probe.standing == Standing::all_at_rest ? "faults.ask_short" : "faults.ask_short_set";
  return ask + words_(key, {{"place", place(probe.at)}, {"fuse", fuse_name(build_, probe.what)}});
}

std::string FaultWords::ask_watch(const Probe& probe) const {
  const Inside& inside = inside_of(build_, probe.what);
  const Kind& kind = build_.kind_of(build_.part(probe.what.part));
  if (is_tell_tale(probe.what))
    return words_("faults.ask_tell_tale",
                  {{"name", inside.name}, {"part", name_in_sentence(build_.part(probe.what.part).label)}});
  const char* key = "faults.ask_works";
  if (inside.type == InsideType::lamp) key = "faults.ask_lamp";
  if (inside.type == InsideType::motor) key = "faults.ask_turns";
  if (inside.type == InsideType::load && kind.group == "signalling") key = "faults.ask_sounds";
  const bool is_grip = kind.id == "heated-grips";
  if (is_grip) key = "faults.ask_warm";
  const std::string name = is_grip && !inside.name.empty() ? inside.name : name_in_sentence(element(probe.what));
  return words_(key, {{"part", name}});
}

std::string FaultWords::ask_alternating(const Probe& probe) const {
  const Part& part = build_.part(probe.what.part);
  const Inside& charger = inside_of(build_, probe.what);
  std::vector<std::string> marks;
  for (const int index : charger.fed_by) {
    const int terminal = charger.nodes[static_cast<std::size_t>(index)].terminal;
    if (terminal >= 0) marks.push_back(build_.kind_of(part).terminals[static_cast<std::size_t>(terminal)].id);
  }
  return words_("faults.ask_alternating", {{"part", part.label}, {"list", join(marks, ", ")}});
}

std::string FaultWords::ask_of(const Probe& probe) const {
  switch (probe.type) {
    case ProbeType::volts:
      return words_("faults.ask_volts", {{"place", place(probe.at)}});
    case ProbeType::ohms:
      return ask_ohms(probe);
    case ProbeType::short_to_earth:
      return ask_short(probe);
    case ProbeType::alternating:
      return ask_alternating(probe);
    case ProbeType::new_fuse:
      return words_("faults.ask_new_fuse", {{"fuse", fuse_name(build_, probe.what)}});
    case ProbeType::watch:
      break;
  }
  return ask_watch(probe);
}

/// In which situation the box before leaves the machine.
SituationId FaultWords::set_before(const FaultChart& chart, const std::vector<ChartBox>& boxes, std::size_t box) const {
  const SituationId head = chart.diagnosis.symptom.situation;
  const int parent = boxes[box].parent;
  if (parent < 0) return head;
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(boxes[static_cast<std::size_t>(parent)].probe)];
  return probe.type == ProbeType::watch ? probe.situation : head;
}

/// What the box before took out goes back; a blown fuse does not.
std::string FaultWords::put_back(const FaultChart& chart, const std::vector<ChartBox>& boxes, std::size_t box) const {
  const int parent = boxes[box].parent;
  if (parent < 0) return {};
  const ChartBox& before = boxes[static_cast<std::size_t>(parent)];
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(before.probe)];
  const bool is_open = std::any_of(before.exits.begin(), before.exits.end(), [&](const ChartExit& exit) {
    return exit.next == static_cast<int>(box) && probe.outcomes[static_cast<std::size_t>(exit.outcome)].is_open;
  });
  std::string back;
  if (probe.type == ProbeType::ohms) {
    const InsideType type = inside_of(build_, probe.what).type;
    if (type == InsideType::fuse) back = words_(is_open ? "faults.back_fuse_out" : "faults.back_fuse");
    if (type == InsideType::lamp) back = words_("faults.back_bulb");
    if (back.empty()) back = words_("faults.back_plug");
  }
  if (probe.type == ProbeType::alternating) back = words_("faults.back_plug");
  if (probe.type == ProbeType::short_to_earth) {
    if (!probe.taken_out.empty()) back = words_("faults.back_bulb") + " ";
    back += words_("faults.back_battery");
  }
  const Probe& now = chart.diagnosis.probes[static_cast<std::size_t>(boxes[box].probe)];
  const bool needs_power = now.type == ProbeType::volts || now.type == ProbeType::watch;
  const bool is_here = now.situation == chart.diagnosis.symptom.situation;
  if (!back.empty() && needs_power && is_here) back += " " + words_("faults.set_again");
  return back.empty() ? back : back + " ";
}

/// Which switches move from one situation to the other; those that go back to rest are named too. All settings where
/// that is shorter.
std::string FaultWords::changed_settings(SituationId from, SituationId to) const {
  const Situation &before = situations_[from.at()], &after = situations_[to.at()];
  const auto position_in = [&](const Situation& situation, InsideRef actuator) {
    for (const Setting& setting : situation.settings)
      if (setting.actuator == actuator) return setting.position;
    return inside_of(build_, actuator).rest_position;
  };
  std::set<InsideRef> moved;
  for (const Situation* situation : {&after, &before})
    for (const Setting& setting : situation->settings)
      if (position_in(before, setting.actuator) != position_in(after, setting.actuator)) moved.insert(setting.actuator);
  std::vector<std::string> changes;
  for (const InsideRef actuator : moved)
    changes.push_back(setting_text(build_, {actuator, position_in(after, actuator), {}}));
  if (before.engine != after.engine) changes.push_back(engine_text(after.engine));
  const std::string all = settings(to), changed = words_("faults.change", {{"settings", join(changes, "; ")}});
  return all.size() < changed.size() ? all : changed;
}

/// Zone, and the sheet of the terminal map that shows the terminal.
Paragraph FaultWords::where(const Probe& probe) const {
  const TextStyle style = small_print;
  const bool is_at_terminal = probe.at.is_set();
  const ZoneId zone = is_at_terminal ? zone_of(build_, probe.at) : build_.part(probe.what.part).zone;
  std::vector<Span> spans{{zone_name(build_.zone(zone)), style, look::grey, {}}};
  const Terminal* terminal = is_at_terminal ? &build_.terminal(probe.at) : nullptr;
  if (terminal == nullptr || terminal->owner == OwnerType::part) {
    const Part& part = terminal == nullptr ? build_.part(probe.what.part)
                                           : build_.parts[static_cast<std::size_t>(terminal->owner_index)];
    // The terminal map leaves out what the fitter does not touch; a diagram shows it all the same.
    const std::string page = is_worked_at(build_, part) ? "terminals" : "diagram";
    const LinkTarget target{context_.id_prefix + page, part_anchor(part)};
    spans.push_back({", ", style, look::grey, {}});
    spans.push_back(
        {words_("faults.on_sheet", {{"sheet", sheet_mark(target.sheet, target.anchor)}}), style, look::accent, target});
  }
  return paragraph(std::move(spans));
}

std::vector<Paragraph> FaultWords::question(const FaultChart& chart, const std::vector<ChartBox>& boxes,
                                            std::size_t box) const {
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(boxes[box].probe)];
  const SituationId before = set_before(chart, boxes, box), head = chart.diagnosis.symptom.situation;
  const bool is_set = probe.type == ProbeType::watch || probe.type == ProbeType::volts;
  const SituationId now = is_set ? probe.situation : head;
  const bool moves = is_set && now != before;
  std::string ask = put_back(chart, boxes, box);
  if (moves && now != head) ask += words_("faults.ask_in", {{"situation", situation(now)}}) + " ";
  ask += ask_of(probe);
  std::vector<Paragraph> lines{paragraph(marked_spans(ask, look::text, look::text_bold))};
  if (moves) {
    lines.push_back(paragraph({{changed_settings(before, now), small_print, look::grey, {}}}));
    if (is_in_gear(build_, situations_[now.at()]))
      lines.push_back(paragraph(marked_spans(words_("faults.in_gear"), small_print, small_bold)));
    if (situations_[now.at()].engine == EngineState::running)
      lines.push_back(paragraph(marked_spans(words_("faults.engine_running"), small_print, small_bold)));
  }
  if (probe.type == ProbeType::alternating)
    lines.push_back(paragraph(marked_spans(words_("faults.engine_running"), small_print, small_bold)));
  if (probe.type != ProbeType::watch) lines.push_back(where(probe));
  return lines;
}

std::string FaultWords::reading(const FaultChart& chart, const ChartBox& box, const ChartExit& exit) const {
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(box.probe)];
  const ProbeOutcome& outcome = probe.outcomes[static_cast<std::size_t>(exit.outcome)];
  switch (probe.type) {
    case ProbeType::volts: {
      if (outcome.is_astray) return words_("faults.not_near_zero");
      const double least = std::max(outcome.least, outcome.most > 0 ? 0.0 : outcome.least);
      return words_("faults.volts", {{"least", fixed(least, 1)}, {"most", fixed(outcome.most, 1)}});
    }
    case ProbeType::alternating:
      return words_(outcome.is_open ? "faults.not_alike" : "faults.alike");
    case ProbeType::new_fuse:
      return words_(outcome.is_open ? "faults.blows" : "faults.holds");
    case ProbeType::short_to_earth: {
      if (!outcome.is_open) return words_("faults.shorted");
      // Below the sound reading by a third, as parts vary; a short reads under 1 ohm.
      const double ohms = std::floor(probe.sound_ohms.number() / 1.5);
      return std::isinf(ohms) ? words_("faults.not_shorted_open")
                              : words_("faults.not_shorted", {{"ohms", fixed(ohms, 0)}});
    }
    case ProbeType::ohms: {
      const Inside& inside = inside_of(build_, probe.what);
      const bool beeps = inside.type == InsideType::fuse || inside.type == InsideType::lamp;
      if (outcome.is_open) return words_(beeps ? "faults.no_beep" : "faults.no_ohms");
      if (beeps) return words_("faults.beep");
      if (inside.resistance && inside.resistance->number() < 1) return words_("faults.shorted");
      return inside.resistance ? words_("faults.ohms", {{"ohms", shortest(inside.resistance->number(), 1)}})
                               : words_("faults.some_ohms");
    }
    case ProbeType::watch:
      break;
  }
  const bool is_lamp = inside_of(build_, probe.what).type == InsideType::lamp;
  switch (outcome.state) {
    case Expected::on:
      return words_(is_lamp ? "faults.it_lights" : "faults.it_works");
    case Expected::off:
      return words_(is_lamp ? "faults.it_is_dark" : "faults.it_rests");
    case Expected::dim:
      return words_("faults.it_is_dim");
    case Expected::flashing:
      return words_("faults.it_flashes");
    case Expected::charging:
      return words_("faults.it_works");
  }
  return {};
}

}  // namespace loomfolio
