// GPX from outside, and other XML.
#include <cstddef>
#include <cstdint>

#include "core/exchange/gpx_reader.h"
#include "tests/fuzz/exchange_checks.h"

using namespace fogsheet;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check_exchanged(read_gpx({reinterpret_cast<const char*>(data), size}));
  return 0;
}
