// SPDX-License-Identifier: MIT
// The samples printed to PDF and read back with tools that are not ours: poppler-utils and qpdf.
#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/text.h"
#include "sample_prints.h"

using namespace loomfolio;
namespace fs = std::filesystem;

namespace {

/// What a command prints, and its exit code.
std::pair<int, std::string> read_command(const std::string& command) {
  std::string text;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  char buffer[4096];
  while (const std::size_t count = std::fread(buffer, 1, sizeof buffer, pipe)) text.append(buffer, count);
  return {pclose(pipe), text};
}

struct Word {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  std::string text;
};

double attribute(const std::string& line, const std::string& name) {
  const std::size_t at = line.find(name + "=\"");
  return at == std::string::npos ? 0 : std::strtod(line.c_str() + at + name.size() + 2, nullptr);
}

/// The share of the smaller word's box that lies under the other, both boxes made smaller by the face's slack.
double overlap(const Word& a, const Word& b) {
  const auto across = [](const Word& w) { return (w.x1 - w.x0) * 0.03; };
  const auto down = [](const Word& w) { return (w.y1 - w.y0) * 0.15; };
  const double dx = std::min(a.x1 - across(a), b.x1 - across(b)) - std::max(a.x0 + across(a), b.x0 + across(b));
  const double dy = std::min(a.y1 - down(a), b.y1 - down(b)) - std::max(a.y0 + down(a), b.y0 + down(b));
  if (dx <= 0 || dy <= 0) return 0;
  const auto area = [&](const Word& w) { return (w.x1 - w.x0 - 2 * across(w)) * (w.y1 - w.y0 - 2 * down(w)); };
  return dx * dy / std::max(std::min(area(a), area(b)), 1e-6);
}

void check_page(std::vector<Word> words, double width, double height) {
  // From the top down: a word that begins below another's foot is clear of it, and so are all that follow.
  std::sort(words.begin(), words.end(), [](const Word& a, const Word& b) { return a.y0 < b.y0; });
  constexpr double edge = 4 * 72 / 25.4;  // 4 mm, the edge that no printer needs: maker's data sheet
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Word& a = words[i];
    const bool is_inside = a.x0 >= edge && a.y0 >= edge && a.x1 <= width - edge && a.y1 <= height - edge;
    if (!is_inside) FAIL_CHECK("off the page: ", a.text);
    for (std::size_t j = i + 1; j < words.size() && words[j].y0 < a.y1; ++j)
      if (overlap(a, words[j]) > 0.12) FAIL_CHECK("text on text: ", a.text, " and ", words[j].text);
  }
}

int check_words(const std::string& pdf) {
  std::vector<Word> words;
  double width = 0, height = 0;
  int pages = 0;
  for (const std::string& line : split(read_command("pdftotext -bbox '" + pdf + "' -").second, '\n')) {
    if (line.find("<page ") != std::string::npos) {
      check_page(words, width, height);
      words.clear();
      width = attribute(line, "width");
      height = attribute(line, "height");
      ++pages;
    } else if (line.find("<word ") != std::string::npos) {
      const std::size_t open = line.find('>') + 1;
      words.push_back({attribute(line, "xMin"), attribute(line, "yMin"), attribute(line, "xMax"),
                       attribute(line, "yMax"), line.substr(open, line.find("</word>") - open)});
    }
  }
  check_page(words, width, height);
  return pages;
}

}  // namespace

TEST_CASE("the samples' PDFs read back: whole, embedded, no text on text or off the page") {
  const fs::path folder = fs::temp_directory_path() / ("loomfolio-readback-" + std::to_string(getpid()));
  fs::create_directories(folder);
  for (const char* name : {"driving-lamp-kit", "electric-start-kit", "street-single"}) {
    CAPTURE(name);
    const std::string pdf = (folder / "out.pdf").string();
    std::ofstream(pdf, std::ios::binary) << sample_pdf(name);
    CHECK(read_command("qpdf --check '" + pdf + "'").first == 0);
    CHECK(check_words(pdf) >= 20);
    int faces = 0;
    for (const std::string& row : split(read_command("pdffonts '" + pdf + "'").second, '\n')) {
      if (row.find("B612") == std::string::npos && row.find("Noto") == std::string::npos) continue;
      ++faces;
      CHECK_MESSAGE(row.find(" yes yes yes") != std::string::npos, row);  // embedded, subset, with its Unicode map
    }
    CHECK(faces >= 3);
  }
  fs::remove_all(folder);
}
