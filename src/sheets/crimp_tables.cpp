// SPDX-License-Identifier: MIT
#include "sheets/crimp_tables.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "base/text.h"
#include "sheets/crimp_figures.h"
#include "sheets/hook_up_tables.h"
#include "sheets/parts_tables.h"
#include "sheets/print_text.h"
#include "sheets/pull_force.h"
#include "sheets/right_to_left.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

constexpr Millimetres ruler_pad(3);

template <class T, class Print>
std::string range_text(const std::optional<Range<T>>& range, const Words& words, const Print& print) {
  if (!range) return words("crimps.by_maker");
  if (range->least == range->most) return print(range->least);
  return words("crimps.range", {{"least", print(range->least)}, {"most", print(range->most)}});
}

/// Where it goes, when another fitting bears the same name; at most three places.
std::string places_text(const std::vector<FittingUse>& uses, const FittingUse& use, const Words& words) {
  constexpr std::size_t most = 3;
  const auto alike = [&](const FittingUse& other) { return other.name == use.name; };
  if (std::count_if(uses.begin(), uses.end(), alike) < 2) return {};
  std::vector<std::string> places(
      use.places.begin(), use.places.begin() + static_cast<std::ptrdiff_t>(std::min(most, use.places.size())));
  return words("crimps.for_places", {{"places", join(places, ", ") + (use.places.size() > most ? " \u2026" : "")}});
}

/// '3'; '2–4' where hook-ups need different numbers.
std::string count_text(const std::vector<std::size_t>& counts) {
  const auto [least, most] = std::minmax_element(counts.begin(), counts.end());
  return *least == *most ? std::to_string(*most) : std::to_string(*least) + "\u2013" + std::to_string(*most);
}

std::string size_line(const FittingUse& use, const std::pair<double, std::string>& size, const Words& words) {
  const char* key = nullptr;
  switch (fits(use, SquareMillimetres(size.first))) {
    case Fit::unknown:
      key = "crimps.unknown";
      break;
    case Fit::fits:
      key = "crimps.fits";
      break;
    case Fit::too_small:
      key = "crimps.too_small";
      break;
    case Fit::too_large:
      key = "crimps.too_large";
      break;
  }
  return words(key, {{"count", count_text(use.counts.at(size))}, {"size", size.second}});
}

}  // namespace

Table fit_table(const SheetContext& context, FittingShape shape, const std::vector<FittingUse>& uses) {
  const Words& words = context.words();
  const bool is_ring = shape == FittingShape::ring;  // grips the metal alone
  Table table;
  table.columns = {{words("crimps.fitting"), CellAlign::near, Wrapping::wraps, 1},
                   {words("crimps.takes"), CellAlign::near, Wrapping::wraps, 0.7},
                   {words("crimps.insulation"), CellAlign::near, Wrapping::wraps, 0.7},
                   {words("crimps.strip"), CellAlign::near, Wrapping::wraps, 0.7},
                   {words("crimps.used_on"), CellAlign::near, Wrapping::wraps, 1.2}};
  const UnitSystem units = context.build().document.units;
  for (const FittingUse& use : uses) {
    Cell sizes;
    for (const auto& [size, wires] : use.wires)
      sizes.lines.push_back({{{size_line(use, size, words), look::table, look::ink, {}}}, Align::left, {}});
    table.rows.push_back(
        {{two_line_cell(use.name.empty() ? words("parts.splice") : use.name, places_text(uses, use, words),
                        look::table_bold),
          text_cell(range_text(use.takes, words, [](SquareMillimetres a) { return print_area(a); })),
          text_cell(is_ring ? "\u2013" : range_text(use.insulation, words, [&](Millimetres d) {
            return print_small_length(d, units, words);
          })),
          text_cell(use.strip ? both_units(*use.strip, words) : words(is_ring ? "crimps.as_barrel" : "crimps.by_maker")),
          std::move(sizes)}});
  }
  return table;
}

