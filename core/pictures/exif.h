// The one thing that is read of a picture's EXIF: which way up it was taken.
// Source: CIPA DC-008-2019 (Exif 2.32), 4.6 and tag 274; TIFF 6.0 (1992), section 2, for the directory it stands in.
#pragma once

#include <cstdint>
#include <span>

namespace fogsheet {

inline constexpr int k_upright = 1;

/// Orientation as tag 274 has it, 1 to 8. @param tiff  from "II" or "MM" on. Whatever is not as it should be counts as upright.
int exif_orientation(std::span<const std::uint8_t> tiff);

}  // namespace fogsheet
