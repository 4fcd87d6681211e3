// SPDX-License-Identifier: MIT
#include "read/toml_tree.h"

#include <doctest/doctest.h>

using namespace loomfolio;

namespace {

struct Parsed {
  Sources sources;
  Diagnostics findings;
  std::optional<TomlValue> tree;
  explicit Parsed(std::string text) {
    sources.files.push_back({"t.toml", std::move(text)});
    tree = parse_toml(sources, 0, findings);
  }
  std::string at(Where where) const { return sources.files[0].text.substr(where.begin, where.end - where.begin); }
  /// The only finding's id, message and text at its place.
  std::string fault() const {
    REQUIRE_FALSE(tree);
    REQUIRE(findings.size() == 1);
    return std::string(rule_of(findings[0].id).text) + " at " + std::to_string(findings[0].where.begin) + ": " +
           findings[0].message;
  }
};

}  // namespace

TEST_CASE("values and keys keep their places, whatever stands before them") {
  const Parsed p("# Z\xC3\xBC\n[document]\ntitle = \"Z\xC3\xBCndung \xE6\xBC\xA2\" ; x\n");
  CHECK(p.fault().starts_with("toml-syntax at 40"));
  const Parsed q(
      "\xEF\xBB\xBF\"\xC3\xBC\" = [ \"\xE6\xBC\xA2\", 2.5 ]\r\n[[wire]]\r\nt = { a.b = true, d = 2026-01-02 "
      "}\r\n[[wire]]\r\n");
  REQUIRE(q.tree);
  const TomlValue& list = q.tree->find("\xC3\xBC")->value;
  CHECK(q.at(q.tree->find("\xC3\xBC")->key_where) == "\"\xC3\xBC\"");
  CHECK(q.at(list.where) == "[ \"\xE6\xBC\xA2\", 2.5 ]");
  CHECK(q.at(list.items[0].where) == "\"\xE6\xBC\xA2\"");
  CHECK(q.at(list.items[1].where) == "2.5");
  CHECK(list.items[1].text == "2.5");
  const TomlValue& wires = q.tree->find("wire")->value;
  REQUIRE(wires.items.size() == 2);
  CHECK(q.at(wires.items[0].where) == "[[wire]]");
  const TomlValue& t = wires.items[0].find("t")->value;
  CHECK(q.at(t.find("a")->value.find("b")->value.where) == "true");
  CHECK(t.find("d")->value.type == TomlType::date);
  CHECK(t.find("d")->value.text == "2026-01-02");
}

TEST_CASE("keys stand in the order of the file") {
  const Parsed p("[positions]\noff = 1\nlow = 2\nhigh = 3\n\"1\" = 4\n");
  REQUIRE(p.tree);
  std::string order;
  for (const TomlEntry& entry : p.tree->find("positions")->value.entries) order += entry.key + " ";
  CHECK(order == "off low high 1 ");
}

TEST_CASE("what cannot be read says where and why") {
  CHECK(Parsed("a = \"x\nb = 1").fault().starts_with("toml-syntax at 6: this is not TOML"));
  CHECK(Parsed("\xC3\xBC = 1").fault() == "toml-syntax at 0: this is not TOML: `\xC3\xBC` stands outside quotes");
  CHECK(Parsed("a = \xEF\xBB\xBDx\"").fault().starts_with("toml-syntax at 4"));
  CHECK(Parsed("[=]").fault().starts_with("toml-syntax at 1: this is not TOML: in this key: expected bare key"));
  CHECK(Parsed("").fault() == "file-empty at 0: the file is empty");
  CHECK(Parsed(" \n\t").fault() == "file-empty at 0: the file is empty");
  CHECK(Parsed(std::string("a = 1\n\0", 7)).fault() ==
        "nul-byte at 6: byte 0 stands in the text; a spec is plain text");
  CHECK(Parsed("a = \"\xC3\xBC\xFFz\"").fault() == "broken-utf8 at 7: byte 0xff is not UTF-8 here");
  CHECK(Parsed("a = 1\n\xC3").fault() == "broken-utf8 at 6: byte 0xc3 is not UTF-8 here");
  CHECK(Parsed(std::string(most_source_bytes + 1, ' ')).fault().starts_with("file-too-large at 0"));
  CHECK(Parsed("a = " + std::string(40, '[')).fault().starts_with("nested-too-deep at "));
  CHECK(Parsed("a.b.c.d.e.f.g.h.i.j.k.l.m.n.o.p.q = 1").fault().starts_with("nested-too-deep at 31"));
}

TEST_CASE("dots in texts and comments nest nothing") {
  CHECK(Parsed("a = \"" + std::string(50, '.') + "\" # " + std::string(50, '.') + "\nb = '''\n" + std::string(50, '.') +
               "'''")
            .tree);
}

TEST_CASE("letters beyond ASCII may follow a line's end in a text") {
  const Parsed p("a = \"\"\"x\\\n  \xC3\x9C\xE3\x81\x82\"\"\"\"\nb = '''\xC3\xBC''''' # \xC3\xBC\n");
  REQUIRE(p.tree);
  CHECK(p.tree->find("a")->value.text == "x\xC3\x9C\xE3\x81\x82\"");
  CHECK(p.tree->find("b")->value.text == "\xC3\xBC''");
}

TEST_CASE("a key or table written twice names both places") {
  struct Row {
    std::string text, first;
    std::size_t at;
  };
  for (const Row& row : {Row{"a = 1\na = 2", "1", 6}, Row{"[t]\nb = 1\nc = 3\nb = 2", "1", 16},
                         Row{"[t]\n[u]\n[t]", "[t]", 8}, Row{"[[w]]\nx = 1\n[[w]]\nx = 22\nx = 3\n", "22", 25}}) {
    CAPTURE(row.text);
    const Parsed p(row.text);
    CHECK(p.fault().starts_with("key-twice at " + std::to_string(row.at)));
    REQUIRE(p.findings[0].notes.size() == 1);
    CHECK(p.at(p.findings[0].notes[0].where) == row.first);
  }
}

TEST_CASE("a quantity without quotes is seen for what it is") {
  CHECK(Parsed("size = 2.5 mm2\n").findings[0].hint == "a quantity is a text: write \"2.5 mm2\" with its quotes");
  CHECK(Parsed("size = 14AWG # thin\n").findings[0].hint == "a quantity is a text: write \"14AWG\" with its quotes");
  CHECK(Parsed("size = \"2.5 mm2\n").findings[0].hint.empty());
}

TEST_CASE("a line of many values is placed quickly") {
  std::string text = "a = [";
  for (int i = 0; i < 200'000; ++i) text += "\"\xC3\xBC\",";
  const Parsed p(text + "]");
  REQUIRE(p.tree);
  CHECK(p.at(p.tree->find("a")->value.items[199'999].where) == "\"\xC3\xBC\"");
}
