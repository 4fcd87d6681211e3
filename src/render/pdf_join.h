// SPDX-License-Identifier: MIT
// A folio of many sheets is drawn in parts side by side; here they become one PDF.
#pragma once

#include <cstddef>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

class QPDF;

namespace loomfolio {

/// `drawn` as objects, all of them read; it must live as long. Nothing when qpdf cannot read it.
std::shared_ptr<QPDF> read_part(const std::string& drawn);

/// Puts the pages and the structure of parts into the first of them, in their order, whoever is done first.
class PartJoiner {
 public:
  explicit PartJoiner(std::size_t count) : parts_(count) {}
  /// Part number `p`, once, null when it failed; several threads may bring parts. It is joined as soon as all before it are: by the thread
  /// that brings it, or by one that is joining already; nobody waits.
  void bring(std::size_t p, std::shared_ptr<QPDF> part);
  /// All parts in one, when all were brought and none failed; else null. The parts must live until it is written.
  QPDF* whole() const { return joined_ == parts_.size() ? parts_.front().get() : nullptr; }
  const std::vector<std::shared_ptr<QPDF>>& parts() const { return parts_; }

 private:
  std::mutex asking_;
  bool is_joining_ = false;  ///< a thread is; what else stands here is asked for under `asking_`
  std::vector<std::shared_ptr<QPDF>> parts_;
  std::size_t joined_ = 0;  ///< so many from the first
};

}  // namespace loomfolio
