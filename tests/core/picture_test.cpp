// Pictures from outside: their headers, which way up they are, their pixels. Files are made by stb_image_write, or byte by byte
// as the standards have them.
#include "core/pictures/picture.h"

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "core/base/random.h"
#include "core/pictures/exif.h"
#include "doctest/doctest.h"

#define STB_IMAGE_WRITE_IMPLEMENTATION
#define STB_IMAGE_WRITE_STATIC
#define STBI_WRITE_NO_STDIO
#include "stb/stb_image_write.h"

using namespace fogsheet;

namespace {

using Bytes = std::vector<std::uint8_t>;

void append(void* to, void* data, int size) {
  const auto* first = static_cast<const std::uint8_t*>(data);
  static_cast<Bytes*>(to)->insert(static_cast<Bytes*>(to)->end(), first, first + size);
}

Bytes png(int width, int height, int channels, const Bytes& pixels) {
  Bytes file;
  REQUIRE(stbi_write_png_to_func(append, &file, width, height, channels, pixels.data(), width * channels));
  return file;
}

Bytes jpeg(int width, int height, int channels, const Bytes& pixels) {
  Bytes file;
  REQUIRE(stbi_write_jpg_to_func(append, &file, width, height, channels, pixels.data(), 100));
  return file;
}

Bytes text(std::string_view words) { return Bytes(words.begin(), words.end()); }

/// A directory of one entry that tells the orientation.
Bytes tiff(int orientation, bool big_endian) {
  const auto number = [&](std::uint32_t value, int bytes) {
    Bytes all;
    for (int i = 0; i < bytes; ++i) all.push_back(static_cast<std::uint8_t>(value >> 8 * (big_endian ? bytes - 1 - i : i)));
    return all;
  };
  Bytes all = text(big_endian ? "MM" : "II");
  for (const Bytes& part : {number(42, 2), number(8, 4), number(1, 2), number(274, 2), number(3, 2), number(1, 4), number(static_cast<std::uint32_t>(orientation), 2), number(0, 2), number(0, 4)})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

/// With the segment that cameras put it in, behind the start of the image.
Bytes with_exif(Bytes file, const Bytes& tiff) {
  const std::size_t length = tiff.size() + 8;
  Bytes segment = {0xFF, 0xE1, static_cast<std::uint8_t>(length >> 8), static_cast<std::uint8_t>(length), 'E', 'x', 'i', 'f', 0, 0};
  segment.insert(segment.end(), tiff.begin(), tiff.end());
  file.insert(file.begin() + 2, segment.begin(), segment.end());
  return file;
}

Bytes whole_of(const Picture& picture) {
  Bytes rgba(4 * static_cast<std::size_t>(picture.drawn_width() * picture.drawn_height()));
  picture.cut(0, 0, picture.drawn_width(), picture.drawn_height(), rgba);
  return rgba;
}

/// 3 by 2, each pixel its own.
const Bytes k_six = {255, 0, 0, 0, 255, 0, 0, 0, 255, 10, 20, 30, 40, 50, 60, 70, 80, 90};

Bytes pixel_of(const Bytes& rgba, int width, int x, int y) {
  const auto at = rgba.begin() + 4 * (y * width + x);
  return Bytes(at, at + 3);
}

}  // namespace

TEST_CASE("a PNG's pixels come as they are, in every number of channels") {
  const Result<Picture> rgb = Picture::decode(png(3, 2, 3, k_six));
  REQUIRE(rgb.ok());
  CHECK((rgb->width() == 3 && rgb->height() == 2 && rgb->shrunk() == 1));
  const Bytes all = whole_of(*rgb);
  for (int i = 0; i < 6; ++i) {
    CAPTURE(i);
    CHECK(pixel_of(all, 3, i % 3, i / 3) == Bytes(k_six.begin() + 3 * i, k_six.begin() + 3 * i + 3));
    CHECK(all[static_cast<std::size_t>(4 * i + 3)] == 255);
  }
  CHECK(pixel_of(whole_of(*Picture::decode(png(2, 1, 1, {7, 200}))), 2, 1, 0) == Bytes{200, 200, 200});
  // See-through: on white. Half of 100 on white is 177.
  CHECK(pixel_of(whole_of(*Picture::decode(png(2, 1, 4, {9, 9, 9, 0, 100, 0, 255, 128}))), 2, 0, 0) == Bytes{255, 255, 255});
  CHECK(pixel_of(whole_of(*Picture::decode(png(2, 1, 4, {9, 9, 9, 0, 100, 0, 255, 128}))), 2, 1, 0) == Bytes{177, 127, 255});
  CHECK(pixel_of(whole_of(*Picture::decode(png(1, 1, 2, {0, 51}))), 1, 0, 0) == Bytes{204, 204, 204});
}

TEST_CASE("a JPEG's pixels come as near as JPEG keeps them") {
  Bytes smooth;
  for (int y = 0; y < 40; ++y)
    for (int x = 0; x < 60; ++x) smooth.insert(smooth.end(), {static_cast<std::uint8_t>(4 * x), static_cast<std::uint8_t>(5 * y), 128});
  const Result<Picture> picture = Picture::decode(jpeg(60, 40, 3, smooth));
  REQUIRE(picture.ok());
  const Bytes all = whole_of(*picture);
  int worst = 0;
  for (int i = 0; i < 60 * 40; ++i)
    for (int ink = 0; ink < 3; ++ink) worst = std::max(worst, std::abs(all[static_cast<std::size_t>(4 * i + ink)] - smooth[static_cast<std::size_t>(3 * i + ink)]));
  CHECK(worst <= 6);
}

TEST_CASE("a photograph is turned as EXIF says, in all eight ways") {
  // Corners of the upright picture by orientation, as Exif 2.32 has it: which side of it the file's first row is, and its
  // first column: 1 top left, 2 top right, 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
  struct Case {
    int orientation;
    const char* first_row;
    const char* first_column;
  };
  const Case cases[] = {{1, "top", "left"}, {2, "top", "right"}, {3, "bottom", "right"}, {4, "bottom", "left"}, {5, "left", "top"}, {6, "right", "top"}, {7, "right", "bottom"}, {8, "left", "bottom"}};
  Bytes pixels;  // dark, but the first row half light, and the first pixel of all white: blocks of 16, so that JPEG keeps them apart
  for (int y = 0; y < 32; ++y)
    for (int x = 0; x < 48; ++x) pixels.push_back(y < 16 ? (x < 16 ? 255 : 128) : 0);
  const Bytes plain = jpeg(48, 32, 1, pixels);
  for (const Case& each : cases)
    for (const bool big_endian : {false, true}) {
      CAPTURE(each.orientation);
      CAPTURE(big_endian);
      const Result<Picture> picture = Picture::decode(with_exif(plain, tiff(each.orientation, big_endian)));
      REQUIRE(picture.ok());
      const bool is_on_its_side = each.orientation >= 5;
      REQUIRE(picture->width() == (is_on_its_side ? 32 : 48));
      REQUIRE(picture->height() == (is_on_its_side ? 48 : 32));
      const int w = picture->width(), h = picture->height();
      const Bytes all = whole_of(*picture);
      const auto is_on = [&](const char* side) { return std::string_view(each.first_row) == side || std::string_view(each.first_column) == side; };
      const auto light = [&](bool right, bool bottom) { return pixel_of(all, w, right ? w - 8 : 8, bottom ? h - 8 : 8)[0]; };
      CHECK(light(is_on("right"), is_on("bottom")) > 240);                          // where first row and first column meet
      const bool row_is_level = !is_on_its_side;
      CHECK(std::abs(light(is_on("right") != row_is_level, is_on("bottom") == row_is_level) - 128) < 12);  // the first row's other end
      CHECK(light(is_on("right") == row_is_level, is_on("bottom") != row_is_level) < 12);                  // the first column's
    }
}

TEST_CASE("EXIF that is not as it should be turns nothing") {
  const Bytes good = tiff(6, true);
  CHECK(exif_orientation(good) == 6);
  for (std::size_t length = 0; length < 20; ++length) CHECK(exif_orientation(std::span(good).first(length)) == 1);
  for (const std::pair<std::size_t, std::uint8_t>& change : std::vector<std::pair<std::size_t, std::uint8_t>>{{0, 0x49}, {3, 41}, {7, 200}, {4, 255}, {13, 4}, {17, 2}, {19, 9}, {19, 0}, {11, 19}}) {
    Bytes bad = good;
    bad[change.first] = change.second;
    CAPTURE(change.first);
    CHECK(exif_orientation(bad) == 1);
  }
  Random random(72);
  for (int run = 0; run < 20'000; ++run) {
    Bytes bad = good;
    for (std::int64_t i = random.whole(1, 6); i-- > 0;) bad[static_cast<std::size_t>(random.whole(2, 25))] = static_cast<std::uint8_t>(random.whole(0, 255));
    const int turned = exif_orientation(bad);
    CHECK((turned >= 1 && turned <= 8));
  }
}

TEST_CASE("what a file is shows in its first bytes, and what is no picture is named") {
  struct Case {
    std::string_view bytes;
    const char* kind;
  };
  using namespace std::string_view_literals;
  const Case cases[] = {{"<svg xmlns=\"http://www.w3.org/2000/svg\"/>", "SVG"}, {"\xEF\xBB\xBF<?xml version=\"1.0\"?>\n<SVG>", "SVG"}, {"  <!DOCTYPE html><script>alert(1)</script>", "HTML"},
                        {"<html>", "HTML"}, {"<gpx/>", "XML"}, {"GIF89a", "GIF"}, {"RIFF\0\0\0\0WEBPVP8 "sv, "WebP"}, {"\0\0\0\x18" "ftypheic"sv, "HEIC"}, {"\0\0\0\x18" "ftypavif"sv, "AVIF"}, {"%PDF-1.4", "PDF"},
                        {"II*\0"sv, "TIFF"}, {"BM", "BMP"}};
  for (const Case& each : cases) {
    CAPTURE(each.kind);
    const Result<PictureHeader> header = picture_header(text(each.bytes));
    REQUIRE_FALSE(header.ok());
    CHECK(header.problem() == Problem{.fault = Fault::picture_of_other_kind, .texts = {each.kind}});
  }
  CHECK(picture_header({}).problem() == Problem{.fault = Fault::picture_of_other_kind});
  CHECK(picture_header(text("hello")).problem() == Problem{.fault = Fault::picture_of_other_kind});
  CHECK(picture_header(png(3, 2, 3, k_six))->kind == PictureKind::png);
  CHECK(picture_header(jpeg(3, 2, 3, k_six))->kind == PictureKind::jpeg);
}

TEST_CASE("size is told by the header, and one too large is refused before a pixel is read") {
  const auto sized = [](Bytes file, std::uint32_t width, std::uint32_t height) {
    for (int i = 0; i < 4; ++i) {
      file[static_cast<std::size_t>(16 + i)] = static_cast<std::uint8_t>(width >> 8 * (3 - i));
      file[static_cast<std::size_t>(20 + i)] = static_cast<std::uint8_t>(height >> 8 * (3 - i));
    }
    return file;
  };
  const Bytes file = png(3, 2, 3, k_six);
  CHECK(picture_header(sized(file, 8000, 8000)).ok());
  CHECK(picture_header(sized(file, 8001, 8000)).problem() == Problem{.fault = Fault::picture_too_large, .numbers = {8001.0 * 8000, k_most_picture_pixels}});
  CHECK(picture_header(sized(file, 32'769, 1)).problem().fault == Fault::picture_too_large);
  CHECK(picture_header(sized(file, 0x7FFFFFFF, 0x7FFFFFFF)).problem().fault == Fault::picture_too_large);
  CHECK(picture_header(sized(file, 0xFFFFFFFF, 1)).problem().fault == Fault::picture_broken);
  CHECK(picture_header(sized(file, 0, 5)).problem().fault == Fault::picture_broken);
  CHECK(Picture::decode(sized(file, 5000, 4000)).problem().fault == Fault::picture_broken);  // its pixels are not there
  CHECK(picture_header(Bytes(static_cast<std::size_t>(k_most_picture_bytes) + 1, 0)).problem().fault == Fault::file_too_long);
}

TEST_CASE("a PNG's chunk that says more than is there is not believed; what follows its end is left alone") {
  Bytes file = png(3, 2, 3, k_six);
  REQUIRE(picture_header(file).ok());
  Bytes longer = file;
  longer.insert(longer.end(), {0x7F, 0xFF, 0xFF, 0xFF, 'I', 'D', 'A', 'T', 0, 0, 0, 0, 0});
  CHECK(Picture::decode(longer).ok());
  file[33] = 0x3F;  // the length of the chunk behind the header's
  CHECK(picture_header(file).problem().fault == Fault::picture_broken);
}

TEST_CASE("a file cut anywhere is refused, or what is left of it is shown") {
  Bytes noise;
  Random random(73);
  for (int i = 0; i < 40 * 40 * 3; ++i) noise.push_back(static_cast<std::uint8_t>(random.whole(0, 255)));
  for (const Bytes& file : {png(40, 40, 3, noise), jpeg(40, 40, 3, noise)})
    for (std::size_t length = 0; length < file.size(); length += 1 + file.size() / 200) {
      const Result<Picture> picture = Picture::decode(std::span(file).first(length));
      if (picture.ok()) CHECK((picture->width() == 40 && picture->height() == 40));
      else CHECK((picture.problem().fault == Fault::picture_broken || (length < 8 && picture.problem().fault == Fault::picture_of_other_kind)));
    }
}

TEST_CASE("pieces of a picture are pieces of the whole") {
  Bytes pixels;
  for (int i = 0; i < 37 * 23 * 3; ++i) pixels.push_back(static_cast<std::uint8_t>(i * 7 + i / 100));
  const Picture picture = Picture::decode(png(37, 23, 3, pixels)).value();
  const Bytes all = whole_of(picture);
  Bytes piece(4 * 5 * 4);
  picture.cut(32, 19, 5, 4, piece);
  for (int y = 0; y < 4; ++y)
    for (int x = 0; x < 5; ++x) CHECK(pixel_of(piece, 5, x, y) == pixel_of(all, 37, 32 + x, 19 + y));
}

TEST_CASE("one larger than is drawn is made smaller by the mean of its pixels") {
  const int width = 6'000, height = 4'200;  // 25.2 million
  Bytes pixels(static_cast<std::size_t>(width) * height);
  for (std::size_t i = 0; i < pixels.size(); ++i) pixels[i] = static_cast<std::uint8_t>(i % 2 == 0 ? 100 : i / width % 2 == 0 ? 50 : 201);
  const Result<Picture> picture = Picture::decode(png(width, height, 1, pixels));
  REQUIRE(picture.ok());
  CHECK((picture->width() == width && picture->shrunk() == 2 && picture->drawn_width() == 3'000 && picture->drawn_height() == 2'100));
  Bytes piece(4 * 2 * 2);
  picture->cut(2'998, 2'098, 2, 2, piece);
  CHECK(pixel_of(piece, 2, 1, 1) == Bytes{113, 113, 113});  // (100 + 50 + 100 + 201) / 4 = 112.75
}
