// SPDX-License-Identifier: MIT
#include "disk_files.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <unistd.h>

namespace loomfolio {
namespace fs = std::filesystem;

std::optional<std::string> DiskFiles::read(const std::string& path, std::string& why) const {
  std::error_code error;
  if (fs::is_directory(path, error)) { why = "is a folder"; return std::nullopt; }
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) { why = errno ? std::strerror(errno) : "cannot be opened"; return std::nullopt; }
  std::string content((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
  if (file.bad()) { why = "cannot be read to its end"; return std::nullopt; }
  return content;
}

std::vector<std::string> DiskFiles::list(const std::string& folder) const {
  std::vector<std::string> names;
  std::error_code error;
  for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
    names.push_back(at->path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

bool DiskFiles::write(const std::string& path, const std::string& content, std::string& why) {
  // A link is written through, so that the file it names changes and the link stays.
  std::error_code error;
  fs::path target = path;
  if (fs::is_symlink(target, error)) target = fs::weakly_canonical(target, error);
  if (fs::is_directory(target, error)) { why = "is a folder"; return false; }
  const bool is_plain = !fs::exists(target, error) || fs::is_regular_file(target, error);
  const fs::path beside = is_plain ? fs::path(target.string() + ".new-" + std::to_string(getpid())) : target;
  {
    errno = 0;
    std::ofstream file(beside, std::ios::binary | std::ios::trunc);
    if (file) file.write(content.data(), static_cast<std::streamsize>(content.size()));
    if (file) file.flush();
    if (!file) {
      why = errno ? std::strerror(errno) : "cannot be written";
      file.close();
      if (is_plain) fs::remove(beside, error);
      return false;
    }
  }
  if (!is_plain) return true;
  const auto old = fs::status(target, error);
  if (fs::exists(old)) fs::permissions(beside, old.permissions(), error);
  fs::rename(beside, target, error);
  if (error) { why = error.message(); fs::remove(beside, error); return false; }
  return true;
}

}  // namespace loomfolio
