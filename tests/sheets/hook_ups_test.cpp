// SPDX-License-Identifier: MIT
// A kit of several hook-ups: what all share stands once, what differs once a hook-up, and nothing is lost.
#include "sheets/hook_ups.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "sheets/anchors.h"
#include "sheets/assembly_plan.h"
#include "sheets/reference.h"
#include "sheets/sample_sheets.h"
#include "sheets/step_writer.h"
#include "sheets/stopped_text.h"

using namespace loomfolio;

namespace {

/// Ids of runs, and where each begins: 'wires', 'one-output/wires'.
std::map<std::string, std::size_t> runs_of(const Folio& folio) {
  std::map<std::string, std::size_t> runs;
  for (std::size_t i = 0; i < folio.sheets.size(); ++i) {
    runs.emplace(first_of_run(folio.sheets[i].id), i);
    for (const JoinedRun& run : folio.sheets[i].joined) runs.emplace(run.id, i);
  }
  return runs;
}

/// Anchors that begin with `prefix` on text sheets, with how often each stands on sheets of that hook-up ("" : common).
std::map<std::string, int> anchors_on(const Folio& folio, const std::string& hook_up, const std::string& prefix) {
  std::map<std::string, int> anchors;
  for (const Sheet& sheet : folio.sheets) {
    const std::size_t slash = sheet.id.find('/');
    const std::string own = slash == std::string::npos ? "" : sheet.id.substr(0, slash);
    if (own != hook_up || sheet.width > sheet.height) continue;
    for (const Item& item : sheet.items)
      if (const auto* anchor = std::get_if<AnchorItem>(&item); anchor != nullptr && anchor->name.starts_with(prefix))
        ++anchors[anchor->name];
  }
  return anchors;
}

/// Whether the text stands on the sheet, on one line or over several.
bool says(const Sheet& sheet, const std::string& text) {
  std::string all;
  for (const Item& item : sheet.items)
    if (const auto* shown = std::get_if<TextItem>(&item)) all += shown->text + " ";
  return all.find(text) != std::string::npos;
}

}  // namespace

TEST_CASE("each situation drawn for one hook-up names it") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  std::size_t drawn = 0;
  for (std::size_t b = 0; b < sample.solved().size(); ++b) {
    const Build& build = sample.solved()[b].build;
    const std::string name =
        sample.words()("hook_up.title", {{"letter", hook_up_letter(b)}, {"label", build.variant_label}});
    for (const Sheet& sheet : sample.composed().folio.sheets) {
      if (!sheet.id.starts_with(build.variant + "/situations") || sheet.width < sheet.height) continue;
      CAPTURE(sheet.id);
      ++drawn;
      CHECK(says(sheet, name));
    }
  }
  CHECK(drawn >= sample.solved().size());
}

TEST_CASE("pages that all hook-ups share stand once, and the kit stays a document that one reads") {
  for (const auto& [name, most] :
       std::map<std::string, std::size_t>{{"electric-start-kit", 86}, {"driving-lamp-kit", 60}}) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    const Folio& folio = sample.composed().folio;
    const auto runs = runs_of(folio);
    for (const char* once :
         {"cover", "safety", "chooser", "crimps", "labels", "works", "terminals", "wires", "steps", "earths", "tests",
          "faults"}) {
      CAPTURE(once);
      CHECK(runs.count(once) == 1);
    }
    for (const SolvedBuild& solved : sample.solved())
      for (const char* kind : {"/crimps", "/earths", "/tests", "/faults"}) CHECK(runs.count(solved.build.variant + kind) == 0);
    // Situations and fault charts differ with the hook-up's own currents; the bound is for all other pages.
    const auto others = std::count_if(folio.sheets.begin(), folio.sheets.end(), [](const Sheet& sheet) {
      return sheet.id.find("situations") == std::string::npos && sheet.id.find("faults") == std::string::npos;
    });
    CHECK(static_cast<std::size_t>(others) <= most);
  }
}

