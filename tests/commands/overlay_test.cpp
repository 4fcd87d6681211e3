// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <regex>

#include "memory_files.h"

using namespace loomfolio;

namespace {

std::string diagram_of(const std::vector<std::string>& options) {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  std::vector<std::string> words{"print", "lamp.toml", "--sheets", "diagram", "-o", "out.txt"};
  words.insert(words.end(), options.begin(), options.end());
  REQUIRE(run_with(files, words).code == 0);
  return files.held.at(files.held.count("out.txt") != 0 ? "out.txt" : "out-01.txt");
}

/// The notes 'length+bends=sum' and 'length+bends+crossings=sum' of a page, whose sums are checked.
int count_whole_notes(const std::string& page) {
  static const std::regex note(R"((\d+)\+(\d+)(?:\+(\d+))?=(\d+))");
  int count = 0;
  for (auto at = std::sregex_iterator(page.begin(), page.end(), note); at != std::sregex_iterator(); ++at, ++count) {
    const auto number = [&](std::size_t i) { return (*at)[i].matched ? std::stol((*at)[i].str()) : 0L; };
    CHECK(number(1) + number(2) + number(3) == number(4));
  }
  return count;
}

}  // namespace

TEST_CASE("--overlay=costs tells beside the wires of a diagram what they cost; without it no page has such a word") {
  const std::string with = diagram_of({"--overlay=costs"}), without = diagram_of({});
  CHECK(with.find("Costs, in mm of wire") != std::string::npos);
  CHECK(count_whole_notes(with) >= 1);
  CHECK(without.find("Costs, in mm of wire") == std::string::npos);
  CHECK(count_whole_notes(without) == 0);
}

TEST_CASE("an overlay that there is not is refused with those that there are") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran ran = run_with(files, {"print", "lamp.toml", "--overlay=ink"});
  CHECK(ran.code == 2);
  CHECK(ran.err.find("costs") != std::string::npos);
}
