// The page's third program: reads the photograph of a chart, in a worker that can be ended (page/photograph_worker.js).
#include <emscripten.h>

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/pictures/picture.h"

namespace fogsheet {

struct Photo {
  std::optional<Result<Picture>> read;
  std::vector<std::uint8_t> piece;
};

}  // namespace fogsheet

using namespace fogsheet;

extern "C" {

EMSCRIPTEN_KEEPALIVE Photo* photo_open() { return new Photo; }

/// -1 when it was read; else the Fault.
EMSCRIPTEN_KEEPALIVE int photo_read(Photo* photo, const std::uint8_t* first, int size) {
  photo->read = Picture::decode(std::span(first, static_cast<std::size_t>(size)));
  return photo->read->ok() ? -1 : static_cast<int>(photo->read->problem().fault);
}

/// Upright width and height in the file, and how many of its pixels on a side make one that is drawn.
EMSCRIPTEN_KEEPALIVE int photo_width(const Photo* photo) { return (*photo->read)->width(); }
EMSCRIPTEN_KEEPALIVE int photo_height(const Photo* photo) { return (*photo->read)->height(); }
EMSCRIPTEN_KEEPALIVE int photo_shrunk(const Photo* photo) { return (*photo->read)->shrunk(); }

/// A piece of it in drawn pixels, four bytes each.
EMSCRIPTEN_KEEPALIVE const std::uint8_t* photo_cut(Photo* photo, int left, int top, int width, int height) {
  photo->piece.resize(std::size_t{4} * static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  (*photo->read)->cut(left, top, width, height, photo->piece);
  return photo->piece.data();
}

/// What belongs to the fault: its text, and its numbers.
EMSCRIPTEN_KEEPALIVE const char* photo_fault_text(const Photo* photo) {
  const std::vector<std::string>& texts = photo->read->problem().texts;
  return texts.empty() ? "" : texts[0].c_str();
}
EMSCRIPTEN_KEEPALIVE double photo_fault_number(const Photo* photo, int which) {
  const std::vector<double>& numbers = photo->read->problem().numbers;
  return static_cast<std::size_t>(which) < numbers.size() ? numbers[static_cast<std::size_t>(which)] : 0;
}

}  // extern "C"
