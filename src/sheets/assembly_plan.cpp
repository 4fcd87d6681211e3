// SPDX-License-Identifier: MIT
// A wire's end belongs to the battery's stage when it is at the battery; otherwise to the stage of its wire: earths
// when both its ends are joined to earth, supply when no fuse stands above it on the live side, else signals. Splices
// are made on the bench, first.
#include "sheets/assembly_plan.h"

#include <algorithm>
#include <array>

#include "sheets/earth_net.h"
#include "sheets/fuse_list.h"
#include "sheets/names.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

struct StageName {
  Stage stage;
  std::string_view name;  ///< in a spec's [[step]]
};
constexpr std::array<StageName, 7> stage_names{{{Stage::bracket, "bracket"},
                                                {Stage::earths, "earths"},
                                                {Stage::signals, "signals"},
                                                {Stage::supply, "supply"},
                                                {Stage::fuses, "fuses"},
                                                {Stage::battery, "battery"},
                                                {Stage::tests, "tests"}}};

std::string_view name_of(Stage stage) {
  for (const StageName& entry : stage_names)
    if (entry.stage == stage) return entry.name;
  return {};
}

bool is_source(const Inside& inside) { return inside.type == InsideType::source; }

class Planner {
 public:
  Planner(const SolvedBuild& solved, const Words& words)
      : solved_(solved), build_(solved.build), words_(words), is_earthed_(find_earth_net(solved.build)) {}

  std::vector<StagePlan> plan() {
    std::vector<StagePlan> stages;
    for (const Stage stage : {Stage::bracket, Stage::splices, Stage::earths, Stage::signals, Stage::supply,
                              Stage::fuses, Stage::battery, Stage::tests}) {
      StagePlan plan{stage, groups_of(stage)};
      add_author_steps(plan);
      add_ends_of(plan);
      if (!plan.groups.empty() || stage == Stage::battery) stages.push_back(std::move(plan));
    }
    return stages;
  }

 private:
  std::vector<ActionGroup> groups_of(Stage stage) const {
    switch (stage) {
      case Stage::bracket:
        return mounting();
      case Stage::splices:
        return splicing();
      case Stage::fuses:
        return fusing();
      case Stage::battery:
        return battery();
      case Stage::tests:
        return {{{}, {}, {Action{ActionType::test_live}}}};
      case Stage::earths:
        return earthing();
      case Stage::signals:
      case Stage::supply:
        return joining(stage);
    }
    return {};
  }

  /// What comes before all else of the stage, and behind it, the author's own steps among it.
  void add_ends_of(StagePlan& plan) const {
    if (plan.stage == Stage::bracket && build_.document.scope == Scope::kit)
      plan.groups.insert(plan.groups.begin(), {{}, {}, {Action{ActionType::disconnect}}});
    if (plan.stage == Stage::bracket) plan.groups.push_back({{}, {}, {Action{ActionType::check_clear}}});
    if (plan.stage == Stage::splices)
      plan.groups.insert(plan.groups.begin(), {{}, {}, {Action{ActionType::cut_wires}}});
    if (plan.stage == Stage::battery)
      plan.groups.insert(plan.groups.begin(), {{}, {}, {Action{ActionType::test_cold}, Action{ActionType::test_fuse}}});
  }

  /// Parts of the machine first, all together; then the new ones in order of zones.
  std::vector<ActionGroup> mounting() const {
    std::vector<ActionGroup> groups;
    ActionGroup found{words_("steps.find_title"), {}, {}};
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      if (build_.parts[p].provided == Provider::machine && is_worked_at(build_, build_.parts[p]))
        found.actions.push_back(part_action(ActionType::find, p));
    if (!found.actions.empty()) groups.push_back(std::move(found));
    for (std::size_t z = 0; z < build_.zones.size(); ++z) {
      ActionGroup group{zone_name(build_.zones[z]), {}, {}};
      for (std::size_t p = 0; p < build_.parts.size(); ++p) {
        const Part& part = build_.parts[p];
        if (part.zone.index != static_cast<std::int32_t>(z) || part.provided == Provider::machine) continue;
        group.actions.push_back(part_action(ActionType::mount, p));
      }
      if (!group.actions.empty()) groups.push_back(std::move(group));
    }
    return groups;
  }

