// SPDX-License-Identifier: MIT
#include "sheets/wire_look.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sheets/wire_contrast.h"

namespace loomfolio {
namespace {

struct Paint {
  std::string_view letters;
  Colour colour;
};

constexpr std::array<Paint, 14> paints{{
    {"BK", {0x1a, 0x1a, 0x1a}},
    {"BN", {0x6e, 0x40, 0x22}},
    {"RD", {0xc8, 0x20, 0x1e}},
    {"OG", {0xe6, 0x78, 0x17}},
    {"YE", {0xf2, 0xcd, 0x1f}},
    {"GN", {0x2b, 0x8a, 0x3e}},
    {"BU", {0x1f, 0x5f, 0xb4}},
    {"VT", {0x7a, 0x38, 0x9c}},
    {"GY", {0x8a, 0x8d, 0x90}},
    {"WH", {0xff, 0xff, 0xff}},
    {"PK", {0xf2, 0xa0, 0xba}},
    {"GD", {0xb8, 0x88, 0x2a}},
    {"TQ", {0x2a, 0xa8, 0xa8}},
    {"SR", {0xc6, 0xc8, 0xca}},
}};

constexpr Millimetres pale_edge{0.25};   // outline of white, yellow and pink wires
constexpr Millimetres stripe_edge{0.13};  // beside a stripe that is as dark as its base
constexpr double least_contrast = 0.3;    // of lightness, below which a stripe gets that edge

constexpr Colour unknown_paint{0xa0, 0xa0, 0xa0};

/// Pale wires on white paper need a bolder outline.
Millimetres edge_of(const WireColour& colour) {
  const bool is_pale = colour.base == "WH" || colour.base == "YE" || colour.base == "PK";
  return is_pale ? pale_edge : look::wire_edge;
}

std::vector<PathPiece> straight_path(const std::vector<Point>& points) {
  std::vector<PathPiece> path;
  for (const Point& p : points) path.push_back(path.empty() ? PathPiece(PathMove{p}) : PathPiece(PathLine{p}));
  return path;
}

}  // namespace

Colour wire_paint(std::string_view letters) {
  for (const Paint& paint : paints)
    if (paint.letters == letters) return paint.colour;
  return letters == "GNYE" ? wire_paint("GN") : unknown_paint;
}

double lightness_of(Colour colour) {
  const auto linear = [](std::uint8_t value) {
    const double share = value / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  const double y = 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
  const double f = y > 216.0 / 24389 ? std::cbrt(y) : (24389.0 / 27 * y + 16) / 116;
  return (116 * f - 16) / 100;
}

std::optional<Colour> stripe_edge_of(Colour base, Colour stripe) {
  const auto between = [](Colour a, Colour b) { return std::abs(lightness_of(a) - lightness_of(b)); };
  if (between(base, stripe) >= least_contrast) return std::nullopt;
  const auto least = [&](Colour edge) { return std::min(between(edge, base), between(edge, stripe)); };
  return least(look::ink) > least(look::paper) ? look::ink : look::paper;
}

Millimetres wire_width(SquareMillimetres area) {
  const double metal = area.number();
  return metal <= 1.0   ? look::wire_thin
         : metal <= 2.5 ? look::wire_medium
         : metal <= 6   ? look::wire_thick
                        : look::wire_cable;
}

void add_wire(Items& items, const std::vector<PathPiece>& path, const WireColour& colour, Millimetres width) {
  const auto stroke = [&](Pen pen) { items.push_back(PathItem{path, {true, std::move(pen)}, {}}); };
  const Colour base = wire_paint(colour.base);
  stroke({look::ink, width});
  const Millimetres inner = width - edge_of(colour) * 2;
  stroke({base, inner});
  const std::string_view stripe = colour.base == "GNYE" ? std::string_view("YE") : std::string_view(colour.stripe);
  if (stripe.empty()) return;
  const Colour paint = wire_paint(stripe);
  const std::vector<Millimetres> dashes{look::stripe_dash, look::stripe_gap};
  if (const std::optional<Colour> edge = stripe_edge_of(base, paint))
    stroke({*edge, inner * look::stripe_share + stripe_edge * 2, dashes});
  stroke({paint, inner * look::stripe_share, dashes});
}

void add_wire(Items& items, const std::vector<Point>& points, const WireColour& colour, Millimetres width) {
  add_wire(items, straight_path(points), colour, width);
}

Block wire_swatch(const WireColour& colour, SquareMillimetres area, Millimetres length) {
  const Millimetres width = wire_width(area) + look::swatch_extra;
  Block block{length, width, {}};
  add_wire(block.items, {{Millimetres(0), width / 2}, {length, width / 2}}, colour, width);
  // Closed ends, so that a white wire reads as a piece and not as two lines.
  const Pen end{look::ink, edge_of(colour)};
  const Millimetres half = edge_of(colour) / 2;
  add_line(block.items, {half, Millimetres(0)}, {half, width}, end);
  add_line(block.items, {length - half, Millimetres(0)}, {length - half, width}, end);
  return block;
}

Millimetres add_wire_code(Items& items, Point at, const std::string& code, Colour colour, TextRun run,
                          const TextMeasure& measure) {
  if (code.empty()) return {};
  const bool is_upright = run == TextRun::upright;
  const std::size_t gap = code.find(' ');
  const std::string letters = code.substr(0, gap);
  items.push_back(TextItem{at, letters, look::wire_code, colour, Align::left, is_upright});
  if (gap == std::string::npos) return measure.measure(letters, look::wire_code).width;
  const Millimetres before = measure.measure(letters + " ", look::wire_code).width;
  const Point behind = is_upright ? Point{at.x, at.y - before} : Point{at.x + before, at.y};
  const std::string size = code.substr(gap + 1);
  items.push_back(TextItem{behind, size, look::wire_size, colour, Align::left, is_upright});
  return before + measure.measure(size, look::wire_size).width;
}

}  // namespace loomfolio
