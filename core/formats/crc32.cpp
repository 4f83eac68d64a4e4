#include "core/formats/crc32.h"

#include <array>

namespace fogsheet {
namespace {

consteval std::array<std::uint32_t, 256> made_table() {
  constexpr std::uint32_t k_reflected_polynomial = 0xEDB88320;
  std::array<std::uint32_t, 256> table{};
  for (std::uint32_t byte = 0; byte < table.size(); ++byte) {
    std::uint32_t remainder = byte;
    for (int bit = 0; bit < 8; ++bit) remainder = remainder & 1 ? remainder >> 1 ^ k_reflected_polynomial : remainder >> 1;
    table[byte] = remainder;
  }
  return table;
}

constexpr std::array<std::uint32_t, 256> k_table = made_table();

}  // namespace

std::uint32_t crc32(std::span<const std::uint8_t> bytes) {
  std::uint32_t crc = 0xFFFFFFFF;
  for (const std::uint8_t byte : bytes) crc = crc >> 8 ^ k_table[(crc ^ byte) & 0xFF];
  return ~crc;
}

}  // namespace fogsheet
