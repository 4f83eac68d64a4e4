// What a picture's first parts say of it, read before a pixel of it is: its kind by its own bytes, whatever its name is; its
// size, so that one too large is refused while that is cheap; and which way up it was taken.
// Sources: W3C PNG (Third Edition, 2025), 5.2, 11.2.1 and 11.3.4.3 (eXIf); ITU-T T.81 (JPEG), annex B; CIPA DC-008-2019, 4.7.2 (APP1).
#pragma once

#include <cstdint>
#include <span>

#include "core/base/result.h"

namespace fogsheet {

inline constexpr double k_most_picture_bytes = 64'000'000;
inline constexpr double k_most_picture_pixels = 64'000'000;
inline constexpr int k_most_picture_side_px = 32'768;

enum class PictureKind { png, jpeg };

struct PictureHeader {
  PictureKind kind = PictureKind::png;
  int width = 0;        // as its pixels lie in the file
  int height = 0;
  int orientation = 1;  // as EXIF counts it, 1 to 8
};

/// Faults: file_too_long (numbers: bytes given, most), picture_of_other_kind (texts: what it is by its bytes; none where that is
/// not known), picture_too_large (numbers: its pixels, most), picture_broken.
Result<PictureHeader> picture_header(std::span<const std::uint8_t> bytes);

}  // namespace fogsheet
