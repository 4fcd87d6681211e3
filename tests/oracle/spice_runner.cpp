// SPDX-License-Identifier: MIT
#include "oracle/spice_runner.h"

#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace loomfolio::test {
namespace {

namespace files = std::filesystem;

constexpr const char* accuracy = ".options reltol=1e-5 vntol=1e-6 abstol=1e-9 itl1=500\n";

void write_decks(const files::path& folder, const std::vector<std::string>& netlists, SpiceWay way) {
  std::ofstream script(folder / "all.cir");
  script << "* all circuits\n.control\nset numdgt=12\n"
         << (way == SpiceWay::newton ? "optran 0 0 0 0 0 0\n" : "optran 1 1 1 100n 10u 0\n");
  for (std::size_t i = 0; i < netlists.size(); ++i) {
    const std::string name = "c" + std::to_string(i) + ".cir";
    std::ofstream(folder / name) << netlists[i] << accuracy << ".end\n";
    script << "source " << (folder / name).string() << "\necho CIRCUIT " << i << "\nop\nprint all\ndestroy all\nremcirc\n";
  }
  script << "quit\n.endc\n.end\n";
}

std::string output_of(const std::string& command) {
  std::string text;
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return text;
  char part[4096];
  while (const std::size_t n = std::fread(part, 1, sizeof part, pipe)) text.append(part, n);
  pclose(pipe);
  return text;
}

}  // namespace

SpiceAnswers ask_ngspice(const std::vector<std::string>& netlists, SpiceWay way) {
  SpiceAnswers answers;
  answers.nodes.resize(netlists.size());
  const files::path folder = files::temp_directory_path() / ("loomfolio-oracle-" + std::to_string(getpid()));
  files::create_directories(folder);
  write_decks(folder, netlists, way);
  const std::string text = output_of("ngspice -b " + (folder / "all.cir").string() + " 2>/dev/null");
  files::remove_all(folder);
  std::istringstream lines(text);
  std::string line;
  std::size_t at = netlists.size();
  while (std::getline(lines, line)) {
    if (line.starts_with("CIRCUIT ")) at = static_cast<std::size_t>(std::stoul(line.substr(8)));
    const std::size_t equals = line.find(" = ");
    if (at < netlists.size() && equals != std::string::npos && line[0] == 'n')
      answers.nodes[at][line.substr(0, equals)] = std::strtod(line.c_str() + equals + 3, nullptr);
  }
  if (at == netlists.size() && !netlists.empty()) answers.trouble = "ngspice did not run: " + text.substr(0, 200);
  return answers;
}

}  // namespace loomfolio::test
