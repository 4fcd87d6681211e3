// SPDX-License-Identifier: MIT
#include "sheets/situation_sheets.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "base/side_by_side.h"
#include "base/text.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/scale_items.h"
#include "sheets/setting_text.h"
#include "sheets/situation_draw.h"
#include "sheets/situation_gather.h"
#include "sheets/situation_legend.h"
#include "sheets/situation_sharing.h"
#include "sheets/situation_state.h"
#include "sheets/situation_text.h"
#include "sheets/works_story.h"

namespace loomfolio {
namespace {

std::string anchor_of_situation(const Situation& situation) { return "live " + situation.name; }

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

/// Whose it is, and that figures are of one.
std::string shared_text(const SheetContext& context, const std::string& letters) {
  if (letters.size() < 2) return {};
  return " " + context.words()("live.shared", {{"letters", letters}, {"letter", hook_up_letter(context.build_index)}});
}

Sheet start_sheet(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor,
                  const std::string& letters) {
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
  const FittedText intro = fit_text(intro_text(context, laid, before_anchor) + shared_text(context, letters),
                                    look::table, body.width, context.measure());
  add_text(sheet.items, {body.x, body.y + Millimetres(11.5)}, intro.text, intro.style, look::grey);
  sheet.items.push_back(TagCloseItem{});
  return sheet;
}

/// What stands below the drawings of a sheet.
struct Foot {
  ShownStates shown = ShownStates::both;
  Block figures, legend;

  Millimetres top(const Rect& body) const { return body.bottom() - legend.height - figures.height + Millimetres(2); }
};

Foot make_foot(const SheetContext& context, const LaidPair& laid, ShownStates shown) {
  const Millimetres width = laid.drawing.page.body.width;
  return {shown, make_spare_figures(context, {&laid, shown}, width), make_situation_legend(context, {{&laid, shown}}, width)};
}

/// The drawings, which end at `bottom`, over their foot.
void fill_sheet(Sheet& sheet, const SheetContext& context, const LaidPair& laid, Foot foot, Millimetres bottom) {
  const Rect& body = laid.drawing.page.body;
  if (foot.shown != ShownStates::after) draw_state(sheet.items, context, laid, Moment::before, laid.frames.front(), bottom);
  if (foot.shown != ShownStates::before) draw_state(sheet.items, context, laid, Moment::after, laid.frames.back(), bottom);
  const Millimetres legend_y = body.bottom() - foot.legend.height + Millimetres(2),
                    figures_y = legend_y - foot.figures.height - Millimetres(1.5);
  place_block(sheet.items, std::move(foot.figures), {body.x, figures_y});
  place_block(sheet.items, std::move(foot.legend), {body.x, legend_y});
}

/// `before_anchor`: where the state before is drawn as a sheet of its own; empty: nowhere.
std::vector<Sheet> draw_pair(const SheetContext& context, const LaidPair& laid, const std::string& before_anchor,
                             const std::string& letters) {
  std::vector<Sheet> sheets;
  const Rect& body = laid.drawing.page.body;
  const auto add = [&](Foot foot, Millimetres bottom, const std::string& anchor) {
    sheets.push_back(start_sheet(context, laid, anchor, letters));
    fill_sheet(sheets.back(), context, laid, std::move(foot), bottom);
  };
  if (laid.arrangement != Arrangement::facing) {
    Foot foot = make_foot(context, laid, ShownStates::both);
    const Millimetres bottom = foot.top(body);
    add(std::move(foot), bottom, {});
    return sheets;
  }
  // Of two sheets that face each other both drawings are of one size.
  Foot before = make_foot(context, laid, ShownStates::before), after = make_foot(context, laid, ShownStates::after);
  const Millimetres bottom = std::min(before.top(body), after.top(body));
  if (before_anchor.empty()) add(std::move(before), bottom, {});
  add(std::move(after), bottom, before_anchor);
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
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const WireId id{static_cast<std::int32_t>(w)};
    const WireState before = make_wire_state(build, pair.before.solution, id), after = make_wire_state(build, pair.after.solution, id);
    if (before.liveness != after.liveness || before.figure != after.figure || (before.direction > 0) != (after.direction > 0)) return false;
  }
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const PartId id{static_cast<std::int32_t>(p)};
    const auto figures_in = [&](const SolvedState& state) { return make_part_state(build, state.situation, state.solution, id).figures; };
    if (figures_in(pair.before) != figures_in(pair.after)) return false;
  }
  return true;
}

/// A situation's story: laid out on one sheet or more; on none when it tells nothing.
struct ToldSituation {
  std::vector<LaidPair> laid;
  bool is_covered = false;  ///< another sheet shows it as its 'before'
  std::string letters;      ///< of the hook-ups that it holds for

  bool is_shared() const { return letters.size() > 1; }
  bool is_drawn() const { return !laid.empty() && !is_covered; }
  /// Else several small ones share a sheet.
  bool has_own_sheets() const { return is_drawn() && (laid.front().arrangement != Arrangement::gathered || is_shared()); }

