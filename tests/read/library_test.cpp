// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <set>

#include "read/test_files.h"

using namespace loomfolio;

namespace {

const std::string layouts = std::string(LOOMFOLIO_SOURCE_FOLDER) + "/layouts";

std::string kind_file(const std::string& insides, const std::string& values = "") {
  return "id = \"k\"\nname = \"K\"\ngroup = \"control\"\nletter = \"K\"\n" + values +
         "[[terminal]]\nid = \"a\"\nform = \"lead\"\nside = \"top\"\n[[terminal]]\nid = \"b\"\nform = \"lead\"\nside = "
         "\"bottom\"\n" +
         insides;
}

Kind read_one(const std::string& text, std::string& printed) {
  TestFiles files;
  files.in_memory["l/parts/k.toml"] = text;
  Sources sources;
  Diagnostics findings;
  const Library library = read_library("l", files, sources, findings);
  printed = print_diagnostics_short(findings, sources);
  return library.kinds.empty() ? Kind{} : library.kinds[0];
}

}  // namespace

TEST_CASE("our own library is read without a finding") {
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(layouts, TestFiles{}, sources, findings);
  CHECK(print_diagnostics_short(findings, sources) == "");
  CHECK(library.kinds.size() > 20);
  CHECK(library.languages.size() >= 1);
  for (std::size_t i = 1; i < library.kinds.size(); ++i) CHECK(library.kinds[i - 1].id < library.kinds[i].id);
}

TEST_CASE("papers have the sizes of their standards and margins that leave room for holes") {
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(layouts, TestFiles{}, sources, findings);
  struct Row {
    std::string id;
    double width, height;
    std::string larger;
  };
  // ISO 216: A4 210 x 297 mm, A3 297 x 420 mm. ANSI/ASME Y14.1: size A 8.5 x 11 in, size B 11 x 17 in.
  for (const Row& row : {Row{"A4", 210, 297, "A3"}, Row{"A3", 297, 420, ""}, Row{"Letter", 215.9, 279.4, "Tabloid"},
                         Row{"Tabloid", 279.4, 431.8, ""}}) {
    CAPTURE(row.id);
    const auto paper =
        std::find_if(library.papers.begin(), library.papers.end(), [&](const Paper& p) { return p.id == row.id; });
    REQUIRE(paper != library.papers.end());
    CHECK(paper->width.number() == doctest::Approx(row.width));
    CHECK(paper->height.number() == doctest::Approx(row.height));
    CHECK(paper->larger == row.larger);
    CHECK(paper->binding == Millimetres(20));
  }
}

TEST_CASE("inner points, change-over contacts and outputs are read into nodes") {
  std::string printed;
  const Kind kind =
      read_one(kind_file("[[inside]]\nid = \"coil\"\ntype = \"coil\"\nbetween = [\"a\", \".mid\"]\nresistance = "
                         "\"=r\"\npull_in = \"8 V\"\ndrop_out = \"2 V\"\n"
                         "[[inside]]\nid = \"contact\"\ntype = \"contact\"\nbetween = [\".mid\", \"b\"]\ncoil = "
                         "\"coil\"\nrest = \"closed\"\n"
                         "[[inside]]\nid = \"out\"\ntype = \"output\"\nsupply = \"a\"\nout = \".x\"\nearth = "
                         "\"b\"\nrating = \"10 A\"\n"
                         "when = [ { input = \"a\", is = \"live\" }, { input = \".x\", is = \"earthed\" } ]\n",
                         "[value]\nr = \"90 ohm\"\n"),
               printed);
  CHECK(printed == "");
  REQUIRE(kind.insides.size() == 3);
  CHECK(kind.inner_points == 2);
  CHECK(kind.insides[0].nodes[0].terminal == 0);
  CHECK(kind.insides[0].nodes[1].inner == 0);
  CHECK(kind.insides[0].resistance == Ohms(90));
  CHECK(kind.insides[1].closed_at_rest);
  CHECK(kind.insides[2].nodes.size() == 5);
  REQUIRE(kind.insides[2].conditions.size() == 2);
  CHECK(kind.insides[2].conditions[0].input == 3);
  CHECK(kind.insides[2].conditions[0].when_live);
  CHECK_FALSE(kind.insides[2].conditions[1].when_live);
}

TEST_CASE("a switch's positions stand in the order of the file and join terminals in groups") {
  std::string printed;
  const Kind kind =
      read_one(kind_file("[[inside]]\nid = \"s\"\ntype = \"switch\"\nrest = \"zero\"\nsprung = true\n"
                         "positions = { zero = [], half = [[\"a\", \".m\"]], all = [[\"a\", \".m\", \"b\"]] }\n"
                         "[[inside]]\nid = \"l\"\ntype = \"link\"\nbetween = [\".m\", \"b\"]\n"),
               printed);
  CHECK(printed == "");
  const Inside& inside = kind.insides.at(0);
  REQUIRE(inside.positions.size() == 3);
  CHECK(inside.positions[0].name == "zero");
  CHECK(inside.positions[1].name == "half");
  CHECK(inside.positions[2].joined == std::vector<std::vector<int>>{{0, 1, 2}});
  CHECK(inside.rest_position == 0);
  CHECK(inside.is_sprung);
}

TEST_CASE("words of a language stand over English") {
  TestFiles files;
  files.in_memory["l/words/en.toml"] = "[cover]\ncontents = \"Contents\"\nby = \"by {who}\"\n";
  files.in_memory["l/words/xx.toml"] = "right_to_left = true\n[cover]\ncontents = \"Inhalt\"\n";
  Sources sources;
  Diagnostics findings;
  const Library library = read_library("l", files, sources, findings);
  CHECK(library.languages == std::vector<std::string>{"en", "xx"});
  const Words words = read_words(library, "xx", files, sources, findings);
  CHECK(words("cover.contents") == "Inhalt");
  CHECK(words("cover.by", {{"who", "A"}}) == "by A");
  CHECK(words.is_right_to_left());
  CHECK(words.language() == "xx");
  CHECK(findings.empty());
  const Words none = read_words(library, "yy", files, sources, findings);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].id == DiagnosticId::unknown_language);
  CHECK(none("cover.contents") == "<cover.contents>");
}

TEST_CASE("a folder that is no layouts folder is said to be none") {
  Sources sources;
  Diagnostics findings;
  read_library("nowhere", TestFiles{}, sources, findings);
  CHECK(print_diagnostics_short(findings, sources) ==
        "error: folder `nowhere` holds no parts, papers or words [file-unreadable]\n");
}

TEST_CASE("a file that cannot be read is named") {
  class Broken final : public Files {
   public:
    std::optional<std::string> read(const std::string&, std::string& why) const override {
      why = "no right to read it";
      return std::nullopt;
    }
    std::vector<std::string> list(const std::string&) const override { return {"k.toml", "notes.txt"}; }
  };
  Sources sources;
  Diagnostics findings;
  read_library("l", Broken{}, sources, findings);
  CHECK(print_diagnostics_short(findings, sources) ==
        "error: `l/parts/k.toml` cannot be read: no right to read it [file-unreadable]\n"
        "error: `l/papers/k.toml` cannot be read: no right to read it [file-unreadable]\n");
}
