// SPDX-License-Identifier: MIT
// The library and the samples as they are shipped, read from the source folder.
#pragma once

#include <string>

#include "diag/diagnostic.h"
#include "disk_files.h"
#include "read/read.h"

namespace loomfolio::test {

struct Shipped {
  Sources sources;
  Diagnostics findings;  ///< of reading the library
  Library library;
};

inline const std::string source_folder = LOOMFOLIO_SOURCE_FOLDER;

inline const Shipped& shipped() {
  static const Shipped loaded = [] {
    Shipped s;
    s.library = read_library(source_folder + "/layouts", DiskFiles(), s.sources, s.findings);
    return s;
  }();
  return loaded;
}

}  // namespace loomfolio::test
