// SPDX-License-Identifier: MIT
// The suite: one fault a file, read, solved and checked with the real layouts/, its findings compared with those it
// names.
//
// A file opens with a comment sentence that says what a reader should see. It names each finding it provokes, severity
// and id:
//     to = "lamp.65"  # expect: error unknown-terminal
// at the end of the line that the finding's caret is on; several are parted by commas. Where a line can bear no
// comment, a line above it that holds nothing else does: it speaks for the next line that is no such comment, or for
// the last line when there is none. Every finding must be named, and every named finding must be found, as often as it
// is named; `1000 error unknown-key` names it a thousand times. A finding without a place counts as on line 1.
//     # stop-after: read      no solving and no checking: for a fault of reading that leaves a spec usable
//     # grow-by: 5000000      the runner adds that many spaces to the end: for a file too large to keep
//     # cut-to: 0             the runner reads no more than that many bytes
//     # unreadable: why       the runner gives that reason in place of the text
// Files lie in folders by subject. Those in library-parts/, library-papers/ and library-words/ are read as files of
// layouts/ of the same name; those in print/ are printed by the whole program; all others are specs.
#include <algorithm>
#include <filesystem>
#include <set>

#include "commands/memory_files.h"
#include "base/text.h"
#include "check/check.h"
#include "doctest/doctest.h"
#include "read/read.h"
#include "read/test_files.h"
#include "solve/solution.h"

using namespace loomfolio;

