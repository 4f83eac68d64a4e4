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

TEST_CASE("part by part it is the same as of the whole") {
  const std::string_view whole = "123456789";
  for (std::size_t size = 0; size <= whole.size(); ++size) {
    const std::vector<std::uint8_t> rest(whole.begin() + static_cast<std::ptrdiff_t>(size), whole.end());
    CHECK(crc32(rest, crc32_of(whole.substr(0, size))) == 0xCBF43926);
  }
}
