// SPDX-License-Identifier: MIT
// A person at the bench asks what the meter should read: here the probes are on the solved machine.
#include "solve/meter.h"

#include <algorithm>
#include <cmath>
#include <ostream>

#include "base/json.h"
#include "base/text.h"
#include "commands/command.h"
#include "commands/proof.h"

namespace loomfolio {
namespace {

/// One reading: a row of the answer.
struct BenchReading {
  std::string variant, situation, label;
  MeterAnswer answer;
  Settling settling = Settling::settled;
};

struct Question {
  std::string words;  ///< as find_meter_place reads it
  MeterUse use = MeterUse::volts;
};

/// 'a.b,c.d' are two places; what is the name of a wire and not of a terminal is that wire; `wire 3` always is.
Question understand(const Request& request, const Build& build) {
  Question question{request.where, request.wants_ohms ? MeterUse::ohms : MeterUse::volts};
  std::replace(question.words.begin(), question.words.end(), ',', ' ');
  question.words = trimmed(question.words);
  const auto is_terminal = [&](const Terminal& t) { return t.name == question.words; };
  const auto is_wire = [&](const Wire& w) { return w.id == question.words; };
  const bool names_wire = std::any_of(build.wires.begin(), build.wires.end(), is_wire) &&
                          std::none_of(build.terminals.begin(), build.terminals.end(), is_terminal);
  if (names_wire) question.words = "wire " + question.words;
  if (question.words.starts_with("wire ")) question.use = MeterUse::amperes;
  if (question.use != MeterUse::ohms) return question;
  const TerminalId earthed = earthed_pole(build);
  if (question.words.find(' ') == std::string::npos && earthed.is_set())
    question.words += " " + build.terminal(earthed).name;
  question.words = "ohms " + question.words;
  return question;
}

std::vector<std::string> known_names(const Build& build) {
  std::vector<std::string> names;
  for (const Terminal& terminal : build.terminals) names.push_back(terminal.name);
  for (const Wire& wire : build.wires) names.push_back(wire.id);
  return names;
}

/// The terminals of the part that `name` begins with; empty when there is no such part.
std::string list_terminals(const Build& build, const std::string& name) {
  const std::string part_id = name.substr(0, name.find('.'));
  for (const Part& part : build.parts) {
    if (part.id != part_id) continue;
    std::vector<std::string> names;
    for (const TerminalId t : part.terminals) names.push_back("`" + build.terminal(t).name + "`");
    return join(names, ", ");
  }
  return {};
}

std::string nearest_part(const Build& build, const std::string& name) {
  std::vector<std::string> ids;
  for (const Part& part : build.parts) ids.push_back(part.id);
  return find_nearest(name.substr(0, name.find('.')), ids);
}

/// Exit code 2: what was asked for cannot be looked up.
int complain_place(const Build& build, const Request& request, const std::string& unknown, Surroundings& surroundings) {
  std::ostream& err = surroundings.err;
  if (unknown.empty()) {
    err << "loomfolio: `" << request.where << "` is no place to measure\n"
        << "hint: write a terminal (`part.terminal`), two with a comma between, or a wire's number\n";
    return 2;
  }
  err << "loomfolio: there is no terminal or wire `" << unknown << "`\n";
  const std::string near = find_nearest(unknown, known_names(build));
  const std::string of_part = list_terminals(build, unknown);
  const std::string part = nearest_part(build, unknown);
  err << "hint: " << (near.empty() ? "" : "did you mean `" + near + "`?");
  if (!of_part.empty()) {
    err << (near.empty() ? "" : " ") << "the terminals there are " << of_part;
  } else if (near.empty()) {
    if (part.empty())
      err << "`loomfolio print` shows every terminal and every wire's number";
    else
      err << "did you mean the part `" << part << "`? its terminals are " << list_terminals(build, part);
  }
  err << "\n";
  return 2;
}

std::string unit_of(MeterUse use) {
  switch (use) {
    case MeterUse::volts:
      return "V";
    case MeterUse::amperes:
      return "A";
    case MeterUse::ohms:
      return "ohm";
  }
  return {};
}

/// As a meter's display would round it.
std::string print_number(const MeterAnswer& answer, MeterUse use) {
  if (std::isinf(answer.number)) return "open";
  const double size = std::abs(answer.number);
  if (use == MeterUse::volts) return fixed(answer.number, 2) + " V";
  if (use == MeterUse::amperes) return fixed(answer.number, size < 1 ? 3 : 2) + " A";
  if (size >= 1e6) return fixed(answer.number / 1e6, 2) + " Mohm";
  if (size >= 1e3) return fixed(answer.number / 1e3, 2) + " kohm";
  return fixed(answer.number, size < 10 ? 2 : 1) + " ohm";
}

std::string remark_on(const BenchReading& reading) {
  if (reading.settling == Settling::chatters) return "a relay chatters here: the reading swings";
  if (reading.settling == Settling::several_states) return "more than one state is possible here: this is one of them";
  if (reading.settling == Settling::diverged) return "not solved: do not trust this figure";
  return reading.answer.is_floating ? "nothing holds this place" : "";
}

std::string call_place(const Build& build, const MeterPlace& place) {
  const auto call = [&](TerminalId t) { return "`" + build.terminal(t).name + "` (" + call_terminal(build, t) + ")"; };
  if (place.use == MeterUse::amperes) {
    const Wire& wire = build.wire(place.wire);
    return "amperes through wire " + wire.id + ", positive from `" + build.terminal(wire.from).name + "` to `" +
           build.terminal(wire.to).name + "`";
  }
  const TerminalId black = place.black.is_set() ? place.black : earthed_pole(build);
  const std::string there = black.is_set() ? call(black) : "the earthed side";
  if (place.use == MeterUse::ohms) return "ohms between " + call(place.red) + " and " + there + ", battery off";
  return "volts, red probe on " + call(place.red) + ", black probe on " + there;
}

void print_rows(const std::vector<BenchReading>& rows, MeterUse use, std::ostream& out) {
  std::size_t widest = 0, widest_number = 0;
  for (const BenchReading& row : rows) {
    widest = std::max(widest, count_columns(row.situation));
    widest_number = std::max(widest_number, print_number(row.answer, use).size());
  }
  const std::string* variant = nullptr;
  for (const BenchReading& row : rows) {
    if (!row.variant.empty() && (variant == nullptr || *variant != row.variant))
      out << "hook-up " << row.variant << "\n";
    variant = &row.variant;
    const std::string number = print_number(row.answer, use), remark = remark_on(row);
    std::string note = row.label;
    if (!remark.empty()) note += (note.empty() ? "" : "; ") + remark;
    out << "  " << row.situation
        << std::string(widest - count_columns(row.situation) + 2 + widest_number - number.size(), ' ') << number
        << (note.empty() ? "" : "   ") << note << "\n";
  }
}

void print_json(const std::vector<BenchReading>& rows, const Request& request, MeterUse use, std::ostream& out) {
  out << "{\"where\": " << quote_json(request.where) << ", \"unit\": " << quote_json(unit_of(use))
      << ", \"readings\": [";
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const BenchReading& row = rows[i];
    const bool is_open = std::isinf(row.answer.number);
    out << (i == 0 ? "\n" : ",\n") << "  {\"variant\": " << quote_json(row.variant)
        << ", \"situation\": " << quote_json(row.situation)
        << ", \"number\": " << (is_open ? "null" : shortest(row.answer.number, 6))
        << ", \"open\": " << (is_open ? "true" : "false")
        << ", \"floating\": " << (row.answer.is_floating ? "true" : "false")
        << ", \"settled\": " << (row.settling == Settling::settled ? "true" : "false") << "}";
  }
  out << "\n]}\n";
}

/// The builds that the request is about.
std::vector<std::size_t> choose_builds(const Project& project, const std::string& variant) {
  std::vector<std::size_t> chosen;
  for (std::size_t i = 0; i < project.builds.size(); ++i)
    if (variant.empty() || project.builds[i].variant == variant) chosen.push_back(i);
  return chosen;
}

void add_readings(const Proof& proof, std::size_t index, const MeterPlace& place, const Request& request,
                  std::vector<BenchReading>& rows) {
  const Build& build = proof.project.builds[index];
  for (const Solution& solution : proof.solutions[index]) {
    const Situation& situation = build.situations[solution.situation.at()];
    if (!request.situation.empty() && situation.name != request.situation) continue;
    rows.push_back(
        {build.variant, situation.name, situation.label, read_meter(build, solution, place), solution.settling});
  }
}

bool has_wrong_name(const Request& request, const Project& project, Surroundings& surroundings) {
  std::vector<std::string> situations;
  for (const Build& build : project.builds) {
    if (!request.variant.empty() && build.variant != request.variant) continue;
    for (const Situation& situation : build.situations)
      if (std::find(situations.begin(), situations.end(), situation.name) == situations.end())
        situations.push_back(situation.name);
  }
  return complain_unknown_variant(request, project, surroundings) ||
         complain_unknown("situation", request.situation, situations, surroundings);
}

}  // namespace

