// SPDX-License-Identifier: MIT
#include "commands/proof.h"

#include <algorithm>
#include <istream>
#include <iterator>
#include <ostream>

#include "base/side_by_side.h"
#include "base/text.h"
#include "check/check.h"
#include "solve/at_once.h"
#include "solve/size_wires.h"

namespace loomfolio {
namespace {

std::optional<ProtectionStudy> study_if_settled(const Build& build, const std::vector<Solution>& solutions) {
  const bool is_settled = std::all_of(solutions.begin(), solutions.end(),
                                      [](const Solution& s) { return s.settling == Settling::settled; });
  if (!is_settled || solutions.empty()) return std::nullopt;
  return study_with_all_on(build, solutions);
}

}  // namespace

std::optional<std::string> read_text(const std::string& name, Surroundings& surroundings) {
  if (name == "-") return std::string(std::istreambuf_iterator<char>(surroundings.in), {});
  std::string why;
  auto text = surroundings.files.read(name, why);
  if (!text) surroundings.err << "loomfolio: cannot read `" << name << "`: " << why << "\n";
  return text;
}

bool write_out(const std::string& path, const std::string& content, Surroundings& surroundings) {
  if (path == "-") {
    surroundings.out << content;
    return true;
  }
  std::string why;
  if (surroundings.files.write(path, content, why)) return true;
  surroundings.err << "loomfolio: cannot write `" << path << "`: " << why << "; it is as it was\n";
  return false;
}

std::optional<Proof> prove_spec(const Request& request, Surroundings& surroundings) {
  auto text = read_text(request.spec, surroundings);
  if (!text) return std::nullopt;
  return prove_text(request.spec == "-" ? "standard input" : request.spec, std::move(*text), surroundings);
}

std::optional<Proof> prove_text(const std::string& name, std::string text, Surroundings& surroundings) {
  Proof proof;
  proof.spec_name = name;
  proof.spec_text = std::move(text);

  Diagnostics library_findings;
  proof.library =
      read_library(surroundings.share_folder + "/layouts", surroundings.files, proof.sources, library_findings);
  if (has_errors(library_findings) || proof.library.kinds.empty()) {
    surroundings.err << print_diagnostics(library_findings, proof.sources, Paint::plain)
                     << "loomfolio: the library in `" << proof.library.folder << "` cannot be used\n";
    return std::nullopt;
  }
  proof.project = read_spec(proof.spec_name, proof.spec_text, proof.library, proof.sources, proof.diagnostics);
  if (!has_errors(proof.diagnostics)) {
    size_wires_of_all(proof.project.builds);
    const std::vector<Build>& builds = proof.project.builds;
    proof.solutions.resize(builds.size());
    proof.studies.resize(builds.size());
    std::vector<Diagnostics> found(builds.size());
    work_side_by_side(builds.size(), [&](std::size_t i) {
      proof.solutions[i] = solve_all(builds[i]);
      auto& study = proof.studies[i] = study_if_settled(builds[i], proof.solutions[i]);
      found[i] = check_build({builds[i], proof.solutions[i], study ? &*study : nullptr});
    });
    for (const Diagnostics& of_build : found)
      proof.diagnostics.insert(proof.diagnostics.end(), of_build.begin(), of_build.end());
  }
  sort_diagnostics(proof.diagnostics);
  return proof;
}

void report_findings(const Proof& proof, Surroundings& surroundings) {
  if (proof.diagnostics.empty()) return;
  const Paint paint = surroundings.err_is_terminal ? Paint::coloured : Paint::plain;
  surroundings.err << print_diagnostics(proof.diagnostics, proof.sources, paint);
  const auto count = [&](Severity severity) {
    return std::count_if(proof.diagnostics.begin(), proof.diagnostics.end(),
                         [&](const auto& d) { return d.severity == severity; });
  };
  const auto said = [&](Severity severity, const char* word) {
    const auto number = count(severity);
    return std::to_string(number) + " " + word + (number == 1 ? "" : "s");
  };
  surroundings.err << said(Severity::error, "error") << ", " << said(Severity::warning, "warning") << ", "
                   << said(Severity::note, "note") << "\n";
}

bool complain_unknown(const char* what, const std::string& given, const std::vector<std::string>& known,
                      Surroundings& surroundings) {
  if (given.empty() || std::find(known.begin(), known.end(), given) != known.end()) return false;
  surroundings.err << "loomfolio: there is no " << what << " `" << given << "`\n";
  const std::string near = find_nearest(given, known);
  if (!near.empty())
    surroundings.err << "hint: did you mean `" << near << "`?\n";
  else
    surroundings.err << "hint: there is " << join(known, ", ") << "\n";
  return true;
}

bool complain_unknown_variant(const Request& request, const Project& project, Surroundings& surroundings) {
  std::vector<std::string> variants;
  for (const Build& build : project.builds)
    if (!build.variant.empty()) variants.push_back(build.variant);
  return complain_unknown("variant", request.variant, variants, surroundings);
}

}  // namespace loomfolio
