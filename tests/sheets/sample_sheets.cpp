// SPDX-License-Identifier: MIT
#include "sheets/sample_sheets.h"

#include <fstream>
#include <map>
#include <memory>
#include <sstream>

#include "disk_files.h"
#include "sheets/fixed_face.h"

namespace loomfolio {
namespace {

const std::string source_folder = LOOMFOLIO_SOURCE_FOLDER;

std::string read_text_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

std::vector<std::string> sample_names() {
  std::vector<std::string> names;
  for (const std::string& file : DiskFiles().list(source_folder + "/samples"))
    if (file.ends_with(".toml")) names.push_back(file.substr(0, file.size() - 5));
  return names;
}

SampleFolio::SampleFolio(const std::string& name, const std::string& paper, const TextMeasure& measure) {
  const DiskFiles files;
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(source_folder + "/layouts", files, sources, findings);
  project_ = read_spec(name, read_text_file(source_folder + "/samples/" + name + ".toml"), library, sources, findings);
  if (has_errors(findings) || project_.builds.empty()) return;
  const Document& document = project_.builds.front().document;
  words_ = read_words(library, document.language, files, sources, findings);
  const auto papers = choose_papers(library.papers, paper.empty() ? document.paper : paper);
  if (!papers) return;
  papers_ = *papers;
  for (const Build& build : project_.builds) {
    solved_.push_back({build, solve_all(build)});
    complete_figures(solved_.back());
  }
  composed_ = compose_with_report(input(measure));
}

FolioInput SampleFolio::input(const TextMeasure& measure) const {
  FolioInput input{project_, solved_, words_, papers_.text, papers_.drawing, measure};
  if (papers_.larger) input.larger_paper = &*papers_.larger;
  return input;
}

const SampleFolio& shared_sample(const std::string& name) {
  static std::map<std::string, std::unique_ptr<SampleFolio>> samples;
  std::unique_ptr<SampleFolio>& sample = samples[name];
  if (!sample) sample = std::make_unique<SampleFolio>(name, "", fixed_face);
  return *sample;
}

const FaultPlan& shared_plan(const SolvedBuild& solved) {
  static std::map<const Build*, FaultPlan> plans;
  const auto [place, is_new] = plans.try_emplace(&solved.build);
  if (is_new) place->second = plan_faults(solved.build, solved.solutions);
  return place->second;
}

}  // namespace loomfolio
