// SPDX-License-Identifier: MIT
#include "sheets/fitting_uses.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "sheets/fitted_ends.h"
#include "sheets/fitting_text.h"
#include "sheets/names.h"

namespace loomfolio {
namespace {

/// Areas and lengths come from the same texts, so equal ones are equal bit by bit; a hundredth is let pass all the
/// same.
template <class T>
bool is_same(const std::optional<Range<T>>& a, const std::optional<Range<T>>& b) {
  if (a.has_value() != b.has_value()) return false;
  return !a || (a->least == b->least && a->most == b->most);
}

/// Rings come for one size of wire each; a stud's own range says nothing of them.
FittingUse use_at(const Build& build, const FittedEnd& end, const Words& words) {
  FittingUse use;
  use.name = fitting_name(build, end.terminal, words);
  if (fitting_shape(build, end.terminal) == FittingShape::ring) {
    use.takes = {end.area, end.area};
    return use;
  }
  if (const KindTerminal* terminal = kind_terminal_of(build, end.terminal)) {
    use.takes = terminal->takes;
    use.insulation = terminal->insulation;
    use.strip = terminal->strip;
  }
  return use;
}

void note_shared(std::vector<SharedFitting>& noted, const Build& build, std::size_t hook_up, const FittedEnd& end,
                 const Words& words) {
  SharedFitting shared{trimmed(owner_name(build, end.terminal, words) + " " + terminal_mark(build, end.terminal)), {}, {hook_up}};
  for (const WireId id : end.all) shared.wires.push_back(&build.wire(id));
  const auto same = std::find_if(noted.begin(), noted.end(), [&](const SharedFitting& other) {
    return other.place == shared.place &&
           std::equal(other.wires.begin(), other.wires.end(), shared.wires.begin(), shared.wires.end(),
                      [](const Wire* a, const Wire* b) { return a->id == b->id; });
  });
  if (same == noted.end())
    noted.push_back(std::move(shared));
  else
    same->hook_ups.push_back(hook_up);
}

bool is_same_use(const FittingUse& a, const FittingUse& b) {
  return a.name == b.name && is_same(a.takes, b.takes) && is_same(a.insulation, b.insulation) && a.strip == b.strip;
}

}  // namespace

std::map<FittingShape, std::vector<FittingUse>> find_fitting_uses(const std::vector<const Build*>& builds,
                                                                  const Words& words) {
  std::map<FittingShape, std::vector<FittingUse>> uses;
  std::set<std::string> seen;
  for (std::size_t b = 0; b < builds.size(); ++b) {
    const Build* build = builds[b];
    for (const FittedEnd& end : find_fitted_ends(*build)) {
      std::string name = build->terminal(end.terminal).name;
      for (const WireId id : end.wires) {
        const Wire& wire = build->wire(id);
        name += " " + wire.id + " " + wire.colour.text() + " " + wire.size_text;
      }
      std::vector<FittingUse>& list = uses[fitting_shape(*build, end.terminal)];
      const FittingUse wanted = use_at(*build, end, words);
      auto same = std::find_if(list.begin(), list.end(), [&](const FittingUse& use) { return is_same_use(use, wanted); });
      if (same == list.end()) same = list.insert(list.end(), wanted);
      std::vector<std::size_t>& counts = same->counts[{end.area.number(), end.size}];
      counts.resize(builds.size());
      ++counts[b];
      if (end.all.size() > 1) note_shared(same->shared, *build, b, end, words);
      if (!seen.insert(name).second) continue;
      same->wires[{end.area.number(), end.size}].push_back(&build->wire(end.wires.front()));
      const std::string place = owner_name(*build, end.terminal, words);
      if (std::find(same->places.begin(), same->places.end(), place) == same->places.end())
        same->places.push_back(place);
    }
  }
  // Rings are bought by thread and size of wire.
  std::vector<FittingUse>& rings = uses[FittingShape::ring];
  std::stable_sort(rings.begin(), rings.end(), [](const FittingUse& a, const FittingUse& b) {
    if (a.name != b.name) return is_numbered_before(a.name, b.name);
    return a.counts.begin()->first.first < b.counts.begin()->first.first;
  });
  if (rings.empty()) uses.erase(FittingShape::ring);
  return uses;
}

std::string fitting_anchor(FittingShape shape) { return "fitting " + std::to_string(static_cast<int>(shape)); }

Fit fits(const FittingUse& use, SquareMillimetres area) {
  if (!use.takes || area.number() <= 0) return Fit::unknown;
  constexpr double slack = 1e-6;
  if (area.number() < use.takes->least.number() - slack) return Fit::too_small;
  return area.number() > use.takes->most.number() + slack ? Fit::too_large : Fit::fits;
}

}  // namespace loomfolio
