// SPDX-License-Identifier: MIT
#include "render/faces.h"

#include <algorithm>
#include <filesystem>
#include <optional>

#include "base/text.h"

namespace loomfolio {
namespace fs = std::filesystem;
namespace {

/// `key = "words"` with an optional comment; nothing else is a setting.
std::optional<std::pair<std::string, std::string>> parse_setting(const std::string& line) {
  const auto equals = line.find('=');
  if (equals == std::string::npos) return std::nullopt;
  const auto open = line.find('"', equals);
  const auto close = open == std::string::npos ? open : line.find('"', open + 1);
  if (close == std::string::npos || !trimmed(line.substr(equals + 1, open - equals - 1)).empty()) return std::nullopt;
  const std::string rest = trimmed(line.substr(close + 1));
  if (!rest.empty() && rest[0] != '#') return std::nullopt;
  return std::pair{trimmed(line.substr(0, equals)), line.substr(open + 1, close - open - 1)};
}

bool set_value(TypeFace& face, const std::string& key, const std::string& value) {
  if (key == "family")
    face.family = value;
  else if (key == "file")
    face.file = value;
  else if (key == "folder")
    face.folder = value;
  else if (key == "package")
    face.package = value;
  else if (key == "use") {
    if (value != "sans" && value != "mono" && value != "fallback") return false;
    face.use = value == "sans" ? FaceUse::sans : value == "mono" ? FaceUse::mono : FaceUse::fallback;
  }
  return true;
}

/// The file by its name anywhere under `root`, the first in alphabetical order; empty when nowhere.
std::string search_below(const std::string& root, const std::string& name) {
  std::vector<std::string> found;
  std::error_code error;
  for (fs::recursive_directory_iterator at(root, fs::directory_options::skip_permission_denied, error), end;
       !error && at != end; at.increment(error))
    if (at->path().filename() == name) found.push_back(at->path().string());
  return found.empty() ? std::string() : *std::min_element(found.begin(), found.end());
}

std::string find_file(const TypeFace& face, const std::vector<std::string>& roots) {
  std::error_code error;
  for (const std::string& root : roots)
    for (const fs::path& path : {fs::path(root) / face.file, fs::path(root) / face.folder / face.file})
      if (fs::is_regular_file(path, error)) return path.string();
  for (const std::string& root : roots)
    if (std::string path = search_below(root, face.file); !path.empty()) return path;
  return {};
}

}  // namespace

FaceList parse_faces(const std::string& text) {
  FaceList list;
  int number = 0;
  for (const std::string& raw : split(text, '\n')) {
    ++number;
    const std::string line = trimmed(raw);
    if (line.empty() || line[0] == '#') continue;
    if (line == "[[face]]") {
      list.faces.emplace_back();
      continue;
    }
    const auto setting = parse_setting(line);
    if (!setting || list.faces.empty() || !set_value(list.faces.back(), setting->first, setting->second)) {
      list.error = "faces.toml:" + std::to_string(number) + ": `" + line + "` is not a setting of a face";
      return list;
    }
  }
  for (const TypeFace& face : list.faces)
    if (face.family.empty() || face.file.empty() || face.package.empty())
      list.error = "faces.toml: a face needs family, file and package; `" + face.family + face.file + "` lacks one";
  if (list.faces.empty()) list.error = "faces.toml: names no face";
  return list;
}

std::vector<std::string> face_roots(const std::string& fonts_folder) {
  return {fonts_folder + "/faces", "/usr/share/fonts", "/usr/local/share/fonts"};
}

void find_face_files(FaceList& list, const std::vector<std::string>& roots) {
  std::vector<std::string> missing;
  for (TypeFace& face : list.faces) {
    face.path = find_file(face, roots);
    if (face.path.empty()) missing.push_back("`" + face.file + "` (package " + face.package + ")");
  }
  if (!missing.empty()) list.error = "faces not found: " + join(missing, ", ");
}

}  // namespace loomfolio
