// SPDX-License-Identifier: MIT
// A pair of states laid out: one layout for both, so that the eye finds each wire at the same place in either. What is
// drawn is as much as fits: everything live, else what changes.
#pragma once

#include <vector>

#include "sheets/diagram_draw.h"
#include "sheets/diagram_part.h"
#include "sheets/diagram_plan.h"
#include "sheets/situation_paths.h"

namespace loomfolio {

enum class Arrangement : std::uint8_t {
  beside,   ///< before at the left, after at the right
  stacked,  ///< before above, after below
  facing,   ///< a sheet each
  gathered,  ///< each state fits a quarter of a sheet, so that several pairs share one
};

struct LaidPair {
  SituationPair pair;
  DiagramState before, after;  ///< of the pair, as drawn
  StoryWidth width = StoryWidth::everything;
  Arrangement arrangement = Arrangement::beside;
  LaidDiagram drawing;       ///< plan, graph, laid, page and scale; id and title unset
  std::vector<Rect> frames;  ///< places of the drawings: two, or one that holds on both facing sheets; none if gathered
  StoryShare share;          ///< what of the story the drawing tells
};

/// Room above each drawing for its caption; between two drawings; above a pair that shares its sheet, for its name.
inline constexpr Millimetres caption_room{15.5}, wide_caption_room{11}, state_gap{6}, pair_head{8};
/// What a frame leaves for the drawing, below its caption.
Rect drawing_in(const Rect& frame, Arrangement arrangement);

/// A drawing as wide as its sheet has its caption on fewer lines.
constexpr Millimetres caption_room_of(Arrangement arrangement) {
  return arrangement == Arrangement::stacked ? wide_caption_room : caption_room;
}

/// The kind with room for figures kept beside the marks of its terminals, the widest of the states: each is then named
/// by mark, gap and figure.
Kind kind_with_figures(const Kind& kind, const std::vector<const PartState*>& states, const TextMeasure& measure);

/// A pair that fits no sheet even so has a drawing smaller than look::least_scale, and one that tells nothing no wires:
/// they are not to be printed.
LaidPair lay_out_pair(const SheetContext& context, const SituationPair& pair, StoryWidth widest = StoryWidth::everything);

/// The pair on as many sheets as it needs: one, or, where its story fits none, each a share of it; none when it tells
/// nothing, or when not even a quarter of it fits a sheet.
std::vector<LaidPair> lay_out_in_shares(const SheetContext& context, const SituationPair& pair,
                                        StoryWidth widest = StoryWidth::everything);

}  // namespace loomfolio
