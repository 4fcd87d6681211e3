// SPDX-License-Identifier: MIT
// When a fuse opens: two curves through the gates of its family, never one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "solve/conductor.h"

namespace loomfolio {

/// At `percent` of its rating a fuse of the family opens not before `least` and not after `most`. Unset: no limit stated.
struct FuseGate {
  double percent = 100;
  std::optional<Seconds> least, most;
};

/// A family of fuses, or one maker's curve given as points.
struct FuseFamily {
  std::string id;        ///< as in Inside::family: `blade_regular`
  std::string name;      ///< for people: 'regular blade'
  std::string standard;  ///< 'ISO 8820-3 type C'
  Amperes least_rating, most_rating;
  std::vector<FuseGate> gates;  ///< rising percent; the first is the one it must carry
  Amperes breaking_capacity;
  Volts rated_volts;
  FigureStatus status = FigureStatus::memory;  ///< of the gates as a set: the weakest of them
  std::string set;  ///< what the person calls the curve that stands in place of the program's gates; empty: the gates are the program's
};

/// All families the program knows, by id; a glass family has one entry a range of ratings.
const std::vector<FuseFamily>& fuse_families();
/// The entry for that id and rating; a family not known, or a rating out of its range, gives the nearest entry of the id, else
/// regular blade.
const FuseFamily& fuse_family(std::string_view id, Amperes rating);
bool is_known_fuse_family(std::string_view id);

/// Infinite where opening is not promised: below the lowest gate with a `most` (135 % for blades).
Seconds slowest_opening(const FuseFamily& family, Amperes rating, Amperes current);
/// Infinite at or below the gate it must carry; 0 where the family states no least time.
Seconds fastest_opening(const FuseFamily& family, Amperes rating, Amperes current);

/// Lowest current at which opening is promised at all.
Amperes surely_opens_from(const FuseFamily& family, Amperes rating);

/// Ratings on sale in a family, rising. Trade page; glass from memory.
const std::vector<double>& fuse_ratings(std::string_view family);

}  // namespace loomfolio
