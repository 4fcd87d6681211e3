// SPDX-License-Identifier: MIT
#include "sheets/fault_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>
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

/// 'Turn signal, front left' within a sentence: 'turn signal (front left)'. Abbreviations keep their capitals.
std::string within_sentence(std::string name) {
  const bool is_word = name.size() > 1 && std::islower(static_cast<unsigned char>(name[1])) != 0;
  if (is_word) name[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
  const std::size_t comma = name.find(", ");
  if (comma == std::string::npos) return name;
  return name.substr(0, comma) + " (" + name.substr(comma + 2) + ")";
}

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

std::string_view mend_key(FaultType type) {
  switch (type) {
    case FaultType::contact_open:
      return "faults.mend_contact";
    case FaultType::contact_stuck:
      return "faults.mend_contact_stuck";
    case FaultType::switch_open:
      return "faults.mend_switch";
    case FaultType::switch_stuck:
      return "faults.mend_switch_stuck";
    case FaultType::element_dead:
      return "faults.mend_element";
    case FaultType::output_dead:
      return "faults.mend_output";
    case FaultType::charger_dead:
      return "faults.mend_charger";
    case FaultType::battery_flat:
      return "faults.mend_battery";
    case FaultType::fuse_blown:
      return "faults.mend_fuse";
    default:
      return "faults.mend_earth";
  }
}

Paragraph paragraph(std::vector<Span> spans) { return {std::move(spans), Align::left, "P"}; }

}  // namespace

FaultWords::FaultWords(const SheetContext& context, const FaultPlan& plan)
    : context_(context),
      build_(context.build()),
      words_(context.words()),
      plan_(plan),
      poles_(pole_names(context.build(), context.words())) {}

std::string FaultWords::element(InsideRef what) const {
  const Inside& inside = inside_of(build_, what);
  const std::string& label = build_.part(what.part).label;
  return inside.name.empty() ? label : label + ", " + inside.name;
}

std::string FaultWords::symptom(const Symptom& symptom) const {
  const std::string_view key = symptom.seen == Expected::off ? failing_key(build_, symptom) : odd_key(build_, symptom);
  const std::string name = within_sentence(element(symptom.what));
  return words_(key, {{"part", name}});
}

