// SPDX-License-Identifier: MIT
// Zones stand side by side as columns, with their parts inside, below an outline that says where along a machine they are.
// Under them a bracket joins each pair of zones that wires run between; its tag is the number of wires.
#include "sheets/overview.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "sheets/anchors.h"
#include "sheets/drawing_head.h"
#include "sheets/machine_outline.h"
#include "sheets/overview_brackets.h"
#include "sheets/reference.h"
#include "sheets/text_flow.h"

namespace loomfolio {
namespace {

constexpr Millimetres column_gap{6}, column_inset{3}, column_head{11}, text_level_step{7.5}, tag_height{5}, list_step{5.6},
    name_gap{1}, list_number{10}, most_outline{72}, least_outline{38}, outline_gap{9};

/// A line of a column: a part, or the splices and earths of the zone together.
struct OverviewRow {
  std::string text;
  bool is_quiet = false;
  const Part* part = nullptr;
  bool is_tall = false;  ///< its sheets stand on a line of their own, below the name
};

struct Overview {
  const SheetContext& context;
  const std::vector<LaidDiagram>& diagrams;
  std::vector<std::size_t> zones;       ///< that hold anything, front to rear
  std::vector<std::vector<OverviewRow>> rows;   ///< by column
  std::vector<OverviewBracket> brackets;
  Rect body;
  Millimetres top, column_width, column_height;
  TextStyle row_style = look::text;  ///< smaller where the paper is
  Millimetres row_step{5.6};

