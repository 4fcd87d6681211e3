// SPDX-License-Identifier: MIT
#include "read/inside_keys.h"

#include <algorithm>

namespace loomfolio {
namespace {

constexpr std::string_view law_words[] = {"resistive", "constant-power", "constant-current"};
constexpr std::string_view engine_words[] = {"running", "cranking"};
constexpr std::string_view worker_words[] = {"hand", "foot", "pressure", "gear", "key", "clutch", "stand"};
constexpr std::string_view rest_words[] = {"open", "closed"};
// Families of ISO 8820, DIN 72581, UL 248-14 and the Japanese glass classes, as in the gate tables.
constexpr std::string_view family_words[] = {"blade_regular",    "blade_mini",       "blade_maxi", "bolt_strip_small",
                                             "bolt_strip_large", "cartridge_female", "glass_ul",   "glass_jp_a",
                                             "glass_jp_b",       "torpedo"};

// Limits are what a motorcycle may hold, wide on both sides; no source, common practice.
constexpr QuantityRule power_rule{Dimension::power, {0.01, 5000}};
constexpr QuantityRule volts_rule{Dimension::voltage, {0.1, 60}};
constexpr QuantityRule resistance_rule{Dimension::resistance, {0, 1e6}};
constexpr QuantityRule amperes_rule{Dimension::current, {1e-6, 2000}};
constexpr QuantityRule charge_rule{Dimension::charge, {0.1, 200}};
constexpr QuantityRule pull_rule{Dimension::voltage, {0.1, 60}};
constexpr QuantityRule forward_rule{Dimension::voltage, {0, 5}};

const InsideKey keys[] = {
    {"power", power_rule, {}, [](Inside& i, double n) { i.power = Watts(n); }},
    {"at_voltage", volts_rule, {}, [](Inside& i, double n) { i.at_voltage = Volts(n); }},
    {"resistance", resistance_rule, {}, [](Inside& i, double n) { i.resistance = Ohms(n); }},
    {"rating", amperes_rule, {}, [](Inside& i, double n) { i.rating = Amperes(n); }},
    {"current", amperes_rule, {}, [](Inside& i, double n) { i.current = Amperes(n); }},
    {"capacity", charge_rule, {}, [](Inside& i, double n) { i.capacity = AmpereHours(n); }},
    {"cranking", amperes_rule, {}, [](Inside& i, double n) { i.cranking = Amperes(n); }},
    {"pull_in", pull_rule, {}, [](Inside& i, double n) { i.pull_in = Volts(n); }},
    {"drop_out", pull_rule, {}, [](Inside& i, double n) { i.drop_out = Volts(n); }},
    {"forward", forward_rule, {}, [](Inside& i, double n) { i.forward = Volts(n); }},
    {"law", {}, law_words, nullptr, [](Inside& i, const std::string& w) { i.law = w; }},
    {"only_when", {}, engine_words, nullptr, [](Inside& i, const std::string& w) { i.only_when = w; }},
    {"worked_by", {}, worker_words, nullptr, [](Inside& i, const std::string& w) { i.worked_by = w; }},
    {"family", {}, family_words, nullptr, [](Inside& i, const std::string& w) { i.family = w; }},
    {"rest", {}, rest_words, nullptr, [](Inside& i, const std::string& w) { i.closed_at_rest = w == "closed"; }},
};

}  // namespace

const InsideKey* find_inside_key(std::string_view name) {
  const auto found =
      std::find_if(std::begin(keys), std::end(keys), [&](const InsideKey& key) { return key.key == name; });
  return found == std::end(keys) ? nullptr : found;
}

const std::vector<InsideTypeRule>& inside_type_rules() {
  static const std::vector<InsideTypeRule> rules = {
      {"source", InsideType::source, {"at_voltage", "resistance", "cranking", "capacity"}, {"resistance", "cranking"}},
      {"load",
       InsideType::load,
       {"power", "current", "resistance", "at_voltage", "law", "only_when"},
       {"power", "current", "resistance"}},
      {"lamp", InsideType::lamp, {"power", "at_voltage"}, {"power"}},
      {"motor", InsideType::motor, {"power", "current", "at_voltage", "resistance"}, {"power", "current"}},
      {"coil", InsideType::coil, {"resistance", "pull_in", "drop_out"}, {"resistance"}},
      {"contact", InsideType::contact, {"rest", "resistance", "rating"}, {}},
      {"switch", InsideType::switch_, {"worked_by", "resistance", "rating"}, {}},
      {"fuse", InsideType::fuse, {"rating", "family", "resistance"}, {"rating"}},
      {"diode", InsideType::diode, {"forward", "rating"}, {}},
      {"resistor", InsideType::resistor, {"resistance", "power"}, {"resistance"}},
      {"link", InsideType::link, {"resistance"}, {}},
      {"output", InsideType::output, {"rating", "resistance"}, {}},
      {"charger", InsideType::charger, {"at_voltage", "power", "resistance", "only_when"}, {"at_voltage"}},
  };
  return rules;
}

bool write_inside_key(Inside& inside, const InsideKey& key, const std::string& text, QuantityFault& fault) {
  if (key.set_number) {
    const auto number = parse_quantity(text, key.rule.dimension, key.rule.limits, fault);
    if (number) key.set_number(inside, *number);
    return number.has_value();
  }
  if (std::find(key.words.begin(), key.words.end(), text) != key.words.end()) {
    key.set_word(inside, text);
    return true;
  }
  const std::vector<std::string> words(key.words.begin(), key.words.end());
  fault = {DiagnosticId::unknown_word, quoted(text) + " is no `" + std::string(key.key) + "` of an inside element",
           suggest_and_list(text, words, "it is one of")};
  return false;
}

}  // namespace loomfolio
