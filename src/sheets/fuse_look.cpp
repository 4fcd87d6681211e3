// SPDX-License-Identifier: MIT
#include "sheets/fuse_look.h"

#include <array>
#include <cmath>

#include "base/text.h"
#include "sheets/fitting_paint.h"

namespace loomfolio {
namespace {

struct RatingColour {
  double amperes;
  FusePaint colour;
};

constexpr Colour dark = look::ink, light = look::paper;

// Body colours of regular and miniature blades (ISO 8820-3 types C and F, SAE J1284 and J2077): 3 to 30 A as printed in
// a trade handbook of automobile electrical systems, table of blade fuses; 1, 2, 35 and 40 A from a trade page. The
// shades are ours.
constexpr std::array<RatingColour, 13> blade_colours{{
    {1, {{0x24, 0x24, 0x24}, light, "fuse_colour.black"}},
    {2, {{0x96, 0x98, 0x9a}, dark, "fuse_colour.grey"}},
    {3, {{0x74, 0x3c, 0x94}, light, "fuse_colour.violet"}},
    {4, {{0xf0, 0xa3, 0xb8}, dark, "fuse_colour.pink"}},
    {5, {{0xd8, 0xb4, 0x84}, dark, "fuse_colour.tan"}},
    {7.5, {{0x74, 0x48, 0x2a}, light, "fuse_colour.brown"}},
    {10, {{0xc4, 0x2a, 0x26}, light, "fuse_colour.red"}},
    {15, {{0x2a, 0x6a, 0xb8}, light, "fuse_colour.blue"}},
    {20, {{0xf0, 0xd0, 0x32}, dark, "fuse_colour.yellow"}},
    {25, {{0xf6, 0xf6, 0xf4}, dark, "fuse_colour.clear"}},
    {30, {{0x33, 0x93, 0x4a}, light, "fuse_colour.green"}},
    {35, {{0x1e, 0x8c, 0x8c}, light, "fuse_colour.blue_green"}},
    {40, {{0xe8, 0x80, 0x22}, dark, "fuse_colour.orange"}},
}};

// Large blades (ISO 8820-3 type E): 20, 30, 40, 50, 60 and 80 A also in DIN 72581-3 form E; the others from a trade
// page.
constexpr std::array<RatingColour, 10> maxi_colours{{
    {20, {{0xf0, 0xd0, 0x32}, dark, "fuse_colour.yellow"}},
    {25, {{0x96, 0x98, 0x9a}, dark, "fuse_colour.grey"}},
    {30, {{0x33, 0x93, 0x4a}, light, "fuse_colour.green"}},
    {35, {{0x74, 0x48, 0x2a}, light, "fuse_colour.brown"}},
    {40, {{0xe8, 0x80, 0x22}, dark, "fuse_colour.orange"}},
    {50, {{0xc4, 0x2a, 0x26}, light, "fuse_colour.red"}},
    {60, {{0x2a, 0x6a, 0xb8}, light, "fuse_colour.blue"}},
    {70, {{0xd8, 0xb4, 0x84}, dark, "fuse_colour.tan"}},
    {80, {{0xf6, 0xf6, 0xf4}, dark, "fuse_colour.clear"}},
    {100, {{0x74, 0x3c, 0x94}, light, "fuse_colour.violet"}},
}};

using namespace fitting_paint;

template <std::size_t n>
std::optional<FusePaint> find_colour(const std::array<RatingColour, n>& colours, Amperes rating) {
  for (const RatingColour& entry : colours)
    if (std::abs(entry.amperes - rating.number()) < 0.01) return entry.colour;
  return std::nullopt;
}

bool is_blade(std::string_view family) { return family.starts_with("blade"); }

Block blade_body(const FusePaint& colour, const std::string& rating) {
  Block block{Millimetres(9.4), Millimetres(9.6), {}};
  const auto box = [](double x, double y, double w, double h) {
    return Rect{Millimetres(x), Millimetres(y), Millimetres(w), Millimetres(h)};
  };
  add_boxed_rect(block.items, box(0.9, 5, 2.3, 4.1), metal, outline);
  add_boxed_rect(block.items, box(6.2, 5, 2.3, 4.1), metal, outline);
  add_boxed_rect(block.items, box(0.1, 0.1, 9.2, 5.2), colour.body, outline, Millimetres(0.8));
  const Millimetres baseline = baseline_at_middle(Millimetres(2.7), look::fuse_rating);
  add_text(block.items, {block.width / 2, baseline}, rating, look::fuse_rating, colour.letters, Align::centre);
  return block;
}

/// A tube between two caps, its wire seen inside; the rating stands on a clear field in the middle.
Block tube_body(const std::string& rating) {
  Block block{Millimetres(13), Millimetres(4.6), {}};
  const auto box = [](double x, double w) {
    return Rect{Millimetres(x), Millimetres(0.1), Millimetres(w), Millimetres(4.4)};
  };
  add_boxed_rect(block.items, box(2.4, 8.2), look::paper, outline);
  add_boxed_rect(block.items, box(0.1, 2.6), metal, outline, Millimetres(0.4));
  add_boxed_rect(block.items, box(10.3, 2.6), metal, outline, Millimetres(0.4));
  add_text(block.items, {block.width / 2, baseline_at_middle(Millimetres(2.3), look::fuse_rating)}, rating,
           look::fuse_rating, look::ink, Align::centre);
  return block;
}

/// A strip with a hole at each end.
Block strip_body(const std::string& rating) {
  Block block{Millimetres(15), Millimetres(5.2), {}};
  add_boxed_rect(block.items, {Millimetres(0.1), Millimetres(0.9), Millimetres(14.8), Millimetres(3.4)}, metal, outline,
                 Millimetres(1.6));
  add_boxed_rect(block.items, {Millimetres(3.9), Millimetres(0.1), Millimetres(7.2), Millimetres(5)}, look::paper,
                 outline, Millimetres(0.5));
  for (const double x : {2.0, 13.0})
    add_circle(block.items, {Millimetres(x), Millimetres(2.6)}, Millimetres(0.9), {true, outline}, {true, look::paper});
  add_text(block.items, {block.width / 2, baseline_at_middle(Millimetres(2.6), look::fuse_rating)}, rating,
           look::fuse_rating, look::ink, Align::centre);
  return block;
}

}  // namespace

std::optional<FusePaint> fuse_paint(std::string_view family, Amperes rating) {
  if (family == "blade_maxi") return find_colour(maxi_colours, rating);
  if (is_blade(family)) return find_colour(blade_colours, rating);
  return std::nullopt;
}

std::string fuse_colour_name(std::string_view family, Amperes rating, const Words& words) {
  const std::optional<FusePaint> colour = fuse_paint(family, rating);
  return colour ? words(colour->key) : std::string();
}

std::string fuse_family_name(std::string_view family, const Words& words) {
  const std::string key = "fuse_family." + std::string(family);
  return words.has(key) ? words(key) : std::string();
}

Block fuse_body(std::string_view family, Amperes rating) {
  const std::string number = shortest(rating.number(), 1);
  if (is_blade(family) || family.empty()) {
    const FusePaint uncoded{look::paper, look::ink, {}};
    return blade_body(fuse_paint(family, rating).value_or(uncoded), number);
  }
  return family.starts_with("glass") ? tube_body(number) : strip_body(number);
}

}  // namespace loomfolio
