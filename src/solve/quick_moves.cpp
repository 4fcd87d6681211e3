// SPDX-License-Identifier: MIT
#include "solve/quick_moves.h"

#include <algorithm>
#include <cmath>

#include "solve/what_if.h"

namespace loomfolio {
namespace {

constexpr WhatIfAccuracy fine{0.0005, 0.0005};
constexpr double least_margin = 0.1;        // V: a device nearer to its limits needs the whole circuit
constexpr int most_adopted = 80;            // moves: each may leave a node off by the volts above
constexpr std::size_t most_changed = 44;    // places: below what what_if.cpp solves anew from
constexpr double input_live = 0.5, input_earthed = 0.25, unit_works = 0.4;  // shares, as in settle.cpp

}  // namespace

QuickMoves::QuickMoves(const Circuit& circuit, const RelayState& start, const NodeVolts& nodes, Flash flash)
    : circuit_(circuit) {
  base_.relays = start;
  base_.nodes = nodes;
  what_if_ = std::make_unique<WhatIf>(circuit, base_, flash, fine);
  for (const CoilDevice& coil : circuit.coils) {
    if (coil.branch < 0) continue;
    const Branch& branch = circuit.branches[static_cast<std::size_t>(coil.branch)];
    watched_.insert(watched_.end(), {branch.a, branch.b});
  }
  for (const OutputDevice& output : circuit.outputs) {
    watched_.insert(watched_.end(), {output.supply, output.earth});
    for (const auto& condition : output.conditions) watched_.push_back(condition.node);
  }
  std::erase_if(watched_, [](int node) { return node < 0; });
  std::sort(watched_.begin(), watched_.end());
  watched_.erase(std::unique(watched_.begin(), watched_.end()), watched_.end());
}

QuickMoves::~QuickMoves() = default;

std::optional<NodeVolts> QuickMoves::move(const DeviceMove& move) {
  if (adopted_ >= most_adopted) return std::nullopt;
  what_if_->move_device(move.type, move.device, move.is_on);
  if (what_if_->changed_places() > most_changed || !what_if_->solve() || what_if_->changed_places() > most_changed)
    return std::nullopt;
  NodeVolts seen;
  seen.volts.resize(static_cast<std::size_t>(circuit_.node_count));
  seen.floating.resize(static_cast<std::size_t>(circuit_.node_count));
  for (const int node : watched_) {
    seen.volts[static_cast<std::size_t>(node)] = what_if_->volts(node);
    seen.floating[static_cast<std::size_t>(node)] = what_if_->is_floating(node) ? 1 : 0;
  }
  seen.has_settled = true;
  if (is_close_call(seen)) return std::nullopt;
  if (what_if_->adopt()) ++adopted_;
  return seen;
}

bool QuickMoves::is_close_call(const NodeVolts& seen) const {
  const auto over = [&](int a, int b) {
    return std::abs(seen.volts[static_cast<std::size_t>(a)] - seen.volts[static_cast<std::size_t>(b)]);
  };
  const auto near = [](double volts, double limit) { return std::abs(volts - limit) < least_margin; };
  for (const CoilDevice& coil : circuit_.coils) {
    if (coil.branch < 0) continue;
    const Branch& branch = circuit_.branches[static_cast<std::size_t>(coil.branch)];
    const double volts = over(branch.a, branch.b);
    if (near(volts, coil.pull_in.number()) || near(volts, coil.drop_out.number())) return true;
  }
  for (const OutputDevice& output : circuit_.outputs) {
    if (output.supply < 0 || output.branch < 0) continue;
    const double supply = over(output.supply, output.earth);
    if (near(supply, unit_works * circuit_.nominal.number())) return true;
    for (const auto& condition : output.conditions) {
      if (condition.node < 0) continue;
      const double input = over(condition.node, output.earth);
      if (near(input, input_live * supply) || near(input, input_earthed * supply)) return true;
    }
  }
  return false;
}

}  // namespace loomfolio
