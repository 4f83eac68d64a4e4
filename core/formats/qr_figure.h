// A QR code as a drawing: black on white whatever the palette, with the quiet zone that readers need.
#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace fogsheet {

// Larger ones are hard to hold a camera to on a phone's screen: 97 modules a side and the quiet zone are 3.4 px each of 360.
inline constexpr int k_largest_qr_version = 20;
// What that version holds as bytes, at levels L and M. Source: ISO/IEC 18004:2015, table 7.
inline constexpr std::size_t k_most_qr_bytes = 858;
inline constexpr std::size_t k_most_qr_bytes_at_m = 666;
inline constexpr int k_qr_quiet_zone = 4;  // modules; ISO/IEC 18004:2015, 5.3.8

/// @param modules        as qr_code gives them (exchange/qr_code.h); empty for any other bytes
/// @param light_percent  of white, for eyes that are used to the dark
std::string qr_svg(std::span<const std::uint8_t> modules, int light_percent);

}  // namespace fogsheet
