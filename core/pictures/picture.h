// A picture's pixels, from PNG or JPEG by way of stb_image: upright, made smaller where it is larger than is drawn, and cut
// into the pieces that a graphics card takes.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>

#include "core/pictures/picture_header.h"

namespace fogsheet {

inline constexpr double k_most_drawn_pixels = 24'000'000;  // larger ones are made smaller by a whole factor

class Picture {
 public:
  /// Faults: those of picture_header(); picture_broken; picture_no_room (there is no memory for it).
  static Result<Picture> decode(std::span<const std::uint8_t> bytes);

  /// Upright, in pixels of the file.
  int width() const { return width_; }
  int height() const { return height_; }
  /// A drawn pixel is the mean of a square of that many of the file's, on a side. The last ones to the right and below that
  /// fill no square of their own are left out.
  int shrunk() const { return shrunk_; }
  int drawn_width() const { return width_ / shrunk_; }
  int drawn_height() const { return height_ / shrunk_; }

  /// A piece of it, in drawn pixels that are all on it: red, green, blue and 255 each, on white where it is see-through.
  void cut(int left, int top, int width, int height, std::span<std::uint8_t> rgba) const;

 private:
  struct Free {
    void operator()(std::uint8_t* pixels) const;
  };
  std::unique_ptr<std::uint8_t[], Free> pixels_;
  int width_ = 0;
  int height_ = 0;
  int shrunk_ = 1;
  int channels_ = 0;  // grey; grey and opacity; red, green and blue; these and opacity
  std::ptrdiff_t first_ = 0;  // byte of the upright picture's upper left pixel; and from one pixel to the next
  std::ptrdiff_t to_right_ = 0;
  std::ptrdiff_t down_ = 0;
};

}  // namespace fogsheet
