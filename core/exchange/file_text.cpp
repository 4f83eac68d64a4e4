#include "core/exchange/file_text.h"

#include <cstdint>

#include "core/base/utf8.h"

namespace fogsheet {
namespace {

std::string from_utf16(std::string_view bytes, bool big_end_first) {
  const auto unit = [&](std::size_t at) {
    const auto first = static_cast<unsigned char>(bytes[at]), second = static_cast<unsigned char>(bytes[at + 1]);
    return static_cast<char32_t>(big_end_first ? first << 8 | second : second << 8 | first);
  };
  std::string text;
  std::size_t at = 0;
  for (; at + 1 < bytes.size(); at += 2) {
    char32_t character = unit(at);
    if (character >= 0xD800 && character < 0xDC00 && at + 3 < bytes.size()) {
      const char32_t low = unit(at + 2);
      if (low >= 0xDC00 && low < 0xE000) {
        character = 0x10000 + ((character - 0xD800) << 10) + (low - 0xDC00);
        at += 2;
      }
    }
    add_character(text, character);
  }
  if (at < bytes.size()) add_character(text, k_replacement_character);
  return text;
}

}  // namespace

char32_t windows_1252(unsigned char byte) {
  constexpr std::uint16_t k_from_80[32] = {0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x8D,   0x017D, 0x8F,
                                           0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};
  return byte >= 0x80 && byte < 0xA0 ? k_from_80[byte - 0x80] : byte;
}

void add_character(std::string& text, char32_t character) {
  if (character > 0x10FFFF || (character >= 0xD800 && character < 0xE000)) character = k_replacement_character;
  const auto tail = [&](int shift) { text += static_cast<char>(0x80 | (character >> shift & 0x3F)); };
  if (character < 0x80) {
    text += static_cast<char>(character);
  } else if (character < 0x800) {
    text += static_cast<char>(0xC0 | character >> 6);
    tail(0);
  } else if (character < 0x10000) {
    text += static_cast<char>(0xE0 | character >> 12);
    tail(6);
    tail(0);
  } else {
    text += static_cast<char>(0xF0 | character >> 18);
    tail(12);
    tail(6);
    tail(0);
  }
}

std::string text_of_file(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) return repaired_utf8(bytes.substr(3));
  if (bytes.starts_with("\xFF\xFE")) return from_utf16(bytes.substr(2), false);
  if (bytes.starts_with("\xFE\xFF")) return from_utf16(bytes.substr(2), true);
  if (is_utf8(bytes)) return std::string(bytes);
  std::string text;
  for (const char byte : bytes) add_character(text, windows_1252(static_cast<unsigned char>(byte)));
  return text;
}

}  // namespace fogsheet
