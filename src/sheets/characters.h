// SPDX-License-Identifier: MIT
// What a byte of UTF-8 text is.
#pragma once

namespace loomfolio {

inline bool is_digit_byte(char c) { return c >= '0' && c <= '9'; }
inline bool is_capital_byte(char c) { return c >= 'A' && c <= 'Z'; }  ///< ASCII only
/// A letter, or a byte of any sign beyond ASCII.
inline bool is_letter_byte(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

}  // namespace loomfolio
