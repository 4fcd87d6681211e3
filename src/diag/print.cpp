// SPDX-License-Identifier: MIT
// Findings as text for people, one line each for build logs, and as JSON.
#include <algorithm>
#include <map>

#include "base/json.h"
#include "diag/diagnostic.h"
#include "diag/excerpt.h"
#include "diag/line_index.h"

namespace loomfolio {
namespace {

std::string_view call_severity(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

/// Terminal colours of ECMA-48.
std::string_view paint_of(Severity severity) {
  return severity == Severity::error ? "\x1b[1;31m" : severity == Severity::warning ? "\x1b[1;35m" : "\x1b[1;36m";
}
constexpr std::string_view bold = "\x1b[1m", green = "\x1b[1;32m", plain = "\x1b[0m";

class Printer {
 public:
  Printer(const Sources& sources, Paint paint) : sources_(sources), paint_(paint) {}

  const LineIndex& lines(std::int32_t file) {
    return indices_.try_emplace(file, sources_.files[static_cast<std::size_t>(file)].text).first->second;
  }
  bool has_place(Where where) const {
    return where.is_set() && static_cast<std::size_t>(where.file) < sources_.files.size();
  }

  std::string painted(std::string_view text, std::string_view colour) const {
    return paint_ == Paint::plain ? std::string(text) : std::string(colour) + std::string(text) + std::string(plain);
  }

  /// 'bike.toml:48:9: '; empty without a place.
  std::string head(Where where) {
    if (!has_place(where)) return {};
    const Place place = lines(where.file).place_of(where.begin);
    const std::string& name = sources_.files[static_cast<std::size_t>(where.file)].name;
    return painted(printable(name) + ":" + std::to_string(place.line) + ":" + std::to_string(place.column) + ":",
                   bold) +
           " ";
  }

  /// The source line with its number, and the caret line.
  std::string excerpt(Where where) {
    if (!has_place(where) || sources_.files[static_cast<std::size_t>(where.file)].text.empty()) return {};
    const LineIndex& index = lines(where.file);
    const std::size_t line = index.line_of(where.begin);
    const std::size_t start = index.start_of(line);
    const std::string_view text = index.text_of(line);
    const Excerpt made = make_excerpt(text, where.begin - start, std::max(where.end, where.begin) - start);
    std::string number = std::to_string(line);
    number.insert(0, number.size() < 5 ? 5 - number.size() : 0, ' ');
    return number + " | " + made.line + "\n" + std::string(number.size(), ' ') + " | " + painted(made.caret, green) +
           "\n";
  }

  std::string title(const Diagnostic& finding) {
    return head(finding.where) +
           painted(std::string(call_severity(finding.severity)) + ":", paint_of(finding.severity)) + " " +
           printable(finding.message) + " [" + std::string(rule_of(finding.id).text) + "]\n";
  }

  std::string note(const DiagnosticNote& note) {
    return head(note.where) + painted("note:", paint_of(Severity::note)) + " " + printable(note.message) + "\n" +
           excerpt(note.where);
  }

 private:
  const Sources& sources_;
  Paint paint_;
  std::map<std::int32_t, LineIndex> indices_;
};

std::string json_text(std::string_view text) { return quote_json(printable(text)); }

std::string json_place(Printer& printer, const Sources& sources, Where where) {
  if (!printer.has_place(where))
    return "\"file\": null, \"line\": null, \"column\": null, \"end_line\": null, \"end_column\": null";
  const Place begin = printer.lines(where.file).place_of(where.begin);
  const Place end = printer.lines(where.file).place_of(std::max(where.begin, where.end));
  return "\"file\": " + json_text(sources.files[static_cast<std::size_t>(where.file)].name) +
         ", \"line\": " + std::to_string(begin.line) + ", \"column\": " + std::to_string(begin.column) +
         ", \"end_line\": " + std::to_string(end.line) + ", \"end_column\": " + std::to_string(end.column);
}

}  // namespace

std::string print_diagnostics(const Diagnostics& diagnostics, const Sources& sources, Paint paint) {
  Printer printer(sources, paint);
  std::string text;
  for (const Diagnostic& finding : diagnostics) {
    if (!text.empty()) text += "\n";
    text += printer.title(finding) + printer.excerpt(finding.where);
    for (const DiagnosticNote& note : finding.notes) text += printer.note(note);
    if (!finding.hint.empty()) text += printer.painted("hint:", green) + " " + printable(finding.hint) + "\n";
  }
  return text;
}

std::string print_diagnostics_short(const Diagnostics& diagnostics, const Sources& sources) {
  Printer printer(sources, Paint::plain);
  std::string text;
  for (const Diagnostic& finding : diagnostics) text += printer.title(finding);
  return text;
}

std::string print_diagnostics_json(const Diagnostics& diagnostics, const Sources& sources) {
  Printer printer(sources, Paint::plain);
  std::string text = "[";
  for (const Diagnostic& finding : diagnostics) {
    text += text == "[" ? "\n" : ",\n";
    text += "  {\"severity\": " + json_text(call_severity(finding.severity)) +
            ", \"id\": " + json_text(rule_of(finding.id).text) + ", \"message\": " + json_text(finding.message) +
            ",\n   " + json_place(printer, sources, finding.where) + ",\n   \"notes\": [";
    bool is_first = true;
    for (const DiagnosticNote& note : finding.notes) {
      text += std::string(is_first ? "" : ", ") + "{\"message\": " + json_text(note.message) + ", " +
              json_place(printer, sources, note.where) + "}";
      is_first = false;
    }
    text += "],\n   \"hint\": " + (finding.hint.empty() ? "null" : json_text(finding.hint)) + "}";
  }
  return text + (text == "[" ? "]\n" : "\n]\n");
}

}  // namespace loomfolio
