// SPDX-License-Identifier: MIT
// Each pair may stand beside or below itself; it takes the first free place from the top in which either goes. What a
// place leaves is cut into the strip at its right and the strip below it.
#include "sheets/situation_gather.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "base/text.h"
#include "sheets/diagram_draw.h"
#include "sheets/drawing_rooms.h"
#include "sheets/names.h"
#include "sheets/situation_draw.h"
#include "sheets/situation_legend.h"

namespace loomfolio {
namespace {

constexpr Millimetres pair_gap{9}, pair_legend_room{20}, least_pair_caption{92}, drawing_pad{2}, figures_room{8};
constexpr double growths[] = {1.4, 1.3, 1.2, 1.15, 1.1, 1.05, 1.0};  // of the drawings on a sheet that they leave half empty

struct Placed {
  const LaidPair* laid = nullptr;
  Rect place;
  bool is_beside = true;  ///< the later state at the right of the earlier; else below it
};

/// One state with its caption, the drawing at `growth` times its size.
Rect state_size(const LaidPair& laid, double growth) {
  const double scale = laid.drawing.scale * (laid.drawing.scale < 1 ? 1.0 : growth);
  const Millimetres width = to_mm(laid.drawing.laid.width) * scale,
                    height = to_mm(laid.drawing.laid.height + zone_head) * scale;
  return {{}, {}, std::max(width, least_pair_caption), caption_room + height + drawing_pad};
}

class Packer {
 public:
  Packer(const Rect& room, double growth) : growth_(growth) { free_.push_back(room); }

  std::optional<Placed> place(const LaidPair& laid, Millimetres figures) {
    const Rect state = state_size(laid, growth_);
    const auto beside = [&](Rect& r) { r.width = state.width * 2 + state_gap, r.height = state.height; };
    const auto below = [&](Rect& r) { r.width = state.width, r.height = state.height * 2 + state_gap; };
    Rect wide, high;
    beside(wide);
    below(high);
    wide.height += pair_head + figures;
    high.height += pair_head + figures;
    for (std::size_t f = 0; f < free_.size(); ++f)
      for (const bool is_beside : {true, false}) {
        const Rect& needed = is_beside ? wide : high;
        if (needed.width > free_[f].width || needed.height > free_[f].height) continue;
        return Placed{&laid, take(f, needed), is_beside};
      }
    return std::nullopt;
  }

 private:
  Rect take(std::size_t index, const Rect& needed) {
    const Rect free = free_[index];
    const Rect placed{free.x, free.y, needed.width, needed.height};
    free_.erase(free_.begin() + static_cast<std::ptrdiff_t>(index));
    const Millimetres right_x = placed.right() + pair_gap, below_y = placed.bottom() + pair_gap;
    const Rect right{right_x, free.y, std::max(Millimetres(0), free.right() - right_x), free.height},
        below{free.x, below_y, placed.width, std::max(Millimetres(0), free.bottom() - below_y)},
        right_short{right.x, right.y, right.width, placed.height},
        below_wide{free.x, below_y, free.width, below.height};
    // Cut so that the larger of the two pieces is as large as can be.
    const auto area = [](const Rect& r) { return r.width.number() * r.height.number(); };
    const bool is_tall = std::max(area(right), area(below)) > std::max(area(right_short), area(below_wide));
    for (const Rect& piece : {is_tall ? right : right_short, is_tall ? below : below_wide}) free_.push_back(piece);
    std::sort(free_.begin(), free_.end(),
              [](const Rect& a, const Rect& b) { return std::pair(a.y, a.x) < std::pair(b.y, b.x); });
    return placed;
  }

