// SPDX-License-Identifier: MIT
#include "sheets/situation_sheets.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "base/text.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/scale_items.h"
#include "sheets/setting_text.h"
#include "sheets/situation_legend.h"
#include "sheets/situation_state.h"
#include "sheets/situation_text.h"
#include "sheets/works_story.h"

namespace loomfolio {
namespace {

enum class Moment : std::uint8_t { before, after };

std::string anchor_of_situation(const Situation& situation) { return "live " + situation.name; }

const SolvedState& state_at(const SituationPair& pair, Moment moment) {
  return moment == Moment::before ? pair.before : pair.after;
}

/// 'Start button: on · Key: on · engine cranking': what is moved first, then what else is set.
std::string switches_text(const SheetContext& context, const SituationPair& pair, Moment moment) {
  std::vector<std::string> texts;
  for (const MovedSwitch& moved : pair.moved)
    texts.push_back(moved_text(context.build(), moved, moment == Moment::before ? moved.before : moved.after));
  const Situation& situation = state_at(pair, moment).situation;
  for (const Setting& setting : situation.settings) {
    const bool is_told = std::any_of(pair.moved.begin(), pair.moved.end(),
                                     [&](const MovedSwitch& moved) { return moved.actuator == setting.actuator; });
    if (!is_told) texts.push_back(setting_text(context.build(), setting));
  }
  texts.push_back(context.words()(engine_key(situation.engine)));
  return join(texts, " \u00b7 ");
}

/// 'Works: neutral lamp. Battery: 12.6 V, gives 0.17 A.'
std::string outcome_text(const SheetContext& context, const SolvedState& state) {
  const Words& words = context.words();
  const std::string working = working_text(context.build(), state.solution, words);
  std::string text = words("live.works", {{"what", working.empty() ? words("situations.nothing") : working}});
  const auto battery = read_battery(context.build(), state.solution);
  if (!battery) return text;
  const bool gives = battery->amperes.number() > 0;
  text += " " + words(gives ? "live.battery_gives" : "live.battery_takes",
                      {{"volts", print_terminal_volts(battery->volts)}, {"amperes", print_flow(battery->amperes)}});
  return text;
}

void draw_caption(Items& items, const SheetContext& context, const LaidPair& laid, Moment moment, const Rect& frame) {
  const SolvedState& state = state_at(laid.pair, moment);
  const bool is_before = moment == Moment::before;
  const Words& words = context.words();
  std::string head = words(is_before ? "live.before" : "live.after");
  if (state.index >= 0) head += ": " + situation_name(state.situation);
  add_line(items, {frame.x, frame.y}, {frame.right(), frame.y}, {look::ink, look::heavy_line, {}, Cap::butt});
  const auto line = [&](const std::string& text, const TextStyle& style, double down, Colour colour) {
    const FittedText fitted = fit_text(text, style, frame.width, context.measure());
    items.push_back(TagOpenItem{"P", {}});
    add_text(items, {frame.x, frame.y + Millimetres(down)}, fitted.text, fitted.style, colour);
    items.push_back(TagCloseItem{});
  };
  line(head, look::heading, 5.2, look::ink);
  line(switches_text(context, laid.pair, moment), look::text, 9.8, look::ink);
  line(outcome_text(context, state), look::table, 13.8, look::grey);
}

/// Space between a drawing and what stands below it.
constexpr Millimetres foot_gap{4};
constexpr double most_growth = 1.2;  // of a drawing that leaves its frame half empty

/// The drawing stands in the middle of its frame, but for what it must give way to the legend at `foot`.
void draw_state(Items& items, const SheetContext& context, const LaidPair& laid, Moment moment, const Rect& frame,
                Millimetres foot) {
  draw_caption(items, context, laid, moment, frame);
  const SolvedState& solved = state_at(laid.pair, moment);
  const DiagramState state = make_diagram_state(context.build(), solved.situation, solved.solution);
  DiagramInk ink{context.build(), laid.drawing.diagram, laid.drawing.laid, context.measure(), {}, context.id_prefix,
                 &state};
  const Millimetres width = to_mm(laid.drawing.laid.width), height = to_mm(laid.drawing.laid.height + zone_head);
  const Rect place{frame.x, frame.y + caption_room, frame.width, frame.height - caption_room};
  const double growth = std::min(place.width / width, (std::min(foot - foot_gap, place.bottom()) - place.y) / height);
  const double scale = laid.drawing.scale < 1 ? laid.drawing.scale : std::clamp(growth, 1.0, most_growth);
  const Millimetres half = height * scale / 2;
  Point middle{place.x + place.width / 2, place.y + place.height / 2};
  middle.y = std::max(std::min(middle.y, foot - foot_gap - half), place.y + half);
  Items drawing;
  draw_diagram(drawing, ink, {middle.x - width / 2, middle.y - height / 2 + to_mm(zone_head)});
  if (scale != 1) scale_items(drawing, middle, scale);
  items.push_back(TagOpenItem{
      "Figure", context.words()("live.alternative", {{"state", switches_text(context, laid.pair, moment)}})});
  std::move(drawing.begin(), drawing.end(), std::back_inserter(items));
  items.push_back(TagCloseItem{});
}

/// What the sheet shows; where the state before is drawn when it is not here.
std::string intro_text(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor) {
  const Words& words = context.words();
  std::string text =
      before_anchor.empty()
          ? words("live.intro")
          : words("live.intro_after", {{"sheet", sheet_mark(context.id_prefix + "situations", before_anchor)}});
  if (laid.share.count > 1)
    text += " " + words("live.intro_share", {{"number", std::to_string(laid.share.index + 1)},
                                             {"count", std::to_string(laid.share.count)}});
  return text + " " + words(laid.width == StoryWidth::everything ? "live.intro_whole" : "live.intro_part");
}

Sheet start_sheet(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor) {
  const SolvedState& after = laid.pair.after;
  Sheet sheet;
  sheet.title = context.words()(
      "live.title", {{"number", std::to_string(after.index + 1)}, {"situation", situation_name(after.situation)}});
  if (laid.share.count > 1)
    sheet.title =
        context.words()("page.numbered", {{"title", sheet.title}, {"number", std::to_string(laid.share.index + 1)}});
  sheet.width = laid.drawing.page.width;
  sheet.height = laid.drawing.page.height;
  const Rect& body = laid.drawing.page.body;
  sheet.items.push_back(TagOpenItem{"H1", {}});
  const FittedText title = fit_text(sheet.title, look::title, body.width, context.measure());
  add_text(sheet.items, {body.x, body.y + Millimetres(6)}, title.text, title.style);
  sheet.items.push_back(TagCloseItem{});
  sheet.items.push_back(TagOpenItem{"P", {}});
  add_text(sheet.items, {body.x, body.y + Millimetres(11.5)}, intro_text(context, laid, before_anchor), look::table,
           look::grey);
  sheet.items.push_back(TagCloseItem{});
  return sheet;
}

/// The drawings over their legend.
void fill_sheet(Sheet& sheet, const SheetContext& context, const LaidPair& laid, ShownStates shown) {
  const Rect& body = laid.drawing.page.body;
  Block legend = make_situation_legend(context, laid, shown, body.width);
  const Millimetres foot = body.bottom() - legend.height + Millimetres(2);
  if (shown != ShownStates::after) draw_state(sheet.items, context, laid, Moment::before, laid.frames.front(), foot);
  if (shown != ShownStates::before) draw_state(sheet.items, context, laid, Moment::after, laid.frames.back(), foot);
  place_block(sheet.items, std::move(legend), {body.x, foot});
}

/// `before_anchor`: where the state before is drawn as a sheet of its own; empty: nowhere.
std::vector<Sheet> draw_pair(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor) {
  std::vector<Sheet> sheets;
  const auto add = [&](ShownStates shown, const std::string& anchor) {
    sheets.push_back(start_sheet(context, laid, anchor));
    fill_sheet(sheets.back(), context, laid, shown);
  };
  if (laid.arrangement != Arrangement::facing) {
    add(ShownStates::both, {});
    return sheets;
  }
  if (before_anchor.empty()) add(ShownStates::before, {});
  add(ShownStates::after, before_anchor);
  return sheets;
}

int count_working(const Build& build, const Solution& solution) {
  int count = 0;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideType type = build.parts[p].insides[i].type;
      const bool is_seen = type == InsideType::lamp || type == InsideType::motor || type == InsideType::load;
      if (is_seen && observed(build.parts[p].insides[i], solution.insides[p][i]) != Expected::off) ++count;
    }
  return count;
}

/// Whether the pair's sheet shows its earlier situation as well as a sheet of its own would.
bool covers_before(const Build& build, const LaidPair& laid) {
  return laid.pair.before.index >= 0 && laid.width == StoryWidth::everything &&
         count_working(build, laid.pair.before.solution) <= count_working(build, laid.pair.after.solution);
}

/// Whether a person would find everything alike in both: currents, volts, what is lit.
bool are_alike(const Build& build, const SituationPair& pair) {
  const DiagramState before = make_diagram_state(build, pair.before.situation, pair.before.solution),
                     after = make_diagram_state(build, pair.after.situation, pair.after.solution);
  const auto is_same_wire = [](const WireState& a, const WireState& b) {
    return a.liveness == b.liveness && a.figure == b.figure && (a.direction > 0) == (b.direction > 0);
  };
  const auto is_same_part = [](const PartState& a, const PartState& b) { return a.figures == b.figures; };
  return std::equal(before.wires.begin(), before.wires.end(), after.wires.begin(), is_same_wire) &&
         std::equal(before.parts.begin(), before.parts.end(), after.parts.begin(), is_same_part);
}

/// A situation's story: laid out on one sheet or more; on none when it tells nothing.
struct Told {
  std::vector<LaidPair> laid;
  bool is_covered = false;  ///< another sheet shows it as its 'before'

