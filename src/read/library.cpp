// SPDX-License-Identifier: MIT
// The layouts/ folder: one file a kind, one a paper, one a language.
#include <algorithm>

#include "read/kind_reader.h"
#include "read/paper_reader.h"
#include "read/read.h"

namespace loomfolio {
namespace {

/// Names of a folder's .toml files, without the ending.
std::vector<std::string> list_toml(const std::string& folder, const Files& files) {
  std::vector<std::string> names;
  for (const std::string& name : files.list(folder))
    if (name.ends_with(".toml")) names.push_back(name.substr(0, name.size() - 5));
  std::sort(names.begin(), names.end());
  return names;
}

/// An id must be the name of its file, so that a reader finds it.
void check_file_name(const std::string& id, const std::string& name, const Origin& origin, Diagnostics& findings) {
  if (id.empty() || id == name) return;
  add_finding(findings, make_diagnostic(DiagnosticId::id_is_not_file_name, origin.key("id"),
                                        "`id` is `" + id + "`; the file is called `" + name + ".toml`"));
}

}  // namespace

std::optional<TomlValue> read_toml_file(const std::string& path, const Files& files, Sources& sources,
                                        Diagnostics& findings) {
  std::string why;
  std::optional<std::string> text = files.read(path, why);
  if (!text) {
    add_finding(findings, make_diagnostic(DiagnosticId::file_unreadable, {}, "`" + path + "` cannot be read: " + why));
    return std::nullopt;
  }
  const auto file = static_cast<std::int32_t>(sources.files.size());
  sources.files.push_back({path, std::move(*text)});
  return parse_toml(sources, file, findings);
}

Library read_library(const std::string& layouts_folder, const Files& files, Sources& sources,
                     Diagnostics& diagnostics) {
  Library library;
  library.folder = layouts_folder;
  for (const std::string& name : list_toml(layouts_folder + "/parts", files)) {
    const auto tree = read_toml_file(layouts_folder + "/parts/" + name + ".toml", files, sources, diagnostics);
    if (!tree) continue;
    library.kinds.push_back(read_kind(*tree, "the kind", diagnostics));
    check_file_name(library.kinds.back().id, name, library.kinds.back().origin, diagnostics);
  }
  for (const std::string& name : list_toml(layouts_folder + "/papers", files)) {
    const auto tree = read_toml_file(layouts_folder + "/papers/" + name + ".toml", files, sources, diagnostics);
    if (!tree) continue;
    const PlacedPaper paper = read_paper(*tree, diagnostics);
    check_file_name(paper.paper.id, name, paper.origin, diagnostics);
    library.papers.push_back(paper.paper);
  }
  library.languages = list_toml(layouts_folder + "/words", files);
  if (library.kinds.empty() && library.papers.empty() && library.languages.empty() && diagnostics.empty())
    add_finding(diagnostics, make_diagnostic(DiagnosticId::file_unreadable, {},
                                             "folder " + quoted(layouts_folder) + " holds no parts, papers or words"));
  std::sort(library.kinds.begin(), library.kinds.end(), [](const Kind& a, const Kind& b) { return a.id < b.id; });
  return library;
}

}  // namespace loomfolio
