#include "core/pictures/picture_header.h"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

#include "core/pictures/exif.h"

namespace fogsheet {
namespace {

using Bytes = std::span<const std::uint8_t>;

std::size_t whole(Bytes bytes, std::size_t at, std::size_t count) {  // most significant byte first, as both kinds have it
  std::size_t value = 0;
  for (std::size_t i = 0; i < count; ++i) value = value << 8 | bytes[at + i];
  return value;
}

bool has(Bytes bytes, std::size_t at, std::string_view text) {
  return at <= bytes.size() && text.size() <= bytes.size() - at && std::equal(text.begin(), text.end(), bytes.begin() + static_cast<std::ptrdiff_t>(at), [](char a, std::uint8_t b) { return static_cast<std::uint8_t>(a) == b; });
}

/// What else a picture's name is often put on.
std::string other_kind(Bytes bytes) {
  if (has(bytes, 0, "GIF8")) return "GIF";
  if (has(bytes, 0, "RIFF") && has(bytes, 8, "WEBP")) return "WebP";
  if (has(bytes, 4, "ftyp")) return has(bytes, 8, "avif") ? "AVIF" : has(bytes, 8, "hei") || has(bytes, 8, "mif1") ? "HEIC" : "";
  if (has(bytes, 0, "%PDF")) return "PDF";
  if (has(bytes, 0, "II*") || has(bytes, 0, "MM")) return "TIFF";
  if (has(bytes, 0, "BM")) return "BMP";
  // A text that begins with a tag, after blanks and a byte order mark.
  constexpr std::size_t k_looked_at = 1'000;
  std::string head(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(std::min(bytes.size(), k_looked_at)));
  const std::size_t tag = head.find_first_not_of("\xEF\xBB\xBF \t\r\n");
  if (tag == std::string::npos || head[tag] != '<') return "";
  std::transform(head.begin(), head.end(), head.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return head.find("<svg") != std::string::npos ? "SVG" : head.find("<html") != std::string::npos || head.find("<!doctype html") != std::string::npos ? "HTML" : "XML";
}

Result<PictureHeader> png_header(Bytes bytes) {
  constexpr std::size_t k_first_chunk = 8, k_chunk_frame = 12;  // length, name, checksum
  if (bytes.size() < 33 || whole(bytes, k_first_chunk, 4) != 13 || !has(bytes, 12, "IHDR")) return Fault::picture_broken;
  const std::size_t width = whole(bytes, 16, 4), height = whole(bytes, 20, 4);
  if (width == 0 || height == 0 || width > 0x7FFFFFFF || height > 0x7FFFFFFF) return Fault::picture_broken;
  if (width > k_most_picture_side_px || height > k_most_picture_side_px) return Problem{.fault = Fault::picture_too_large, .numbers = {static_cast<double>(width) * static_cast<double>(height), k_most_picture_pixels}};
  PictureHeader header{.kind = PictureKind::png, .width = static_cast<int>(width), .height = static_cast<int>(height)};
  for (std::size_t at = k_first_chunk; bytes.size() - at >= k_chunk_frame;) {
    const std::size_t length = whole(bytes, at, 4);
    if (length > bytes.size() - at - k_chunk_frame) return Fault::picture_broken;  // room would be made for what it says
    if (has(bytes, at + 4, "IEND")) break;
    if (has(bytes, at + 4, "eXIf")) header.orientation = exif_orientation(bytes.subspan(at + 8, length));
    at += length + k_chunk_frame;
  }
  return header;
}

Result<PictureHeader> jpeg_header(Bytes bytes) {
  PictureHeader header{.kind = PictureKind::jpeg};
  bool is_turned_known = false;
  for (std::size_t at = 2; at + 4 <= bytes.size();) {
    if (bytes[at] != 0xFF) return Fault::picture_broken;
    const int marker = bytes[at + 1];
    if (marker == 0xFF) {  // fill
      ++at;
      continue;
    }
    const std::size_t length = whole(bytes, at + 2, 2);
    if (length < 2 || length > bytes.size() - at - 2) return Fault::picture_broken;
    const Bytes segment = bytes.subspan(at + 4, length - 2);
    if (marker == 0xE1 && !is_turned_known && has(segment, 0, std::string_view("Exif\0\0", 6))) {
      header.orientation = exif_orientation(segment.subspan(6));
      is_turned_known = true;
    }
    if (marker >= 0xC0 && marker <= 0xC2) {  // baseline, extended, progressive: what is read here
      if (segment.size() < 6) return Fault::picture_broken;
      header.height = static_cast<int>(whole(segment, 1, 2));
      header.width = static_cast<int>(whole(segment, 3, 2));
      if (header.width == 0 || header.height == 0) return Fault::picture_broken;
      return header;
    }
    if ((marker >= 0xC3 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC) || marker == 0xDA || marker == 0xD9) return Fault::picture_broken;
    at += 2 + length;
  }
  return Fault::picture_broken;
}

}  // namespace

Result<PictureHeader> picture_header(std::span<const std::uint8_t> bytes) {
  const double size = static_cast<double>(bytes.size());
  if (size > k_most_picture_bytes) return Problem{.fault = Fault::file_too_long, .numbers = {size, k_most_picture_bytes}};
  const bool is_png = has(bytes, 0, "\x89PNG\r\n\x1A\n"), is_jpeg = has(bytes, 0, "\xFF\xD8\xFF");
  if (!is_png && !is_jpeg) {
    Problem problem{.fault = Fault::picture_of_other_kind};
    if (std::string kind = other_kind(bytes); !kind.empty()) problem.texts.push_back(std::move(kind));
    return problem;
  }
  const Result<PictureHeader> header = is_png ? png_header(bytes) : jpeg_header(bytes);
  if (!header) return header;
  const double pixels = static_cast<double>(header->width) * header->height;
  if (pixels > k_most_picture_pixels || header->width > k_most_picture_side_px || header->height > k_most_picture_side_px)
    return Problem{.fault = Fault::picture_too_large, .numbers = {pixels, k_most_picture_pixels}};
  return header;
}

}  // namespace fogsheet
