// Comma-separated values from outside, and other text.
#include <cstddef>
#include <cstdint>

#include "core/exchange/marks_csv.h"
#include "tests/fuzz/exchange_checks.h"

using namespace fogsheet;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check_exchanged(read_marks_csv({reinterpret_cast<const char*>(data), size}));
  return 0;
}
