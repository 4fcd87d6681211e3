// SPDX-License-Identifier: MIT
// [[fuse_curve]]: the opening times of a maker's data sheet, in place of the program's own gates for a family.
#include <algorithm>

#include "base/text.h"
#include "read/draft.h"
#include "read/inside_keys.h"

namespace loomfolio {
namespace {

constexpr QuantityRule time_rule{Dimension::time, {1e-4, 1e7}};
constexpr QuantityRule breaking_rule{Dimension::current, {10, 100000}};

std::string read_family(TableReader& table) {
  const PlacedText family = table.placed_line("family", Need::must);
  if (!family.where.is_set()) return {};
  const InsideKey* key = find_inside_key("family");
  if (std::find(key->words.begin(), key->words.end(), family.text) != key->words.end()) return family.text;
  table.refuse_word("family", family, std::vector<std::string>(key->words.begin(), key->words.end()));
  return {};
}

FuseCurvePoint read_point(const TomlValue& tree, Diagnostics& findings) {
  TableReader table(tree, "a point of the fuse curve", findings);
  FuseCurvePoint point;
  if (!table.take("percent", Need::must)) return point;
  point.percent = table.whole("percent", 100, 5000).value_or(100);
  point.least = table.quantity<Seconds>("least", time_rule);
  point.most = table.quantity<Seconds>("most", time_rule);
  table.refuse_unknown_keys();
  return point;
}

/// What is wrong with one point after the one before it; empty: nothing.
std::string say_fault(const FuseCurvePoint& before, const FuseCurvePoint& point) {
  if (point.percent <= before.percent) return "its percent does not rise";
  if (before.least && point.least && *point.least >= *before.least) return "its `least` does not fall";
  if (before.most && point.most && *point.most >= *before.most) return "its `most` does not fall";
  return {};
}

void check_points(const FuseCurve& curve, const std::vector<Where>& places, TableReader& table) {
  const auto refuse = [&](Where where, const std::string& why) {
    table.report(DiagnosticId::fuse_curve_broken, where, "the fuse curve cannot be used here: " + why,
                 "the first point is what the fuse must carry; then percent rises and times fall");
  };
  FuseCurvePoint last;
  last.percent = 0;
  int with_most = 0;
  for (std::size_t i = 0; i < curve.points.size(); ++i) {
    const FuseCurvePoint& point = curve.points[i];
    with_most += point.most ? 1 : 0;
    std::string fault = say_fault(last, point);
    if (fault.empty() && point.least && point.most && *point.least >= *point.most)
      fault = "`least` is not below `most`";
    if (!fault.empty()) return refuse(places[i], fault);
    last.percent = point.percent;
    if (point.least) last.least = point.least;
    if (point.most) last.most = point.most;
  }
  if (with_most < 2)
    refuse(table.origin().key("points"), "fewer than two points say when it opens at the latest (`most`)");
}

}  // namespace

std::vector<FuseCurve> read_fuse_curves(TableReader& spec) {
  std::vector<FuseCurve> curves;
  for (const TomlValue* tree : spec.tables("fuse_curve", 50)) {
    TableReader table(*tree, "[[fuse_curve]]", spec.findings());
    FuseCurve curve;
    curve.origin = table.origin();
    curve.family = read_family(table);
    curve.name = table.line("name", Need::must);
    curve.breaking = table.quantity<Amperes>("breaking", breaking_rule);
    std::vector<Where> places;
    if (table.take("points", Need::must))
      if (const TomlValue* points = table.array("points", 50))
        for (const TomlValue& point : points->items) {
          if (!table.expect_type(point, TomlType::table, "points")) continue;
          curve.points.push_back(read_point(point, table.findings()));
          places.push_back(point.where);
        }
    if (!places.empty()) check_points(curve, places, table);
    table.refuse_unknown_keys();
    if (curve.family.empty()) continue;
    const bool is_second =
        std::any_of(curves.begin(), curves.end(), [&](const FuseCurve& c) { return c.family == curve.family; });
    if (is_second)
      table.report(DiagnosticId::fuse_curve_twice, table.origin().key("family"),
                   "family " + quoted(curve.family) + " has a fuse curve already");
    else
      curves.push_back(std::move(curve));
  }
  return curves;
}

}  // namespace loomfolio
