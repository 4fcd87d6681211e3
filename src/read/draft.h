// SPDX-License-Identifier: MIT
// A spec as read, before its variants are made: items hold names where a Build holds ids.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "read/read.h"
#include "read/table_reader.h"

namespace loomfolio {

struct WireDraft {
  Wire wire;
  PlacedText from, to;
  std::optional<Provider> provided;  ///< as written; else by its ends
};

struct SettingDraft {
  PlacedText actuator, position;
};

struct ExpectationDraft {
  PlacedText what;
  Expected state = Expected::on;
};

struct SituationDraft {
  Situation situation;
  PlacedText after;
  std::vector<SettingDraft> settings;
  std::vector<ExpectationDraft> expectations;
};

/// Items of the base, or those that a variant adds. A part's `kind` indexes SpecDraft::kinds; unset when it is unknown.
struct ItemsDraft {
  std::vector<Part> parts;
  std::vector<Splice> splices;
  std::vector<Earth> earths;
  std::vector<WireDraft> wires;
  std::vector<SituationDraft> situations;
  std::vector<AuthorStep> steps;
};

struct VariantDraft {
  std::string name, label, when;
  std::vector<PlacedText> without;
  ItemsDraft items;
  Origin origin;
};

struct SheetDraft {
  PlacedText thing;
  std::string_view function;  ///< one of diagram_functions
  Where where;
};

struct LayoutDraft {
  std::vector<std::pair<PlacedText, std::vector<Side>>> pins;
  std::vector<SheetDraft> sheets;
  std::vector<std::pair<PlacedText, PlacedText>> apart;
  std::vector<std::vector<PlacedText>> gathered;
  std::vector<PlacedText> loose;
};

struct SpecDraft {
  Document document;
  Electrics electrics;
  std::vector<Zone> zones;
  std::vector<Kind> kinds;  ///< the library's, and the spec's own in place of or behind them
  ItemsDraft base;
  std::vector<VariantDraft> variants;
  std::vector<Change> changes;
  std::vector<FuseCurve> fuse_curves;
  LayoutDraft layout;
};

// The readers of the tables, one file each.
Document read_document(TableReader& spec, const Library& library);
Electrics read_electrics(TableReader& spec);
std::vector<Zone> read_zones(TableReader& spec);
void read_own_kinds(SpecDraft& draft, TableReader& spec);
/// Everything that a variant may add. `prefix` is "" or "variant.", for messages.
void read_items(ItemsDraft& items, const SpecDraft& draft, TableReader& owner, const std::string& prefix);
std::vector<Part> read_parts(const SpecDraft& draft, TableReader& owner, const std::string& prefix);
std::vector<Splice> read_splices(const SpecDraft& draft, TableReader& owner, const std::string& prefix);
std::vector<Earth> read_earths(const SpecDraft& draft, TableReader& owner, const std::string& prefix);
std::vector<WireDraft> read_wires(TableReader& owner, const std::string& prefix);
std::vector<SituationDraft> read_situations(TableReader& owner, const std::string& prefix);
/// A step may stand beside a stage, or beside one of `parts`.
std::vector<AuthorStep> read_steps(const std::vector<Part>& parts, TableReader& owner, const std::string& prefix);
std::vector<Change> read_changes(TableReader& spec);
std::vector<FuseCurve> read_fuse_curves(TableReader& spec);
LayoutDraft read_layout(TableReader& spec);
std::vector<VariantDraft> read_variants(const SpecDraft& draft, TableReader& spec);

/// The zone that `zone` names; a finding when there is none.
ZoneId read_zone_name(const SpecDraft& draft, TableReader& table);
/// Who brings a thing: `provided = "kit"` or "machine".
std::optional<Provider> read_provider(TableReader& table);
/// A date "2026-11-02", checked; empty when it is not written or none.
std::string read_date(TableReader& table, Need need);
WireColour read_colour(TableReader& table);

/// Numbers every wire that has no id: the base's first, then each variant's, skipping ids that are given.
void number_wires(SpecDraft& draft);

/// One whole build: the base without what the variant removes, and with what it adds. `variant` may be null.
Build assemble_build(const SpecDraft& draft, const VariantDraft* variant, Diagnostics& findings);

}  // namespace loomfolio
