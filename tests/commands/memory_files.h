// SPDX-License-Identifier: MIT
// Files held in memory, over the project's own layouts/ and fonts/ on the disk.
#pragma once

#include <map>
#include <sstream>

#include "disk_files.h"
#include "run.h"

namespace loomfolio {

class MemoryFiles final : public WritableFiles {
 public:
  std::map<std::string, std::string> held;
  bool is_read_only = false;

  std::optional<std::string> read(const std::string& path, std::string& why) const override {
    const auto found = held.find(path);
    return found != held.end() ? std::optional(found->second) : disk_.read(path, why);
  }
  std::vector<std::string> list(const std::string& folder) const override { return disk_.list(folder); }
  bool write(const std::string& path, const std::string& content, std::string& why) override {
    if (is_read_only) why = "the medium is read-only";
    else held[path] = content;
    return !is_read_only;
  }

 private:
  DiskFiles disk_;
};

/// One run of the whole program on files in memory.
struct Ran {
  int code = -1;
  std::string out, err;
};

inline Ran run_with(MemoryFiles& files, const std::vector<std::string>& arguments, const std::string& input = {}) {
  std::istringstream in(input);
  std::ostringstream out, err;
  Surroundings surroundings{files, in, out, err, LOOMFOLIO_SOURCE_FOLDER, false, false};
  Ran ran;
  ran.code = run(arguments, surroundings);
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

/// A battery, a fuse, a switch and a lamp.
std::string small_spec();

}  // namespace loomfolio
