// SPDX-License-Identifier: MIT
// A kind of part: its terminals, its faces, and what is inside it. One file of layouts/parts/, or a [[kind]] of a spec.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/geometry.h"
#include "base/ids.h"
#include "base/quantity.h"
#include "diag/source.h"

namespace loomfolio {

/// How a wire is held at a terminal. Decides the fitting at the wire's end.
enum class TerminalForm : std::uint8_t {
  blade,    ///< tab or receptacle, `blade_width` wide
  stud,     ///< threaded stud or screw with a ring terminal, `thread`
  sealed,   ///< crimped contact with a wire seal in a connector cavity
  cavity,   ///< crimped contact in an unsealed connector cavity
  bullet,   ///< round push-in bullet and sleeve
  splice,   ///< crimped or soldered joint in the loom
  lead,     ///< a flying lead of the part, joined to the loom by a bullet or splice
  screw,    ///< bare end under a clamp screw
  push_on,  ///< high-tension push-on or screw-on cap
  body,     ///< the part's own metal: it earths where it is bolted
};

/// Which way one looks at a face. Printed beside every face: a mirror-image error is the main hazard.
enum class View : std::uint8_t { front, top, rear, underside, left_side, right_side, wire_side, mating_side };

/// Least and greatest of something a terminal takes.
template <class T>
struct Range {
  T least, most;
};

struct KindTerminal {
  std::string id;    ///< DIN 72552 where one exists: `30`, `86`, `56a`
  std::string name;  ///< its purpose, in a few words
  TerminalForm form = TerminalForm::lead;
  Side side = Side::bottom;                            ///< where it stands on the diagram's box
  int face = -1;                                       ///< index into Kind::faces, -1: not shown
  Point at;                                            ///< centre on that face, mm from its top left
  std::optional<Range<SquareMillimetres>> takes;       ///< conductor areas
  std::optional<Range<Millimetres>> insulation;        ///< outside diameters of the wire (the seal's range where sealed)
  std::optional<Millimetres> strip;                    ///< strip length; unset: 'per terminal maker'
  std::optional<Millimetres> blade_width;              ///< 6.3, 4.8, 2.8
  std::string thread;                                  ///< studs: M4, M5, M6, M8
  std::optional<NewtonMetres> torque;                  ///< unset: 'to the part maker's torque'
  int most_wires = 1;                                  ///< how many wire ends it takes
  bool may_stay_open = false;                          ///< a build may leave it without a wire
  Where where;
};

enum class ShapeType : std::uint8_t { rect, circle, line, polyline, text };

/// One stroke of a face's drawing, mm from the face's top left.
struct FaceShape {
  ShapeType type = ShapeType::rect;
  std::vector<Point> points;  ///< rect: top left; circle: centre; line, polyline: vertices; text: centre
  Millimetres width, height;  ///< rect
  Millimetres radius;         ///< circle; corner radius of a rect
  bool is_filled = false;     ///< pale fill
  bool is_thin = false;       ///< detail line instead of outline
  std::string text;
};

struct Face {
  std::string id;
  std::string name;
  View seen = View::front;
  Millimetres width, height;
  std::vector<FaceShape> shapes;
  std::string keying;  ///< what tells which way up it is, in words
};

enum class InsideType : std::uint8_t {
  source, load, lamp, motor, coil, contact, switch_, fuse, diode, resistor, link, output, charger
};

/// One position of a switch: the terminals (indices into Inside::nodes) that it joins, in groups.
struct SwitchPosition {
  std::string name;
  std::vector<std::vector<int>> joined;
};

/// When a control unit's output is on: an input that is earthed or live. All conditions must hold.
struct OutputCondition {
  int input = -1;  ///< index into Inside::nodes
  bool when_live = true;  ///< false: on when the input is earthed
};

/// One element inside a part. `nodes` are the points it joins: `{terminal >= 0}` a terminal of the kind, else an inner point.
/// Meaning of nodes by type: source, charger {plus, minus}; load, lamp, motor, coil, resistor, link {a, b}; fuse {feed, load};
/// diode {anode, cathode}; contact {a, b}; switch_ all its points; output {supply, out, earth, inputs ...}.
struct Inside {
  std::string id;
  std::string name;  ///< label of a lamp or pole, for people: 'dip', 'main'; may be empty
  InsideType type = InsideType::link;
  struct Node {
    int terminal = -1;  ///< index into Kind::terminals
    int inner = -1;     ///< index of an inner point, counted over the kind
  };
  std::vector<Node> nodes;

