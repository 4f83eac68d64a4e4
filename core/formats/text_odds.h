// How likely each byte of a text is after the one before it: what is usual in names to begin with, then what this text has.
#pragma once

#include <string>

#include "core/formats/range_coder.h"

namespace fogsheet {

class TextOdds {
 public:
  TextOdds();

  /// One byte, after `before` (0 at the start).
  std::uint8_t byte(RangeCoder& coder, std::uint8_t before, std::uint8_t value);

  /// A text, whose end is told after each of its bytes. Reading stops, one byte past it, at `most_bytes`.
  void text(RangeCoder& coder, std::string& text, std::size_t most_bytes);

 private:
  // What kind of byte the one before is.
  enum Kind { at_start, after_vowel, after_consonant, after_capital, after_figure, after_lead, after_trail, after_control, kinds };
  static Kind kind_of(std::uint8_t before);
  static unsigned weight(Kind kind, unsigned byte);

  static constexpr std::size_t k_bytes = 256;
  static constexpr std::size_t k_places = 16;  // of a text's first bytes, where its end is told apart

  Odds bytes_[kinds][k_bytes];  // a tree of bits, the highest first: node 1, then 2 and 3, and so on
  Odds ends_[k_places];
};

/// Whole numbers of any size: how many bits they have, then these.
class NumberOdds {
 public:
  std::uint64_t whole(RangeCoder& coder, std::uint64_t value);
  std::int64_t signed_whole(RangeCoder& coder, std::int64_t value);

 private:
  static constexpr int k_most_bits = 64;
  Odds lengths_[k_most_bits];
  Odds seconds_[k_most_bits + 1];  // the bit below the highest, by length
};

}  // namespace fogsheet
