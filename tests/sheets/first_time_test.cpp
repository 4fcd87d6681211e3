// SPDX-License-Identifier: MIT
// What a person asks who fits the kit for the first time, with nothing but the pages: where to begin, where to go on,
// what a switch does, what stays where it is.
#include <doctest/doctest.h>

#include <algorithm>
#include <regex>

#include "sheets/cold_tests.h"
#include "sheets/look.h"
#include "sheets/reference.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

std::string text_on(const Sheet& sheet) {
  std::string all;
  for (const Item& item : sheet.items)
    if (const auto* shown = std::get_if<TextItem>(&item)) all += shown->text + " ";
  return std::regex_replace(all, std::regex(" +"), " ");  // runs of one line may bring their spaces along
}

std::string text_of_run(const Folio& folio, const std::string& run) {
  std::string all;
  for (const Sheet& sheet : folio.sheets)
    if (first_of_run(sheet.id) == run ||
        std::any_of(sheet.joined.begin(), sheet.joined.end(), [&](const JoinedRun& joined) { return joined.id == run; }))
      all += text_on(sheet);
  return all;
}

bool has_step(const Sheet& sheet, const std::string& number) {
  return std::any_of(sheet.items.begin(), sheet.items.end(), [&](const Item& item) {
    const auto* shown = std::get_if<TextItem>(&item);
    return shown != nullptr && shown->text == number && shown->style == look::heading;
  });
}

/// Pairs of numbers that the pattern finds anywhere in the folio.
std::vector<std::pair<std::string, std::string>> find_pairs(const Folio& folio, const std::string& pattern) {
  std::vector<std::pair<std::string, std::string>> found;
  const std::regex wanted(pattern);
  for (const Sheet& sheet : folio.sheets) {
    const std::string text = text_on(sheet);
    for (std::sregex_iterator i(text.begin(), text.end(), wanted), end; i != end; ++i)
      found.emplace_back((*i)[1].str(), (*i)[2].str());
  }
  return found;
}

}  // namespace

TEST_CASE("a reader who is sent to a step finds it on the sheet that is named") {
  for (const char* name : {"electric-start-kit", "driving-lamp-kit"}) {
    CAPTURE(name);
    const Folio& folio = shared_sample(name).composed().folio;
    const auto back = find_pairs(folio, "Go on with step ([0-9]+): sheet ([0-9]+)"),
               start = find_pairs(folio, "begin with step ([0-9]+): sheet ([0-9]+)");
    CHECK(back.size() >= 2);
    CHECK(start.size() == 1);
    for (const auto& pairs : {back, start})
      for (const auto& [step, sheet] : pairs) {
        CAPTURE(step);
        CHECK(has_step(folio.sheets.at(static_cast<std::size_t>(std::stoi(sheet) - 1)), step));
      }
  }
}

TEST_CASE("a switch is told both ways, also where the figures stand with each hook-up") {
  const std::string works = text_of_run(shared_sample("electric-start-kit").composed().folio, "works");
  for (const char* sentence : {"Pulled: 82 and 82a are joined.", "On: 82 and 82a are joined.",
                               "In gear: nothing is joined.", "Neutral: 31b and the metal it is bolted to are joined."})
    CHECK_MESSAGE(works.find(sentence) != std::string::npos, sentence);
}

TEST_CASE("of several switches in one housing each is told under its name") {
  const std::string works = text_of_run(shared_sample("street-single").composed().folio, "works");
  for (const char* sentence : {"Run switch. Run: 81 and 81a are joined. Off: nothing is joined.",
                               "Start button. On: 82 and 82a are joined. Let go: it opens again."})
    CHECK_MESSAGE(works.find(sentence) != std::string::npos, sentence);
}

TEST_CASE("a cable that only leads to the regulator is not asked to reach the frame") {
  const Build& build = shared_sample("street-single").solved().front().build;
  const EarthedCables cables = find_earthed_cables(build);
  const auto ids = [&](const std::vector<WireId>& wires) {
    std::vector<std::string> found;
    for (const WireId wire : wires) found.push_back(build.wire(wire).id);
    return found;
  };
  CHECK(ids(cables.all) == std::vector<std::string>{"3", "27", "28"});
  CHECK(ids(cables.straps) == std::vector<std::string>{"3", "28"});
  CHECK_FALSE(cables.has_others);
}

TEST_CASE("the engine runs for the generator's volts with the main fuse back in") {
  const std::string faults = text_of_run(shared_sample("street-single").composed().folio, "faults");
  const std::size_t out = faults.find("Unplug"), in = faults.find("Fuse back in: no loose", out),
                    start = faults.find("Start the", in);
  REQUIRE(out != std::string::npos);
  CHECK(out < in);
  CHECK(in < start);
}

