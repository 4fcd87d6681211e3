// SPDX-License-Identifier: MIT
// TOML text and the library of layouts/ in; builds and findings out. No exception leaves this room.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "diag/diagnostic.h"
#include "model/build.h"
#include "model/paper.h"
#include "model/words.h"

namespace loomfolio {

/// Where files come from: the disk, or memory in tests.
class Files {
 public:
  virtual ~Files() = default;
  /// The content, or nothing when it cannot be read; `why` then says so.
  virtual std::optional<std::string> read(const std::string& path, std::string& why) const = 0;
  /// Names in a folder, sorted; empty when there is none.
  virtual std::vector<std::string> list(const std::string& folder) const = 0;
};

/// The part kinds, papers and languages of a layouts/ folder.
struct Library {
  std::vector<Kind> kinds;  ///< sorted by id
  std::vector<Paper> papers;
  std::vector<std::string> languages;
  std::string folder;
};

/// Reads layouts/parts and layouts/papers. Findings point into the files, which are added to `sources`.
Library read_library(const std::string& layouts_folder, const Files& files, Sources& sources, Diagnostics& diagnostics);

/// Words of a language, with English under whatever it lacks.
Words read_words(const Library& library, const std::string& language, const Files& files, Sources& sources,
                 Diagnostics& diagnostics);

/// One spec, all variants. `name` is for messages. Returns as much as could be understood; has_errors(diagnostics)
/// tells whether it may be used.
Project read_spec(const std::string& name, const std::string& text, const Library& library, Sources& sources,
                  Diagnostics& diagnostics);

}  // namespace loomfolio
