// Whole numbers and texts as bytes. Examples of seven bits a byte: Protocol Buffers' encoding guide ("Base 128 varints",
// "Signed integers"), an open standard of the same form.
#include "core/formats/bytes.h"

#include <cstdint>
#include <limits>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

using Bytes = std::vector<std::uint8_t>;

Bytes whole_bytes(std::uint64_t value) {
  ByteWriter out;
  out.whole(value);
  return out.bytes();
}

Bytes signed_bytes(std::int64_t value) {
  ByteWriter out;
  out.signed_whole(value);
  return out.bytes();
}

}  // namespace

TEST_CASE("numbers are written seven bits a byte, signed ones folded") {
  CHECK(whole_bytes(1) == Bytes{1});
  CHECK(whole_bytes(150) == Bytes{0x96, 0x01});
  CHECK(signed_bytes(0) == Bytes{0});
  CHECK(signed_bytes(-1) == Bytes{1});
  CHECK(signed_bytes(1) == Bytes{2});
  CHECK(signed_bytes(-2) == Bytes{3});
}

TEST_CASE("every number comes back") {
  Random random(20260715);
  ByteWriter out;
  std::vector<std::int64_t> values{0, 1, -1, 63, 64, -64, -65, std::numeric_limits<std::int64_t>::max(), std::numeric_limits<std::int64_t>::min()};
  for (int i = 0; i < 1'000; ++i) values.push_back(static_cast<std::int64_t>(random.next() >> random.whole(0, 63)));
  for (const std::int64_t value : values) {
    out.signed_whole(value);
    out.whole(static_cast<std::uint64_t>(value));
  }
  ByteReader in(out.bytes());
  for (const std::int64_t value : values) {
    CHECK(in.signed_whole() == value);
    CHECK(in.whole() == static_cast<std::uint64_t>(value));
  }
  CHECK(in.at_end());
}

TEST_CASE("a number that is cut short, too long or too large fails, and all after it") {
  for (const Bytes& bytes : {Bytes{}, Bytes{0x80}, Bytes{0x80, 0x00}, Bytes{0xFF, 0x80, 0x00},
                             Bytes{0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x02},
                             Bytes{0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x81, 0x01}}) {
    ByteReader in(bytes);
    CHECK(in.whole() == 0);
    CHECK_FALSE(in.ok());
    CHECK(in.whole() == 0);
    CHECK(in.text(10).empty());
    CHECK_FALSE(in.at_end());
  }
}

TEST_CASE("texts longer than allowed or than what is left fail") {
  ByteWriter out;
  out.text("Gull Rock");
  ByteReader whole(out.bytes());
  CHECK(whole.text(9) == "Gull Rock");
  CHECK(whole.at_end());
  ByteReader bounded(out.bytes());
  CHECK(bounded.text(8).empty());
  CHECK_FALSE(bounded.ok());
  ByteReader cut(std::span(out.bytes()).first(9));
  CHECK(cut.text(9).empty());
  CHECK_FALSE(cut.ok());
}
