// SPDX-License-Identifier: MIT
// Pass: places again, now judged by a rough drawing that counts crossings. Each part in turn, the dearest first, tries
// the spots nearest to where its wires pull it, changing places with those who stand there, and turning over where it
// may, and takes the best. Between sweeps the drawing is made anew, which says what the sweep was worth: the best sweep
// is what remains.
#include <algorithm>
#include <set>
#include <vector>

#include "layout/place.h"
#include "layout/rough.h"
#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

constexpr int most_vain_sweeps = 4;

class Refining {
 public:
  Refining(Plan& plan, const Search& search) : plan_(plan), search_(search), rough_(plan) {}
  bool run(const IsHopeless& is_hopeless);

 private:
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
  bool improve(int body);
  bool sweep();
  std::vector<int> standing() const;

  Plan& plan_;
  const Search& search_;
  Rough rough_;
};

Refining::Change Refining::best_change(int body) {
  Change best;
  const int column = plan_.bodies[body].column;
  std::vector<int> tried;
  for (const Spot& spot : rough_.near_spots(search_.spots)) {
    look_at(best, {Kind::move, spot, -1, rough_.try_move(spot, best.gain)});
    for (const int place : {spot.place - 1, spot.place}) {
      const int other = place < 0 ? -1 : body_at(plan_.rows[spot.row][column], place, body);
      if (other < 0 || std::find(tried.begin(), tried.end(), other) != tried.end() || !may_swap(plan_, body, other)) continue;
      tried.push_back(other);
      look_at(best, {Kind::swap, {}, other, rough_.try_swap(other, best.gain)});
    }
  }
  if (plan_.bodies[body].may_mirror) look_at(best, {Kind::mirror, {}, -1, rough_.try_mirror(best.gain)});
  return best;
}

bool Refining::improve(int body) {
  rough_.lift(body);
  const Change change = best_change(body);
  switch (change.kind) {
    case Kind::none:
      rough_.put_back();
      return false;
    case Kind::move:
      rough_.move(change.spot);
      break;
    case Kind::swap:
      rough_.swap(change.other);
      break;
    case Kind::mirror:
      rough_.mirror();
      break;
  }
  return true;
}

bool Refining::sweep() {
  std::vector<std::pair<long, int>> turn;
  for (int b = 0; b < static_cast<int>(plan_.bodies.size()); ++b) turn.push_back({-rough_.charge_of(b), b});
  std::sort(turn.begin(), turn.end());
  bool helped = false;
  for (const auto& [charge, b] : turn) helped |= improve(b);
  return helped;
}

/// Who stands where and which way over: all that a sweep goes by.
std::vector<int> Refining::standing() const {
  std::vector<int> key;
  for (const auto& row : plan_.rows)
    for (const auto& column : row) {
      key.insert(key.end(), column.begin(), column.end());
      key.push_back(-1);
    }
  for (const Body& body : plan_.bodies) key.push_back(body.is_mirrored);
  return key;
}

bool Refining::run(const IsHopeless& is_hopeless) {
  auto best_rows = plan_.rows;
  auto best_bodies = plan_.bodies;
  long best = rough_.total();
  std::set<std::vector<int>> seen{standing()};
  for (int i = 0, vain = 0; i < search_.sweeps && vain < most_vain_sweeps && sweep(); ++i) {
    if (!seen.insert(standing()).second) break;  // from here on the sweeps would only repeat themselves
    if (i == 0 && is_hopeless && is_hopeless(plan_)) return false;
    rough_.rebuild();
    ++vain;
    if (rough_.total() >= best) continue;
    best = rough_.total();
    best_rows = plan_.rows;
    best_bodies = plan_.bodies;
    vain = 0;
  }
  plan_.rows = best_rows;
  plan_.bodies = best_bodies;
  return true;
}

}  // namespace

bool refine(Plan& plan, const Search& search, const IsHopeless& is_hopeless) { return Refining(plan, search).run(is_hopeless); }

}  // namespace loomfolio::laying
