// base64url: the standard's own examples, and refusal of every other spelling.
#include "core/formats/base64url.h"

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

std::vector<std::uint8_t> bytes_of(std::string_view text) { return {text.begin(), text.end()}; }

}  // namespace

TEST_CASE("RFC 4648 section 10, without padding") {
  struct Case { const char* bytes; const char* text; };
  const Case cases[] = {{"", ""}, {"f", "Zg"}, {"fo", "Zm8"}, {"foo", "Zm9v"}, {"foob", "Zm9vYg"}, {"fooba", "Zm9vYmE"}, {"foobar", "Zm9vYmFy"}};
  for (const Case& c : cases) {
    CHECK(base64url_encode(bytes_of(c.bytes)) == c.text);
    CHECK(*base64url_decode(c.text) == bytes_of(c.bytes));
  }
}

TEST_CASE("values 62 and 63 are the URL's own characters") {
  // RFC 4648 table 2.
  CHECK(base64url_encode(std::vector<std::uint8_t>{0xFB, 0xFF}) == "-_8");
  CHECK(*base64url_decode("-_8") == std::vector<std::uint8_t>{0xFB, 0xFF});
}

TEST_CASE("all bytes there and back") {
  Random random(20260714);
  for (int run = 0; run < 300; ++run) {
    std::vector<std::uint8_t> bytes(static_cast<std::size_t>(random.whole(0, 50)));
    for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.next());
    CHECK(*base64url_decode(base64url_encode(bytes)) == bytes);
  }
}

TEST_CASE("characters of other alphabets are refused with their place") {
  for (const char* text : {"Zm9v+g", "Zm9v/g", "Zm9v=g", "Zm9v g", "Zm9v\ng", "Zm9v\xC3\xA9"}) {
    CAPTURE(text);
    const auto result = base64url_decode(text);
    REQUIRE_FALSE(result.ok());
    CHECK(result.problem() == Problem{.fault = Fault::text_bad_character, .begin = 4, .end = 5});
  }
}

TEST_CASE("lengths and left-over bits that no bytes have are refused") {
  for (const char* text : {"Z", "Zm9vY", "Zh", "Zm9", "Zm9vYh"}) {
    CAPTURE(text);
    const auto result = base64url_decode(text);
    REQUIRE_FALSE(result.ok());
    CHECK(result.problem().fault == Fault::text_cut_short);
  }
}