  static Action part_action(ActionType type, std::size_t part) {
    Action action{type};
    action.part = PartId{static_cast<std::int32_t>(part)};
    return action;
  }

  /// Bright metal first, then the wires.
  std::vector<ActionGroup> earthing() const {
    ActionGroup metal{words_("steps.metal_title"), {}, {}};
    for (std::size_t e = 0; e < build_.earths.size(); ++e) {
      Action action{ActionType::clean_earth};
      action.earth = EarthId{static_cast<std::int32_t>(e)};
      metal.actions.push_back(action);
    }
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      if (returns_by_body(build_.parts[p])) metal.actions.push_back(part_action(ActionType::body_return, p));
    std::vector<ActionGroup> groups;
    if (!metal.actions.empty()) groups.push_back(std::move(metal));
    for (ActionGroup& group : joining(Stage::earths)) groups.push_back(std::move(group));
    return groups;
  }

  bool returns_by_body(const Part& part) const {
    const std::vector<KindTerminal>& terminals = build_.kind_of(part).terminals;
    return is_worked_at(build_, part) &&
           std::any_of(terminals.begin(), terminals.end(),
                       [](const KindTerminal& terminal) { return terminal.form == TerminalForm::body; });
  }

  std::vector<ActionGroup> splicing() const {
    ActionGroup group;
    for (std::size_t s = 0; s < build_.splices.size(); ++s) {
      Action action{ActionType::make_splice};
      action.splice = SpliceId{static_cast<std::int32_t>(s)};
      group.actions.push_back(action);
    }
    return group.actions.empty() ? std::vector<ActionGroup>{} : std::vector<ActionGroup>{group};
  }

  std::vector<ActionGroup> fusing() const {
    ActionGroup group;
    for (const InsideRef fuse : list_fuses(build_)) {
      Action action{ActionType::lay_fuse};
      action.fuse = fuse;
      group.actions.push_back(action);
    }
    return group.actions.empty() ? std::vector<ActionGroup>{} : std::vector<ActionGroup>{group};
  }

  /// Ends at the battery: its live pole first, the earthed one last.
  std::vector<ActionGroup> battery() const {
    std::vector<ActionGroup> groups;
    for (const Part& part : build_.parts) {
      const auto source = std::find_if(part.insides.begin(), part.insides.end(), is_source);
      if (source == part.insides.end()) continue;
      ActionGroup group{part.label, {}, {}};
      for (const bool is_earthed : {false, true})
        for (const TerminalId terminal : part.terminals)
          if (is_earthed_pole(*source, terminal) == is_earthed) add_ends(group, terminal, Stage::battery);
      if (!group.actions.empty()) groups.push_back(std::move(group));
    }
    return groups;
  }

  bool is_earthed_pole(const Inside& source, TerminalId terminal) const {
    const std::size_t pole = build_.electrics.is_positive_earth ? 0 : 1;  // a source's nodes are {plus, minus}
    return pole < source.nodes.size() && source.nodes[pole].terminal == build_.terminal(terminal).kind_terminal;
  }

