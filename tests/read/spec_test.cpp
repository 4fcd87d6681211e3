// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "read/small_spec.h"
#include "read/test_files.h"

using namespace loomfolio;

namespace {

struct Read {
  Sources sources;
  Diagnostics findings;
  Project project;
  explicit Read(const std::string& text) {
    TestFiles files;
    files.in_memory["l/papers/A4.toml"] = "id = \"A4\"\nwidth = \"210 mm\"\nheight = \"297 mm\"\n";
    files.in_memory["l/words/en.toml"] = "a = \"b\"\n";
    const Library library = read_library("l", files, sources, findings);
    project = read_spec("rig.toml", text, library, sources, findings);
    INFO(print_diagnostics(findings, sources, Paint::plain));
  }
  const Build& build() const { return project.builds.at(0); }
  std::string print() const { return print_diagnostics_short(findings, sources); }
};

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

std::vector<std::string> wire_ids(const Build& build) {
  std::vector<std::string> ids;
  for (const Wire& wire : build.wires) ids.push_back(wire.id);
  return ids;
}

}  // namespace

TEST_CASE("a sound spec is read whole, with ids that lead back to what they name") {
  const Read read(small_spec);
  CHECK(read.print() == "");
  REQUIRE(read.project.builds.size() == 1);
  const Build& build = read.build();
  CHECK(build.document.title == "Bench rig");
  CHECK(build.document.paper == "A4");
  CHECK(build.variant.empty());
  REQUIRE(build.parts.size() == 3);
  REQUIRE(build.kinds.size() == 3);
  for (std::size_t i = 0; i < build.parts.size(); ++i) {
    const Part& part = build.parts[i];
    REQUIRE(part.terminals.size() == build.kind_of(part).terminals.size());
    for (std::size_t k = 0; k < part.terminals.size(); ++k) {
      const Terminal& terminal = build.terminal(part.terminals[k]);
      CHECK(terminal.owner == OwnerType::part);
      CHECK(terminal.owner_index == static_cast<std::int32_t>(i));
      CHECK(terminal.kind_terminal == static_cast<int>(k));
      CHECK(terminal.name == part.id + "." + build.kind_of(part).terminals[k].id);
    }
  }
  CHECK(build.terminal(build.earths[0].terminal).name == "E1");
  CHECK(build.parts[0].label == "Small battery");
  CHECK(build.parts[2].label == "Headlamp");
}

TEST_CASE("a part's values reach its inside, and what is printed under its name") {
  const Build build = Read(small_spec).build();
  CHECK(build.parts[0].value_text == "12 Ah");
  CHECK(build.parts[0].insides[0].capacity == AmpereHours(12));
  CHECK(build.parts[0].insides[0].resistance == Ohms(0.02));
  CHECK(build.kind_of(build.parts[0]).insides[0].capacity == AmpereHours(9));
  CHECK(build.parts[2].insides[0].power == Watts(35));
  CHECK(build.parts[2].values == std::vector<std::pair<std::string, std::string>>{{"power", "35 W"}});
  CHECK_FALSE(build.kind_of(build.parts[2]).insides[0].power.has_value());
}

TEST_CASE("wires keep what was written of them") {
  const Build build = Read(small_spec).build();
  REQUIRE(build.wires.size() == 4);
  CHECK(wire_ids(build) == std::vector<std::string>{"1", "2", "3", "4"});
  CHECK(build.wires[0].length == Metres(0.35));
  CHECK(build.wires[0].area == SquareMillimetres(2.5));
  CHECK(build.wires[1].size_text == "14 AWG");
  CHECK(build.wires[1].colour.text() == "WH/GN");
  CHECK(build.wires[2].is_auto_size);
  CHECK(build.wires[2].area == SquareMillimetres(0));
  CHECK(build.wires[3].insulation == Insulation::battery_cable);
  CHECK(build.terminal(build.wires[0].from).name == "battery.+");
}

TEST_CASE("situations name switches and elements with dots or without, quoted or not") {
  for (const std::string set : {"{ key = \"on\" }", "{ key.contact = \"on\" }", "{ \"key.contact\" = \"on\" }"}) {
    CAPTURE(set);
    const Read read(replaced(small_spec, "{ key = \"on\" }", set));
    CHECK(read.print() == "");
    const Situation& lit = read.build().situations.at(0);
    REQUIRE(lit.settings.size() == 1);
    CHECK(lit.settings[0].actuator == InsideRef{{1}, 0});
    CHECK(lit.settings[0].position == 1);
    CHECK(lit.expectations.at(0).what == InsideRef{{2}, -1});
  }
  const Read whole(replaced(small_spec, "{ lamp = \"on\" }", "{ lamp.filament = \"off\" }"));
  CHECK(whole.build().situations.at(0).expectations.at(0).what == InsideRef{{2}, 0});
  CHECK(whole.build().situations.at(0).expectations.at(0).state == Expected::off);
}

