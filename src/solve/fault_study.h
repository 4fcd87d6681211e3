// SPDX-License-Identifier: MIT
// A fault book as a person meets it: a fuse that blew when the trouble was first seen stays blown.
#pragma once

#include <map>
#include <memory>
#include <tuple>
#include <vector>

#include "solve/fault_bench.h"
#include "solve/faults.h"

namespace loomfolio {

class FaultStudy {
 public:
  /// All must outlive the study.
  FaultStudy(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book);

  const Build& build() const { return build_; }
  const std::vector<Solution>& solutions() const { return solutions_; }
  const FaultBook& book() const { return book_; }

  /// What the fault does in situation `s`, after situation `first` blew what it blows there.
  const FaultEffect& effect(std::size_t fault, std::size_t s, std::size_t first);
  Expected seen(std::size_t fault, std::size_t s, std::size_t first, InsideRef what);
  /// A short in that situation that no fuse ends: the chafed place carries 40 A or more for good (from memory: beyond
  /// what any fuse of such a loom lets pass). It burns; no lamp is merely weak.
  bool burns(std::size_t fault, std::size_t s) const;
  /// What makes the spark gets nothing any more, so that the engine cannot run.
  bool stops_engine(std::size_t fault, std::size_t s, std::size_t first);

 private:
  const Build& build_;
  const std::vector<Solution>& solutions_;
  const FaultBook& book_;
  std::vector<Amperes> worst_;
  std::vector<std::unique_ptr<FaultBench>> benches_;  // by situation, made when first asked
  std::map<std::tuple<int, std::size_t, std::vector<InsideRef>>, FaultEffect> after_;
};

}  // namespace loomfolio
