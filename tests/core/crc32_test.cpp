#include "core/formats/crc32.h"

#include <string_view>
#include <vector>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

std::uint32_t crc32_of(std::string_view text) { return crc32(std::vector<std::uint8_t>(text.begin(), text.end())); }

}  // namespace

TEST_CASE("the checksum has its published check value") {
  // CRC-32/ISO-HDLC: the usual check over the nine figures; the second is common practice, no source.
  CHECK(crc32_of("123456789") == 0xCBF43926);
  CHECK(crc32_of("The quick brown fox jumps over the lazy dog") == 0x414FA339);
  CHECK(crc32_of("") == 0);
}
