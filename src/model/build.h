// SPDX-License-Identifier: MIT
// One machine or kit in one hook-up, as described: plain data, already read and resolved. Nothing here decides.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/geometry.h"
#include "base/ids.h"
#include "base/quantity.h"
#include "diag/source.h"
#include "model/kind.h"

namespace loomfolio {

enum class Scope : std::uint8_t { machine, kit };
enum class UnitSystem : std::uint8_t { metric, imperial };

struct Document {
  std::string title, subtitle, job, revision, date, language = "en", paper = "A4", workshop, checked_by;
  Scope scope = Scope::machine;
  UnitSystem units = UnitSystem::metric;
  Origin origin;
};

/// Largest voltage drops allowed over a function's whole loop.
struct DropLimits {
  Volts starter{0.8}, charging{0.4}, lighting{0.6}, ignition{0.5}, control{1.0}, other{0.5};
};

struct Electrics {
  Volts nominal{12}, resting{12.6}, running{14.2}, cranking{9.6};
  bool is_positive_earth = false;
  Celsius ambient{40};
  DropLimits drop_limits;
  Origin origin;
};

struct Zone {
  std::string id, label;
  Metres place;  ///< along the machine from the front; orders zones
  Origin origin;
};

enum class OwnerType : std::uint8_t { part, splice, earth };

/// An electrical point where wires end. `kind_terminal` indexes Kind::terminals for parts, else -1.
struct Terminal {
  OwnerType owner = OwnerType::part;
  std::int32_t owner_index = -1;  ///< PartId, SpliceId or EarthId by `owner`
  int kind_terminal = -1;
  std::string name;               ///< as in the spec: `relay.86`, `S1`, `E2`
};

/// Who brings a part or a wire. In a kit: the bag, or the machine, which has it already; on a whole machine all is fitted.
enum class Provider : std::uint8_t { kit, machine };

/// Where the plugs of a sealed connector's empty cavities come from.
enum class PlugSource : std::uint8_t {
  unsaid,   ///< of the kit's connector the bag; of the machine's nothing is known
  bag,      ///< loose in the bag
  fitted,   ///< they sit in the connector as it comes
  nowhere,  ///< not in the bag: the fitter brings them
};

struct Part {
  std::string id, label;
  KindId kind;
  ZoneId zone;
  std::vector<TerminalId> terminals;  ///< one each of Kind::terminals, in that order
  std::vector<Inside> insides;        ///< the kind's, with this part's values filled in
  std::vector<std::pair<std::string, std::string>> values;  ///< values in force, as written, in the kind's order
  std::string value_text;             ///< what to print under its name: '12 V 9 Ah', '55/60 W'; may be empty
  std::string note;
  Provider provided = Provider::kit;
  PlugSource plugs = PlugSource::unsaid;
  std::vector<Range<Amperes>> fuse_choice;  ///< a fuse left to the fitter: least and greatest rating in the bag; else empty
  Origin origin;
};

struct Splice {
  std::string id, label, note;
  ZoneId zone;
  TerminalId terminal;
  Origin origin;
};

/// A place where wires bolt to frame or engine. All earths are one electrical node with the battery's earthed pole.
struct Earth {
  std::string id, label, place, thread;
  ZoneId zone;
  TerminalId terminal;
  std::optional<Ohms> resistance;  ///< of the way through the metal to the battery's strap; unset: 2 mohm, from memory
  Origin origin;
};

struct WireColour {
  std::string base;    ///< IEC 60757 letters: RD
  std::string stripe;  ///< may be empty
  std::string text() const { return stripe.empty() ? base : base + "/" + stripe; }
};

/// Insulation families, as in the outside-diameter tables.
enum class Insulation : std::uint8_t { thin_wall, thick_wall, cross_linked, silicone, battery_cable };

struct Wire {
  std::string id;  ///< printed at both ends
  TerminalId from, to;
  WireColour colour;
  SquareMillimetres area;     ///< 0 while `is_auto_size`
  std::string size_text;      ///< as given: '2.5 mm2', '14 AWG'
  bool is_auto_size = false;
  std::optional<Metres> length;
  Insulation insulation = Insulation::thin_wall;
  std::optional<Millimetres> outside;  ///< over the insulation, when the spec gives it
  std::string purpose;
  Provider provided = Provider::kit;
  std::string cable;  ///< wires with the same word are twisted or sheathed together; may be empty
  Origin origin;
};

enum class EngineState : std::uint8_t { stopped, cranking, running };

/// What a part, or one element inside it, should be doing.
enum class Expected : std::uint8_t { on, off, dim, flashing, charging };

struct InsideRef {
  PartId part;
  int inside = -1;  ///< index into Part::insides; -1: the part as a whole
  friend auto operator<=>(const InsideRef&, const InsideRef&) = default;
};

struct Setting {
  InsideRef actuator;  ///< a switch
  int position = 0;    ///< index into its positions
  Where where;
};

struct Expectation {
  InsideRef what;
  Expected state = Expected::on;
  Where where;
};

/// Switch positions and engine state for which the circuit is solved.
struct Situation {
  std::string name, label;
  EngineState engine = EngineState::stopped;
  std::vector<Setting> settings;      ///< switches not named stand at rest
  std::string after;                  ///< name of the situation it starts from (relays latch); may be empty
  std::vector<Expectation> expectations;
  Origin origin;
};

/// What only the author knows, slotted beside a generated step.
struct AuthorStep {
  std::string before, after;  ///< a stage: "bracket", "earths", "signals", "supply", "fuses", "battery", "tests"
  std::string text, caution;
  std::vector<std::string> bag, tools;  ///< what it takes from the bag that is no part of the electrics; what it is done with
  Origin origin;
};

struct Change {
  std::string revision, date, what, why;
  Origin origin;
};

/// A maker's opening curve as a person gives it, in place of the program's own gates.
struct FuseCurvePoint {
  double percent = 100;                ///< of the rating
  std::optional<Seconds> least, most;  ///< opens not before, not after; unset: the data sheet states none
};
struct FuseCurve {
  std::string family;  ///< of the fuses it holds for, as in Inside::family
  std::string name;    ///< where it is from, for people: 'data sheet of the fuses in the kit'
  std::vector<FuseCurvePoint> points;  ///< rising; the first is what the fuse must carry
  std::optional<Amperes> breaking;     ///< breaking capacity; unset: the family's
  Origin origin;
};

/// What diagrams are cut by, in the order of the sheets.
constexpr std::array<std::string_view, 9> diagram_functions{"supply",     "charging",    "starting",    "ignition", "lighting",
                                                            "signalling", "instruments", "accessories", "control"};

/// A part or a splice as it stands on a diagram.
struct DrawnThing {
  OwnerType owner = OwnerType::part;
  std::int32_t index = -1;  ///< into Build::parts or Build::splices
  friend bool operator==(const DrawnThing&, const DrawnThing&) = default;
};

struct PinWish {
  DrawnThing thing;
  std::vector<Side> edges;  ///< of its zone's band: one, or two that meet in a corner
  Where where;
};

/// [layout]: what the author asks of the diagrams. Wishes about things that a hook-up has not are left out of its build.
struct LayoutWishes {
  std::vector<PinWish> pins;
  std::vector<std::string_view> sheet_of_wire;  ///< by WireId, one of `diagram_functions`; empty: where its current belongs
  std::vector<std::pair<DrawnThing, DrawnThing>> apart;
  std::vector<std::pair<WireId, WireId>> wires_apart;
  std::vector<std::vector<WireId>> gathered;  ///< drawn as one thick course where they run side by side, at least two each
  std::vector<WireId> loose;                  ///< never drawn in one
};

/// One hook-up, whole: a variant's additions and removals are already applied.
struct Build {
  Document document;
  Electrics electrics;
  std::string variant;        ///< name; empty when the spec has none
  std::string variant_label;  ///< for people
  std::string variant_when;   ///< when to choose it: 'Your machine has a control unit'
  std::vector<Zone> zones;
  std::vector<Kind> kinds;
  std::vector<Part> parts;
  std::vector<Terminal> terminals;
  std::vector<Splice> splices;
  std::vector<Earth> earths;
  std::vector<Wire> wires;
  std::vector<Situation> situations;
  std::vector<AuthorStep> steps;
  std::vector<Change> changes;
  std::vector<FuseCurve> fuse_curves;  ///< at most one a family
  LayoutWishes layout;

