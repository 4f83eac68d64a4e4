#include "core/formats/text_odds.h"

#include <cstring>

namespace fogsheet {
namespace {

// Letters of English text in a thousand, from a to z, none under 1: after Lewand (2000), Cryptological Mathematics, from
// memory. Other numbers make some texts longer and others shorter; none of them may change, since texts are read by them.
constexpr std::uint8_t k_letters[] = {82, 15, 28, 43, 127, 22, 20, 61, 70, 2, 8, 40, 24, 67, 75, 19, 1, 60, 63, 91, 28, 10, 24, 2, 20, 1};
constexpr int k_prior = 5;  // bits that these rest on

bool is_within(unsigned byte, unsigned first, unsigned last) { return byte >= first && byte <= last; }
bool is_small(unsigned byte) { return is_within(byte, 'a', 'z'); }
bool is_vowel(unsigned byte) { return is_small(byte) && std::strchr("aeiou", static_cast<char>(byte)) != nullptr; }

}  // namespace

TextOdds::Kind TextOdds::kind_of(std::uint8_t before) {
  if (before >= 0xC0) return after_lead;
  if (before >= 0x80) return after_trail;
  if (is_small(before)) return is_vowel(before) ? after_vowel : after_consonant;
  if (is_within(before, 'A', 'Z')) return after_capital;
  if (is_within(before, '0', '9')) return after_figure;
  return before > 0 && before < ' ' ? after_control : at_start;
}

// Out of some 1 000 for each kind.
unsigned TextOdds::weight(Kind kind, unsigned byte) {
  const bool is_lead = is_within(byte, 0xC0, 0xF4), is_trail = is_within(byte, 0x80, 0xBF);
  if (kind == after_lead) return is_trail ? 30 : 1;
  if (kind == after_trail && (is_lead || is_trail)) return 16;
  if (kind == after_control) return byte < ' ' ? 12 : 2;
  if (is_lead) return 1;
  if (is_trail || byte < ' ' || byte == 0x7F) return 1;
  if (byte == ' ') return kind == at_start ? 1 : 140;
  if (is_within(byte, '0', '9')) return kind == after_figure ? 60 : kind == at_start ? 14 : 1;
  if (is_within(byte, 'A', 'Z')) return kind == at_start ? 12 + k_letters[byte - 'A'] / 3 : kind == after_capital ? 5 : 1;
  if (!is_small(byte)) return 1;
  const unsigned letter = k_letters[byte - 'a'];
  switch (kind) {
    case at_start: return 1 + letter / 20;
    case after_figure: return 1 + letter / 16;
    case after_vowel: return is_vowel(byte) ? 1 + letter / 3 : 1 + letter * 4 / 3;
    default: return is_vowel(byte) ? 1 + letter * 3 / 2 : 1 + letter / 2;
  }
}

TextOdds::TextOdds() {
  for (int kind = 0; kind < kinds; ++kind) {
    unsigned sums[2 * k_bytes];
    for (unsigned byte = 0; byte < k_bytes; ++byte) sums[k_bytes + byte] = weight(static_cast<Kind>(kind), byte);
    for (std::size_t node = k_bytes - 1; node > 0; --node) {
      sums[node] = sums[2 * node] + sums[2 * node + 1];
      bytes_[kind][node] = {static_cast<std::uint16_t>(256 + 65'024 * static_cast<std::uint64_t>(sums[2 * node + 1]) / sums[node]), k_prior};
    }
  }
  for (std::size_t place = 0; place < k_places; ++place) ends_[place] = {static_cast<std::uint16_t>(place < 5 ? 800 : 7'000), 1};
}

std::uint8_t TextOdds::byte(RangeCoder& coder, std::uint8_t before, std::uint8_t value) {
  Odds* odds = bytes_[kind_of(before)];
  unsigned node = 1;
  for (int shift = 7; shift >= 0; --shift) node = 2 * node + (coder.bit(odds[node], value >> shift & 1) ? 1 : 0);
  return static_cast<std::uint8_t>(node);
}

void TextOdds::text(RangeCoder& coder, std::string& text, std::size_t most_bytes) {
  std::string read;
  std::uint8_t before = 0;
  const std::size_t size = coder.reads() ? most_bytes + 1 : text.size();
  for (std::size_t place = 0;; ++place) {
    if (coder.bit(ends_[place < k_places ? place : k_places - 1], place == size)) break;
    if (place == size || !coder.ok()) break;
    before = byte(coder, before, coder.reads() ? std::uint8_t{0} : static_cast<std::uint8_t>(text[place]));
    read += static_cast<char>(before);
  }
  text = std::move(read);
}

std::uint64_t NumberOdds::whole(RangeCoder& coder, std::uint64_t value) {
  int length = 0;
  while (length < k_most_bits && coder.bit(lengths_[length], length < k_most_bits && value >> length != 0)) ++length;
  if (length < 2) return static_cast<std::uint64_t>(length);
  std::uint64_t read = 1;
  for (int shift = length - 2; shift >= 0; --shift) {
    const std::uint64_t bit = value >> shift & 1;
    read = read << 1 | (shift == length - 2 ? (coder.bit(seconds_[length], bit != 0) ? 1 : 0) : coder.uniform(bit, 2));
  }
  return read;
}

std::int64_t NumberOdds::signed_whole(RangeCoder& coder, std::int64_t value) {
  const std::uint64_t doubled = static_cast<std::uint64_t>(value) << 1;
  const std::uint64_t folded = whole(coder, value < 0 ? ~doubled : doubled);
  const std::uint64_t halved = folded >> 1;
  return static_cast<std::int64_t>(folded & 1 ? ~halved : halved);
}

}  // namespace fogsheet
