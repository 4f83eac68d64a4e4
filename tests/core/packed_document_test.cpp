// Documents packed: there and back at the edges of what they may hold, near the limit of what there is to tell, and
// refused with a reason, in bounded time, whatever the bytes.
#include "core/formats/packed_document.h"

#include <string>
#include <vector>

#include "core/document/actions.h"
#include "core/document/integrity.h"
#include "core/formats/document_text.h"
#include "doctest/doctest.h"
#include "tests/bench/link_routes.h"
#include "tests/core/plain_text.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

void comes_back(const Document& document) {
  REQUIRE(check_document(document).ok());
  const std::vector<std::uint8_t> bytes = pack(document);
  const Result<Document> unpacked = unpack(bytes);
  REQUIRE(unpacked.ok());
  CHECK(*unpacked == document);
}

// One packed section as the bytes of a text: its tag (14, needed), its length, itself.
std::string text_of_packed(const std::vector<std::uint8_t>& packed) {
  std::vector<std::uint8_t> bytes = {14 << 1};
  for (std::size_t size = packed.size();; size >>= 7) {
    bytes.push_back(static_cast<std::uint8_t>(size > 127 ? size | 128 : size));
    if (size <= 127) break;
  }
  bytes.insert(bytes.end(), packed.begin(), packed.end());
  return text_of_bytes(bytes);
}

}  // namespace

TEST_CASE("sheets anywhere come back, also over 180 degrees and at the last latitudes") {
  for (const double lat : {-70.0, -0.00001, 0.0, 44.123457, 70.0})
    for (const double lon : {-180.0, -179.99999, 0.0, 31.333333, 179.99999})
      for (const double scale : {25'000.0, 99'999.0, 100'000.0, 1'000'000.0}) {
        CAPTURE(lat);
        CAPTURE(lon);
        CAPTURE(scale);
        const Result<Document> made = made_sheet({.name = "", .mid_lat_deg = lat, .mid_lon_deg = lon, .scale = scale, .date = {2026, 7, 1}});
        REQUIRE(made.ok());
        History history(*made);
        comes_back(history.now());
        Random random(3);
        for (int i = 0; i < 10; ++i) {
          const Position at = random_place_on(random, history.now());
          REQUIRE(add_mark(history, {.name = "m", .lat_deg = at.lat_deg, .lon_deg = at.lon_deg}));
        }
        comes_back(history.now());
      }
}

TEST_CASE("ids out of order and far apart come back") {
  Document document = seeded_route(5, 6);
  std::vector<Mark> marks(document.marks.begin(), document.marks.end());
  std::swap(marks[1], marks[4]);
  marks.push_back({.id = {k_most_id - 1}, .name = "last", .at = document.sheet.middle});
  document.marks = Table<Mark>::of(marks);
  std::vector<Leg> legs(document.legs.begin(), document.legs.end());
  std::swap(legs.front(), legs.back());
  document.legs = Table<Leg>::of(legs);
  document.next_id = k_most_id;
  comes_back(document);
}

// The aim is 1.8 times the least there can be; links.bench.mjs tells how near it is, and sets it beside packed files of other programs.
TEST_CASE("routes take under 1.8 times the least there is to tell, and fifty marks under 2000 characters") {
  for (const int marks : {5, 20, 50}) {
    CAPTURE(marks);
    constexpr int k_routes = 20;
    double ratios = 0;
    for (std::uint64_t seed = 1; seed <= k_routes; ++seed) {
      const Document route = seeded_route(seed, marks);
      const std::string text = encode_document(route);
      ratios += static_cast<double>(text.size()) / least_characters(route);
      CHECK(text.size() < 2'000);
    }
    CHECK(ratios / k_routes < 1.8);
  }
}

TEST_CASE("marks at typed places take less than marks anywhere") {
  const Document anywhere = seeded_route(3, 20);
  Document typed = anywhere;
  for (Mark mark : anywhere.marks) {
    mark.at = {mark.at.lat / 1'000 * 1'000, mark.at.lon / 1'000 * 1'000};
    typed.marks = typed.marks.replaced(mark);
  }
  comes_back(typed);
  CHECK(encode_document(typed).size() + 20 * 2 < encode_document(anywhere).size());
}

TEST_CASE("any bytes are a document or a reason, and never more than a sheet may hold") {
  Random random(20261127);
  int believed = 0;
  for (int run = 0; run < 3'000; ++run) {
    std::vector<std::uint8_t> bytes = run % 3 == 0 ? std::vector<std::uint8_t>{} : pack(seeded_route(static_cast<std::uint64_t>(run % 7), 3 + run % 20));
    for (std::int64_t changes = random.whole(1, 6); changes > 0 && !bytes.empty(); --changes)
      bytes[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(bytes.size()) - 1))] = static_cast<std::uint8_t>(random.whole(0, 255));
    if (run % 3 == 0)
      for (std::int64_t size = random.whole(0, 300); size > 0; --size) bytes.push_back(static_cast<std::uint8_t>(random.whole(0, 255)));
    const Result<Document> decoded = decode_document(text_of_packed(bytes));
    if (!decoded) continue;
    ++believed;
    CHECK(decode_document(encode_document(*decoded)).ok());
  }
  CHECK(believed > 0);
}

TEST_CASE("a packed section after others, or two of them, are refused") {
  const std::vector<std::uint8_t> packed = pack(seeded_route(1, 2));
  const std::string text = text_of_packed(packed);
  CHECK(decode_document(text).ok());
  CHECK(text == encode_document(seeded_route(1, 2)));
  std::vector<std::uint8_t> twice = {14 << 1, static_cast<std::uint8_t>(packed.size())};
  REQUIRE(packed.size() < 128);
  twice.insert(twice.end(), packed.begin(), packed.end());
  const std::vector<std::uint8_t> once = twice;
  twice.insert(twice.end(), once.begin(), once.end());
  CHECK(decode_document(text_of_bytes(twice)).problem().fault == Fault::text_section);
}

TEST_CASE("every change of a single character of a packed text is refused, and every cut") {
  const std::string whole = encode_document(seeded_route(4, 5));
  for (std::size_t place = 0; place < whole.size(); ++place) {
    CAPTURE(place);
    CHECK_FALSE(decode_document(whole.substr(0, place)).ok());
    for (const char changed : {'A', 'b', '7', '-', '.', ' '}) {
      std::string text = whole;
      text[place] = changed;
      if (text != whole) CHECK_FALSE(decode_document(text).ok());
    }
  }
}
