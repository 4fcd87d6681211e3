// SPDX-License-Identifier: MIT
// Counting crossings is where placing spends its time. The loops below have no branches, so that a compiler counts
// several runs at once. Of two runs a and b on one strip, a before b (nearer to the low side) crosses where an end of b
// goes to the low side within a, or an end of a to the high side within b; open ends cross beyond the strip when they
// turn across each other.
#include "layout/rough.h"

#include <algorithm>
#include <numeric>
#include <utility>

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

void RoughStrip::write(std::size_t cell, const Grid (&values)[property_count]) {
  for (int p = 0; p < property_count; ++p) row_of(static_cast<Property>(p))[cell] = values[p];
}

void RoughStrip::clear() {
  while (count_ > 0) write(--count_, no_run);
}

void RoughStrip::make_room() {
  const std::size_t more = std::max(at_once, room_ * 2);
  std::vector<Grid> cells;
  cells.reserve(more * property_count);
  for (int p = 0; p < property_count; ++p) {
    const Grid* row = row_of(static_cast<Property>(p));
    cells.insert(cells.end(), row, row + count_);
    cells.resize((static_cast<std::size_t>(p) + 1) * more, no_run[p]);
  }
  cells_ = std::move(cells);
  room_ = more;
}

void RoughStrip::add(int of_wire, const RoughRun& run) {
  if (count_ == room_) make_room();
  const RunSides s = sides_of(run, nowhere);
  write(count_++, {of_wire, run.low, run.high, s.low[0], s.low[1], s.high[0], s.high[1], s.opens_low, s.opens_high, s.heading_low,
                   s.heading_high});
}

void RoughStrip::remove_last_of(int of_wire) {
  const Grid* wires = row_of(wire);
  std::size_t i = count_;
  while (wires[--i] != of_wire) {}
  --count_;
  for (int p = 0; p < property_count; ++p) {
    Grid* row = row_of(static_cast<Property>(p));
    row[i] = row[count_];
    row[count_] = no_run[p];
  }
}

int RoughStrip::count_crossings(const RoughRun& run) const {
  return run.is_open() ? count_open(run) : count_closed(run);
}

LOOMFOLIO_WIDE int RoughStrip::count_closed(const RoughRun& run) const {
  const RunSides s = sides_of(run, nowhere);
  const Grid from = run.low, to = run.high;
  const Grid *bl = row_of(low), *bh = row_of(high);
  const Grid *l0 = row_of(low_end_0), *l1 = row_of(low_end_1), *h0 = row_of(high_end_0), *h1 = row_of(high_end_1);
  int sums[at_once] = {};
  for (std::size_t begin = 0; begin < count_; begin += at_once)
    for (std::size_t k = 0; k < at_once; ++k) {
      const std::size_t i = begin + k;
      const int first = is_between(l0[i], from, to) + is_between(l1[i], from, to) + is_between(s.high[0], bl[i], bh[i]) +
                        is_between(s.high[1], bl[i], bh[i]);
      const int second = is_between(h0[i], from, to) + is_between(h1[i], from, to) + is_between(s.low[0], bl[i], bh[i]) +
                         is_between(s.low[1], bl[i], bh[i]);
      sums[k] += first < second ? first : second;
    }
  return std::accumulate(std::begin(sums), std::end(sums), 0);
}

LOOMFOLIO_WIDE int RoughStrip::count_open(const RoughRun& run) const {
  const RunSides s = sides_of(run, nowhere);
  const Grid from = run.low, to = run.high;
  const Grid *lows = row_of(low), *highs = row_of(high);
  const Grid *l0 = row_of(low_end_0), *l1 = row_of(low_end_1), *h0 = row_of(high_end_0), *h1 = row_of(high_end_1);
  const Grid *open_low = row_of(opens_low), *open_high = row_of(opens_high);
  const Grid *turn_low = row_of(heading_low), *turn_high = row_of(heading_high);
  int sums[at_once] = {};
  for (std::size_t begin = 0; begin < count_; begin += at_once)
    for (std::size_t k = 0; k < at_once; ++k) {
      const std::size_t i = begin + k;
      const Grid bl = lows[i], bh = highs[i];
      const int both_low = open_low[i] & s.opens_low, both_high = open_high[i] & s.opens_high;
      const int first = is_between(l0[i], from, to) + is_between(l1[i], from, to) + is_between(s.high[0], bl, bh) +
                        is_between(s.high[1], bl, bh) + (both_low & static_cast<int>(s.heading_low > turn_low[i])) +
                        (both_high & static_cast<int>(s.heading_high > turn_high[i]));
      const int second = is_between(h0[i], from, to) + is_between(h1[i], from, to) + is_between(s.low[0], bl, bh) +
                         is_between(s.low[1], bl, bh) + (both_low & static_cast<int>(s.heading_low < turn_low[i])) +
                         (both_high & static_cast<int>(s.heading_high < turn_high[i]));
      const int apart = static_cast<int>(from >= bh) | static_cast<int>(bl >= to);
      sums[k] += (first < second ? first : second) * (1 - apart);
    }
  return std::accumulate(std::begin(sums), std::end(sums), 0);
}

}  // namespace loomfolio::laying
