// SPDX-License-Identifier: MIT
#include "sheets/diagram_wishes.h"

#include <algorithm>

namespace loomfolio {
namespace {

/// The box of a part or splice; -1 when it is not on the diagram.
int box_of(const DiagramGraph& diagram, const DrawnThing& thing) {
  const BoxContent content = thing.owner == OwnerType::part ? BoxContent::part : BoxContent::splice;
  const auto found = std::find_if(diagram.boxes.begin(), diagram.boxes.end(), [&](const DiagramBox& box) {
    return box.content == content && box.index == thing.index;
  });
  return found == diagram.boxes.end() ? -1 : static_cast<int>(found - diagram.boxes.begin());
}

int wire_of(const DiagramGraph& diagram, WireId wire) {
  const auto found = std::find(diagram.wires.begin(), diagram.wires.end(), wire);
  return found == diagram.wires.end() ? -1 : static_cast<int>(found - diagram.wires.begin());
}

template <class Items>
void keep_apart(Items& items, int one, int other) {
  if (one < 0 || other < 0) return;
  items[static_cast<std::size_t>(one)].apart.push_back(other);
  items[static_cast<std::size_t>(other)].apart.push_back(one);
}

}  // namespace

void add_wishes(const Build& build, DiagramGraph& diagram) {
  for (const PinWish& pin : build.layout.pins)
    if (const int box = box_of(diagram, pin.thing); box >= 0) diagram.graph.boxes[static_cast<std::size_t>(box)].pins = pin.edges;
  for (const auto& [one, other] : build.layout.apart)
    keep_apart(diagram.graph.boxes, box_of(diagram, one), box_of(diagram, other));
  for (const auto& [one, other] : build.layout.wires_apart)
    keep_apart(diagram.graph.wires, wire_of(diagram, one), wire_of(diagram, other));
  for (const std::vector<WireId>& group : build.layout.gathered) {
    std::string word = "gathered ";
    word += build.wire(group.front()).id;
    for (const WireId id : group)
      if (const int wire = wire_of(diagram, id); wire >= 0) diagram.graph.wires[static_cast<std::size_t>(wire)].bundle = word;
  }
}

}  // namespace loomfolio
