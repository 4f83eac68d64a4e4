#include "core/pictures/picture.h"

#include <algorithm>
#include <string_view>

#include "core/base/check.h"

#define STB_IMAGE_IMPLEMENTATION
#define STB_IMAGE_STATIC
#define STBI_ONLY_PNG
#define STBI_ONLY_JPEG
#define STBI_NO_STDIO
#define STBI_NO_LINEAR
#define STBI_NO_HDR
#define STBI_MAX_DIMENSIONS 32768
#define STBI_ASSERT(condition) SHEET_CHECK(condition, "stb_image's own check")
#include "stb/stb_image.h"

namespace fogsheet {

static_assert(STBI_MAX_DIMENSIONS == k_most_picture_side_px);

void Picture::Free::operator()(std::uint8_t* pixels) const { stbi_image_free(pixels); }

Result<Picture> Picture::decode(std::span<const std::uint8_t> bytes) {
  const Result<PictureHeader> header = picture_header(bytes);
  if (!header) return header.problem();
  int width = 0, height = 0, channels = 0;
  Picture picture;
  picture.pixels_.reset(stbi_load_from_memory(bytes.data(), static_cast<int>(bytes.size()), &width, &height, &channels, 0));
  if (!picture.pixels_) return std::string_view(stbi_failure_reason()) == "outofmem" ? Fault::picture_no_room : Fault::picture_broken;
  if (width != header->width || height != header->height || channels < 1 || channels > 4) return Fault::picture_broken;

  // Of a file's row of pixels EXIF says which side of the picture it is, and of its column.
  const int turned = header->orientation;
  const bool is_on_its_side = turned >= 5;
  const bool from_right = turned == 2 || turned == 3 || turned == 7 || turned == 8;  // along the file's rows, from their far end
  const bool from_below = turned == 3 || turned == 4 || turned == 6 || turned == 7;
  const std::ptrdiff_t along = channels, row = std::ptrdiff_t{width} * channels;
  const std::ptrdiff_t in_row = from_right ? -along : along, in_column = from_below ? -row : row;
  picture.first_ = (from_right ? (width - 1) * along : 0) + (from_below ? (height - 1) * row : 0);
  picture.to_right_ = is_on_its_side ? in_column : in_row;
  picture.down_ = is_on_its_side ? in_row : in_column;
  picture.width_ = is_on_its_side ? height : width;
  picture.height_ = is_on_its_side ? width : height;
  picture.channels_ = channels;
  const double pixels = static_cast<double>(width) * height;
  while (pixels > k_most_drawn_pixels * picture.shrunk_ * picture.shrunk_) ++picture.shrunk_;
  picture.shrunk_ = std::min({picture.shrunk_, width, height});
  return picture;
}

void Picture::cut(int left, int top, int width, int height, std::span<std::uint8_t> rgba) const {
  SHEET_CHECK(left >= 0 && top >= 0 && width > 0 && height > 0 && left <= drawn_width() - width && top <= drawn_height() - height, "a piece of a picture lies on it");
  SHEET_CHECK(rgba.size() == std::size_t{4} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height), "a piece of a picture has four bytes a pixel");
  const bool has_opacity = channels_ % 2 == 0;
  const int inks = channels_ < 3 ? 1 : 3;
  const unsigned count = static_cast<unsigned>(shrunk_ * shrunk_);
  std::uint8_t* to = rgba.data();
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x, to += 4) {
      const std::uint8_t* corner = pixels_.get() + first_ + std::ptrdiff_t{left + x} * shrunk_ * to_right_ + std::ptrdiff_t{top + y} * shrunk_ * down_;
      unsigned sums[3] = {};
      for (int j = 0; j < shrunk_; ++j)
        for (int i = 0; i < shrunk_; ++i) {
          const std::uint8_t* pixel = corner + i * to_right_ + j * down_;
          const unsigned opacity = has_opacity ? pixel[inks] : 255;
          for (int ink = 0; ink < inks; ++ink) sums[ink] += (pixel[ink] * opacity + 255 * (255 - opacity) + 127) / 255;
        }
      for (int ink = 0; ink < 3; ++ink) to[ink] = static_cast<std::uint8_t>((sums[inks == 1 ? 0 : ink] + count / 2) / count);
      to[3] = 255;
    }
}

}  // namespace fogsheet
