// SPDX-License-Identifier: MIT
#include "sheets/inside_sentences.h"

#include "base/text.h"
#include "model/kind_text.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

class Teller {
 public:
  Teller(const Build& build, const Part& part, const Words& words)
      : kind_(build.kind_of(part)), part_(part), words_(words) {}

  std::vector<std::string> tell() {
    tell_rest();
    for (const Inside& inside : part_.insides) {
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
          tell_switch(inside);
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
    if (fuse.rating && !pair_of(fuse).empty())
      say("works.fuse", {{"pair", pair_of(fuse)}, {"rating", print_rating(*fuse.rating)}});
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
      conditions.push_back(words_(condition.when_live ? "works.is_live" : "works.is_earthed", {{"terminal", input}}));
    }
    const char* key = output.is_low_side ? "works.output_low" : "works.output_high";
    say(key, {{"out", out}, {"conditions", join(conditions, words_("works.and"))}});
    if (output.rating) say("works.output_limit", {{"out", out}, {"rating", print_rating(*output.rating)}});
  }

  void tell_charger(const Inside& charger) {
    if (charger.at_voltage) say("works.charger", {{"volts", shortest(charger.at_voltage->number(), 1)}});
    if (charger.power) say("works.charger_most", {{"watts", shortest(charger.power->number(), 0)}});
  }

  void tell_switch(const Inside& element) {
    const std::string name = element.name.empty() ? translate_kind_text(element.id, words_) : element.name;
    const std::size_t rest = static_cast<std::size_t>(element.rest_position);
    if (rest >= element.positions.size()) return;
    const std::string position = element.positions[rest].name;
    if (element.is_sprung) say("works.switch_sprung", {{"switch", name}, {"position", position}});
  }

  const Kind& kind_;
  const Part& part_;
  const Words& words_;
  std::vector<std::string> sentences_;
};

}  // namespace

std::vector<std::string> inside_sentences(const Build& build, const Part& part, const Words& words) {
  return Teller(build, part, words).tell();
}

}  // namespace loomfolio