TEST_CASE("every wire and part of a hook-up stands once: on the common pages or on its own") {
  for (const char* name : {"electric-start-kit", "driving-lamp-kit"}) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    const Folio& folio = sample.composed().folio;
    for (const SolvedBuild& solved : sample.solved()) {
      const Build& build = solved.build;
      CAPTURE(build.variant);
      auto wires = anchors_on(folio, "", "wire "), parts = anchors_on(folio, "", "part ");
      for (const auto& [anchor, count] : anchors_on(folio, build.variant, "wire ")) wires[anchor] += count;
      for (const auto& [anchor, count] : anchors_on(folio, build.variant, "part ")) parts[anchor] += count;
      for (const Wire& wire : build.wires) CHECK_MESSAGE(wires[wire_anchor(wire)] == 1, wire.id);
      // What some hook-up works at stands on the page of all of them.
      const auto is_worked_somewhere = [&](const std::string& id) {
        return std::any_of(sample.solved().begin(), sample.solved().end(), [&](const SolvedBuild& other) {
          return std::any_of(other.build.parts.begin(), other.build.parts.end(),
                             [&](const Part& part) { return part.id == id && is_worked_at(other.build, part); });
        });
      };
      for (const Part& part : build.parts)
        CHECK_MESSAGE(parts[part_anchor(part)] == (is_worked_somewhere(part.id) ? 1 : 0), part.id);
    }
  }
}

TEST_CASE("diagrams of the hook-ups face each other, the first at the left, and say whose they are") {
  for (const char* name : {"electric-start-kit", "driving-lamp-kit"}) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    const Folio& folio = sample.composed().folio;
    const auto is_compared = [&](const Sheet& sheet) { return sheet.group == sample.words()("hook_up.compared"); };
    const auto begin = std::find_if(folio.sheets.begin(), folio.sheets.end(), is_compared);
    const auto end = std::find_if_not(begin, folio.sheets.end(), is_compared);
    CHECK(std::none_of(end, folio.sheets.end(), is_compared));
    CHECK((begin - folio.sheets.begin()) % 2 == 1);  // sheet 1 lies at the right, sheet 2 at the left
    std::vector<std::size_t> seen(sample.solved().size());
    std::vector<std::pair<std::size_t, std::size_t>> order;  // which sheet of its hook-up, which hook-up
    for (auto sheet = begin; sheet != end; ++sheet) {
      CAPTURE(sheet->id);
      const auto own = std::find_if(sample.solved().begin(), sample.solved().end(), [&](const SolvedBuild& solved) {
        return sheet->id.starts_with(solved.build.variant + "/");
      });
      REQUIRE(own != sample.solved().end());
      CHECK(says(*sheet, own->build.variant_label));
      const auto hook_up = static_cast<std::size_t>(own - sample.solved().begin());
      order.emplace_back(seen[hook_up]++, hook_up);
    }
    // The first sheet of each hook-up, then the second of each that has one.
    CHECK(std::is_sorted(order.begin(), order.end()));
    for (const std::size_t sheets : seen) CHECK(sheets >= 1);
  }
}

TEST_CASE("only what differs is marked: the same wire in all hook-ups is not, a wire of one is") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  const HookUps hook_ups = compare_hook_ups(sample.solved());
  REQUIRE(hook_ups.shared.size() == 4);
  for (std::size_t b = 0; b < 4; ++b) {
    const Build& build = sample.solved()[b].build;
    for (std::size_t w = 0; w < build.wires.size(); ++w) {
      const std::string& id = build.wires[w].id;
      // The base has C1 to C8 and 1 to 10; each hook-up numbers its own from 11.
      const bool is_base = id.front() == 'C' || std::stoi(id) <= 10;
      CHECK_MESSAGE(hook_ups.shared[b].wires[w] == is_base, build.variant << " " << id);
    }
  }
}

TEST_CASE("each hook-up is reached from the chooser, and its own steps from the common ones and back") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  const Folio& folio = sample.composed().folio;
  const auto links_from = [&](const std::string& run) {
    std::set<std::string> targets;
    for (const Sheet& sheet : folio.sheets)
      if (first_of_run(sheet.id) == run)
        for (const Item& item : sheet.items)
          if (const auto* link = std::get_if<LinkItem>(&item)) targets.insert(link->sheet);
    return targets;
  };
  const auto runs = runs_of(folio);
  const std::set<std::string> chosen = links_from("chooser"), out = links_from("steps");
  for (const SolvedBuild& solved : sample.solved()) {
    const std::string prefix = solved.build.variant + "/";
    CHECK(std::any_of(chosen.begin(), chosen.end(), [&](const std::string& id) { return id.starts_with(prefix); }));
    const std::string own = folio.sheets[runs.at(prefix + "steps")].id;
    CHECK(out.count(own) == 1);
    const std::set<std::string> back = links_from(prefix + "steps");
    CHECK(std::any_of(back.begin(), back.end(), [](const std::string& id) { return first_of_run(id) == "steps"; }));
  }
}

