// The page's second program: reads and writes the files of other programs, and makes QR codes, for the first (page/files.js). It comes when it is
// asked for, and goes with its memory when it has answered.
#include <emscripten.h>

#include <cstdint>
#include <string_view>
#include <vector>

#include "core/exchange/exchange.h"
#include "core/exchange/qr_code.h"

namespace fogsheet {

struct Exchange {
  std::vector<std::uint8_t> answer;
};

namespace {

std::string_view text(const std::uint8_t* first, int size) { return {reinterpret_cast<const char*>(first), static_cast<std::size_t>(size)}; }

}  // namespace
}  // namespace fogsheet

using namespace fogsheet;

extern "C" {

EMSCRIPTEN_KEEPALIVE Exchange* exchange_open() { return new Exchange; }

/// Marks and lines (core/formats/marks_and_lines.h) of a file's bytes, or why there are none.
EMSCRIPTEN_KEEPALIVE void exchange_read(Exchange* exchange, const std::uint8_t* first, int size) { exchange->answer = to_bytes(read_file(text(first, size))); }

/// A file's bytes of marks and lines; none where they can't be read. Formats are counted: GPX, GeoJSON, CSV.
EMSCRIPTEN_KEEPALIVE void exchange_write(Exchange* exchange, int format, const std::uint8_t* first, int size) {
  constexpr std::string_view k_formats[] = {"gpx", "geojson", "csv"};
  const Result<MarksAndLines> all = marks_and_lines_from({first, static_cast<std::size_t>(size)});
  exchange->answer.clear();
  if (!all || format < 0 || format > 2) return;
  const std::string file = file_of(*all, k_formats[format]);
  exchange->answer.assign(file.begin(), file.end());
}

/// A text as a QR code (core/exchange/qr_code.h).
EMSCRIPTEN_KEEPALIVE void exchange_qr(Exchange* exchange, const std::uint8_t* first, int size) { exchange->answer = qr_code(text(first, size)); }

EMSCRIPTEN_KEEPALIVE const std::uint8_t* exchange_answer(Exchange* exchange) { return exchange->answer.data(); }

EMSCRIPTEN_KEEPALIVE int exchange_answer_size(Exchange* exchange) { return static_cast<int>(exchange->answer.size()); }

}  // extern "C"
