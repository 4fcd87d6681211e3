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

std::shared_ptr<const FuseFamily> family_in(const Build& build, std::string_view id, Amperes rating) {
  if (id.empty()) id = "blade_regular";
  const FuseFamily& known = fuse_family(id, rating);
  for (const FuseCurve& curve : build.fuse_curves) {
    if (curve.family != id || curve.points.empty()) continue;
    auto given = std::make_shared<FuseFamily>(known);
    given->gates.clear();
    for (const FuseCurvePoint& point : curve.points) given->gates.push_back({point.percent, point.least, point.most});
    given->breaking_capacity = curve.breaking.value_or(known.breaking_capacity);
    given->status = FigureStatus::given;
    given->set = curve.name;
    return given;
  }
  return {std::shared_ptr<const FuseFamily>(), &known};  // lives as long as the program
}

std::vector<FuseRef> find_fuses(const Build& build) {
  std::vector<FuseRef> fuses;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      if (inside.type != InsideType::fuse) continue;
      const Amperes rating = rating_of_fuse(build.parts[p], inside);
      fuses.push_back(
          {{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, rating, family_in(build, inside.family, rating)});
    }
  return fuses;
}

}  // namespace loomfolio
