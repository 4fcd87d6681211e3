// SPDX-License-Identifier: MIT
// Opens files, calls run(), sets the exit code.
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <thread>

#include <unistd.h>

#include "disk_files.h"

namespace {

/// The folder that holds layouts/ and fonts/: beside the installed program, else this source tree.
std::string find_share_folder() {
  namespace fs = std::filesystem;
  if (const char* given = std::getenv("LOOMFOLIO_SHARE")) return given;
  std::error_code error;
  const fs::path self = fs::read_symlink("/proc/self/exe", error);
  for (const fs::path& folder : {self.parent_path().parent_path() / "share" / "loomfolio", fs::path(LOOMFOLIO_SOURCE_FOLDER)})
    if (fs::is_directory(folder / "layouts", error)) return folder.string();
  return self.parent_path().string();
}

}  // namespace

int main(int count, char** values) {
  loomfolio::DiskFiles files;
  loomfolio::Surroundings surroundings{files, std::cin, std::cout, std::cerr, find_share_folder(),
                                       isatty(STDOUT_FILENO) == 1, isatty(STDERR_FILENO) == 1, [] {
                                         std::this_thread::sleep_for(std::chrono::milliseconds(300));
                                         return true;
                                       }};
  const int code = loomfolio::run({values + 1, values + count}, surroundings);
  std::cout.flush();
  std::cerr.flush();
  std::_Exit(code);  // what is left over goes with the process, which is quicker than object by object
}
