// SPDX-License-Identifier: MIT
// `watch`, each look at the file made by hand.
#include <doctest/doctest.h>

#include "memory_files.h"

using namespace loomfolio;

namespace {

/// Watches lamp.toml; before each further look `change` is given its number, from 1, and the files.
Ran watch_lamp(MemoryFiles& files, int looks, const std::function<void(int, MemoryFiles&)>& change) {
  std::istringstream in;
  std::ostringstream out, err;
  int look = 0;
  Surroundings surroundings{files, in, out, err, LOOMFOLIO_SOURCE_FOLDER, false, false, [&] {
                              if (++look > looks) return false;
                              change(look, files);
                              return true;
                            }};
  Ran ran;
  ran.code = run({"watch", "lamp.toml", "--sheets", "cover"}, surroundings);
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

int count_prints(const Ran& ran) {
  int prints = 0;
  for (std::size_t at = 0; (at = ran.err.find("waiting for the next save", at)) != std::string::npos; ++at) ++prints;
  return prints;
}

}  // namespace

TEST_CASE("watch prints at once, and not again while nothing changes") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran ran = watch_lamp(files, 4, [](int, MemoryFiles&) {});
  CHECK(ran.code == 0);
  CHECK(count_prints(ran) == 1);
  CHECK(files.held.count("lamp.pdf") == 1);
}

TEST_CASE("watch prints again after a save, once the text stands still") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran ran = watch_lamp(files, 5, [](int look, MemoryFiles& held) {
    if (look == 1) held.held["lamp.toml"] = small_spec().substr(0, 40);  // an editor in the middle of its writing
    if (look == 2) held.held["lamp.toml"] = small_spec() + "# changed\n";
  });
  CHECK(ran.code == 0);
  CHECK(count_prints(ran) == 2);
  CHECK(ran.err.find("error") == std::string::npos);
}

TEST_CASE("watch lives through a mistake and through a file that is gone for a moment") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  const Ran ran = watch_lamp(files, 8, [](int look, MemoryFiles& held) {
    if (look == 1) held.held["lamp.toml"] = small_spec() + "[[nonsense]]\n";
    if (look == 4) held.held.erase("lamp.toml");
    if (look == 6) held.held["lamp.toml"] = small_spec();
  });
  CHECK(ran.err.find("errors found") != std::string::npos);
  CHECK(count_prints(ran) == 3);
  CHECK(ran.code == 0);
}

TEST_CASE("standard input cannot be watched, nor a file that is not there") {
  MemoryFiles files;
  CHECK(run_with(files, {"watch", "-"}).code == 2);
  CHECK(run_with(files, {"watch", "/nowhere/bike.toml"}).err ==
        "loomfolio: cannot read `/nowhere/bike.toml`: No such file or directory\n");
}
