// SPDX-License-Identifier: MIT
// A part's or connector's face, drawn to scale, each terminal named outside the outline at the end of a leader line.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/kind.h"
#include "model/words.h"
#include "sheets/draw.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// What is written beside a terminal of the face.
struct FaceLabel {
  Point at;                             ///< mm from the face's top left, true size
  std::string mark;                     ///< the terminal's id, bold
  std::vector<std::string> codes = {};  ///< number and colours of each of its wires; may be empty
};

enum class LabelSide : std::uint8_t { left, right, top, bottom };

/// Where labels stand: whichever way is shorter, at both sides, or above and below.
enum class LabelArrangement : std::uint8_t { shortest, beside, above_below };

/// A place on a picture's edge, and the side at which a line leaves it.
struct LeadEnd {
  Point at;
  LabelSide side = LabelSide::left;
};

/// What a line that meets a minus stays away from it more than from other marks.
inline constexpr Millimetres dash_gap{0.7};
/// Whether the mark has a minus at its left or right end, where a line would seem to go on in it.
bool has_dash_at(const std::string& mark, LabelSide end);

/// How many times smaller than true the face is drawn: 1, 2, 5 or 10, the least with which it is at most that large.
int face_scale(const Face& face, Millimetres most_width, Millimetres most_height);

/// The face with its labels around it; no caption.
Block draw_face(const Face& face, const std::vector<FaceLabel>& labels, int scale, const TextMeasure& measure);

/// A face whose marks other lines go on from.
struct FaceWithEnds {
  Block block;
  std::vector<LeadEnd> ends;  ///< by label: the middle of its outer edge, in the block's places
  double cost = 0;            ///< length of its own leaders in mm, and 20 for each latch or figure they cross
};
FaceWithEnds draw_face_with_ends(const Face& face, const std::vector<FaceLabel>& labels, int scale,
                                 LabelArrangement arrangement, const TextMeasure& measure);

/// 'Wire side, 1:1' and what tells which way up, set under the face to that width.
Block face_caption(const Face& face, int scale, Millimetres width, const Words& words, const TypeSetting& setting);

/// A bar 50 mm long by which a reader sees whether the print is at true scale.
Block scale_bar(const Words& words, const TypeSetting& setting);

}  // namespace loomfolio
