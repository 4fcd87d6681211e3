// SPDX-License-Identifier: MIT
// The engine as a list of its passes.
#include <algorithm>
#include <optional>

#include "base/side_by_side.h"
#include "layout/decorate.h"
#include "layout/draw.h"
#include "layout/joints.h"
#include "layout/keep.h"
#include "layout/label.h"
#include "layout/laid.h"
#include "layout/measure.h"
#include "layout/place.h"
#include "layout/rough.h"
#include "layout/slide_ends.h"
#include "layout/tighten.h"
#include "layout/untangle.h"
#include "layout/wishes.h"

namespace loomfolio {
namespace laying {
namespace {

constexpr int second_sweeps = 6, tight_rounds = 4;
constexpr std::size_t most_for_all_rounds = 600;  ///< wires; beyond, more than two rounds and eight spots are not worth their time
constexpr std::size_t most_for_tight = 250;       ///< wires; no sheet holds so many, and the work grows faster than their square
constexpr long worth_a_label = 5000;              ///< what a wire saves where it may lose its label: 5 cm of wire
/// So many times too large, the first drawing says that no other will fit. Of some 550 situations of samples and test machines 147 fitted;
/// all but three of them had a first drawing below it.
constexpr double hopeless = 1.18;
/// The same after the first sweep of the first search: of 306 drawings that fitted in the end two looked larger then, of 904 that did not
/// fit 480.
constexpr double hopeless_at_once = 1.33;
constexpr double most_for_fit = 1.2;  ///< what a drawing that fits may cost, as a multiple of the cheapest

/// Rows suit parts wired above and below; columns suit parts wired at their ends.
Flow choose_flow(const Graph& graph) {
  std::size_t beside = 0;
  for (const GraphWire& w : graph.wires) {
    beside += !is_upright(graph.boxes[w.from_box].terminals[w.from_terminal].side);
    beside += !is_upright(graph.boxes[w.to_box].terminals[w.to_terminal].side);
  }
  return beside * 5 > graph.wires.size() * 6 ? Flow::across : Flow::down;
}

/// What a round draws: the streets that each wire goes through, and about where bodies stand.
struct Outline {
  Routes routes;
  std::vector<Grid> body_x;
  friend bool operator==(const Outline&, const Outline&) = default;
};

Outline outline_of(const Rough& rough) { return {rough.routes(), rough.body_x()}; }

/// Courses, tracks and places for bodies that stand in rows.
Laid draw_round(const Plan& plan, const Outline& outline, Tracks& tracks) {
  const Streets streets = make_streets(plan);
  order_alleys(plan, streets, outline.routes, outline.body_x, tracks);
  place_across(plan, streets, outline.routes, tracks);
  order_channels(plan, streets, outline.routes, tracks);
  place_down(plan, streets, tracks);
  return draw(plan, streets, outline.routes, tracks);
}

/// From one start to a drawing without dots, hops and labels.
struct Drawn {
  Plan plan;
  Laid laid;
  long cost = INT64_MAX;
};

bool has_joints(const Graph& graph) {
  return std::any_of(graph.boxes.begin(), graph.boxes.end(), [](const GraphBox& b) { return b.joint.pitch > 0; });
}

/// One search, and whether it looks for places for pairs; all results are judged by how pairs stand.
struct Attempt {
  Search search;
  bool heeds_pairs = true;
};

void ignore_pairs(RouteWeights& weights) { weights.pair_parted = weights.pair_stacked = weights.pair_between = weights.pair_unlike = 0; }

/// How many times a drawing is too large for the room, by its worse side; 1 or less: it fits.
double excess(const Laid& laid, const LayoutRoom& room) {
  return std::max(static_cast<double>(laid.width) / static_cast<double>(room.width),
                  static_cast<double>(laid.height) / static_cast<double>(room.height));
}

/// Judged by a drawing of the places as they stand.
bool is_hopeless(Plan plan, const LayoutRoom& room) {
  settle_joints(plan);
  Rough rough(plan);
  rough.reroute(3);
  Tracks tracks;
  return excess(draw_round(plan, outline_of(rough), tracks), room) > hopeless_at_once;
}

/// With a room, places that are hopeless at once are drawn as they are.
Drawn draw_from(const Graph& graph, Flow flow, const Attempt& attempt, const std::optional<LayoutRoom>& room = std::nullopt) {
  const Search& search = attempt.search;
  Drawn out;
  out.plan = make_plan(graph, flow);
  if (!attempt.heeds_pairs) ignore_pairs(out.plan.weights);
  rank_bodies(out.plan);
  settle_joints(out.plan);
  if (search.start == Start::arranged) {
    arrange(out.plan);
    settle_joints(out.plan);
  }
  const bool has_hope = refine(out.plan, search, room ? IsHopeless([&](const Plan& plan) { return is_hopeless(plan, *room); }) : IsHopeless());
  settle_joints(out.plan);
  if (has_hope && has_joints(graph)) {  // their wires now come from other sides, so another place may suit them
    refine(out.plan, {search.start, search.spots, second_sweeps});
    settle_joints(out.plan);
  }
  out.plan.weights = RouteWeights{};  // judged by how pairs stand, whatever it looked for
  Rough rough(out.plan);
  const int rounds = graph.wires.size() > most_for_all_rounds ? 2 : 4;
  Outline outline;
  for (int round = 0; round < rounds; ++round) {
    rough.reroute(3);
    Outline next = outline_of(rough);
    if (round > 0 && next == outline) break;  // the same drawing, now and in all rounds to come
    outline = std::move(next);
    Tracks tracks;
    Laid drawn = draw_round(out.plan, outline, tracks);
    const long cost = measure(drawn).cost(out.plan.weights) + rough.total_place_charge();
    if (cost < out.cost) {
      out.cost = cost;
      out.laid = std::move(drawn);
    }
    rough.take_places(tracks);
  }
  return out;
}

/// Small graphs can afford several searches; large ones get fewer sweeps, so that the time for a wire grows no faster than the logarithm
/// of their number: what later sweeps would still find is a hundredth of the crossings. The best search heeds no pairs, so that a pair is never drawn at a price above its own.
std::vector<Attempt> choose_searches(const Graph& graph) {
  const std::size_t wires = graph.wires.size();
  if (wires <= 100) return {{{Start::filled, 12, 24}, false}, {{Start::arranged, 8, 24}}, {{Start::filled, 6, 24}}};
  if (wires <= 200) return {{{Start::arranged, 12, 8}}};
  const std::size_t spots = wires <= most_for_all_rounds ? 12 : 8;
  return {{{Start::filled, spots, static_cast<int>(std::clamp<std::size_t>(2400 / wires, 3, 8))}}};
}

/// Each search stands alone, so they run side by side; their results are in their order, whoever ends first.
std::vector<Drawn> search_beside(const Graph& graph, Flow flow, const std::vector<Attempt>& searches) {
  std::vector<std::optional<Drawn>> found(searches.size());
  work_side_by_side(searches.size(), [&](std::size_t s) { found[s] = draw_from(graph, flow, searches[s]); });
  std::vector<Drawn> drawn;
  for (std::optional<Drawn>& one : found) drawn.push_back(std::move(*one));
  return drawn;
}

/// The cheapest drawing; of those that cost little more, one that fits comes first.
Drawn& choose(std::vector<Drawn>& drawn, const std::optional<LayoutRoom>& room) {
  const auto cheaper = [](const Drawn& a, const Drawn& b) { return a.cost < b.cost; };
  Drawn& cheapest = *std::min_element(drawn.begin(), drawn.end(), cheaper);
  if (!room) return cheapest;
  const double most = most_for_fit * static_cast<double>(cheapest.cost);
  Drawn* fitting = nullptr;
  for (Drawn& one : drawn) {
    if (static_cast<double>(one.cost) > most || excess(one.laid, *room) > 1) continue;
    if (fitting == nullptr || cheaper(one, *fitting)) fitting = &one;
  }
  return fitting != nullptr ? *fitting : cheapest;
}

/// Dots, hops and labels; the wires whose label finds no room.
std::vector<int> finish(const Plan& plan, Laid& laid) {
  add_dots(plan, laid);
  add_hops(laid);
  return add_labels(plan, laid);
}

/// What one wire alone costs.
long cost_of(const Course& course) {
  Laid alone;
  alone.courses.push_back(course);
  return measure(alone).cost(RouteWeights{});
}

/// The same with its runs drawn together. A wire that loses its label by it is held as it was unless much is saved; where that does not
/// bring the labels back, the drawing stays as it is.
std::vector<int> finish_tight(const Plan& plan, Laid& laid) {
  const Laid bare = laid;
  const std::vector<int> missing = finish(plan, laid);
  if (bare.courses.size() > most_for_tight) return missing;
  std::vector<char> held(bare.courses.size(), 0);
  for (int round = 0; round < tight_rounds; ++round) {
    Laid tight = bare;
    tighten_runs(plan, tight, held);
    slide_ends(plan, tight, held);
    std::vector<int> without = finish(plan, tight);
    bool is_good = true;
    for (const int w : without) {
      const auto wire = static_cast<std::size_t>(w);
      const long saved = cost_of(bare.courses[wire]) - cost_of(tight.courses[wire]);
      if (saved >= worth_a_label || std::binary_search(missing.begin(), missing.end(), w)) continue;
      held[wire] = 1;
      is_good = false;
    }
    if (!is_good) continue;
    laid = std::move(tight);
    return without;
  }
  return missing;
}

Laid lay_out_with(const Graph& graph, Flow flow, const std::optional<LayoutRoom>& room) {
  std::vector<Attempt> searches = choose_searches(graph);
  std::vector<Drawn> drawn;
  if (room) {
    drawn.push_back(draw_from(graph, flow, searches.front(), room));
    searches.erase(searches.begin());
    if (excess(drawn.front().laid, *room) > hopeless) searches.clear();
  }
  for (Drawn& other : search_beside(graph, flow, searches)) drawn.push_back(std::move(other));
  Drawn& best = choose(drawn, room);
  Laid& laid = best.laid;
  untangle_joints(best.plan, laid);
  for (int w : finish_tight(best.plan, laid))
    laid.warnings.push_back({graph.wires[w].name, "no room for its label beside the wire"});
  return std::move(laid);
}

}  // namespace
}  // namespace laying

FirstRows first_rows(const Graph& graph) {
  laying::Plan plan = laying::make_plan(graph, laying::choose_flow(graph));
  laying::rank_bodies(plan);
  return std::move(plan.rows);
}

std::optional<Laid> lay_out_near(const Graph& graph, const Laid& earlier, const Graph& earlier_graph) {
  if (graph == earlier_graph) return earlier;
  if (!laying::asks_the_same(graph, earlier_graph)) return std::nullopt;
  auto kept = laying::keep_placement(graph, earlier, earlier_graph);
  if (kept && !laying::pins_hold(graph, *kept)) kept.reset();
  return kept;
}

Laid lay_out(const Graph& graph, const LayoutOptions& options) {
  if (options.earlier != nullptr && options.earlier_graph != nullptr)
    if (auto kept = lay_out_near(graph, *options.earlier, *options.earlier_graph)) return std::move(*kept);
  return laying::lay_out_with(graph, laying::choose_flow(graph), options.room);
}

std::vector<Laid> lay_out_each(const std::vector<Graph>& graphs, const LayoutOptions& options) {
  std::vector<Laid> laid(graphs.size());
  work_side_by_side(graphs.size(), [&](std::size_t g) { laid[g] = lay_out(graphs[g], options); });
  return laid;
}

}  // namespace loomfolio
