// SPDX-License-Identifier: MIT
#include "solve/fault_study.h"

#include <algorithm>
#include <cmath>

#include "solve/meter.h"
#include "solve/wire_load.h"

namespace loomfolio {
namespace {

constexpr Amperes burning{40};

}  // namespace

FaultStudy::FaultStudy(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book)
    : build_(build),
      solutions_(solutions),
      book_(book),
      worst_(find_worst_currents(build, solutions)),
      benches_(solutions.size()) {}

const FaultEffect& FaultStudy::effect(std::size_t fault, std::size_t s, std::size_t first) {
  const std::vector<InsideRef>& blown = book_.effect(fault, first).blown;
  if (blown.empty() || s == first) return book_.effect(fault, s);
  const auto [place, is_new] = after_.try_emplace({book_.effect_of[fault], s, blown});
  if (!is_new) return place->second;
  if (benches_[s] == nullptr) benches_[s] = std::make_unique<FaultBench>(build_, solutions_[s], worst_, FaultOptions{});
  place->second = benches_[s]->apply(book_.faults[fault], blown);
  return place->second;
}

Expected FaultStudy::seen(std::size_t fault, std::size_t s, std::size_t first, InsideRef what) {
  for (const StateChange& change : effect(fault, s, first).changes)
    if (change.what == what) return change.after;
  const auto inside = static_cast<std::size_t>(what.inside);
  return observed(build_.part(what.part).insides[inside], solutions_[s].insides[what.part.at()][inside]);
}

bool FaultStudy::burns(std::size_t fault, std::size_t s) const {
  const Fault& f = book_.faults[fault];
  const bool is_crossed = f.type == FaultType::wire_to_live;
  if (f.type != FaultType::wire_to_earth && !is_crossed) return false;
  const auto volts_at = [&](TerminalId at) {
    double volts = solutions_[s].terminal_volts[at.at()].number();
    for (const Reading& reading : book_.effect(fault, s).readings)
      if (reading.at == at) volts = reading.volts;
    return volts;
  };
  const double against = is_crossed ? volts_at(live_pole(build_)) : 0;
  return std::abs(volts_at(build_.wire(f.wire).to) - against) / chafe_to_metal.number() > burning.number();
}

bool FaultStudy::stops_engine(std::size_t fault, std::size_t s, std::size_t first) {
  const auto& changes = effect(fault, s, first).changes;
  return std::any_of(changes.begin(), changes.end(), [&](const StateChange& change) {
    return build_.kind_of(build_.part(change.what.part)).group == "ignition" && change.after == Expected::off;
  });
}

}  // namespace loomfolio
