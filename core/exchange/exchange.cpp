#include "core/exchange/exchange.h"

#include "core/exchange/file_text.h"
#include "core/exchange/geojson_reader.h"
#include "core/exchange/geojson_writer.h"
#include "core/exchange/gpx_reader.h"
#include "core/exchange/gpx_writer.h"
#include "core/exchange/marks_csv.h"

namespace fogsheet {
namespace {

// The first character that is to be seen, in any of the encodings that are read.
char first_sign(std::string_view bytes) {
  for (const char c : bytes.substr(0, 4'000))
    if (static_cast<unsigned char>(c) > ' ' && c != '\xEF' && c != '\xBB' && c != '\xBF' && c != '\xFF' && c != '\xFE') return c;
  return '\0';
}

// Text has no noughts but for half the bytes of UTF-16.
bool is_text(std::string_view bytes) {
  const std::string_view head = bytes.substr(0, 4'000);
  const bool utf16 = head.starts_with("\xFF\xFE") || head.starts_with("\xFE\xFF");
  return utf16 || head.find('\0') == std::string_view::npos;
}

}  // namespace

Result<MarksAndLines> read_file(std::string_view bytes) {
  if (bytes.size() > k_most_file_bytes) return Problem{.fault = Fault::file_too_long, .numbers = {static_cast<double>(bytes.size()), static_cast<double>(k_most_file_bytes)}};
  const char sign = first_sign(bytes);
  if (sign == '<') return read_gpx(bytes);
  if (sign == '\0' || !is_text(bytes)) return Fault::file_unknown;
  if (sign == '{' || sign == '[') return read_geojson(bytes);
  return read_marks_csv(bytes);
}

std::string file_of(const MarksAndLines& all, std::string_view format) {
  if (format == "gpx") return gpx_text(all);
  if (format == "geojson") return geojson_text(all);
  if (format == "csv") return marks_csv(all);
  return {};
}

}  // namespace fogsheet
