// SPDX-License-Identifier: MIT
#include "solve/branch_law.h"

#include <algorithm>
#include <cmath>

#include "solve/defaults.h"

namespace loomfolio {
namespace {

constexpr double flat = 1e-9;  // slope of a law where it does not rise, S

double conductance(Ohms ohms) { return 1 / std::max(ohms.number(), least_branch_ohms); }

Working lamp(const Branch& branch, double volts) {
  const double over = std::abs(volts);
  if (over <= cold_knee(branch)) return {volts * conductance(branch.ohms), conductance(branch.ohms)};
  const double amperes = branch.amperes.number() * std::pow(over / branch.volts.number(), standard::lamp_exponent);
  return {std::copysign(amperes, volts), standard::lamp_exponent * amperes / over};
}

Working source(const Branch& branch, double volts) {
  const double over = volts - branch.volts.number();
  const double siemens = conductance(over > 0 ? branch.charge_ohms : branch.ohms);
  return {over * siemens, siemens};
}

// Straight above 1 kA, so that a first guess far off stays a number.
Working diode(const Branch& branch, double volts) {
  constexpr double greatest = 1000;
  const double scale = diode_scale(branch);
  const double knee = scale * std::log(greatest / diode_saturation);
  if (volts > knee) {
    const double siemens = greatest / scale + diode_leak;
    return {greatest + diode_leak * knee + siemens * (volts - knee), siemens};
  }
  const double grown = diode_saturation * std::exp(volts / scale);
  return {grown - diode_saturation + diode_leak * volts, grown / scale + diode_leak};
}

Working constant_power(const Branch& branch, double volts) {
  const double watts = branch.volts.number() * branch.amperes.number();
  const double least = branch.volts.number() / 2;
  if (std::abs(volts) < least) return {volts * watts / (least * least), watts / (least * least)};
  return {watts / volts, flat};  // the true slope is negative: taken as flat, the steps stay downhill
}

Working constant_current(const Branch& branch, double volts) {
  const double least = branch.volts.number() / 10;
  if (std::abs(volts) >= least) return {std::copysign(branch.amperes.number(), volts) + flat * volts, flat};
  return {volts * (branch.amperes.number() / least + flat), branch.amperes.number() / least + flat};
}

Working limited(const Branch& branch, double volts) {
  const double siemens = conductance(branch.ohms);
  const double limit = branch.amperes.number();
  const double amperes = volts * siemens;
  if (limit <= 0 || std::abs(amperes) <= limit) return {amperes, siemens};
  return {std::copysign(limit, volts) + flat * volts, flat};
}

Working charger(const Branch& branch, double volts) {
  const double siemens = conductance(branch.ohms);
  const double given = (branch.volts.number() - volts) * siemens;
  const double limit = branch.amperes.number();
  if (given <= 0) return {flat * volts, flat};
  if (limit > 0 && given >= limit) return {-limit + flat * volts, flat};
  return {-given + flat * volts, siemens + flat};
}

}  // namespace

double cold_knee(const Branch& branch) {
  const double share = branch.ohms.number() * branch.amperes.number() / branch.volts.number();
  return branch.volts.number() * std::pow(share, 1 / (1 - standard::lamp_exponent));
}

double diode_scale(const Branch& branch) { return branch.volts.number() / std::log(1 / diode_saturation + 1); }

Working work(const Branch& branch, double volts) {
  switch (branch.law) {
    case Law::conductor: return {volts * conductance(branch.ohms), conductance(branch.ohms)};
    case Law::source: return source(branch, volts);
    case Law::lamp: return lamp(branch, volts);
    case Law::diode: return diode(branch, volts);
    case Law::constant_power: return constant_power(branch, volts);
    case Law::constant_current: return constant_current(branch, volts);
    case Law::limited: return limited(branch, volts);
    case Law::charger: return charger(branch, volts);
  }
  return {};
}

Working starting_line(const Branch& branch) {
  const double siemens = conductance(branch.ohms);
  const double rated = branch.volts.number() > 0 ? branch.amperes.number() / branch.volts.number() : siemens;
  switch (branch.law) {
    case Law::conductor:
    case Law::limited: return {0, siemens};
    case Law::source:
    case Law::charger: return {-branch.volts.number() * siemens, siemens};
    case Law::lamp:
    case Law::constant_power:
    case Law::constant_current: return {0, rated};
    case Law::diode: return {0, diode_leak};
  }
  return {};
}

}  // namespace loomfolio
