// SPDX-License-Identifier: MIT
#include "render/render_helper.h"

#include <stdlib.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>

namespace loomfolio::test {

const FontSet& fonts() {
  static const FontSet set(LOOMFOLIO_SOURCE_FOLDER "/fonts");
  return set;
}

Sheet sheet_of_lines(const std::string& id, const std::vector<std::string>& lines) {
  Sheet sheet;
  sheet.id = sheet.title = id;
  double y = 20;
  for (const std::string& line : lines) {
    sheet.items.push_back(TextItem{at(20, y), line, {}});
    y += 10;
  }
  return sheet;
}

Folio small_folio() {
  Folio folio;
  folio.info = {"Wiring of a small machine", "A workshop", "Wiring", "wiring, loom", "en", "2026-11-02",
                "0123456789abcdef"};
  folio.attachments = {{"spec.toml", "application/toml", "the build spec", "[document]\ntitle = \"small\"\n"}};
  for (const std::string id : {"one", "two"}) {
    Sheet sheet;
    sheet.id = id;
    sheet.title = "Sheet " + id;
    sheet.group = id == "two" ? "Diagrams" : "";
    sheet.label = id == "two" ? "D-1" : "";
    if (id == "two") sheet.width = Millimetres(420);
    sheet.items.push_back(TagOpenItem{"H1", ""});
    sheet.items.push_back(TextItem{at(20, 20), "Heading of " + id, {FaceName::sans, Weight::bold, 18}});
    sheet.items.push_back(TagCloseItem{});
    sheet.items.push_back(TagOpenItem{"Figure", "a relay on sheet " + id});
    RectItem rect{box(20, 40, 50, 30), Millimetres(4)};
    rect.fill = {true, {0xcc, 0x22, 0x22}};
    sheet.items.push_back(rect);
    sheet.items.push_back(TextItem{at(25, 50), "87a", {FaceName::mono, Weight::bold, 7.5}, {0x00, 0x5f, 0x73}});
    sheet.items.push_back(TagCloseItem{});
    sheet.items.push_back(AnchorItem{"relay", at(20, 40)});
    sheet.items.push_back(LinkItem{box(20, 40, 50, 30), id == "one" ? "two" : "one", "relay"});
    folio.sheets.push_back(sheet);
  }
  return folio;
}

std::string read_back(const std::string& content, const std::string& command) {
  namespace fs = std::filesystem;
  std::string folder = (fs::temp_directory_path() / "loomfolio-test-XXXXXX").string();
  if (!mkdtemp(folder.data())) return "FAILED: no folder";
  const std::string path = folder + "/file";
  std::ofstream(path, std::ios::binary) << content;
  std::string line = command;
  for (std::size_t found; (found = line.find("FILE")) != std::string::npos;) line.replace(found, 4, path);
  std::string output;
  FILE* pipe = popen(("cd '" + folder + "' && { " + line + " ; } 2>&1").c_str(), "r");
  std::array<char, 4096> buffer;
  for (std::size_t count; pipe && (count = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;)
    output.append(buffer.data(), count);
  const int code = pipe ? pclose(pipe) : -1;
  fs::remove_all(folder);
  return code == 0 ? output : "FAILED: " + output;
}

}  // namespace loomfolio::test
