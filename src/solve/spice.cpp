// SPDX-License-Identifier: MIT
#include "solve/spice.h"

#include <charconv>

#include "solve/branch_law.h"
#include "solve/defaults.h"
#include "solve/islands.h"

namespace loomfolio {
namespace {

// Shortest text that reads back as the same double.
std::string exact(double number) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number).ptr;
  return std::string(text, end);
}

struct Element {
  std::string number;  // of the branch
  std::string a, b, over;  // nodes, and the voltage expression
};

std::string resistor(const Element& e, double ohms) { return "R" + e.number + " " + e.a + " " + e.b + " " + exact(ohms) + "\n"; }
std::string behaviour(const Element& e, const std::string& amperes) {
  return "B" + e.number + " " + e.a + " " + e.b + " I=" + amperes + "\n";
}

std::string source(const Element& e, const Branch& branch) {
  const std::string emf = exact(branch.volts.number());
  if (branch.ohms == branch.charge_ohms)
    return "V" + e.number + " e" + e.number + " " + e.b + " " + emf + "\n" + "R" + e.number + " " + e.a + " e" + e.number + " " +
           exact(branch.ohms.number()) + "\n";
  const std::string above = "(" + e.over + "-" + emf + ")";
  return behaviour(e, "max(" + above + ",0)/" + exact(branch.charge_ohms.number()) + "+min(" + above + ",0)/" +
                          exact(branch.ohms.number()));
}

std::string lamp(const Element& e, const Branch& branch) {
  const std::string knee = exact(cold_knee(branch));
  const std::string hot = "sgn(" + e.over + ")*" + exact(branch.amperes.number()) + "*pow(max(abs(" + e.over + ")," + knee + ")/" +
                          exact(branch.volts.number()) + "," + exact(standard::lamp_exponent) + ")";
  return behaviour(e, "(abs(" + e.over + ")<=" + knee + ")?(" + e.over + "/" + exact(branch.ohms.number()) + "):(" + hot + ")");
}

std::string diode(const Element& e, const Branch& branch) {
  // Boltzmann over elementary charge, CODATA 2014, at 300.15 K.
  const double thermal = 1.38064852e-23 * 300.15 / 1.6021766208e-19;
  const std::string model = "dm" + e.number;
  return "D" + e.number + " " + e.a + " " + e.b + " " + model + "\n.model " + model + " D(IS=" + exact(diode_saturation) +
         " N=" + exact(diode_scale(branch) / thermal) + ")\n" + "RD" + e.number + " " + e.a + " " + e.b + " " +
         exact(1 / diode_leak) + "\n";
}

std::string constant_power(const Element& e, const Branch& branch) {
  const double half = branch.volts.number() / 2, watts = branch.volts.number() * branch.amperes.number();
  return behaviour(e, "(abs(" + e.over + ")<" + exact(half) + ")?(" + e.over + "*" + exact(watts / (half * half)) + "):(" + exact(watts) +
                          "*sgn(" + e.over + ")/max(abs(" + e.over + ")," + exact(half) + "))");
}

std::string clamp(const std::string& value, double least, double most) {
  return "max(" + exact(least) + ",min(" + exact(most) + "," + value + "))";
}

// What does not rise with voltage gets the solver's slope of a billionth of a siemens beside it.
std::string flat_behaviour(const Element& e, const std::string& amperes) {
  return behaviour(e, amperes) + "RF" + e.number + " " + e.a + " " + e.b + " 1e9\n";
}

std::string element(const Element& e, const Branch& branch) {
  const double ohms = branch.ohms.number(), amperes = branch.amperes.number();
  switch (branch.law) {
    case Law::conductor: return resistor(e, ohms);
    case Law::source: return source(e, branch);
    case Law::lamp: return lamp(e, branch);
    case Law::diode: return diode(e, branch);
    case Law::constant_power: return constant_power(e, branch);
    case Law::constant_current: 
      return flat_behaviour(e, clamp(e.over + "*" + exact(10 * amperes / branch.volts.number()), -amperes, amperes));
    case Law::limited:
      return amperes > 0 ? flat_behaviour(e, clamp(e.over + "/" + exact(ohms), -amperes, amperes)) : resistor(e, ohms);
    case Law::charger: {
      const double most = amperes > 0 ? amperes : 1e9;
      return flat_behaviour(e, "-" + clamp("(" + exact(branch.volts.number()) + "-" + e.over + ")/" + exact(ohms), 0, most));
    }
  }
  return {};
}

}  // namespace

std::string spice_node(const Circuit& circuit, int node) {
  return node == circuit.reference ? "0" : "n" + std::to_string(node);
}

std::string write_netlist(const NetlistRequest& request) {
  const Circuit& circuit = request.circuit;
  std::string text = "* " + request.title + "\n";
  if (request.build)
    for (int node = 0; node < circuit.node_count; ++node)
      text += "* " + spice_node(circuit, node) + " is " + node_name(*request.build, circuit, node) + "\n";
  Islands islands(circuit.node_count);
  for (std::size_t i = 0; i < circuit.branches.size(); ++i) {
    const Branch& branch = circuit.branches[i];
    if (branch.a == branch.b || !is_active(branch, request.relays, request.flash)) continue;
    islands.join(branch.a, branch.b);
    Element e{std::to_string(i), spice_node(circuit, branch.a), spice_node(circuit, branch.b), {}};
    e.over = "(v(" + e.a + ")-v(" + e.b + "))";
    if (e.a == "0") e.over = "(-v(" + e.b + "))";
    if (e.b == "0") e.over = "v(" + e.a + ")";
    text += element(e, branch);
  }
  for (int node = 0; node < circuit.node_count; ++node)
    if (islands.root(node) == node && !islands.are_joined(node, circuit.reference))
      text += "RP" + std::to_string(node) + " " + spice_node(circuit, node) + " 0 1\n";
  return text;
}

}  // namespace loomfolio
