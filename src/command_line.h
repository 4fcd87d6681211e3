// SPDX-License-Identifier: MIT
// Words on the command line in, one request out.
#pragma once

#include <string>
#include <vector>

namespace loomfolio {

enum class CommandName : std::uint8_t { print, check, meter, tables, compare, parts, new_spec, watch, bench_layout };

/// What the user asked for. A field that the command does not know is empty.
struct Request {
  CommandName command = CommandName::print;
  std::string spec;                  ///< the SPEC or GRAPH argument, "-" for standard input (new: FILE, "-" for standard output)
  std::string earlier;               ///< compare: OLD; bench-layout: the graph of an earlier drawing to stay near, empty: none
  std::string kind;                  ///< parts: the KIND argument; empty: list all
  std::string table;                 ///< tables: the TABLE argument
  std::string where;                 ///< meter: the WHERE argument
  std::string situation;             ///< meter: --in; empty: all
  std::string output;                ///< -o, "-" for standard output; empty: beside the spec
  std::string variant, paper, language;
  std::vector<std::string> sheets;   ///< --sheets: ids or numbers; empty: all
  double dots_per_inch = 110;        ///< .png
  std::string placement;             ///< print: a side file for the drawings' places; empty: only in the PDF
  bool is_fresh = false;             ///< print: no drawing of an earlier print is stayed with
  std::string overlay;               ///< print: --overlay, `costs`; empty: none
  bool is_mono = false;
  bool is_draft = false;             ///< print although the check found errors; every sheet says so
  bool wants_ohms = false;           ///< meter: battery off
  bool as_json = false;
  bool is_brief = false;             ///< one finding a line
};

struct ParsedLine {
  bool is_request = false;  ///< false: `text` is to be shown and the program ends with `exit_code`
  Request request;
  std::string text;
  int exit_code = 0;
};

/// Never throws; a mistake gives `text` with the mistake and how to ask for help, and exit code 2.
ParsedLine parse_command_line(const std::vector<std::string>& arguments, const std::string& version);

}  // namespace loomfolio
