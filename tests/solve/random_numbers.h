// SPDX-License-Identifier: MIT
// Numbers that look random and are the same everywhere: a 64-bit multiply-and-shift generator (splitmix), and plain arithmetic on it.
#pragma once

#include <cmath>
#include <cstdint>

namespace loomfolio::test {

class RandomNumbers {
 public:
  explicit RandomNumbers(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ull + 1) {}
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ull);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ull;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBull;
    return z ^ (z >> 31);
  }
  /// 0 .. below - 1.
  int below(int count) { return static_cast<int>(next() % static_cast<std::uint64_t>(count)); }
  /// In [0, 1).
  double share() { return static_cast<double>(next() >> 11) / 9007199254740992.0; }
  double between(double least, double most) { return least + (most - least) * share(); }
  /// Evenly spread in its logarithm.
  double spread(double least, double most) { return least * std::pow(most / least, share()); }

 private:
  std::uint64_t state_;
};

}  // namespace loomfolio::test
