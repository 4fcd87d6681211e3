// SPDX-License-Identifier: MIT
// Pass: places again, now judged by a rough drawing that counts crossings. Each part in turn, the dearest first, tries the spots
// nearest to where its wires pull it, changing places with those who stand there, and turning over where it may. What a trial
// promises is believed only when the drawing, made anew, is better.
#include <algorithm>

#include "layout/place.h"
#include "layout/rough.h"

namespace loomfolio::laying {
namespace {

class Refining {
 public:
  explicit Refining(Plan& plan) : plan_(plan), rough_(plan) {}
  bool run_round();

 public:
  enum class Kind : std::uint8_t { none, move, swap, mirror };
  struct Change {
    Kind kind = Kind::none;
    Spot spot;
    int other = -1;
    long gain = 0;
  };
  void look_at(Change& best, Change change) const {
    if (change.gain < best.gain) best = change;
  }
  Change best_change(int body);
  void apply(int body, const Change& change);
  bool improve(int body);

  Plan& plan_;
  Rough rough_;
};

Refining::Change Refining::best_change(int body) {
  Change best;
  const int column = plan_.bodies[body].column;
  for (const Spot& spot : rough_.near_spots(body, 12)) {
    look_at(best, {Kind::move, spot, -1, rough_.try_move(body, spot, best.gain)});
    std::vector<int> row = plan_.rows[spot.row][column];
    std::erase(row, body);
    for (const int place : {spot.place - 1, spot.place})
      if (place >= 0 && place < static_cast<int>(row.size())) look_at(best, {Kind::swap, {}, row[place], rough_.try_swap(body, row[place], best.gain)});
  }
  if (plan_.bodies[body].may_mirror) look_at(best, {Kind::mirror, {}, -1, rough_.try_mirror(body, best.gain)});
  return best;
}

void Refining::apply(int body, const Change& change) {
  const int column = plan_.bodies[body].column;
  if (change.kind == Kind::mirror) {
    plan_.bodies[body].is_mirrored = !plan_.bodies[body].is_mirrored;
  } else if (change.kind == Kind::move) {
    std::erase(plan_.rows[plan_.bodies[body].row][column], body);
    auto& row = plan_.rows[change.spot.row][column];
    row.insert(row.begin() + change.spot.place, body);
    plan_.bodies[body].row = change.spot.row;
  } else if (change.kind == Kind::swap) {
    auto& own = plan_.rows[plan_.bodies[body].row][column];
    auto& other = plan_.rows[plan_.bodies[change.other].row][column];
    std::iter_swap(std::find(own.begin(), own.end(), body), std::find(other.begin(), other.end(), change.other));
    std::swap(plan_.bodies[body].row, plan_.bodies[change.other].row);
  }
}

bool Refining::improve(int body) {
  const Change change = best_change(body);
  if (change.kind == Kind::none) return false;
  const long before = rough_.total();
  const auto old_rows = plan_.rows;
  const auto old_bodies = plan_.bodies;
  apply(body, change);
  rough_.rebuild();
  if (rough_.total() < before) return true;
  plan_.rows = old_rows;
  plan_.bodies = old_bodies;
  rough_.rebuild();
  return false;
}

bool Refining::run_round() {
  std::vector<std::pair<long, int>> turn;
  for (int b = 0; b < static_cast<int>(plan_.bodies.size()); ++b) turn.push_back({-rough_.charge_of(b), b});
  std::sort(turn.begin(), turn.end());
  bool helped = false;
  for (const auto& [charge, b] : turn) helped |= improve(b);
  return helped;
}

}  // namespace

void refine(Plan& plan) {
  Refining refining(plan);
  for (int round = 0; round < 12 && refining.run_round(); ++round) {}
}

}  // namespace loomfolio::laying