TEST_CASE("no list of how it works is cut by the end of a sheet") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    for (const Sheet& sheet : shared_sample(name).composed().folio.sheets) {
      if (sheet.id == first_of_run(sheet.id) || sheet.id.find("works") == std::string::npos) continue;
      CAPTURE(sheet.id);
      for (const Item& item : sheet.items) {
        const auto* shown = std::get_if<TextItem>(&item);
        if (shown == nullptr || shown->style != look::text_bold) continue;
        // The first of a list on the sheet is its first, not what was left over.
        if (std::all_of(shown->text.begin(), shown->text.end(), [](char c) { return c >= '0' && c <= '9'; })) {
          CHECK(shown->text == "1");
          break;
        }
      }
    }
  }
}

TEST_CASE("the tests of the interlock name the gear in each row") {
  const std::string tests = text_of_run(shared_sample("electric-start-kit").composed().folio, "tests");
  CHECK(tests.find("Neutral switch: neutral") != std::string::npos);
}

TEST_CASE("the metal of a part is said to take no wire, whoever brings the part") {
  const std::string map = text_of_run(shared_sample("electric-start-kit").composed().folio, "terminals");
  CHECK(map.find("no wire: this is its metal") != std::string::npos);
}

TEST_CASE("what a drawing leaves out though it is fed is named, so that its current does not look like a leak") {
  // In the situations that only some hook-ups share, the neutral lamp burns and is not drawn: the wires that lead to it are told.
  const SampleFolio& sample = shared_sample("electric-start-kit");
  const std::string exits = sample.words()("live.exits", {{"what", "|"}}), told = exits.substr(0, exits.find('|'));
  const auto& sheets = sample.composed().folio.sheets;
  CHECK(std::any_of(sheets.begin(), sheets.end(), [&](const Sheet& sheet) {
    const std::string text = text_on(sheet);
    const std::size_t at = text.find(told);
    return at != std::string::npos && text.find("to Neutral lamp", at) != std::string::npos;
  }));
}

TEST_CASE("the chart of a fuse that the fitter chooses names the watts of the kit as printed, and its step leads there") {
  const Folio& folio = shared_sample("driving-lamp-kit").composed().folio;
  CHECK(text_of_run(folio, "fuses").find("as printed: 70 W") != std::string::npos);
  const auto leads = find_pairs(folio, "Lay beside (Driving lamp fuse) the fuse that the chart on sheet ([0-9]+)");
  REQUIRE(leads.size() == 1);
  const Sheet& chart = folio.sheets.at(static_cast<std::size_t>(std::stoi(leads.front().second) - 1));
  CHECK(text_on(chart).find("What hangs on Driving lamp fuse") != std::string::npos);
}

TEST_CASE("what a step of the author takes from the bag stands in the parts list, its tool on the cover") {
  const Folio& folio = shared_sample("electric-start-kit").composed().folio;
  const std::string parts = text_of_run(folio, "parts");
  for (const char* thing : {"Battery tray with a tab", "Rubber sleeve for the tab of the tray"})
    CHECK_MESSAGE(parts.find(thing) != std::string::npos, thing);
  CHECK(text_on(folio.sheets.front()).find("Thin flat pin that lifts the locks of contacts") != std::string::npos);
  // What all hook-ups share is not listed again with each.
  CHECK(text_of_run(folio, "one-output/parts").find("Battery tray with a tab") == std::string::npos);
}

TEST_CASE("the machine's own wires that a hook-up uses are named as not in the bag") {
  const Folio& folio = shared_sample("electric-start-kit").composed().folio;
  const std::string common = text_of_run(folio, "parts"), own = text_of_run(folio, "one-output/parts");
  const std::string told = "Wires of your machine that are used again";
  CHECK(common.find(told) != std::string::npos);
  CHECK(common.find("generator lead") != std::string::npos);  // C5 and C6
  CHECK(own.find(told) != std::string::npos);
  CHECK(own.find("control unit earth") != std::string::npos);  // 20
  // A hook-up that uses no wire of the machine's but the common ones says nothing of them.
  CHECK(text_of_run(folio, "button-to-supply/parts").find(told) == std::string::npos);
}

TEST_CASE("at first power the fuse that the fitter chose is his, whatever the spec was solved with") {
  for (const auto& [name, fuse] : {std::pair{"electric-start-kit", "Take-off fuse"},
                                   std::pair{"driving-lamp-kit", "Driving lamp fuse"}}) {
    CAPTURE(name);
    const std::string tests = text_of_run(shared_sample(name).composed().folio, "tests");
    CHECK(tests.find(std::string(fuse) + " yours") != std::string::npos);
    CHECK(tests.find(std::string(fuse) + " 10 A") == std::string::npos);
  }
}

TEST_CASE("a situation that hook-ups count otherwise bears the number of each, and each hook-up's numbers rise") {
  const std::string tests = text_of_run(shared_sample("driving-lamp-kit").composed().folio, "tests");
  const std::size_t own = tests.find("3 Riding on dipped beam, driving lamps on"),
                    both = tests.find("A\u00a03, B\u00a04 Riding on main beam");
  REQUIRE(own != std::string::npos);
  REQUIRE(both != std::string::npos);
  CHECK(own < both);
}
