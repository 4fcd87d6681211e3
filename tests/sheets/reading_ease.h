// SPDX-License-Identifier: MIT
// How hard an English text is to read.
#pragma once

#include <string>
#include <vector>

namespace loomfolio {

/// Sentences end at . ! ? or : before a space or the text's end; a point within a number or after a single capital does
/// not end one.
std::vector<std::string> sentences_of(const std::string& text);

/// Runs of letters, digits and what joins them. Marks and figures count as words.
std::vector<std::string> words_of_sentence(const std::string& sentence);

/// By the usual rule: groups of vowels, less a silent e at the end, at least one.
int count_syllables(const std::string& word);

/// Grade by Kincaid, Fishburne, Rogers and Chissom 1975 (Research Branch Report 8-75, Naval Technical Training
/// Command): 0.39 words a sentence + 11.8 syllables a word - 15.59. Over all sentences together.
double kincaid_grade(const std::vector<std::string>& sentences);

}  // namespace loomfolio