namespace {

namespace fs = std::filesystem;

const std::string root = LOOMFOLIO_SOURCE_FOLDER;
const std::string suite_folder = root + "/tests/suite";

// Ids that no file provokes yet. A file that provokes one of them fails until it is taken out here.
const std::set<std::string> not_yet_provoked = {
#include "suite/not_yet_provoked.def"
};

struct SuiteFile {
  std::string path;  ///< within the suite
  std::string text;
  std::string subject;  ///< the folder
};

std::vector<SuiteFile> all_files() {
  std::vector<SuiteFile> files;
  std::string why;
  for (const auto& entry : fs::recursive_directory_iterator(suite_folder))
    if (entry.path().extension() == ".toml") {
      const std::string path = fs::relative(entry.path(), suite_folder).string();
      files.push_back(
          {path, *TestFiles{}.read(entry.path().string(), why), entry.path().parent_path().filename().string()});
    }
  std::sort(files.begin(), files.end(), [](const SuiteFile& a, const SuiteFile& b) { return a.path < b.path; });
  return files;
}

/// What follows "# name:" in a line; nothing when the line has none.
std::optional<std::string> directive(const std::string& line, const std::string& name) {
  const std::string mark = "# " + name + ":";
  const std::size_t at = line.find(mark);
  return at == std::string::npos ? std::nullopt : std::optional(trimmed(line.substr(at + mark.size())));
}

std::string find_directive(const std::string& text, const std::string& name) {
  for (const std::string& line : split(text, '\n'))
    if (const auto value = directive(line, name)) return *value;
  return {};
}

/// "12: error unknown-terminal", one a finding, sorted.
std::vector<std::string> expected_findings(const std::string& text) {
  const std::vector<std::string> lines = split(text, '\n');
  std::vector<std::string> expected, waiting;
  const auto settle = [&](std::size_t line, const std::vector<std::string>& findings) {
    for (const std::string& finding : findings) {
      const bool is_counted = finding[0] >= '0' && finding[0] <= '9';
      const std::size_t count = is_counted ? std::stoul(finding) : 1;
      const std::string one =
          std::to_string(line) + ": " + (is_counted ? trimmed(finding.substr(finding.find(' '))) : finding);
      expected.insert(expected.end(), count, one);
    }
  };
  const std::size_t last = lines.size() - (lines.size() > 1 && lines.back().empty() ? 1 : 0);
  for (std::size_t i = 0; i < last; ++i) {
    const auto value = directive(lines[i], "expect");
    std::vector<std::string> findings;
    if (value)
      for (const std::string& finding : split(*value, ',')) findings.push_back(trimmed(finding));
    if (value && trimmed(lines[i]).starts_with("# expect:")) {
      waiting.insert(waiting.end(), findings.begin(), findings.end());
      continue;
    }
    settle(i + 1, waiting);
    settle(i + 1, findings);
    waiting.clear();
  }
  settle(last, waiting);
  std::sort(expected.begin(), expected.end());
  return expected;
}

struct Outcome {
  Sources sources;
  Diagnostics findings;
  std::int32_t file = -1;  ///< of the suite's text among the sources
};

std::string text_to_read(const SuiteFile& file) {
  const std::string spaces = find_directive(file.text, "grow-by"), bytes = find_directive(file.text, "cut-to");
  const std::string text = file.text + std::string(spaces.empty() ? 0 : std::stoul(spaces), ' ');
  return bytes.empty() ? text : text.substr(0, std::stoul(bytes));
}

/// Reads the file as one of layouts/, beside the real ones.
Outcome run_library_file(const SuiteFile& file, const std::string& folder) {
  Outcome outcome;
  TestFiles files;
  const std::string name = fs::path(file.path).filename().string();
  const std::string path = root + "/layouts/" + folder + "/" + name;
  files.in_memory[path] = text_to_read(file);
  if (const std::string why = find_directive(file.text, "unreadable"); !why.empty()) files.unreadable[path] = why;
  const Library library = read_library(root + "/layouts", files, outcome.sources, outcome.findings);
  if (folder == "words") read_words(library, name.substr(0, name.size() - 5), files, outcome.sources, outcome.findings);
  for (std::size_t i = 0; i < outcome.sources.files.size(); ++i)
    if (outcome.sources.files[i].name == path) outcome.file = static_cast<std::int32_t>(i);
  sort_diagnostics(outcome.findings);
  return outcome;
}

struct Layouts {
  Sources sources;  ///< of the library: places in it lead here
  Library library;
};

const Layouts& real_layouts() {
  static const Layouts layouts = [] {
    Layouts made;
    Diagnostics findings;
    made.library = read_library(root + "/layouts", TestFiles{}, made.sources, findings);
    return made;
  }();
  return layouts;
}

Outcome run_spec(const SuiteFile& file) {
  Outcome outcome{real_layouts().sources, {}, static_cast<std::int32_t>(real_layouts().sources.files.size())};
  const Library& library = real_layouts().library;
  const Project project = read_spec(file.path, text_to_read(file), library, outcome.sources, outcome.findings);
  if (has_errors(outcome.findings) || find_directive(file.text, "stop-after") == "read") return outcome;
  for (const Build& build : project.builds) {
    const std::vector<Solution> solutions = solve_all(build);
    const Diagnostics found = check_build({build, solutions});
    outcome.findings.insert(outcome.findings.end(), found.begin(), found.end());
  }
  sort_diagnostics(outcome.findings);
  return outcome;
}

Outcome run_file(const SuiteFile& file) {
  return file.subject.starts_with("library-") ? run_library_file(file, file.subject.substr(8)) : run_spec(file);
}

std::string call_severity(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

std::vector<std::string> found_findings(const Outcome& outcome) {
  std::vector<std::string> found;
  for (const Diagnostic& finding : outcome.findings) {
    std::size_t line = finding.where.is_set() ? 0 : 1;
    if (finding.where.is_set() && finding.where.file == outcome.file) {
      const std::string& text = outcome.sources.files[static_cast<std::size_t>(outcome.file)].text;
      line = 1 + static_cast<std::size_t>(std::count(text.begin(), text.begin() + finding.where.begin, '\n'));
    }
    found.push_back(std::to_string(line) + ": " + call_severity(finding.severity) + " " +
                    std::string(rule_of(finding.id).text));
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// The same of a spec that is printed by the whole program: its findings as a person sees them.
std::vector<std::string> printed_findings(const SuiteFile& file) {
  MemoryFiles files;
  files.held["suite.toml"] = text_to_read(file);
  std::vector<std::string> found;
  for (const std::string& line : split(run_with(files, {"print", "suite.toml", "-o", "suite.txt"}).err, '\n')) {
    const std::vector<std::string> pieces = split(line, ':');  // file, line, column, severity, message ... [id]
    if (pieces.size() < 5 || pieces[0] != "suite.toml" || !line.ends_with(']')) continue;
    const std::size_t open = line.rfind('[') + 1;
    found.push_back(pieces[1] + ":" + pieces[3] + " " + line.substr(open, line.size() - 1 - open));
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

TEST_CASE("each suite file provokes the findings it names and no others") {
  const std::vector<SuiteFile> files = all_files();
  REQUIRE(files.size() > 50);
  for (const SuiteFile& file : files) {
    const std::string expected = join(expected_findings(file.text), "\n");
    if (file.subject == "print") {
      CHECK_MESSAGE(join(printed_findings(file), "\n") == expected, file.path);
      continue;
    }
    const Outcome outcome = run_file(file);
    const std::string found = join(found_findings(outcome), "\n");
    CHECK_MESSAGE(found == expected, file.path, "\n--- expected\n", expected, "\n--- found\n", found, "\n--- printed\n",
                  print_diagnostics(outcome.findings, outcome.sources, Paint::plain));
  }
}

TEST_CASE("each suite file opens with a sentence that says what a reader should see") {
  for (const SuiteFile& file : all_files()) {
    CAPTURE(file.path);
    CHECK(file.text.starts_with("# "));
    const std::string head = file.text.substr(0, file.text.find("\n\n"));
    CHECK(split(head, '\n').front().size() > 20);
    CHECK(head.find('.') != std::string::npos);
  }
}

TEST_CASE("each finding's id is provoked by a suite file") {
  std::set<std::string> provoked;
  for (const SuiteFile& file : all_files())
    for (const std::string& finding : expected_findings(file.text))
      provoked.insert(finding.substr(finding.rfind(' ') + 1));
  std::vector<std::string> missing, no_longer_missing;
  for (const DiagnosticRule& rule : all_diagnostic_rules()) {
    const std::string id(rule.text);
    if (!provoked.count(id) && !not_yet_provoked.count(id)) missing.push_back(id);
    if (provoked.count(id) && not_yet_provoked.count(id)) no_longer_missing.push_back(id);
  }
  CHECK_MESSAGE(missing.empty(), "no file provokes ", join(missing, ", "));
  CHECK_MESSAGE(no_longer_missing.empty(), "take out of not_yet_provoked.def: ", join(no_longer_missing, ", "));
}

TEST_CASE("a suite file's own comments are understood") {
  CHECK(expected_findings(
            "# A sentence.\na = 1 # expect: error b, warning c\n# expect: error d\n\nx\n# expect: note e\n") ==
        std::vector<std::string>{"2: error b", "2: warning c", "4: error d", "6: note e"});
}
