// SPDX-License-Identifier: MIT
#include "base/side_by_side.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>
#include <vector>

namespace loomfolio {

void work_side_by_side(std::size_t count, const std::function<void(std::size_t)>& work) {
  std::atomic<std::size_t> next = 0;
  std::vector<std::exception_ptr> thrown(count);
  const auto work_on = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        thrown[i] = std::current_exception();
      }
    }
  };
  {
    const std::size_t most = std::max(1u, std::thread::hardware_concurrency());
    std::vector<std::jthread> others;
    for (std::size_t t = 1; t < std::min(most, count); ++t) others.emplace_back(work_on);
    work_on();
  }
  for (const std::exception_ptr& one : thrown)
    if (one) std::rethrow_exception(one);
}

}  // namespace loomfolio
