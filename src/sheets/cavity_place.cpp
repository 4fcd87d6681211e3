// SPDX-License-Identifier: MIT
// Cavities that differ by less than half the least distance between two cavities stand in one line.
#include "sheets/cavity_place.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace loomfolio {
namespace {

/// A cavity off its line by more than this share of the pitch is set off on purpose.
constexpr double most_off_line = 0.2;

bool is_counted(const Kind& kind, const KindTerminal& terminal) {
  if (terminal.face < 0) return false;
  const bool is_cavity = terminal.form == TerminalForm::sealed || terminal.form == TerminalForm::cavity ||
                         terminal.form == TerminalForm::blade;
  const View seen = kind.faces[static_cast<std::size_t>(terminal.face)].seen;
  return is_cavity && (seen == View::wire_side || seen == View::mating_side);
}

double distance(Point a, Point b) { return std::hypot((a.x - b.x).number(), (a.y - b.y).number()); }

double least_distance(const std::vector<Point>& points) {
  double least = 1e9;
  for (std::size_t i = 0; i < points.size(); ++i)
    for (std::size_t j = i + 1; j < points.size(); ++j) least = std::min(least, distance(points[i], points[j]));
  return least;
}

/// The lines that the values stand on, ascending; nothing when a value is too far off its line.
std::optional<std::vector<double>> find_lines(std::vector<double> values, double pitch) {
  std::sort(values.begin(), values.end());
  std::vector<double> lines;
  for (const double value : values) {
    if (lines.empty() || value - lines.back() > pitch / 2)
      lines.push_back(value);
    else if (value - lines.back() > pitch * most_off_line)
      return std::nullopt;
  }
  // Lines closer than a pitch: rows set off by half of one.
  for (std::size_t i = 1; i < lines.size(); ++i)
    if (lines[i] - lines[i - 1] < pitch * (1 - most_off_line)) return std::nullopt;
  return lines;
}

int index_of(const std::vector<double>& lines, double value) {
  const auto nearest = std::min_element(lines.begin(), lines.end(),
                                        [&](double a, double b) { return std::abs(a - value) < std::abs(b - value); });
  return static_cast<int>(nearest - lines.begin()) + 1;
}

}  // namespace

std::optional<CavityPlace> find_cavity_place(const Kind& kind, std::size_t terminal) {
  const KindTerminal& asked = kind.terminals[terminal];
  if (!is_counted(kind, asked)) return std::nullopt;
  std::vector<Point> points;
  std::vector<double> across, down;
  for (const KindTerminal& other : kind.terminals) {
    if (other.face != asked.face || !is_counted(kind, other)) continue;
    points.push_back(other.at);
    across.push_back(other.at.x.number());
    down.push_back(other.at.y.number());
  }
  if (points.size() < 2) return std::nullopt;
  const double pitch = least_distance(points);
  const auto columns = find_lines(across, pitch), rows = find_lines(down, pitch);
  if (!columns || !rows) return std::nullopt;
  return CavityPlace{index_of(*rows, asked.at.y.number()), index_of(*columns, asked.at.x.number()),
                     static_cast<int>(rows->size())};
}

std::string cavity_place_text(const Kind& kind, std::size_t terminal, const Words& words) {
  const auto place = find_cavity_place(kind, terminal);
  if (!place) return {};
  const std::string column = std::to_string(place->column);
  if (place->rows == 1) return words("terminals.place_in_row", {{"column", column}});
  return words("terminals.place", {{"row", std::to_string(place->row)}, {"column", column}});
}

}  // namespace loomfolio
