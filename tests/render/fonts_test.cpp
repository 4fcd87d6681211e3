// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>
#include <stdlib.h>

#include <cmath>
#include <filesystem>
#include <fstream>

#include "render/faces.h"
#include "render/render_helper.h"

namespace loomfolio {
using test::fonts;

TEST_CASE("every face of the list is found") { CHECK(fonts().error() == ""); }

TEST_CASE("a missing face is an error that names its package") {
  FaceList list =
      parse_faces("[[face]]\nfamily = \"Loom\"\nfile = \"Loom-Regular.otf\"\npackage = \"fonts-loom\" # why\n");
  CHECK(list.error == "");
  find_face_files(list, {"/nowhere"});
  CHECK(list.error == "faces not found: `Loom-Regular.otf` (package fonts-loom)");
}

TEST_CASE("faces installed beside the set-up come first, then the package's folder, then anywhere below") {
  namespace fs = std::filesystem;
  std::string folder = (fs::temp_directory_path() / "loomfolio-test-XXXXXX").string();
  REQUIRE(mkdtemp(folder.data()));
  const auto put = [&](const std::string& path) {
    fs::create_directories(fs::path(folder + "/" + path).parent_path());
    std::ofstream(folder + "/" + path) << "a face";
  };
  const auto found = [&] {
    FaceList list =
        parse_faces("[[face]]\nfamily = \"L\"\nfile = \"L.otf\"\nfolder = \"opentype/l\"\npackage = \"fonts-l\"\n");
    find_face_files(list, {folder + "/fonts/faces", folder + "/share"});
    return list.faces[0].path;
  };
  put("share/z/L.otf");
  put("share/other/L.otf");
  CHECK(found() == folder + "/share/other/L.otf");
  put("share/opentype/l/L.otf");
  CHECK(found() == folder + "/share/opentype/l/L.otf");
  put("fonts/faces/L.otf");
  CHECK(found() == folder + "/fonts/faces/L.otf");
  fs::remove_all(folder);
}

TEST_CASE("a list of faces that cannot be read says which line") {
  CHECK(parse_faces("[[face]]\nfamily = B612\n").error == "faces.toml:2: `family = B612` is not a setting of a face");
  CHECK(parse_faces("family = \"B612\"\n").error == "faces.toml:1: `family = \"B612\"` is not a setting of a face");
  CHECK(parse_faces("[[face]]\nuse = \"serif\"\n").error ==
        "faces.toml:2: `use = \"serif\"` is not a setting of a face");
  CHECK(parse_faces("[[face]]\nfamily = \"B612\"\n").error ==
        "faces.toml: a face needs family, file and package; `B612` lacks one");
  CHECK(parse_faces("# nothing\n").error == "faces.toml: names no face");
}

TEST_CASE("a set-up that is not there is an error, and measuring stays rough") {
  const FontSet none("/nowhere");
  CHECK(none.error() == "cannot read `/nowhere/fonts.conf`");
  CHECK(none.measure().measure("abc", {}).width == FixedTextMeasure().measure("abc", {}).width);
  CHECK(render_pdf(test::small_folio(), none) == "");
}

TEST_CASE("a measure is in proportion to the type size, rounded up to 0.01 mm") {
  const auto width = [](double points) {
    return fonts().measure().measure("Regulator 12 V, 87a", {FaceName::sans, Weight::regular, points}).width.number();
  };
  const double exact = width(1000) / 1000;
  for (const double points : {7.0, 7.5, 8.5, 10.0, 12.0, 18.0}) {
    CAPTURE(points);
    CHECK(width(points) >= exact * points - 0.001);
    CHECK(width(points) <= exact * points + 0.0125);
    CHECK(std::abs(width(points) * 100 - std::round(width(points) * 100)) < 1e-6);
  }
}

TEST_CASE("mono glyphs are all as wide; an empty text has no width but a height") {
  const TextMeasure& measure = fonts().measure();
  const TextStyle mono{FaceName::mono, Weight::regular, 10};
  CHECK(measure.measure("iiii", mono).width == measure.measure("WWWW", mono).width);
  const TextSize empty = measure.measure("", {});
  CHECK(empty.width == Millimetres(0));
  // 10 pt is 3.53 mm; B612 is 1.2 times that from its top to its foot.
  CHECK((empty.ascent + empty.descent).number() == doctest::Approx(10 * 25.4 / 72 * 1.215).epsilon(0.05));
}

TEST_CASE("broken and unusual text is measured all the same") {
  const TextMeasure& measure = fonts().measure();
  CHECK(measure.measure("a\nb\tc", {}).width == measure.measure("a b c", {}).width);
  CHECK(measure.measure("\xff", {}).width > Millimetres(0));
  CHECK(measure.measure(std::string("a\0b", 3), {}).width > measure.measure("a", {}).width);
}

TEST_CASE("all the scripts of the list have glyphs; characters that none has are named once each") {
  CHECK(fonts()
            .missing_glyphs("Kabel 2,5 mm² — Ω µ ° ± ≤ ≥ → ✓ ☐ ⚠ ⏚ Příliš žluťoučký kůň, Türkçe ığş, Tiếng Việt")
            .empty());
  CHECK(fonts().missing_glyphs("Ταχύτητα Привет мир").empty());
  CHECK(fonts().missing_glyphs("مرحبا بالعالم").empty());
  CHECK(fonts().missing_glyphs("שלום עולם").empty());
  CHECK(fonts().missing_glyphs("नमस्ते दुनिया क्षत्रिय").empty());
  CHECK(fonts().missing_glyphs("line\nend, zero width joiner \u200d, left to right mark \u200e").empty());
  CHECK(fonts().missing_glyphs("漢a字漢") == std::vector<std::string>{"漢", "字"});
}

}  // namespace loomfolio
