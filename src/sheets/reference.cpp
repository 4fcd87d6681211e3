// SPDX-License-Identifier: MIT
// A mark is: unit separator, 'n' or 'c', sheet id, record separator, anchor, unit separator. These control characters
// cannot be typed into a spec's text by accident, and no face draws them.
#include "sheets/reference.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

namespace loomfolio {
namespace {

constexpr char mark_edge = '\x1f', mark_middle = '\x1e';

struct Place {
  std::size_t sheet = 0;  ///< index into Folio::sheets
  std::string cell, anchor;
};

struct SheetPlaces {
  std::map<std::string, Place, std::less<>> sheets;              ///< by sheet id, or id of a run that begins on it
  std::map<std::pair<std::string, std::string>, Place> anchors;  ///< by sheet id and anchor
};

SheetPlaces find_places(const Folio& folio, const Paper& text_paper, const Paper& drawing_paper) {
  SheetPlaces places;
  for (std::size_t i = 0; i < folio.sheets.size(); ++i) {
    const Sheet& sheet = folio.sheets[i];
    places.sheets.emplace(sheet.id, Place{i, {}, {}});
    if (const std::size_t slash = sheet.id.find('/'); slash != std::string::npos)
      places.sheets.emplace(sheet.id.substr(0, slash + 1), Place{i, {}, {}});
    std::vector<std::string> runs{sheet.id};
    for (const JoinedRun& run : sheet.joined) {
      runs.push_back(run.id);
      places.sheets.emplace(run.id, Place{i, {}, run.id});
    }
    const PageShape page = page_of(sheet, text_paper, drawing_paper);
    for (const Item& item : sheet.items)
      if (const auto* anchor = std::get_if<AnchorItem>(&item)) {
        const Place place{i, grid_cell(page, anchor->at), anchor->name};
        if (const std::size_t slash = sheet.id.find('/'); slash != std::string::npos)
          places.anchors.emplace(std::pair(sheet.id.substr(0, slash + 1), anchor->name), place);
        for (const std::string& run : runs) {
          places.anchors.emplace(std::pair(run, anchor->name), place);
          places.anchors.emplace(std::pair(first_of_run(run), anchor->name), place);
          places.anchors.emplace(std::pair(family_of(run), anchor->name), place);
        }
      }
  }
  return places;
}

/// Calls `replace(kind, sheet, anchor)` for each mark and puts what it returns in the mark's place.
template <class Replace>
std::string replace_marks(std::string_view text, const Replace& replace) {
  std::string out;
  std::size_t at = 0;
  while (true) {
    const std::size_t begin = text.find(mark_edge, at);
    const std::size_t split = begin == std::string_view::npos ? begin : text.find(mark_middle, begin);
    const std::size_t end = split == std::string_view::npos ? split : text.find(mark_edge, split);
    if (end == std::string_view::npos) return out.append(text.substr(at));
    out.append(text.substr(at, begin - at));
    out += replace(text[begin + 1], text.substr(begin + 2, split - begin - 2), text.substr(split + 1, end - split - 1));
    at = end + 1;
  }
}

std::string make_mark(char kind, std::string_view sheet_id, std::string_view anchor) {
  std::string mark{mark_edge, kind};
  return mark.append(sheet_id).append(1, mark_middle).append(anchor).append(1, mark_edge);
}

class Resolver {
 public:
  explicit Resolver(const SheetPlaces& places) : places_(places) {}

  void resolve(std::string& text) {
    if (text.find(mark_edge) == std::string::npos) return;
    text = replace_marks(text, [this](char kind, std::string_view sheet, std::string_view anchor) -> std::string {
      const std::optional<Place> place = find(sheet, anchor);
      if (!place) return "\u2013";
      return kind == 'n' ? std::to_string(place->sheet + 1) : place->cell;
    });
  }

  /// The target's place; a miss is noted. What a hook-up's own sheets do not hold may stand on those common to all.
  std::optional<Place> find(std::string_view sheet, std::string_view anchor) {
    if (const auto place = look_up(sheet, anchor)) return place;
    if (const std::size_t slash = sheet.find('/'); slash != std::string_view::npos)
      if (const auto place = look_up(sheet.substr(slash + 1), anchor)) return place;
    std::string target(sheet);
    if (!anchor.empty()) target.append("#").append(anchor);
    missed_.push_back(std::move(target));
    return std::nullopt;
  }

  std::vector<std::string> take_missed() { return std::move(missed_); }

 private:
  std::optional<Place> look_up(std::string_view sheet, std::string_view anchor) const {
    if (anchor.empty()) {
      const auto found = places_.sheets.find(sheet);
      return found == places_.sheets.end() ? std::nullopt : std::optional(found->second);
    }
    const auto found = places_.anchors.find({std::string(sheet), std::string(anchor)});
    return found == places_.anchors.end() ? std::nullopt : std::optional(found->second);
  }

  const SheetPlaces& places_;
  std::vector<std::string> missed_;
};

}  // namespace

std::string first_of_run(std::string_view sheet_id) {
  const std::size_t dash = sheet_id.rfind('-');
  if (dash == std::string_view::npos || dash + 1 == sheet_id.size()) return std::string(sheet_id);
  const std::string_view number = sheet_id.substr(dash + 1);
  const bool is_number = number.find_first_not_of("0123456789") == std::string_view::npos;
  return std::string(is_number ? sheet_id.substr(0, dash) : sheet_id);
}

std::string family_of(std::string_view sheet_id) {
  const std::size_t slash = sheet_id.rfind('/');
  const std::size_t dash = sheet_id.find('-', slash == std::string_view::npos ? 0 : slash);
  return std::string(sheet_id.substr(0, dash));
}

std::string sheet_mark(std::string_view sheet_id, std::string_view anchor) { return make_mark('n', sheet_id, anchor); }

std::string cell_mark(std::string_view sheet_id, std::string_view anchor) { return make_mark('c', sheet_id, anchor); }

std::string widest(std::string_view text) {
  return replace_marks(text, [](char kind, std::string_view, std::string_view) { return kind == 'n' ? "000" : "W0"; });
}

std::vector<std::string> resolve_references(Folio& folio, const Paper& text_paper, const Paper& drawing_paper) {
  const SheetPlaces places = find_places(folio, text_paper, drawing_paper);
  Resolver resolver(places);
  const auto leads_nowhere = [](const Item& item) {
    const auto* link = std::get_if<LinkItem>(&item);
    return link != nullptr && link->sheet.empty();
  };
  for (Sheet& sheet : folio.sheets) {
    for (Item& item : sheet.items) {
      if (auto* text = std::get_if<TextItem>(&item)) resolver.resolve(text->text);
      if (auto* link = std::get_if<LinkItem>(&item)) {
        const std::optional<Place> place = resolver.find(link->sheet, link->anchor);
        link->sheet = place ? folio.sheets[place->sheet].id : std::string();
        link->anchor = place ? place->anchor : std::string();
      }
    }
    std::erase_if(sheet.items, leads_nowhere);
  }
  return resolver.take_missed();
}

}  // namespace loomfolio
