// SPDX-License-Identifier: MIT
// A kind of part from its table: one file of layouts/parts/, or a [[kind]] of a spec.
#pragma once

#include <map>
#include <string>

#include "model/kind.h"
#include "read/table_reader.h"

namespace loomfolio {

/// Reads the whole table; what is wrong is reported and left out.
Kind read_kind(const TomlValue& table, const std::string& name, Diagnostics& findings);

/// Keys that every part has; a kind's value may not bear such a name.
const std::vector<std::string>& part_keys();

// The pieces, one file each.
void read_faces(Kind& kind, TableReader& table);
void read_kind_terminals(Kind& kind, TableReader& table);
void read_kind_values(Kind& kind, TableReader& table);
void read_insides(Kind& kind, TableReader& table);

/// Writes the kind's values, or a part's, into `insides`. `value_of` gives the text of a value; empty texts are left
/// unset. `where_of` gives the place to blame.
struct ValueText {
  std::string name, text;
  Where where;
};
void fill_insides(std::vector<Inside>& insides, const Kind& kind, const std::vector<ValueText>& values,
                  Diagnostics& findings);

/// A coil must let go below the voltage that pulls it in.
void check_coil_volts(const std::vector<Inside>& insides, Where where, std::string_view owner, Diagnostics& findings);

/// The points of a kind that its inside elements may join: terminals by id and inner points by name.
class PointNames {
 public:
  explicit PointNames(Kind& kind) : kind_(kind) {}
  /// A node for that name; a finding when it names neither a terminal nor an inner point.
  Inside::Node node(const PlacedText& name, TableReader& table);
  /// Inner points that a single element end uses, with their places.
  void refuse_lone_inner_points(TableReader& table) const;

 private:
  struct Inner {
    int index = -1, uses = 0;
    Where where;
  };
  Kind& kind_;
  std::map<std::string, Inner, std::less<>> inner_;
};

void read_switch(Inside& inside, PointNames& points, TableReader& table);
void read_output(Inside& inside, PointNames& points, TableReader& table);
void read_charger_feeds(Inside& inside, PointNames& points, TableReader& table);

}  // namespace loomfolio
