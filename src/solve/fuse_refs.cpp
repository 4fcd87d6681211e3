// SPDX-License-Identifier: MIT
#include "solve/fuse_refs.h"

#include <algorithm>

namespace loomfolio {

Amperes rating_of_fuse(const Part& part, const Inside& fuse) {
  if (!part.fuse_choice.empty()) {
    Amperes most{0};
    for (const auto& range : part.fuse_choice) most = std::max(most, range.most);
    return most;
  }
  return fuse.rating.value_or(Amperes(10));
}

std::vector<FuseRef> find_fuses(const Build& build) {
  std::vector<FuseRef> fuses;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      if (inside.type != InsideType::fuse) continue;
      const Amperes rating = rating_of_fuse(build.parts[p], inside);
      const std::string family = inside.family.empty() ? "blade_regular" : inside.family;
      fuses.push_back({{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, rating, &fuse_family(family, rating)});
    }
  return fuses;
}

}  // namespace loomfolio