  const SituationPair& pair() const { return laid.front().pair; }
};

std::vector<ToldSituation> tell_all(const SheetContext& context, SituationSheets& made) {
  const Build& build = context.build();
  std::vector<ToldSituation> told(build.situations.size());
  std::vector<std::optional<SituationPair>> to_lay(told.size());
  for (std::size_t s = 0; s < told.size(); ++s) {
    const SituationId id{static_cast<std::int32_t>(s)};
    auto pair = find_told_pair(context.solved, id);
    if (!pair) continue;
    if (are_alike(build, *pair)) {
      made.same_as[s] = pair->before.index;
      continue;
    }
    const DrawnWhere where = drawn_where(context, id, *pair);
    if (where.is_common != (context.extent == Extent::common) || (!where.is_own && !where.is_common)) {
      made.drawn_on[s] = where.is_common ? "situations" : where.variant + "/situations";
      made.anchors[s] = anchor_of_situation(pair->after.situation);
      continue;
    }
    told[s].letters = letters_of_alike(context, id, *pair);
    to_lay[s] = std::move(pair);
  }
  // Those in which most works take longest: they come first, so that none is waited for alone at the end.
  std::vector<std::pair<int, std::size_t>> order;
  for (std::size_t s = 0; s < told.size(); ++s)
    if (to_lay[s]) order.push_back({-count_working(build, to_lay[s]->after.solution), s});
  std::sort(order.begin(), order.end());
  work_side_by_side(order.size(), [&](std::size_t turn) {
    const std::size_t s = order[turn].second;
    const StoryWidth widest = told[s].is_shared() ? StoryWidth::waiting : StoryWidth::everything;
    told[s].laid = lay_out_in_shares(context, *to_lay[s], widest);
  });
  for (const ToldSituation& other : told)
    if (other.laid.size() == 1 && covers_before(build, other.laid.front()))
      told[static_cast<std::size_t>(other.pair().before.index)].is_covered = true;
  return told;
}

/// The anchor of the situation's 'then', where it has a sheet.
std::string anchor_of_before(const std::vector<ToldSituation>& told, const SituationPair& pair) {
  if (pair.before.index < 0) return {};
  const ToldSituation& before = told[static_cast<std::size_t>(pair.before.index)];
  return before.laid.empty() || before.is_covered ? std::string() : anchor_of_situation(pair.before.situation);
}

/// The sheets of each situation that is told on sheets of its own, by situation and drawing.
std::vector<std::vector<std::vector<Sheet>>> draw_all(const SheetContext& context, const std::vector<ToldSituation>& told) {
  std::vector<std::vector<std::vector<Sheet>>> drawn(told.size());
  work_side_by_side(told.size(), [&](std::size_t s) {
    const ToldSituation& one = told[s];
    if (!one.has_own_sheets()) return;
    const std::string before_anchor = anchor_of_before(told, one.pair());
    for (const LaidPair& laid : one.laid) drawn[s].push_back(draw_pair(context, laid, before_anchor, one.letters));
  });
  return drawn;
}

}  // namespace

SituationSheets make_situation_sheets(const SheetContext& context) {
  const Build& build = context.build();
  SituationSheets made;
  made.anchors.resize(build.situations.size());
  made.same_as.assign(build.situations.size(), -1);
  made.drawn_on.assign(build.situations.size(), context.id_prefix + "situations");
  const std::vector<ToldSituation> told = tell_all(context, made);
  const auto set_anchor = [&](const SolvedState& state, Sheet& sheet) {
    std::string& anchor = made.anchors[static_cast<std::size_t>(state.index)];
    if (!anchor.empty()) return;
    anchor = anchor_of_situation(state.situation);
    sheet.items.push_back(AnchorItem{anchor, {sheet.width / 2, Millimetres(20)}});
  };
  std::vector<std::vector<std::vector<Sheet>>> drawn = draw_all(context, told);
  std::vector<const LaidPair*> gathered;
  for (std::size_t s = 0; s < told.size(); ++s) {
    const ToldSituation& one = told[s];
    if (one.is_drawn() && !one.has_own_sheets()) gathered.push_back(&one.laid.front());
    for (std::size_t l = 0; l < drawn[s].size(); ++l) {
      const LaidPair& laid = one.laid[l];
      std::vector<Sheet>& sheets = drawn[s][l];
      // The state before is on the first sheet, the situation itself on the last.
      set_anchor(laid.pair.after, sheets.back());
      if (one.laid.size() == 1 && covers_before(build, laid)) set_anchor(laid.pair.before, sheets.front());
      std::move(sheets.begin(), sheets.end(), std::back_inserter(made.sheets));
    }
  }
  for (GatheredSheet& gathering : gather_pairs(context, gathered)) {
    for (const LaidPair* laid : gathering.pairs) {
      set_anchor(laid->pair.after, gathering.sheet);
      if (covers_before(build, *laid)) set_anchor(laid->pair.before, gathering.sheet);
    }
    made.sheets.push_back(std::move(gathering.sheet));
  }
  return made;
}

}  // namespace loomfolio
