// SPDX-License-Identifier: MIT
#include "command_line.h"

#include <CLI/CLI.hpp>

#include "base/text.h"

namespace loomfolio {
namespace {

const char* const about =
    "Turns one build spec of a motorcycle's electrical system into the pages that let a person wire it, prove it and mend it.";

void add_page_options(CLI::App& command, Request& request) {
  command.add_option("-o,--output", request.output, "where to write; .pdf, .svg, .png or .txt by its ending, - for standard output")
      ->type_name("FILE");
  command.add_option("--variant", request.variant, "only this hook-up of the spec")->type_name("NAME");
  command.add_option("--sheets", request.sheets, "only these sheets, by id or number, with commas between")
      ->delimiter(',')
      ->type_name("LIST");
  command.add_option("--paper", request.paper, "A4, A3, Letter or Tabloid, whatever the spec says")->type_name("SIZE");
  command.add_option("--language", request.language, "language of the pages, whatever the spec says")->type_name("CODE");
  command.add_option("--dpi", request.dots_per_inch, "dots an inch of .png pages")->check(CLI::Range(36, 600))->type_name("N");
  command.add_flag("--fresh", request.is_fresh, "draw anew, not as in the PDF that is there already");
  command.add_option("--placement", request.placement, "keep the drawings' places in this file too, and start from it")
      ->type_name("FILE");
  command.add_option("--overlay", request.overlay, "costs: on each wire of a diagram why it runs as it does")
      ->check(CLI::IsMember({"costs"}))
      ->type_name("NAME");
  command.add_flag("--mono", request.is_mono, "print in grey");
  command.add_flag("--draft", request.is_draft, "print although the check finds errors; every sheet is marked");
}

void add_meter_options(CLI::App& command, Request& request) {
  command.add_option("WHERE", request.where,
                     "a terminal (`headlamp.56a`: against the battery's earthed pole), two terminals (`headlamp.56a,headlamp.31`), "
                     "or a wire's number (the amperes through it)")
      ->required();
  command.add_option("--in", request.situation, "only in this situation; else a row for each")->type_name("SITUATION");
  command.add_option("--variant", request.variant, "only in this hook-up of the spec")->type_name("NAME");
  command.add_flag("--ohms", request.wants_ohms, "ohms between the places, with the battery off");
  command.add_flag("--json", request.as_json, "the readings as JSON");
}

void add_commands(CLI::App& app, Request& request) {
  const auto add = [&](const char* name, const char* what, CommandName command) {
    CLI::App* sub = app.add_subcommand(name, what);
    sub->callback([&request, command] { request.command = command; });
    return sub;
  };
  const auto take_spec = [&](CLI::App* sub) { sub->add_option("SPEC", request.spec, "build spec, - for standard input")->required(); };

  CLI::App* print = add("print", "print all pages to PDF", CommandName::print);
  take_spec(print);
  add_page_options(*print, request);

  CLI::App* check = add("check", "say every finding; exit 0 clean, 1 errors, 2 could not run", CommandName::check);
  take_spec(check);
  check->add_flag("--json", request.as_json, "findings as JSON");
  check->add_flag("--brief", request.is_brief, "one line a finding, for build logs");

  CLI::App* meter = add("meter", "say what a meter reads at a terminal, between two, or through a wire", CommandName::meter);
  take_spec(meter);
  add_meter_options(*meter, request);

  CLI::App* tables = add("tables", "write one table of the pages as CSV or JSON, for other programs", CommandName::tables);
  take_spec(tables);
  tables->add_option("TABLE", request.table, "wires, fuses, parts, cuts or earths")->required();
  tables->add_option("-o,--output", request.output, "where to write; JSON where it ends in .json, - for standard output, which is usual")
      ->type_name("FILE");
  tables->add_option("--variant", request.variant, "only this hook-up of the spec")->type_name("NAME");
  tables->add_flag("--json", request.as_json, "JSON instead of CSV");

  CLI::App* compare = add("compare", "say what changed from one spec to another; with -o, print the new one with bars beside it", CommandName::compare);
  compare->add_option("OLD", request.earlier, "build spec, or a PDF printed earlier")->required();
  compare->add_option("NEW", request.spec, "build spec, or a PDF printed later")->required();
  add_page_options(*compare, request);

  CLI::App* watch = add("watch", "print at each save of the spec, until stopped", CommandName::watch);
  watch->add_option("SPEC", request.spec, "build spec")->required();
  add_page_options(*watch, request);

  CLI::App* parts = add("parts", "the library of part kinds: a list, or one kind", CommandName::parts);
  parts->add_option("KIND", request.kind, "a kind's id");

  CLI::App* starter = add("new", "write a commented spec to start from", CommandName::new_spec);
  starter->add_option("FILE", request.spec, "a file that is not there yet, - for standard output")->required();

  CLI::App* bench = add("bench-layout", "lay out a benchmark graph", CommandName::bench_layout);
  bench->group("");  // hidden from help
  bench->add_option("GRAPH", request.spec)->required();
  bench->add_option("OUT", request.output)->required();
  bench->add_option("--earlier", request.earlier, "a graph that is laid out first; the drawing stays near it");
}

}  // namespace

ParsedLine parse_command_line(const std::vector<std::string>& arguments, const std::string& version) {
  ParsedLine parsed;
  CLI::App app(about, "loomfolio");
  app.set_version_flag("--version", "loomfolio " + version);
  app.require_subcommand(1);
  app.set_help_all_flag("--help-all", "help of every command");
  add_commands(app, parsed.request);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
  if (arguments.empty()) reversed = {"--help"};
  try {
    app.parse(reversed);
    parsed.is_request = true;
  } catch (const CLI::ParseError& error) {
    std::ostringstream out, err;
    const int code = app.exit(error, out, err);
    parsed.exit_code = code == 0 ? 0 : 2;
    parsed.text = out.str() + err.str();
    if (code != 0 && !arguments.empty()) {
      std::vector<std::string> names;
      for (const CLI::App* sub : app.get_subcommands([](const CLI::App*) { return true; }))
        if (!sub->get_group().empty()) names.push_back(sub->get_name());
      const std::string near = find_nearest(arguments.front(), names);
      const bool is_name = std::find(names.begin(), names.end(), arguments.front()) != names.end();
      if (!near.empty() && !is_name) parsed.text += "hint: did you mean `" + near + "`?\n";
    }
  }
  return parsed;
}

}  // namespace loomfolio
