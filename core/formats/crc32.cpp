#include "core/formats/crc32.h"

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

std::uint32_t crc32(std::span<const std::uint8_t> bytes, std::uint32_t before) {
  std::uint32_t crc = ~before;
  for (const std::uint8_t byte : bytes) crc = crc >> 8 ^ k_table[(crc ^ byte) & 0xFF];
  return ~crc;
}

std::array<std::uint8_t, k_checksum_bytes> checksum_bytes(std::span<const std::uint8_t> bytes) {
  const std::uint32_t crc = crc32(bytes);
  std::array<std::uint8_t, k_checksum_bytes> written{};
  for (std::size_t i = 0; i < k_checksum_bytes; ++i) written[i] = static_cast<std::uint8_t>(crc >> (8 * i));
  return written;
}

std::uint32_t checksum_of(std::span<const std::uint8_t> bytes) {
  std::uint32_t checksum = 0;
  if (bytes.size() < k_checksum_bytes) return checksum;
  for (std::size_t i = 0; i < k_checksum_bytes; ++i) checksum |= std::uint32_t{bytes[bytes.size() - k_checksum_bytes + i]} << (8 * i);
  return checksum;
}

}  // namespace fogsheet
