// SPDX-License-Identifier: MIT
// Does each fuse save its wires? A dead short to earth at the far end of every wire in every situation, what opens and when, against
// what the wire stands; and each fuse against its load, its inrush, the fuses above it and the current it can break.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "solve/ampacity.h"
#include "solve/charging_extremes.h"
#include "solve/fuse_curve.h"
#include "solve/wire_load.h"

namespace loomfolio {

/// One wire, at its worst situation.
struct WireProtection {
  WireVerdict verdict = WireVerdict::never_live;
  SituationId situation;     ///< that decides; unset: never live
  InsideRef fuse;            ///< nearest above it; part unset: none
  TerminalId far_end;        ///< where the short is
  Amperes fault{0};          ///< least through the wire: hot wires, hot fuses, nominal volts
  Amperes prospective{0};    ///< greatest over the situations: cold wires, rested battery
  Amperes fuse_fault{0};     ///< through `fuse` then: more than `fault` where it feeds the short by other wires too
  Seconds opens{0};          ///< the slowest the first fuse opens at `fuse_fault`; infinite: not promised
  Seconds stands{0};         ///< how long the wire stands `fault`; infinite: for ever
  Amperes ampacity{0};       ///< for ever, at the build's ambient in its bundle
  Bundle bundle;
  bool carries_135 = true;   ///< it carries 1.35 x the fuse's rating for ever, where opening is not promised below
};

/// What is behind a fuse goes off when it opens.
struct Stopped {
  InsideRef what;
  SituationId situation;  ///< first situation in which it shows
};

struct FuseStudy {
  InsideRef fuse;
  Amperes rating;
  std::shared_ptr<const FuseFamily> family;  ///< never null; its `set` says whose curve was used
  Amperes load{0};              ///< worst over the situations, also with the charging dead
  SituationId situation;        ///< in which
  bool is_uncharged = false;    ///< it carries `load` when the charging is dead: the battery feeds what the generator did
  double load_share = 0;        ///< load over rating: to 0.75 good, to 0.80 noted, above warned, above 1 wrong
  Amperes at_once{0};           ///< with every switch where the fuse carries most (at_once.h); never less than `load`; 0: not studied
  SituationId at_once_from;     ///< which situation's engine and other switches that is with
  std::vector<Setting> at_once_moved;  ///< switches that stand otherwise than in it
  Amperes into_empty{0};        ///< most while the generator charges an empty battery; 0: not studied, or nothing charges
  SituationId into_empty_from;
  double inrush_share = 0;      ///< energy of cold filaments and standing motors over its least melting energy
  SituationId inrush_situation;
  Amperes prospective{0};       ///< dead short right behind it
  std::vector<WireId> wires;    ///< whose nearest fuse it is
  WireId thinnest;              ///< the one of them that carries least for ever, `limited` ones only where all are; unset: none
  std::vector<Stopped> stops;
  bool stops_all_parked = false;  ///< in each situation with the engine stopped everything goes off, and something works there
  std::vector<Stopped> stops_running;  ///< of `stops`, those that go off with the engine running
  bool is_in_earth_side = false;  ///< no situation puts a live feed on it, but current returns through it
};

enum class Selectivity : std::uint8_t { proven, not_proven };
/// Two fuses in series: does the lower open, at its slowest, before the upper, at its fastest, up to the prospective current?
struct FusePair {
  InsideRef upper, lower;
  Selectivity selectivity = Selectivity::not_proven;
  Amperes prospective{0};
  Amperes fails_from{0};  ///< least current at which it is not proven
};

/// From a battery's live pole to the first fuse on a way, along wires that nothing protects.
struct UnfusedLead {
  std::vector<WireId> wires;  ///< in order from the pole
  Metres length{0};           ///< unknown lengths count as 1 m
  InsideRef fuse;             ///< that ends it; part unset: the way ends without one
  bool is_starter = false;    ///< part of the starter motor's cable
};

/// One rating of a fuse that the kit leaves to the fitter.
struct FuseChoiceRow {
  Amperes rating;
  double load_share = 0;
  WireVerdict verdict = WireVerdict::not_studied;  ///< of the worst wire behind it
  WireId wire;                                     ///< that wire
  bool carries_135 = true;                         ///< every wire behind it carries for ever what the fuse may not open at
};
struct FuseChoice {
  InsideRef fuse;
  std::vector<FuseChoiceRow> rows;  ///< ratings on sale within the part's range, rising
  Amperes best{0};                  ///< smallest with load_share to 0.80 and no worse than opens_slowly; 0: none
};

struct ProtectionStudy {
  std::vector<WireProtection> wires;  ///< by WireId
  std::vector<FuseStudy> fuses;       ///< in order of parts
  std::vector<FusePair> pairs;
  std::vector<UnfusedLead> leads;
  std::vector<FuseChoice> choices;
  std::vector<ChargingExtreme> charging;  ///< what `into_empty` is from
};

ProtectionStudy study_protection(const Build& build, const std::vector<Solution>& solutions);

/// A wire against one fuse alone, for currents from where the fuse surely opens to `greatest`, what the wire gets of the strongest short;
/// `least` is what the fuse gets of the weakest.
struct JudgeRequest {
  const Wire& wire;
  Celsius ambient;
  Amperes ampacity;
  const FuseFamily& family;
  Amperes rating, least, greatest;
};
WireVerdict judge_wire(const JudgeRequest& request);
/// The least current, from where the fuse surely opens to the strongest short, that hurts the wire before the slowest fuse opens:
/// an overload or a short. Nothing: it saves the wire from all of them.
std::optional<Amperes> hurts_from(const JudgeRequest& request);

/// Whether `lower` is proven to open first for every current up to `prospective`; `fails_from` is set where it is not.
Selectivity judge_pair(const FuseFamily& upper, Amperes upper_rating, const FuseFamily& lower, Amperes lower_rating,
                       Amperes prospective, Amperes& fails_from);

}  // namespace loomfolio
