// GeoJSON from outside, and other JSON.
#include <cstddef>
#include <cstdint>

#include "core/exchange/geojson_reader.h"
#include "tests/fuzz/exchange_checks.h"

using namespace fogsheet;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check_exchanged(read_geojson({reinterpret_cast<const char*>(data), size}));
  return 0;
}
