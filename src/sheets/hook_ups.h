// SPDX-License-Identifier: MIT
// Several hook-ups in one folio: what all of them share, so that it is printed once, and what each has of its own.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

/// Of one build, by index: whether every other build has the same.
struct SharedItems {
  std::vector<bool> parts;            ///< kind, label and values
  std::vector<bool> joints;           ///< the part, and every wire at it
  std::vector<bool> wires;            ///< both ends, colour, size, length, insulation
  std::vector<bool> splices, earths;  ///< and every wire there
  std::vector<bool> fuse_parts;       ///< joints, and all that their fuses feed
};

struct HookUps {
  std::vector<const SolvedBuild*> builds;
  std::vector<SharedItems> shared;  ///< by build
};

/// All that makes a wire what it is, in one text: wires of two hook-ups are the same when their texts are.
std::string describe_wire(const Build& build, const Wire& wire);

/// What a hook-up has of its own but tells beside the others', in the common run: a part that all have, joined otherwise
/// in each; a wire whose number means one wire throughout. None where the context shows one build.
bool is_told_beside(const SheetContext& context, PartId part);
bool is_told_beside(const SheetContext& context, WireId wire);

/// The context of each hook-up's own sheets, for a page of Extent::common that tells them side by side.
std::vector<SheetContext> own_contexts(const SheetContext& context);

HookUps compare_hook_ups(const std::vector<SolvedBuild>& builds);

/// A, B, C ...: how pages name the hook-ups.
std::string hook_up_letter(std::size_t index);
/// 'Hook-up A: Control unit with one start output'.
std::string hook_up_title(const SheetContext& context);

// Whether the page shows it: all when it shows a whole build; else by what is shared.
bool shows_part(const SheetContext& context, PartId part);
bool shows_joints(const SheetContext& context, PartId part);
bool shows_wire(const SheetContext& context, WireId wire);
bool shows_splice(const SheetContext& context, SpliceId splice);
bool shows_earth(const SheetContext& context, EarthId earth);
bool shows_fuse(const SheetContext& context, PartId part);
/// What the author says is common where every hook-up has it, word for word.
bool shows_step(const SheetContext& context, const AuthorStep& step);

/// Of several hook-ups, not all have this wire, part or fuse: pages mark it.
bool differs(const SheetContext& context, WireId wire);
bool differs(const SheetContext& context, PartId part);

}  // namespace loomfolio