  const SituationPair& pair() const { return laid.front().pair; }
};

/// The situation of the build that is fewest moves away, as the one before: for a situation in which pressing its
/// button changes nothing, such as a start that is refused, since what keeps it from working is then what there is to
/// see.
std::optional<SituationPair> pair_with_nearest(const SolvedBuild& solved, std::size_t after) {
  constexpr std::size_t most_moves = 4;
  const Build& build = solved.build;
  const auto state_of = [&](std::size_t s) {
    return SolvedState{build.situations[s], solved.solutions[s], static_cast<int>(s)};
  };
  std::optional<SituationPair> nearest;
  for (std::size_t s = 0; s < build.situations.size(); ++s) {
    if (s == after || build.situations[s].engine != build.situations[after].engine) continue;
    auto moved = find_moved(build, build.situations[s], build.situations[after]);
    if (moved.empty() || moved.size() > most_moves) continue;
    if (nearest && nearest->moved.size() <= moved.size()) continue;
    SituationPair pair{state_of(s), state_of(after), std::move(moved)};
    if (!find_story(build, pair, StoryWidth::waiting).empty()) nearest = std::move(pair);
  }
  return nearest;
}

std::vector<Told> tell_all(const SheetContext& context, SituationSheets& made) {
  const Build& build = context.build();
  std::vector<Told> told(build.situations.size());
  for (std::size_t s = 0; s < told.size(); ++s) {
    auto pair = find_pair(context.solved, SituationId{static_cast<std::int32_t>(s)});
    if (!pair) continue;
    const bool is_shown = pair->before.index >= 0 || !find_story(build, *pair, StoryWidth::waiting).empty();
    if (!is_shown) pair = pair_with_nearest(context.solved, s);
    if (!pair) continue;
    if (are_alike(build, *pair))
      made.same_as[s] = pair->before.index;
    else
      told[s].laid = lay_out_in_shares(context, *pair);
  }
  for (const Told& other : told)
    if (other.laid.size() == 1 && covers_before(build, other.laid.front()))
      told[static_cast<std::size_t>(other.pair().before.index)].is_covered = true;
  return told;
}

/// The anchor of the situation's 'then', where it has a sheet.
std::string anchor_of_before(const std::vector<Told>& told, const SituationPair& pair) {
  if (pair.before.index < 0) return {};
  const Told& before = told[static_cast<std::size_t>(pair.before.index)];
  return before.laid.empty() || before.is_covered ? std::string() : anchor_of_situation(pair.before.situation);
}

}  // namespace