TEST_CASE("a machine of another voltage starts from the same shares of it") {
  const Read six(replaced(small_spec, "[[zone]]", "[electrics]\nnominal = \"6 V\"\nrunning = \"7.2 V\"\n\n[[zone]]"));
  CHECK(six.print() == "");
  CHECK(six.build().electrics.resting.number() == doctest::Approx(6.3));
  CHECK(six.build().electrics.running == Volts(7.2));
  CHECK(six.build().electrics.drop_limits.starter.number() == doctest::Approx(0.4));
}

TEST_CASE("a variant is the base without what it takes out, with what it adds; wire numbers stay") {
  const std::string variants = R"(
[[variant]]
name = "plain"

[[variant]]
name = "no-lamp"
when = "There is no lamp"
without = ["lamp", "2", "3", "lit"]
[[variant.part]]
id = "pilot"
kind = "bulb"
zone = "bench"
power = "4 W"
[[variant.wire]]
from = "key.out"
to = "pilot.56"
colour = "GN"
size = "0.5 mm2"
[[variant.wire]]
from = "pilot.31"
to = "E1"
colour = "BK"
size = "0.5 mm2"
[[variant.situation]]
name = "lit"
set = { key = "on" }
expect = { pilot = "on" }
[[variant.step]]
after = "signals"
text = "Fit the pilot lamp."

[[variant]]
name = "two-lamps"
[[variant.part]]
id = "second"
kind = "bulb"
zone = "bench"
power = "5 W"
[[variant.wire]]
from = "key.out"
to = "second.56"
colour = "YE"
size = "0.5 mm2"
[[variant.wire]]
from = "second.31"
to = "E1"
colour = "BK"
size = "0.5 mm2"
)";
  const Read read(small_spec + variants);
  CHECK(read.print() == "");
  REQUIRE(read.project.builds.size() == 3);
  CHECK(wire_ids(read.project.builds[0]) == std::vector<std::string>{"1", "2", "3", "4"});
  CHECK(wire_ids(read.project.builds[1]) == std::vector<std::string>{"1", "4", "5", "6"});
  CHECK(wire_ids(read.project.builds[2]) == std::vector<std::string>{"1", "2", "3", "4", "7", "8"});
  const Build& pilot = read.project.builds[1];
  CHECK(pilot.variant == "no-lamp");
  CHECK(pilot.variant_label == "no-lamp");
  CHECK(pilot.variant_when == "There is no lamp");
  CHECK(pilot.steps.size() == 1);
  REQUIRE(pilot.situations.size() == 1);
  CHECK(pilot.part(pilot.situations[0].expectations.at(0).what.part).id == "pilot");
}

TEST_CASE("a finding that holds for some variants only says which") {
  const Read read(small_spec +
                  "[[variant]]\nname = \"a\"\n[[variant]]\nname = \"b\"\n[[variant.earth]]\nid = \"E2\"\nzone = "
                  "\"bench\"\n[[variant]]\nname = \"c\"\n");
  CHECK(read.print() == "rig.toml:137:6: error: no wire reaches earth `E2`, in variant `b` [earth-unwired]\n");
  const Read all(replaced(small_spec, "[[situation]]", "[[earth]]\nid = \"E2\"\nzone = \"bench\"\n[[situation]]") +
                 "[[variant]]\nname = \"a\"\n[[variant]]\nname = \"b\"\n");
  CHECK(all.print() == "rig.toml:61:6: error: no wire reaches earth `E2` [earth-unwired]\n");
}

TEST_CASE("a kind of the spec stands in place of the library's") {
  TestFiles files;
  files.in_memory["l/parts/bulb.toml"] =
      "id = \"bulb\"\nname = \"Other\"\ngroup = \"lighting\"\nletter = \"E\"\n[[terminal]]\nid = \"x\"\nform = "
      "\"lead\"\nside = \"top\"\n";
  files.in_memory["l/papers/A4.toml"] = "id = \"A4\"\nwidth = \"210 mm\"\nheight = \"297 mm\"\n";
  files.in_memory["l/words/en.toml"] = "a = \"b\"\n";
  Sources sources;
  Diagnostics findings;
  const Library library = read_library("l", files, sources, findings);
  const Project project = read_spec("rig.toml", small_spec, library, sources, findings);
  CHECK(print_diagnostics_short(findings, sources) == "");
  CHECK(project.builds.at(0).kind_of(project.builds[0].parts[2]).name == "Lamp");
}

TEST_CASE("the whole of a finding is as a person needs it") {
  const Read read(replaced(small_spec, "\"lamp.56\"", "\"lamp.65\""));
  CHECK(print_diagnostics(read.findings, read.sources, Paint::plain) ==
        "rig.toml:42:6: error: unknown terminal `lamp.65` [unknown-terminal]\n"
        "   42 | to = \"lamp.65\"\n"
        "      |      ^~~~~~~~~\n"
        "rig.toml:21:6: note: part `lamp` declared here; its terminals are `56`, `31`\n"
        "   21 | id = \"lamp\"\n"
        "      |      ^~~~~~\n"
        "hint: did you mean `lamp.56`?\n");
}