  const Part& part(PartId id) const { return parts[id.at()]; }
  const Kind& kind(KindId id) const { return kinds[id.at()]; }
  const Kind& kind_of(const Part& p) const { return kinds[p.kind.at()]; }
  const Terminal& terminal(TerminalId id) const { return terminals[id.at()]; }
  const Wire& wire(WireId id) const { return wires[id.at()]; }
  const Zone& zone(ZoneId id) const { return zones[id.at()]; }
};

/// A spec read whole: one Build a variant (exactly one when it has none), and the text it came from.
struct Project {
  std::vector<Build> builds;
  std::string fingerprint;  ///< of the spec's text, 16 hex digits
};

/// The zone a terminal's owner stands in.
ZoneId zone_of(const Build& build, TerminalId terminal);
/// What a person calls the terminal: 'Starter relay 86', 'splice S1', 'earth E2'.
std::string call_terminal(const Build& build, TerminalId terminal);
/// Wires that end at each terminal, by TerminalId, in wire order.
std::vector<std::vector<WireId>> wires_at_terminals(const Build& build);
/// Whether a wire ends there.
bool has_wire(const Build& build, TerminalId terminal);
/// Where a switch stands in the situation, an index into its positions: as it says, else at rest.
int position_in(const Build& build, const Situation& situation, InsideRef element);
/// A switch that a person moves with hand or foot, the key aside.
bool is_hand_or_foot_switch(const Inside& inside);
/// '2.5 mm2' or '14 AWG': the size as printed.
std::string print_size(const Wire& wire);

}  // namespace loomfolio
