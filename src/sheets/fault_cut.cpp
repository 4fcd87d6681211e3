// SPDX-License-Identifier: MIT
// A tree of measurements cut to the questions that a page can hold.
#include <algorithm>
#include <cmath>
#include <set>

#include "sheets/fault_plan.h"

namespace loomfolio {
namespace {

/// Closes the tree's questions one after the other.
class Cutter {
 public:
  Cutter(const FaultPlan& plan, const FaultChart& chart)
      : plan_(plan), d_(chart.diagnosis), is_closed_(chart.diagnosis.nodes.size()) {}

  std::vector<ChartBox> cut(std::size_t most_boxes) {
    for (std::size_t n = 0; n < d_.nodes.size(); ++n) is_closed_[n] = d_.nodes[n].probe < 0 || is_one_mend(n);
    while (count_open(0) > std::max<std::size_t>(most_boxes, 1)) is_closed_[least_telling()] = 1;
    std::vector<ChartBox> boxes;
    if (is_closed_[0])
      boxes.push_back({-1, -1, {{0, {}, -1, suspects_of(0), d_.nodes[0].probe >= 0 && !is_one_mend(0)}}, -1});
    else
      add_box(0, -1, boxes);
    return boxes;
  }

 private:
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

  std::size_t count_open(std::size_t n) const {
    if (is_closed_[n]) return 0;
    std::size_t count = 1;
    for (const auto& [outcome, child] : node(n).branches) count += count_open(static_cast<std::size_t>(child));
    return count;
  }

  /// Likelihood, and as much again as the mean suspect has: an end with a dozen rare things is as bad as one with two
  /// usual ones.
  double mass(std::size_t n) const {
    double all = 0, sum = 0;
    for (const int s : d_.suspects) all += plan_.faults[static_cast<std::size_t>(s)].weight;
    for (const int s : node(n).suspects) sum += fault(s).weight;
    return sum + all / static_cast<double>(d_.suspects.size()) * static_cast<double>(node(n).suspects.size());
  }

  /// Bits that the question tells, by how often it is asked.
  double worth(std::size_t n) const {
    const double whole = mass(n);
    double bits = 0;
    for (const auto& [outcome, child] : node(n).branches) {
      const double share = mass(static_cast<std::size_t>(child)) / whole;
      if (share > 0 && share < 1) bits -= share * std::log2(share);
    }
    return bits * whole;
  }

  std::size_t least_telling() const {
    std::size_t least = 0;
    double least_worth = -1;
    for (std::size_t n = 0; n < d_.nodes.size(); ++n) {
      if (is_closed_[n] || count_open(n) != 1 || !is_reached(n)) continue;
      const double here = worth(n);
      if (least_worth < 0 || here < least_worth) least = n, least_worth = here;
    }
    return least;
  }

  bool is_reached(std::size_t n) const {
    for (std::size_t p = 0; p < d_.nodes.size(); ++p)
      for (const auto& [outcome, child] : node(p).branches)
        if (static_cast<std::size_t>(child) == n) return !is_closed_[p] && is_reached(p);
    return n == 0;
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
      exit.suspects.insert(exit.suspects.end(), suspects.begin(), suspects.end());
      return true;
    }
    return false;
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
        exits.back().suspects = suspects_of(c), exits.back().is_cut = node(c).probe >= 0 && !is_one_mend(c);
      else
        open.push_back(exits.size() - 1);
    }
    // The likeliest way goes straight down; the others follow after it.
    const auto child_of = [&](std::size_t exit) { return child_at[exit]; };
    std::stable_sort(open.begin(), open.end(),
                     [&](std::size_t a, std::size_t b) { return mass(child_of(a)) > mass(child_of(b)); });
    for (const std::size_t exit : open) exits[exit].next = add_box(child_of(exit), static_cast<int>(here), boxes);
    boxes[here].below = open.empty() ? -1 : static_cast<int>(open.front());
    boxes[here].exits = std::move(exits);
    return static_cast<int>(here);
  }

  const FaultPlan& plan_;
  const Diagnosis& d_;
  std::vector<char> is_closed_;
};

}  // namespace

std::vector<ChartBox> cut_chart(const FaultPlan& plan, const FaultChart& chart, std::size_t most_boxes) {
  return Cutter(plan, chart).cut(most_boxes);
}

}  // namespace loomfolio
