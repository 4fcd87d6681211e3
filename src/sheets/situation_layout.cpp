// SPDX-License-Identifier: MIT
#include "sheets/situation_layout.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "sheets/diagram_draw.h"
#include "sheets/look.h"
#include "sheets/placement_book.h"
#include "sheets/situation_state.h"

namespace loomfolio {
namespace {

constexpr double most_wires_per_area = 34.0 / (380.0 * 230.0);  // more than that was never seen to fit

struct PairRequest {
  const SheetContext& context;
  const SituationPair& pair;
  DiagramState before, after;
  PageShape page;
};

std::string wider(const std::string& a, const std::string& b, const TextStyle& style, const TextMeasure& measure) {
  return measure.measure(a, style).width < measure.measure(b, style).width ? b : a;
}

/// Each part gets a kind of its own, as figures differ.
Build reserve_figures(const PairRequest& request) {
  Build build = request.context.build();
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Kind& kind = build.kind_of(build.parts[p]);
    if (kind.is_connector) continue;
    Kind own = kind_with_figures(kind, {&request.before.parts[p], &request.after.parts[p]}, request.context.measure());
    build.parts[p].kind = KindId{static_cast<std::int32_t>(build.kinds.size())};
    build.kinds.push_back(std::move(own));
  }
  return build;
}

enum class Bands : std::uint8_t { zones, none };

/// Shares of the width asked for, one after the other. What finds no place on a sheet of its own is told in pieces, so it gets more tries.
const std::vector<double> usual_shapes{1.0, 0.7}, patient_shapes{1.0, 0.7, 0.85, 0.55};

/// Everything in one band without a name, which lies closer together.
Build without_zones(Build build) {
  build.zones = {{"", "", {}, {}}};
  for (Part& part : build.parts) part.zone = ZoneId{0};
  for (Splice& splice : build.splices) splice.zone = ZoneId{0};
  for (Earth& earth : build.earths) earth.zone = ZoneId{0};
  return build;
}

std::vector<std::string> widest_flows(const PairRequest& request) {
  std::vector<std::string> figures;
  for (std::size_t w = 0; w < request.before.wires.size(); ++w)
    figures.push_back(wider(request.before.wires[w].figure, request.after.wires[w].figure, look::flow_figure,
                            request.context.measure()));
  return figures;
}

std::vector<Rect> frames_of(const Rect& room, Arrangement arrangement) {
  switch (arrangement) {
    case Arrangement::beside: {
      const Millimetres width = (room.width - state_gap) / 2;
      return {{room.x, room.y, width, room.height}, {room.x + width + state_gap, room.y, width, room.height}};
    }
    case Arrangement::stacked: {
      const Millimetres height = (room.height - state_gap) / 2;
      return {{room.x, room.y, room.width, height}, {room.x, room.y + height + state_gap, room.width, height}};
    }
    case Arrangement::facing:
      return {room};
    case Arrangement::gathered:
      return {{room.x, room.y, (room.width - state_gap) / 2, (room.height - state_gap) / 2 - pair_head}};
  }
  return {};
}

/// Which drawing of a pair it is, from print to print.
std::string name_of_try(const PairRequest& request, StoryWidth width, Arrangement arrangement, Bands bands, StoryShare share) {
  const auto number = [](auto value) { return " " + std::to_string(static_cast<int>(value)); };
  return request.context.build().variant + "/situation " + request.pair.after.situation.name + " after " +
         request.pair.before.situation.name + number(width) + number(arrangement) + number(bands) + number(share.index) +
         number(share.count);
}

bool is_larger(const LaidDiagram& a, const LaidDiagram& b) { return a.scale > b.scale; }

/// The best of a few shapes asked for.
LaidDiagram lay_out_in(const PairRequest& request, const Build& build, const std::vector<std::string>& figures, PartDrawings& drawings,
                       const std::vector<WireId>& wires, const Rect& place, const std::string& name, const std::vector<double>& shapes) {
  const std::vector<DiagramPlan> plans{{{}, wires}};
  const GraphRequest graph{build, plans, 0, request.context.measure(), &figures, &drawings};
  LaidDiagram diagram;
  diagram.plan = plans[0];
  diagram.diagram = make_diagram_graph(graph);
  diagram.page = request.page;
  const auto asked = wish_for_shapes(diagram, place, shapes);
  return lay_out_best(asked, {name, place, look::least_scale, is_larger, true}, request.context.input.placements);
}

/// What the tries for one pair share.
class PairLayout {
 public:
  PairLayout(const SheetContext& context, const SituationPair& pair)
      : request_{context, pair, make_diagram_state(context.build(), pair.before.situation, pair.before.solution),
                 make_diagram_state(context.build(), pair.after.situation, pair.after.solution),
                 across_page(context.input.larger_paper != nullptr ? *context.input.larger_paper
                                                                   : context.input.drawing_paper)},
        build_(reserve_figures(request_)),
        close_(without_zones(build_)),
        figures_(widest_flows(request_)) {}

