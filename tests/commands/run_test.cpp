// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "memory_files.h"

using namespace loomfolio;

TEST_CASE("help and version go to standard output and end with 0") {
  MemoryFiles files;
  const Ran help = run_with(files, {"--help"});
  CHECK(help.code == 0);
  CHECK(help.out.find("print") != std::string::npos);
  CHECK(help.err.empty());
  CHECK(run_with(files, {"--version"}).out.starts_with("loomfolio "));
}

TEST_CASE("a misspelt command is refused with the likely one") {
  MemoryFiles files;
  const Ran ran = run_with(files, {"prnt", "x.toml"});
  CHECK(ran.code == 2);
  CHECK(ran.out.empty());
  CHECK(ran.err.find("did you mean `print`?") != std::string::npos);
}

TEST_CASE("a spec that is not there ends with 2 and says why") {
  MemoryFiles files;
  const Ran ran = run_with(files, {"check", "/nowhere/bike.toml"});
  CHECK(ran.code == 2);
  CHECK(ran.err == "loomfolio: cannot read `/nowhere/bike.toml`: No such file or directory\n");
}

TEST_CASE("check: clean is 0, an error is 1 with place, caret and hint") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran clean = run_with(files, {"check", "lamp.toml"});
  CHECK(clean.code == 0);
  CHECK(clean.out == "lamp.toml: nothing found\n");

  std::string wrong = small_spec();
  wrong.replace(wrong.find("switch.56"), 9, "switch.65");
  files.held["lamp.toml"] = wrong;
  const Ran ran = run_with(files, {"check", "lamp.toml"});
  CHECK(ran.code == 1);
  CHECK(ran.err.find("^~~~") != std::string::npos);
  CHECK(ran.err.find("hint: ") != std::string::npos);
  const Ran json = run_with(files, {"check", "--json", "lamp.toml"});
  CHECK(json.out.starts_with("["));
  CHECK(json.code == 1);
}

TEST_CASE("check reads standard input") {
  MemoryFiles files;
  const Ran ran = run_with(files, {"check", "-"}, small_spec());
  CHECK(ran.code == 0);
  CHECK(ran.out == "standard input: nothing found\n");
}

TEST_CASE("parts lists the kinds, shows one, and knows what a misspelt one may have meant") {
  MemoryFiles files;
  const Ran all = run_with(files, {"parts"});
  CHECK(all.code == 0);
  CHECK(std::count(all.out.begin(), all.out.end(), '\n') >= 35);
  CHECK(run_with(files, {"parts", "horn"}).out.find("Terminals") != std::string::npos);
  const Ran wrong = run_with(files, {"parts", "hron"});
  CHECK(wrong.code == 1);
  CHECK(wrong.err.find("did you mean `horn`?") != std::string::npos);
}

TEST_CASE("new writes a spec that checks clean, and never over a file that is there") {
  MemoryFiles files;
  CHECK(run_with(files, {"new", "mine.toml"}).code == 0);
  REQUIRE(files.held.count("mine.toml") == 1);
  const Ran checked = run_with(files, {"check", "mine.toml"});
  CHECK(checked.code == 0);
  CHECK(checked.out == "mine.toml: nothing found\n");

  files.held["mine.toml"] = "work of a day";
  const Ran again = run_with(files, {"new", "mine.toml"});
  CHECK(again.code == 2);
  CHECK(again.err.find("is there already") != std::string::npos);
  CHECK(files.held["mine.toml"] == "work of a day");
  CHECK(run_with(files, {"new", "-"}).out.starts_with("# A build spec"));
}
