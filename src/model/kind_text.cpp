// SPDX-License-Identifier: MIT
#include "model/kind_text.h"

namespace loomfolio {

std::string translate_kind_text(const std::string& english, const Words& words) {
  const std::string key = "kind_text." + english;
  return words.has(key) ? words(key) : english;
}

}  // namespace loomfolio