  struct Try {
    Arrangement arrangement;
    Bands bands;
    double hope = 1;  ///< how many times the usual wires may be tried on that area
  };

  /// Whether it fits; what is made is kept in any case.
  bool fits(StoryWidth width, Try way, StoryShare share = {}) {
    const std::vector<WireId>& wires = story_of(width, share);
    if (wires.empty()) return false;
    const std::vector<Rect> frames = frames_of(drawing_room(request_.page), way.arrangement);
    const Rect place = drawing_in(frames.front(), way.arrangement);
    const double most = most_wires_per_area * place.width.number() * place.height.number();
    if (static_cast<double>(wires.size()) > most * way.hope) return false;
    if (!tried_.insert({way.arrangement, way.bands, wires}).second) return false;  // as in a wider story, which did not fit
    PlacementBook* book = request_.context.input.placements;
    const std::string name = name_of_try(request_, width, way.arrangement, way.bands, share);
    if (book != nullptr && book->was_refused(name)) {
      book->refuse(name);
      return false;
    }
    made_.drawing = lay_out_in(request_, way.bands == Bands::zones ? build_ : close_, figures_, drawings_, wires, place, name,
                               way.arrangement == Arrangement::facing ? patient_shapes : usual_shapes);
    made_.width = width;
    made_.arrangement = way.arrangement;
    made_.frames = frames;
    made_.share = share;
    const bool is_fitting = made_.drawing.scale >= look::least_scale;
    if (book != nullptr && is_fitting) book->keep(made_.drawing.asked, made_.drawing.laid);
    if (book != nullptr && !is_fitting) book->refuse(name);
    return is_fitting;
  }

  /// The last try.
  LaidPair take() {
    made_.pair = request_.pair;
    made_.before = std::move(request_.before);
    made_.after = std::move(request_.after);
    return std::move(made_);
  }

 private:
  const std::vector<WireId>& story_of(StoryWidth width, StoryShare share) {
    const auto [found, is_new] = stories_.try_emplace({width, share.index, share.count});
    if (is_new) found->second = find_story(request_.context.build(), request_.pair, width, share);
    return found->second;
  }

  PairRequest request_;
  LaidPair made_;
  Build build_, close_;
  std::vector<std::string> figures_;
  PartDrawings drawings_;  ///< of either build: they differ in zones alone
  std::map<std::tuple<StoryWidth, int, int>, std::vector<WireId>> stories_;  ///< by width, index and count of the share
  std::set<std::tuple<Arrangement, Bands, std::vector<WireId>>> tried_;
};

constexpr double no_limit = 1e9;
constexpr int most_shares = 8;

bool is_printable(const LaidPair& laid) {
  return !laid.drawing.plan.wires.empty() && laid.drawing.scale >= look::least_scale;
}

}  // namespace

