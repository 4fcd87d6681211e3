// SPDX-License-Identifier: MIT
// What a person reads of a mistake: the sentence, and the hint that helps. The suite holds the ids; this holds the
// words.
#include <doctest/doctest.h>

#include "read/small_spec.h"
#include "read/test_files.h"

using namespace loomfolio;

namespace {

struct Row {
  std::string from, to;       ///< the change that spoils the small spec
  std::string message, hint;  ///< of its first finding
};

void replace_once(std::string& text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
}

Diagnostics read_text(const std::string& text) {
  TestFiles files;
  files.in_memory["l/papers/A4.toml"] = "id = \"A4\"\nwidth = \"210 mm\"\nheight = \"297 mm\"\n";
  files.in_memory["l/words/en.toml"] = "a = \"b\"\n";
  Sources sources;
  Diagnostics findings;
  const Library library = read_library("l", files, sources, findings);
  read_spec("rig.toml", text, library, sources, findings);
  return findings;
}

Diagnostics read_spoilt(const Row& row) {
  std::string text = small_spec;
  replace_once(text, row.from, row.to);
  return read_text(text);
}

void check_rows(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.to);
    const Diagnostics findings = read_spoilt(row);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].message == row.message);
    CHECK(findings[0].hint == row.hint);
  }
}

}  // namespace

TEST_CASE("keys and their values") {
  check_rows({
      {"title =", "titel =", "[document] has no key `titel`",
       "did you mean `title`? its keys are `title`, `subtitle`, `scope`, `job`, `revision`, `date`, `paper`, "
       "`language`, `units`, `workshop`, `checked_by`"},
      {"title = \"Bench rig\"\n", "", "[document] lacks `title`", ""},
      {"title = \"Bench rig\"", "title = 7", "`title` of [document] is a whole number; it must be a text",
       "write it in quotes: \"7\""},
      {"title = \"Bench rig\"", "title = [\"a\"]", "`title` of [document] is an array; it must be a text", ""},
      {"title = \"Bench rig\"", "title = \"\"", "`title` of [document] is empty", ""},
      {"2026-11-02", "2.11.2026", "`2.11.2026` is no date; a date is year-month-day, as in \"2026-11-02\"", ""},
      {"date = \"2026-11-02\"", "paper = \"A5\"", "there is no paper `A5`", "did you mean `A4`? there are `A4`"},
      {"date = \"2026-11-02\"", "scope = \"bike\"", "`bike` is no `scope` of [document]",
       "it is one of `machine`, `kit`"},
      {"\"Bench rig\"", "\"a\\u0085b\"",
       "`title` holds a line end or another control character; it is one line of text", ""},
      {"\"Bench rig\"", "\"a\\u202Eb\"",
       "`title` holds a line end or another control character; it is one line of text", ""},
      {"[[situation]]", "[situation]", "[situation] is one table; there may be several of it", "write [[situation]]"},
      {"name = \"lit\"", "name = \"lit up\"", "`lit up` cannot be an id; an id is 1 to 40 letters, digits, `-` or `_`",
       ""},
  });
}

TEST_CASE("a value that a kind uses twice is named once among the keys") {
  std::string text = small_spec;
  replace_once(text, "[[kind.inside]]\nid = \"filament\"",
               "[[kind.inside]]\nid = \"second\"\ntype = \"lamp\"\nbetween = [\"56\", \"31\"]\npower = \"=power\"\n"
               "[[kind.inside]]\nid = \"filament\"");
  replace_once(text, "power = \"35 W\"", "power = \"35 W\"\nvolume = \"loud\"");
  const Diagnostics findings = read_text(text);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].message == "[[part]] has no key `volume`");
  CHECK(findings[0].hint ==
        "its keys are `id`, `kind`, `zone`, `label`, `note`, `provided`, `power`, `fuse_choice`, `cavity_plugs`");
}

