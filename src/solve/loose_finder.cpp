// SPDX-License-Identifier: MIT
// In the sound machine a tree of shortest ways leads from every node that is not loose to the battery's earthed pole. A branch that
// no longer carries puts in doubt only what stands below it in the tree: from there one walks until one meets a node that is in no
// doubt, or has seen all - then that is loose. What was loose and is joined to by a branch that carries now is walked whole.
#include "solve/loose_finder.h"

#include <algorithm>

#include "solve/at.h"

namespace loomfolio {

LooseFinder::LooseFinder(const Circuit& circuit, const std::function<bool(int)>& carries) : circuit_(circuit) {
  const auto nodes = at(circuit.node_count);
  near_.resize(nodes);
  for (int i = 0; i < static_cast<int>(circuit.branches.size()); ++i) {
    carried_.push_back(carries(i) ? 1 : 0);
    for (const int node : {circuit.branches[at(i)].a, circuit.branches[at(i)].b}) near_[at(node)].push_back(i);
  }
  loose_.assign(nodes, 1);
  parent_branch_.assign(nodes, -1);
  first_.assign(nodes, -1);
  last_.assign(nodes, -1);
  is_reached_.assign(nodes, 0);
  is_changed_.assign(nodes, 0);
  std::vector<std::vector<int>> below(nodes);
  std::vector<int> order = {circuit.reference};
  loose_[at(circuit.reference)] = 0;
  for (std::size_t i = 0; i < order.size(); ++i)
    for (const int b : near_[at(order[i])]) {
      const Branch& branch = circuit.branches[at(b)];
      const int next = branch.a == order[i] ? branch.b : branch.a;
      if (!carried_[at(b)] || !loose_[at(next)]) continue;
      loose_[at(next)] = 0;
      parent_branch_[at(next)] = b;
      below[at(order[i])].push_back(next);
      order.push_back(next);
    }
  // Places in a walk that goes down before it goes on: what is below a node follows it without a gap.
  std::vector<int> size(nodes, 1);
  for (std::size_t i = order.size(); i-- > 0;)
    for (const int next : below[at(order[i])]) size[at(order[i])] += size[at(next)];
  first_[at(circuit.reference)] = 0;
  for (const int node : order) {
    int place = first_[at(node)] + 1;
    last_[at(node)] = first_[at(node)] + size[at(node)] - 1;
    for (const int next : below[at(node)]) first_[at(next)] = place, place += size[at(next)];
  }
}

bool LooseFinder::is_cut_off(int node) const {
  return loose_[at(node)] != 0 || std::any_of(cut_.begin(), cut_.end(), [&](const auto& places) {
           return first_[at(node)] >= places.first && first_[at(node)] <= places.second;
         });
}

// Walks from the start over all that carries now. True as soon as it meets what surely hangs on the reference, and at the end, where
// it was not to stop, when it has met such.
bool LooseFinder::walk(int start, const LooseQuestion& question, bool stops_at_home) {
  for (const int node : reached_) is_reached_[at(node)] = 0;
  reached_.assign(1, start);
  is_reached_[at(start)] = 1;
  bool is_home = false;
  const auto meet = [&](int next) {
    if (!is_cut_off(next)) return is_home = true;
    if (!is_reached_[at(next)]) is_reached_[at(next)] = 1, reached_.push_back(next);
    return false;
  };
  for (std::size_t i = 0; i < reached_.size(); ++i) {
    const int node = reached_[i];
    for (const int b : near_[at(node)]) {
      const Branch& branch = circuit_.branches[at(b)];
      if (question.carries(b) && meet(branch.a == node ? branch.b : branch.a) && stops_at_home) return true;
    }
    for (const auto& [a, b] : question.joined)
      if ((a == node || b == node) && meet(a == node ? b : a) && stops_at_home) return true;
  }
  return is_home;
}

std::vector<int> LooseFinder::find_changed(const LooseQuestion& question) {
  cut_.clear();
  std::vector<int> doubted, revived, changed;
  for (const int b : question.changed) {
    const Branch& branch = circuit_.branches[at(b)];
    const bool carries = question.carries(b);
    if (carries == (carried_[at(b)] != 0)) continue;
    for (const int node : {branch.a, branch.b}) {
      if (!carries && !loose_[at(node)] && parent_branch_[at(node)] == b) {
        doubted.push_back(node);
        cut_.emplace_back(first_[at(node)], last_[at(node)]);
      }
      if (carries && loose_[at(node)]) revived.push_back(node);
    }
  }
  for (const auto& [a, b] : question.joined)
    for (const int node : {a, b})
      if (loose_[at(node)]) revived.push_back(node);
  const auto add = [&](int node) {
    if (!is_changed_[at(node)]) is_changed_[at(node)] = 1, changed.push_back(node);
  };
  for (const int node : doubted) {
    if (is_changed_[at(node)] || walk(node, question, true)) continue;
    for (const int one : reached_)
      if (!loose_[at(one)]) add(one);
  }
  for (const int node : revived) {
    if (is_changed_[at(node)] || !walk(node, question, false)) continue;
    for (const int one : reached_)
      if (loose_[at(one)]) add(one);
  }
  for (const int node : changed) is_changed_[at(node)] = 0;
  return changed;
}

}  // namespace loomfolio
