// CRC-32, the checksum at the end of a document text.
// Source: IEEE 802.3 (reflected, polynomial 0x04C11DB7, all ones before and after), as in RFC 1952 section 8.
#pragma once

#include <cstdint>
#include <span>

namespace fogsheet {

/// 0 for no bytes; 0xCBF43926 for "123456789". Any change within 32 neighbouring bits changes it.
std::uint32_t crc32(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
