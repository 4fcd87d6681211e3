// SPDX-License-Identifier: MIT
#include "layout/inside_link.h"

#include <algorithm>

namespace loomfolio::inside {
namespace {

void add_link(PartDrawing& drawing, std::vector<GridPoint> points) {
  drawing.lines.push_back({InnerStyle::link, -1, std::move(points), {}});
}

/// Where the blade is.
GridPoint blade_of(const GangMember& member) {
  if (member.is_bridge) return {member.at.x, member.at.y - member.drive_x};
  return {member.at.x + (member.is_mirrored ? member.drive_x : -member.drive_x), member.at.y};
}

/// From a coil to what it moves: straight along a row, or round one corner.
void link_to_coil(PartDrawing& drawing, const GangMember& coil, const GangMember& moved) {
  const GridPoint blade = blade_of(moved);
  const SymbolRoom room = room_of(Symbol::coil);
  const Grid across = coil.is_bridge ? room.length / 2 : room.left,
             along = coil.is_bridge ? room.left : room.length / 2;
  const Grid side = blade.x < coil.at.x ? -across : across;
  if (coil.row == moved.row) {
    add_link(drawing, {{coil.at.x + side, coil.at.y}, blade});
    return;
  }
  const Grid edge = moved.row < coil.row ? -along : along;
  if (coil.is_bridge && std::abs(blade.x - coil.at.x) < across) {
    add_link(drawing, {{blade.x, coil.at.y + edge}, blade});
    return;
  }
  if (coil.is_bridge) {
    add_link(drawing, {{coil.at.x, coil.at.y + edge}, {coil.at.x, blade.y}, blade});
    return;
  }
  add_link(drawing, {{coil.at.x + side, coil.at.y}, {blade.x, coil.at.y}, blade});
}

}  // namespace

void put_cores(const Plan& plan, PartDrawing& drawing) {
  const auto is_secondary = [&](const PlacedSymbol& symbol) {
    return symbol.inside >= 0 && plan.part->insides[static_cast<std::size_t>(symbol.inside)].is_secondary;
  };
  constexpr Grid half_gap = 30, half_length = 500, nearest = 400;
  for (const PlacedSymbol& primary : drawing.symbols)
    for (const PlacedSymbol& secondary : drawing.symbols) {
      if (primary.symbol != Symbol::winding || secondary.symbol != Symbol::winding) continue;
      if (is_secondary(primary) || !is_secondary(secondary) || primary.at.y != secondary.at.y) continue;
      if (std::abs(primary.at.x - secondary.at.x) < nearest) continue;
      const Grid middle = (primary.at.x + secondary.at.x) / 2;
      for (const Grid x : {middle - half_gap, middle + half_gap})
        drawing.lines.push_back(
            {InnerStyle::core, -1, {{x, primary.at.y - half_length}, {x, primary.at.y + half_length}}, {}});
    }
}

void link_gangs(PartDrawing& drawing, const std::vector<GangMember>& members) {
  for (std::size_t i = 0; i < members.size(); ++i) {
    const GangMember& member = members[i];
    if (member.gang.drives) {
      for (const GangMember& other : members)
        if (other.gang.gang == member.gang.gang && !other.gang.drives) link_to_coil(drawing, member, other);
      continue;
    }
    const bool has_coil = std::any_of(members.begin(), members.end(), [&](const GangMember& other) {
      return other.gang.gang == member.gang.gang && other.gang.drives;
    });
    if (has_coil) continue;
    // Poles of a hand switch: each to the next one.
    for (std::size_t j = i + 1; j < members.size(); ++j) {
      if (members[j].gang.gang != member.gang.gang) continue;
      const GridPoint from = blade_of(member), to = blade_of(members[j]);
      if (from.y == to.y)
        add_link(drawing, {from, to});
      else
        add_link(drawing, {from, {to.x, from.y}, to});
      break;
    }
  }
}

}  // namespace loomfolio::inside
