// SPDX-License-Identifier: MIT
// Typed indices into the vectors that a Build owns.
#pragma once

#include <compare>
#include <cstdint>

namespace loomfolio {

/// An index of one kind of thing; -1 is 'none'. Order is the order of the vector, which is the order in the spec.
template <class Tag>
struct Id {
  std::int32_t index = -1;
  constexpr bool is_set() const { return index >= 0; }
  constexpr std::size_t at() const { return static_cast<std::size_t>(index); }
  friend constexpr auto operator<=>(Id, Id) = default;
};

using ZoneId = Id<struct ZoneTag>;
using KindId = Id<struct KindTag>;
using PartId = Id<struct PartTag>;
using TerminalId = Id<struct TerminalTag>;  ///< into Build::terminals: of parts, splices and earths alike
using SpliceId = Id<struct SpliceTag>;
using EarthId = Id<struct EarthTag>;
using WireId = Id<struct WireTag>;
using SituationId = Id<struct SituationTag>;

}  // namespace loomfolio
