// SPDX-License-Identifier: MIT
// Each wire, each situation: a dead short at either end of it. What that passes beyond the wire's load came
// from a feed; what does not, is a return. The fuses on the way carry it; the first to open, at its slowest, is opened;
// if the wire still carries more than it may, there is another feed, and so on until it is safe or nothing opens.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "base/side_by_side.h"
#include "solve/bundles.h"
#include "solve/protection_parts.h"

namespace loomfolio {
namespace {

constexpr Volts least_live{0.5};  // below it to earth a wire is a return
constexpr Amperes least_fault{0.01};
constexpr double more_than_load = 1.05;
constexpr double small_rest = 0.05;  // of the short's current, left when the fuse above it has opened
constexpr Amperes any_more{1000};    // asked of no fuse: those that open are wanted
constexpr int most_fuses = 4;        // feeds that may be cut off one after the other
constexpr double same_way = 0.49;    // a fuse (of two side by side one at least) that passes this share of the short's
                                     // extra current is on its way

// Nearest fuse on the short's way: of those that pass its extra current the one with the least volts to earth. -1:
// none.
int nearest_fuse(ShortBench& bench, Amperes extra) {
  int nearest = -1;
  Volts lowest{std::numeric_limits<double>::infinity()};
  for (const std::size_t f : bench.busy_fuses(std::max(extra * same_way, least_fault))) {
    const Amperes more = bench.fuse_amperes(f) - bench.base_fuse_amperes(f);
    if (more < extra * same_way || more < least_fault) continue;
    const Volts volts = bench.fuse_volts(f);
    if (volts < lowest) nearest = static_cast<int>(f), lowest = volts;
  }
  return nearest;
}

// The fuse that opens first, each at its slowest; -1 when none is promised to open.
int first_to_open(const Study& study, ShortBench& bench, Seconds& when) {
  int first = -1;
  when = Seconds(std::numeric_limits<double>::infinity());
  for (const std::size_t f : bench.busy_fuses(any_more)) {
    const Amperes amperes = bench.fuse_amperes(f);
    if (amperes.number() <= 0) continue;
    const Seconds opens = slowest_opening(*study.fuses[f].family, study.fuses[f].rating, amperes);
    if (opens < when) first = static_cast<int>(f), when = opens;
  }
  return first;
}

// Opens fuse after fuse. True when the wire is left with no more than it carries, before it is hurt.
bool is_cut_off(const Study& study, ShortBench& bench, WireId wire, const WireProtection& found) {
  double used = 0;  // share of what the wire stands
  for (int count = 0; count < most_fuses; ++count) {
    const Amperes amperes = bench.wire_amperes(wire);
    if (amperes <= found.ampacity) return true;
    Seconds when;
    const int fuse = first_to_open(study, bench, when);
    if (fuse < 0) return false;
    used += when / withstands(study.build.wire(wire), study.build.electrics.ambient, found.ampacity, amperes);
    if (used > 1) return false;
    bench.open_fuse(static_cast<std::size_t>(fuse));
  }
  return bench.wire_amperes(wire) <= found.ampacity;
}

// The fuse that ends the short when those that open first open one after the other; -1: none does. For a short beside a
// load that takes as much itself: then it passes hardly more through the fuse, and only opening tells which one is
// above it. Leaves fuses open.
int nearest_by_opening(const Study& study, ShortBench& bench, WireId wire, const WireProtection& found) {
  for (int count = 0; count < most_fuses; ++count) {
    Seconds when;
    const int fuse = first_to_open(study, bench, when);
    if (fuse < 0) return -1;
    bench.open_fuse(static_cast<std::size_t>(fuse));
    if (bench.wire_amperes(wire) <= std::min(found.ampacity, found.fault * small_rest)) return fuse;
  }
  return -1;
}

WireVerdict verdict_for(const Study& study, ShortBench& hot, WireId wire, const WireProtection& found, int nearest) {
  if (found.prospective <= found.ampacity && found.fault <= found.ampacity) return WireVerdict::limited;
  if (nearest < 0) return WireVerdict::unfused;
  const FuseRef& fuse = study.fuses[static_cast<std::size_t>(nearest)];
  const WireVerdict alone =
      judge_wire({study.build.wire(wire), study.build.electrics.ambient, found.ampacity, *fuse.family, fuse.rating,
                  std::max(found.fuse_fault, found.fault), std::max(found.prospective, found.fault)});
  if (alone > WireVerdict::not_studied) return alone;
  return is_cut_off(study, hot, wire, found) ? alone : WireVerdict::unfused;
}

bool is_worse(const WireProtection& a, const WireProtection& b) {
  if (a.verdict != b.verdict) return a.verdict > b.verdict;
  // Of two shorts that pass little, the one that shows which fuse feeds the wire tells more.
  const bool names_a = a.fuse.part.is_set(), names_b = b.fuse.part.is_set();
  if (a.verdict == WireVerdict::limited && names_a != names_b) return names_a;
  return a.situation.is_set() && (!b.situation.is_set() || a.fault < b.fault);
}

// A short at one end of the wire; nothing when it draws no more through the wire than its load.
std::optional<WireProtection> study_short(const Study& study, BenchPair& bench, WireId wire, TerminalId end,
                                          WireProtection found) {
  const Amperes load = bench.hot->base_wire_amperes(wire);
  bench.hot->short_to_earth(end);
  found.fault = bench.hot->wire_amperes(wire);
  if (found.fault < load * more_than_load + least_fault) return std::nullopt;
  found.situation = bench.situation;
  found.far_end = end;
  bench.cold->short_to_earth(end);
  found.prospective = bench.cold->wire_amperes(wire);
  int nearest = nearest_fuse(*bench.hot, found.fault - load);
  if (nearest < 0) {
    nearest = nearest_by_opening(study, *bench.hot, wire, found);
    bench.hot->short_to_earth(end);
  }
  if (nearest >= 0) {
    const FuseRef& fuse = study.fuses[static_cast<std::size_t>(nearest)];
    found.fuse = fuse.inside;
    found.fuse_fault = bench.hot->fuse_amperes(static_cast<std::size_t>(nearest));
    found.opens = slowest_opening(*fuse.family, fuse.rating, found.fuse_fault);
    found.carries_135 = surely_opens_from(*fuse.family, fuse.rating) <= found.ampacity;
  }
  found.stands = withstands(study.build.wire(wire), study.build.electrics.ambient, found.ampacity, found.fault);
  found.verdict = verdict_for(study, *bench.hot, wire, found, nearest);
  return found;
}

// At whichever end; a wire fed from both is judged at both.
WireProtection study_wire_in(const Study& study, BenchPair& bench, WireId wire, const WireProtection& whole) {
  WireProtection worst = whole;
  worst.verdict = bench.hot->base_wire_amperes(wire) < least_fault ? WireVerdict::never_live : WireVerdict::earth_side;
  if (bench.cold->base_wire_volts(wire) < least_live) return worst;
  for (const TerminalId end : {study.build.wire(wire).from, study.build.wire(wire).to}) {
    const auto found = study_short(study, bench, wire, end, whole);
    if (found && is_worse(*found, worst)) worst = *found;
  }
  return worst;
}

// The greatest current of a starting motor, by situation.
std::vector<double> starter_amperes(const Study& study) {
  std::vector<double> most(study.solutions.size(), 0.0);
  for (std::size_t s = 0; s < study.solutions.size(); ++s)
    for (std::size_t p = 0; p < study.build.parts.size(); ++p) {
      const Part& part = study.build.parts[p];
      if (study.build.kind_of(part).group != "starting") continue;
      for (std::size_t i = 0; i < part.insides.size(); ++i)
        if (part.insides[i].type == InsideType::motor)
          most[s] = std::max(most[s], std::abs(study.solutions[s].insides[p][i].amperes.number()));
    }
  return most;
}

// The starter motor's cable is the usual exception: what carries half its current or more.
void mark_starter_cables(Study& study) {
  const auto starter = starter_amperes(study);
  for (std::size_t w = 0; w < study.result.wires.size(); ++w) {
    WireProtection& found = study.result.wires[w];
    if (found.verdict != WireVerdict::unfused) continue;
    for (std::size_t s = 0; s < study.solutions.size(); ++s)
      if (starter[s] > 20 && std::abs(study.solutions[s].wire_amperes[w].number()) >= 0.5 * starter[s])
        found.verdict = WireVerdict::starter_cable;
  }
}

// Between a generator and its regulator: the generator limits itself (ABYC E-11.10 exempts it).
void mark_generator_wires(Study& study) {
  for (std::size_t w = 0; w < study.result.wires.size(); ++w)
    for (const Solution& solution : study.solutions) {
      WireProtection& found = study.result.wires[w];
      const Amperes amperes = solution.wire_alternating[w];
      if (amperes.number() <= 0 || found.verdict > WireVerdict::limited || amperes <= found.prospective) continue;
      found.verdict = WireVerdict::limited;
      found.situation = solution.situation;
      found.fault = found.prospective = amperes;
    }
}

}  // namespace

void study_wires(Study& study) {
  const auto bundles = find_bundles(study.build, study.solutions);
  const std::size_t wires = study.build.wires.size();
  study.result.wires.resize(wires);
  for (std::size_t w = 0; w < wires; ++w) {
    study.result.wires[w].bundle = bundles[w];
    study.result.wires[w].ampacity = ampacity(study.build.wires[w], study.build.electrics.ambient, bundles[w]);
  }
  std::vector<std::vector<WireProtection>> found(study.benches.size());  // [situation][wire]
  work_side_by_side(study.benches.size(), [&](std::size_t s) {
    for (std::size_t w = 0; w < wires; ++w)
      found[s].push_back(
          study_wire_in(study, study.benches[s], WireId{static_cast<std::int32_t>(w)}, study.result.wires[w]));
  });
  for (std::size_t w = 0; w < wires; ++w) {
    WireProtection& worst = study.result.wires[w];
    Amperes prospective{0};
    for (const auto& in_situation : found) {
      prospective = std::max(prospective, in_situation[w].prospective);
      if (is_worse(in_situation[w], worst)) worst = in_situation[w];
    }
    worst.prospective = prospective;
  }
  mark_starter_cables(study);
  mark_generator_wires(study);
}

}  // namespace loomfolio
