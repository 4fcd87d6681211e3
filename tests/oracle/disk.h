// SPDX-License-Identifier: MIT
// The project's own samples and layouts, read from the source folder.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "read/read.h"

namespace loomfolio::test {

class SourceFolder final : public Files {
 public:
  std::optional<std::string> read(const std::string& path, std::string& why) const override {
    std::ifstream file(path, std::ios::binary);
    if (!file) {
      why = "cannot be opened";
      return std::nullopt;
    }
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
  }
  std::vector<std::string> list(const std::string& folder) const override {
    std::vector<std::string> names;
    std::error_code ignored;
    for (const auto& entry : std::filesystem::directory_iterator(folder, ignored)) names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
  }
};

struct Sample {
  std::string name;
  Project project;
};

/// All of a folder; `diagnostics` gets what reading found.
inline std::vector<Sample> read_specs(const std::string& folder, Diagnostics& diagnostics) {
  const std::string root = LOOMFOLIO_SOURCE_FOLDER;
  const SourceFolder files;
  Sources sources;
  const Library library = read_library(root + "/layouts", files, sources, diagnostics);
  std::vector<Sample> samples;
  for (const std::string& name : files.list(root + "/" + folder)) {
    if (!name.ends_with(".toml")) continue;
    std::string why;
    const auto text = files.read(root + "/" + folder + "/" + name, why);
    if (text) samples.push_back({name, read_spec(name, *text, library, sources, diagnostics)});
  }
  return samples;
}

inline std::vector<Sample> read_samples(Diagnostics& diagnostics) { return read_specs("samples", diagnostics); }

}  // namespace loomfolio::test
