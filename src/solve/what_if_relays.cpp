// SPDX-License-Identifier: MIT
// Relays and outputs within a what-if; islands that they bring to life; an answer that becomes the base of the next.
#include <algorithm>

#include "solve/at.h"
#include "solve/islands.h"
#include "solve/what_if.h"
#include "solve/what_if_limits.h"

namespace loomfolio {

void WhatIf::find_base_islands() {
  base_island_.assign(at(circuit_.node_count), -1);
  if (std::none_of(nodes_.floating.begin(), nodes_.floating.end(), [](char floats) { return floats != 0; })) return;
  Islands islands(circuit_.node_count);
  for (int i = 0; i < static_cast<int>(circuit_.branches.size()); ++i)
    if (was_there(i)) islands.join(circuit_.branches[at(i)].a, circuit_.branches[at(i)].b);
  for (int node = 0; node < circuit_.node_count; ++node)
    if (nodes_.floating[at(node)]) base_island_[at(node)] = islands.root(node);
}

// Floating islands that a branch which was not there before joins to what hangs on the reference, one by way of another.
void WhatIf::find_revived() {
  revived_.clear();
  for (bool is_more = true; is_more;) {
    is_more = false;
    for (const Port& port : ports_) {
      if (port.is_open || (port.branch >= 0 && was_there(port.branch)) || is_floating(port.a) == is_floating(port.b)) continue;
      const int node = is_floating(port.a) ? port.a : port.b;
      if (floats_[at(node)] != 0) continue;
      revived_.push_back(base_island_[at(node)]);
      is_more = true;
    }
  }
}

void WhatIf::gate(int device, GateType type) {
  for (const int i : (type == GateType::coil ? gated_by_coil_ : gated_by_output_)[at(device)]) {
    const Branch& b = circuit_.branches[at(i)];
    if (b.gate.type != type || b.gate.device != device) continue;
    Port& port = port_for(i);
    if (!port.is_held) port.is_open = !is_active(b, relays_, flash_);
  }
}

bool WhatIf::move_relays() {
  std::vector<int> coils, outputs;
  for (const auto* nodes : {&touched_, &floated_})
    for (const int node : *nodes) {
      coils.insert(coils.end(), coil_at_[at(node)].begin(), coil_at_[at(node)].end());
      outputs.insert(outputs.end(), output_at_[at(node)].begin(), output_at_[at(node)].end());
    }
  coils.insert(coils.end(), dead_coils_.begin(), dead_coils_.end());
  if (coils.empty() && outputs.empty()) return false;
  RelayState next = relays_;
  bool moved = false;
  const auto look = [&](int node) {
    seen_.volts[at(node)] = volts(node), seen_.floating[at(node)] = is_floating(node) ? 1 : 0;
  };
  for (const int c : coils) {
    const Branch& coil = circuit_.branches[at(circuit_.coils[at(c)].branch)];
    look(coil.a), look(coil.b);
    const bool is_dead = std::find(dead_coils_.begin(), dead_coils_.end(), c) != dead_coils_.end();
    const bool is_in = !is_dead && wanted_coil(circuit_, c, relays_, seen_);
    if (is_in == (next.coil_in[at(c)] != 0)) continue;
    next.coil_in[at(c)] = is_in ? 1 : 0;
    moved = true;
  }
  for (const int o : outputs) {
    const OutputDevice& output = circuit_.outputs[at(o)];
    for (const int node : {output.supply, output.earth})
      if (node >= 0) look(node);
    for (const auto& condition : output.conditions)
      if (condition.node >= 0) look(condition.node);
    const bool is_on = wanted_output(circuit_, o, seen_);
    if (is_on == (next.output_on[at(o)] != 0)) continue;
    next.output_on[at(o)] = is_on ? 1 : 0;
    moved = true;
  }
  const RelayState before = relays_;
  relays_ = std::move(next);
  for (std::size_t c = 0; c < before.coil_in.size(); ++c)
    if (before.coil_in[c] != relays_.coil_in[c]) gate(static_cast<int>(c), GateType::coil);
  for (std::size_t o = 0; o < before.output_on.size(); ++o)
    if (before.output_on[o] != relays_.output_on[o]) gate(static_cast<int>(o), GateType::output);
  return moved;
}

void WhatIf::move_device(GateType type, int device, bool is_on) {
  (type == GateType::coil ? relays_.coil_in : relays_.output_on)[at(device)] = is_on ? 1 : 0;
  gate(device, type);
}

// Each port and mild bend leaves the line of its law as it stands now; what is gone keeps the flattest, so that nothing comes to
// hang on nothing.
bool WhatIf::adopt() {
  if (is_anew_ || accuracy_.reach == WhatIfReach::probe || !floated_.empty() || !added_.empty()) return false;
  const auto take = [&](int branch, const Working& now, double over) {
    Line& line = lines_[at(branch)];
    const double siemens = std::max(now.siemens, what_if_limits::least_line);
    const Branch& b = circuit_.branches[at(branch)];
    spreading_.update(node_row_[at(b.a)], node_row_[at(b.b)], siemens - line.siemens);
    line = {over, now.amperes, siemens};
  };
  for (const Port& port : ports_) take(port.branch, law_of(port, port.volts), port.volts);
  for (const MildBend& bend : mild_) {
    const Branch& b = circuit_.branches[at(bend.branch)];
    const double over = volts(b.a) - volts(b.b);
    take(bend.branch, work(b, over), over);
  }
  forget_mild();
  for (const int row : touched_rows_)
    if (row_node_[at(row)] >= 0) nodes_.volts[at(row_node_[at(row)])] += moved_[at(row)];
  for (int node = 0; node < circuit_.node_count && !revived_.empty(); ++node) {
    if (is_floating(node)) continue;
    nodes_.floating[at(node)] = 0;
    base_island_[at(node)] = -1;
  }
  base_relays_ = relays_;
  begin();
  forget_patterns();
  return true;
}

}  // namespace loomfolio
