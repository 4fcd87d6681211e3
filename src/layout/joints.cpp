// SPDX-License-Identifier: MIT
// A wire that joins from the row above comes in above, one from the row below comes in below, and a neighbour in the
// same row that looks here is met level. So a splice of three wires becomes a T, and one that only passes a wire on is
// a dot on a straight line.
//
//        |              |   |          core: where the wires meet, one pitch high; as wide as its longer side needs
//     ---o--- S4      --o===o-- S4     words stand right of it, above the level wire
//        |                |
//
// The plan may be turned over the diagonal (flow across), but the core's rooms for words are not: sides are chosen as
// the plan lies, places on the box are computed as the sheet lies.
//
// The wires of a terminal drawn wide change places so that none crosses another on its way there. What goes to the left and comes
// back in the same row begins left of what goes on to another row, the nearest of it outermost; so at the right:
//
//     +---------+  |                 1 near, 2 far, at the left; 3 to the row above
//     |  +---+  |  |
//     2  1   =======
#include "layout/joints.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace loomfolio::laying {
namespace {

constexpr int most_level = 1;  // wires that join a core's end

/// Where a body stands in its row, left to right through all columns.
struct InRows {
  std::vector<int> place;                 ///< by body
  std::vector<std::vector<int>> in_rows;  ///< bodies
};

InRows find_standing(const Plan& plan) {
  InRows standing;
  standing.place.assign(plan.bodies.size(), 0);
  for (const auto& row : plan.rows) {
    standing.in_rows.emplace_back();
    for (const auto& column : row)
      for (int body : column) {
        standing.place[static_cast<std::size_t>(body)] = static_cast<int>(standing.in_rows.back().size());
        standing.in_rows.back().push_back(body);
      }
  }
  return standing;
}

/// A rough place across the plan: columns, then the share of the row's length.
double across_of(const Plan& plan, int body) {
  const Body& b = plan.bodies[static_cast<std::size_t>(body)];
  const auto& row = plan.rows[static_cast<std::size_t>(b.row)][static_cast<std::size_t>(b.column)];
  const auto own = std::find(row.begin(), row.end(), body) - row.begin();
  return b.column + (static_cast<double>(own) + 0.5) / static_cast<double>(row.size());
}

struct JointEnd {
  int pin = -1;
  Side side = Side::top;  ///< as the plan lies
  double across = 0;      ///< of the other end
};

Side side_towards(const Plan& plan, const InRows& standing, int pin) {
  const int other = pin ^ 1;
  const int own_body = plan.pins[static_cast<std::size_t>(pin)].body,
            other_body = plan.pins[static_cast<std::size_t>(other)].body;
  const Body &own = plan.bodies[static_cast<std::size_t>(own_body)],
             &far = plan.bodies[static_cast<std::size_t>(other_body)];
  if (far.row != own.row) return far.row < own.row ? Side::top : Side::bottom;
  const int step =
      standing.place[static_cast<std::size_t>(other_body)] - standing.place[static_cast<std::size_t>(own_body)];
  const Side looks = side_of(plan, other);
  if (step == -1 && (far.is_joint || looks == Side::right)) return Side::left;
  if (step == 1 && (far.is_joint || looks == Side::left)) return Side::right;
  return looks == Side::bottom ? Side::bottom : Side::top;
}

/// One wire at most joins an end of the core; the others come from below.
void thin_out_levels(std::vector<JointEnd>& ends) {
  for (const Side level : {Side::left, Side::right}) {
    int count = 0;
    for (JointEnd& end : ends)
      if (end.side == level && ++count > most_level) end.side = Side::bottom;
  }
}

bool share_terminal(const Plan& plan, int a, int b) {
  const Pin &one = plan.pins[static_cast<std::size_t>(a)], &two = plan.pins[static_cast<std::size_t>(b)];
  return one.box == two.box && one.terminal == two.terminal;
}

/// Wires that share a terminal go where its first one goes.
bool is_first_there(const Plan& plan, int pin) {
  for (int before = 0; before < pin; ++before)
    if (share_terminal(plan, before, pin)) return false;
  return true;
}

std::vector<JointEnd> ends_of(const Plan& plan, const InRows& standing, int body) {
  std::vector<JointEnd> ends;
  for (int pin = 0; pin < static_cast<int>(plan.pins.size()); ++pin) {
    if (plan.pins[static_cast<std::size_t>(pin)].body != body || !is_first_there(plan, pin)) continue;
    const int other = plan.pins[static_cast<std::size_t>(pin ^ 1)].body;
    ends.push_back({pin, other == body ? Side::bottom : side_towards(plan, standing, pin), across_of(plan, other)});
  }
  thin_out_levels(ends);
  std::stable_sort(ends.begin(), ends.end(), [](const JointEnd& a, const JointEnd& b) {
    return std::tuple(a.side, a.across, a.pin) < std::tuple(b.side, b.across, b.pin);
  });
  return ends;
}

/// Places on the box as the sheet lies, for so many terminals above and below.
struct Core {
  const GraphJoint& joint;
  std::array<int, 4> count{};  ///< by side
  Grid width = 0;