  Millimetres column_x(std::size_t column) const {
    return body.x + (column_width + column_gap) * static_cast<double>(column);
  }
};

/// 'S1' or 'S1, S2 ... S9': long lists by their ends.
std::string names_of_zone(const auto& things, ZoneId zone) {
  std::vector<std::string> names;
  for (const auto& thing : things)
    if (thing.zone == zone) names.push_back(thing.id);
  if (names.size() > 4) return names[0] + ", " + names[1] + " … " + names.back();
  return join(names, ", ");
}

std::vector<OverviewRow> rows_of(const SheetContext& context, ZoneId zone) {
  const Build& build = context.build();
  std::vector<OverviewRow> rows, connectors;
  for (const Part& part : build.parts) {
    if (part.zone != zone) continue;
    const bool is_connector = build.kind_of(part).is_connector;
    (is_connector ? connectors : rows).push_back({part.label, is_connector, &part});
  }
  rows.insert(rows.end(), connectors.begin(), connectors.end());
  const std::string splices = names_of_zone(build.splices, zone), earths = names_of_zone(build.earths, zone);
  if (!splices.empty()) rows.push_back({context.words()("overview.splices", {{"names", splices}}), true, nullptr});
  if (!earths.empty()) rows.push_back({context.words()("overview.earths", {{"names", earths}}), true, nullptr});
  return rows;
}

/// The diagrams that show a part, as links after its name.
Millimetres add_sheets(Items& items, const Overview& o, const Part& part, Point right_end) {
  Millimetres x = right_end.x;
  for (auto diagram = o.diagrams.rbegin(); diagram != o.diagrams.rend(); ++diagram) {
    const auto& boxes = diagram->diagram.boxes;
    const bool is_there = std::any_of(boxes.begin(), boxes.end(), [&](const DiagramBox& box) {
      return box.content == BoxContent::part && &o.context.build().parts[static_cast<std::size_t>(box.index)] == &part;
    });
    if (!is_there) continue;
    const std::string mark = sheet_mark(diagram->id);
    const Millimetres width = o.context.measure().measure(widest(mark), o.row_style).width;
    add_text(items, {x, right_end.y}, mark, o.row_style, look::accent, Align::right);
    items.push_back(LinkItem{{x - width, right_end.y - Millimetres(2.8), width, Millimetres(3.6)}, diagram->id, part_anchor(part)});
    x -= width + Millimetres(1.8);
  }
  return x;
}

void draw_column(Items& items, const Overview& o, std::size_t column) {
  const Millimetres x = o.column_x(column);
  add_filled_rect(items, {x, o.top, o.column_width, o.column_height}, look::band, Millimetres(1.5));
  const Zone& zone = o.context.build().zones[o.zones[column]];
  const Millimetres room = o.column_width - column_inset * 2;
  const FittedText name = fit_text(zone.label, look::text_bold, room, o.context.measure());
  add_text(items, {x + column_inset, o.top + Millimetres(5.8)}, name.text, name.style);
  Millimetres y = o.top + column_head + Millimetres(4);
  for (const OverviewRow& row : o.rows[column]) {
    const Millimetres edge = x + o.column_width - column_inset, below = row.is_tall ? o.row_step : Millimetres(0);
    Millimetres right = edge;
    if (row.part != nullptr) right = add_sheets(items, o, *row.part, {edge, y + below});
    if (row.is_tall) right = edge;
    const FittedText text = fit_text(row.text, o.row_style, right - x - column_inset - name_gap, o.context.measure());
    add_text(items, {x + column_inset, y}, text.text, text.style, row.is_quiet ? look::grey : look::ink);
    y += o.row_step + below;
  }
}

void draw_bracket(Items& items, const Overview& o, const OverviewBracket& b) {
  const Millimetres foot = o.top + o.column_height;
  const Millimetres y = foot + text_level_step * (b.level + 1.0);
  const std::vector<Point> points = {{b.left_x, foot}, {b.left_x, y}, {b.right_x, y}, {b.right_x, foot}};
  // A white edge under each bracket shows which one passes over.
  add_polyline(items, points, {look::paper, Millimetres(2), {}, Cap::butt});
  const double weight = std::min(0.35 + 0.06 * b.wires, 1.6);
  add_polyline(items, points, {look::ink, Millimetres(weight), {}, Cap::butt});
}

void draw_tag(Items& items, const Overview& o, const OverviewBracket& b) {
  const std::string number = std::to_string(b.wires);
  const Millimetres width = o.context.measure().measure(number, look::table_head).width + Millimetres(2.4);
  const Millimetres y = o.top + o.column_height + text_level_step * (b.level + 1.0);
  const Millimetres x = (b.left_x + b.right_x) / 2;
  add_boxed_rect(items, {x - width / 2, y - tag_height / 2, width, tag_height}, look::paper, {look::ink, look::line, {}, Cap::butt},
                 Millimetres(0.8));
  add_text(items, {x, baseline_at_middle(y, look::table_head)}, number, look::table_head, look::ink, Align::centre);
}

Millimetres list_top(const Overview& o) {
  int deepest = 0;
  for (const OverviewBracket& b : o.brackets) deepest = std::max(deepest, b.level + 1);
  return o.top + o.column_height + text_level_step * (deepest + 2.0);
}

/// A line from the place along a machine to each column, in what the page has left: all is pushed down below it.
void add_outline(Items& items, Overview& o) {
  const Millimetres end = list_top(o) + list_step * static_cast<double>(o.diagrams.size());
  const Millimetres room = std::min(o.body.bottom() - end, most_outline);
  if (room < least_outline) return;
  const Millimetres height = room - outline_gap, width = height / outline_shape;
  const Rect place{o.body.x + (o.body.width - width) / 2, o.top, width, height};
  o.top += room;
  std::vector<OutlineMark> marks;
  for (std::size_t column = 0; column < o.zones.size(); ++column)
    marks.push_back({o.context.build().zones[o.zones[column]].place, {o.column_x(column) + o.column_width / 2, o.top}});
  items.push_back(TagOpenItem{"Figure", o.context.words()("overview.outline")});
  add_machine_outline(items, place, marks);
  items.push_back(TagCloseItem{});
}

/// Number and name of every diagram in as many columns as they need.
void draw_names(Items& items, const Overview& o, std::size_t rows) {
  const std::size_t columns = (o.diagrams.size() + rows - 1) / rows;
  const Millimetres width = (o.body.width + column_gap) / static_cast<double>(columns);
  for (std::size_t d = 0; d < o.diagrams.size(); ++d) {
    const LaidDiagram& diagram = o.diagrams[d];
    const Millimetres x = o.body.x + width * static_cast<double>(d / rows),
                      y = list_top(o) + list_step * static_cast<double>(d % rows);
    const FittedText title =
        fit_text(diagram.title, look::text_bold, width - column_gap - list_number, o.context.measure());
    add_text(items, {x + list_number - Millimetres(3), y}, sheet_mark(diagram.id), look::text_bold, look::accent, Align::right);
    add_text(items, {x + list_number, y}, title.text, title.style);
    items.push_back(LinkItem{{x, y - Millimetres(4), width - column_gap, Millimetres(5.4)}, diagram.id, {}});
  }
}

/// Below the brackets: every diagram, its number, its name, and, where a line each has room, the parts on it.
void draw_list(Items& items, const Overview& o) {
  Millimetres y = list_top(o);
  const double rows = std::floor((o.body.bottom() - y) / list_step) + 1;
  if (rows < static_cast<double>(o.diagrams.size())) return draw_names(items, o, static_cast<std::size_t>(std::max(rows, 1.0)));
  const TextMeasure& measure = o.context.measure();
  Millimetres title_width;
  for (const LaidDiagram& d : o.diagrams) title_width = std::max(title_width, measure.measure(d.title, look::text_bold).width);
  const Millimetres title_x = o.body.x + list_number, parts_x = title_x + title_width + Millimetres(6);
  for (const LaidDiagram& diagram : o.diagrams) {
    std::vector<std::string> names;
    for (const DiagramBox& box : diagram.diagram.boxes) {
      if (box.content != BoxContent::part) continue;
      const Part& part = o.context.build().parts[static_cast<std::size_t>(box.index)];
      if (!o.context.build().kind_of(part).is_connector) names.push_back(part.label);
    }
    add_text(items, {title_x - Millimetres(3), y}, sheet_mark(diagram.id), look::text_bold, look::accent, Align::right);
    add_text(items, {title_x, y}, diagram.title, look::text_bold);
    const FittedText parts = fit_text(join(names, ", "), look::table, o.body.right() - parts_x, measure);
    add_text(items, {parts_x, y}, parts.text, parts.style, look::grey);
    items.push_back(LinkItem{{o.body.x, y - Millimetres(4), parts_x - o.body.x, Millimetres(5.4)}, diagram.id, {}});
    y += list_step;
  }
}

/// Whether a part's name and its sheets are too long for one line.
bool is_too_long(const Overview& o, const OverviewRow& row) {
  if (row.part == nullptr) return false;
  Items sheets;
  const Millimetres room = add_sheets(sheets, o, *row.part, {o.column_width - column_inset * 2, {}});
  return o.context.measure().measure(row.text, o.row_style).width > room - name_gap;
}

void place_columns(Overview& o) {
  const double count = static_cast<double>(o.zones.size());
  o.column_width = (o.body.width - column_gap * (count - 1)) / count;
  double most = 0;
  for (auto& rows : o.rows) {
    double lines = 0;
    for (OverviewRow& row : rows) {
      row.is_tall = is_too_long(o, row);
      lines += row.is_tall ? 2 : 1;
    }
    most = std::max(most, lines);
  }
  o.column_height = column_head + o.row_step * most + Millimetres(2);
}

}  // namespace

Sheet make_overview(const SheetContext& context, const std::vector<LaidDiagram>& diagrams) {
  const Build& build = context.build();
  // On the largest paper that the diagrams use: names should stand whole.
  const PageShape page = std::max_element(diagrams.begin(), diagrams.end(), [](const LaidDiagram& a, const LaidDiagram& b) {
                           return a.page.width < b.page.width;
                         })->page;
  Overview o{context, diagrams, {}, {}, {}, page.body, page.body.y + Millimetres(20), {}, {}};
  for (std::size_t zone = 0; zone < build.zones.size(); ++zone) {
    std::vector<OverviewRow> rows = rows_of(context, ZoneId{static_cast<std::int32_t>(zone)});
    if (rows.empty()) continue;
    o.zones.push_back(zone);
    o.rows.push_back(std::move(rows));
  }
  std::vector<std::size_t> order(o.zones.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return build.zones[o.zones[a]].place < build.zones[o.zones[b]].place;
  });
  auto zones = o.zones;
  auto rows = o.rows;
  for (std::size_t i = 0; i < order.size(); ++i) o.zones[i] = zones[order[i]], o.rows[i] = rows[order[i]];
  if (page.width < Millimetres(350)) o.row_style = look::table, o.row_step = Millimetres(4.8);
  place_columns(o);
  o.brackets = make_overview_brackets(build, o.zones);
  std::vector<Millimetres> centres;
  for (std::size_t column = 0; column < o.zones.size(); ++column) centres.push_back(o.column_x(column) + o.column_width / 2);
  place_bracket_ends(o.brackets, centres);

  Sheet sheet;
  sheet.id = context.id_prefix + "overview";
  sheet.title = context.words()("overview.title");
  sheet.width = page.width;
  sheet.height = page.height;
  Items& items = sheet.items;
  add_drawing_head(items, context, o.body, sheet.title);
  items.push_back(TagOpenItem{"P", {}});
  add_text(items, {o.body.x, o.body.y + Millimetres(13)}, context.words()("overview.lead"), look::text);
  items.push_back(TagCloseItem{});
  add_outline(items, o);
  items.push_back(TagOpenItem{"Figure", context.words()("overview.alternative", {{"zones", std::to_string(o.zones.size())}})});
  for (std::size_t column = 0; column < o.zones.size(); ++column) draw_column(items, o, column);
  for (auto b = o.brackets.rbegin(); b != o.brackets.rend(); ++b) draw_bracket(items, o, *b);
  for (const OverviewBracket& b : o.brackets) draw_tag(items, o, b);
  items.push_back(TagCloseItem{});
  items.push_back(TagOpenItem{"P", {}});
  draw_list(items, o);
  items.push_back(TagCloseItem{});
  return sheet;
}

}  // namespace loomfolio
