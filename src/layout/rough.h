// SPDX-License-Identifier: MIT
// A rough drawing that is quick to change: bodies at estimated places, each wire on the best of a few simple courses,
// and crossings counted as the best order of every pair of runs would have them. Placing is judged by it.
#pragma once

#include <tuple>
#include <vector>

#include "layout/tracks.h"

namespace loomfolio::laying {

/// Where one end of a run goes.
enum class RunEnd : std::uint8_t { low_side, high_side, open_low, open_high };

/// A run in a channel (along x) or an alley (along y), as `StripPiece` has it, but with just two ends.
struct RoughRun {
  Grid low = 0, high = 0;
  Grid at[2] = {0, 0};
  RunEnd end[2] = {RunEnd::low_side, RunEnd::low_side};
  signed char heading[2] = {0, 0};  ///< of an open end: which way it turns beyond
  bool is_open() const { return end[0] >= RunEnd::open_low || end[1] >= RunEnd::open_low; }
};

/// The runs of one strip, each property in a row of its own, so that crossings with all of them are counted many at a
/// time; all rows in one piece of memory, as most strips hold few runs.
class RoughStrip {
 public:
  void clear();
  void add(int wire, const RoughRun& run);
  void remove_last_of(int wire);
  std::size_t count() const { return count_; }
  /// Crossings of a run with those of the strip, each pair in the better of its two orders.
  int count_crossings(const RoughRun& run) const;

 private:
  int count_closed(const RoughRun& run) const;
  int count_open(const RoughRun& run) const;
  static constexpr int nowhere = INT32_MAX;  ///< lies in no run
  enum Property : std::uint8_t {
    wire,
    low,
    high,
    low_end_0,  ///< where the ends on that side are; nowhere for other ends
    low_end_1,
    high_end_0,
    high_end_1,
    opens_low,  ///< 0 or 1
    opens_high,
    heading_low,  ///< of the open ends
    heading_high,
    property_count
  };
  static constexpr Grid no_run[property_count] = {-1, nowhere, nowhere, nowhere, nowhere, nowhere, nowhere, 0, 0, 0, 0};
  /// Runs are counted so many at a time; in the cells behind the last one stands a run that crosses nothing.
  static constexpr std::size_t at_once = 8;
  Grid* row_of(Property property) { return cells_.data() + property * room_; }
  const Grid* row_of(Property property) const { return cells_.data() + property * room_; }
  void write(std::size_t cell, const Grid (&values)[property_count]);
  void make_room();
  std::vector<Grid> cells_;  ///< row after row, each of `room_` cells, a multiple of `at_once`
  std::size_t count_ = 0, room_ = 0;
};

class Rough {
 public:
  explicit Rough(Plan& plan);
  /// Places and courses of everything anew from the plan's rows.
  void rebuild();
  long total() const { return total_; }

  /// Takes a body and its wires off the drawing, to try it elsewhere.
  void lift(int body);
  /// Puts it and its wires back as they were.
  void put_back();
  /// What standing there would change against the drawing before the body was lifted, roughly. A trial that cannot come
  /// below `bound` is given up and gives at least `bound`.
  long try_move(Spot spot, long bound);
  long try_swap(int other, long bound);
  long try_mirror(long bound);
  /// Puts the lifted body there for good, in the plan too. Neighbours stay where they are until all is made anew.
  void move(Spot spot);
  void swap(int other);
  void mirror();

  /// Spots of the lifted body's zone, nearest first to where its wires pull it; at most `most`, and those in the row of its pair.
  std::vector<Spot> near_spots(std::size_t most);
  long charge_of(int body) const;  ///< what its wires cost now

  /// Takes each wire out and finds its best course among all others, `rounds` times.
  void reroute(int rounds);
  /// Takes the places of a finished round instead of estimates, and finds all courses anew.
  void take_places(const Tracks& tracks);
  /// The courses as they are now.
  Routes routes() const;
  std::vector<Grid> body_x() const;
  /// What it costs that places do not read downwards from the supply.
  long total_place_charge() const;

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
    Grid x = 0, y = 0;         ///< y from the top of the row
    int above = 0, below = 0;  ///< pins of the same side
    /// Where its run stands when it goes to that channel: of pins on one side, the one nearest to the channel turns
    /// first.
    Grid run_x(int channel, Grid pitch) const {
      if (is_upright(side)) return x;
      const Grid off = pitch * (channel <= row ? above : below);
      return side == Side::right ? x + off : x - off;
    }
  };
  struct Choice {
    int from_channel = 0, to_channel = 0;
    bool turns_late = false;  ///< goes down near the first end, across near the second
  };

