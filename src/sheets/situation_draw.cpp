// SPDX-License-Identifier: MIT
#include "sheets/situation_draw.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "base/text.h"
#include "sheets/diagram_draw.h"
#include "sheets/drawing_rooms.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/scale_items.h"
#include "sheets/setting_text.h"
#include "sheets/situation_state.h"
#include "sheets/situation_text.h"
#include "sheets/works_story.h"

namespace loomfolio {
namespace {

const SolvedState& state_at(const SituationPair& pair, Moment moment) {
  return moment == Moment::before ? pair.before : pair.after;
}

/// 'Start button: on · Key: on · engine cranking': what is moved first, then what else is set, last the engine.
std::vector<std::string> switches_told(const SheetContext& context, const SituationPair& pair, Moment moment) {
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
  return texts;
}

constexpr std::string_view between_switches = " \u00b7 ";

std::string switches_text(const SheetContext& context, const SituationPair& pair, Moment moment) {
  return join(switches_told(context, pair, moment), between_switches);
}

/// 'Works: neutral lamp. Battery: 12.6 V, gives 0.17 A.'
std::string outcome_text(const SheetContext& context, const SolvedState& state) {
  const Words& words = context.words();
  const std::string working = working_text(context.build(), state.solution, words);
  std::string text = words("live.works", {{"what", working.empty() ? words("situations.nothing") : working}});
  const auto battery = read_battery(context.build(), state.solution);
  if (!battery) return text;
  const char* key = std::abs(battery->amperes.number()) < least_flow.number() ? "live.battery_rests"
                    : battery->amperes.number() > 0 ? "live.battery_gives"
                                                    : "live.battery_takes";
  text += " " + words(key,
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
  std::vector<std::string> told = switches_told(context, laid.pair, moment);
  std::string outcome = outcome_text(context, state);
  if (laid.arrangement == Arrangement::stacked)
    return line(join(told, between_switches) + "   " + outcome, look::text, 9.8, look::ink);
  // What finds no room in the line of the switches begins the next.
  while (told.size() > 1 &&
         context.measure().measure(join(told, between_switches), look::least).width > frame.width) {
    outcome = told.back() + std::string(between_switches) + outcome;
    told.pop_back();
  }
  line(join(told, between_switches), look::text, 9.8, look::ink);
  line(outcome, look::table, 13.8, look::grey);
}

constexpr Millimetres foot_gap{4}, band_gap{2.5}, most_above{8};

/// With its zones' names above it; a drawing without zones has none.
Grid head_of(const LaidPair& laid) {
  const auto& zones = laid.drawing.diagram.graph.zones;
  return std::any_of(zones.begin(), zones.end(), [](const GraphZone& zone) { return !zone.name.empty(); }) ? zone_head : 0;
}

/// Both states of a pair are drawn as large as the smaller of their places allows.
double scale_of(const LaidPair& laid, const Rect& own_frame, Millimetres foot) {
  const Millimetres width = to_mm(laid.drawing.laid.width), height = to_mm(laid.drawing.laid.height + head_of(laid));
  double growth = most_drawing_growth;
  std::vector<Rect> frames = laid.frames;
  frames.push_back(own_frame);
  for (const Rect& frame : frames) {
    const Rect place = drawing_in(frame, laid.arrangement);
    growth = std::min({growth, place.width / width, (std::min(foot - foot_gap, place.bottom()) - place.y) / height});
  }
  return std::max(std::min(growth, laid.drawing.scale < 1 ? laid.drawing.scale : most_drawing_growth), look::least_scale);
}

}  // namespace

/// The drawing stands below its caption, with no more than `most_above` between them, and gives way to the legend at `foot`.
void draw_state(Items& items, const SheetContext& context, const LaidPair& laid, Moment moment, const Rect& frame,
                Millimetres foot) {
  draw_caption(items, context, laid, moment, frame);
  const DiagramState& state = moment == Moment::before ? laid.before : laid.after;
  DiagramInk ink{context.build(), laid.drawing.diagram, laid.drawing.laid, context.measure(), {}, context.id_prefix,
                 &state};
  const Millimetres width = to_mm(laid.drawing.laid.width), height = to_mm(laid.drawing.laid.height + head_of(laid));
  const Rect place = drawing_in(frame, laid.arrangement);
  const double scale = scale_of(laid, frame, foot);
  const Millimetres half = height * scale / 2;
  Point middle{place.x + place.width / 2, place.y + place.height / 2};
  middle.y = std::max(std::min({middle.y, foot - foot_gap - half, place.y + most_above + half}), place.y + half);
  ink.bands_end = middle.y + (foot - band_gap - middle.y) / scale;
  Items drawing;
  draw_diagram(drawing, ink, {middle.x - width / 2, middle.y - height / 2 + to_mm(head_of(laid))});
  if (scale != 1) scale_items(drawing, middle, scale);
  items.push_back(TagOpenItem{
      "Figure", context.words()("live.alternative", {{"state", switches_text(context, laid.pair, moment)}})});
  std::move(drawing.begin(), drawing.end(), std::back_inserter(items));
  items.push_back(TagCloseItem{});
}

}  // namespace loomfolio
