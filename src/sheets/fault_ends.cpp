// SPDX-License-Identifier: MIT
// What stands at the end of a fault chart's arrow: the things to mend, and what to do next where several are left.
#include <algorithm>
#include <cctype>
#include <map>
#include <set>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/assembly_plan.h"
#include "sheets/fault_pages.h"
#include "sheets/fault_text.h"
#include "sheets/fault_words.h"
#include "sheets/names.h"
#include "sheets/reference.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_looked_through = 4;  // more things at one end are worth one question more

std::string_view mend_key(FaultType type) {
  switch (type) {
    case FaultType::contact_open:
      return "faults.mend_contact";
    case FaultType::contact_stuck:
      return "faults.mend_contact_stuck";
    case FaultType::switch_open:
      return "faults.mend_contact";
    case FaultType::switch_stuck:
      return "faults.mend_contact_stuck";
    case FaultType::element_dead:
      return "faults.mend_element";
    case FaultType::output_dead:
      return "faults.mend_output";
    case FaultType::charger_dead:
      return "faults.mend_charger";
    case FaultType::battery_flat:
      return "faults.mend_battery";
    case FaultType::diode_reversed:
      return "faults.mend_reversed";
    case FaultType::fuse_blown:
      return "faults.mend_fuse";
    default:
      return "faults.mend_earth";
  }
}

std::string_view wire_key(FaultType type) {
  if (type == FaultType::wire_to_earth) return "faults.mend_chafed_wire";
  return type == FaultType::wire_to_live ? "faults.mend_crossed_wire" : "faults.mend_wire";
}

}  // namespace

/// The sentence for that remedy, and what stands in it for {part}.
FaultWords::Remedy FaultWords::remedy_for(const Mend& mend) const {
  if (mend.earth.is_set()) return {"faults.mend_earth", build_.earths[mend.earth.at()].id};
  if (mend.body.is_set()) return {"faults.mend_body", name_in_sentence(words_, owner_name(build_, mend.body, words_))};
  const Inside& inside = inside_of(build_, mend.inside);
  if (mend.type == FaultType::fuse_blown)
    return {"faults.mend_fuse", name_in_sentence(words_, fuse_name(build_, mend.inside))};
  if (mend.type == FaultType::switch_open || mend.type == FaultType::switch_stuck)
    return {mend_key(mend.type), name_in_sentence(words_, switch_name(build_, mend.inside))};
  std::string_view key = mend_key(mend.type);
  if (mend.type == FaultType::element_dead) {
    if (inside.type == InsideType::lamp) key = "faults.mend_bulb";
    if (inside.type == InsideType::coil) key = "faults.mend_coil";
    if (inside.is_winding)
      return {"faults.mend_winding", name_in_sentence(words_, build_.part(mend.inside.part).label)};
  }
  return {key, called(mend.inside)};
}

/// By id as the wires stand in the build; three or more whose numbers follow each other as a range.
std::string FaultWords::list_wires(const std::vector<WireId>& wires) const {
  std::vector<WireId> sorted = wires;
  std::sort(sorted.begin(), sorted.end());
  const auto number = [&](WireId wire) -> long {
    const std::string& id = build_.wire(wire).id;
    const bool is_number = !id.empty() && id.size() < 9 && std::all_of(id.begin(), id.end(), [](char c) {
      return std::isdigit(static_cast<unsigned char>(c)) != 0;
    });
    return is_number ? std::stol(id) : -1;
  };
  std::vector<std::string> said;
  for (std::size_t i = 0; i < sorted.size();) {
    std::size_t last = i;
    while (last + 1 < sorted.size() && number(sorted[last]) >= 0 &&
           number(sorted[last + 1]) == number(sorted[last]) + 1)
      ++last;
    const std::string &first_id = build_.wire(sorted[i]).id, &last_id = build_.wire(sorted[last]).id;
    if (last - i >= 2) {
      said.push_back(words_("faults.range", {{"first", first_id}, {"last", last_id}}));
      i = last + 1;
    } else {
      said.push_back(first_id);
      ++i;
    }
  }
  return join(said, ", ");
}

