// A typed text cut into the pieces that positions, directions and quantities are made of: numbers, signs, words, marks.
// Typographic signs and their keyboard stand-ins come out alike: degrees from any of several rings, minutes from straight,
// curly and prime strokes, minus from hyphens and dashes; spaces of every width are spaces. No locale is asked.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/number_text.h"
#include "core/base/result.h"

namespace fogsheet {

/// The longest typed text that is read at all, bytes: a pasted page is not a position.
inline constexpr std::size_t k_longest_entry = 200;

struct EntryToken {
  enum class Kind { number, plus, minus, degree, minute, second, word, comma, semicolon, slash, colon, other };

  Kind kind = Kind::other;
  ScannedDecimal number;  // numbers
  std::string word;       // words: ASCII letters, small
  std::size_t begin = 0;  // bytes of the text
  std::size_t end = 0;
  bool after_space = false;  // white space or the beginning stands before it
};

enum class CommaMeans { decimal_mark, separator };

/// @param comma whether a comma right between two digits belongs to the number; elsewhere it separates.
std::vector<EntryToken> entry_tokens(std::string_view text, CommaMeans comma);

/// What every reader begins with: entry_empty or entry_too_long; empty when the text may be read.
std::optional<Problem> unfit_entry(std::string_view what, std::string_view text);

/// entry_unreadable for the bytes from `begin` to `end`.
Problem unreadable_entry(std::string_view what, std::string_view text, std::size_t begin, std::size_t end);

}  // namespace fogsheet
