#include "core/formats/range_coder.h"

#include "core/base/check.h"

namespace fogsheet {
namespace {

constexpr int k_odds_bits = 16;
constexpr int k_most_seen = 24;           // more remembers longer and follows changes later
constexpr std::uint16_t k_least_odds = 256;  // no bit is dearer than 8 bits, none cheaper than 1/177: bounds what few bytes can hold

}  // namespace

void Odds::learn(bool bit) {
  // The share seen so far, as if a quarter of a bit of each kind had come before any: 1/(n + 1.5) of the way.
  const int aim = bit ? (1 << k_odds_bits) - k_least_odds : k_least_odds;
  set = static_cast<std::uint16_t>(set + (aim - set) * 2 / (2 * seen + 3));
  if (seen < k_most_seen) ++seen;
}

RangeCoder::RangeCoder(std::span<const std::uint8_t> bytes) : reads_(true), bytes_(bytes) {
  for (std::size_t i = 0; i < k_least_bytes; ++i) code_ = code_ << 8 | next_byte();
}

// Past their end the bytes go on as noughts, which `finish` therefore need not write.
std::uint8_t RangeCoder::next_byte() {
  const std::uint8_t byte = at_ < bytes_.size() ? bytes_[at_] : std::uint8_t{0};
  ++at_;
  return byte;
}

void RangeCoder::take(std::uint64_t from, std::uint64_t range) {
  if (reads_) {
    code_ -= from;
  } else {
    low_ += from;
    if (low_ < from)  // carried over into what is written
      for (std::size_t i = written_.size(); ++written_[--i] == 0;) {}
  }
  range_ = range;
  while (range_ >> k_top_shift == 0) {
    if (reads_) {
      code_ = code_ << 8 | next_byte();
    } else {
      written_.push_back(static_cast<std::uint8_t>(low_ >> k_top_shift));
      low_ <<= 8;
    }
    range_ <<= 8;
  }
}

bool RangeCoder::bit(Odds& odds, bool value) {
  const std::uint64_t part = (range_ >> k_odds_bits) * odds.set;
  if (reads_) value = code_ < part;
  if (value) take(0, part);
  else take(part, range_ - part);
  odds.learn(value);
  return value;
}

std::uint64_t RangeCoder::uniform(std::uint64_t value, std::uint64_t count) {
  const std::uint64_t part = range_ / count;
  if (reads_) value = code_ / part < count ? code_ / part : count - 1;
  SHEET_CHECK(value < count, "a value outside what it is written in");
  take(part * value, value + 1 == count ? range_ - part * value : part);
  return value;
}

std::vector<std::uint8_t> RangeCoder::finish() {
  // The number with the most noughts at its end that lies in the interval; those are read past the end.
  for (int kept = 0; kept <= k_top_shift; kept += 8) {
    const std::uint64_t below = ~std::uint64_t{0} >> kept;
    const std::uint64_t up = ((low_ + below) & ~below) - low_;  // modulo 2^64: it may carry over
    if (up >= range_) continue;
    take(up, range_);
    break;
  }
  for (; low_ != 0; low_ <<= 8) written_.push_back(static_cast<std::uint8_t>(low_ >> k_top_shift));
  return written_;
}

}  // namespace fogsheet
