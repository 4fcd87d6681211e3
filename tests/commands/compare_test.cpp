// SPDX-License-Identifier: MIT
// `compare`: what differs between two specs or prints, and bars beside it on the pages.
#include <doctest/doctest.h>

#include <algorithm>

#include "commands/tables/compare_tables.h"
#include "memory_files.h"
#include "sheets/change_bars.h"
#include "sheets/fixed_face.h"

using namespace loomfolio;

namespace {

std::string with_one(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

TextItem text_at(double x, double y, const std::string& text) {
  TextItem item;
  item.at = {Millimetres(x), Millimetres(y)};
  item.text = text;
  return item;
}

Sheet page_of(const std::vector<TextItem>& texts) {
  Sheet sheet;
  sheet.id = "wires";
  for (const TextItem& text : texts) sheet.items.push_back(text);
  return sheet;
}

std::size_t count_filled(const Sheet& sheet) {
  return static_cast<std::size_t>(std::count_if(sheet.items.begin(), sheet.items.end(), [](const Item& item) {
    const auto* rect = std::get_if<RectItem>(&item);
    return rect != nullptr && rect->fill.is_filled;
  }));
}

Words words_with_bar() {
  MemoryFiles files;
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(LOOMFOLIO_SOURCE_FOLDER "/layouts", files, sources, findings);
  return read_words(library, "en", files, sources, findings);
}

}  // namespace

TEST_CASE("rows that came, went and differ are told; a computed figure only from 2 % on") {
  const PlainTable older{{"wire", "length_mm", "most_A"}, {{"1", 600.0, 3.0}, {"2", 100.0, 5.0}, {"3", std::monostate(), 1.0}}};
  const PlainTable newer{{"wire", "length_mm", "most_A"}, {{"1", 650.0, 3.02}, {"3", 80.0, 1.5}, {"4", 70.0, 2.0}}};
  CHECK(compare_tables(older, newer, 1) ==
        std::vector<std::string>{"1: length_mm 600 -> 650", "3: length_mm nothing -> 80, most_A 1 -> 1.5",
                                 "+ 4: length_mm 70, most_A 2", "- 2: length_mm 100, most_A 5"});
  CHECK(compare_tables(older, older, 1).empty());
}

TEST_CASE("compare names the changed value of a spec, and nothing when only its words moved") {
  MemoryFiles files;
  files.held["old.toml"] = small_spec();
  files.held["new.toml"] = "# a remark\n" + small_spec();
  const Ran same = run_with(files, {"compare", "old.toml", "new.toml"});
  CHECK(same.code == 0);
  CHECK(same.out.find("no part, wire, joint, fuse or situation differs") != std::string::npos);

  const std::size_t colour = small_spec().find("colour = \"");
  REQUIRE(colour != std::string::npos);
  std::string changed = small_spec();
  changed.replace(colour + 10, changed.find('"', colour + 10) - colour - 10, "VT");
  files.held["new.toml"] = changed;
  const Ran ran = run_with(files, {"compare", "old.toml", "new.toml"});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("wires\n") != std::string::npos);
  CHECK(ran.out.find("-> VT") != std::string::npos);
  CHECK(ran.out.find("parts\n") == std::string::npos);
}

TEST_CASE("either may be a PDF; one of something else is refused, and so is a spec with errors") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  REQUIRE(run_with(files, {"print", "lamp.toml", "--sheets", "cover"}).code == 0);
  const Ran ran = run_with(files, {"compare", "lamp.pdf", "lamp.toml"});
  CHECK(ran.code == 0);
  CHECK(ran.out.find("no part, wire, joint, fuse or situation differs") != std::string::npos);

  files.held["other.pdf"] = "%PDF-1.7\n";
  const Ran other = run_with(files, {"compare", "other.pdf", "lamp.toml"});
  CHECK(other.code == 2);
  CHECK(other.err.find("carries no spec") != std::string::npos);

  files.held["wrong.toml"] = with_one(small_spec(), "switch.56", "switch.65");
  const Ran wrong = run_with(files, {"compare", "lamp.toml", "wrong.toml", "-o", "out.pdf"});
  CHECK(wrong.code == 1);
  CHECK(wrong.err.find("nothing compared") != std::string::npos);
  CHECK(files.held.count("out.pdf") == 0);
}

TEST_CASE("a bar stands beside a row that says something new, and only there") {
  const std::vector<Sheet> before{page_of({text_at(20, 50, "1"), text_at(40, 50, "600"), text_at(20, 60, "2"), text_at(40, 60, "650")})};
  // The figure of row 2 comes into row 1: known as a text, not in that row. Row 2 only moved down.
  std::vector<Sheet> after{page_of({text_at(20, 50, "1"), text_at(40, 50, "650"), text_at(20, 80, "2"), text_at(40, 80, "650")})};
  const EarlierFolio earlier{gather_said(before, fixed_face), "B", "2026-08-01"};
  put_change_bars(after, earlier, words_with_bar(), fixed_face);
  CHECK(count_filled(after.front()) == 1);
  for (const Item& item : after.front().items)
    if (const auto* bar = std::get_if<RectItem>(&item)) {
      CHECK(bar->rect.y < Millimetres(50));
      CHECK(bar->rect.bottom() > Millimetres(50));
      CHECK(bar->rect.bottom() < Millimetres(60));
    }
  const auto* note = std::get_if<TextItem>(&after.front().items[after.front().items.size() - 2]);
  REQUIRE(note != nullptr);
  CHECK(note->text.find("Revision B, 1 August 2026") != std::string::npos);

  std::vector<Sheet> same = before;
  put_change_bars(same, earlier, words_with_bar(), fixed_face);
  CHECK(same.front().items.size() == before.front().items.size());
}

TEST_CASE("the marked pages of a spec against itself are those of a print") {
  MemoryFiles files;
  files.held["lamp.toml"] = small_spec();
  REQUIRE(run_with(files, {"print", "lamp.toml", "-o", "plain.txt"}).code == 0);
  REQUIRE(run_with(files, {"compare", "lamp.toml", "lamp.toml", "-o", "marked.txt"}).code == 0);
  int pages = 0;
  for (const auto& [name, content] : files.held)
    if (name.starts_with("plain")) {
      ++pages;
      CHECK(files.held.at("marked" + name.substr(5)) == content);
    }
  CHECK(pages > 3);
}
