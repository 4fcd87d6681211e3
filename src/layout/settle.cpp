// SPDX-License-Identifier: MIT
// The idea. "Least sum of weight * |distance| under difference constraints" is the dual of a minimum-cost circulation: each
// constraint is a pipe without limit, each pull a pair of pipes that hold at most its weight, and the potentials of the best
// circulation are the places. We run the primal network simplex: a spanning tree of pipes in which each tree pipe is tight
// (place[to] - place[from] == gap). A pipe outside the tree that is violated enters, the first pipe to fill or run dry on the
// cycle leaves, and the part of the tree that is cut off shifts as one block: so blocks of parts that touch move together.
//
//          root (the right-hand end of all)          at first every place hangs on the root;
//         /  |   \                                   a violated constraint b >= a + 5 enters, and
//        a   b    c                                  a moves 5 to the left of b, with all that hangs on a.
//
// The tree stays strongly feasible (ties on the cycle go to the last pipe met), so it ends without cycling. Orders are by
// index throughout. After: the network simplex method as in Ahuja, Magnanti, Orlin, Network Flows (1993), chapter 11.
#include "layout/settle.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace loomfolio::laying {
namespace {

constexpr std::int64_t no_limit = INT64_MAX / 4;

enum class Rest : std::uint8_t { empty, full, in_tree };

struct Pipe {
  int from, to;
  std::int64_t gap, limit, flow = 0;
  Rest rest = Rest::empty;
};

struct TreeNode {
  int parent = -1, pipe = -1;  ///< the pipe that joins it to its parent
  int first_child = -1, next = -1, previous = -1;
  int depth = 0;
  std::int64_t place = 0;
};

class Simplex {
 public:
  explicit Simplex(const SettleProblem& problem);
  bool run();
  std::vector<Grid> places() const;

 private:
  struct Leaving {
    int node = -1;
    bool on_first_side = false;
    std::int64_t amount = no_limit;
  };

  std::int64_t violation(const Pipe& p) const;
  int find_entering();
  int find_join(int a, int b) const;
  Leaving find_leaving(int first, int second, int join) const;
  void push(int entering, int first, int second, int join, std::int64_t amount);
  void hang(int entering, int inside, int outside, int leaving_node);
  void link(int node, int parent, int pipe);
  void unlink(int node);
  void shift(int top);