std::string FaultWords::list_mends(const std::vector<int>& suspects) const {
  struct Group {
    std::string_view key;
    std::vector<std::string> parts;
    std::vector<WireId> wires;
  };
  std::vector<Group> groups;  // in the order of their likeliest
  std::set<Mend> seen;
  for (const int s : suspects) {
    const Mend mend = mend_for(plan_.faults[static_cast<std::size_t>(s)]);
    if (!seen.insert(mend).second) continue;
    const Remedy remedy = mend.wire.is_set() ? Remedy{wire_key(mend.type), {}} : remedy_for(mend);
    auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return g.key == remedy.key; });
    if (group == groups.end()) group = groups.insert(groups.end(), {remedy.key, {}, {}});
    if (mend.wire.is_set())
      group->wires.push_back(mend.wire);
    else if (std::find(group->parts.begin(), group->parts.end(), remedy.part) == group->parts.end())
      group->parts.push_back(remedy.part);
  }
  const std::string blown = fault_page_number(blown_, words_);
  std::vector<std::string> said;
  for (const Group& group : groups) {
    const std::string parts = join(group.parts, ", ");
    const std::string key = std::string(group.key) + (group.wires.size() > 1 ? "s" : "");
    said.push_back(
        words_(key, {{"part", parts}, {"earth", parts}, {"chart", blown}, {"list", list_wires(group.wires)}}));
  }
  return join(said, "; ");
}

/// What to do with wires that stand together: halve them at a connector that they share, else one after the other.
std::vector<Span> FaultWords::next_action(const std::vector<Mend>& mends) const {
  std::size_t broken = 0, chafed = 0;
  std::map<std::int32_t, std::size_t> connectors;
  for (const Mend& mend : mends) {
    if (!mend.wire.is_set()) continue;
    ++(mend.type == FaultType::wire_to_earth || mend.type == FaultType::wire_to_live ? chafed : broken);
    std::set<std::int32_t> at;
    for (const TerminalId end : {build_.wire(mend.wire).from, build_.wire(mend.wire).to})
      if (const Terminal& terminal = build_.terminal(end);
          terminal.owner == OwnerType::part &&
          build_.kind_of(build_.parts[static_cast<std::size_t>(terminal.owner_index)]).is_connector)
        at.insert(terminal.owner_index);
    for (const std::int32_t part : at) ++connectors[part];
  }
  if (chafed > 0 && broken == 0) return {{words_("faults.find_chafed"), fault_print, look::ink, {}}};
  if (broken == 0) return {};
  const auto most = std::max_element(connectors.begin(), connectors.end(),
                                     [](const auto& a, const auto& b) { return a.second < b.second; });
  if (most == connectors.end() || most->second < 2) return {{words_("faults.beep_wires"), fault_print, look::ink, {}}};
  const Part& part = build_.parts[static_cast<std::size_t>(most->first)];
  const LinkTarget target{context_.id_prefix + (is_worked_at(build_, part) ? "terminals" : "diagram"),
                          part_anchor(part)};
  std::vector<Span> spans = marked_spans(words_("faults.pull_apart", {{"part", part.label}}), fault_print, fault_bold);
  spans.push_back({words_("faults.on_sheet", {{"sheet", sheet_mark(target.sheet, target.anchor)}}), fault_print,
                   look::accent, target});
  return spans;
}

