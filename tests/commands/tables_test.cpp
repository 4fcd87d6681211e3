// SPDX-License-Identifier: MIT
// `tables`: what other programs read.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "base/json.h"
#include "base/text.h"
#include "commands/tables/plain_table.h"
#include "memory_files.h"

using namespace loomfolio;

namespace {

Json read_sample(const std::string& table, const std::vector<std::string>& more = {}) {
  MemoryFiles files;
  std::vector<std::string> arguments{"tables", LOOMFOLIO_SOURCE_FOLDER "/samples/driving-lamp-kit.toml", table, "--json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Ran ran = run_with(files, arguments);
  CHECK(ran.code == 0);
  std::string error;
  Json read = read_json(ran.out, error);
  CHECK(error.empty());
  return read;
}

}  // namespace

TEST_CASE("fields with commas, quotes and line ends are quoted as RFC 4180 asks; nothing is an empty field or null") {
  const PlainTable table{{"a", "b_mm"}, {{"x, y", 2.5}, {std::monostate(), 1.0}, {"say \"hi\"", std::monostate()}, {"two\nlines", 10.0}}};
  CHECK(write_csv(table) == "a,b_mm\r\n\"x, y\",2.5\r\n,1\r\n\"say \"\"hi\"\"\",\r\n\"two\nlines\",10\r\n");
  CHECK(write_json(table) ==
        "[\n  {\"a\": \"x, y\", \"b_mm\": 2.5},\n  {\"a\": null, \"b_mm\": 1},\n  {\"a\": \"say \\\"hi\\\"\", \"b_mm\": null},\n"
        "  {\"a\": \"two\\nlines\", \"b_mm\": 10}\n]\n");
  CHECK(write_json({{"a"}, {}}) == "[]\n");
}

TEST_CASE("the wires of a spec as CSV: a head, then a row a wire, all of one length") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran ran = run_with(files, {"tables", "lamp.toml", "wires"});
  CHECK(ran.code == 0);
  const std::vector<std::string> lines = split(ran.out, '\n');
  CHECK(lines.front().starts_with("variant,wire,colour,size_mm2,"));
  const auto count_commas = [](const std::string& line) { return std::count(line.begin(), line.end(), ','); };
  std::size_t in_spec = 0;
  for (std::size_t at = 0; (at = small_spec().find("[[wire]]", at)) != std::string::npos; ++at) ++in_spec;
  REQUIRE(lines.size() == in_spec + 2);  // the head, and what follows the last line end
  for (std::size_t line = 0; line <= in_spec; ++line) {
    CHECK(lines[line].ends_with("\r"));
    CHECK(count_commas(lines[line]) == count_commas(lines.front()));
  }
}

TEST_CASE("every table of a kit names its hook-ups, and one hook-up is half of both") {
  for (const std::string table : {"wires", "fuses", "parts", "cuts", "earths"}) {
    CAPTURE(table);
    const Json all = read_sample(table);
    REQUIRE(all.items.size() > 1);
    const std::string first = all.items.front().at("variant").text, last = all.items.back().at("variant").text;
    CHECK_FALSE(first.empty());
    CHECK(first != last);
    CHECK(read_sample(table, {"--variant", first}).items.size() + read_sample(table, {"--variant", last}).items.size() ==
          all.items.size());
    for (const Json& row : all.items) CHECK(row.members.size() == all.items.front().members.size());
  }
}

TEST_CASE("the fuses of a kit that checks clean carry less than their rating, and each says what it protects") {
  const Json fuses = read_sample("fuses");
  for (const Json& fuse : fuses.items) {
    CHECK(fuse.at("rating_A").number > 0);
    CHECK(fuse.at("most_A").number < fuse.at("rating_A").number);
    CHECK_FALSE(fuse.at("protects").text.empty());
  }
}

TEST_CASE("tables refuses what it does not know, and a spec with errors gives none") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran misspelt = run_with(files, {"tables", "lamp.toml", "wirse"});
  CHECK(misspelt.code == 2);
  CHECK(misspelt.err.find("did you mean `wires`?") != std::string::npos);
  std::string wrong = small_spec();
  wrong.replace(wrong.find("switch.56"), 9, "switch.65");
  files.held["lamp.toml"] = wrong;
  const Ran faulty = run_with(files, {"tables", "lamp.toml", "wires", "-o", "wires.csv"});
  CHECK(faulty.code == 1);
  CHECK(faulty.out.empty());
  CHECK(files.held.count("wires.csv") == 0);
}

TEST_CASE("a wire's amperes are what the meter reads through it in that situation") {
  MemoryFiles files;
  int compared = 0, charging = 0;
  for (const Json& wire : read_sample("wires", {"--variant", "own-switch"}).items) {
    // What alternates is told by its effective amperes, which no meter for direct current shows.
    if (wire.at("most_A").kind != JsonKind::number || wire.at("from").text.starts_with("generator")) continue;
    const bool is_as_stated = wire.at("charging").text.empty();  // else more than with the battery of the spec and sound charging
    const Ran read = run_with(files, {"meter", LOOMFOLIO_SOURCE_FOLDER "/samples/driving-lamp-kit.toml", wire.at("wire").text, "--in",
                                      wire.at("situation").text, "--variant", "own-switch", "--json"});
    std::string error;
    const Json meter = read_json(read.out, error);
    REQUIRE(meter.at("readings").items.size() == 1);
    const double amperes = std::abs(meter.at("readings").items.front().at("number").number), most = wire.at("most_A").number;
    if (is_as_stated) CHECK(amperes == doctest::Approx(most).epsilon(0.001));
    else CHECK(amperes < most);
    ++(is_as_stated ? compared : charging);
  }
  CHECK(compared > 5);
  CHECK(charging > 0);
}

TEST_CASE("a file that ends in .json gets JSON") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  CHECK(run_with(files, {"tables", "lamp.toml", "parts", "-o", "parts.json"}).code == 0);
  CHECK(files.held.at("parts.json").starts_with("[\n"));
}
