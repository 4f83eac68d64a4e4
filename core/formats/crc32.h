// CRC-32, the checksum at the end of a document text.
// Source: IEEE 802.3 (reflected, polynomial 0x04C11DB7, all ones before and after), as in RFC 1952 section 8.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

namespace fogsheet {

/// 0 for no bytes; 0xCBF43926 for "123456789". Any change within 32 neighbouring bits changes it.
/// @param before  that of the bytes before these, where they come part by part
std::uint32_t crc32(std::span<const std::uint8_t> bytes, std::uint32_t before = 0);

inline constexpr std::size_t k_checksum_bytes = 4;

/// As it stands at the end of what it was made of: least byte first.
std::array<std::uint8_t, k_checksum_bytes> checksum_bytes(std::span<const std::uint8_t> bytes);

/// The one that stands at the end of these bytes; 0 where they are too few.
std::uint32_t checksum_of(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