/// One question more without a box: where the meter stands on volts already, the next place and what each reading there
/// means.
std::vector<Paragraph> FaultWords::next_question(const FaultChart& chart, const ChartBox& asked,
                                                 const ChartExit& exit) const {
  if (asked.probe < 0 || exit.node < 0) return {};
  const Diagnosis& d = chart.diagnosis;
  const DiagnosisNode& node = d.nodes[static_cast<std::size_t>(exit.node)];
  const Probe& probe = d.probes[static_cast<std::size_t>(node.probe)];
  const auto leaves_all_set = [&](const Probe& one) {
    return one.type == ProbeType::volts || (one.type == ProbeType::watch && one.situation == d.symptom.situation);
  };
  if (!leaves_all_set(d.probes[static_cast<std::size_t>(asked.probe)]) || !leaves_all_set(probe)) return {};
  std::vector<Paragraph> lines{fault_paragraph(marked_spans(ask_of(probe), fault_print, fault_bold))};
  for (const auto& [outcome, child] : node.branches) {
    std::vector<int> suspects;
    for (const int s : d.nodes[static_cast<std::size_t>(child)].suspects)
      suspects.push_back(d.suspects[static_cast<std::size_t>(s)]);
    const std::string reading = reading_of(probe, probe.outcomes[static_cast<std::size_t>(outcome)]);
    lines.push_back(
        fault_paragraph({{reading + ": ", fault_bold, look::ink, {}}, {list_mends(suspects), fault_print, look::ink, {}}}));
  }
  return lines;
}

std::vector<Paragraph> FaultWords::end(const FaultChart& chart, const ChartBox& asked, const ChartExit& exit) const {
  std::set<Mend> seen;
  std::vector<Mend> mends;
  for (const int s : exit.suspects)
    if (const Mend mend = mend_for(plan_.faults[static_cast<std::size_t>(s)]); seen.insert(mend).second)
      mends.push_back(mend);
  const char* key = mends.size() < 2 ? "faults.mend" : exit.is_cut ? "faults.mend_in_order" : "faults.mend_inseparable";
  const auto is_asked = [&](ProbeType type) {
    return asked.probe >= 0 && chart.diagnosis.probes[static_cast<std::size_t>(asked.probe)].type == type;
  };
  const bool is_new_fuse = is_asked(ProbeType::new_fuse);
  if (mends.size() == 1 && mends.front().type == FaultType::fuse_blown && is_asked(ProbeType::short_to_earth))
    return {fault_paragraph({{words_("faults.mend_fuse_free", {{"part", fuse_name(build_, mends.front().inside)}}),
                        fault_print,
                        look::ink,
                        {}}})};
  if (mends.size() == 1 && mends.front().type == FaultType::battery_flat)
    return {fault_paragraph({{words_("faults.charge_first"), fault_bold, look::ink, {}}})};
  if (mends.size() == 1 && mends.front().type == FaultType::fuse_blown && is_new_fuse)
    return {fault_paragraph({{words_("faults.mend_fuse_tired", {{"part", fuse_name(build_, mends.front().inside)}}),
                        fault_print,
                        look::ink,
                        {}}})};
  std::vector<Paragraph> lines;
  if (mends.size() > most_looked_through) lines = next_question(chart, asked, exit);
  if (lines.empty())
    lines.push_back(fault_paragraph(
        {{words_(key) + " ", fault_bold, look::ink, {}}, {list_mends(exit.suspects), fault_print, look::ink, {}}}));
  if (mends.size() > 1)
    if (std::vector<Span> action = next_action(mends); !action.empty()) lines.push_back(fault_paragraph(std::move(action)));
  return lines;
}

std::string FaultWords::not_asked(const FaultChart& chart) const {
  const char* group = chart.kind == Ailing::ignition ? "ignition" : chart.kind == Ailing::charging ? "charging" : "";
  std::set<PartId> asked;
  for (const int s : chart.diagnosis.suspects) {
    const Fault& fault = plan_.faults[static_cast<std::size_t>(s)];
    if (fault.inside.part.is_set()) asked.insert(fault.inside.part);
  }
  std::vector<std::string> names;
  for (std::size_t p = 0; p < build_.parts.size(); ++p)
    if (build_.kind_of(build_.parts[p]).group == group && !asked.contains(PartId{static_cast<std::int32_t>(p)}))
      names.push_back(build_.parts[p].label);
  return names.empty() ? std::string() : words_("faults.not_asked", {{"list", join(names, ", ")}});
}

}  // namespace loomfolio
