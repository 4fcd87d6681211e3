// SPDX-License-Identifier: MIT
// Pass: the order of the upright runs in each alley. The order also decides what crosses on the channels that the runs open onto, so
// each pair is priced there too: once with the one run a little to the left, once with the other. Alleys that share pairs depend on
// each other; a second sweep knows the orders of the first.
#include <algorithm>

#include "layout/tracks.h"

namespace loomfolio::laying {
namespace {

constexpr Grid order_scale = 64;   // estimated places are multiplied by this, so that orders fit between them

/// One wire's leg in an alley.
struct Member {
  int wire = -1;
  std::size_t leg = 0;
};

class Ordering {
 public:
  Ordering(const Plan& plan, const Streets& streets, const Routes& routes, const std::vector<Grid>& body_x, Tracks& tracks)
      : plan_(plan), streets_(streets), routes_(routes), body_x_(body_x), tracks_(tracks) {}
  void run(int sweeps);

 private:
  StripPiece make_piece(const Member& member) const;
  Grid place_of(const ChannelEnd& end, int wire) const;
  StripPiece channel_piece(const Member& member, StripSide end, Grid at) const;
  bool opens(const Member& m, StripSide end) const;
  std::vector<int> prices(int alley, StripSide end) const;
  void order(int alley);

  const Plan& plan_;
  const Streets& streets_;
  const Routes& routes_;
  const std::vector<Grid>& body_x_;
  Tracks& tracks_;
  std::vector<std::vector<Member>> members_;  ///< by alley
  std::vector<std::vector<int>> rank_;        ///< by alley: wires in order, once known
};

/// True when the wire goes on from this leg to the channel above (low) or below.
bool Ordering::opens(const Member& m, StripSide end) const {
  const Route& route = routes_[m.wire];
  const int channel = streets_.alleys[route[m.leg].street].row + (end == StripSide::low ? 0 : 1);
  return (m.leg > 0 && route[m.leg - 1].street == channel) || (m.leg + 1 < route.size() && route[m.leg + 1].street == channel);
}

StripPiece Ordering::make_piece(const Member& m) const {
  StripPiece piece;
  piece.wire = m.wire;
  piece.is_open_low = opens(m, StripSide::low);
  piece.is_open_high = opens(m, StripSide::high);
  const auto add = [&](int pin) {
    const StripSide side = side_of(plan_, pin) == Side::right ? StripSide::low : StripSide::high;
    piece.pins.push_back({plan_.bodies[plan_.pins[pin].body].drop + offset_of(plan_, pin).y, side, pin});
  };
  if (m.leg == 0) add(from_pin(m.wire));
  if (m.leg + 1 == routes_[m.wire].size()) add(to_pin(m.wire));
  return piece;
}

/// About where a channel's run is joined, with the order that its alley is known to have.
Grid Ordering::place_of(const ChannelEnd& end, int wire) const {
  if (end.pin >= 0) return (body_x_[plan_.pins[end.pin].body] + offset_of(plan_, end.pin).x) * order_scale;
  const auto& rank = rank_[end.alley];
  const auto it = std::find(rank.begin(), rank.end(), wire);
  const Grid order = it == rank.end() ? 0 : std::min<Grid>(order_scale / 2 - 2, static_cast<Grid>(it - rank.begin()));
  return end.x * order_scale + order;
}

/// The wire's run on the channel beyond the alley's end, joined to the alley at `at`.
StripPiece Ordering::channel_piece(const Member& m, StripSide end, Grid at) const {
  const Route& route = routes_[m.wire];
  const int channel = streets_.alleys[route[m.leg].street].row + (end == StripSide::low ? 0 : 1);
  const bool is_next = m.leg + 1 < route.size() && route[m.leg + 1].street == channel;
  const std::size_t leg = is_next ? m.leg + 1 : m.leg - 1;
  auto [own, other] = ends_of_leg(plan_, streets_, route, m.wire, leg);
  if (!is_next) std::swap(own, other);
  StripPiece piece;
  piece.wire = m.wire;
  piece.pins = {{at, own.side, 0}, {place_of(other, m.wire), other.side, 1}};
  return piece;
}

/// Crossings on the channel beyond one end of the alley, for each ordered pair.
std::vector<int> Ordering::prices(int alley, StripSide end) const {
  const std::vector<Member>& members = members_[alley];
  const std::size_t count = members.size();
  std::vector<int> out(count * count, 0);
  std::vector<StripPiece> left(count), right(count);   // each wire's run when it opens a little to the left, or to the right
  std::vector<Grid> at(count);
  std::vector<char> open(count);
  for (std::size_t i = 0; i < count; ++i) {
    at[i] = routes_[members[i].wire][members[i].leg].x * order_scale;
    open[i] = opens(members[i], end);
    if (open[i]) left[i] = right[i] = channel_piece(members[i], end, at[i]);
  }
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t j = 0; j < count; ++j) {
      if (i == j || !open[i] || !open[j]) continue;
      const Grid middle = (at[i] + at[j]) / 2;
      left[i].pins[0].at = middle - order_scale / 2;
      right[j].pins[0].at = middle + order_scale / 2;
      out[i * count + j] = count_least_crossings(left[i], right[j]);
    }
  return out;
}

void Ordering::order(int alley) {
  Strip& strip = tracks_.alleys[alley];
  strip = {};
  for (const Member& m : members_[alley]) strip.pieces.push_back(make_piece(m));
  order_strip(strip, plan_, StripKind::alley, {prices(alley, StripSide::low), prices(alley, StripSide::high)});
  rank_[alley].clear();
  for (int piece : strip.order) {
    const int wire = strip.pieces[piece].wire;
    if (std::find(rank_[alley].begin(), rank_[alley].end(), wire) == rank_[alley].end()) rank_[alley].push_back(wire);
  }
}

void Ordering::run(int sweeps) {
  tracks_.alleys.assign(streets_.alleys.size(), {});
  rank_.assign(streets_.alleys.size(), {});
  members_.assign(streets_.alleys.size(), {});
  for (int w = 0; w < static_cast<int>(routes_.size()); ++w)
    for (std::size_t leg = 0; leg < routes_[w].size(); ++leg)
      if (routes_[w][leg].in_alley) members_[routes_[w][leg].street].push_back({w, leg});
  for (int sweep = 0; sweep < sweeps; ++sweep)
    for (int a = 0; a < static_cast<int>(streets_.alleys.size()); ++a)
      if (!members_[a].empty()) order(a);
}

}  // namespace

