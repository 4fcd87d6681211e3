// SPDX-License-Identifier: MIT
// The whole program as one function.
#pragma once

#include <functional>
#include <iosfwd>
#include <string>
#include <vector>

#include "base/leftovers.h"
#include "read/read.h"

namespace loomfolio {

/// Files that can also be written. Writing is whole or not at all: a failed write leaves the old file as it was.
class WritableFiles : public Files {
 public:
  /// False when it could not be written; `why` then says so.
  virtual bool write(const std::string& path, const std::string& content, std::string& why) = 0;
};

struct Surroundings {
  WritableFiles& files;
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
  std::string share_folder;       ///< holds layouts/ and fonts/
  bool out_is_terminal = false;
  bool err_is_terminal = false;   ///< colour and progress only then
  std::function<bool()> wait = {};  ///< watch: some tenths of a second; false ends the watching. Not set: it looks once
  Leftovers leftovers = {};       ///< of the commands that were run
};

/// Exit code: 0 clean, 1 findings of error, 2 could not run.
int run(const std::vector<std::string>& arguments, Surroundings& surroundings);

}  // namespace loomfolio
