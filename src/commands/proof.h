// SPDX-License-Identifier: MIT
// What print, check, meter and tables all start with: the spec read, solved and checked.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command_line.h"
#include "diag/diagnostic.h"
#include "read/read.h"
#include "run.h"
#include "solve/protection.h"
#include "solve/solution.h"

namespace loomfolio {

struct Proof {
  Library library;
  Sources sources;
  Project project;
  std::string spec_name, spec_text;
  std::vector<std::vector<Solution>> solutions;  ///< [build][situation]; empty when the spec could not be read well enough
  std::vector<std::optional<ProtectionStudy>> studies;  ///< [build]; nothing where a situation has not settled
  Diagnostics diagnostics;                       ///< sorted, of reading and checking
};

/// The text of a file or of standard input ("-"); nothing when it cannot be had, which is then said on `err`.
std::optional<std::string> read_text(const std::string& name, Surroundings& surroundings);

/// Writes to a file, whole or not at all, or to standard output ("-"). False when it could not, which is then said on `err`.
bool write_out(const std::string& path, const std::string& content, Surroundings& surroundings);

/// Reads, solves and checks the text of a spec; `name` is for messages. Nothing when the program's own layouts/ are broken.
std::optional<Proof> prove_text(const std::string& name, std::string text, Surroundings& surroundings);

/// The spec that the request names. Nothing also when its text cannot be had.
std::optional<Proof> prove_spec(const Request& request, Surroundings& surroundings);

/// Prints the findings to `err`, coloured on a terminal, and a closing count.
void report_findings(const Proof& proof, Surroundings& surroundings);

/// Says on `err` that `given` is no `what`, and which of the known names may be meant. False when it is known or empty.
bool complain_unknown(const char* what, const std::string& given, const std::vector<std::string>& known, Surroundings& surroundings);

/// The same of the hook-up that the request names.
bool complain_unknown_variant(const Request& request, const Project& project, Surroundings& surroundings);

}  // namespace loomfolio
