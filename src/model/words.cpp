// SPDX-License-Identifier: MIT
#include "model/words.h"

#include "base/text.h"

namespace loomfolio {

std::string Words::operator()(std::string_view key, const std::vector<std::pair<std::string, std::string>>& values) const {
  const auto found = texts_.find(key);
  if (found == texts_.end()) return "<" + std::string(key) + ">";
  return fill(found->second, values);
}

}  // namespace loomfolio
