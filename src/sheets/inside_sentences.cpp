// SPDX-License-Identifier: MIT
#include "sheets/inside_sentences.h"

#include <algorithm>
#include <cctype>
#include <iterator>

#include "base/text.h"
#include "check/paths.h"
#include "model/kind_text.h"
#include "model/spec_words.h"
#include "sheets/print_text.h"
#include "sheets/switch_positions.h"

namespace loomfolio {
namespace {

/// Letters beyond ASCII stay as they are.
std::string with_capital(std::string text) {
  if (!text.empty()) text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

class Teller {
 public:
  Teller(const Build& build, PartId part, const Words& words)
      : build_(build), id_(part), kind_(build.kind_of(build.part(part))), part_(build.part(part)), words_(words) {}

  std::vector<std::string> tell() {
    tell_rest();
    for (std::size_t i = 0; i < part_.insides.size(); ++i) {
      const Inside& inside = part_.insides[i];
      switch (inside.type) {
        case InsideType::coil:
          tell_coil(inside);
          break;
        case InsideType::contact:
          tell_flasher(inside);
          break;
        case InsideType::fuse:
          tell_fuse(inside);
          break;
        case InsideType::diode:
          tell_diode(inside);
          break;
        case InsideType::output:
          tell_output(inside);
          break;
        case InsideType::charger:
          tell_charger(inside);
          break;
        case InsideType::switch_:
          tell_switch(static_cast<int>(i));
          break;
        default:
          break;
      }
    }
    return std::move(sentences_);
  }

 private:
  using Places = std::vector<std::pair<std::string, std::string>>;

  void say(const char* key, const Places& places) { sentences_.push_back(words_(key, places)); }

  /// The terminal's mark; empty for an inner point.
  std::string mark(const Inside& inside, std::size_t node) const {
    if (node >= inside.nodes.size() || inside.nodes[node].terminal < 0) return {};
    return kind_.terminals[static_cast<std::size_t>(inside.nodes[node].terminal)].id;
  }

  /// 'a to b' of the first two nodes; empty when either is inside.
  std::string pair_of(const Inside& inside) const {
    const std::string a = mark(inside, 0), b = mark(inside, 1);
    return a.empty() || b.empty() ? std::string() : words_("works.pair", {{"a", a}, {"b", b}});
  }

  void tell_rest() {
    std::vector<std::string> closed;
    for (const Inside& inside : part_.insides)
      if (inside.type == InsideType::contact && inside.closed_at_rest && !pair_of(inside).empty())
        closed.push_back(pair_of(inside));
    if (!closed.empty()) say("works.at_rest", {{"pairs", join(closed, ", ")}});
  }

  void tell_coil(const Inside& coil) {
    std::vector<std::string> makes, breaks;
    for (const Inside& inside : part_.insides)
      if (inside.type == InsideType::contact && inside.coil == coil.id && !pair_of(inside).empty())
        (inside.closed_at_rest ? breaks : makes).push_back(pair_of(inside));
    const std::string own = pair_of(coil);
    if (own.empty()) return;
    if (coil.pull_in)
      say("works.coil_from", {{"coil", own}, {"volts", shortest(coil.pull_in->number(), 1)}});
    else
      say("works.coil", {{"coil", own}});
    if (!breaks.empty()) say("works.breaks", {{"pairs", join(breaks, ", ")}});
    if (!makes.empty()) say("works.makes", {{"pairs", join(makes, ", ")}});
    if (coil.drop_out) say("works.lets_go", {{"volts", shortest(coil.drop_out->number(), 1)}});
  }

  void tell_flasher(const Inside& contact) {
    if (contact.flashes) say("works.flashes", {{"pair", pair_of(contact)}});
  }

  void tell_fuse(const Inside& fuse) {
    const std::string a = mark(fuse, 0), b = mark(fuse, 1);
    if (fuse.rating && !a.empty() && !b.empty())
      say("works.fuse", {{"a", a}, {"b", b}, {"rating", print_rating(*fuse.rating)}});
  }

  void tell_diode(const Inside& diode) {
    const std::string a = mark(diode, 0), b = mark(diode, 1);
    if (!a.empty() && !b.empty()) say("works.diode", {{"a", a}, {"b", b}});
  }

  void tell_output(const Inside& output) {
    const std::string out = mark(output, 1);
    if (out.empty()) return;
    std::vector<std::string> conditions;
    for (const OutputCondition& condition : output.conditions) {
      const std::string input = mark(output, static_cast<std::size_t>(condition.input));
      if (is_met_without_wire(output, condition) && output.conditions.size() > 1) continue;
      const bool is_unearthed = condition.when_live && is_held_up(output, condition);
      const char* key = is_unearthed ? "works.is_not_earthed" : condition.when_live ? "works.is_live" : "works.is_earthed";
      conditions.push_back(words_(key, {{"terminal", input}}));
    }
    const std::string key = output.is_low_side ? "works.output_low" : "works.output_high";
    say((key + (output.rating ? "_limit" : "")).c_str(), {{"out", out},
                                                {"conditions", join(conditions, words_("works.and"))},
                                                {"rating", output.rating ? print_rating(*output.rating) : ""}});
  }

  /// Whether no wire goes to an input that is held up inside, so that the machine has no say in it.
  bool is_met_without_wire(const Inside& output, const OutputCondition& condition) const {
    const int terminal = output.nodes[static_cast<std::size_t>(condition.input)].terminal;
    return condition.when_live && terminal >= 0 && is_left_open(build_, id_, terminal) && is_held_up(output, condition);
  }

  /// Whether a resistor inside makes the input live by itself, until a switch earths it. What feeds a consumer inside is the supply that such
  /// resistors come from.
  bool is_held_up(const Inside& output, const OutputCondition& condition) const {
    const int terminal = output.nodes[static_cast<std::size_t>(condition.input)].terminal;
    const auto is_at = [&](InsideType type) {
      return std::any_of(part_.insides.begin(), part_.insides.end(), [&](const Inside& inside) {
        return inside.type == type && std::any_of(inside.nodes.begin(), inside.nodes.end(),
                                                  [&](const Inside::Node& node) { return node.terminal == terminal; });
      });
    };
    return terminal >= 0 && is_at(InsideType::resistor) && !is_at(InsideType::load);
  }

  void tell_charger(const Inside& charger) {
    if (charger.at_voltage) say("works.charger", {{"volts", shortest(charger.at_voltage->number(), 1)}});
    if (charger.power) say("works.charger_most", {{"watts", shortest(charger.power->number(), 0)}});
  }

  /// Positions, each a sentence; of several switches in one housing each has one line, under its name.
  void tell_switch(int inside) {
    const Inside& element = part_.insides[static_cast<std::size_t>(inside)];
    if (!is_used(element)) return tell_unused(element);
    std::vector<std::string> told = position_sentences(build_, {id_, inside}, words_);
    if (std::string sprung = sprung_sentence(element); !sprung.empty()) told.push_back(std::move(sprung));
    for (std::string& sentence : told) sentence = with_capital(std::move(sentence));
    if (element.name.empty() && count_used_switches() < 2) {
      std::move(told.begin(), told.end(), std::back_inserter(sentences_));
      return;
    }
    const std::string name = element.name.empty() ? translate_kind_text(element.id, words_) : element.name;
    sentences_.push_back(words_("works.of_switch", {{"switch", with_capital(name)}, {"what", join(told, " ")}}));
  }

  /// One of several switches that the face shows, and that does nothing here.
  void tell_unused(const Inside& element) {
    std::vector<std::string> open;
    for (const Inside::Node& node : element.nodes)
      if (node.terminal >= 0 && is_left_open(build_, id_, node.terminal))
        open.push_back(kind_.terminals[static_cast<std::size_t>(node.terminal)].id);
    if (element.name.empty() || count_used_switches() == 0) return;
    say("works.switch_unused", {{"switch", with_capital(element.name)}, {"terminals", join(open, ", ")}});
  }

  /// Of a sprung switch: what letting go does. With one way to press it, that is to open or to close again.
  std::string sprung_sentence(const Inside& element) const {
    const std::size_t rest = static_cast<std::size_t>(element.rest_position);
    if (!element.is_sprung || rest >= element.positions.size()) return {};
    if (element.positions.size() == 2)
      return words_(element.positions[rest].joined.empty() ? "works.switch_opens" : "works.switch_closes");
    const std::string name = element.name.empty() ? translate_kind_text(element.id, words_) : element.name;
    return words_("works.switch_sprung", {{"switch", name}, {"position", position_words(element.positions[rest].name)}});
  }

  /// Whether it can join anything of this machine: two of its points have a wire, or lie inside.
  bool is_used(const Inside& element) const {
    return std::count_if(element.nodes.begin(), element.nodes.end(), [&](const Inside::Node& node) {
             return node.terminal < 0 || !is_left_open(build_, id_, node.terminal);
           }) >= 2;
  }

  std::ptrdiff_t count_used_switches() const {
    return std::count_if(part_.insides.begin(), part_.insides.end(), [&](const Inside& inside) {
      return inside.type == InsideType::switch_ && is_used(inside);
    });
  }

  const Build& build_;
  PartId id_;
  const Kind& kind_;
  const Part& part_;
  const Words& words_;
  std::vector<std::string> sentences_;
};

}  // namespace

std::string end_mark(const Build& build, InsideRef ref, std::size_t node) {
  const Inside& inside = inside_of(build, ref);
  if (node >= inside.nodes.size() || inside.nodes[node].terminal < 0) return {};
  const Kind& kind = build.kind_of(build.part(ref.part));
  return kind.terminals[static_cast<std::size_t>(inside.nodes[node].terminal)].id;
}

bool is_left_open(const Build& build, PartId part, int terminal) {
  const KindTerminal& kind_terminal = build.kind_of(build.part(part)).terminals[static_cast<std::size_t>(terminal)];
  if (kind_terminal.form == TerminalForm::body) return false;
  return !has_wire(build, build.part(part).terminals[static_cast<std::size_t>(terminal)]);
}

std::vector<std::string> inside_sentences(const Build& build, PartId part, const Words& words) {
  return Teller(build, part, words).tell();
}

}  // namespace loomfolio
