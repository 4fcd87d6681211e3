// SPDX-License-Identifier: MIT
#include "sheets/reading_ease.h"

#include <cctype>

namespace loomfolio {
namespace {

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }
bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }
bool is_vowel(char c) {
  return std::string("aeiouy").find(static_cast<char>(std::tolower(static_cast<unsigned char>(c)))) !=
         std::string::npos;
}

bool ends_sentence(const std::string& text, std::size_t i) {
  if (std::string(".!?:").find(text[i]) == std::string::npos) return false;
  return i + 1 == text.size() || std::isspace(static_cast<unsigned char>(text[i + 1])) != 0;
}

}  // namespace

std::vector<std::string> sentences_of(const std::string& text) {
  std::vector<std::string> sentences;
  std::string now;
  for (std::size_t i = 0; i < text.size(); ++i) {
    now += text[i];
    if (!ends_sentence(text, i)) continue;
    if (!words_of_sentence(now).empty()) sentences.push_back(now);
    now.clear();
  }
  if (!words_of_sentence(now).empty()) sentences.push_back(now);
  return sentences;
}

std::vector<std::string> words_of_sentence(const std::string& sentence) {
  std::vector<std::string> words;
  std::string now;
  for (const char c : sentence + " ") {
    if (is_letter(c) || is_digit(c) || c == '\'' || (c == '.' && !now.empty() && is_digit(now.back()))) {
      now += c;
    } else {
      if (!now.empty()) words.push_back(now);
      now.clear();
    }
  }
  return words;
}

int count_syllables(const std::string& word) {
  int groups = 0;
  bool was_vowel = false;
  for (const char c : word) {
    if (is_vowel(c) && !was_vowel) ++groups;
    was_vowel = is_vowel(c);
  }
  const bool ends_in_e = word.size() > 2 && std::tolower(static_cast<unsigned char>(word.back())) == 'e' &&
                         !is_vowel(word[word.size() - 2]);
  const bool ends_in_le = ends_in_e && word[word.size() - 2] == 'l' && !is_vowel(word[word.size() - 3]);
  if (ends_in_e && !ends_in_le && groups > 1) --groups;
  return groups < 1 ? 1 : groups;
}

double kincaid_grade(const std::vector<std::string>& sentences) {
  double words = 0, syllables = 0;
  for (const std::string& sentence : sentences)
    for (const std::string& word : words_of_sentence(sentence)) words += 1, syllables += count_syllables(word);
  return 0.39 * words / static_cast<double>(sentences.size()) + 11.8 * syllables / words - 15.59;
}

}  // namespace loomfolio