int run_meter(const Request& request, Surroundings& surroundings) {
  const auto proof = prove_spec(request, surroundings);
  if (!proof) return 2;
  if (proof->solutions.empty()) {
    report_findings(*proof, surroundings);
    surroundings.err << "loomfolio: nothing measured\n";
    return 1;
  }
  if (has_wrong_name(request, proof->project, surroundings)) return 2;
  std::vector<BenchReading> rows;
  std::string heading, unknown;
  MeterUse use = MeterUse::volts;
  const std::vector<std::size_t> chosen = choose_builds(proof->project, request.variant);
  for (const std::size_t i : chosen) {
    const Build& build = proof->project.builds[i];
    const Question question = understand(request, build);
    const auto place = find_meter_place(build, question.words, unknown);
    if (!place) continue;  // a hook-up may be without that part
    if (heading.empty()) heading = call_place(build, *place);
    use = question.use;
    add_readings(*proof, i, *place, request, rows);
  }
  if (heading.empty()) return complain_place(proof->project.builds[chosen.front()], request, unknown, surroundings);
  if (rows.empty()) {
    surroundings.err << "loomfolio: the spec has no situation to measure in\nhint: describe one under [[situation]]\n";
    return 2;
  }
  if (request.as_json)
    print_json(rows, request, use, surroundings.out);
  else
    surroundings.out << heading << "\n", print_rows(rows, use, surroundings.out);
  if (!has_errors(proof->diagnostics)) return 0;
  surroundings.err << "loomfolio: the spec has errors, and these readings are of the machine as it stands there\n"
                   << "hint: `loomfolio check " << request.spec << "` says which\n";
  return 1;
}

}  // namespace loomfolio
