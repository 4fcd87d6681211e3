// SPDX-License-Identifier: MIT
// A wire's end belongs to the battery's stage when it is at one of the battery's poles; otherwise to the stage of its
// wire: earths when both its ends are joined to earth, supply when no fuse stands above it on the live side, else
// signals. All that the fitter joins at one terminal is one action, since it is one fitting or one bolt. Splices are
// made on the bench, before the loom is laid.
//
// A ring is bolted to the live pole for good only when the tests of first power have passed through the test fuse; the
// earthed pole is then taken off for it, and joined again last of all.
#include "sheets/assembly_plan.h"

#include <algorithm>
#include <array>
#include <map>

#include "sheets/earth_net.h"
#include "sheets/fitting_picture.h"
#include "sheets/fuse_list.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr std::array all_stages{Stage::prepare, Stage::bracket, Stage::splices, Stage::loom,
                                Stage::earths,  Stage::signals, Stage::supply,  Stage::plugs,
                                Stage::fuses,   Stage::cold,    Stage::battery, Stage::tests};

/// What a spec's [[step]] calls it; stages that an author has no business in have no name.
std::string_view name_of(Stage stage) {
  switch (stage) {
    case Stage::prepare:
      return "start";
    case Stage::bracket:
      return "bracket";
    case Stage::splices:
      return "splices";
    case Stage::loom:
      return "loom";
    case Stage::earths:
      return "earths";
    case Stage::signals:
      return "signals";
    case Stage::supply:
      return "supply";
    case Stage::plugs:
      return "plugs";
    case Stage::fuses:
      return "fuses";
    case Stage::cold:
      return {};
    case Stage::battery:
      return "battery";
    case Stage::tests:
      return "tests";
  }
  return {};
}

bool is_source(const Inside& inside) { return inside.type == InsideType::source; }

bool is_battery(const Part& part) { return std::any_of(part.insides.begin(), part.insides.end(), is_source); }

Action simple(ActionType type) {
  Action action;
  action.type = type;
  return action;
}

Action at_part(ActionType type, std::size_t part) {
  Action action = simple(type);
  action.part = PartId{static_cast<std::int32_t>(part)};
  return action;
}

/// A group of what stands alone.
ActionGroup lone(std::vector<Action> actions) { return {{}, {}, std::move(actions), {}}; }

class AssemblyPlanner {
 public:
  AssemblyPlanner(const SolvedBuild& solved, const Words& words)
      : solved_(solved),
        build_(solved.build),
        words_(words),
        is_earthed_(find_earth_net(solved.build)),
        wires_at_(wires_at_terminals(solved.build)),
        live_pole_(live_pole(solved.build)),
        earthed_pole_(earthed_pole(solved.build)) {}

  std::vector<StagePlan> plan() {
    std::vector<StagePlan> stages;
    for (const Stage stage : all_stages) {
      StagePlan plan{stage, groups_of(stage)};
      for (ActionGroup& group : plan.groups) group.actions = in_turns(group.actions);
      add_author_steps(plan);
      const bool is_always = stage == Stage::battery || stage == Stage::tests;
      if (!plan.groups.empty() || is_always) stages.push_back(std::move(plan));
    }
    return stages;
  }

 private:
  std::vector<ActionGroup> groups_of(Stage stage) const {
    switch (stage) {
      case Stage::prepare:
        return preparing();
      case Stage::bracket:
        return mounting();
      case Stage::splices:
        return splicing();
      case Stage::loom:
        return laying();
      case Stage::earths:
        return earthing();
      case Stage::signals:
        return joining(stage);
      case Stage::supply:
        return supplying();
      case Stage::plugs:
        return plugging();
      case Stage::fuses:
        return fusing();
      case Stage::cold:
        return {lone({simple(ActionType::test_cold)})};
      case Stage::battery:
        return battery();
      case Stage::tests:
        return {lone({simple(ActionType::test_live), simple(ActionType::refit_covers)})};
    }
    return {};
  }

  bool is_kit() const { return build_.document.scope == Scope::kit; }

  /// Covers off, battery off, tank off, and out with what the kit takes the place of.
  std::vector<ActionGroup> preparing() const {
    std::vector<Action> actions;
    if (is_kit()) actions.push_back(simple(ActionType::key_off));
    actions.push_back(simple(ActionType::remove_covers));
    actions.push_back(simple(is_kit() ? ActionType::disconnect : ActionType::remove_battery));
    actions.push_back(simple(ActionType::remove_tank));
    const bool brings_battery = std::any_of(build_.parts.begin(), build_.parts.end(), [](const Part& part) {
      return part.provided == Provider::kit && is_battery(part);
    });
    if (is_kit() && brings_battery) actions.push_back(simple(ActionType::take_battery));
    for (const InsideRef fuse : list_fuses(build_)) {
      const Part& holder = build_.part(fuse.part);
      if (holder.provided == Provider::machine && !is_worked_at(build_, holder)) actions.push_back(take_out(fuse));
    }
    return {lone(std::move(actions))};
  }