Table barrel_table(const SheetContext& context, const std::vector<const Build*>& builds) {
  const Words& words = context.words();
  std::map<double, std::map<std::string, std::vector<std::size_t>>> by_area;  // splices, and the builds that have them
  for (std::size_t b = 0; b < builds.size(); ++b)
    for (const Splice& splice : builds[b]->splices) {
      const WireSides sides = sides_at(*builds[b], splice.terminal);
      const SquareMillimetres area = total_area(*builds[b], sides.left) + total_area(*builds[b], sides.right);
      by_area[area.number()][splice.id].push_back(b);
    }
  Table table;
  table.columns = {{words("crimps.fitting"), CellAlign::near, Wrapping::wraps, 1},
                   {words("crimps.together"), CellAlign::near, Wrapping::wraps, 0.7},
                   {words("crimps.strip"), CellAlign::near, Wrapping::wraps, 0.7},
                   {words("crimps.used_on"), CellAlign::near, Wrapping::wraps, 1.2}};
  for (const auto& [area, splices] : by_area) {
    std::vector<std::string> places;
    for (const auto& [id, of_builds] : splices)
      places.push_back(of_builds.size() == builds.size() ? id : id + " (" + letters_text(of_builds) + ")");
    std::sort(places.begin(), places.end(), is_numbered_before);
    table.rows.push_back({{text_cell(words("parts.splice"), look::table_bold),
                           text_cell(print_area(SquareMillimetres(area))), text_cell(words("crimps.as_barrel")),
                           text_cell(join(places, ", "))}});
  }
  return table;
}

Block strip_rulers(const PageFlow& flow, const std::vector<FittingUse>& uses) {
  const Words& words = flow.context().words();
  const TextMeasure& measure = flow.context().measure();
  std::vector<Millimetres> lengths;
  for (const FittingUse& use : uses)
    if (use.strip && std::find(lengths.begin(), lengths.end(), *use.strip) == lengths.end())
      lengths.push_back(*use.strip);
  if (lengths.empty()) return {};
  Block block{flow.width(), Millimetres(7), {}};
  const FittedText head = fit_text(words("crimps.ruler"), look::text, flow.width() * 0.5, measure);
  const Millimetres baseline = baseline_at_middle(Millimetres(3.5), look::text);
  add_text(block.items, {{}, baseline}, head.text, head.style);
  Millimetres x = measure.measure(head.text, head.style).width + ruler_pad;
  for (const Millimetres length : lengths) {
    add_filled_rect(block.items, {x, Millimetres(1.6), length, Millimetres(3.8)}, look::ink);
    x += length + Millimetres(1.5);
    const std::string text = both_units(length, words);
    add_text(block.items, {x, baseline}, text, look::text_bold);
    x += measure.measure(text, look::text_bold).width + ruler_pad * 2;
  }
  return mirrored_if(words.is_right_to_left(), std::move(block));
}

Table pull_table(const SheetContext& context, const std::vector<const Build*>& builds) {
  const Words& words = context.words();
  std::set<std::pair<double, std::string>> sizes;
  for (const Build* build : builds)
    for (const Wire& wire : build->wires)
      if (wire.provided == Provider::kit) sizes.insert({wire.area.number(), print_wire_size(wire)});
  const bool is_metric = context.build().document.units == UnitSystem::metric;
  Table table;
  table.columns = {{words("crimps.wire"), CellAlign::near, Wrapping::keeps, 0.4},
                   {words("crimps.gauge"), CellAlign::near, Wrapping::keeps, 0.4},
                   {words(is_metric ? "crimps.newtons" : "crimps.pounds"), CellAlign::far, Wrapping::keeps, 0.2},
                   {words("crimps.as_weight"), CellAlign::far, Wrapping::keeps, 0.6},
                   {words("crimps.held"), CellAlign::near, Wrapping::wraps, 0.8}};
  for (const auto& [area, text] : sizes)
    if (const auto force = pull_force(SquareMillimetres(area)))
      table.rows.push_back({{text_cell(text), text_cell(std::string(force->gauge)),
                             text_cell(fixed(is_metric ? force->newtons : force->pounds, 0)),
                             text_cell(fixed(force->newtons / standard_gravity, 0) + "\u00a0kg"), tick_cell()}});
  return table;
}

}  // namespace loomfolio
