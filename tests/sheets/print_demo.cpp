// SPDX-License-Identifier: MIT
// Prints a spec without the program's checks, to look at pages while they are being made:
//   print_demo SPEC.toml OUT.pdf [PAPER] [grey]
#include <fstream>
#include <iostream>
#include <sstream>

#include "disk_files.h"
#include "read/read.h"
#include "render/render.h"
#include "sheets/folio.h"

using namespace loomfolio;

namespace {

std::string read_file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

int main(int count, char** arguments) {
  if (count < 3) return 2;
  const std::string folder = LOOMFOLIO_SOURCE_FOLDER;
  DiskFiles files;
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(folder + "/layouts", files, sources, findings);
  const Project project = read_spec(arguments[1], read_file(arguments[1]), library, sources, findings);
  if (has_errors(findings) || project.builds.empty()) {
    std::cerr << print_diagnostics(findings, sources, Paint::plain);
    return 1;
  }
  const Words words = read_words(library, project.builds.front().document.language, files, sources, findings);
  std::cerr << print_diagnostics(findings, sources, Paint::plain);
  const auto papers = choose_papers(library.papers, count > 3 ? arguments[3] : project.builds.front().document.paper);
  if (!papers) return 2;
  const FontSet fonts(folder + "/fonts");
  FolioInput input{project, {}, words, papers->text, papers->drawing, fonts.measure()};
  for (const Build& build : project.builds) input.builds.push_back({build, solve_all(build)});
  const Folio folio = compose_folio(input);
  std::ofstream(arguments[2], std::ios::binary)
      << render_pdf(folio, fonts, count > 4 ? Colouring::grey : Colouring::full);
  std::cout << folio.sheets.size() << " sheets\n";
}