  static Action take_out(InsideRef fuse) {
    Action action = simple(ActionType::take_fuse);
    action.fuse = fuse;
    return action;
  }

  /// Parts of the machine first, all together, and their fuses out; then the metal that new parts may cover, and these in
  /// order of zones. The battery comes last of all, when the loom is in.
  std::vector<ActionGroup> mounting() const {
    std::vector<ActionGroup> groups;
    ActionGroup found{words_("steps.find_title"), {}, {}, {}};
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      if (build_.parts[p].provided == Provider::machine && is_worked_at(build_, build_.parts[p])) {
        add_beside_part(found, found_part(p));
        for (const InsideRef fuse : list_fuses(build_))
          if (fuse.part.at() == p) found.actions.push_back(take_out(fuse));
      }
    if (!found.actions.empty()) groups.push_back(std::move(found));
    if (ActionGroup metal = baring(); !metal.actions.empty()) groups.push_back(std::move(metal));
    for (std::size_t z = 0; z < build_.zones.size(); ++z) {
      ActionGroup group{zone_name(build_.zones[z]), {}, {}, {}};
      for (std::size_t p = 0; p < build_.parts.size(); ++p) {
        const Part& part = build_.parts[p];
        if (part.zone.index != static_cast<std::int32_t>(z) || part.provided == Provider::machine) continue;
        if (is_battery(part)) continue;  // it comes when all else is done
        add_beside_part(group, {at_part(ActionType::mount, p)});
      }
      if (!group.actions.empty()) groups.push_back(std::move(group));
    }
    groups.push_back(lone({simple(ActionType::check_clear)}));
    return groups;
  }

  /// Contacts are clicked into a plug that is off, and taken out of it.
  std::vector<Action> found_part(std::size_t part) const {
    std::vector<Action> actions{at_part(ActionType::find, part)};
    if (gets_contacts(build_, build_.parts[part])) actions.push_back(at_part(ActionType::unplug, part));
    for (const TerminalId terminal : build_.parts[part].terminals)
      for (const WireId wire : wires_to_free(build_, terminal)) {
        Action action = at_part(ActionType::free_wire, part);
        action.terminal = terminal;
        action.wires = {wire};
        actions.push_back(std::move(action));
      }
    return actions;
  }

  /// The actions, and the author's steps that stand before or after their part.
  void add_beside_part(ActionGroup& group, const std::vector<Action>& actions) const {
    const std::string& id = build_.part(actions.front().part).id;
    for (const AuthorStep& step : build_.steps)
      if (step.before == id && !is_stage(id)) group.actions.push_back(of_author(step));
    group.actions.insert(group.actions.end(), actions.begin(), actions.end());
    for (const AuthorStep& step : build_.steps)
      if (step.after == id && !is_stage(id)) group.actions.push_back(of_author(step));
  }

  static bool is_stage(const std::string& name) {
    return std::any_of(all_stages.begin(), all_stages.end(), [&](Stage stage) { return name_of(stage) == name; });
  }

  static Action of_author(const AuthorStep& step) {
    Action action = simple(ActionType::author);
    action.text = step.text;
    action.caution = step.caution;
    action.before = step.before;
    action.after = step.after;
    return action;
  }

  std::vector<ActionGroup> splicing() const {
    std::vector<ActionGroup> groups{lone({simple(ActionType::cut_wires)})};
    ActionGroup group;
    for (std::size_t s = 0; s < build_.splices.size(); ++s) {
      Action action = simple(ActionType::make_splice);
      action.splice = SpliceId{static_cast<std::int32_t>(s)};
      group.actions.push_back(action);
    }
    group.note_key = "steps.splice_note";
    if (!group.actions.empty()) groups.push_back(std::move(group));
    return groups;
  }

