// SPDX-License-Identifier: MIT
#include "sheets/works_story.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "check/paths.h"
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
    if (std::find(told.begin(), told.end(), move) == told.end()) told.push_back(move);
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
        tell_most(solved, ref, "works.use_fuse", words, told);
        break;
      case InsideType::charger:
        tell_most(solved, ref, "works.use_charger", words, told);
        break;
      case InsideType::contact:
        if (insides[i].flashes) tell_most(solved, ref, "works.use_flasher", words, told);
        break;
      default:
        break;
    }
  }
  return told;
}

}  // namespace loomfolio
