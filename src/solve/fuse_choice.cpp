// SPDX-License-Identifier: MIT
#include "solve/fuse_choice.h"

#include <algorithm>

#include "base/text.h"
#include "solve/fuse_refs.h"
#include "solve/size_wires.h"

namespace loomfolio {
namespace {

constexpr double continuous_share = 0.75;
const Celsius hot_wire{105};  // as in the protection study's weakest short

const FuseStudy* study_of(const ProtectionStudy& study, InsideRef fuse) {
  for (const FuseStudy& one : study.fuses)
    if (one.fuse == fuse) return &one;
  return nullptr;
}

std::vector<Amperes> bag_of(const Build& build, const FuseStudy& fuse) {
  const auto& ranges = build.part(fuse.fuse.part).fuse_choice;
  std::vector<Amperes> bag;
  for (const double number : fuse_ratings(fuse.family->id)) {
    const Amperes rating(number);
    const auto holds = [&](const Range<Amperes>& range) { return rating >= range.least && rating <= range.most; };
    if (ranges.empty() || std::any_of(ranges.begin(), ranges.end(), holds)) bag.push_back(rating);
  }
  return bag;
}

Wire in_size(Wire wire, const ConductorSize& size) {
  wire.area = size.area;
  wire.size_text = size.system == SizeSystem::awg ? "AWG" : shortest(size.area.number(), 2) + " mm2";
  wire.outside.reset();  // the measured diameter belongs to the size it was measured on
  return wire;
}

// The short's loop has V / I ohms; the wire's own part of it changes with its size.
Amperes short_in_size(Volts volts, Amperes short_now, const Wire& now, const Wire& then) {
  if (short_now.number() <= 0) return short_now;
  const Ohms loop = volts / short_now - wire_resistance(now, hot_wire) + wire_resistance(then, hot_wire);
  return loop.number() > 0 ? volts / loop : short_now;
}

bool saves(const Build& build, const ProtectionStudy& study, const FuseStudy& fuse, Amperes rating,
           const ConductorSize& size) {
  return std::all_of(fuse.wires.begin(), fuse.wires.end(), [&](WireId id) {
    const WireProtection& found = study.wires[id.at()];
    const Wire& now = build.wire(id);
    const Wire then = in_size(now, size);
    const Amperes least = short_in_size(build.electrics.nominal, found.fault, now, then);
    const Amperes greatest = std::max(found.prospective * std::max(1.0, least / found.fault), least);
    const WireVerdict verdict =
        judge_wire({then, build.electrics.ambient, ampacity(then, build.electrics.ambient, found.bundle),
                    *family_in(build, fuse.family->id, rating), rating, least, greatest});
    return verdict <= WireVerdict::opens_slowly;
  });
}

// By size on sale, then by rating in the bag.
using SaveTable = std::vector<std::vector<char>>;

SaveTable find_saves(const Build& build, const ProtectionStudy& study, const FuseStudy& fuse,
                     const std::vector<Amperes>& bag) {
  SaveTable table;
  for (const ConductorSize& size : sizes_on_sale(build.document.units)) {
    table.emplace_back();
    for (const Amperes rating : bag) table.back().push_back(saves(build, study, fuse, rating, size) ? 1 : 0);
  }
  return table;
}

FuseFitCell fit_cell(const std::vector<Amperes>& bag, const std::vector<char>& saved, Amperes load) {
  FuseFitCell cell{FuseFit::too_much_load, Amperes(0)};
  for (std::size_t r = 0; r < bag.size(); ++r) {
    if (load > bag[r] * (continuous_share + 1e-9)) continue;
    if (saved[r]) return {FuseFit::fits, bag[r]};
    cell.fit = FuseFit::wire_too_thin;
  }
  return cell;
}

}  // namespace

FuseSelection select_fuse(const Build& build, const ProtectionStudy& study, InsideRef ref) {
  FuseSelection selection;
  selection.fuse = ref;
  selection.ambient = build.electrics.ambient;
  const FuseStudy* fuse = study_of(study, ref);
  if (!fuse || fuse->wires.empty()) return selection;
  selection.family = fuse->family;
  selection.load = fuse->load;
  const std::vector<Amperes> bag = bag_of(build, *fuse);
  const SaveTable saved = find_saves(build, study, *fuse, bag);
  std::vector<std::size_t> columns;
  for (std::size_t s = 0; s < saved.size(); ++s) {
    const auto count = std::count(saved[s].begin(), saved[s].end(), 1);
    if (count == 0) continue;
    columns.push_back(s);
    selection.sizes.push_back(sizes_on_sale(build.document.units)[s]);
    if (count == static_cast<std::ptrdiff_t>(bag.size())) break;
  }
  if (columns.empty()) return selection;
  for (const Amperes rating : bag) {
    FuseLoadRow row;
    row.load = rating * continuous_share;
    row.power = build.electrics.nominal * row.load;
    for (const std::size_t s : columns) row.cells.push_back(fit_cell(bag, saved[s], row.load));
    selection.rows.push_back(std::move(row));
  }
  return selection;
}

std::vector<FuseSelection> select_fuses(const Build& build, const ProtectionStudy& study) {
  std::vector<FuseSelection> selections;
  for (const FuseStudy& fuse : study.fuses) {
    if (build.part(fuse.fuse.part).fuse_choice.empty()) continue;
    FuseSelection selection = select_fuse(build, study, fuse.fuse);
    if (!selection.rows.empty()) selections.push_back(std::move(selection));
  }
  return selections;
}

}  // namespace loomfolio