  double growth_;
  std::vector<Rect> free_;
};

Rect room_of(const PageShape& page) {
  const Rect& body = page.body;
  return {body.x, body.y + drawing_title_room, body.width, body.height - drawing_title_room - pair_legend_room};
}

Millimetres figures_height(const SheetContext& context, const LaidPair& laid) {
  return make_spare_figures(context, {&laid, ShownStates::both}, least_pair_caption).height.number() > 0 ? figures_room
                                                                                                   : Millimetres(0);
}

/// As many as fit, the first in any case tried first.
std::vector<Placed> fill(const SheetContext& context, std::vector<const LaidPair*>& waiting) {
  Packer packer(room_of(waiting.front()->drawing.page), 1);
  std::vector<Placed> placed;
  for (std::size_t i = 0; i < waiting.size();) {
    if (const auto place = packer.place(*waiting[i], figures_height(context, *waiting[i]))) {
      placed.push_back(*place);
      waiting.erase(waiting.begin() + static_cast<std::ptrdiff_t>(i));
    } else {
      ++i;
    }
  }
  return placed;
}

struct Grown {
  std::vector<Placed> placed;
  double growth = 1;
};

/// The same pairs as large as the sheet allows.
Grown grow(const SheetContext& context, std::vector<Placed> placed) {
  for (const double growth : growths) {
    Packer packer(room_of(placed.front().laid->drawing.page), growth);
    std::vector<Placed> larger;
    for (const Placed& one : placed)
      if (const auto place = packer.place(*one.laid, figures_height(context, *one.laid))) larger.push_back(*place);
    if (larger.size() == placed.size()) return {std::move(larger), growth};
  }
  return {std::move(placed), 1};
}

std::string pair_title(const SheetContext& context, const LaidPair& laid) {
  const SolvedState& after = laid.pair.after;
  return context.words()(
      "live.title", {{"number", std::to_string(after.index + 1)}, {"situation", situation_name(after.situation)}});
}

void draw_placed(Sheet& sheet, const SheetContext& context, const Placed& one, double growth, bool is_alone) {
  const LaidPair& laid = *one.laid;
  const Rect state = state_size(laid, growth), &place = one.place;
  if (!is_alone) {
    const FittedText title = fit_text(pair_title(context, laid), look::heading, place.width, context.measure());
    sheet.items.push_back(TagOpenItem{"H2", {}});
    add_text(sheet.items, {place.x, place.y + Millimetres(4.4)}, title.text, title.style);
    sheet.items.push_back(TagCloseItem{});
  }
  Rect frame{place.x, place.y + pair_head, state.width, state.height};
  draw_state(sheet.items, context, laid, Moment::before, frame, frame.bottom() + Millimetres(100));
  if (one.is_beside)
    frame.x += state.width + state_gap;
  else
    frame.y += state.height + state_gap;
  draw_state(sheet.items, context, laid, Moment::after, frame, frame.bottom() + Millimetres(100));
  place_block(sheet.items, make_spare_figures(context, {&laid, ShownStates::both}, place.width),
              {place.x, frame.bottom() + Millimetres(0.5)});
}

GatheredSheet draw_sheet(const SheetContext& context, std::vector<Placed> placed) {
  std::sort(placed.begin(), placed.end(), [](const Placed& a, const Placed& b) {
    return a.laid->pair.after.index < b.laid->pair.after.index;
  });
  const Grown grown = grow(context, std::move(placed));
  GatheredSheet made;
  Sheet& sheet = made.sheet;
  const PageShape& page = grown.placed.front().laid->drawing.page;
  const Rect& body = page.body;
  std::vector<std::string> numbers;
  std::vector<ShownPair> shown;
  bool is_whole = true;
  for (const Placed& one : grown.placed) {
    made.pairs.push_back(one.laid);
    shown.push_back({one.laid, ShownStates::both});
    numbers.push_back(std::to_string(one.laid->pair.after.index + 1));
    is_whole = is_whole && one.laid->width == StoryWidth::everything;
  }
  const Words& words = context.words();
  const bool is_alone = grown.placed.size() == 1;
  sheet.title = is_alone ? pair_title(context, *made.pairs.front())
                         : words("live.title_several", {{"numbers", join(numbers, ", ")}});
  sheet.width = page.width;
  sheet.height = page.height;
  const auto line = [&](const char* tag, const std::string& text, const TextStyle& style, double down, Colour colour) {
    const FittedText fitted = fit_text(text, style, body.width, context.measure());
    sheet.items.push_back(TagOpenItem{tag, {}});
    add_text(sheet.items, {body.x, body.y + Millimetres(down)}, fitted.text, fitted.style, colour);
    sheet.items.push_back(TagCloseItem{});
  };
  line("H1", sheet.title, look::title, 6, look::ink);
  line("P", words("live.intro") + " " + words(is_whole ? "live.intro_whole" : "live.intro_part"), look::table, 11.5,
       look::grey);
  for (const Placed& one : grown.placed) draw_placed(sheet, context, one, grown.growth, is_alone);
  Block legend = make_situation_legend(context, shown, body.width);
  const Millimetres y = body.bottom() - legend.height + Millimetres(2);
  place_block(sheet.items, std::move(legend), {body.x, y});
  return made;
}

}  // namespace

std::vector<GatheredSheet> gather_pairs(const SheetContext& context, const std::vector<const LaidPair*>& pairs) {
  std::vector<GatheredSheet> sheets;
  std::vector<const LaidPair*> waiting = pairs;
  while (!waiting.empty()) sheets.push_back(draw_sheet(context, fill(context, waiting)));
  return sheets;
}

}  // namespace loomfolio