  Grid box_width() const { return joint.pad.x0 + width + joint.pad.x1; }
  Grid box_height() const { return joint.pad.y0 + joint.pitch + joint.pad.y1; }
  int slots(Side side) const {
    return count[static_cast<std::size_t>(side)] + (side == Side::bottom ? joint.slots_below : 0);
  }
  GridPoint at(Side side, int index) const {
    const Grid middle_y = joint.pad.y0 + joint.pitch / 2;
    if (side == Side::left) return {0, middle_y};
    if (side == Side::right) return {box_width(), middle_y};
    const Grid x = joint.pad.x0 + width / 2 + (2 * index - (slots(side) - 1)) * joint.pitch / 2;
    return {x, side == Side::top ? 0 : box_height()};
  }
};

void settle_joint(Plan& plan, const InRows& standing, int body) {
  const std::vector<JointEnd> ends = ends_of(plan, standing, body);
  Body& own = plan.bodies[static_cast<std::size_t>(body)];
  const GraphBox& box = plan.graph->boxes[static_cast<std::size_t>(own.members[0].box)];
  const bool is_turned = plan.flow == Flow::across;
  const auto on_sheet = [&](Side side) { return is_turned ? turned(side) : side; };
  Core core{box.joint};
  for (const JointEnd& end : ends) ++core.count[static_cast<std::size_t>(on_sheet(end.side))];
  // As the sheet lies, a turned plan may ask for several at the core's ends: those go below.
  std::vector<Side> sides;
  for (const JointEnd& end : ends) {
    Side side = on_sheet(end.side);
    if ((side == Side::left || side == Side::right) && core.count[static_cast<std::size_t>(side)] > most_level) {
      --core.count[static_cast<std::size_t>(side)];
      ++core.count[static_cast<std::size_t>(Side::bottom)];
      side = Side::bottom;
    }
    sides.push_back(side);
  }
  core.width = std::max({core.slots(Side::top), core.slots(Side::bottom), 1}) * box.joint.pitch;
  std::array<int, 4> next{};
  for (std::size_t i = 0; i < ends.size(); ++i) {
    Pin& pin = plan.pins[static_cast<std::size_t>(ends[i].pin)];
    const GridPoint at = core.at(sides[i], next[static_cast<std::size_t>(sides[i])]++);
    pin.side = is_turned ? turned(sides[i]) : sides[i];
    pin.at = is_turned ? turned(at) : at;
    for (int other = ends[i].pin + 1; other < static_cast<int>(plan.pins.size()); ++other) {
      if (!share_terminal(plan, ends[i].pin, other)) continue;
      plan.pins[static_cast<std::size_t>(other)].side = pin.side;
      plan.pins[static_cast<std::size_t>(other)].at = pin.at;
    }
  }
  own.width = is_turned ? core.box_height() : core.box_width();
  own.height = is_turned ? core.box_width() : core.box_height();
}

const GraphTerminal& terminal_of(const Plan& plan, const Pin& pin) {
  return plan.graph->boxes[static_cast<std::size_t>(pin.box)].terminals[static_cast<std::size_t>(pin.terminal)];
}

/// Where an end belongs among those of its wide terminal: what leaves to the left and looks back, what goes on, what leaves to the
/// right and looks back; among these, from left to right.
std::pair<int, double> turn_of(const Plan& plan, int pin) {
  const int own_body = plan.pins[static_cast<std::size_t>(pin)].body, far_body = plan.pins[static_cast<std::size_t>(pin ^ 1)].body;
  const int own_row = plan.bodies[static_cast<std::size_t>(own_body)].row, far_row = plan.bodies[static_cast<std::size_t>(far_body)].row;
  const double across = across_of(plan, far_body), away = across - across_of(plan, own_body);
  const bool goes_on = side_of(plan, pin) == Side::top ? far_row < own_row : far_row > own_row;
  if (goes_on || far_body == own_body) return {1, across};
  const double distance = far_row == own_row ? std::abs(away) : 0;  // to the other side of its own part: round the corner at once
  return away < 0 ? std::pair(0, distance) : std::pair(2, -distance);
}

/// The pins of a body that stand at one terminal drawn wide, above or below it: those of one box, side and name.
std::vector<std::vector<int>> wide_terminals(const Plan& plan, const std::vector<int>& pins_of_body) {
  std::vector<std::vector<int>> wide;
  for (const int pin : pins_of_body) {
    const Pin& own = plan.pins[static_cast<std::size_t>(pin)];
    if (!is_upright(own.side)) continue;
    const auto found = std::find_if(wide.begin(), wide.end(), [&](const std::vector<int>& group) {
      const Pin& first = plan.pins[static_cast<std::size_t>(group.front())];
      return first.box == own.box && are_one_terminal(terminal_of(plan, first), terminal_of(plan, own));
    });
    if (found == wide.end()) wide.push_back({pin});
    else found->push_back(pin);
  }
  // Wires that share one place on it, and one that ends there alone, have nothing to change.
  std::erase_if(wide, [&](const std::vector<int>& group) {
    if (group.size() < 2) return true;
    for (std::size_t i = 1; i < group.size(); ++i)
      if (std::any_of(group.begin(), group.begin() + static_cast<std::ptrdiff_t>(i), [&](int before) { return share_terminal(plan, before, group[i]); }))
        return true;
    return false;
  });
  return wide;
}

std::vector<std::vector<int>> pins_by_body(const Plan& plan) {
  std::vector<std::vector<int>> by_body(plan.bodies.size());
  for (int pin = 0; pin < static_cast<int>(plan.pins.size()); ++pin)
    by_body[static_cast<std::size_t>(plan.pins[static_cast<std::size_t>(pin)].body)].push_back(pin);
  return by_body;
}

void settle_wide(Plan& plan, std::vector<int> group) {
  std::vector<std::pair<Grid, GridPoint>> places;  // as they stand from left to right, and from the body's top left
  for (const int pin : group) places.push_back({offset_of(plan, pin).x, plan.pins[static_cast<std::size_t>(pin)].at});
  std::sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::stable_sort(group.begin(), group.end(), [&](int a, int b) { return turn_of(plan, a) < turn_of(plan, b); });
  for (std::size_t i = 0; i < group.size(); ++i) plan.pins[static_cast<std::size_t>(group[i])].at = places[i].second;
}

/// A body's box with its terminals as they stand in the plan, on the sheet.
SettledJoint settled_box(const Plan& plan, const Body& body) {
  const int box = body.members[0].box;
  const bool is_turned = plan.flow == Flow::across;
  SettledJoint settled{box, is_turned ? body.height : body.width, is_turned ? body.width : body.height,
                       plan.graph->boxes[static_cast<std::size_t>(box)].terminals};
  for (const Pin& pin : plan.pins) {
    if (pin.box != box) continue;
    GraphTerminal& terminal = settled.terminals[static_cast<std::size_t>(pin.terminal)];
    terminal.side = is_turned ? turned(pin.side) : pin.side;
    terminal.at = is_turned ? turned(pin.at) : pin.at;
  }
  return settled;
}

}  // namespace

