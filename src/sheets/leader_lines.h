// SPDX-License-Identifier: MIT
// Lines that join places on one picture with the same places on another at its right: around either picture on tracks,
// then through the channel between the two. Geometry only, in mm.
#pragma once

#include <vector>

#include "sheets/face_drawing.h"

namespace loomfolio {

/// Least distance of two lines that run side by side.
inline constexpr Millimetres leader_pitch{1.3};

/// Ends on one picture, led to one of its edges.
struct LeadOut {
  std::vector<std::vector<Point>> lines;  ///< by end: from the end to the edge
  Rect extent;                            ///< the picture with its tracks
  std::vector<std::size_t> order;         ///< indices of ends, as they reach the edge from top to bottom
};

/// `to` is left or right. Ends at the far side go around: the upper `over` of them above the picture, the others below.
/// No two lines of one picture cross.
LeadOut lead_out(const Rect& picture, const std::vector<LeadEnd>& ends, LabelSide to, std::size_t over);

/// Pairs that stand in one order at the left and in the other at the right: lines that must cross.
int count_inversions(const std::vector<std::size_t>& left, const std::vector<std::size_t>& right);

/// Heights at which one line enters and leaves the channel.
struct ChannelLine {
  Millimetres left, right;
};

struct LeadChannel {
  std::vector<std::vector<Point>> lines;  ///< by line: level, upright, level; or only level
  int crossings = 0;
  int clashes = 0;  ///< lines on one another: none wherever the search found a way
};

/// The line as it is drawn: level pieces go in an arch over upright ones of `others`, as wires do.
std::vector<PathPiece> arched_line(const std::vector<Point>& line, const std::vector<std::vector<Point>>& others);

/// Lines between x = `from` and x = `to`. Heights at one side are at least leader_pitch apart.
LeadChannel route_channel(const std::vector<ChannelLine>& lines, Millimetres from, Millimetres to);

}  // namespace loomfolio
