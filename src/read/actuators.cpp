// SPDX-License-Identifier: MIT
// What a situation names: the switches that it moves, the elements that it expects something of, the situation before
// it.
#include <algorithm>
#include <set>

#include "read/assembly.h"

namespace loomfolio {
namespace {

/// The part before the dot; nullptr, and a finding, when there is none.
const Part* find_part(Assembly& assembly, const PlacedText& name, Where& declared) {
  const std::string id = name.text.substr(0, name.text.find('.'));
  const auto found = assembly.owners.find(id);
  if (found != assembly.owners.end() && found->second.type == OwnerType::part) {
    declared = found->second.where;
    return found->second.index < 0 ? nullptr : &assembly.build.parts[static_cast<std::size_t>(found->second.index)];
  }
  const auto removal = assembly.removals.find(id);
  if (removal != assembly.removals.end() && removal->second.is_found && found == assembly.owners.end()) {
    removal->second.uses.push_back({name.where, "`" + name.text + "` is still named here"});
    return nullptr;
  }
  std::vector<std::string> parts;
  for (const auto& [part, owner] : assembly.owners)
    if (owner.type == OwnerType::part) parts.push_back(part);
  assembly.report(DiagnosticId::unknown_part, name.where, "there is no part " + quoted(id),
                  suggest(id, parts, "the parts are"));
  return nullptr;
}

PartId id_of(const Build& build, const Part& part) { return {static_cast<std::int32_t>(&part - build.parts.data())}; }

std::vector<int> switches_of(const Part& part) {
  std::vector<int> found;
  for (std::size_t i = 0; i < part.insides.size(); ++i)
    if (part.insides[i].type == InsideType::switch_) found.push_back(static_cast<int>(i));
  return found;
}

std::vector<std::string> names_of(const Part& part, const std::vector<int>& insides) {
  std::vector<std::string> names;
  for (const int i : insides) names.push_back(part.id + "." + part.insides[static_cast<std::size_t>(i)].id);
  return names;
}

/// The switch that `actuator` names within the part; -1, and a finding, when it names none or leaves it open.
int find_switch(Assembly& assembly, const PlacedText& actuator, const Part& part, Where declared) {
  const std::vector<int> switches = switches_of(part);
  const std::vector<std::string> names = names_of(part, switches);
  const bool names_one = actuator.text.find('.') != std::string::npos;
  if (switches.empty()) {
    assembly.report(DiagnosticId::not_an_actuator, actuator.where,
                    "part `" + part.id + "` has no switch; a situation sets switches only", {},
                    {{declared, "part `" + part.id + "` declared here"}});
    return -1;
  }
  if (!names_one && switches.size() == 1) return switches.front();
  if (!names_one) {
    assembly.report(DiagnosticId::which_switch, actuator.where, "part `" + part.id + "` has several switches; name one",
                    "they are " + list_words(names));
    return -1;
  }
  for (std::size_t i = 0; i < names.size(); ++i)
    if (names[i] == actuator.text) return switches[i];
  assembly.report(
      DiagnosticId::not_an_actuator, actuator.where, quoted(actuator.text) + " is no switch of part `" + part.id + "`",
      suggest(actuator.text, names, "its switches are"), {{declared, "part `" + part.id + "` declared here"}});
  return -1;
}

void add_setting(Assembly& assembly, Situation& situation, const SettingDraft& draft) {
  Where declared;
  const Part* part = find_part(assembly, draft.actuator, declared);
  if (!part) return;
  const int inside = find_switch(assembly, draft.actuator, *part, declared);
  if (inside < 0) return;
  const InsideRef actuator{id_of(assembly.build, *part), inside};
  for (const Setting& other : situation.settings)
    if (other.actuator == actuator) {
      assembly.report(DiagnosticId::actuator_set_twice, draft.actuator.where,
                      "`" + draft.actuator.text + "` is set twice in this situation", {},
                      {{other.where, "it is set here first"}});
      return;
    }
  std::vector<std::string> positions;
  for (const SwitchPosition& position : part->insides[static_cast<std::size_t>(inside)].positions)
    positions.push_back(position.name);
  const auto found = std::find(positions.begin(), positions.end(), draft.position.text);
  if (found == positions.end()) {
    assembly.report(DiagnosticId::unknown_position, draft.position.where,
                    quoted(draft.actuator.text) + " has no position " + quoted(draft.position.text),
                    suggest_and_list(draft.position.text, positions, "its positions are"));
    return;
  }
  situation.settings.push_back({actuator, static_cast<int>(found - positions.begin()), draft.actuator.where});
}

void add_expectation(Assembly& assembly, Situation& situation, const ExpectationDraft& draft) {
  Where declared;
  const Part* part = find_part(assembly, draft.what, declared);
  if (!part) return;
  InsideRef what{id_of(assembly.build, *part), -1};
  if (const std::size_t dot = draft.what.text.find('.'); dot != std::string::npos) {
    std::vector<std::string> names;
    for (const Inside& inside : part->insides) names.push_back(part->id + "." + inside.id);
    const auto found = std::find(names.begin(), names.end(), draft.what.text);
    if (found == names.end()) {
      assembly.report(DiagnosticId::unknown_element, draft.what.where,
                      "nothing inside part `" + part->id + "` is called " + quoted(draft.what.text.substr(dot + 1)),
                      suggest_and_list(draft.what.text, names, "inside it are"),
                      {{declared, "part `" + part->id + "` declared here"}});
      return;
    }
    what.inside = static_cast<int>(found - names.begin());
  }
  situation.expectations.push_back({what, draft.state, draft.what.where});
}

}  // namespace

void add_situation(Assembly& assembly, const SituationDraft& draft) {
  Situation situation = draft.situation;
  for (const SettingDraft& setting : draft.settings) add_setting(assembly, situation, setting);
  for (const ExpectationDraft& expectation : draft.expectations) add_expectation(assembly, situation, expectation);
  assembly.build.situations.push_back(std::move(situation));
}

void check_order_of_situations(Assembly& assembly) {
  std::map<std::string, const Situation*, std::less<>> by_name;
  std::vector<std::string> names;
  for (const Situation& situation : assembly.build.situations) {
    by_name.emplace(situation.name, &situation);
    names.push_back(situation.name);
  }
  for (Situation& situation : assembly.build.situations) {
    if (situation.after.empty()) continue;
    const Where where = situation.origin.key("after");
    if (!by_name.count(situation.after)) {
      const auto removal = assembly.removals.find(situation.after);
      if (removal != assembly.removals.end() && removal->second.is_found)
        removal->second.uses.push_back({where, "it is still named here"});
      else
        assembly.report(DiagnosticId::unknown_situation, where, "there is no situation `" + situation.after + "`",
                        suggest(situation.after, names, "the situations are"));
      continue;
    }
    const Situation* before = &situation;
    std::set<std::string> passed;
    while (!before->after.empty() && passed.insert(before->name).second && by_name.count(before->after))
      before = by_name[before->after];
    if (before == &situation && !passed.empty())
      assembly.report(DiagnosticId::situations_in_a_ring, where,
                      "situation `" + situation.name + "` comes, step by step, after itself");
  }
}

}  // namespace loomfolio
