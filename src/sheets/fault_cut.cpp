// SPDX-License-Identifier: MIT
// A tree of measurements cut to the questions that a page can hold.
#include <algorithm>
#include <cmath>
#include <set>

#include "sheets/fault_plan.h"

namespace loomfolio {
namespace {

/// Closes the tree's questions one after the other, from its tips: the one that tells least goes first.
class Cutter {
 public:
  Cutter(const FaultPlan& plan, const FaultChart& chart)
      : plan_(plan), d_(chart.diagnosis), is_closed_(d_.nodes.size()), mass_(d_.nodes.size()) {
    double all = 0;
    for (const int s : d_.suspects) all += plan_.faults[static_cast<std::size_t>(s)].weight;
    for (std::size_t n = 0; n < d_.nodes.size(); ++n) {
      is_closed_[n] = d_.nodes[n].probe < 0 || is_one_mend(n);
      mass_[n] = mass_of(n, all);
    }
  }

  std::vector<ChartBox> cut(std::size_t most_boxes) {
    close_least_telling(std::max<std::size_t>(most_boxes, 1));
    std::vector<ChartBox> boxes;
    if (is_closed_[0])
      boxes.push_back({-1, -1, {{0, {}, -1, suspects_of(0), d_.nodes[0].probe >= 0 && !is_one_mend(0)}}, -1});
    else
      add_box(0, -1, boxes);
    return boxes;
  }

 private:
  /// A question that is asked, with how many of those behind it still are.
  struct Asked {
    std::size_t node, parent;  ///< the parent is an index of the list that it stands in; the root names itself
    double worth;
    int open_behind = 0;
    bool is_open = true;
  };

  const DiagnosisNode& node(std::size_t n) const { return d_.nodes[n]; }

  /// A node's suspects count within the diagnosis; ours within the plan.
  std::vector<int> suspects_of(std::size_t n) const {
    std::vector<int> faults;
    for (const int s : node(n).suspects) faults.push_back(d_.suspects[static_cast<std::size_t>(s)]);
    return faults;
  }

  const Fault& fault(int suspect) const {
    return plan_.faults[static_cast<std::size_t>(d_.suspects[static_cast<std::size_t>(suspect)])];
  }

  bool is_one_mend(std::size_t n) const {
    std::set<Mend> mends;
    for (const int s : node(n).suspects) mends.insert(mend_for(fault(s)));
    return mends.size() < 2;
  }

  /// Likelihood, and as much again as the mean suspect has: an end with a dozen rare things is as bad as one with two
  /// usual ones. `all` is that of all suspects.
  double mass_of(std::size_t n, double all) const {
    double sum = 0;
    for (const int s : node(n).suspects) sum += fault(s).weight;
    return sum + all / static_cast<double>(d_.suspects.size()) * static_cast<double>(node(n).suspects.size());
  }

  /// Bits that the question tells, by how often it is asked.
  double worth(std::size_t n) const {
    double bits = 0;
    for (const auto& [outcome, child] : node(n).branches) {
      const double share = mass_[static_cast<std::size_t>(child)] / mass_[n];
      if (share > 0 && share < 1) bits -= share * std::log2(share);
    }
    return bits * mass_[n];
  }

  void gather_asked(std::size_t n, std::size_t parent, std::vector<Asked>& asked) const {
    if (is_closed_[n]) return;
    const std::size_t here = asked.size();
    asked.push_back({n, parent, worth(n)});
    if (here != parent) ++asked[parent].open_behind;
    for (const auto& [outcome, child] : node(n).branches) gather_asked(static_cast<std::size_t>(child), here, asked);
  }

  void close_least_telling(std::size_t most) {
    std::vector<Asked> asked;
    gather_asked(0, 0, asked);
    for (std::size_t open = asked.size(); open > most; --open) {
      Asked* least = nullptr;
      for (Asked& one : asked) {
        const bool is_tip = one.is_open && one.open_behind == 0;
        if (is_tip && (!least || one.worth < least->worth || (one.worth == least->worth && one.node < least->node))) least = &one;
      }
      least->is_open = false;
      is_closed_[least->node] = 1;
      --asked[least->parent].open_behind;
    }
  }

  std::set<Mend> mends_of(const std::vector<int>& faults) const {
    std::set<Mend> mends;
    for (const int f : faults) mends.insert(mend_for(plan_.faults[static_cast<std::size_t>(f)]));
    return mends;
  }

  /// Readings that lead to the same mending are one end.
  bool join_same(std::vector<ChartExit>& exits, int outcome, const std::vector<int>& suspects) const {
    for (ChartExit& exit : exits) {
      if (exit.suspects.empty() || mends_of(exit.suspects) != mends_of(suspects)) continue;
      exit.also.push_back(outcome);
      exit.node = -1;
      exit.suspects.insert(exit.suspects.end(), suspects.begin(), suspects.end());
      return true;
    }
    return false;
  }

  void close(ChartExit& exit, std::size_t n) const {
    exit.suspects = suspects_of(n);
    exit.is_cut = node(n).probe >= 0 && !is_one_mend(n);
    if (exit.is_cut) exit.node = static_cast<int>(n);
  }

  int add_box(std::size_t n, int parent, std::vector<ChartBox>& boxes) const {
    const std::size_t here = boxes.size();
    boxes.push_back({parent, node(n).probe, {}, -1});
    std::vector<ChartExit> exits;
    std::vector<std::size_t> open, child_at;
    for (const auto& [outcome, child] : node(n).branches) {
      const auto c = static_cast<std::size_t>(child);
      if (is_closed_[c] && join_same(exits, outcome, suspects_of(c))) continue;
      child_at.push_back(c);
      exits.push_back({outcome, {}, -1, {}, false});
      if (is_closed_[c])
        close(exits.back(), c);
      else
        open.push_back(exits.size() - 1);
    }
    // The likeliest way goes straight down; the others follow after it.
    const auto child_of = [&](std::size_t exit) { return child_at[exit]; };
    std::stable_sort(open.begin(), open.end(),
                     [&](std::size_t a, std::size_t b) { return mass_[child_of(a)] > mass_[child_of(b)]; });
    for (const std::size_t exit : open) exits[exit].next = add_box(child_of(exit), static_cast<int>(here), boxes);
    boxes[here].below = open.empty() ? -1 : static_cast<int>(open.front());
    boxes[here].exits = std::move(exits);
    return static_cast<int>(here);
  }

  const FaultPlan& plan_;
  const Diagnosis& d_;
  std::vector<char> is_closed_;  ///< by node: nothing is asked there
  std::vector<double> mass_;     ///< by node
};

}  // namespace

std::vector<ChartBox> cut_chart(const FaultPlan& plan, const FaultChart& chart, std::size_t most_boxes) {
  return Cutter(plan, chart).cut(most_boxes);
}

}  // namespace loomfolio
