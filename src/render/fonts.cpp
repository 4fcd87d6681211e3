// SPDX-License-Identifier: MIT
#include <array>
#include <fstream>
#include <iterator>
#include <set>
#include <utility>

#include "render/font_set.h"

namespace loomfolio {
namespace {

std::string read_file(const std::string& path, std::string& error) {
  std::ifstream file(path, std::ios::binary);
  if (!file) error = "cannot read `" + path + "`";
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

const FcChar8* bytes(const std::string& text) { return reinterpret_cast<const FcChar8*>(text.c_str()); }

/// A fontconfig set-up that sees the faces of the list and nothing else; null with `error` set when that fails.
FontConfig load_faces(const std::string& set_up, const FaceList& list, std::string& error) {
  FontConfig config(FcConfigCreate());
  if (!config || !FcConfigParseAndLoadFromMemory(config.get(), bytes(set_up), FcTrue)) {
    error = "fonts.conf is not a fontconfig set-up";
    return {};
  }
  for (const TypeFace& face : list.faces)
    if (!FcConfigAppFontAddFile(config.get(), bytes(face.path)))
      error = "`" + face.path + "` is not a face that can be read (package " + face.package + ")";
  return error.empty() ? std::move(config) : FontConfig();
}

}  // namespace

FontSet::FontSet(const std::string& fonts_folder) : inside_(std::make_unique<Inside>()) {
  std::string& error = inside_->error;
  const std::string set_up = read_file(fonts_folder + "/fonts.conf", error);
  const std::string names = error.empty() ? read_file(fonts_folder + "/faces.toml", error) : std::string();
  if (!error.empty()) return;
  inside_->faces = parse_faces(names);
  if (inside_->faces.error.empty()) find_face_files(inside_->faces, face_roots(fonts_folder));
  error = inside_->faces.error;
  if (!error.empty()) return;
  FontConfig config = load_faces(set_up, inside_->faces, error);
  if (config) inside_->shaper = std::make_unique<Shaper>(std::move(config), inside_->faces);
}

FontSet::~FontSet() = default;

const TextMeasure& FontSet::measure() const {
  if (inside_->shaper) return *inside_->shaper;
  return inside_->rough;
}

const std::string& FontSet::error() const { return inside_->error; }

std::vector<std::string> FontSet::missing_glyphs(const std::string& text) const {
  std::vector<std::string> missing;
  if (!inside_->shaper) return missing;
  const FcFontSet* faces = FcConfigGetFonts(const_cast<FcConfig*>(inside_->shaper->config()), FcSetApplication);
  const auto has = [&](gunichar c) {
    for (int i = 0; faces && i < faces->nfont; ++i) {
      FcCharSet* characters = nullptr;
      if (FcPatternGetCharSet(faces->fonts[i], FC_CHARSET, 0, &characters) == FcResultMatch &&
          FcCharSetHasChar(characters, c))
        return true;
    }
    return false;
  };
  // Plain characters, which are nearly all, once each.
  std::array<bool, 128> is_known{};
  std::string once;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= is_known.size() || !std::exchange(is_known[byte], true)) once += c;
  }
  const std::string printable = make_printable(once);
  std::set<gunichar> asked;
  for (const char* at = printable.c_str(); *at; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (asked.insert(c).second && !pango_is_zero_width(c) && !has(c))
      missing.emplace_back(at, static_cast<const char*>(g_utf8_next_char(at)));
  }
  return missing;
}

}  // namespace loomfolio
