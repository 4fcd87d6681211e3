// SPDX-License-Identifier: MIT
// Figures and sentences of how wire ends are made.
#include "sheets/fitting_steps.h"

#include <doctest/doctest.h>

#include <array>
#include <sstream>

#include "sheets/fitting_uses.h"
#include "sheets/pull_force.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

constexpr std::array shapes{FittingShape::blade,   FittingShape::ring,   FittingShape::sealed,
                            FittingShape::contact, FittingShape::bullet, FittingShape::splice,
                            FittingShape::lead,    FittingShape::bare,   FittingShape::cap};

int count_words(const std::string& text) {
  std::istringstream in(text);
  std::string word;
  int count = 0;
  while (in >> word) ++count;
  return count;
}

std::size_t place_of(FittingShape shape, const std::string& key) {
  const std::vector<FittingStep>& steps = fitting_procedure(shape).steps;
  for (std::size_t i = 0; i < steps.size(); ++i)
    if (steps[i].key == key) return i;
  return steps.size();
}

std::string all_texts(const Folio& folio, const std::string& run) {
  std::string text;
  for (const Sheet& sheet : folio.sheets)
    if (sheet.id.starts_with(run))
      for (const Item& item : sheet.items)
        if (const auto* shown = std::get_if<TextItem>(&item)) text += shown->text + "\n";
  return text;
}

}  // namespace

TEST_CASE("every step of every fitting has a figure inside its frame and a short sentence") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  Wire wire;
  wire.colour = {"RD", "WH"};
  wire.area = SquareMillimetres(1.5);
  const FittingFacts facts{wire, 6, "6 mm (0.24 in)", "71 N, 7 kg", "click"};
  const Millimetres width(54.6), height = step_figure_height;
  for (const FittingShape shape : shapes) {
    CHECK_FALSE(fitting_procedure(shape).steps.empty());
    for (const FittingStep& step : fitting_procedure(shape).steps) {
      CAPTURE(step.key);
      REQUIRE(sample.words().has("crimps.step_" + step.key));
      const std::string sentence =
          sample.words()("crimps.step_" + step.key, {{"strip", facts.strip_text}, {"tug", facts.tug_text}});
      CHECK(count_words(sentence) <= 24);  // two sentences at most; none of over 20 words is in the file
      FittingSketch sketch(width, height, step_scale, wire);
      step.draw(sketch, facts);
      const Block block = sketch.take();
      CHECK(block.items.size() >= 2);
      for (const Item& item : block.items)
        if (const auto* box = std::get_if<RectItem>(&item)) {
          CHECK(box->rect.x.number() >= -0.01);
          CHECK(box->rect.right() <= width);
          CHECK(box->rect.y.number() >= 0);
          CHECK(box->rect.bottom() <= height);
        }
    }
  }
}

TEST_CASE("good and bad ones are drawn inside their figures, each bad one another picture than the good one") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  Wire wire, other;
  wire.colour = {"BK", {}};
  other.colour = {"RD", "WH"};
  wire.area = other.area = SquareMillimetres(1);
  const Millimetres width(48.6), height = verdict_figure_height;
  const auto draw = [&](const FittingExample& example, double scale) {
    FittingSketch sketch(width, height, scale, wire);
    sketch.set_splice({{&wire}, {&wire, &other}});
    example.draw(sketch);
    return sketch.take();
  };
  for (const FittingShape shape : shapes) {
    const FittingProcedure& procedure = fitting_procedure(shape);
    std::vector<FittingExample> all = procedure.examples;
    all.insert(all.end(), procedure.shared_examples.begin(), procedure.shared_examples.end());
    for (const FittingExample& example : all) {
      CAPTURE(example.key);
      REQUIRE(sample.words().has("crimps." + example.key));
      CHECK(sample.words()("crimps." + example.key).starts_with('*'));  // what it is called
      for (const Item& item : draw(example, procedure.example_scale).items)
        if (const auto* box = std::get_if<RectItem>(&item)) {
          CHECK(box->rect.x.number() >= -0.01);
          CHECK(box->rect.right() <= width);
          CHECK(box->rect.y.number() >= 0);
          CHECK(box->rect.bottom() <= height);
        }
    }
  }
}