  /// Places in order of zones: parts, then earths.
  std::vector<ActionGroup> joining(Stage stage) const {
    std::vector<ActionGroup> groups;
    const auto add = [&](ActionGroup group) {
      if (!group.actions.empty()) groups.push_back(std::move(group));
    };
    for (std::size_t z = 0; z < build_.zones.size(); ++z) {
      const ZoneId zone{static_cast<std::int32_t>(z)};
      for (std::size_t p = 0; p < build_.parts.size(); ++p) {
        const Part& part = build_.parts[p];
        if (part.zone != zone) continue;
        ActionGroup group{part.label, PartId{static_cast<std::int32_t>(p)}, {}};
        for (const TerminalId terminal : part.terminals) add_ends(group, terminal, stage);
        add(std::move(group));
      }
      for (const Earth& earth : build_.earths) {
        if (earth.zone != zone) continue;
        ActionGroup group{
            words_("called.earth", {{"id", earth.id}}) + (earth.label.empty() ? "" : ", " + earth.label), {}, {}};
        add_ends(group, earth.terminal, stage);
        add(std::move(group));
      }
    }
    return groups;
  }

  void add_ends(ActionGroup& group, TerminalId terminal, Stage stage) const {
    for (std::size_t w = 0; w < build_.wires.size(); ++w) {
      const Wire& wire = build_.wires[w];
      const WireId id{static_cast<std::int32_t>(w)};
      if ((wire.from != terminal && wire.to != terminal) || stage_of(id, terminal) != stage) continue;
      if (!is_joined_by_fitter(wire)) continue;
      Action action{ActionType::join_end};
      action.wire = id;
      action.terminal = terminal;
      group.actions.push_back(action);
    }
  }

  Stage stage_of(WireId id, TerminalId end) const {
    if (is_at_battery(end)) return Stage::battery;
    const Wire& wire = build_.wire(id);
    if (is_earthed_[wire.from.at()] && is_earthed_[wire.to.at()]) return Stage::earths;
    return is_unfused_supply(id) ? Stage::supply : Stage::signals;
  }

  bool is_at_battery(TerminalId id) const {
    const Terminal& terminal = build_.terminal(id);
    if (terminal.owner != OwnerType::part) return false;
    const Part& part = build_.parts[static_cast<std::size_t>(terminal.owner_index)];
    return std::any_of(part.insides.begin(), part.insides.end(), is_source);
  }

  /// Nothing opens when it is shorted: it is joined late, when all else is done.
  bool is_unfused_supply(WireId id) const {
    if (id.at() >= solved_.wire_loads.size()) return false;
    const WireVerdict verdict = solved_.wire_loads[id.at()].verdict;
    const Wire& wire = build_.wire(id);
    return verdict == WireVerdict::unfused || verdict == WireVerdict::starter_cable || is_at_battery(wire.from) ||
           is_at_battery(wire.to);
  }

  void add_author_steps(StagePlan& plan) const {
    const std::string_view name = name_of(plan.stage);
    if (name.empty()) return;
    ActionGroup before, after;
    for (const AuthorStep& step : build_.steps) {
      Action action{ActionType::author};
      action.text = step.text;
      action.caution = step.caution;
      if (step.before == name) before.actions.push_back(action);
      if (step.after == name) after.actions.push_back(action);
    }
    if (!before.actions.empty()) plan.groups.insert(plan.groups.begin(), std::move(before));
    if (!after.actions.empty()) plan.groups.push_back(std::move(after));
  }

  const SolvedBuild& solved_;
  const Build& build_;
  const Words& words_;
  std::vector<bool> is_earthed_;  ///< by TerminalId
};

}  // namespace

bool is_worked_at(const Build& build, const Part& part) {
  if (part.provided == Provider::kit) return true;
  return std::any_of(build.wires.begin(), build.wires.end(), [&](const Wire& wire) {
    const auto is_here = [&](TerminalId end) {
      return std::find(part.terminals.begin(), part.terminals.end(), end) != part.terminals.end();
    };
    return is_joined_by_fitter(wire) && (is_here(wire.from) || is_here(wire.to));
  });
}

bool is_joined_by_fitter(const Wire& wire) { return wire.provided == Provider::kit; }

std::vector<StagePlan> plan_assembly(const SolvedBuild& solved, const Words& words) {
  return Planner(solved, words).plan();
}

}  // namespace loomfolio