  /// An action for each two zones that wires run between, and one for those that stay in their zone.
  std::vector<ActionGroup> laying() const {
    std::map<std::pair<std::int32_t, std::int32_t>, std::vector<WireId>> runs;
    for (std::size_t w = 0; w < build_.wires.size(); ++w) {
      if (!is_joined_by_fitter(build_.wires[w])) continue;
      const std::int32_t a = zone_of(build_, build_.wires[w].from).index, b = zone_of(build_, build_.wires[w].to).index;
      if (a != b) runs[{std::min(a, b), std::max(a, b)}].push_back(WireId{static_cast<std::int32_t>(w)});
    }
    ActionGroup group{{}, {}, {}, "steps.lay_note"};
    for (const auto& [zones, wires] : runs) {
      Action action = simple(ActionType::lay_wires);
      action.wires = wires;
      action.from = ZoneId{zones.first};
      action.to = ZoneId{zones.second};
      group.actions.push_back(std::move(action));
    }
    group.actions.push_back(simple(ActionType::check_way));
    return {group};
  }

  /// Bright metal while no part is in the way of it.
  ActionGroup baring() const {
    ActionGroup metal{words_("steps.metal_title"), {}, {}, "steps.clean_earth_note"};
    for (std::size_t e = 0; e < build_.earths.size(); ++e) {
      Action action = simple(ActionType::clean_earth);
      action.earth = EarthId{static_cast<std::int32_t>(e)};
      action.terminal = build_.earths[e].terminal;
      for (const WireId wire : wires_at_[action.terminal.at()])
        if (!is_joined_by_fitter(build_.wire(wire))) action.wires.push_back(wire);
      if (is_kit() && !action.wires.empty()) {
        metal.actions.push_back(action);
        metal.actions.back().type = ActionType::undo_earth;
      }
      metal.actions.push_back(action);
    }
    return metal;
  }

  std::vector<ActionGroup> earthing() const {
    ActionGroup bodies{words_("steps.metal_title"), {}, {}, "steps.clean_earth_note"};
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      if (returns_by_body(build_.parts[p])) bodies.actions.push_back(at_part(ActionType::body_return, p));
    std::vector<ActionGroup> groups;
    if (!bodies.actions.empty()) groups.push_back(std::move(bodies));
    for (ActionGroup& group : joining(Stage::earths)) groups.push_back(std::move(group));
    return groups;
  }

  bool returns_by_body(const Part& part) const {
    const std::vector<KindTerminal>& terminals = build_.kind_of(part).terminals;
    return is_worked_at(build_, part) &&
           std::any_of(terminals.begin(), terminals.end(),
                       [](const KindTerminal& terminal) { return terminal.form == TerminalForm::body; });
  }

  /// Last the rings for the battery's poles, which stay covered.
  std::vector<ActionGroup> supplying() const {
    std::vector<ActionGroup> groups = joining(Stage::supply);
    ActionGroup rings{words_("steps.rings_title"), {}, {}, "steps.ready_ring_note"};
    for (const TerminalId pole : {live_pole_, earthed_pole_}) {
      if (!pole.is_set()) continue;
      for (const WireId wire : wires_at_[pole.at()]) {
        if (!is_joined_by_fitter(build_.wire(wire))) continue;
        Action action = simple(ActionType::ready_ring);
        action.wires = {wire};
        action.terminal = pole;
        rings.actions.push_back(std::move(action));
      }
    }
    if (!rings.actions.empty()) groups.push_back(std::move(rings));
    return groups;
  }

  /// Housings that got wires are joined to what they plug onto; then the loom is tied.
  std::vector<ActionGroup> plugging() const {
    ActionGroup group{{}, {}, {}, "steps.plug_note"};
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      if (gets_contacts(build_, build_.parts[p])) group.actions.push_back(at_part(ActionType::plug, p));
    std::vector<ActionGroup> groups;
    if (!group.actions.empty()) groups.push_back(std::move(group));
    groups.push_back(lone({simple(ActionType::tie_loom)}));
    return groups;
  }

  std::vector<ActionGroup> fusing() const {
    ActionGroup group;
    for (const InsideRef fuse : list_fuses(build_)) {
      Action action = simple(ActionType::lay_fuse);
      action.fuse = fuse;
      group.actions.push_back(action);
    }
    return group.actions.empty() ? std::vector<ActionGroup>{} : std::vector<ActionGroup>{group};
  }

