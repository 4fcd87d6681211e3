// SPDX-License-Identifier: MIT
// Files on the disk.
#pragma once

#include "run.h"

namespace loomfolio {

class DiskFiles final : public WritableFiles {
 public:
  std::optional<std::string> read(const std::string& path, std::string& why) const override;
  std::vector<std::string> list(const std::string& folder) const override;
  /// Writes beside the target and renames over it.
  bool write(const std::string& path, const std::string& content, std::string& why) override;
};

}  // namespace loomfolio