int open_piece(const Strip& strip, int wire, StripSide end) {
  for (std::size_t i = 0; i < strip.pieces.size(); ++i) {
    const StripPiece& p = strip.pieces[i];
    if (p.wire == wire && (end == StripSide::low ? p.is_open_low : p.is_open_high)) return static_cast<int>(i);
  }
  return -1;
}

std::pair<ChannelEnd, ChannelEnd> ends_of_leg(const Plan& plan, const Streets& streets, const Route& route, int wire, std::size_t index) {
  const int channel = route[index].street;
  const auto towards = [&](bool back) {
    ChannelEnd end;
    if (back ? index == 0 : index + 1 == route.size()) {
      end.pin = back ? from_pin(wire) : to_pin(wire);
      end.side = side_of(plan, end.pin) == Side::bottom ? StripSide::low : StripSide::high;
    } else {
      const Leg& leg = route[back ? index - 1 : index + 1];
      end.alley = leg.street;
      end.x = leg.x;
      end.side = streets.alleys[leg.street].row < channel ? StripSide::low : StripSide::high;
    }
    return end;
  };
  return {towards(true), towards(false)};
}

void order_alleys(const Plan& plan, const Streets& streets, const Routes& routes, const std::vector<Grid>& body_x, Tracks& tracks) {
  Ordering(plan, streets, routes, body_x, tracks).run(2);
}

}  // namespace loomfolio::laying
