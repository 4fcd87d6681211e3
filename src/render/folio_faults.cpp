// SPDX-License-Identifier: MIT
#include "render/folio_faults.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>

namespace loomfolio {
namespace {

struct KnownTag {
  std::string_view name;
  std::string_view inside;  ///< the tag it must stand directly in; empty: anywhere
};

// ISO 32000-1, 14.8.4; Artifact is no structure element but stands among them here.
constexpr std::array known_tags = {
    KnownTag{"H1", ""},      KnownTag{"H2", ""},      KnownTag{"H3", ""},       KnownTag{"P", ""},
    KnownTag{"Sect", ""},    KnownTag{"Div", ""},     KnownTag{"Table", ""},    KnownTag{"TR", "Table"},
    KnownTag{"TH", "TR"},    KnownTag{"TD", "TR"},    KnownTag{"L", ""},        KnownTag{"LI", "L"},
    KnownTag{"Lbl", "LI"},   KnownTag{"LBody", "LI"}, KnownTag{"Span", ""},     KnownTag{"Note", ""},
    KnownTag{"Caption", ""}, KnownTag{"Figure", ""},  KnownTag{"Artifact", ""},
};

const KnownTag* find_tag(const std::string& name) {
  const auto found =
      std::find_if(known_tags.begin(), known_tags.end(), [&](const KnownTag& t) { return t.name == name; });
  return found == known_tags.end() ? nullptr : &*found;
}

using Anchors = std::map<std::string, std::set<std::string>>;  ///< by sheet

class FaultFinder {
 public:
  explicit FaultFinder(const Folio& folio) : folio_(folio) {}

  std::vector<std::string> find() {
    for (const Sheet& sheet : folio_.sheets) gather_places(sheet);
    for (const Sheet& sheet : folio_.sheets) check_sheet(sheet);
    return faults_;
  }

 private:
  void report(const Sheet& sheet, const std::string& what) { faults_.push_back("sheet `" + sheet.id + "`: " + what); }

  void gather_places(const Sheet& sheet) {
    if (sheet.id.empty()) report(sheet, "has no id");
    if (!places_.try_emplace(sheet.id).second) report(sheet, "there are two of this id");
    for (const Item& item : sheet.items)
      if (const auto* anchor = std::get_if<AnchorItem>(&item))
        if (!places_[sheet.id].insert(anchor->name).second) report(sheet, "two anchors `" + anchor->name + "`");
  }

  void check_sheet(const Sheet& sheet) {
    if (!(sheet.width > Millimetres(0) && sheet.height > Millimetres(0))) report(sheet, "has no size");
    open_.clear();
    for (const Item& item : sheet.items) std::visit([&](const auto& i) { check(sheet, i); }, item);
    for (const std::string& tag : open_) report(sheet, "tag `" + tag + "` is not closed");
  }

  void check(const Sheet&, const PathItem&) {}
  void check(const Sheet&, const RectItem&) {}
  void check(const Sheet&, const TextItem&) {}
  void check(const Sheet&, const AnchorItem&) {}

  void check(const Sheet& sheet, const LinkItem& link) {
    const auto found = places_.find(link.sheet);
    if (found == places_.end())
      report(sheet, "links to sheet `" + link.sheet + "`, which is not there");
    else if (!link.anchor.empty() && !found->second.contains(link.anchor))
      report(sheet, "links to `" + link.anchor + "` on sheet `" + link.sheet + "`, which is not there");
  }

  void check(const Sheet& sheet, const TagOpenItem& tag) {
    const KnownTag* known = find_tag(tag.tag);
    const std::string around = open_.empty() ? std::string() : open_.back();
    if (!known)
      report(sheet, "tag `" + tag.tag + "` is not known");
    else if (!known->inside.empty() && known->inside != around && !is_skipped())
      report(sheet, "tag `" + tag.tag + "` must stand in `" + std::string(known->inside) + "`");
    if (tag.tag == "Figure" && tag.alt.empty() && !is_skipped())
      report(sheet, "a figure has no text that stands for it");
    open_.push_back(tag.tag);
  }

  void check(const Sheet& sheet, const TagCloseItem&) {
    if (open_.empty())
      report(sheet, "closes a tag that is not open");
    else
      open_.pop_back();
  }

  bool is_skipped() const { return std::find(open_.begin(), open_.end(), "Artifact") != open_.end(); }

  const Folio& folio_;
  Anchors places_;
  std::vector<std::string> open_, faults_;
};

}  // namespace

std::vector<std::string> find_folio_faults(const Folio& folio) { return FaultFinder(folio).find(); }

bool is_known_tag(const std::string& tag) { return find_tag(tag) != nullptr; }

}  // namespace loomfolio
