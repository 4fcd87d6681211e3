// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "memory_files.h"

using namespace loomfolio;

namespace loomfolio {

std::string small_spec() {
  return R"([document]
title = "First lamp"
job = "T-1"
revision = "A"
date = "2026-11-02"
[[zone]]
id = "front"
label = "Front"
place = "0.3 m"
[[part]]
id = "battery"
kind = "battery"
zone = "front"
[[part]]
id = "fuse"
kind = "inline-fuse"
zone = "front"
rating = "10 A"
[[part]]
id = "switch"
kind = "light-switch"
zone = "front"
[[part]]
id = "lamp"
kind = "driving-lamp"
zone = "front"
[[earth]]
id = "E1"
zone = "front"
place = "bolt of the lamp bracket"
thread = "M6"
[[wire]]
from = "battery.+"
to = "fuse.in"
colour = "RD"
size = "1.5 mm2"
length = "150 mm"
purpose = "battery to fuse"
[[wire]]
from = "fuse.out"
to = "switch.83"
colour = "RD"
stripe = "WH"
size = "1.5 mm2"
length = "900 mm"
purpose = "supply of the switch"
[[wire]]
from = "switch.56"
to = "lamp.56a"
colour = "YE"
size = "1.5 mm2"
length = "600 mm"
purpose = "lamp feed"
[[wire]]
from = "lamp.31"
to = "E1"
colour = "BK"
size = "1.5 mm2"
length = "200 mm"
purpose = "lamp return"
[[wire]]
from = "battery.-"
to = "E1"
colour = "BK"
size = "4 mm2"
length = "400 mm"
purpose = "battery to frame"
[[situation]]
name = "lit"
label = "Lamp on"
set = { switch = "head" }
expect = { lamp = "on" }
)";
}

}  // namespace loomfolio

TEST_CASE("print writes a PDF beside the spec, the same bytes each time") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  CHECK(run_with(files, {"print", "lamp.toml"}).code == 0);
  const std::string first = files.held["lamp.pdf"];
  CHECK(first.starts_with("%PDF-1."));
  CHECK(run_with(files, {"print", "lamp.toml"}).code == 0);
  CHECK(files.held["lamp.pdf"] == first);
}

TEST_CASE("a print that fails leaves the old file as it was") {
  MemoryFiles files;
  files.held["lamp.pdf"] = "old";
  files.held["lamp.toml"] = small_spec() + "nonsense = 1\n";
  const Ran wrong = run_with(files, {"print", "lamp.toml"});
  CHECK(wrong.code == 1);
  CHECK(wrong.err.find("nothing printed") != std::string::npos);
  CHECK(files.held["lamp.pdf"] == "old");

  files.held["lamp.toml"] = small_spec();
  files.is_read_only = true;
  const Ran stuck = run_with(files, {"print", "lamp.toml"});
  CHECK(stuck.code == 2);
  CHECK(stuck.err.find("it is as it was") != std::string::npos);
  CHECK(files.held["lamp.pdf"] == "old");
}

TEST_CASE("errors of the check stop a print; --draft prints and marks every sheet") {
  MemoryFiles files;
  std::string spec = small_spec();
  spec.replace(spec.find("lamp = \"on\""), 11, "lamp = \"off\"");
  files.held["lamp.toml"] = spec;
  CHECK(run_with(files, {"print", "lamp.toml"}).code == 1);
  CHECK(files.held.count("lamp.pdf") == 0);
  CHECK(run_with(files, {"print", "lamp.toml", "--draft", "-o", "lamp.txt", "--sheets", "cover"}).code == 1);
  CHECK(files.held["lamp.txt"].find("DRAFT") != std::string::npos);
}

TEST_CASE("sheets are chosen by id or number; pictures are numbered") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  CHECK(run_with(files, {"print", "lamp.toml", "--sheets", "cover,wires", "-o", "out.txt"}).code == 0);
  CHECK(files.held.count("out-01.txt") == 1);
  CHECK(files.held.count("out-02.txt") == 1);
  const Ran none = run_with(files, {"print", "lamp.toml", "--sheets", "covr"});
  CHECK(none.code == 2);
  CHECK(none.err.find("did you mean `cover`?") != std::string::npos);
}

TEST_CASE("an ending that names no form is refused before any work") {
  MemoryFiles files;
  const Ran ran = run_with(files, {"print", "lamp.toml", "-o", "lamp.doc"});
  CHECK(ran.code == 2);
  CHECK(ran.err.find(".pdf, .svg, .png or .txt") != std::string::npos);
}

TEST_CASE("a character that no face has is a finding at its place") {
  MemoryFiles files;
  std::string spec = small_spec();
  spec.replace(spec.find("First lamp"), 10, "First \xF0\x9F\xA6\x84");
  files.held["lamp.toml"] = spec;
  const Ran ran = run_with(files, {"print", "lamp.toml"});
  CHECK(ran.code == 1);
  CHECK(ran.err.find("lamp.toml:2:") != std::string::npos);
  CHECK(ran.err.find("[missing-glyph]") != std::string::npos);
}

TEST_CASE("paper and language of the command line stand above the spec's") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  CHECK(run_with(files, {"print", "lamp.toml", "--paper", "A2"}).code == 2);
  CHECK(run_with(files, {"print", "lamp.toml", "--language", "xx"}).code == 2);
  CHECK(run_with(files, {"print", "lamp.toml", "--paper", "Letter"}).code == 0);
}
