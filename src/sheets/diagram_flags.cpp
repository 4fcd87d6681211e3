// SPDX-License-Identifier: MIT
#include "sheets/diagram_flags.h"

#include <algorithm>

namespace loomfolio {
namespace {

constexpr Grid words_width = 850, words_over_stub = 150, words_clear = 30;

/// Flags that stand close together get stubs of different lengths, so that their words do not meet.
void stagger(std::vector<Flag>& flags) {
  for (std::size_t i = 0; i < flags.size(); ++i) {
    flags[i].reach = flag_stub;
    const bool is_level = flags[i].side == Side::left || flags[i].side == Side::right;
    for (std::size_t j = 0; j < i; ++j) {
      const Flag& before = flags[j];
      if (before.side != flags[i].side) continue;
      const Grid apart = is_level ? std::abs(before.tap.y - flags[i].tap.y) : std::abs(before.tap.x - flags[i].tap.x);
      const Grid room = is_level
                            ? static_cast<Grid>(std::max(before.diagrams.size(), flags[i].diagrams.size())) * flag_line
                            : flag_width;
      if (apart >= room || before.reach > flags[i].reach) continue;
      const Grid lines = static_cast<Grid>(before.diagrams.size()) * flag_line + 60;
      flags[i].reach = before.reach + (is_level ? flag_width : lines);
    }
  }
}

/// Free room beside the stub of a flag on the upper or lower side, up to the next wire: left and right.
std::pair<Grid, Grid> room_beside(const Flag& flag, const std::vector<FlagNeighbour>& wires) {
  Grid left = flag_width * 2, right = flag_width * 2;
  for (const FlagNeighbour& wire : wires) {
    if (wire.side != flag.side) continue;
    if (wire.at.x > flag.tap.x) right = std::min(right, wire.at.x - wire.half_pen - flag.tap.x);
    if (wire.at.x < flag.tap.x) left = std::min(left, flag.tap.x - wire.at.x - wire.half_pen);
  }
  return {left, right};
}

/// Words stand in line with their stub where wires leave room for that, else to the side that has more.
void place_words(std::vector<Flag>& flags, const std::vector<FlagNeighbour>& wires) {
  for (Flag& flag : flags) {
    if (flag.side == Side::left || flag.side == Side::right) continue;
    const auto [left, right] = room_beside(flag, wires);
    const Grid half = words_width / 2, rest = words_width - words_over_stub;
    const Grid in_line = std::min(left, right) - half, to_left = std::min(left - rest, right - words_over_stub),
               to_right = std::min(right - rest, left - words_over_stub);
    if (in_line >= words_clear || in_line >= std::max(to_left, to_right)) continue;
    flag.words = to_left >= to_right ? WordSide::left : WordSide::right;
  }
}

}  // namespace

void settle_flags(std::vector<Flag>& flags, const std::vector<FlagNeighbour>& wires) {
  place_words(flags, wires);
  stagger(flags);
}

GridBox flag_room(const std::vector<Flag>& flags, Grid width) {
  GridBox room;
  for (const Flag& flag : flags) {
    const Grid rest = words_width - words_over_stub;
    if (flag.words == WordSide::left) room.x0 = std::max(room.x0, rest - flag.tap.x);
    if (flag.words == WordSide::right) room.x1 = std::max(room.x1, flag.tap.x + rest - width);
  }
  for (const Flag& flag : flags) {
    const Grid lines = static_cast<Grid>(flag.diagrams.size()) * flag_line;
    switch (flag.side) {
      case Side::top:
        room.y0 = std::max(room.y0, flag.reach + lines);
        break;
      case Side::bottom:
        room.y1 = std::max(room.y1, flag.reach + lines);
        break;
      case Side::left:
        room.x0 = std::max(room.x0, flag.reach + flag_width);
        break;
      case Side::right:
        room.x1 = std::max(room.x1, flag.reach + flag_width);
        break;
    }
  }
  return room;
}

}  // namespace loomfolio