Rect drawing_in(const Rect& frame, Arrangement arrangement) {
  const Millimetres caption = caption_room_of(arrangement);
  return {frame.x, frame.y + caption, frame.width, frame.height - caption};
}

Kind kind_with_figures(const Kind& kind, const std::vector<const PartState*>& states, const TextMeasure& measure) {
  Kind made = kind;
  for (std::size_t t = 0; t < made.terminals.size(); ++t) {
    std::string widest;
    for (const PartState* state : states) widest = wider(widest, state->figures[t], look::terminal_name, measure);
    if (!widest.empty()) made.terminals[t].id += std::string(figure_gap) + widest;
  }
  return made;
}

LaidPair lay_out_pair(const SheetContext& context, const SituationPair& pair, StoryWidth widest) {
  std::vector<StoryWidth> widths;
  for (const StoryWidth width : {StoryWidth::everything, StoryWidth::waiting, StoryWidth::flowing})
    if (width >= widest) widths.push_back(width);
  constexpr PairLayout::Try together[] = {{Arrangement::beside, Bands::zones},
                                          {Arrangement::beside, Bands::none},
                                          {Arrangement::stacked, Bands::zones},
                                          {Arrangement::stacked, Bands::none}};
  PairLayout layout(context, pair);
  // What is left last is tried in any case on a sheet of its own, and with some hope on half of one.
  const auto with_hope = [](PairLayout::Try way, double hope) {
    way.hope = hope;
    return way;
  };
  const auto fits_quarter = [&](StoryWidth width) {
    constexpr double hope = 1.2;  // little drawings lie closer: of 214 tries the fullest that fitted had 0.9
    return layout.fits(width, {Arrangement::gathered, Bands::zones, hope}) ||
           layout.fits(width, {Arrangement::gathered, Bands::none, hope});
  };
  // Where a quarter of a sheet holds what changes, that is enough: several pairs then share a sheet.
  bool is_laid = std::any_of(widths.begin(), widths.end(), [&](StoryWidth width) {
    return width != StoryWidth::flowing && fits_quarter(width);
  });
  is_laid = is_laid || std::any_of(widths.begin(), widths.end(), [&](StoryWidth width) {
    if (width == StoryWidth::flowing && fits_quarter(width)) return true;
    const double hope = width == StoryWidth::flowing ? 1.5 : 1;
    return std::any_of(std::begin(together), std::end(together),
                       [&](PairLayout::Try way) { return layout.fits(width, with_hope(way, hope)); });
  });
  for (const StoryWidth width : widths)
    for (const Bands bands : {Bands::zones, Bands::none}) {
      // The fullest that ever fitted had 1.32. What flows has no narrower story after it.
      const double hope = width == StoryWidth::everything ? 1 : width == StoryWidth::waiting ? 1.37 : no_limit;
      is_laid = is_laid || layout.fits(width, {Arrangement::facing, bands, hope});
    }
  return layout.take();
}

std::vector<LaidPair> lay_out_in_shares(const SheetContext& context, const SituationPair& pair, StoryWidth widest) {
  std::vector<LaidPair> laid;
  laid.push_back(lay_out_pair(context, pair, widest));
  if (is_printable(laid.front())) return laid;
  for (int count = 2; count <= most_shares; ++count) {
    laid.clear();
    bool is_whole = true;
    for (int index = 0; index < count && is_whole; ++index) {
      const StoryShare share{index, count};
      // Fewer consumers than shares: some shares tell nothing.
      if (find_story(context.build(), pair, StoryWidth::flowing, share).empty()) continue;
      PairLayout layout(context, pair);
      is_whole = layout.fits(StoryWidth::flowing, {Arrangement::facing, Bands::zones, no_limit}, share) ||
                 layout.fits(StoryWidth::flowing, {Arrangement::facing, Bands::none, no_limit}, share);
      laid.push_back(layout.take());
    }
    if (is_whole && !laid.empty()) return laid;
  }
  return {};
}

}  // namespace loomfolio
