// SPDX-License-Identifier: MIT
#include "solve/supply.h"

#include <algorithm>
#include <vector>

#include "solve/plain_metal.h"

namespace loomfolio {
namespace {

struct Source {
  InsideRef ref;
  int earthed = -1, live = -1;  // metal that its poles hang on
};

std::vector<InsideRef> list_sources(const Build& build) {
  std::vector<InsideRef> sources;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      if (inside.type == InsideType::source && inside.nodes.size() >= 2)
        sources.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  return sources;
}

/// The one that stands between nothing and the frame.
const Source& first_in_row(const std::vector<Source>& sources, int frame) {
  const auto at_frame = std::find_if(sources.begin(), sources.end(), [&](const Source& s) { return s.earthed == frame; });
  if (at_frame != sources.end()) return *at_frame;
  const auto is_first = [&](const Source& one) {
    return std::none_of(sources.begin(), sources.end(), [&](const Source& other) { return other.live == one.earthed; });
  };
  const auto first = std::find_if(sources.begin(), sources.end(), is_first);
  return first != sources.end() ? *first : sources.front();
}

}  // namespace

SupplyPoles find_supply_poles(const Build& build) {
  const std::vector<InsideRef> refs = list_sources(build);
  if (refs.empty()) return {};
  if (refs.size() == 1) return {refs.front(), refs.front()};
  PlainMetal metal = join_plain_metal(build);
  const std::size_t earthed_node = build.electrics.is_positive_earth ? 0 : 1;
  std::vector<Source> sources;
  for (const InsideRef ref : refs) {
    const Part& part = build.part(ref.part);
    const Inside& inside = part.insides[static_cast<std::size_t>(ref.inside)];
    const auto root = [&](std::size_t node) { return metal.islands.root(metal.point(part, ref.part.at(), inside.nodes[node])); };
    sources.push_back({ref, root(earthed_node), root(1 - earthed_node)});
  }
  const Source& first = first_in_row(sources, metal.islands.root(metal.frame));
  const Source* last = &first;
  for (std::size_t step = 1; step < sources.size(); ++step) {
    const auto next = std::find_if(sources.begin(), sources.end(), [&](const Source& s) { return s.earthed == last->live; });
    if (next == sources.end() || next->live == last->live) break;
    last = &*next;
  }
  return {first.ref, last->ref};
}

double nominal_share(const Electrics& electrics, const Inside& source) {
  return source.at_voltage ? *source.at_voltage / electrics.nominal : 1;
}

}  // namespace loomfolio
