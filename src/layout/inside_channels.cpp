// SPDX-License-Identifier: MIT
// Rails in the channels between rows. A node whose pins stand in one line needs none. Every other node gets a rail: the
// vertical from a pin above ends on it, the vertical to a pin below starts on it. So where a pin of A above and a pin
// of B below share an x, A's rail must lie nearer the start. Within that, the order of the rails with the fewest
// crossings is taken: all orders are tried while there are few, else rails are put in one at a time where they cross
// least.
#include <algorithm>
#include <numeric>

#include "layout/inside_grid.h"

namespace loomfolio::inside {
namespace {

constexpr std::size_t most_to_permute = 6;
constexpr int least_side_step = 2;  // tracks between two terminals of one side

std::vector<Rail> collect_rails(const Flow& flow, const FlowGrid& grid, std::size_t channel) {
  std::vector<Rail> rails;
  for (int node = 0; node < flow.nodes; ++node) {
    Rail rail;
    rail.node = node;
    const auto add_pins = [&](std::size_t row, Edge edge, std::vector<Grid>& into) {
      for (const GridItem& item : grid.rows[row])
        for (const BlockPin& pin : item.pins)
          if (pin.node == node && pin.edge == edge) into.push_back(item.x + (item.is_mirrored ? -pin.x : pin.x));
      std::sort(into.begin(), into.end());
      into.erase(std::unique(into.begin(), into.end()), into.end());
    };
    add_pins(channel, Edge::end, rail.from_start);
    add_pins(channel + 1, Edge::start, rail.from_end);
    for (std::size_t s = 0; s < grid.sides.size(); ++s) {
      const FlowTerminal& terminal = flow.terminals[static_cast<std::size_t>(grid.sides[s].index)];
      if (terminal.node != node || grid.sides[s].channel != static_cast<int>(channel)) continue;
      (terminal.side == FlowSide::low ? rail.reaches_low : rail.reaches_high) = true;
      rail.side_terminal = static_cast<int>(s);
    }
    const bool has_side = rail.side_terminal >= 0;
    if (rail.from_start.size() + rail.from_end.size() < (has_side ? 0U : 2U)) continue;
    std::vector<Grid> all = rail.from_start;
    all.insert(all.end(), rail.from_end.begin(), rail.from_end.end());
    if (!all.empty()) {
      rail.least = *std::min_element(all.begin(), all.end());
      rail.most = *std::max_element(all.begin(), all.end());
    }
    constexpr Grid far = 1'000'000;
    if (rail.reaches_low) rail.least = -far;
    if (rail.reaches_high) rail.most = far;
    rail.is_straight = !has_side && rail.least == rail.most;
    rails.push_back(std::move(rail));
  }
  return rails;
}

bool shares_x(const std::vector<Grid>& a, const std::vector<Grid>& b) {
  return std::any_of(a.begin(), a.end(), [&](Grid x) { return std::find(b.begin(), b.end(), x) != b.end(); });
}

/// Whether rail `a` must lie nearer the start than `b`.
bool must_precede(const Rail& a, const Rail& b) {
  if (shares_x(a.from_start, b.from_end)) return true;
  const bool same_side = (a.reaches_low && b.reaches_low) || (a.reaches_high && b.reaches_high);
  return same_side && a.side_terminal < b.side_terminal;
}

int count_inside(const std::vector<Grid>& xs, const Rail& rail) {
  return static_cast<int>(std::count_if(xs.begin(), xs.end(), [&](Grid x) { return x > rail.least && x < rail.most; }));
}

/// Crossings when `a` lies nearer the start than `b`: a's leads to the end side pass b's rail, b's leads to the start
/// side a's.
int crossings_between(const Rail& a, const Rail& b) {
  return count_inside(a.from_end, b) + count_inside(b.from_start, a);
}

int crossings_of(const std::vector<Rail>& rails, const std::vector<std::size_t>& order) {
  int crossings = 0;
  for (std::size_t i = 0; i < order.size(); ++i)
    for (std::size_t j = i + 1; j < order.size(); ++j) {
      crossings += crossings_between(rails[order[i]], rails[order[j]]);
      if (must_precede(rails[order[j]], rails[order[i]])) crossings += 100;
    }
  return crossings;
}

std::vector<std::size_t> order_rails(const std::vector<Rail>& rails, std::vector<std::size_t> bent) {
  std::vector<std::size_t> best;
  if (bent.size() <= most_to_permute) {
    int least = -1;
    do {
      const int crossings = crossings_of(rails, bent);
      if (least >= 0 && crossings >= least) continue;
      least = crossings;
      best = bent;
    } while (std::next_permutation(bent.begin(), bent.end()));
    return best;
  }
  for (std::size_t rail : bent) {
    std::vector<std::size_t> found;
    int least = -1;
    for (std::size_t at = 0; at <= best.size(); ++at) {
      std::vector<std::size_t> tried = best;
      tried.insert(tried.begin() + static_cast<std::ptrdiff_t>(at), rail);
      const int crossings = crossings_of(rails, tried);
      if (least < 0 || crossings < least) {
        least = crossings;
        found = std::move(tried);
      }
    }
    best = std::move(found);
  }
  return best;
}

/// Tracks in that order; rails that do not meet share one.
void assign_tracks(const FlowGrid& grid, const Flow& flow, Channel& channel, const std::vector<std::size_t>& order) {
  const auto taps_of = [&](const Rail& rail) {
    const auto side = static_cast<std::size_t>(grid.sides[static_cast<std::size_t>(rail.side_terminal)].index);
    const FlowTerminal& terminal = flow.terminals[side];
    const Grid name = flow.is_transposed ? terminal.name_y : Grid{0};
    return std::max(terminal.taps - 1, static_cast<int>(name / module) - 1);
  };
  for (std::size_t i = 0; i < order.size(); ++i) {
    Rail& rail = channel.rails[order[i]];
    for (std::size_t j = 0; j < i; ++j) {
      const Rail& before = channel.rails[order[j]];
      const bool meet = before.least <= rail.most + module && rail.least <= before.most + module;
      if (!meet) continue;
      const bool same_side = (before.reaches_low && rail.reaches_low) || (before.reaches_high && rail.reaches_high);
      const int step = same_side ? least_side_step + taps_of(before) + taps_of(rail) : 1;
      rail.track = std::max(rail.track, before.track + step);
    }
    if (rail.side_terminal >= 0) rail.track = std::max(rail.track, taps_of(rail));
    channel.tracks = std::max(channel.tracks, rail.track + 1 + (rail.side_terminal >= 0 ? taps_of(rail) : 0));
  }
}

}  // namespace

std::vector<Channel> route_channels(const Flow& flow, const FlowGrid& grid) {
  std::vector<Channel> channels;
  for (std::size_t c = 0; c + 1 < grid.rows.size(); ++c) {
    Channel channel;
    channel.rails = collect_rails(flow, grid, c);
    std::vector<std::size_t> bent;
    for (std::size_t i = 0; i < channel.rails.size(); ++i)
      if (!channel.rails[i].is_straight) bent.push_back(i);
    const std::vector<std::size_t> order = order_rails(channel.rails, bent);
    channel.crossings = order.empty() ? 0 : crossings_of(channel.rails, order);
    for (const Rail& rail : channel.rails)
      for (std::size_t i : bent)
        if (rail.is_straight) channel.crossings += count_inside({rail.least}, channel.rails[i]);
    assign_tracks(grid, flow, channel, order);
    channels.push_back(std::move(channel));
  }
  return channels;
}

long cost_of(const Flow& flow, const FlowGrid& grid, const std::vector<Channel>& channels) {
  constexpr long crossing = 4000, track = 700, link_apart = 1, link_over = 2500;
  long cost = 0;
  for (const Channel& channel : channels) {
    cost += crossing * channel.crossings + track * channel.tracks;
    for (const Rail& rail : channel.rails) {
      const auto clamp = [](Grid x) { return std::clamp<Grid>(x, -20000, 20000); };
      cost += clamp(rail.most) - clamp(rail.least);
    }
  }
  Grid least = 0, most = 0;
  for (std::size_t row = 0; row < grid.rows.size(); ++row)
    for (std::size_t i = 0; i < grid.rows[row].size(); ++i) {
      const GridItem& item = grid.rows[row][i];
      least = std::min(least, item.x - item.low);
      most = std::max(most, item.x + item.high);
      if (item.type != ItemType::block) continue;
      const Gang gang = flow.blocks[static_cast<std::size_t>(item.index)].gang;
      if (gang.gang < 0 || item.is_mirrored) cost += item.is_mirrored ? 10 : 0;
      for (std::size_t other_row = row; gang.gang >= 0 && other_row < grid.rows.size(); ++other_row)
        for (std::size_t j = other_row == row ? i + 1 : 0; j < grid.rows[other_row].size(); ++j) {
          const GridItem& other = grid.rows[other_row][j];
          if (other.type != ItemType::block) continue;
          if (flow.blocks[static_cast<std::size_t>(other.index)].gang.gang != gang.gang) continue;
          cost += link_apart * std::abs(other.x - item.x);
          if (other_row == row) cost += link_over * static_cast<long>(j - i - 1);
        }
    }
  return cost + (most - least);
}

}  // namespace loomfolio::inside
