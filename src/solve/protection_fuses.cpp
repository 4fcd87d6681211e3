// SPDX-License-Identifier: MIT
// Each fuse against its own load and the current it can break; fuses in series against each other.
#include <algorithm>
#include <cmath>

#include "solve/protection_parts.h"

namespace loomfolio {
namespace {

/// What each fuse carries in a situation when nothing charges.
struct UnchargedLoads {
  SituationId situation;
  std::vector<Amperes> by_fuse;
};

std::vector<UnchargedLoads> find_uncharged(Study& study) {
  std::vector<UnchargedLoads> all;
  for (BenchPair& bench : study.benches) {
    if (study.build.situations[bench.situation.at()].engine != EngineState::running) continue;
    bench.cold->stop_charging();
    UnchargedLoads loads{bench.situation, {}};
    for (std::size_t f = 0; f < study.fuses.size(); ++f) loads.by_fuse.push_back(bench.cold->fuse_amperes(f));
    all.push_back(std::move(loads));
  }
  return all;
}

Amperes amperes_in(const Solution& solution, const FuseStudy& fuse) {
  return Amperes(std::abs(solution.insides[fuse.fuse.part.at()][static_cast<std::size_t>(fuse.fuse.inside)].amperes.number()));
}

void find_load(const Study& study, const std::vector<UnchargedLoads>& uncharged, std::size_t f, FuseStudy& fuse) {
  for (const Solution& solution : study.solutions) {
    const Amperes amperes = amperes_in(solution, fuse);
    if (amperes <= fuse.load) continue;
    fuse.load = amperes;
    fuse.situation = solution.situation;
  }
  for (const UnchargedLoads& loads : uncharged) {
    const Amperes amperes = loads.by_fuse[f];
    if (amperes <= fuse.load + no_other_matter) continue;
    fuse.load = amperes;
    fuse.situation = loads.situation;
    fuse.is_uncharged = true;
  }
  fuse.load_share = fuse.load / fuse.rating;
}

void find_into_empty(const std::vector<ChargingExtreme>& extremes, FuseStudy& fuse) {
  for (const ChargingExtreme& extreme : extremes) {
    if (extreme.state != ChargeState::into_empty) continue;
    const Amperes amperes = amperes_in(extreme.solution, fuse);
    if (amperes <= fuse.into_empty) continue;
    fuse.into_empty = amperes;
    fuse.into_empty_from = extreme.solution.situation;
  }
}

// Terminals of the fuse: a short behind it is at the one that draws more through it.
std::vector<TerminalId> ends_of(const Build& build, InsideRef ref) {
  std::vector<TerminalId> ends;
  const Part& part = build.part(ref.part);
  for (const Inside::Node& node : part.insides[static_cast<std::size_t>(ref.inside)].nodes)
    if (node.terminal >= 0) ends.push_back(part.terminals[static_cast<std::size_t>(node.terminal)]);
  return ends;
}

void find_prospective(Study& study, std::size_t f, FuseStudy& fuse) {
  for (BenchPair& bench : study.benches)
    for (const TerminalId end : ends_of(study.build, fuse.fuse)) {
      bench.cold->short_to_earth(end);
      fuse.prospective = std::max(fuse.prospective, bench.cold->fuse_amperes(f));
    }
  fuse.is_in_earth_side = fuse.load.number() > 0.01 && fuse.prospective < fuse.load * 1.2;
}

// What cannot pass more than it carries does not lean on the fuse: it is named only where all wires are so.
bool leans_less(const WireProtection& a, const WireProtection& b) {
  const bool a_is_limited = a.verdict == WireVerdict::limited, b_is_limited = b.verdict == WireVerdict::limited;
  return a_is_limited != b_is_limited ? a_is_limited : a.ampacity > b.ampacity;
}

void find_wires(const Study& study, FuseStudy& fuse) {
  const auto& wires = study.result.wires;
  for (std::size_t w = 0; w < wires.size(); ++w) {
    if (wires[w].fuse != fuse.fuse) continue;
    const WireId id{static_cast<std::int32_t>(w)};
    fuse.wires.push_back(id);
    if (!fuse.thinnest.is_set() || leans_less(wires[fuse.thinnest.at()], wires[w])) fuse.thinnest = id;
  }
}

}  // namespace

int index_of_fuse(const Study& study, InsideRef inside) {
  for (std::size_t f = 0; f < study.fuses.size(); ++f)
    if (study.fuses[f].inside == inside) return static_cast<int>(f);
  return -1;
}

void study_fuses(Study& study) {
  study.result.charging = solve_charging_extremes(study.build, study.solutions);
  const std::vector<UnchargedLoads> uncharged = find_uncharged(study);
  for (std::size_t f = 0; f < study.fuses.size(); ++f) {
    FuseStudy fuse;
    fuse.fuse = study.fuses[f].inside;
    fuse.rating = study.fuses[f].rating;
    fuse.family = study.fuses[f].family;
    find_load(study, uncharged, f, fuse);
    find_into_empty(study.result.charging, fuse);
    find_prospective(study, f, fuse);
    find_wires(study, fuse);
    study.result.fuses.push_back(std::move(fuse));
  }
}

namespace {

// The end at which a dead short draws most through the fuse: the one away from its supply. Unset: none draws its
// rating.
TerminalId far_end_of(const Study& study, ShortBench& bench, std::size_t fuse) {
  TerminalId far;
  Amperes most = study.fuses[fuse].rating;
  for (const TerminalId end : ends_of(study.build, study.fuses[fuse].inside)) {
    bench.short_to_earth(end);
    if (bench.fuse_amperes(fuse) >= most) far = end, most = bench.fuse_amperes(fuse);
  }
  return far;
}

// Fuses that pass nine tenths of a short behind the lower one, and without which it passes less than half.
std::vector<std::size_t> find_uppers(ShortBench& bench, std::size_t lower, TerminalId end) {
  bench.short_to_earth(end);
  const Amperes through = bench.fuse_amperes(lower), extra = through - bench.base_fuse_amperes(lower);
  std::vector<std::size_t> uppers;
  for (const std::size_t upper : bench.busy_fuses(extra * 0.9)) {
    if (upper == lower || bench.fuse_amperes(upper) - bench.base_fuse_amperes(upper) < extra * 0.9) continue;
    // The short lies behind the lower: its volts are the lower ones.
    if (bench.fuse_volts(upper) > bench.fuse_volts(lower)) uppers.push_back(upper);
  }
  std::erase_if(uppers, [&](std::size_t upper) {
    bench.short_to_earth(end);
    bench.open_fuse(upper);
    return bench.fuse_amperes(lower) >= through * 0.5;
  });
  return uppers;
}

}  // namespace

void study_pairs(Study& study) {
  for (std::size_t lower = 0; lower < study.fuses.size(); ++lower) {
    std::vector<Amperes> prospective(study.fuses.size(), Amperes(0));  // by upper; 0: not in series
    for (BenchPair& bench : study.benches) {
      const TerminalId end = far_end_of(study, *bench.cold, lower);
      if (!end.is_set()) continue;
      const auto uppers = find_uppers(*bench.cold, lower, end);
      bench.cold->short_to_earth(end);
      for (const std::size_t upper : uppers)
        prospective[upper] = std::max(prospective[upper], bench.cold->fuse_amperes(lower));
    }
    for (std::size_t upper = 0; upper < study.fuses.size(); ++upper) {
      if (prospective[upper].number() <= 0) continue;
      FusePair pair{
          study.fuses[upper].inside, study.fuses[lower].inside, Selectivity::not_proven, prospective[upper], {}};
      pair.selectivity = judge_pair(*study.fuses[upper].family, study.fuses[upper].rating, *study.fuses[lower].family,
                                    study.fuses[lower].rating, pair.prospective, pair.fails_from);
      study.result.pairs.push_back(pair);
    }
  }
}

void study_choices(Study& study) {
  for (std::size_t f = 0; f < study.fuses.size(); ++f) {
    const FuseRef& ref = study.fuses[f];
    const Part& part = study.build.part(ref.inside.part);
    if (part.fuse_choice.empty()) continue;
    FuseChoice choice;
    choice.fuse = ref.inside;
    const Amperes load = study.result.fuses[f].load;
    for (const double number : fuse_ratings(ref.family->id)) {
      const Amperes rating(number);
      if (std::none_of(part.fuse_choice.begin(), part.fuse_choice.end(),
                       [&](const Range<Amperes>& range) { return rating >= range.least && rating <= range.most; }))
        continue;
      FuseChoiceRow row{rating, load / rating, WireVerdict::never_live, {}};
      const Amperes sure = surely_opens_from(*family_in(study.build, ref.family->id, rating), rating);
      for (const WireId wire : study.result.fuses[f].wires) {
        const WireProtection& found = study.result.wires[wire.at()];
        const WireVerdict verdict =
            judge_wire({study.build.wire(wire), study.build.electrics.ambient, found.ampacity,
                        *family_in(study.build, ref.family->id, rating), rating, std::max(found.fuse_fault, found.fault),
                        found.prospective});
        if (!row.wire.is_set() || verdict > row.verdict) row.verdict = verdict, row.wire = wire;
        if (verdict == WireVerdict::is_protected || verdict == WireVerdict::opens_slowly)
          row.carries_135 = row.carries_135 && sure <= found.ampacity;
      }
      if (choice.best.number() == 0 && row.load_share <= 0.80 && row.verdict <= WireVerdict::opens_slowly)
        choice.best = rating;
      choice.rows.push_back(row);
    }
    study.result.choices.push_back(std::move(choice));
  }
}

}  // namespace loomfolio
