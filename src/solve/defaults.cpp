// SPDX-License-Identifier: MIT
#include "solve/defaults.h"

#include <cmath>

namespace loomfolio {

Ohms contact_resistance(TerminalForm form) {
  switch (form) {
    case TerminalForm::blade: return Ohms(0.0010);
    case TerminalForm::stud: return Ohms(0.00005);
    case TerminalForm::sealed: return Ohms(0.0020);
    case TerminalForm::cavity: return Ohms(0.0020);
    case TerminalForm::bullet: return Ohms(0.0010);
    case TerminalForm::splice: return Ohms(0.0001);
    case TerminalForm::lead: return Ohms(0.0010);
    case TerminalForm::screw: return Ohms(0.0003);
    case TerminalForm::push_on: return Ohms(0.0020);
    case TerminalForm::body: return Ohms(0.0002);
  }
  return Ohms(0.001);
}

Ohms crimp_resistance(const ConductorSize& size) { return resistance_at_20(size) * 0.020; }

Ohms joint_resistance(const Build& build, const Wire& wire, TerminalId end) {
  const Terminal& terminal = build.terminal(end);
  TerminalForm form = TerminalForm::splice;
  if (terminal.owner == OwnerType::earth) form = TerminalForm::stud;
  if (terminal.owner == OwnerType::part) {
    const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
    form = build.kind_of(part).terminals[static_cast<std::size_t>(terminal.kind_terminal)].form;
  }
  return contact_resistance(form) + crimp_resistance(size_of(wire));
}

Ohms cold_fuse_resistance(Amperes rating) {
  // Regular blade fuse, one maker's open data sheet, milliohm; from memory, not confirmed.
  struct Row { double rating, milliohm; };
  static constexpr Row rows[] = {{1, 123},  {2, 53.5}, {3, 31.1},  {5, 17.85}, {7.5, 10.91},
                                 {10, 7.70}, {15, 4.80}, {20, 3.38}, {25, 2.52}, {30, 1.97}};
  for (const Row& row : rows)
    if (std::abs(row.rating - rating.number()) < 1e-9) return Ohms(row.milliohm / 1000);
  return Ohms(0.080 / std::max(0.1, rating.number()));
}

Ohms hot_fuse_resistance(Amperes rating) { return cold_fuse_resistance(rating) * 1.44; }

}  // namespace loomfolio
