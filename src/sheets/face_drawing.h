// SPDX-License-Identifier: MIT
// A part's or connector's face, drawn to scale, each terminal named outside the outline at the end of a leader line.
#pragma once

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

/// How many times smaller than true the face is drawn: 1, 2, 5 or 10, the least with which it is at most that large.
int face_scale(const Face& face, Millimetres most_width, Millimetres most_height);

/// The face with its labels around it; no caption.
Block draw_face(const Face& face, const std::vector<FaceLabel>& labels, int scale, const TextMeasure& measure);

/// 'Wire side, 1:1' and what tells which way up, set under the face to that width.
Block face_caption(const Face& face, int scale, Millimetres width, const Words& words, const TypeSetting& setting);

/// A bar 50 mm long by which a reader sees whether the print is at true scale.
Block scale_bar(const Words& words, const TypeSetting& setting);

}  // namespace loomfolio
