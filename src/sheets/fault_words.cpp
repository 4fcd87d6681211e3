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
#include "sheets/fault_text.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/setting_text.h"
#include "solve/charging_path.h"

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
  const InsideType type = inside_of(build, symptom.what).type;
  const bool is_lamp = type == InsideType::lamp;
  if (type == InsideType::motor && symptom.seen == Expected::dim && build.kind_of(build.part(symptom.what.part)).group == "starting")
    return "faults.turns_slowly";
  if (inside_of(build, symptom.what).type == InsideType::coil) return "faults.pulls_in";
  if (build.kind_of(build.part(symptom.what.part)).group == "ignition") return "faults.runs_on";
  if (symptom.seen == Expected::dim) return symptom.expected == Expected::off ? "faults.glows" : "faults.weak";
  if (symptom.expected == Expected::flashing) return "faults.steady";
  if (symptom.expected == Expected::dim) return "faults.too_strong";
  return is_lamp ? "faults.lights_always" : "faults.works_always";
}

}  // namespace

/// 'Turn signal, front left' within a sentence: 'turn signal (front left)'. Abbreviations keep their capitals.
std::string name_in_sentence(const Words& words, std::string name) {
  const bool keeps_capital = words.language() == "de";  // as every noun there
  const bool is_word = !keeps_capital && name.size() > 1 && std::islower(static_cast<unsigned char>(name[1])) != 0;
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
  if (!is_tell_tale(what)) return name_in_sentence(words_, element(what));
  return words_("faults.no_light_part",
                {{"name", inside_of(build_, what).name}, {"part", name_in_sentence(words_, build_.part(what.part).label)}});
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

std::string FaultWords::other_way(const FaultChart& chart, const OtherWay& way) const {
  std::vector<std::string> moved, switches;
  for (const Setting& setting : way.settings) moved.push_back(setting_text(build_, setting));
  for (const InsideRef ref : way.switches) switches.push_back(name_in_sentence(words_, switch_name(build_, ref)));
  std::vector<std::string> mends;
  if (!switches.empty()) mends.push_back(words_("faults.mend_contact", {{"part", join(switches, ", ")}}));
  if (!way.suspects.empty()) mends.push_back(list_mends(way.suspects));
  const std::string list = join(mends, "; ");
  const std::vector<std::pair<std::string, std::string>> values{{"settings", join(moved, "; ")}, {"list", list}};
  if (way.works.size() == chart.symptoms.size()) return words_("faults.other_way", values);
  std::vector<NamedElement> named;
  for (const InsideRef what : way.works) named.push_back({what, {}});
  auto with_names = values;
  with_names.emplace_back("parts", list_elements(build_, named));
  return words_("faults.other_way_for", with_names);
}

std::string FaultWords::place(TerminalId at) const {
  const std::string mark = terminal_mark(build_, at), owner = owner_name(build_, at, words_);
  if (mark.empty()) return owner;
  const KindTerminal* terminal = kind_terminal_of(build_, at);
  if (terminal != nullptr && terminal->form == TerminalForm::body) return words_("faults.body_of", {{"part", owner}});
  // 'Fuse out' would read as if it were taken out.
  const bool reads_as_word = mark.size() > 1 && std::islower(static_cast<unsigned char>(mark[0])) != 0;
  return reads_as_word ? words_("faults.terminal_of", {{"mark", mark}, {"part", owner}}) : owner + "\u00a0" + mark;
}

std::string FaultWords::ask_ohms(const Probe& probe) const {
  const Inside& inside = inside_of(build_, probe.what);
  if (inside.type == InsideType::fuse) return words_("faults.ask_fuse", {{"fuse", fuse_name(build_, probe.what)}});
  if (inside.type == InsideType::lamp) return words_("faults.ask_bulb", {{"part", element(probe.what)}});
  if (inside.type == InsideType::diode) return ask_diode(probe);
  if (inside.is_winding) return ask_windings(probe);
  std::vector<std::string> marks;
  for (const Inside::Node& node : inside.nodes)
    if (node.terminal >= 0)
      marks.push_back(
          build_.kind_of(build_.part(probe.what.part)).terminals[static_cast<std::size_t>(node.terminal)].id);
  if (marks.size() < 2) return words_("faults.ask_element_alone", {{"part", element(probe.what)}});
  return words_("faults.ask_element", {{"part", element(probe.what)}, {"first", marks[0]}, {"second", marks[1]}});
}

/// Wires on these terminals of a part, given by their index in its kind.
std::string FaultWords::wires_on(PartId id, const std::vector<int>& terminals) const {
  const auto at = wires_at_terminals(build_);
  std::vector<WireId> wires;
  for (const int terminal : terminals)
    if (terminal >= 0)
      for (const WireId wire : at[build_.part(id).terminals[static_cast<std::size_t>(terminal)].at()])
        wires.push_back(wire);
  return list_wires(wires);
}

/// As it lies in the loom, so that it shows which way round it was fitted: with one wire off.
std::string FaultWords::ask_diode(const Probe& probe) const {
  const Inside& diode = inside_of(build_, probe.what);
  const auto marked = [&](std::size_t node) {
    const int terminal = diode.nodes[node].terminal;
    return terminal < 0 ? std::string() : wires_on(probe.what.part, {terminal});
  };
  return words_("faults.ask_diode",
                {{"part", element(probe.what)}, {"first", marked(0)}, {"second", marked(1)}});
}

/// At the nearest place that can be taken apart: a connector, else the generator's own terminals.
std::string FaultWords::ask_windings(const Probe& probe) const {
  const Part& part = build_.part(probe.what.part);
  const auto at = wires_at_terminals(build_);
  std::vector<int> terminals;
  std::vector<std::string> marks;
  std::string connector;
  for (const Inside& inside : part.insides) {
    if (!inside.is_winding) continue;
    for (const Inside::Node& node : inside.nodes) {
      if (node.terminal < 0 || std::find(terminals.begin(), terminals.end(), node.terminal) != terminals.end()) continue;
      terminals.push_back(node.terminal);
      marks.push_back(build_.kind_of(part).terminals[static_cast<std::size_t>(node.terminal)].id);
      const TerminalId own = part.terminals[static_cast<std::size_t>(node.terminal)];
      for (const WireId id : at[own.at()]) {
        const Wire& wire = build_.wire(id);
        const Terminal& other = build_.terminal(wire.from == own ? wire.to : wire.from);
        if (other.owner != OwnerType::part) continue;
        const Part& end = build_.parts[static_cast<std::size_t>(other.owner_index)];
        if (build_.kind_of(end).is_connector) connector = end.label;
      }
    }
  }
  const std::string open = connector.empty()
                               ? words_("faults.pull_wires", {{"part", part.label},
                                                              {"wires", wires_on(probe.what.part, terminals)}})
                               : words_("faults.part_connector", {{"part", connector}, {"other", part.label}});
  return open + " " + words_("faults.ask_windings", {{"list", join(marks, ", ")}});
}

std::string FaultWords::ask_short(const Probe& probe) const {
  std::string ask;
  if (!probe.taken_out.empty()) {
    std::vector<NamedElement> bulbs;
    for (const InsideRef bulb : probe.taken_out) bulbs.push_back({bulb, {}});
    ask = words_("faults.take_out", {{"list", list_elements(build_, bulbs)}}) + " ";
  }
  const char* key = probe.standing == Standing::all_at_rest ? "faults.ask_short" : "faults.ask_short_set";
  auto values = pole_names(build_, words_);
  values.emplace_back("place", place(probe.at));
  values.emplace_back("fuse", fuse_name(build_, probe.what));
  return ask + words_(key, values);
}

std::string FaultWords::ask_watch(const Probe& probe) const {
  const Inside& inside = inside_of(build_, probe.what);
  const Kind& kind = build_.kind_of(build_.part(probe.what.part));
  if (is_tell_tale(probe.what))
    return words_("faults.ask_tell_tale",
                  {{"name", inside.name}, {"part", name_in_sentence(words_, build_.part(probe.what.part).label)}});
  const char* key = "faults.ask_works";
  if (inside.type == InsideType::lamp) key = "faults.ask_lamp";
  if (inside.type == InsideType::motor) key = "faults.ask_turns";
  if (inside.type == InsideType::load && kind.group == "signalling") key = "faults.ask_sounds";
  const bool is_grip = kind.id == "heated-grips";
  if (is_grip) key = "faults.ask_warm";
  const std::string name = is_grip && !inside.name.empty() ? inside.name : name_in_sentence(words_, element(probe.what));
  return words_(key, {{"part", name}});
}

std::vector<std::string> FaultWords::charging_fuses(const Probe& probe) const {
  const Solution& solution = plan_.bench.solutions[probe.situation.at()];
  std::vector<std::string> fuses;
  for (const InsideRef what : find_charging_path(plan_.bench.build, solution, probe.what).insides)
    if (inside_of(build_, what).type == InsideType::fuse) fuses.push_back(fuse_name(build_, what));
  return fuses;
}

/// Marks in the plug of these terminals that the battery holds live.
std::string FaultWords::live_beside(const Probe& probe, const std::vector<int>& terminals) const {
  constexpr double live = 1;  // V
  const Part& part = build_.part(probe.what.part);
  const std::vector<KindTerminal>& all = build_.kind_of(part).terminals;
  const Solution& solution = plan_.bench.solutions[probe.situation.at()];
  std::vector<std::string> marks;
  for (std::size_t t = 0; t < all.size(); ++t) {
    const auto is_asked = [&](int asked) { return asked == static_cast<int>(t); };
    const auto is_in_plug = [&](int asked) { return asked >= 0 && all[static_cast<std::size_t>(asked)].face == all[t].face; };
    if (std::any_of(terminals.begin(), terminals.end(), is_asked) || std::none_of(terminals.begin(), terminals.end(), is_in_plug))
      continue;
    if (std::abs(solution.terminal_volts[part.terminals[t].at()].number()) > live) marks.push_back(all[t].id);
  }
  return join(marks, ", ");
}

std::string FaultWords::ask_alternating(const Probe& probe) const {
  const Part& part = build_.part(probe.what.part);
  const Inside& charger = inside_of(build_, probe.what);
  std::vector<int> terminals;
  bool is_plug = false;
  for (const int index : charger.fed_by) {
    terminals.push_back(charger.nodes[static_cast<std::size_t>(index)].terminal);
    if (terminals.back() < 0) continue;
    const TerminalForm form = build_.kind_of(part).terminals[static_cast<std::size_t>(terminals.back())].form;
    is_plug = is_plug || form == TerminalForm::cavity || form == TerminalForm::sealed;
  }
  const std::vector<std::string> fuses = charging_fuses(probe);
  std::string ask;
  if (!fuses.empty()) ask = words_("faults.fuse_is_out", {{"fuse", join(fuses, ", ")}}) + " ";
  ask += words_(is_plug ? "faults.unplug" : "faults.pull_wires",
                {{"part", part.label}, {"wires", wires_on(probe.what.part, terminals)}});
  if (!fuses.empty()) ask += " " + words_("faults.fuse_in_again");  // without it the engine may not run
  if (const std::string live = is_plug ? live_beside(probe, terminals) : std::string(); !live.empty())
    ask += " " + words_("faults.live_beside", {{"list", live}});
  return ask + " " + words_(charger.fed_by.size() > 2 ? "faults.ask_alternating" : "faults.ask_alternating_pair");
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
  const Probe& now = chart.diagnosis.probes[static_cast<std::size_t>(boxes[box].probe)];
  std::string back;
  if (probe.type == ProbeType::alternating && is_open) return words_("faults.engine_off_first") + " ";
  if (now.type == ProbeType::alternating && probe.type == ProbeType::ohms &&
      inside_of(build_, probe.what).type == InsideType::fuse)
    return {};
  if (probe.type == ProbeType::ohms) {
    const InsideType type = inside_of(build_, probe.what).type;
    if (type == InsideType::fuse) back = words_(is_open ? "faults.back_fuse_out" : "faults.back_fuse");
    if (type == InsideType::lamp) back = words_("faults.back_bulb");
    if (back.empty()) back = words_("faults.back_plug");
  }
  if (probe.type == ProbeType::alternating)
    back = words_(charging_fuses(probe).empty() ? "faults.back_charger" : "faults.back_charger_fused");
  if (probe.type == ProbeType::short_to_earth) {
    if (!probe.taken_out.empty()) back = words_("faults.back_bulb") + " ";
    back += words_("faults.back_battery");
  }
  const bool needs_power = now.type == ProbeType::volts || now.type == ProbeType::watch;
  const bool is_here = now.situation == chart.diagnosis.symptom.situation;
  if (!back.empty() && needs_power && is_here) back += " " + words_("faults.set_again");
  return back.empty() ? back : back + " ";
}

/// Which switches move from one situation to the other; those that go back to rest are named too. All settings where
/// that is shorter.
std::string FaultWords::changed_settings(SituationId from, SituationId to) const {
  const Situation &before = situations_[from.at()], &after = situations_[to.at()];
  std::set<InsideRef> moved;
  for (const Situation* situation : {&after, &before})
    for (const Setting& setting : situation->settings)
      if (position_in(build_, before, setting.actuator) != position_in(build_, after, setting.actuator)) moved.insert(setting.actuator);
  std::vector<std::string> changes;
  for (const InsideRef actuator : moved)
    changes.push_back(setting_text(build_, {actuator, position_in(build_, after, actuator), {}}));
  if (before.engine != after.engine) changes.push_back(engine_text(after.engine));
  const std::string all = settings(to), changed = words_("faults.change", {{"settings", join(changes, "; ")}});
  // The list of a situation leaves out what is at rest: a switch that goes back there is told.
  const bool tells_all = std::all_of(moved.begin(), moved.end(), [&](InsideRef actuator) {
    return std::any_of(after.settings.begin(), after.settings.end(), [&](const Setting& setting) { return setting.actuator == actuator; });
  });
  return tells_all && all.size() < changed.size() ? all : changed;
}

/// Zone, and the sheet of the terminal map that shows the terminal.
Paragraph FaultWords::where(const Probe& probe) const {
  const TextStyle style = fault_print;
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
  return fault_paragraph(std::move(spans));
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
  std::vector<Paragraph> lines{fault_paragraph(marked_spans(ask, look::text, look::text_bold))};
  if (moves) {
    lines.push_back(fault_paragraph({{changed_settings(before, now), fault_print, look::grey, {}}}));
    const bool cranks = situations_[now.at()].engine == EngineState::cranking;
    if (cranks && situations_[before.at()].engine != EngineState::cranking && situations_[head.at()].engine != EngineState::cranking)
      lines.push_back(fault_paragraph(marked_spans(words_("faults.keep_from_firing"), fault_print, fault_bold)));
    if (is_in_gear(build_, situations_[now.at()]))
      lines.push_back(fault_paragraph(marked_spans(words_("faults.in_gear"), fault_print, fault_bold)));
    if (situations_[now.at()].engine == EngineState::running)
      lines.push_back(fault_paragraph(marked_spans(words_("faults.engine_running"), fault_print, fault_bold)));
  }
  if (probe.type == ProbeType::alternating)
    lines.push_back(fault_paragraph(marked_spans(words_("faults.engine_running"), fault_print, fault_bold)));
  if (probe.type != ProbeType::watch) lines.push_back(where(probe));
  return lines;
}

}  // namespace loomfolio
