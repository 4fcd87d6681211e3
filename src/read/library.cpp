// SPDX-License-Identifier: MIT
// The layouts/ folder: one file a kind, one a paper, one a language. Files are opened in turn, so that sources and
// findings stand in their order, and read side by side.
#include <algorithm>

#include "base/side_by_side.h"
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

const std::string& stated_id(const Kind& kind) { return kind.id; }
const std::string& stated_id(const PlacedPaper& placed) { return placed.paper.id; }

Kind read_library_kind(const TomlValue& tree, Diagnostics& findings) { return read_kind(tree, "the kind", findings); }

/// The file's place in `sources`, which its text joins; nothing, and a finding, when it cannot be read.
std::optional<std::int32_t> open_file(const std::string& path, const Files& files, Sources& sources,
                                      Diagnostics& findings) {
  std::string why;
  std::optional<std::string> text = files.read(path, why);
  if (!text) {
    add_finding(findings, make_diagnostic(DiagnosticId::file_unreadable, {}, "`" + path + "` cannot be read: " + why));
    return std::nullopt;
  }
  const auto file = static_cast<std::int32_t>(sources.files.size());
  sources.files.push_back({path, std::move(*text)});
  return file;
}

/// Every .toml file of a folder through `read`, from its tree to an item with an id; what cannot be read is left out.
template <class Item>
std::vector<Item> read_folder(const std::string& folder, const Files& files, Sources& sources, Diagnostics& diagnostics,
                              Item (*read)(const TomlValue&, Diagnostics&)) {
  const std::vector<std::string> names = list_toml(folder, files);
  std::vector<std::optional<std::int32_t>> opened;
  std::vector<Diagnostics> findings(names.size());
  for (std::size_t i = 0; i < names.size(); ++i)
    opened.push_back(open_file(folder + "/" + names[i] + ".toml", files, sources, findings[i]));
  std::vector<std::optional<Item>> made(names.size());
  work_side_by_side(names.size(), [&](std::size_t i) {
    if (!opened[i]) return;
    const auto tree = parse_toml(sources, *opened[i], findings[i]);
    if (!tree) return;
    made[i] = read(*tree, findings[i]);
    check_file_name(stated_id(*made[i]), names[i], made[i]->origin, findings[i]);
  });
  std::vector<Item> items;
  for (std::size_t i = 0; i < names.size(); ++i) {
    for (Diagnostic& finding : findings[i]) add_finding(diagnostics, std::move(finding));
    if (made[i]) items.push_back(std::move(*made[i]));
  }
  return items;
}

}  // namespace

std::optional<TomlValue> read_toml_file(const std::string& path, const Files& files, Sources& sources,
                                        Diagnostics& findings) {
  const auto file = open_file(path, files, sources, findings);
  return file ? parse_toml(sources, *file, findings) : std::nullopt;
}

Library read_library(const std::string& layouts_folder, const Files& files, Sources& sources,
                     Diagnostics& diagnostics) {
  Library library;
  library.folder = layouts_folder;
  library.kinds = read_folder(layouts_folder + "/parts", files, sources, diagnostics, read_library_kind);
  for (PlacedPaper& placed : read_folder(layouts_folder + "/papers", files, sources, diagnostics, read_paper))
    library.papers.push_back(std::move(placed.paper));
  library.languages = list_toml(layouts_folder + "/words", files);
  if (library.kinds.empty() && library.papers.empty() && library.languages.empty() && diagnostics.empty())
    add_finding(diagnostics, make_diagnostic(DiagnosticId::file_unreadable, {},
                                             "folder " + quoted(layouts_folder) + " holds no parts, papers or words"));
  std::sort(library.kinds.begin(), library.kinds.end(), [](const Kind& a, const Kind& b) { return a.id < b.id; });
  return library;
}

}  // namespace loomfolio
