// A text as a QR code (ISO/IEC 18004), by a library that is kept for it.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

namespace fogsheet {

/// Modules row by row from the top left, 1 for dark, after one byte that tells how many there are a side. Bytes as they are
/// (mode "byte": base64url has small letters, which "alphanumeric" lacks), level M where that fits in the largest version
/// that is used (formats/qr_figure.h), else L. Nothing for a text that is longer.
std::vector<std::uint8_t> qr_code(std::string_view text);

}  // namespace fogsheet
