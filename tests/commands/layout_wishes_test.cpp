// SPDX-License-Identifier: MIT
// [layout] through the whole program: what is asked for is what is drawn, also over a print without it.
#include <doctest/doctest.h>

#include <regex>

#include "memory_files.h"

using namespace loomfolio;

namespace {

struct Spot {
  double x = 0, y = 0;
};

/// Where words stand on the diagram of the spec with that [layout], printed as a picture of text.
std::string diagram_with(MemoryFiles& files, const std::string& wishes) {
  files.held["lamp.toml"] = small_spec() + (wishes.empty() ? "" : "\n[layout]\n" + wishes + "\n");
  const Ran ran = run_with(files, {"print", "lamp.toml", "--sheets", "diagram", "--placement", "places.json", "-o", "out.txt"});
  CAPTURE(ran.err);
  REQUIRE(ran.code == 0);
  return files.held.at(files.held.count("out.txt") != 0 ? "out.txt" : "out-01.txt");
}

Spot spot_of(const std::string& page, const std::string& name) {
  const std::regex text("text ([0-9.]+) ([0-9.]+) \"" + name + "[^\"]*\" sans bold");
  std::smatch found;
  REQUIRE(std::regex_search(page, found, text));
  return {std::stod(found[1]), std::stod(found[2])};
}

}  // namespace

TEST_CASE("a part pinned to an edge is drawn there, afresh though the place of before is known") {
  MemoryFiles files;
  diagram_with(files, "");
  for (const auto& [part, name] : std::map<std::string, std::string>{{"battery", "Battery"}, {"switch", "Light"}}) {
    CAPTURE(part);
    const Spot top = spot_of(diagram_with(files, "pin = { " + part + " = \"top\" }"), name);
    const Spot bottom = spot_of(diagram_with(files, "pin = { " + part + " = \"bottom\" }"), name);
    CHECK(top.y + 5 < bottom.y);
  }
}

TEST_CASE("a wrong wish is refused with the place in the file and what would do") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec() + "\n[layout]\npin = { lamb = \"top\" }\n";
  const Ran ran = run_with(files, {"print", "lamp.toml"});
  CHECK(ran.code == 1);
  CHECK(ran.err.find("[layout-names-nothing]") != std::string::npos);
  CHECK(ran.err.find("pin = { lamb") != std::string::npos);
  CHECK(ran.err.find("did you mean `lamp`") != std::string::npos);
  CHECK(files.held.count("lamp.pdf") == 0);
}
