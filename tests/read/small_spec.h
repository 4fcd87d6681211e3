// SPDX-License-Identifier: MIT
// A small sound spec with kinds of its own, to be changed by tests.
#pragma once

#include <string>

namespace loomfolio {

inline const std::string small_kinds = R"(
[[kind]]
id = "cell"
name = "Small battery"
group = "supply"
letter = "G"
value_text = "{capacity}"
[kind.value]
capacity = "9 Ah"
[[kind.terminal]]
id = "+"
form = "stud"
side = "top"
wires = 2
[[kind.terminal]]
id = "-"
form = "stud"
side = "bottom"
[[kind.inside]]
id = "cells"
type = "source"
between = ["+", "-"]
resistance = "20 mohm"
capacity = "=capacity"

[[kind]]
id = "toggle"
name = "Switch"
group = "switching"
letter = "S"
[[kind.terminal]]
id = "in"
form = "blade"
side = "top"
[[kind.terminal]]
id = "out"
form = "blade"
side = "bottom"
wires = 2
[[kind.inside]]
id = "contact"
type = "switch"
positions = { off = [], on = [["in", "out"]] }
rest = "off"
worked_by = "hand"

[[kind]]
id = "bulb"
name = "Lamp"
group = "lighting"
letter = "E"
value_text = "{power}"
[kind.value]
power = ""
[[kind.terminal]]
id = "56"
form = "blade"
side = "top"
[[kind.terminal]]
id = "31"
form = "blade"
side = "bottom"
[[kind.inside]]
id = "filament"
type = "lamp"
between = ["56", "31"]
power = "=power"
at_voltage = "13.5 V"
)";

inline const std::string small_spec = R"([document]
title = "Bench rig"
date = "2026-11-02"

[[zone]]
id = "bench"
place = "0 m"

[[part]]
id = "battery"
kind = "cell"
zone = "bench"
capacity = "12 Ah"

[[part]]
id = "key"
kind = "toggle"
zone = "bench"

[[part]]
id = "lamp"
kind = "bulb"
zone = "bench"
label = "Headlamp"
power = "35 W"

[[earth]]
id = "E1"
zone = "bench"
place = "bench foot"

[[wire]]
from = "battery.+"
to = "key.in"
colour = "RD"
size = "2.5 mm2"
length = "350 mm"

[[wire]]
id = "2"
from = "key.out"
to = "lamp.56"
colour = "WH"
stripe = "GN"
size = "14 AWG"

[[wire]]
from = "lamp.31"
to = "E1"
colour = "BK"
size = "auto"

[[wire]]
from = "battery.-"
to = "E1"
colour = "BK"
size = "10 mm2"
insulation = "battery_cable"

[[situation]]
name = "lit"
set = { key = "on" }
expect = { lamp = "on" }
)" + small_kinds;

}  // namespace loomfolio
