// SPDX-License-Identifier: MIT
// PDFs read back with poppler's and qpdf's command-line tools; a tool that is missing fails the test.
#include <doctest/doctest.h>

#include <chrono>
#include <regex>
#include <thread>

#include "base/text.h"
#include "render/attachments.h"
#include "render/render_helper.h"

namespace loomfolio {
using test::fonts;
using test::read_back;
using test::small_folio;

namespace {

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("qpdf finds no fault and the version is 1.7") {
  const std::string report = read_back(render_pdf(small_folio(), fonts()), "qpdf --check FILE");
  CAPTURE(report);
  CHECK(holds(report, "PDF Version: 1.7"));
  CHECK(holds(report, "No syntax or stream encoding errors found"));
  CHECK(!holds(report, "WARNING"));
}

TEST_CASE("same folio, same bytes") {
  const std::string pdf = render_pdf(small_folio(), fonts());
  CHECK(!pdf.empty());
  // Long enough for a clock to show, were one looked at.
  std::this_thread::sleep_for(std::chrono::milliseconds(1100));
  CHECK(pdf == render_pdf(small_folio(), fonts()));
  const FontSet others(LOOMFOLIO_SOURCE_FOLDER "/fonts");
  CHECK(pdf == render_pdf(small_folio(), others));
}

TEST_CASE("information comes from the folio, and no time of the clock is in it") {
  const std::string pdf = render_pdf(small_folio(), fonts());
  const std::string info = read_back(pdf, "TZ=UTC pdfinfo FILE");
  CAPTURE(info);
  CHECK(std::regex_search(info, std::regex("Title: +Wiring of a small machine\n")));
  CHECK(std::regex_search(info, std::regex("Author: +A workshop\n")));
  CHECK(std::regex_search(info, std::regex("Subject: +Wiring\n")));
  CHECK(std::regex_search(info, std::regex("Keywords: +wiring, loom\n")));
  CHECK(std::regex_search(info, std::regex("CreationDate: +Mon Nov +2 00:00:00 2026 UTC\n")));
  CHECK(std::regex_search(info, std::regex("Tagged: +yes\n")));
  CHECK(std::regex_search(info, std::regex("Pages: +2\n")));
  CHECK(!holds(info, "ModDate"));
  Folio undated = small_folio();
  undated.info.date.clear();
  CHECK(!holds(read_back(render_pdf(undated, fonts()), "pdfinfo FILE"), "CreationDate"));
}

TEST_CASE("each sheet has its own size") {
  const std::string info = read_back(render_pdf(small_folio(), fonts()), "pdfinfo -f 1 -l 2 FILE");
  CHECK(std::regex_search(info, std::regex("Page +1 size: +595\\.\\d+ x 841\\.\\d+ pts")));
  CHECK(std::regex_search(info, std::regex("Page +2 size: +1190\\.\\d+ x 841\\.\\d+ pts")));
}

TEST_CASE("every face is embedded, as a subset, with its way back to text") {
  Folio folio = small_folio();
  folio.sheets.push_back(test::sheet_of_lines("scripts", {"Příliš ≤ ⏚", "مرحبا", "שלום", "नमस्ते"}));
  const auto rows = split(read_back(render_pdf(folio, fonts()), "pdffonts FILE"), '\n');
  REQUIRE(rows.size() > 7);
  std::string names;
  for (std::size_t i = 2; i + 1 < rows.size(); ++i) {
    CAPTURE(rows[i]);
    CHECK(std::regex_search(rows[i], std::regex(" yes yes yes +\\d+ +0$")));
    names += rows[i];
  }
  for (const char* face : {"B612-Bold", "B612Mono-Bold", "B612-Regular", "NotoSans-Regular", "NotoSansArabic-Regular",
                           "NotoSansHebrew-Regular", "NotoSansDevanagari-Regular", "NotoSansSymbols-Regular"}) {
    CAPTURE(std::string(face));
    CAPTURE(names);
    CHECK(holds(names, std::string("+") + face));
  }
}

TEST_CASE("a word with a letter that B612 lacks is drawn whole in the face that has it") {
  // Every letter but one is in B612.
  Folio folio;
  folio.sheets = {test::sheet_of_lines("one", {"kůň"})};
  const std::string faces = read_back(render_pdf(folio, fonts()), "pdffonts FILE");
  CHECK(holds(faces, "NotoSans-Regular"));
  CHECK(!holds(faces, "B612"));
  folio.sheets = {test::sheet_of_lines("one", {"kůň plain"})};
  CHECK(holds(read_back(render_pdf(folio, fonts()), "pdffonts FILE"), "B612-Regular"));
}

TEST_CASE("text reads back, with its spaces, in every script") {
  const std::vector<std::string> lines = {"Difficult office fluffy fix: 12 AWG 2.5 mm² — Ω ½ ° ± ≤ → ✓ ☐ ⚠",
                                          "AV To WAVE. Ty",
                                          "Příliš žluťoučký kůň",
                                          "Ταχύτητα",
                                          "Привет мир",
                                          "नमस्ते दुनिया"};
  Folio folio;
  folio.sheets = {test::sheet_of_lines("lines", lines)};
  const std::string text = read_back(render_pdf(folio, fonts()), "pdftotext -layout FILE -");
  CAPTURE(text);
  for (const std::string& line : lines) {
    CAPTURE(line);
    CHECK(holds(text, line));
  }
}

TEST_CASE("text from right to left reads back and stands right to left") {
  Folio folio;
  folio.sheets = {test::sheet_of_lines("lines", {"שלום עולם", "مرحبا بالعالم"})};
  const std::string pdf = render_pdf(folio, fonts());
  const std::string text = read_back(pdf, "pdftotext FILE -");
  CAPTURE(text);
  CHECK(holds(text, "שלום עולם"));
  CHECK(holds(text, "مرحبا بالعالم"));
  // The first word is the rightmost, and its letters are one word (listed in the order seen).
  const std::string words = read_back(pdf, "pdftotext -bbox FILE -");
  std::smatch first, second;
  REQUIRE(std::regex_search(words, first, std::regex("xMin=\"([\\d.]+)\"[^>]*>םולש<")));
  REQUIRE(std::regex_search(words, second, std::regex("xMin=\"([\\d.]+)\"[^>]*>םלוע<")));
  CHECK(std::stod(first[1]) > std::stod(second[1]));
}

TEST_CASE("text stands where the measure says: left, centre, right, and upright from foot to head") {
  struct Row {
    const char* what;
    Align align;
    bool is_upright;
    double x0, y0;
  };
  const double w = fonts().measure().measure("Regulator", {}).width.number();
  const Row table[] = {{"left", Align::left, false, 100, 0},
                       {"centre", Align::centre, false, 100 - w / 2, 0},
                       {"right", Align::right, false, 100 - w, 0},
                       {"upright left", Align::left, true, 0, 100 - w},
                       {"upright centre", Align::centre, true, 0, 100 - w / 2},
                       {"upright right", Align::right, true, 0, 100}};
  for (const Row& row : table) {
    CAPTURE(row.what);
    Folio folio;
    folio.sheets = {test::sheet_of_lines("one", {})};
    folio.sheets[0].items.push_back(TextItem{test::at(100, 100), "Regulator", {}, {}, row.align, row.is_upright});
    const std::string words = read_back(render_pdf(folio, fonts()), "pdftotext -bbox FILE -");
    CAPTURE(words);
    std::smatch box;
    REQUIRE(std::regex_search(
        words, box, std::regex("xMin=\"([\\d.]+)\" yMin=\"([\\d.]+)\" xMax=\"([\\d.]+)\" yMax=\"([\\d.]+)\">R")));
    const auto mm = [&](int i) { return std::stod(box[i]) * 25.4 / 72; };
    const double along = row.is_upright ? mm(2) : mm(1), length = row.is_upright ? mm(4) - mm(2) : mm(3) - mm(1);
    CHECK(along == doctest::Approx(row.is_upright ? row.y0 : row.x0).epsilon(0.001));
    CHECK(length == doctest::Approx(w).epsilon(0.002));
    // Turned text has its foot to the right: it reaches further to the left of its baseline than to the right.
    if (row.is_upright)
      CHECK(100 - mm(1) > mm(3) - 100);
    else
      CHECK(100 - mm(2) > mm(4) - 100);
  }
}

TEST_CASE("an attachment survives, byte for byte") {
  Folio folio = small_folio();
  std::string bytes;
  for (int i = 0; i < 256; ++i) bytes += static_cast<char>(i);
  folio.attachments.push_back({"placement.bin", "application/octet-stream", "where things stand", bytes});
  folio.attachments.push_back({"empty.txt", "text/plain", "", ""});
  const std::string pdf = render_pdf(folio, fonts());
  CHECK(extract_attachment(pdf, "spec.toml") == folio.attachments[0].content);
  CHECK(extract_attachment(pdf, "placement.bin") == bytes);
  CHECK(extract_attachment(pdf, "empty.txt") == "");
  CHECK(extract_attachment(pdf, "other.toml") == std::nullopt);
  CHECK(list_attachments(pdf) == std::vector<std::string>{"empty.txt", "placement.bin", "spec.toml"});
  CHECK(read_back(pdf, "qpdf --show-attachment=spec.toml FILE") == folio.attachments[0].content);
  CHECK(holds(read_back(pdf, "qpdf --qdf --object-streams=disable FILE -"), "/AFRelationship /Source"));
}

TEST_CASE("what is no PDF carries nothing") {
  CHECK(extract_attachment("", "spec.toml") == std::nullopt);
  CHECK(extract_attachment("[document]\n", "spec.toml") == std::nullopt);
  const std::string pdf = render_pdf(small_folio(), fonts());
  CHECK(extract_attachment(pdf.substr(0, pdf.size() / 3), "spec.toml") == std::nullopt);
  CHECK(list_attachments("%PDF-1.7\n").empty());
}

TEST_CASE("every link leads to a place that is there, and the outline and labels follow the sheets") {
  Folio folio = small_folio();
  folio.sheets[0].items.push_back(LinkItem{test::box(1, 2, 3, 4), "not-printed", ""});
  folio.sheets[0].items.push_back(AnchorItem{"it's \\ ü", test::at(100, 200)});
  folio.sheets[0].items.push_back(AnchorItem{"nothing leads here", test::at(100, 210)});
  folio.sheets[1].items.push_back(LinkItem{test::box(10, 20, 30, 40), "one", "it's \\ ü"});
  folio.sheets.push_back(test::sheet_of_lines("three", {}));
  folio.sheets[2].group = "Diagrams";
  const std::string pdf = render_pdf(folio, fonts());
  CHECK(read_back(pdf, "python3 " LOOMFOLIO_SOURCE_FOLDER "/tests/render/places.py FILE") ==
        R"(place "one" page 1 at 0.00 0.00
place "one#it's \\ ü" page 1 at 100.00 200.00
place "one#relay" page 1 at 20.00 40.00
place "three" page 3 at 0.00 0.00
place "two" page 2 at 0.00 0.00
place "two#relay" page 2 at 20.00 40.00
link page 1 at 20.00 40.00 50.00 x 30.00 to "two#relay" saying "Sheet two"
link page 2 at 20.00 40.00 50.00 x 30.00 to "one#relay" saying "Sheet one"
link page 2 at 10.00 20.00 30.00 x 40.00 to "one#it's \\ ü" saying "Sheet one"
outline "Sheet one" to page 1
outline "Diagrams" to page 2
outline   "Sheet two" to page 2
outline   "three" to page 3
label 1 "1"
label 2 "D-1"
label 3 "3"
language "en"
shows its title
figure "a relay on sheet one"
figure "a relay on sheet two"
)");
}

TEST_CASE("many sheets, which are drawn in three parts, are one document") {
  constexpr int count = 40;
  Folio folio;
  std::string links, figures, structure = "Document\n";
  for (int i = 1; i <= count; ++i) {
    const std::string name = "sheet " + std::to_string(i), other = "sheet " + std::to_string(count + 1 - i);
    Sheet sheet = test::sheet_of_lines(name, {});
    sheet.title = name;
    sheet.items = {TagOpenItem{"P", ""}, TextItem{test::at(20, 20), "text " + std::to_string(i), {}}, TagCloseItem{},
                   TagOpenItem{"Figure", "picture " + std::to_string(i)}, LinkItem{test::box(10, 10, 20, 20), other, ""}, TagCloseItem{}};
    folio.sheets.push_back(std::move(sheet));
    links += "link page " + std::to_string(i) + " at 10.00 10.00 20.00 x 20.00 to \"" + other + "\" saying \"" + other + "\"\n";
    figures += "figure \"picture " + std::to_string(i) + "\"\n";
    structure += "  P (block)\n    \"text " + std::to_string(i) + "\"\n";
  }
  const std::string pdf = render_pdf(folio, fonts());
  const std::string places = read_back(pdf, "python3 " LOOMFOLIO_SOURCE_FOLDER "/tests/render/places.py FILE");
  CAPTURE(places);
  CHECK(holds(places, links));
  CHECK(places.ends_with("language \"en\"\n" + figures));
  std::string told;
  for (const std::string& line : split(read_back(pdf, "pdfinfo -struct-text FILE"), '\n'))
    if (line.starts_with("Document") || holds(line, "P (block)") || holds(line, "text ")) told += line + "\n";
  CHECK(told == structure);
  CHECK(holds(read_back(pdf, "qpdf --check FILE"), "No syntax or stream encoding errors found"));
  CHECK(pdf == render_pdf(folio, fonts()));
}

TEST_CASE("texts of a tag are words apart for readers that follow the structure, save in a word broken at its hyphen or set in two pieces") {
  Folio folio;
  folio.sheets = {test::sheet_of_lines("one", {})};
  const auto line = [](double y, const char* words) { return TextItem{test::at(20, y), words, {}}; };
  const auto right_of = [](const TextItem& text, double gap, const char* words, Align align) {
    const Millimetres before = fonts().measure().measure(text.text, text.style).width + Millimetres(gap);
    const Millimetres own = align == Align::left ? Millimetres(0) : fonts().measure().measure(words, {}).width;
    return TextItem{{text.at.x + before + own, text.at.y}, words, {}, {}, align};
  };
  const TextItem oil = line(50, "oil"), lamp = line(60, "lamp"), pair = line(70, "two");
  folio.sheets[0].items = {TagOpenItem{"P", ""}, line(20, "with their"),    line(25, "seals and oil-"),
                           line(30, "pressure"), TagCloseItem{},            TagOpenItem{"P", ""},
                           line(40, "next"),     TagCloseItem{},            TagOpenItem{"P", ""},
                           oil, right_of(oil, 0, "pressure", Align::left), TagCloseItem{}, TagOpenItem{"P", ""},
                           lamp, right_of(lamp, 2, "Rear", Align::right), TagCloseItem{}, TagOpenItem{"P", ""},
                           pair, right_of(pair, 2, " apart", Align::left), TagCloseItem{}};
  const std::string structure = read_back(render_pdf(folio, fonts()), "pdfinfo -struct-text FILE");
  CHECK(structure == R"(Document
  P (block)
    "with their seals and oil-pressure"
  P (block)
    "next"
  P (block)
    "oilpressure"
  P (block)
    "lamp Rear"
  P (block)
    "two apart"
)");
}

TEST_CASE("the structure is a document of what was tagged, points of a list in one, without what readers skip") {
  Folio folio;
  folio.sheets = {test::sheet_of_lines("one", {}), test::sheet_of_lines("two", {})};
  const auto text = [](const char* words) { return TextItem{test::at(20, 20), words, {}}; };
  folio.sheets[0].items = {TagOpenItem{"H1", ""}, text("Wires"),
                           TagCloseItem{},        TagOpenItem{"Artifact", ""},
                           text("foot"),          TagOpenItem{"P", ""},
                           text("of the sheet"),  TagCloseItem{},
                           TagCloseItem{},        TagOpenItem{"Table", ""},
                           TagOpenItem{"TR", ""}, TagOpenItem{"TH", ""},
                           text("Wire"),          TagCloseItem{},
                           TagOpenItem{"TD", ""}, text("12"),
                           TagCloseItem{},        TagCloseItem{},
                           TagCloseItem{}};
  const auto add_point = [&](Sheet& sheet, const char* words) {
    const std::vector<Item> point{TagOpenItem{"LI", ""}, TagOpenItem{"LBody", ""}, text(words), TagCloseItem{}, TagCloseItem{}};
    sheet.items.insert(sheet.items.end(), point.begin(), point.end());
  };
  add_point(folio.sheets[0], "First point");
  folio.sheets[1].items.clear();
  add_point(folio.sheets[1], "Second point");
  const std::vector<Item> last{TagOpenItem{"P", ""}, text("Second"), TagCloseItem{}};
  folio.sheets[1].items.insert(folio.sheets[1].items.end(), last.begin(), last.end());
  const std::string structure = read_back(render_pdf(folio, fonts()), "pdfinfo -struct-text FILE");
  CHECK(structure == R"(Document
  H1 (block)
    "Wires"
  Table (block)
    TR
      TH
        "Wire"
      TD
        "12"
  L (block)
    LI (block)
      LBody (block)
        "First point"
    LI (block)
      LBody (block)
        "Second point"
  P (block)
    "Second"
)");
}

}  // namespace loomfolio
