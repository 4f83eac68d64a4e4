// Symbols as one long binary fraction, each given as much of the interval as it is likely: near the information limit, and
// the same bits on every machine, since all of it is whole numbers. One class for both directions, so that what writes a
// thing is what reads it: every call gives back the value, which is the argument when writing.
// Source: Martin (1979), Range encoding: an algorithm for removing redundancy from a digitised message, IERE conference.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace fogsheet {

/// How likely a bit is to be set, learnt as bits come by: quickly at first, steadily later.
struct Odds {
  std::uint16_t set = 1 << 15;  // of 65 536
  std::uint8_t seen = 0;        // bits that this rests on, as far as they count

  void learn(bool bit);
};

class RangeCoder {
 public:
  RangeCoder() = default;                                                        // writes
  explicit RangeCoder(std::span<const std::uint8_t> bytes);                      // reads; they must outlive it

  bool reads() const { return reads_; }

  /// False once more was read than the bytes held; what is read from then on means nothing, and is bounded all the same.
  bool ok() const { return at_ <= bytes_.size() + k_least_bytes; }

  bool bit(Odds& odds, bool value);

  /// One of `count` values that are equally likely. @param count  in [1, 2^32]
  std::uint64_t uniform(std::uint64_t value, std::uint64_t count);

  /// What was written, with no byte more than it takes to be told apart.
  std::vector<std::uint8_t> finish();

 private:
  static constexpr int k_top_shift = 56;
  static constexpr std::size_t k_least_bytes = 8;

  void take(std::uint64_t from, std::uint64_t range);
  std::uint8_t next_byte();

  bool reads_ = false;
  std::uint64_t range_ = ~std::uint64_t{0};
  std::uint64_t low_ = 0;  // writing: where the interval begins, after the bytes written
  std::vector<std::uint8_t> written_;
  std::uint64_t code_ = 0;  // reading: how far in the interval the number lies
  std::span<const std::uint8_t> bytes_;
  std::size_t at_ = 0;
};

}  // namespace fogsheet
