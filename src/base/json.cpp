// SPDX-License-Identifier: MIT
#include "base/json.h"

#include <charconv>
#include <cmath>
#include <cstdint>

namespace loomfolio {
namespace {

constexpr int deepest = 200;

class Reader {
 public:
  Reader(std::string_view text, std::string& error) : text_(text), error_(error) {}
  Json read_document();

 private:
  bool fail(const std::string& what);
  void skip_blanks();
  bool take(char c);
  bool read_value(Json& out, int depth);
  bool read_word(std::string_view word);
  bool read_number(Json& out);
  bool read_text(std::string& out);
  bool read_escape(std::string& out);
  bool read_hex(unsigned& out);
  bool read_array(Json& out, int depth);
  bool read_object(Json& out, int depth);

  std::string_view text_;
  std::string& error_;
  std::size_t at_ = 0;
};

bool Reader::fail(const std::string& what) {
  if (error_.empty()) error_ = what + " at byte " + std::to_string(at_);
  return false;
}

void Reader::skip_blanks() {
  while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t' || text_[at_] == '\n' || text_[at_] == '\r')) ++at_;
}

bool Reader::take(char c) {
  if (at_ >= text_.size() || text_[at_] != c) return false;
  ++at_;
  return true;
}

bool Reader::read_word(std::string_view word) {
  if (text_.substr(at_, word.size()) != word) return fail("unexpected character");
  at_ += word.size();
  return true;
}

bool Reader::read_number(Json& out) {
  const auto is_digit = [&](std::size_t i) { return i < text_.size() && text_[i] >= '0' && text_[i] <= '9'; };
  std::size_t end = at_ + (at_ < text_.size() && text_[at_] == '-' ? 1 : 0);
  const auto digits = [&] {
    const std::size_t begin = end;
    while (is_digit(end)) ++end;
    return end > begin;
  };
  const std::size_t whole = end;
  if (!digits()) return fail("unexpected character");
  if (text_[whole] == '0' && end > whole + 1) return fail("number with a leading zero");
  if (end < text_.size() && text_[end] == '.' && (++end, !digits())) return fail("number without digits after the point");
  if (end < text_.size() && (text_[end] == 'e' || text_[end] == 'E')) {
    ++end;
    if (end < text_.size() && (text_[end] == '+' || text_[end] == '-')) ++end;
    if (!digits()) return fail("number without digits in the exponent");
  }
  const auto result = std::from_chars(text_.data() + at_, text_.data() + end, out.number);
  if (result.ec != std::errc() || !std::isfinite(out.number)) return fail("number out of range");
  out.kind = JsonKind::number;
  at_ = end;
  return true;
}

bool Reader::read_hex(unsigned& out) {
  out = 0;
  for (int i = 0; i < 4; ++i, ++at_) {
    const char c = at_ < text_.size() ? text_[at_] : '\0';
    if (c >= '0' && c <= '9') out = out * 16 + static_cast<unsigned>(c - '0');
    else if (c >= 'a' && c <= 'f') out = out * 16 + static_cast<unsigned>(c - 'a' + 10);
    else if (c >= 'A' && c <= 'F') out = out * 16 + static_cast<unsigned>(c - 'A' + 10);
    else return fail("bad \\u escape");
  }
  return true;
}

void append_utf8(std::string& out, unsigned c) {
  const auto add = [&](unsigned byte) { out += static_cast<char>(byte); };
  if (c < 0x80) return add(c);
  if (c < 0x800) add(0xc0 | c >> 6);
  else if (c < 0x10000) add(0xe0 | c >> 12), add(0x80 | (c >> 6 & 0x3f));
  else add(0xf0 | c >> 18), add(0x80 | (c >> 12 & 0x3f)), add(0x80 | (c >> 6 & 0x3f));
  add(0x80 | (c & 0x3f));
}

bool Reader::read_escape(std::string& out) {
  const char c = at_ < text_.size() ? text_[at_++] : '\0';
  static constexpr std::string_view letters = "\"\\/bfnrt", meanings = "\"\\/\b\f\n\r\t";
  if (const std::size_t i = letters.find(c); c != '\0' && i != std::string_view::npos) {
    out += meanings[i];
    return true;
  }
  if (c != 'u') return fail("bad escape");
  unsigned code = 0;
  if (!read_hex(code)) return false;
  if (code >= 0xd800 && code < 0xdc00) {
    unsigned low = 0;
    if (!take('\\') || !take('u') || !read_hex(low) || low < 0xdc00 || low > 0xdfff) return fail("half of a surrogate pair");
    code = 0x10000 + ((code - 0xd800) << 10) + (low - 0xdc00);
  } else if (code >= 0xdc00 && code < 0xe000) {
    return fail("half of a surrogate pair");
  }
  append_utf8(out, code);
  return true;
}

bool Reader::read_text(std::string& out) {
  if (!take('"')) return fail("expected a text in quotes");
  while (at_ < text_.size() && text_[at_] != '"') {
    const char c = text_[at_++];
    if (static_cast<unsigned char>(c) < 0x20) return fail("control character in a text");
    if (c != '\\') out += c;
    else if (!read_escape(out)) return false;
  }
  return take('"') || fail("text without an end");
}

bool Reader::read_array(Json& out, int depth) {
  out.kind = JsonKind::array;
  ++at_;
  skip_blanks();
  if (take(']')) return true;
  do {
    out.items.emplace_back();
    if (!read_value(out.items.back(), depth + 1)) return false;
    skip_blanks();
  } while (take(','));
  return take(']') || fail("expected , or ]");
}

bool Reader::read_object(Json& out, int depth) {
  out.kind = JsonKind::object;
  ++at_;
  skip_blanks();
  if (take('}')) return true;
  do {
    skip_blanks();
    auto& [name, value] = out.members.emplace_back();
    if (!read_text(name)) return false;
    skip_blanks();
    if (!take(':')) return fail("expected :");
    if (!read_value(value, depth + 1)) return false;
    skip_blanks();
  } while (take(','));
  return take('}') || fail("expected , or }");
}

bool Reader::read_value(Json& out, int depth) {
  if (depth > deepest) return fail("nested too deep");
  skip_blanks();
  const char c = at_ < text_.size() ? text_[at_] : '\0';
  if (c == '{') return read_object(out, depth);
  if (c == '[') return read_array(out, depth);
  if (c == '"') {
    out.kind = JsonKind::text;
    return read_text(out.text);
  }
  if (c == 't' || c == 'f') {
    out.kind = JsonKind::boolean;
    out.boolean = c == 't';
    return read_word(c == 't' ? "true" : "false");
  }
  if (c == 'n') return read_word("null");
  return read_number(out);
}

Json Reader::read_document() {
  Json out;
  error_.clear();
  if (read_value(out, 0)) {
    skip_blanks();
    if (at_ == text_.size()) return out;
    fail("text after the value");
  }
  return {};
}

}  // namespace

const Json& Json::at(std::string_view name) const {
  static const Json nothing;
  for (const auto& [key, value] : members)
    if (key == name) return value;
  return nothing;
}

std::string Json::text_or(std::string_view otherwise) const { return kind == JsonKind::text ? text : std::string(otherwise); }
double Json::number_or(double otherwise) const { return kind == JsonKind::number ? number : otherwise; }

Json read_json(std::string_view text, std::string& error) { return Reader(text, error).read_document(); }

std::string quote_json(std::string_view text) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') out += '\\', out += c;
    else if (c == '\n') out += "\\n";
    else if (byte < 0x20) out += "\\u00", out += digits[byte >> 4], out += digits[byte & 15];
    else out += c;
  }
  return out + "\"";
}

}  // namespace loomfolio