TEST_CASE("quantities") {
  check_rows({
      {"\"350 mm\"", "350", "`350` has no unit; a length is written with one of `mm`, `cm`, `m`, `in`, `ft`", ""},
      {"\"350 mm\"", "\"350 V\"", "unit `V` does not fit; a length is written with one of `mm`, `cm`, `m`, `in`, `ft`",
       ""},
      {"\"350 mm\"", "\"0.35 metres\"",
       "unit `metres` does not fit; a length is written with one of `mm`, `cm`, `m`, `in`, `ft`", "write \"0.35 m\""},
      {"\"350 mm\"", "\"350 m\"", "`350 m` is out of range; here a length is from 0.005 m to 30 m", ""},
      {"\"14 AWG\"", "\"14,5 AWG\"", "`14,5 AWG` is no wire gauge; gauges run from 4/0 to 1/0 AWG and from 1 to 36 AWG",
       ""},
      {"\"35 W\"", "\"35\"", "`35` has no unit; a power is written with one of `W`", ""},
  });
}

TEST_CASE("names") {
  check_rows({
      {"kind = \"bulb\"", "kind = \"Bulb\"", "there is no kind `Bulb`", "did you mean `bulb`?"},
      {"kind = \"bulb\"", "kind = \"ogg\"", "there is no kind `ogg`", "there are `toggle`"},
      {"kind = \"bulb\"", "kind = \"headlight\"", "there is no kind `headlight`",
       "`loomfolio parts` lists the kinds; a [[kind]] in the spec adds one"},
      {"\"lamp.56\"", "\"lamp.56a\"", "unknown terminal `lamp.56a`", "did you mean `lamp.56`?"},
      {"\"lamp.56\"", "\"lamp.feed\"", "unknown terminal `lamp.feed`", "its terminals are `lamp.56`, `lamp.31`"},
      {"\"lamp.56\"", "\"lmap.56\"", "there is no part `lmap`", "did you mean `lamp`?"},
      {"\"lamp.56\"", "\"lamp\"", "`lamp` is a part; a wire ends at one of its terminals",
       "its terminals are `56`, `31`"},
      {"\"E1\"\ncolour", "\"E2\"\ncolour",
       "there is no splice or earth `E2`; a part's terminal is written `part.terminal`", "did you mean `E1`?"},
      {"\"E1\"\ncolour", "\"E1.a\"\ncolour", "`E1` is an earth; it has no terminals of its own", "write `E1`"},
      {"colour = \"WH\"", "colour = \"WX\"", "`WX` is no colour of IEC 60757",
       "did you mean `WH`? the codes are BK black, BN brown, RD red, OG orange, YE yellow, GN green, BU blue, VT "
       "violet, "
       "GY grey, WH white, PK pink, GD gold, TQ turquoise, SR silver"},
      {"colour = \"WH\"", "colour = \"white\"", "`white` is no colour of IEC 60757", "write `WH`"},
      {"colour = \"WH\"", "colour = \"wh-gn\"", "`wh-gn` is no colour of IEC 60757",
       "write colour = \"WH\", stripe = \"GN\""},
  });
}

TEST_CASE("situations") {
  check_rows({
      {"{ key = \"on\" }", "{ key = \"ON\" }", "`key` has no position `ON`",
       "did you mean `on`? its positions are `off`, `on`"},
      {"{ key = \"on\" }", "{ lamp = \"on\" }", "part `lamp` has no switch; a situation sets switches only", ""},
      {"{ key = \"on\" }", "{ keys = \"on\" }", "there is no part `keys`", "did you mean `key`?"},
      {"{ key = \"on\" }", "{ key = 1 }", "`key` of [[situation]] is a whole number; it must be a text",
       "write it in quotes: \"1\""},
      {"{ lamp = \"on\" }", "{ lamp = \"lit\" }", "`lit` is no state that could be expected",
       "a state is one of `on`, `off`, `dim`, `flashing`, `charging`"},
      {"{ lamp = \"on\" }", "{ lamp.bulb = \"on\" }", "nothing inside part `lamp` is called `bulb`",
       "inside it are `lamp.filament`"},
  });
}
