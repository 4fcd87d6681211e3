// SPDX-License-Identifier: MIT
#include "sheets/works_story.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/feed_way.h"
#include "sheets/inside_sentences.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/setting_text.h"
#include "sheets/situation_paths.h"
#include "sheets/situation_state.h"
#include "sheets/switch_positions.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_named = 4;

const InsideState& state_of(const Solution& solution, InsideRef ref) {
  return solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
}

/// '30 to 87'; empty when an end lies inside the part.
std::string pair_text(const Build& build, InsideRef ref, const Words& words) {
  const std::string a = end_mark(build, ref, 0), b = end_mark(build, ref, 1);
  return a.empty() || b.empty() ? std::string() : words("works.pair", {{"a", a}, {"b", b}});
}

/// 'Starter motor, Headlamp'; empty when nothing, or too much to name.
std::string fed_text(const Build& build, const SolvedState& state, InsideRef element) {
  std::vector<std::string> names;
  for (const PartId part : find_fed(build, state, element)) names.push_back(build.part(part).label);
  return names.size() > most_named ? std::string() : join(names, ", ");
}

void tell_contact(const Build& build, const CoilStory& story, InsideRef contact, const Words& words,
                  std::vector<std::string>& told) {
  const InsideState &before = state_of(story.pair.before.solution, contact),
                    &after = state_of(story.pair.after.solution, contact);
  const std::string pair = pair_text(build, contact, words);
  if (pair.empty() || before.is_on == after.is_on) return;
  if (!after.is_on) {
    told.push_back(words("works.seq_opens", {{"pair", pair}}));
    return;
  }
  const std::string fed = fed_text(build, story.pair.after, contact);
  const bool flows = std::abs(after.amperes.number()) >= least_flow.number();
  const char* key = !flows ? "works.seq_closes" : fed.empty() ? "works.seq_closes_flow" : "works.seq_closes_feeds";
  told.push_back(words(key, {{"pair", pair}, {"amperes", print_flow(after.amperes)}, {"what", fed}}));
}

/// The situation in which the element carries most, and how much.
struct MostCarried {
  Amperes amperes{0};
  Volts volts{0};
  int situation = -1;
};

MostCarried find_most(const SolvedBuild& solved, InsideRef ref) {
  MostCarried most;
  for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
    const InsideState& state = state_of(solved.solutions[s], ref);
    if (std::abs(state.amperes.number()) <= most.amperes.number()) continue;
    most = {Amperes(std::abs(state.amperes.number())), state.volts, static_cast<int>(s)};
  }
  if (most.amperes < least_flow) most.situation = -1;
  return most;
}

/// The most that comes in or goes out by a wire at one of the switch's terminals, and in which situation.
MostCarried find_most_by_wire(const SolvedBuild& solved, InsideRef ref) {
  const Build& build = solved.build;
  const Part& part = build.part(ref.part);
  MostCarried most;
  for (std::size_t s = 0; s < solved.solutions.size(); ++s)
    for (const Inside::Node& node : inside_of(build, ref).nodes) {
      if (node.terminal < 0) continue;
      const TerminalId terminal = part.terminals[static_cast<std::size_t>(node.terminal)];
      double sum = 0;
      for (std::size_t w = 0; w < build.wires.size(); ++w) {
        const double own = solved.solutions[s].wire_amperes[w].number();
        if (build.wires[w].from == terminal) sum += own;
        if (build.wires[w].to == terminal) sum -= own;
      }
      if (std::abs(sum) <= most.amperes.number()) continue;
      most = {Amperes(std::abs(sum)), {}, static_cast<int>(s)};
    }
  if (most.amperes < least_flow) most.situation = -1;
  return most;
}

void tell_switch_use(const SolvedBuild& solved, InsideRef ref, const Words& words, std::vector<std::string>& told) {
  if (has_several_switches(solved.build.part(ref.part))) return;  // the drawing above tells it better
  const MostCarried most = find_most_by_wire(solved, ref);
  if (most.situation < 0) return;
  told.push_back(words("works.use_switch",
                       {{"amperes", print_flow(most.amperes)}, {"number", std::to_string(most.situation + 1)}}));
}

