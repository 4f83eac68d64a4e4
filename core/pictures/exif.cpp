#include "core/pictures/exif.h"

#include <cstddef>

namespace fogsheet {
namespace {

constexpr std::uint32_t k_orientation_tag = 274;
constexpr std::uint32_t k_type_short = 3;
constexpr std::size_t k_entry_bytes = 12;

/// Whole numbers in the file's own order of bytes; past its end they are nought.
class TiffReader {
 public:
  TiffReader(std::span<const std::uint8_t> bytes, bool is_big_endian) : bytes_(bytes), is_big_endian_(is_big_endian) {}

  std::uint32_t whole(std::size_t at, std::size_t count) const {
    if (at > bytes_.size() || count > bytes_.size() - at) return 0;
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < count; ++i) value = value << 8 | bytes_[at + (is_big_endian_ ? i : count - 1 - i)];
    return value;
  }

 private:
  std::span<const std::uint8_t> bytes_;
  bool is_big_endian_;
};

}  // namespace

int exif_orientation(std::span<const std::uint8_t> tiff) {
  if (tiff.size() < 8 || tiff[0] != tiff[1] || (tiff[0] != 'I' && tiff[0] != 'M')) return k_upright;
  const TiffReader in(tiff, tiff[0] == 'M');
  if (in.whole(2, 2) != 42) return k_upright;
  const std::size_t directory = in.whole(4, 4);
  const std::size_t entries = in.whole(directory, 2);
  for (std::size_t i = 0; i < entries; ++i) {
    const std::size_t entry = directory + 2 + i * k_entry_bytes;
    if (entry > tiff.size() || k_entry_bytes > tiff.size() - entry) return k_upright;
    if (in.whole(entry, 2) != k_orientation_tag) continue;
    const std::uint32_t value = in.whole(entry + 8, 2);
    return in.whole(entry + 2, 2) == k_type_short && in.whole(entry + 4, 4) == 1 && value >= 1 && value <= 8 ? static_cast<int>(value) : k_upright;
  }
  return k_upright;
}

}  // namespace fogsheet