SituationSheets make_situation_sheets(const SheetContext& context) {
  const Build& build = context.build();
  SituationSheets made;
  made.anchors.resize(build.situations.size());
  made.same_as.assign(build.situations.size(), -1);
  const std::vector<Told> told = tell_all(context, made);
  const auto set_anchor = [&](const SolvedState& state, Sheet& sheet) {
    std::string& anchor = made.anchors[static_cast<std::size_t>(state.index)];
    if (!anchor.empty()) return;
    anchor = anchor_of_situation(state.situation);
    sheet.items.push_back(AnchorItem{anchor, {sheet.width / 2, Millimetres(20)}});
  };
  for (const Told& one : told) {
    if (one.laid.empty() || one.is_covered) continue;
    const std::string before_anchor = anchor_of_before(told, one.pair());
    for (const LaidPair& laid : one.laid) {
      std::vector<Sheet> sheets = draw_pair(context, laid, before_anchor);
      // The state before is on the first sheet, the situation itself on the last.
      set_anchor(laid.pair.after, sheets.back());
      if (one.laid.size() == 1 && covers_before(build, laid)) set_anchor(laid.pair.before, sheets.front());
      std::move(sheets.begin(), sheets.end(), std::back_inserter(made.sheets));
    }
  }
  return made;
}

}  // namespace loomfolio
