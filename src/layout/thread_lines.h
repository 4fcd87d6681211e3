// SPDX-License-Identifier: MIT
// The lines on which a new wire may run, and what blocks and crosses each. Only thread*.cpp include this.
#pragma once

#include <utility>
#include <vector>

#include "layout/thread.h"

namespace loomfolio::laying {

enum class LineAxis : std::uint8_t { level, upright };

class ThreadLines {
 public:
  ThreadLines(const ThreadRequest& request, const Spacing& spacing, GridBox window);
  const std::vector<Grid>& xs() const { return xs_; }
  const std::vector<Grid>& ys() const { return ys_; }
  /// Whether the wire may run from `low` to `high` on that line; `line` counts ys for level lines and xs for upright
  /// ones.
  bool is_free(LineAxis axis, int line, Grid low, Grid high);
  /// Wires crossed after `from` up to and with `to`, in either direction.
  int count_crossed(LineAxis axis, int line, Grid from, Grid to);
  /// How much of that stretch is too near to something that can be pushed aside.
  Grid squeezed(LineAxis axis, int line, Grid low, Grid high);
  /// How far a wire runs straight out of its terminal before it may turn.
  Grid distance_from(int wire) const;
  Grid stub() const { return may_squeeze() ? squeezed_stub : clear_; }

 private:
  struct Line {
    bool is_known = false;
    std::vector<std::pair<Grid, Grid>> blocked;  ///< open intervals, merged, in order
    std::vector<Grid> crossed;                   ///< in order
    std::vector<std::pair<Grid, Grid>> tight;    ///< as `blocked`: where others must give way
  };
  Line& line_of(LineAxis axis, int line);
  static constexpr Grid squeezed_stub = 24;  ///< an even part of what is needed: parts and runs are farther apart
  bool may_squeeze() const { return request_.squeeze == Squeeze::allowed; }
  void add_middles(std::vector<Grid>& lines, std::vector<Grid> obstacles) const;
  void block_near_boxes(Line& line, bool is_level, Grid at) const;
  void block_beside(Line& line, const Segment& s, Grid at) const;
  void fill(Line& line, LineAxis axis, Grid at) const;
  bool is_exit_line(LineAxis axis, Grid at) const;
  bool is_own_stub(const Segment& s) const;

  const ThreadRequest& request_;
  Spacing spacing_;
  GridBox window_;
  Grid clear_ = 0;  ///< from a part
  std::vector<Grid> xs_, ys_;
  std::vector<Line> levels_, uprights_;
  std::vector<Segment> near_;  ///< those within reach of the window
};

}  // namespace loomfolio::laying