  /// An end point but for where its body stands.
  struct Reach {
    Side side = Side::top;
    Grid x = 0, y = 0;  ///< x from the body's left
    int above = 0, below = 0;
  };

  void gather_reaches();
  void estimate_places();
  void find_courses();
  void spread(int row, int column, Grid left, Grid right);
  void relax();
  Grid wish_of(int body) const;
  void sort_rows();
  EndPoint end_point(int pin) const;
  static std::pair<int, int> channels_of(const EndPoint& end, const EndPoint& other);
  int alley_strip(int alley) const { return static_cast<int>(plan_.rows.size()) + 1 + alley; }
  int alley_beside(const EndPoint& e) const;
  int channel_strip(int channel) const;
  int left_body_at(int row, Grid x) const;
  void pass_row(int row, Grid wish, int& left_body, Grid& x) const;
  bool draw_course(const EndPoint& a, const EndPoint& b, const Choice& route, long limit, Course& course) const;
  bool draw_direct(const EndPoint& a, const EndPoint& b, Course& course) const;
  /// The cheapest course below `limit`; false where every one costs as much, and `best` is then of no use.
  bool find_best(const EndPoint& a, const EndPoint& b, long limit, Course& best);
  long least_cost(const EndPoint& a, const EndPoint& b) const;
  long least_cost(const EndPoint& a, const EndPoint& b, int from_channel, int to_channel) const;
  void offer(Course& course, Course& best, long& best_cost) const;
  long count_crossings_of(const Course& course, long stop_at) const;
  void add_best(int wire) { add_below(wire, end_point(from_pin(wire)), end_point(to_pin(wire)), INT64_MAX); }
  /// Adds its best course between those ends if that costs less than `limit`.
  bool add_below(int wire, const EndPoint& a, const EndPoint& b, long limit);
  void take_out(int wire);
  void remove(int wire);
  struct Kept {
    int wire;
    Course course;
    // At the place on trial:
    EndPoint from, to;
    long least = 0;  ///< what it can come to
  };
  void keep_wires(int body);
  void restore_wires(std::size_t from);
  void add_kept();
  long try_pose(const Pose& pose, long charge, long bound);
  void stand(int body, const Pose& pose);
  void leave(int body);
  long try_kept(long charge, long bound);
  long crowding_of(int body, Spot spot) const;
  long place_charge(int body, int row, Grid x) const;
  long place_charge_at(int body, const Pose& pose) const {
    return place_charge(body, pose.row, pose.x) + apart_charge_at(body, pose) + pair_charge_at(body, pose);
  }
  long pair_charge_at(int body, const Pose& pose) const;
  int partner_of(int body) const;
  long apart_charge_at(int body, const Pose& pose) const;
  GridBox box_at(int body, const Pose& pose) const;
  long height_charge(int body, Grid y) const;
  long tie_charge(int body, int row, int other) const;
  std::pair<Pose, Pose> swapped_poses(int other) const;
  Pose pose_at(Spot spot) const;  ///< of the lifted body
  Grid row_middle(int row) const { return row_y_[row] + row_height_[row] / 2; }

  Plan& plan_;
  std::vector<Pose> pose_;
  std::vector<std::vector<int>> wires_of_body_;
  std::vector<std::vector<int>> row_bodies_;  ///< all columns, left to right
  std::vector<Grid> row_y_, row_height_, channel_y_, column_left_, column_right_;
  std::vector<Grid> channel_top_;  ///< by channel: rows and channels above it
  std::vector<Reach> reaches_;                  ///< two a pin: as its body is given, and mirrored
  std::vector<Grid> gap_after_;                 ///< room that a body wants to its right
  std::vector<int> depth_;                      ///< by body: below the supply; -1: anywhere
  std::vector<RoughStrip> strips_;              ///< channels, then alleys by left body, then leftmost alleys by row
  std::vector<Course> course_;
  // Kept between trials, so that trying costs no memory:
  struct Block {
    long sum;
    int count;
  };
  std::vector<Block> blocks_;
  std::vector<Grid> offsets_;
  std::vector<std::tuple<Grid, int, int>> offered_;  ///< distance, row, place
  Course drawn_;
  std::vector<Kept> kept_;  ///< wires off the drawing, the first kept_count_ of these
  std::size_t kept_count_ = 0;
  std::vector<char> is_kept_;  ///< by wire
  int lifted_ = -1;
  Grid lifted_wish_ = 0;  ///< where its wires would have it: nothing else moves while it is off
  long total_before_ = 0;
  long total_ = 0;
};

}  // namespace loomfolio::laying
