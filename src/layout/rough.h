// SPDX-License-Identifier: MIT
// A rough drawing that is quick to change: bodies at estimated places, each wire on the best of a few simple courses, and crossings
// counted as the best order of every pair of runs would have them. Placing is judged by it.
#pragma once

#include <vector>

#include "layout/tracks.h"

namespace loomfolio::laying {

/// Where one end of a run goes.
enum class RunEnd : std::uint8_t { low_side, high_side, open_low, open_high };

/// A run in a channel (along x) or an alley (along y), as `StripPiece` has it, but with just two ends.
struct RoughRun {
  Grid low = 0, high = 0;
  Grid at[2] = {0, 0};
  std::uint8_t is_low[2] = {0, 0}, is_high[2] = {0, 0};   ///< ends on the low and on the high side
  RunEnd end[2] = {RunEnd::low_side, RunEnd::low_side};
  signed char heading[2] = {0, 0};  ///< of an open end: which way it turns beyond
  bool is_open = false;             ///< has an open end
  int wire = -1;
  void set_ends(RunEnd a, RunEnd b) {
    end[0] = a, end[1] = b;
    for (int e = 0; e < 2; ++e) is_low[e] = end[e] == RunEnd::low_side, is_high[e] = end[e] == RunEnd::high_side;
    is_open = a >= RunEnd::open_low || b >= RunEnd::open_low;
  }
};

/// Crossings of runs that turn across each other beyond an open end when a stands before b.
int count_headings(const RoughRun& a, const RoughRun& b);

/// Crossings of two runs in the better of their two orders.
inline int count_crossings(const RoughRun& a, const RoughRun& b) {
  if (a.low >= b.high || b.low >= a.high) return 0;
  int a_first = 0, b_first = 0;
  for (int e = 0; e < 2; ++e) {
    const int a_in_b = (a.at[e] > b.low) & (a.at[e] < b.high), b_in_a = (b.at[e] > a.low) & (b.at[e] < a.high);
    a_first += (b_in_a & b.is_low[e]) + (a_in_b & a.is_high[e]);
    b_first += (a_in_b & a.is_low[e]) + (b_in_a & b.is_high[e]);
  }
  if (a.is_open && b.is_open) a_first += count_headings(a, b), b_first += count_headings(b, a);
  return a_first < b_first ? a_first : b_first;
}

/// A place for a body: in a row, before which body of its column.
struct Spot {
  int row = 0, place = 0;
};

class Rough {
 public:
  explicit Rough(Plan& plan);
  /// Places and courses of everything anew from the plan's rows.
  void rebuild();
  long total() const { return total_; }

  /// What moving a body there would change, roughly; nothing is changed.
  /// A trial that cannot come below `bound` is given up and gives `bound`.
  long try_move(int body, Spot spot, long bound);
  long try_swap(int a, int b, long bound);
  long try_mirror(int body, long bound);

  /// Spots of the body's zone, nearest first to where its wires pull it; at most `most`.
  std::vector<Spot> near_spots(int body, std::size_t most) const;
  long charge_of(int body) const;   ///< what its wires cost now

  /// Takes each wire out and finds its best course among all others, `rounds` times.
  void reroute(int rounds);
  /// Takes the places of a finished round instead of estimates, and finds all courses anew.
  void take_places(const Tracks& tracks);
  /// The courses as they are now.
  Routes routes() const;
  std::vector<Grid> body_x() const;

 private:
  struct Passing {
    int row = 0, left_body = -1;
    Grid x = 0;
  };
  struct Course {
    std::vector<std::pair<int, RoughRun>> runs;  ///< strip and run
    std::vector<Passing> passes;                 ///< rows gone through, in order
    int from_channel = -1, to_channel = -1;      ///< -1: straight across one alley
    long own = 0;                                ///< length and bends
    long crossings = 0;                          ///< with what was there when it was added
    void clear() { runs.clear(), passes.clear(), from_channel = to_channel = -1, own = crossings = 0; }
  };
  struct Pose {
    int row = 0;
    Grid x = 0;
    bool is_mirrored = false;
  };
  struct EndPoint {
    int row = 0, body = -1;
    Side side = Side::top;
    Grid x = 0, y = 0;    ///< y from the top of the row
    int above = 0, below = 0;   ///< pins of the same side
    /// Where its run stands when it goes to that channel: of pins on one side, the one nearest to the channel turns first.
    Grid run_x(int channel, Grid pitch) const {
      if (is_upright(side)) return x;
      const Grid off = pitch * (channel <= row ? above : below);
      return side == Side::right ? x + off : x - off;
    }
  };
  struct Choice {
    int from_channel = 0, to_channel = 0;
    bool turns_late = false;   ///< goes down near the first end, across near the second
  };

  void estimate_places();
  void find_courses();
  void spread(int row, int column, Grid left, Grid right);
  void relax();
  Grid wish_of(int body) const;
  void sort_rows();
  EndPoint end_point(int pin) const;
  int alley_strip(int alley) const { return static_cast<int>(plan_.rows.size()) + 1 + alley; }
  int alley_beside(const EndPoint& e) const;
  int channel_strip(int channel) const;
  int left_body_at(int row, Grid x) const;
  void pass_row(int row, Grid wish, int& left_body, Grid& x) const;
  void draw_course(int wire, const EndPoint& a, const EndPoint& b, const Choice& route, Course& course) const;
  bool draw_direct(int wire, const EndPoint& a, const EndPoint& b, Course& course) const;
  void find_best(int wire, Course& best);
  void offer(Course& course, Course& best, long& best_cost) const;
  long count_crossings_of(const Course& course, long stop_at) const;
  void add_best(int wire);
  void take_out(int wire);
  void remove(int wire);
  long change(const std::vector<int>& bodies, const std::vector<Pose>& poses, long bound);
  Pose pose_at(int body, Spot spot) const;
  Grid row_middle(int row) const { return row_y_[row] + row_height_[row] / 2; }

  Plan& plan_;
  std::vector<Pose> pose_;
  std::vector<std::vector<int>> wires_of_body_;
  std::vector<std::vector<int>> row_bodies_;      ///< all columns, left to right
  std::vector<Grid> row_y_, row_height_, channel_y_, column_left_, column_right_;
  std::vector<std::pair<int, int>> side_rank_;    ///< by pin: pins above and below it on its side
  std::vector<Grid> gap_after_;                   ///< room that a body wants to its right
  std::vector<std::vector<RoughRun>> strips_;     ///< channels, then alleys by left body, then leftmost alleys by row
  std::vector<Course> course_;
  // Kept between trials, so that trying costs no memory:
  Course drawn_;
  std::vector<Course> old_courses_;
  std::vector<Pose> old_poses_;
  std::vector<int> touched_;
  long total_ = 0;
};

}  // namespace loomfolio::laying