TEST_CASE("the common steps name the own step to go on with, and that step stands first in its part") {
  for (const char* name : {"electric-start-kit", "driving-lamp-kit"}) {
    const SampleFolio& sample = shared_sample(name);
    const auto texts_of = [&](const std::string& run) {
      std::vector<std::string> texts;
      for (const Sheet& sheet : sample.composed().folio.sheets)
        if (first_of_run(sheet.id) == run)
          for (const Item& item : sheet.items)
            if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(text->text);
      return texts;
    };
    const std::vector<std::string> common = texts_of("steps");
    int common_steps = 0;
    for (const std::string& text : common)
      if (text == std::to_string(common_steps + 1)) ++common_steps;
    CHECK(common_steps > 50);
    std::set<int> taken;
    for (std::size_t b = 0; b < sample.solved().size(); ++b) {
      const std::string letter = hook_up_letter(b);
      const std::vector<std::string> own = texts_of(sample.solved()[b].build.variant + "/steps");
      int last = 0, first = 0, first_of_second = 0;
      bool is_back = false;
      for (std::size_t i = 0; i + 1 < own.size(); ++i) {
        if (own[i] == sample.words()("steps.way_back_title")) is_back = true;
        const int found = own[i].size() == 3 ? std::atoi(own[i].c_str()) : 0;  // large figures of own steps alone
        if (found <= last || found != (last == 0 ? found / 100 * 100 + 1 : last + 1)) continue;
        last = found;
        if (first == 0) first = found;
        if (is_back && first_of_second == 0) first_of_second = found;
      }
      REQUIRE(first_of_second > first);
      CHECK(taken.insert(first / 100).second);
      CHECK(first > common_steps);
      for (const int number : {first, first_of_second}) {
        const std::string told = "from step " + std::to_string(number) + ", ";
        CHECK(std::count_if(common.begin(), common.end(), [&](const std::string& text) {
                return text.starts_with(letter + ": ") && text.find(told) != std::string::npos;
              }) == 1);
      }
    }
  }
}

TEST_CASE("a run that shares a page is found by its own name, and begins below what stands there") {
  bool is_any = false;
  for (const std::string& name : sample_names()) {
    const SampleFolio& sample = shared_sample(name);
    for (const Sheet& sheet : sample.composed().folio.sheets) {
      Millimetres last;
      for (const JoinedRun& run : sheet.joined) {
        is_any = true;
        CHECK(run.top > last);
        CHECK(run.top + Millimetres(50) < sheet.height);
        last = run.top;
      }
    }
  }
  CHECK(is_any);
}

TEST_CASE("a fuse that stops all says everything") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    REQUIRE(solved.study);
    bool is_main_found = false;
    for (const FuseStudy& study : solved.study->fuses) {
      const std::string text = stopped_text(solved, study, sample.words());
      const std::string& part = solved.build.part(study.fuse.part).id;
      if (part == "relay") {
        is_main_found = true;
        CHECK(text == sample.words()("fuses.everything"));
      } else {
        CHECK(text != sample.words()("fuses.everything"));
      }
    }
    CHECK(is_main_found);
  }
}

TEST_CASE("one hook-up asked for alone is whole, without letters and ways out") {
  const SampleFolio& sample = shared_sample("street-single");
  const auto runs = runs_of(sample.composed().folio);
  CHECK(runs.count("chooser") == 0);
  CHECK(runs.count("notes") == 0);
  for (const char* run : {"works", "terminals", "wires", "fuses", "crimps", "steps", "parts", "cuts", "labels"})
    CHECK_MESSAGE(runs.count(run) == 1, run);
}
