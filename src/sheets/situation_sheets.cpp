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

namespace loomfolio {
namespace {

enum class Moment : std::uint8_t { before, after };

std::string anchor_of_situation(const Situation& situation) { return "live " + situation.name; }

const SolvedState& state_at(const SituationPair& pair, Moment moment) {
  return moment == Moment::before ? pair.before : pair.after;
}

/// 'Start button: on · engine cranking'.
std::string switches_text(const SheetContext& context, const SituationPair& pair, Moment moment) {
  std::vector<std::string> texts;
  for (const MovedSwitch& moved : pair.moved) {
    Setting setting;
    setting.actuator = moved.actuator;
    setting.position = moment == Moment::before ? moved.before : moved.after;
    texts.push_back(setting_text(context.build(), setting));
  }
  texts.push_back(context.words()(engine_key(state_at(pair, moment).situation.engine)));
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

void draw_state(Items& items, const SheetContext& context, const LaidPair& laid, Moment moment, const Rect& frame) {
  draw_caption(items, context, laid, moment, frame);
  const SolvedState& solved = state_at(laid.pair, moment);
  const DiagramState state = make_diagram_state(context.build(), solved.situation, solved.solution);
  DiagramInk ink{context.build(), laid.drawing.diagram, laid.drawing.laid, context.measure(), {}, context.id_prefix,
                 &state};
  const Millimetres width = to_mm(laid.drawing.laid.width), height = to_mm(laid.drawing.laid.height + zone_head);
  const Rect place{frame.x, frame.y + caption_room, frame.width, frame.height - caption_room};
  const Point middle{place.x + place.width / 2, place.y + place.height / 2};
  Items drawing;
  draw_diagram(drawing, ink, {middle.x - width / 2, middle.y - height / 2 + to_mm(zone_head)});
  if (laid.drawing.scale < 1) scale_items(drawing, middle, laid.drawing.scale);
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
  return text + " " + words(laid.width == StoryWidth::everything ? "live.intro_whole" : "live.intro_part");
}

Sheet start_sheet(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor) {
  const SolvedState& after = laid.pair.after;
  Sheet sheet;
  sheet.title = context.words()(
      "live.title", {{"number", std::to_string(after.index + 1)}, {"situation", situation_name(after.situation)}});
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

void finish_sheet(Sheet& sheet, const SheetContext& context, const LaidPair& laid) {
  const Rect& body = laid.drawing.page.body;
  Block legend = make_situation_legend(context, laid, body.width);
  const Millimetres foot = body.bottom() - legend.height + Millimetres(2);
  place_block(sheet.items, std::move(legend), {body.x, foot});
}

/// `before_anchor`: where the state before is drawn as a sheet of its own; empty: nowhere.
std::vector<Sheet> draw_pair(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor) {
  std::vector<Sheet> sheets;
  if (laid.arrangement != Arrangement::facing) {
    Sheet sheet = start_sheet(context, laid, {});
    draw_state(sheet.items, context, laid, Moment::before, laid.frames[0]);
    draw_state(sheet.items, context, laid, Moment::after, laid.frames[1]);
    finish_sheet(sheet, context, laid);
    sheets.push_back(std::move(sheet));
    return sheets;
  }
  for (const Moment moment : {Moment::before, Moment::after}) {
    if (moment == Moment::before && !before_anchor.empty()) continue;
    Sheet sheet = start_sheet(context, laid, before_anchor);
    draw_state(sheet.items, context, laid, moment, laid.frames[0]);
    finish_sheet(sheet, context, laid);
    sheets.push_back(std::move(sheet));
  }
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

}  // namespace

SituationSheets make_situation_sheets(const SheetContext& context) {
  const Build& build = context.build();
  SituationSheets made;
  made.anchors.resize(build.situations.size());
  std::vector<std::optional<LaidPair>> pairs;
  for (std::size_t s = 0; s < build.situations.size(); ++s) {
    auto pair = find_pair(context.solved, SituationId{static_cast<std::int32_t>(s)});
    pairs.push_back(pair ? std::optional(lay_out_pair(context, *std::move(pair))) : std::nullopt);
    if (pairs.back() && pairs.back()->drawing.scale < look::least_scale) pairs.back().reset();
  }
  std::vector<bool> is_covered(pairs.size(), false);
  for (const auto& pair : pairs)
    if (pair && covers_before(build, *pair)) is_covered[static_cast<std::size_t>(pair->pair.before.index)] = true;
  for (std::size_t s = 0; s < pairs.size(); ++s) {
    if (!pairs[s] || is_covered[s]) continue;
    const SituationPair& pair = pairs[s]->pair;
    const auto before = static_cast<std::size_t>(std::max(pair.before.index, 0));
    const bool is_before_drawn = pair.before.index >= 0 && pairs[before] && !is_covered[before];
    std::vector<Sheet> sheets =
        draw_pair(context, *pairs[s], is_before_drawn ? anchor_of_situation(pair.before.situation) : std::string());
    const Point top{sheets.front().width / 2, Millimetres(20)};
    for (const SolvedState* state : {&pair.after, &pair.before}) {
      if (state->index < 0) continue;
      std::string& anchor = made.anchors[static_cast<std::size_t>(state->index)];
      const bool is_own = state == &pair.after;
      if (!is_own && (!covers_before(build, *pairs[s]) || !anchor.empty())) continue;
      anchor = anchor_of_situation(state->situation);
      sheets.front().items.push_back(AnchorItem{anchor, top});
    }
    std::move(sheets.begin(), sheets.end(), std::back_inserter(made.sheets));
  }
  return made;
}

}  // namespace loomfolio
