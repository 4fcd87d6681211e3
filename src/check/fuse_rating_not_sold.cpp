// SPDX-License-Identifier: MIT
// A rating that its family is not made in. Regular and mini blades by ISO 8820-3 ranges as sold; maxi in tens
// (trade page). Families without a list here are not looked at.
#include <algorithm>

#include "base/text.h"
#include "check/rules.h"

namespace loomfolio::rules {

namespace {

const std::vector<double>* ratings_sold(const std::string& family) {
  static const std::vector<double> mini = {2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30};
  static const std::vector<double> regular = {1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40};
  static const std::vector<double> maxi = {20, 25, 30, 35, 40, 50, 60, 70, 80};
  if (family == "blade_mini") return &mini;
  if (family == "blade_regular") return &regular;
  if (family == "blade_maxi") return &maxi;
  return nullptr;
}

}  // namespace

void fuse_rating_not_sold(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::fuse || !inside.rating) return;
    const std::vector<double>* sold = ratings_sold(inside.family);
    if (!sold || std::find(sold->begin(), sold->end(), inside.rating->number()) != sold->end()) return;
    std::vector<std::string> texts;
    for (const double rating : *sold) texts.push_back(shortest(rating, 1));
    findings.push_back(make_diagnostic(DiagnosticId::fuse_rating_not_sold, rating_place(part, inside),
                                       "fuse " + say_inside(facts.build, ref) + " is rated " + say(*inside.rating) +
                                           ", which is not sold in its family",
                                       "sold are " + join(texts, ", ") + " A"));
  });
}

}  // namespace loomfolio::rules