std::string FaultWords::settings(SituationId id) const {
  const Situation& situation = build_.situations[id.at()];
  std::vector<std::string> settings;
  for (const Setting& setting : situation.settings) settings.push_back(setting_text(build_, setting));
  if (settings.empty()) settings.push_back(words_("situations.all_at_rest"));
  settings.push_back(words_(engine_key(situation.engine)));
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

std::string FaultWords::ask_of(const FaultChart& chart, const Probe& probe) const {
  switch (probe.type) {
    case ProbeType::volts:
      return words_("faults.ask_volts", {{"place", place(probe.at)}, {"earthed", poles_.front().second}});
    case ProbeType::ohms:
      return ask_ohms(probe);
    case ProbeType::short_to_earth:
      return words_("faults.ask_short", {{"place", place(probe.at)}, {"fuse", fuse_name(build_, probe.what)}});
    case ProbeType::watch:
      break;
  }
  const bool is_lamp = inside_of(build_, probe.what).type == InsideType::lamp;
  const std::string ask = words_(is_lamp ? "faults.ask_lamp" : "faults.ask_works", {{"part", element(probe.what)}});
  if (probe.situation == chart.diagnosis.symptom.situation) return ask;
  return words_("faults.ask_in", {{"situation", situation_name(build_.situations[probe.situation.at()])}}) + " " + ask;
}

/// Which switches move from one situation to the other; those that go back to rest are named too. All settings where
/// that is shorter.
std::string FaultWords::changed_settings(SituationId from, SituationId to) const {
  const Situation &before = build_.situations[from.at()], &after = build_.situations[to.at()];
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
  if (before.engine != after.engine) changes.push_back(words_(engine_key(after.engine)));
  const std::string all = settings(to), changed = words_("faults.change", {{"settings", join(changes, "; ")}});
  return all.size() < changed.size() ? all : changed;
}

/// Zone, and the sheet of the terminal map that shows the terminal; for a look, how the switches stand.
Paragraph FaultWords::where(const FaultChart& chart, const Probe& probe) const {
  const TextStyle style = look::table;
  if (probe.type == ProbeType::watch)
    return paragraph({{changed_settings(chart.diagnosis.symptom.situation, probe.situation), style, look::grey, {}}});
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

std::vector<Paragraph> FaultWords::question(const FaultChart& chart, const ChartBox& box) const {
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(box.probe)];
  std::vector<Paragraph> lines{paragraph(marked_spans(ask_of(chart, probe), look::text, look::text_bold))};
  const bool is_here = probe.type == ProbeType::watch && probe.situation == chart.diagnosis.symptom.situation;
  if (!is_here) lines.push_back(where(chart, probe));
  return lines;
}

std::string FaultWords::reading(const FaultChart& chart, const ChartBox& box, const ChartExit& exit) const {
  const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(box.probe)];
  const ProbeOutcome& outcome = probe.outcomes[static_cast<std::size_t>(exit.outcome)];
  switch (probe.type) {
    case ProbeType::volts: {
      const double least = std::max(outcome.least, outcome.most > 0 ? 0.0 : outcome.least);
      return words_("faults.volts", {{"least", fixed(least, 1)}, {"most", fixed(outcome.most, 1)}});
    }
    case ProbeType::ohms:
    case ProbeType::short_to_earth: {
      const Inside& inside = inside_of(build_, probe.what);
      const bool is_short_way = inside.type == InsideType::fuse || inside.type == InsideType::lamp;
      const bool beeps = probe.type == ProbeType::short_to_earth || is_short_way;
      if (outcome.is_open) return words_(beeps ? "faults.no_beep" : "faults.no_ohms");
      if (beeps) return words_("faults.beep");
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

std::string FaultWords::mend_part(const Mend& mend) const {
  if (mend.earth.is_set()) return words_("faults.mend_earth", {{"earth", build_.earths[mend.earth.at()].id}});
  if (mend.body.is_set())
    return words_("faults.mend_body", {{"part", within_sentence(owner_name(build_, mend.body, words_))}});
  const Inside& inside = inside_of(build_, mend.inside);
  if (mend.type == FaultType::fuse_blown)
    return words_("faults.mend_fuse", {{"part", within_sentence(fuse_name(build_, mend.inside))}});
  if (mend.type == FaultType::switch_open || mend.type == FaultType::switch_stuck)
    return words_(mend_key(mend.type), {{"part", within_sentence(switch_name(build_, mend.inside))}});
  const bool is_lamp = mend.type == FaultType::element_dead && inside.type == InsideType::lamp;
  return words_(is_lamp ? "faults.mend_bulb" : mend_key(mend.type), {{"part", within_sentence(element(mend.inside))}});
}

std::string FaultWords::list_mends(const std::vector<int>& suspects) const {
  std::vector<std::string> said, broken, chafed;
  std::set<Mend> seen;
  std::size_t broken_at = 0, chafed_at = 0;
  for (const int s : suspects) {
    const Mend mend = mend_for(plan_.faults[static_cast<std::size_t>(s)]);
    if (!seen.insert(mend).second) continue;
    if (!mend.wire.is_set()) {
      said.push_back(mend_part(mend));
      continue;
    }
    const bool is_chafed = mend.type == FaultType::wire_to_earth;
    std::vector<std::string>& wires = is_chafed ? chafed : broken;
    if (wires.empty())
      (is_chafed ? chafed_at : broken_at) = said.size(), said.push_back({});  // stands where its likeliest does
    wires.push_back(build_.wire(mend.wire).id);
  }
  const auto say = [&](const std::vector<std::string>& wires, const std::string& key) {
    return words_(wires.size() == 1 ? key : key + "s", {{"list", join(wires, ", ")}});
  };
  if (!broken.empty()) said[broken_at] = say(broken, "faults.mend_wire");
  if (!chafed.empty()) said[chafed_at] = say(chafed, "faults.mend_chafed_wire");
  return join(said, "; ");
}

std::vector<Paragraph> FaultWords::end(const ChartExit& exit) const {
  std::set<Mend> mends;
  for (const int s : exit.suspects) mends.insert(mend_for(plan_.faults[static_cast<std::size_t>(s)]));
  const char* key = mends.size() < 2 ? "faults.mend" : exit.is_cut ? "faults.mend_in_order" : "faults.mend_inseparable";
  return {paragraph(
      {{words_(key) + " ", look::table_bold, look::ink, {}}, {list_mends(exit.suspects), look::table, look::ink, {}}})};
}

}  // namespace loomfolio
