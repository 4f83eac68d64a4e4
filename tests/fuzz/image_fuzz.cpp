// Pictures from outside: header, EXIF, and the pixels of those small enough to be many in a minute.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/pictures/exif.h"
#include "core/pictures/picture.h"
#include "tests/fuzz/checks.h"

using namespace fogsheet;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::span<const std::uint8_t> bytes(data, size);
  const int turned = exif_orientation(bytes);
  must(turned >= 1 && turned <= 8);
  const Result<PictureHeader> header = picture_header(bytes);
  if (!header) {
    const Fault fault = header.problem().fault;
    must(fault == Fault::picture_of_other_kind || fault == Fault::picture_too_large || fault == Fault::picture_broken);
    must(Picture::decode(bytes).problem().fault == fault);
    return 0;
  }
  must(header->width > 0 && header->height > 0 && header->width <= k_most_picture_side_px && header->height <= k_most_picture_side_px);
  must(header->orientation >= 1 && header->orientation <= 8);
  constexpr double k_most_pixels = 250'000;
  if (static_cast<double>(header->width) * header->height > k_most_pixels) return 0;
  const Result<Picture> picture = Picture::decode(bytes);
  if (!picture) return 0;
  const bool on_its_side = header->orientation >= 5;
  must(picture->width() == (on_its_side ? header->height : header->width) && picture->height() == (on_its_side ? header->width : header->height));
  // Whole, and its last corner by itself.
  const int width = picture->drawn_width(), height = picture->drawn_height();
  std::vector<std::uint8_t> all(std::size_t{4} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height)), corner(4);
  picture->cut(0, 0, width, height, all);
  picture->cut(width - 1, height - 1, 1, 1, corner);
  must(std::equal(corner.begin(), corner.end(), all.end() - 4));
  return 0;
}
