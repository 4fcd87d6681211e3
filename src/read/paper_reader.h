// SPDX-License-Identifier: MIT
// A paper size from its file, and the reading of any file of layouts/.
#pragma once

#include <optional>
#include <string>

#include "model/paper.h"
#include "read/read.h"
#include "read/toml_tree.h"

namespace loomfolio {

struct PlacedPaper {
  Paper paper;
  Origin origin;
};

PlacedPaper read_paper(const TomlValue& tree, Diagnostics& findings);

/// A file's tree; the text joins `sources`. Nothing, and a finding, when it cannot be read.
std::optional<TomlValue> read_toml_file(const std::string& path, const Files& files, Sources& sources,
                                        Diagnostics& findings);

}  // namespace loomfolio
