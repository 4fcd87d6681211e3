// SPDX-License-Identifier: MIT
// A machine that is printed again after a change keeps its drawings: the PDF carries where everything stands.
#include <doctest/doctest.h>

#include <algorithm>

#include "layout/placement_text.h"
#include "memory_files.h"
#include "render/attachments.h"
#include "sample_prints.h"

using namespace loomfolio;

namespace {

std::string with(std::string text, const std::string& was, const std::string& is) {
  REQUIRE(text.find(was) != std::string::npos);
  for (std::size_t at = text.find(was); at != std::string::npos; at = text.find(was, at + is.size()))
    text.replace(at, was.size(), is);
  return text;
}

Placements placements_in(const std::string& pdf) {
  const auto text = extract_attachment(pdf, "placement.json");
  REQUIRE(text.has_value());
  auto placements = read_placements(*text);
  REQUIRE(placements.has_value());
  return std::move(*placements);
}

/// What a second print over the first changed in the wiring diagrams.
struct Difference {
  std::size_t drawings = 0, boxes = 0, moved = 0, wires = 0, reshaped = 0;
};

/// Boxes by their place in the list when no box was added, else by name.
Difference compare(const Placements& before, const Placements& after) {
  Difference found;
  for (const auto& [name, kept] : after) {
    const auto was = before.find(name);
    if (!kept || name.find("diagram") == std::string::npos) continue;
    REQUIRE(was != before.end());
    REQUIRE(was->second.has_value());
    const KeptDrawing &a = *was->second, &b = *kept;
    ++found.drawings;
    const Grid dx = b.laid.boxes[0].box.x0 - a.laid.boxes[0].box.x0, dy = b.laid.boxes[0].box.y0 - a.laid.boxes[0].box.y0;
    const bool is_same_list = a.graph.boxes.size() == b.graph.boxes.size() && a.graph.wires.size() == b.graph.wires.size();
    for (std::size_t i = 0; i < b.graph.boxes.size(); ++i) {
      std::size_t old = i;
      if (!is_same_list)
        for (old = 0; old < a.graph.boxes.size() && a.graph.boxes[old].name != b.graph.boxes[i].name;) ++old;
      if (old == a.graph.boxes.size()) continue;
      ++found.boxes;
      const GridBox box = a.laid.boxes[old].box;
      found.moved += b.laid.boxes[i].box.x0 != box.x0 + dx || b.laid.boxes[i].box.y0 != box.y0 + dy;
    }
    for (std::size_t i = 0; i < b.graph.wires.size(); ++i) {
      std::size_t old = i;
      if (!is_same_list)
        for (old = 0; old < a.graph.wires.size() && a.graph.wires[old].name != b.graph.wires[i].name;) ++old;
      if (old == a.graph.wires.size()) continue;
      ++found.wires;
      found.reshaped += a.laid.courses[old].points.size() != b.laid.courses[i].points.size();
    }
  }
  return found;
}

/// The lamp kit printed, then printed again over it after a change.
struct Reprint {
  MemoryFiles files;
  std::string first, second;
  Ran ran;

  explicit Reprint(const std::string& changed, const std::vector<std::string>& options = {}) {
    first = sample_pdf("driving-lamp-kit");
    files.held["kit.pdf"] = first;
    files.held["kit.toml"] = changed;
    std::vector<std::string> words{"print", "kit.toml"};
    words.insert(words.end(), options.begin(), options.end());
    ran = run_with(files, words);
    second = files.held["kit.pdf"];
  }
};

}  // namespace

TEST_CASE("an unchanged spec printed over its PDF gives the same bytes") {
  const Reprint again(sample_text("driving-lamp-kit"));
  CHECK(again.ran.code == 0);
  CHECK(again.second == again.first);
  CHECK(!placements_in(again.first).empty());
}

TEST_CASE("a renamed part, another colour, size or length moves nothing") {
  std::string changed = with(sample_text("driving-lamp-kit"), "left-lamp", "port-lamp");
  changed = with(changed, "length = \"150 mm\"", "length = \"170 mm\"");
  changed = with(changed, "colour = \"RD\"\nsize = \"4 mm2\"", "colour = \"BN\"\nsize = \"6 mm2\"");
  const Reprint again(changed);
  CHECK(again.ran.code == 0);
  CHECK(again.ran.err == "");
  CHECK(again.second != again.first);
  const Difference found = compare(placements_in(again.first), placements_in(again.second));
  CHECK(found.drawings == 2);
  CHECK(found.moved == 0);
  CHECK(found.reshaped == 0);
}

TEST_CASE("one more part with two wires moves and reshapes at most a tenth") {
  const std::string changed = with(sample_text("driving-lamp-kit"), "# ---- steps and history", R"([[part]]
id = "buzzer"
kind = "horn"
zone = "front"
label = "Buzzer"
power = "5 W"
[[wire]]
from = "left-lamp.56a"
to = "buzzer.15"
colour = "WH"
size = "1 mm2"
length = "300 mm"
purpose = "buzzer"
[[wire]]
from = "buzzer.31b"
to = "E2"
colour = "BN"
size = "1 mm2"
length = "300 mm"
purpose = "buzzer return"
# ---- steps and history)");
  const Reprint again(changed, {"--draft", "--sheets", "cover"});  // the places are those of all sheets
  const Difference found = compare(placements_in(again.first), placements_in(again.second));
  CHECK(found.drawings == 2);
  CHECK(found.boxes > 20);
  CHECK(found.moved * 10 <= found.boxes);
  CHECK(found.reshaped * 10 <= found.wires);
}

TEST_CASE("a print of one hook-up keeps the places of the others; --fresh forgets all") {
  const std::string text = sample_text("driving-lamp-kit");
  const std::size_t at = text.find("name = \"", text.find("[[variant]]")) + 8;
  const std::string variant = text.substr(at, text.find('"', at) - at);
  const Reprint one(text, {"--variant", variant});
  CHECK(one.ran.code == 0);
  const Placements before = placements_in(one.first), after = placements_in(one.second);
  for (const auto& [name, kept] : before) CHECK_MESSAGE(after.count(name) == 1, name);

  const Reprint fresh(with(text, "left-lamp", "port-lamp"), {"--fresh"});
  MemoryFiles empty;
  empty.held["kit.toml"] = with(text, "left-lamp", "port-lamp");
  REQUIRE(run_with(empty, {"print", "kit.toml"}).code == 0);
  CHECK(fresh.second == empty.held["kit.pdf"]);
}

TEST_CASE("a side file is written on request, and one that is damaged is told and drawn over") {
  const std::string text = sample_text("driving-lamp-kit");
  Reprint aside(text, {"--placement", "kit.places", "--sheets", "cover"});
  CHECK(aside.ran.code == 0);
  CHECK(read_placements(aside.files.held["kit.places"]).has_value());
  aside.files.held["kit.places"] = "{\"format\": \"something else\"}";
  const Ran ran = run_with(aside.files, {"print", "kit.toml", "--placement", "kit.places", "--sheets", "cover"});
  CHECK(ran.code == 0);
  CHECK(ran.err.find("cannot be read") != std::string::npos);
  CHECK(read_placements(aside.files.held["kit.places"]).has_value());
}
