// SPDX-License-Identifier: MIT
// The list of faces in fonts/faces.toml, and where their files are on this machine.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace loomfolio {

enum class FaceUse : std::uint8_t { sans, mono, fallback };

struct TypeFace {
  std::string family, file, folder, package;
  FaceUse use = FaceUse::fallback;
  std::string path;  ///< set by find_face_files
};

struct FaceList {
  std::vector<TypeFace> faces;  ///< in the order of the file, which is the order of fallback
  std::string error;            ///< why the list could not be read, or which faces are nowhere; empty: all is well
};

/// Reads blocks of `key = "words"` under `[[face]]`; unknown keys are for people and are skipped.
FaceList parse_faces(const std::string& text);

/// Folders that hold faces on this machine, searched in this order: `fonts_folder`/faces first.
std::vector<std::string> face_roots(const std::string& fonts_folder);

/// Fills in the paths; faces that are nowhere go into `error`, each with the package that has it.
void find_face_files(FaceList& list, const std::vector<std::string>& roots);

}  // namespace loomfolio
