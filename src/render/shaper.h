// SPDX-License-Identifier: MIT
// Text to placed glyphs, once for each text and style: what is measured is what is drawn.
#pragma once

#include <map>
#include <mutex>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "base/text_measure.h"
#include "render/faces.h"
#include "render/owners.h"

namespace loomfolio {

/// Glyphs of one face, from left to right, with the characters they stand for in the same order. Places are in points,
/// from the left end of the line, y down from the baseline.
struct ShapedRun {
  CairoScaledFont font;
  std::string utf8;
  std::vector<cairo_glyph_t> glyphs;
  std::vector<cairo_text_cluster_t> clusters;
};

/// A character that no face has: drawn as an empty box, so that a reader sees that something is missing.
struct MissingBox {
  double x = 0, width = 0;  ///< points
};

struct ShapedLine {
  std::vector<ShapedRun> runs;
  std::vector<MissingBox> missing;
  double width = 0, ascent = 0, descent = 0;  ///< points; descent is positive
};

/// Valid UTF-8 on one line: broken bytes become U+FFFD, control characters and line ends become spaces.
std::string make_printable(std::string_view text);

class Shaper final : public TextMeasure {
 public:
  Shaper(FontConfig config, const FaceList& list);
  ~Shaper() override;
  /// Stays valid as long as the shaper. May be asked by several threads.
  const ShapedLine& shape(std::string_view text, const TextStyle& style) const;
  TextSize measure(std::string_view text, const TextStyle& style) const override;
  const FcConfig* config() const { return config_.get(); }

 private:
  struct Key {
    std::string text;
    TextStyle style;
  };
  struct KeyView {
    std::string_view text;
    TextStyle style;
  };
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(const KeyView& key) const;
    std::size_t operator()(const Key& key) const { return (*this)(KeyView{key.text, key.style}); }
  };
  struct Equal {
    using is_transparent = void;
    template <class A, class B>
    bool operator()(const A& a, const B& b) const {
      return a.style == b.style && a.text == b.text;
    }
  };

  /// What the sans and the mono text is drawn with.
  struct Families {
    std::string all, fallback;       ///< in order, as Pango reads them: with the use's own face first, and with it last
    const FcCharSet* own = nullptr;  ///< the characters of the use's own face; belongs to config_
    bool is_plain_own = false;       ///< it has all of printable ASCII
  };

  Families gather_families(const FaceList& list, FaceUse use) const;
  const Families& families_of(const TextStyle& style) const { return families_[style.face == FaceName::mono ? 1 : 0]; }
  PangoContext* context_for(const TextStyle& style) const;
  PangoPiece plain_item(const std::string& text, const TextStyle& style) const;
  ShapedLine make_line(const std::string& text, const TextStyle& style) const;

  FontConfig config_;
  PangoMap map_;
  Families families_[2];  ///< by FaceName
  // Kept results only: the same question always has the same answer. Pages are thought out side by side, and Pango
  // bears one question at a time.
  mutable std::mutex asking_;
  mutable std::map<TextStyle, PangoShapeContext> contexts_;
  mutable std::map<std::pair<TextStyle, bool>, PangoPiece> plain_items_;  ///< by style, and whether there is a letter
  mutable std::unordered_map<Key, ShapedLine, Hash, Equal> lines_;
};

}  // namespace loomfolio