TEST_CASE("wires that share a fitting are told and drawn on its page, once for all hook-ups") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  std::vector<const Build*> builds;
  for (const SolvedBuild& solved : sample.solved()) builds.push_back(&solved.build);
  std::vector<std::string> places;
  for (const auto& [shape, uses] : find_fitting_uses(builds, sample.words()))
    for (const FittingUse& use : uses)
      for (const SharedFitting& shared : use.shared) {
        CHECK(shared.wires.size() >= 2);
        CHECK_FALSE(fitting_procedure(shape).shared.empty());
        places.push_back(shared.place);
      }
  REQUIRE_FALSE(places.empty());
  const std::string text = all_texts(sample.composed().folio, "crimps");
  for (const std::string& place : places) {
    CAPTURE(place);
    CHECK(text.find(place.substr(0, place.find(' '))) != std::string::npos);
  }
  CHECK(text.find(sample.words()("crimps.step_shared_strip").substr(0, 12)) != std::string::npos);
}

TEST_CASE(
    "a sealed contact: lock out first, seal before strip, conductor wings before seal wings, lock back at the end") {
  const auto at = [](const char* key) { return place_of(FittingShape::sealed, key); };
  CHECK(at("lock_out") == 0);
  CHECK(at("seal_on") < at("strip"));
  CHECK(at("strip") < at("conductor"));
  CHECK(at("conductor") < at("seal_wings"));
  CHECK(at("seal_wings") < at("way_up"));
  CHECK(at("way_up") < at("push"));
  CHECK(at("push") < at("tug"));
  CHECK(at("tug") < at("lock_back"));
  CHECK(at("lock_back") < at("plug"));
  CHECK(at("plug") + 1 == fitting_procedure(FittingShape::sealed).steps.size());
}

TEST_CASE("good and bad stand side by side where there is a crimp") {
  for (const FittingShape shape : {FittingShape::blade, FittingShape::contact, FittingShape::sealed, FittingShape::ring,
                                   FittingShape::bullet, FittingShape::splice}) {
    int good = 0, bad = 0;
    for (const FittingExample& example : fitting_procedure(shape).examples) ++(example.verdict == Verdict::good ? good : bad);
    CHECK(good == 1);
    CHECK(bad >= 2);
  }
}

TEST_CASE("strip lengths of the page are those of the terminals, in mm and inches of one number") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const std::string text = all_texts(sample.composed().folio, "crimps");
  std::vector<const Build*> builds;
  for (const SolvedBuild& solved : sample.solved()) builds.push_back(&solved.build);
  int checked = 0;
  for (const auto& [shape, uses] : find_fitting_uses(builds, sample.words()))
    for (const FittingUse& use : uses) {
      if (!use.strip) continue;
      std::ostringstream inch;
      inch.precision(2);
      inch << std::fixed << use.strip->number() / 25.4;
      CAPTURE(use.name);
      CHECK(text.find(inch.str()) != std::string::npos);
      ++checked;
    }
  CHECK(checked >= 2);
}

TEST_CASE("an end that two hook-ups share counts once, and one of the machine's own not at all") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  std::vector<const Build*> both, first{&sample.solved().front().build};
  for (const SolvedBuild& solved : sample.solved()) both.push_back(&solved.build);
  const auto count = [&](const std::vector<const Build*>& builds) {
    std::size_t ends = 0;
    for (const auto& [shape, uses] : find_fitting_uses(builds, sample.words()))
      for (const FittingUse& use : uses)
        for (const auto& [size, wires] : use.wires) ends += wires.size();
    return ends;
  };
  std::size_t kit_wires = 0;
  for (const Wire& wire : first.front()->wires)
    if (wire.provided == Provider::kit) ++kit_wires;
  CHECK(count(first) == kit_wires * 2);
  // The second hook-up has wires 14 and 15 of its own; all else is shared. Wire 14 of the first has other ends.
  CHECK(count(both) == kit_wires * 2 + 4);
}

TEST_CASE("a splice is drawn with the wires that it joins, at most three a side, none above another") {
  Wire wire;
  wire.colour = {"RD", "WH"};
  const auto drawn = [&](std::size_t count) {
    FittingSketch sketch(Millimetres(54.6), step_figure_height, step_scale, wire);
    sketch.set_splice({std::vector<const Wire*>(count, &wire), {&wire}});
    sketch.splice_side(Side::left, 0, 9, 14);
    return std::pair(sketch.splice_half(), sketch.take().items.size());
  };
  const auto [one_half, one] = drawn(1);
  const auto [two_half, two] = drawn(2);
  const auto [three_half, three] = drawn(3);
  CHECK(two == one * 2);
  CHECK(three == one * 3);
  CHECK(drawn(5).second == three);
  CHECK(one_half < two_half);
  CHECK(two_half < three_half);
}
