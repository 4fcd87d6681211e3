// SPDX-License-Identifier: MIT
// From a proved spec to pages on the disk: what print and compare share.
#pragma once

#include <memory>
#include <string>

#include "commands/progress.h"
#include "commands/proof.h"
#include "model/words.h"
#include "render/render.h"
#include "sheets/change_bars.h"
#include "sheets/folio.h"

namespace loomfolio {

/// One build of a proof that has solutions, with what was computed from it.
SolvedBuild solved_build(const Proof& proof, std::size_t build);

/// The file that every PDF carries: its spec.
inline constexpr const char* spec_attachment = "spec.toml";

/// What sheets are made with, beside the spec.
struct PagesKit {
  PagesKit(Words words_of, PaperPair paper_pair, const std::string& fonts_folder)
      : words(std::move(words_of)), papers(std::move(paper_pair)), fonts(fonts_folder) {}
  /// Of `proof`, which must outlive it as the kit must.
  FolioInput input_of(const Proof& proof) const;

  Words words;
  PaperPair papers;
  FontSet fonts;
};

/// For a proof without errors, whose kinds are put into the language of the pages. Nothing, said on `err`, where papers or faces are
/// missing.
std::unique_ptr<PagesKit> gather_pages_kit(const Request& request, Proof& proof, Surroundings& surroundings);

/// Draws and writes what the request asks for; what `earlier`, if any, did not say is marked. Returns the exit code.
int print_pages(const Request& request, Proof& proof, const EarlierFolio* earlier, Progress& progress, Surroundings& surroundings);

}  // namespace loomfolio
