// SPDX-License-Identifier: MIT
// Where the labels around a face stand.
#pragma once

#include <vector>

#include "sheets/face_drawing.h"

namespace loomfolio {

/// A label's place in the face's own coordinates, drawn size; `centre` is its middle, the leader ends beside it.
struct PlacedFaceLabel {
  std::size_t label = 0;  ///< index into the labels given
  LabelSide side = LabelSide::left;
  std::vector<Point> leader;  ///< from the terminal outwards; upright, level or at 45 degrees
  Point centre;
  Millimetres width, height;
};

struct FaceLabelRequest {
  Millimetres width, height;  ///< of the face, drawn size
  std::vector<Point> terminals;
  std::vector<Millimetres> reaches;  ///< of the nut, blade or cavity drawn about each, from its middle
  std::vector<Millimetres> one_line_widths;  ///< of the labels set in one line, as at the left and right
  std::vector<Millimetres> stacked_widths;   ///< set one line under the other, as above and below
  std::vector<int> stacked_lines;            ///< how many lines that are
  Millimetres line_height;
  std::vector<Rect> features;  ///< what leaders should not cross: lids, latches, figures
};

std::vector<PlacedFaceLabel> place_face_labels(const FaceLabelRequest& request);

struct FaceLabelPlan {
  std::vector<PlacedFaceLabel> labels;
  double cost = 0;  ///< length of the leaders in mm, and 20 for each feature they cross
};
FaceLabelPlan plan_face_labels(const FaceLabelRequest& request, LabelArrangement arrangement);

}  // namespace loomfolio
