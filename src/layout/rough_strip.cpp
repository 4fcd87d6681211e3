// SPDX-License-Identifier: MIT
// Counting crossings is where placing spends its time. The loops below have no branches, so that a compiler counts
// several runs at once. Of two runs a and b on one strip, a before b (nearer to the low side) crosses where an end of b
// goes to the low side within a, or an end of a to the high side within b; open ends cross beyond the strip when they
// turn across each other.
#include "layout/rough.h"

// An optimised build holds them twice and takes the wider one where the processor has it; the sums are the same.
#if defined(NDEBUG) && defined(__x86_64__) && defined(__gnu_linux__)
#define LOOMFOLIO_WIDE __attribute__((target_clones("avx2", "default")))
#else
#define LOOMFOLIO_WIDE
#endif

namespace loomfolio::laying {
namespace {

int is_between(Grid at, Grid low, Grid high) { return static_cast<int>(at > low) & static_cast<int>(at < high); }

/// The ends of one run by the side they go to.
struct RunSides {
  Grid low[2], high[2];
  int opens_low = 0, opens_high = 0, heading_low = 0, heading_high = 0;
};

RunSides sides_of(const RoughRun& run, Grid nowhere) {
  RunSides s;
  for (int e = 0; e < 2; ++e) {
    s.low[e] = run.end[e] == RunEnd::low_side ? run.at[e] : nowhere;
    s.high[e] = run.end[e] == RunEnd::high_side ? run.at[e] : nowhere;
    if (run.end[e] == RunEnd::open_low) s.opens_low = 1, s.heading_low = run.heading[e];
    if (run.end[e] == RunEnd::open_high) s.opens_high = 1, s.heading_high = run.heading[e];
  }
  return s;
}

}  // namespace

void RoughStrip::clear() {
  wire_.clear(), low_.clear(), high_.clear();
  for (int e = 0; e < 2; ++e) low_end_[e].clear(), high_end_[e].clear();
  opens_low_.clear(), opens_high_.clear(), heading_low_.clear(), heading_high_.clear();
}

void RoughStrip::add(int wire, const RoughRun& run) {
  const RunSides s = sides_of(run, nowhere);
  wire_.push_back(wire);
  low_.push_back(run.low), high_.push_back(run.high);
  for (int e = 0; e < 2; ++e) low_end_[e].push_back(s.low[e]), high_end_[e].push_back(s.high[e]);
  opens_low_.push_back(s.opens_low), opens_high_.push_back(s.opens_high);
  heading_low_.push_back(s.heading_low), heading_high_.push_back(s.heading_high);
}

void RoughStrip::remove_last_of(int wire) {
  std::size_t i = wire_.size();
  while (wire_[--i] != wire) {}
  const auto drop = [i](auto& column) {
    column[i] = column.back();
    column.pop_back();
  };
  drop(wire_), drop(low_), drop(high_);
  for (int e = 0; e < 2; ++e) drop(low_end_[e]), drop(high_end_[e]);
  drop(opens_low_), drop(opens_high_), drop(heading_low_), drop(heading_high_);
}

int RoughStrip::count_crossings(const RoughRun& run) const {
  return run.is_open() ? count_open(run) : count_closed(run);
}

LOOMFOLIO_WIDE int RoughStrip::count_closed(const RoughRun& run) const {
  const RunSides s = sides_of(run, nowhere);
  const Grid low = run.low, high = run.high;
  const Grid *bl = low_.data(), *bh = high_.data();
  const Grid *l0 = low_end_[0].data(), *l1 = low_end_[1].data(), *h0 = high_end_[0].data(), *h1 = high_end_[1].data();
  int sum = 0;
  for (std::size_t i = 0, n = wire_.size(); i < n; ++i) {
    const int first = is_between(l0[i], low, high) + is_between(l1[i], low, high) +
                      is_between(s.high[0], bl[i], bh[i]) + is_between(s.high[1], bl[i], bh[i]);
    const int second = is_between(h0[i], low, high) + is_between(h1[i], low, high) +
                       is_between(s.low[0], bl[i], bh[i]) + is_between(s.low[1], bl[i], bh[i]);
    sum += first < second ? first : second;
  }
  return sum;
}

LOOMFOLIO_WIDE int RoughStrip::count_open(const RoughRun& run) const {
  const RunSides s = sides_of(run, nowhere);
  const Grid low = run.low, high = run.high;
  int sum = 0;
  for (std::size_t i = 0, n = wire_.size(); i < n; ++i) {
    const Grid bl = low_[i], bh = high_[i];
    const int both_low = opens_low_[i] & s.opens_low, both_high = opens_high_[i] & s.opens_high;
    const int first = is_between(low_end_[0][i], low, high) + is_between(low_end_[1][i], low, high) +
                      is_between(s.high[0], bl, bh) + is_between(s.high[1], bl, bh) +
                      (both_low & static_cast<int>(s.heading_low > heading_low_[i])) +
                      (both_high & static_cast<int>(s.heading_high > heading_high_[i]));
    const int second = is_between(high_end_[0][i], low, high) + is_between(high_end_[1][i], low, high) +
                       is_between(s.low[0], bl, bh) + is_between(s.low[1], bl, bh) +
                       (both_low & static_cast<int>(s.heading_low < heading_low_[i])) +
                       (both_high & static_cast<int>(s.heading_high < heading_high_[i]));
    const int apart = static_cast<int>(low >= bh) | static_cast<int>(bl >= high);
    sum += (first < second ? first : second) * (1 - apart);
  }
  return sum;
}

}  // namespace loomfolio::laying
