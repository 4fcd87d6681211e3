// SPDX-License-Identifier: MIT
// A sample of samples/ read, solved and composed with a face of fixed widths.
#pragma once

#include <string>
#include <vector>

#include "read/read.h"
#include "sheets/fault_plan.h"
#include "sheets/folio.h"

namespace loomfolio {

/// Names of all specs in samples/, sorted: "street-single".
std::vector<std::string> sample_names();

/// Reads, solves and composes; `paper` empty: the document's own. A sample that cannot be read gives an empty folio.
class SampleFolio {
 public:
  SampleFolio(const std::string& name, const std::string& paper, const TextMeasure& measure);
  const Composed& composed() const { return composed_; }
  const PaperPair& papers() const { return papers_; }
  const Words& words() const { return words_; }
  /// The builds with their solutions and wire loads.
  const std::vector<SolvedBuild>& solved() const { return solved_; }
  FolioInput input(const TextMeasure& measure) const;

 private:
  Project project_;
  Words words_;
  PaperPair papers_;
  std::vector<SolvedBuild> solved_;
  Composed composed_;
};

/// The sample on its own paper, with a face of fixed widths; composed once a test program.
const SampleFolio& shared_sample(const std::string& name);

/// The fault plan of a build of a shared sample; made once a test program.
const FaultPlan& shared_plan(const SolvedBuild& solved);

}  // namespace loomfolio