  // Values. Unset means the type's default, which solve/ documents. Voltages and currents are DC.
  std::optional<Watts> power;          ///< load, lamp, motor: at `at_voltage`; charger: greatest output
  std::optional<Volts> at_voltage;     ///< rated or test voltage of `power`; charger: regulated voltage
  std::optional<Ohms> resistance;      ///< source: internal; coil, resistor, link, contact and switch (closed), winding; motor: stalled
  std::optional<Amperes> rating;       ///< fuse; contact and switch: greatest current; output: its current limit
  std::optional<Amperes> current;      ///< load or motor drawn at `at_voltage` when given instead of power
  std::optional<AmpereHours> capacity; ///< source
  std::optional<Amperes> cranking;     ///< source: cold cranking amperes by EN 50342
  std::optional<Volts> pull_in;        ///< coil: closes its contacts at or above
  std::optional<Volts> drop_out;       ///< coil: lets go at or below
  std::optional<Volts> forward;        ///< diode
  std::string law;                     ///< load: "resistive" (default), "constant-power", "constant-current"
  std::string family;                  ///< fuse: blade_regular, blade_mini, blade_maxi, glass_ul, ... as in the gate tables
  std::string coil;                    ///< contact: id of the coil that works it
  bool closed_at_rest = false;         ///< contact
  bool flashes = false;                ///< contact of a flasher: opens and closes while its load is fed
  bool is_winding = false;             ///< resistor: a generator's phase winding; drawn as one
  bool is_secondary = false;           ///< resistor: high-tension winding; never carries the solved DC
  std::string only_when;               ///< load, charger: engine state it needs: "", "running", "cranking"
  std::vector<SwitchPosition> positions;
  int rest_position = 0;               ///< switch: where it stands unless a situation moves it
  bool is_sprung = false;              ///< switch: goes back to rest when let go
  std::string worked_by;               ///< switch: "hand", "foot", "pressure", "gear", "key", "clutch", "stand"
  std::vector<OutputCondition> conditions;  ///< output
  bool is_low_side = false;            ///< output joins out to earth instead of supply to out
  std::vector<int> fed_by;             ///< charger: nodes that must be joined to a generator
  bool is_spare = false;               ///< a fuse way a build may leave empty
  Where where;
};

/// A value of a kind that a part may set: its name and its default as written ("55 W"). Inside elements refer to it.
struct KindValue {
  std::string name;
  std::string standard;  ///< default, as written; empty: the part must give it
  std::string meaning;
};

/// One key of an inside element that takes its text from a value of the kind: `resistance = "=coil_resistance"`.
struct ValueUse {
  int inside = -1;    ///< index into Kind::insides
  std::string key;    ///< of the element: `resistance`
  std::string value;  ///< name of the KindValue
  Where where;
};

struct Kind {
  std::string id;
  std::string name;   ///< general trade name
  std::string group;  ///< supply, protection, switching, starting, charging, ignition, lighting, signalling, instruments, accessories, connecting, control
  std::string letter; ///< IEC 81346-2 class letter
  std::string about;  ///< what it does, one or two plain sentences
  std::string mounting;  ///< where and how it mounts, one or two plain sentences; may be empty
  bool is_acting = false;  ///< it does something worth explaining: relay, switch, regulator
  bool is_connector = false;  ///< wires pass through it
  std::vector<KindValue> values;
  std::vector<ValueUse> value_uses;
  std::string value_text;  ///< pattern of Part::value_text, `{power}` standing for a value; may be empty
  std::vector<KindTerminal> terminals;
  std::vector<Face> faces;
  std::vector<Inside> insides;  ///< with the kind's own values filled in
  int inner_points = 0;
  Origin origin;
};

}  // namespace loomfolio