/// Switches of hand or foot, not moved, by which the output and what it feeds get their current: the run switch stands on run.
std::vector<Setting> find_let_through(const Build& build, const SituationPair& pair, InsideRef output) {
  const Paths paths = trace_paths(build);
  std::set<InsideRef> met;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideType type = build.parts[p].insides[i].type;
      const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      const bool is_consumer = type == InsideType::lamp || type == InsideType::load || type == InsideType::motor || type == InsideType::coil;
      if (!is_consumer || std::abs(state_of(pair.after.solution, ref).amperes.number()) < least_flow.number()) continue;
      const std::vector<InsideRef> way = find_feed_way(build, paths, pair.after.situation, pair.after.solution, ref);
      if (ref.part == output.part || std::find(way.begin(), way.end(), output) != way.end()) met.insert(way.begin(), way.end());
    }
  std::vector<Setting> settings;
  for (const InsideRef ref : met) {
    const Inside& inside = inside_of(build, ref);
    const bool is_worked = is_hand_or_foot_switch(inside) || (inside.type == InsideType::switch_ && inside.worked_by == "key");
    if (!is_worked || std::any_of(pair.moved.begin(), pair.moved.end(), [&](const MovedSwitch& m) { return m.actuator == ref; })) continue;
    settings.push_back({ref, position_in(build, pair.after.situation, ref), {}});
  }
  return settings;
}

void tell_output_use(const SolvedBuild& solved, InsideRef ref, const Words& words, std::vector<std::string>& told) {
  const Build& build = solved.build;
  const std::string out = end_mark(build, ref, 1);
  if (out.empty()) return;
  for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
    const auto pair = find_pair(solved, SituationId{static_cast<std::int32_t>(s)});
    if (!pair || state_of(pair->before.solution, ref).is_on || !state_of(pair->after.solution, ref).is_on) continue;
    if (std::abs(state_of(pair->after.solution, ref).amperes.number()) < least_flow.number()) continue;
    const MovedSwitch& moved = pair->moved.front();
    const std::string move = words("works.seq_move", {{"action", moved_text(build, moved, moved.after)}});
    // Of outputs that one button works, the button is told once.
    if (std::find(told.begin(), told.end(), move) == told.end()) {
      for (const Setting& setting : find_let_through(build, *pair, ref))
        told.push_back(words("works.seq_move", {{"action", setting_text(build, setting)}}));
      told.push_back(move);
    }
    const std::string fed = inside_of(build, ref).is_low_side ? std::string() : fed_text(build, pair->after, ref);
    told.push_back(
        words(fed.empty() ? "works.use_output" : "works.use_output_feeds",
              {{"out", out}, {"amperes", print_flow(state_of(pair->after.solution, ref).amperes)}, {"what", fed}}));
    return;
  }
}

void tell_most(const SolvedBuild& solved, InsideRef ref, const char* key, const Words& words,
               std::vector<std::string>& told) {
  const MostCarried most = find_most(solved, ref);
  const std::string pair = pair_text(solved.build, ref, words);
  if (most.situation < 0 || pair.empty()) return;
  told.push_back(words(key, {{"pair", pair},
                             {"amperes", print_flow(most.amperes)},
                             {"volts", print_terminal_volts(most.volts)},
                             {"number", std::to_string(most.situation + 1)}}));
}

/// Into an empty battery it gives more than into a full one.
void tell_charger_use(const SolvedBuild& solved, InsideRef ref, const Words& words, std::vector<std::string>& told) {
  MostCarried most = find_most(solved, ref);
  bool is_into_empty = false;
  if (solved.study)
    for (const ChargingExtreme& extreme : solved.study->charging) {
      const InsideState& state = state_of(extreme.solution, ref);
      const Amperes amperes(std::abs(state.amperes.number()));
      if (extreme.state != ChargeState::into_empty || amperes <= most.amperes + Amperes(0.1)) continue;
      most = {amperes, state.volts, static_cast<int>(extreme.solution.situation.index)};
      is_into_empty = true;
    }
  if (!is_into_empty) return tell_most(solved, ref, "works.use_charger", words, told);
  told.push_back(words("works.use_charger_into_empty", {{"amperes", print_flow(most.amperes)}, {"number", std::to_string(most.situation + 1)}}));
}

/// The fuse chart's own figures, so that both say the same.
void tell_fuse_use(const SolvedBuild& solved, InsideRef ref, const Words& words, std::vector<std::string>& told) {
  const FuseStudy* study = study_of(solved, ref);
  const std::string pair = pair_text(solved.build, ref, words);
  if (study == nullptr || !study->situation.is_set() || pair.empty()) return;
  const Amperes most = std::max({study->load, study->at_once, study->into_empty});
  const bool is_into_empty = most > std::max(study->load, study->at_once);
  const char* key = is_into_empty                                 ? "works.use_fuse_into_empty"
                    : study->at_once > study->load + Amperes(0.1) ? "works.use_fuse_all_on"
                    : study->is_uncharged                         ? "works.use_fuse_uncharged"
                                                                  : "works.use_fuse";
  const SituationId where = is_into_empty ? study->into_empty_from : study->situation;
  told.push_back(words(key, {{"pair", pair}, {"amperes", print_flow(most)}, {"number", std::to_string(where.index + 1)}}));
}

