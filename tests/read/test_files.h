// SPDX-License-Identifier: MIT
// Files for tests of reading: those held in memory, over those of a folder on disk.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "read/read.h"

namespace loomfolio {

class TestFiles final : public Files {
 public:
  std::map<std::string, std::string> in_memory;
  std::map<std::string, std::string> unreadable;  ///< path and reason

  std::optional<std::string> read(const std::string& path, std::string& why) const override {
    if (const auto found = unreadable.find(path); found != unreadable.end()) {
      why = found->second;
      return std::nullopt;
    }
    if (const auto found = in_memory.find(path); found != in_memory.end()) return found->second;
    std::ifstream file(path, std::ios::binary);
    if (!file) {
      why = "no such file";
      return std::nullopt;
    }
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
  }

  std::vector<std::string> list(const std::string& folder) const override {
    std::vector<std::string> names;
    for (const auto& [path, text] : in_memory)
      if (path.starts_with(folder + "/") && path.find('/', folder.size() + 1) == std::string::npos)
        names.push_back(path.substr(folder.size() + 1));
    std::error_code error;
    for (const auto& entry : std::filesystem::directory_iterator(folder, error))
      names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    names.erase(std::unique(names.begin(), names.end()), names.end());
    return names;
  }
};

}  // namespace loomfolio
