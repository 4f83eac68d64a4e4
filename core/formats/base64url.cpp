#include "core/formats/base64url.h"

#include <algorithm>

namespace fogsheet {
namespace {

constexpr std::string_view k_alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
constexpr int k_not_in_alphabet = -1;

int value_of(char c) {
  if (c >= 'A' && c <= 'Z') return c - 'A';
  if (c >= 'a' && c <= 'z') return c - 'a' + 26;
  if (c >= '0' && c <= '9') return c - '0' + 52;
  if (c == '-') return 62;
  if (c == '_') return 63;
  return k_not_in_alphabet;
}

}  // namespace

std::string base64url_encode(std::span<const std::uint8_t> bytes) {
  std::string text;
  text.reserve((bytes.size() * 4 + 2) / 3);
  for (std::size_t start = 0; start < bytes.size(); start += 3) {
    const std::size_t count = std::min<std::size_t>(3, bytes.size() - start);
    std::uint32_t group = 0;
    for (std::size_t i = 0; i < 3; ++i) group = group << 8 | (i < count ? bytes[start + i] : 0u);
    for (std::size_t i = 0; i <= count; ++i) text += k_alphabet[group >> (18 - 6 * i) & 63];
  }
  return text;
}

Result<std::vector<std::uint8_t>> base64url_decode(std::string_view text) {
  std::vector<std::uint8_t> bytes;
  bytes.reserve(text.size() * 3 / 4);
  std::uint32_t held = 0;
  int held_bits = 0;
  for (std::size_t place = 0; place < text.size(); ++place) {
    const int value = value_of(text[place]);
    if (value == k_not_in_alphabet) return Problem{.fault = Fault::text_bad_character, .begin = place, .end = place + 1};
    held = held << 6 | static_cast<std::uint32_t>(value);
    held_bits += 6;
    if (held_bits < 8) continue;
    held_bits -= 8;
    bytes.push_back(static_cast<std::uint8_t>(held >> held_bits));
    held &= (1u << held_bits) - 1;
  }
  if (held_bits >= 6 || held != 0) return Problem{.fault = Fault::text_cut_short, .begin = text.size(), .end = text.size()};
  return bytes;
}

}  // namespace fogsheet