void settle_joints(Plan& plan) {
  const InRows standing = find_standing(plan);
  for (int body = 0; body < static_cast<int>(plan.bodies.size()); ++body)
    if (plan.bodies[static_cast<std::size_t>(body)].is_joint) settle_joint(plan, standing, body);
  const std::vector<std::vector<int>> pins = pins_by_body(plan);
  for (std::size_t body = 0; body < plan.bodies.size(); ++body)
    if (!plan.bodies[body].is_joint)
      for (std::vector<int>& group : wide_terminals(plan, pins[body])) settle_wide(plan, std::move(group));
}

SettledJoint arrange_joint(int number, const GraphBox& box, const std::vector<JointWish>& wishes) {
  Core core{box.joint};
  for (const JointWish& wish : wishes) ++core.count[static_cast<std::size_t>(wish.side)];
  core.width = std::max({core.slots(Side::top), core.slots(Side::bottom), 1}) * box.joint.pitch;
  std::vector<std::size_t> order(wishes.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return wishes[a].along < wishes[b].along; });
  SettledJoint joint{number, core.box_width(), core.box_height(), box.terminals};
  std::array<int, 4> next{};
  for (const std::size_t t : order) {
    joint.terminals[t].side = wishes[t].side;
    joint.terminals[t].at = core.at(wishes[t].side, next[static_cast<std::size_t>(wishes[t].side)]++);
  }
  return joint;
}

std::vector<SettledJoint> settled_joints(const Plan& plan) {
  const std::vector<std::vector<int>> pins = pins_by_body(plan);
  std::vector<SettledJoint> joints;
  for (std::size_t body = 0; body < plan.bodies.size(); ++body)
    if (plan.bodies[body].is_joint || !wide_terminals(plan, pins[body]).empty()) joints.push_back(settled_box(plan, plan.bodies[body]));
  return joints;
}

}  // namespace loomfolio::laying

namespace loomfolio {

Graph with_settled_joints(const Graph& graph, const Laid& laid) {
  Graph settled = graph;
  for (const SettledJoint& joint : laid.joints) {
    GraphBox& box = settled.boxes[static_cast<std::size_t>(joint.box)];
    box.width = joint.width;
    box.height = joint.height;
    box.terminals = joint.terminals;
  }
  return settled;
}

}  // namespace loomfolio
