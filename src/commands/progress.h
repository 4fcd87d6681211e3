// SPDX-License-Identifier: MIT
// What a person sees while they wait.
#pragma once

#include <chrono>
#include <ostream>
#include <string_view>

#include "run.h"

namespace loomfolio {

/// Names the step under way on a terminal's error stream once the work has taken over a second, and wipes it at the end.
/// The clock decides only what is shown, never what is printed.
class Progress {
 public:
  explicit Progress(Surroundings& surroundings) : surroundings_(surroundings), start_(std::chrono::steady_clock::now()) {}
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress() { wipe(); }

  void step(std::string_view what) {
    if (!surroundings_.err_is_terminal || std::chrono::steady_clock::now() - start_ < std::chrono::seconds(1)) return;
    wipe();
    surroundings_.err << what << " ..." << std::flush;
    is_shown_ = true;
  }
  void wipe() {
    if (is_shown_) surroundings_.err << "\r\033[K" << std::flush;
    is_shown_ = false;
  }

 private:
  Surroundings& surroundings_;
  std::chrono::steady_clock::time_point start_;
  bool is_shown_ = false;
};

}  // namespace loomfolio