  /// A new battery into its place. Then through the test fuse first; then for good, the live pole before the earthed one.
  /// The tank comes back between the two, while the battery is off; its tap is opened when the last ring is bolted.
  std::vector<ActionGroup> battery() const {
    ActionGroup fitted;
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      if (build_.parts[p].provided != Provider::machine && is_battery(build_.parts[p]))
        fitted.actions.push_back(at_part(ActionType::mount, p));
    ActionGroup trial{words_("steps.trial_title"), {}, {}, {}}, good{words_("steps.good_title"), {}, {}, {}};
    const Action live = all_rings(ActionType::join_end, live_pole_),
                 back = all_rings(ActionType::join_end, earthed_pole_);
    const auto as = [](Action action, ActionType type) {
      action.type = type;
      return action;
    };
    if (!live.wires.empty()) trial.actions.push_back(as(live, ActionType::clip_test_fuse));
    if (!back.wires.empty()) trial.actions.push_back(as(back, ActionType::join_for_test));
    trial.actions.push_back(simple(ActionType::test_first));
    if (!back.wires.empty()) good.actions.push_back(as(back, ActionType::part_again));
    if (!live.wires.empty()) good.actions.push_back(as(live, ActionType::unclip_test_fuse));
    good.actions.push_back(simple(ActionType::refit_tank));
    if (!live.wires.empty()) {
      good.actions.push_back(live);
      good.actions.push_back(as(live, ActionType::cover_pole));
    }
    if (!back.wires.empty()) good.actions.push_back(back);
    good.actions.push_back(simple(ActionType::open_tap));
    std::vector<ActionGroup> groups;
    if (!fitted.actions.empty()) groups.push_back(std::move(fitted));
    groups.push_back(std::move(trial));
    groups.push_back(std::move(good));
    return groups;
  }

  /// Every ring that belongs on the pole, also those that the machine has: they were taken off.
  Action all_rings(ActionType type, TerminalId pole) const {
    Action action = simple(type);
    action.terminal = pole;
    if (pole.is_set()) action.wires = thickest_first(wires_at_[pole.at()]);
    return action;
  }

  std::vector<WireId> thickest_first(std::vector<WireId> wires) const {
    std::stable_sort(wires.begin(), wires.end(),
                     [&](WireId a, WireId b) { return build_.wire(a).area.number() > build_.wire(b).area.number(); });
    return wires;
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
        ActionGroup group{part.label, PartId{static_cast<std::int32_t>(p)}, {}, {}};
        for (const TerminalId terminal : part.terminals) add_ends(group, terminal, stage);
        add(std::move(group));
      }
      for (const Earth& earth : build_.earths) {
        if (earth.zone != zone) continue;
        ActionGroup group{
            words_("called.earth", {{"id", earth.id}}) + (earth.label.empty() ? "" : ", " + earth.label), {}, {}, {}};
        add_ends(group, earth.terminal, stage);
        add(std::move(group));
      }
    }
    return groups;
  }

  /// One action for what is joined at the terminal, in the latest stage of its wires: a bolt is done up once.
  void add_ends(ActionGroup& group, TerminalId terminal, Stage stage) const {
    if (is_pole(terminal)) return;
    Action action = simple(ActionType::join_end);
    action.terminal = terminal;
    Stage latest = Stage::prepare;
    for (const WireId wire : wires_at_[terminal.at()]) {
      if (!is_joined_by_fitter(build_.wire(wire))) {
        action.machines.push_back(wire);
        continue;
      }
      action.wires.push_back(wire);
      latest = std::max(latest, stage_of(wire));
    }
    if (action.wires.empty() || at_part_with_signals(terminal, latest) != stage) return;
    action.wires = thickest_first(action.wires);
    group.actions.push_back(std::move(action));
  }

  /// A part's earth wires are joined with its signal wires, in one list; earths that have a bolt come first.
  Stage at_part_with_signals(TerminalId id, Stage stage) const {
    const Terminal& terminal = build_.terminal(id);
    if (stage != Stage::earths || terminal.owner != OwnerType::part) return stage;
    for (const TerminalId other : build_.parts[static_cast<std::size_t>(terminal.owner_index)].terminals)
      for (const WireId wire : wires_at_[other.at()])
        if (is_joined_by_fitter(build_.wire(wire)) && stage_of(wire) == Stage::signals) return Stage::signals;
    return stage;
  }

  bool is_pole(TerminalId terminal) const { return terminal == live_pole_ || terminal == earthed_pole_; }

  Stage stage_of(WireId id) const {
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
      if (step.before == name) before.actions.push_back(of_author(step));
      if (step.after == name) after.actions.push_back(of_author(step));
    }
    if (!before.actions.empty()) plan.groups.insert(plan.groups.begin(), std::move(before));
    if (!after.actions.empty()) plan.groups.push_back(std::move(after));
  }

  const SolvedBuild& solved_;
  const Build& build_;
  const Words& words_;
  std::vector<bool> is_earthed_;  ///< by TerminalId
  std::vector<std::vector<WireId>> wires_at_;
  TerminalId live_pole_, earthed_pole_;
};

}  // namespace

std::vector<StagePlan> plan_assembly(const SolvedBuild& solved, const Words& words) {
  return AssemblyPlanner(solved, words).plan();
}

}  // namespace loomfolio
