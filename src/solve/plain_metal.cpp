// SPDX-License-Identifier: MIT
#include "solve/plain_metal.h"

namespace loomfolio {
namespace {

void join_part(const Build& build, std::size_t p, PlainMetal& metal) {
  const Part& part = build.parts[p];
  for (const Inside& inside : part.insides)
    if (inside.type == InsideType::link && inside.nodes.size() >= 2)
      metal.islands.join(metal.point(part, p, inside.nodes[0]), metal.point(part, p, inside.nodes[1]));
  for (const TerminalId terminal : part.terminals) {
    const int k = build.terminal(terminal).kind_terminal;
    if (build.kind_of(part).terminals[static_cast<std::size_t>(k)].form == TerminalForm::body)
      metal.islands.join(terminal.index, metal.frame);
  }
}

}  // namespace

PlainMetal join_plain_metal(const Build& build) {
  PlainMetal metal;
  metal.frame = static_cast<int>(build.terminals.size());
  for (const Part& part : build.parts) {
    metal.first_inner.push_back(metal.frame);
    metal.frame += build.kind_of(part).inner_points;
  }
  metal.islands = Islands(metal.frame + 1);
  for (const Wire& wire : build.wires) metal.islands.join(wire.from.index, wire.to.index);
  for (const Earth& earth : build.earths) metal.islands.join(earth.terminal.index, metal.frame);
  for (std::size_t p = 0; p < build.parts.size(); ++p) join_part(build, p, metal);
  return metal;
}

}  // namespace loomfolio