/// Whether what the machine's own wires take passes the part, beyond the figures that are told of it.
bool carries_own(const SolvedBuild& solved, PartId part) {
  const OwnSupply& own = solved.own_supply;
  return own.switches.contains(part) || std::any_of(own.fuses.begin(), own.fuses.end(), [&](InsideRef fuse) { return fuse.part == part; });
}

}  // namespace

std::string moved_text(const Build& build, const MovedSwitch& moved, int position) {
  Setting setting;
  setting.actuator = moved.actuator;
  setting.position = position;
  return setting_text(build, setting);
}

std::optional<CoilStory> find_coil_story(const SolvedBuild& solved, PartId part) {
  const std::vector<Inside>& insides = solved.build.part(part).insides;
  for (std::size_t i = 0; i < insides.size(); ++i) {
    if (insides[i].type != InsideType::coil) continue;
    const InsideRef coil{part, static_cast<int>(i)};
    for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
      if (!state_of(solved.solutions[s], coil).is_on) continue;
      auto pair = find_pair(solved, SituationId{static_cast<std::int32_t>(s)});
      if (!pair || state_of(pair->before.solution, coil).is_on) continue;
      SolvedState released = let_go(solved.build, *pair);
      return CoilStory{part, coil.inside, *std::move(pair), std::move(released)};
    }
  }
  return std::nullopt;
}

std::vector<std::string> tell_coil_story(const Build& build, const CoilStory& story, const Words& words) {
  std::vector<std::string> told;
  const InsideRef coil{story.part, story.coil};
  std::vector<MovedSwitch> moves = story.pair.moved;  // what stays where it is put first, buttons last
  std::stable_sort(moves.begin(), moves.end(), [&](const MovedSwitch& a, const MovedSwitch& b) {
    return !inside_of(build, a.actuator).is_sprung && inside_of(build, b.actuator).is_sprung;
  });
  for (const MovedSwitch& moved : moves)
    told.push_back(words("works.seq_move", {{"action", moved_text(build, moved, moved.after)}}));
  const InsideState& pulled = state_of(story.pair.after.solution, coil);
  told.push_back(words("works.seq_coil", {{"amperes", print_flow(pulled.amperes)},
                                          {"volts", print_terminal_volts(Volts(std::abs(pulled.volts.number())))}}));
  const std::vector<Inside>& insides = build.part(story.part).insides;
  for (const bool is_closing : {false, true})  // what breaks does so before what makes
    for (std::size_t i = 0; i < insides.size(); ++i) {
      const InsideRef contact{story.part, static_cast<int>(i)};
      const bool is_own =
          insides[i].type == InsideType::contact && insides[i].coil == insides[static_cast<std::size_t>(story.coil)].id;
      if (is_own && state_of(story.pair.after.solution, contact).is_on == is_closing)
        tell_contact(build, story, contact, words, told);
    }
  const InsideState& released = state_of(story.released.solution, coil);
  std::vector<std::string> back;
  for (const MovedSwitch& moved : story.pair.moved) back.push_back(moved_text(build, moved, moved.before));
  if (released.is_on)
    told.push_back(words("works.seq_holds", {{"action", join(back, ", ")}, {"amperes", print_flow(released.amperes)}}));
  else
    told.push_back(words("works.seq_let_go", {{"action", join(back, ", ")}}));
  return told;
}

std::vector<std::string> tell_use(const SolvedBuild& solved, PartId part, const Words& words) {
  std::vector<std::string> told;
  const std::vector<Inside>& insides = solved.build.part(part).insides;
  for (std::size_t i = 0; i < insides.size(); ++i) {
    const InsideRef ref{part, static_cast<int>(i)};
    switch (insides[i].type) {
      case InsideType::switch_:
        tell_switch_use(solved, ref, words, told);
        break;
      case InsideType::output:
        tell_output_use(solved, ref, words, told);
        break;
      case InsideType::fuse:
        tell_fuse_use(solved, ref, words, told);
        break;
      case InsideType::charger:
        tell_charger_use(solved, ref, words, told);
        break;
      case InsideType::contact:
        if (insides[i].flashes) tell_most(solved, ref, "works.use_flasher", words, told);
        break;
      default:
        break;
    }
  }
  if (!told.empty() && carries_own(solved, part)) told.push_back(words("works.without_own"));
  return told;
}

}  // namespace loomfolio