  std::vector<Pipe> pipes_;
  std::vector<TreeNode> nodes_;
  std::vector<int> stack_;
  int root_ = 0;
  std::size_t next_ = 0, block_ = 0;
};

Simplex::Simplex(const SettleProblem& problem) : root_(problem.count) {
  for (const SettleArc& a : problem.arcs) pipes_.push_back({a.from, a.to, a.gap, no_limit});
  for (const SettlePull& p : problem.pulls) {
    if (p.weight <= 0 || p.from == p.to) continue;
    pipes_.push_back({p.from, p.to, p.gap, p.weight});
    pipes_.push_back({p.to, p.from, -p.gap, p.weight});
  }
  block_ = std::max<std::size_t>(20, static_cast<std::size_t>(std::sqrt(static_cast<double>(pipes_.size()))));
  nodes_.resize(static_cast<std::size_t>(root_) + 1);
  for (int v = 0; v < root_; ++v) {
    pipes_.push_back({v, root_, 0, no_limit, 0, Rest::in_tree});
    link(v, root_, static_cast<int>(pipes_.size()) - 1);
    nodes_[v].depth = 1;
  }
}

std::int64_t Simplex::violation(const Pipe& p) const {
  const std::int64_t missing = p.gap - (nodes_[p.to].place - nodes_[p.from].place);
  if (p.rest == Rest::empty) return missing;
  return p.rest == Rest::full ? -missing : 0;
}

/// The most violated pipe of the next block that has one; -1 when all hold.
int Simplex::find_entering() {
  int best = -1;
  std::int64_t most = 0;
  std::size_t left_in_block = block_;
  for (std::size_t seen = 0; seen < pipes_.size(); ++seen) {
    const std::int64_t v = violation(pipes_[next_]);
    if (v > most) {
      most = v;
      best = static_cast<int>(next_);
    }
    if (++next_ == pipes_.size()) next_ = 0;
    if (--left_in_block == 0) {
      if (best >= 0) return best;
      left_in_block = block_;
    }
  }
  return best;
}

int Simplex::find_join(int a, int b) const {
  while (a != b) (nodes_[a].depth >= nodes_[b].depth ? a : b) = nodes_[nodes_[a].depth >= nodes_[b].depth ? a : b].parent;
  return a;
}

/// The pipe of the cycle that stops the flow first; flow runs from `first` to `second`, up to the join and down again.
Simplex::Leaving Simplex::find_leaving(int first, int second, int join) const {
  Leaving leaving;
  for (int u = first; u != join; u = nodes_[u].parent) {
    const Pipe& p = pipes_[nodes_[u].pipe];
    const std::int64_t room = p.from == u ? p.flow : p.limit == no_limit ? no_limit : p.limit - p.flow;
    if (room < leaving.amount) leaving = {u, true, room};
  }
  for (int u = second; u != join; u = nodes_[u].parent) {
    const Pipe& p = pipes_[nodes_[u].pipe];
    const std::int64_t room = p.from != u ? p.flow : p.limit == no_limit ? no_limit : p.limit - p.flow;
    if (room <= leaving.amount) leaving = {u, false, room};
  }
  return leaving;
}

void Simplex::push(int entering, int first, int second, int join, std::int64_t amount) {
  Pipe& e = pipes_[entering];
  e.flow += e.rest == Rest::full ? -amount : amount;
  for (int u = first; u != join; u = nodes_[u].parent) {
    Pipe& p = pipes_[nodes_[u].pipe];
    p.flow += p.from == u ? -amount : amount;
  }
  for (int u = second; u != join; u = nodes_[u].parent) {
    Pipe& p = pipes_[nodes_[u].pipe];
    p.flow += p.from == u ? amount : -amount;
  }
}

void Simplex::link(int node, int parent, int pipe) {
  TreeNode& n = nodes_[node];
  n.parent = parent;
  n.pipe = pipe;
  n.previous = -1;
  n.next = nodes_[parent].first_child;
  if (n.next >= 0) nodes_[n.next].previous = node;
  nodes_[parent].first_child = node;
}

void Simplex::unlink(int node) {
  TreeNode& n = nodes_[node];
  if (n.previous >= 0) nodes_[n.previous].next = n.next;
  else nodes_[n.parent].first_child = n.next;
  if (n.next >= 0) nodes_[n.next].previous = n.previous;
}

/// Cuts the tree above `leaving_node` and hangs the cut part, turned over, by the entering pipe.
void Simplex::hang(int entering, int inside, int outside, int leaving_node) {
  const Pipe& old = pipes_[nodes_[leaving_node].pipe];
  pipes_[nodes_[leaving_node].pipe].rest = old.flow == 0 ? Rest::empty : Rest::full;
  int node = inside, parent = outside, pipe = entering;
  while (true) {
    const int next_node = nodes_[node].parent, next_pipe = nodes_[node].pipe;
    unlink(node);
    link(node, parent, pipe);
    if (node == leaving_node) break;
    parent = node;
    pipe = next_pipe;
    node = next_node;
  }
  pipes_[entering].rest = Rest::in_tree;
  shift(inside);
}

/// Sets depth and place of a whole branch, each node tight with its parent.
void Simplex::shift(int top) {
  stack_.assign(1, top);
  while (!stack_.empty()) {
    const int v = stack_.back();
    stack_.pop_back();
    TreeNode& n = nodes_[v];
    const Pipe& p = pipes_[n.pipe];
    n.depth = nodes_[n.parent].depth + 1;
    n.place = nodes_[n.parent].place + (p.to == v ? p.gap : -p.gap);
    for (int c = n.first_child; c >= 0; c = nodes_[c].next) stack_.push_back(c);
  }
}

bool Simplex::run() {
  for (int entering = find_entering(); entering >= 0; entering = find_entering()) {
    const Pipe& e = pipes_[entering];
    const bool is_full = e.rest == Rest::full;
    const int first = is_full ? e.to : e.from, second = is_full ? e.from : e.to;
    const int join = find_join(first, second);
    const Leaving leaving = find_leaving(first, second, join);
    const std::int64_t own_limit = e.limit;
    const bool itself_stops = leaving.node < 0 || own_limit < leaving.amount ||
                              (own_limit == leaving.amount && leaving.on_first_side);
    const std::int64_t amount = itself_stops ? own_limit : leaving.amount;
    if (amount >= no_limit) return false;
    push(entering, first, second, join, amount);
    if (itself_stops) pipes_[entering].rest = is_full ? Rest::empty : Rest::full;
    else hang(entering, leaving.on_first_side ? first : second, leaving.on_first_side ? second : first, leaving.node);
  }
  return true;
}

std::vector<Grid> Simplex::places() const {
  std::vector<Grid> out(static_cast<std::size_t>(root_));
  std::int64_t least = INT64_MAX;
  for (int v = 0; v < root_; ++v) least = std::min(least, nodes_[v].place);
  for (int v = 0; v < root_; ++v) out[v] = static_cast<Grid>(nodes_[v].place - least);
  return out;
}

}  // namespace

std::vector<Grid> settle(const SettleProblem& problem) {
  Simplex simplex(problem);
  if (problem.count == 0 || !simplex.run()) return {};
  return simplex.places();
}

}  // namespace loomfolio::laying
