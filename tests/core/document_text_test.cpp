// Documents as text: there and back, compactness, refusal of everything damaged, the pinned text of each format.
#include "core/formats/document_text.h"

#include <string>
#include <vector>

#include "core/formats/base64url.h"
#include "core/formats/bytes.h"
#include "core/formats/document_sections.h"
#include "doctest/doctest.h"
#include "tests/core/kept_texts.h"
#include "tests/core/plain_text.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

Fault fault_of(std::string_view text) {
  const Result<Document> decoded = decode_document(text);
  REQUIRE_FALSE(decoded.ok());
  return decoded.problem().fault;
}

std::vector<std::uint8_t> sections_of(std::string_view text) {
  std::vector<std::uint8_t> bytes = base64url_decode(text.substr(2)).value();
  bytes.resize(bytes.size() - 4);
  return bytes;
}

// One section as it stands in a text: tag, length, bytes.
void append_section(std::vector<std::uint8_t>& body, std::uint64_t tag, std::span<const std::uint8_t> bytes) {
  ByteWriter out;
  out.whole(tag);
  out.whole(bytes.size());
  out.raw(bytes);
  body.insert(body.end(), out.bytes().begin(), out.bytes().end());
}

// The usual document after a change that no action allows.
template <class Change>
Problem refused_after(Change change) {
  Document document = document_of_format_1();
  change(document);
  const Result<Document> decoded = decode_document(plain_text_of(document));
  REQUIRE_FALSE(decoded.ok());
  return decoded.problem();
}

Problem bad_section(std::string name, double index) { return {.fault = Fault::text_section, .texts = {std::move(name)}, .numbers = {index}}; }

Table<Mark> with_mark(const Document& document, std::uint32_t id, void (*change)(Mark&)) {
  Mark mark = *document.marks.find({id});
  change(mark);
  return document.marks.replaced(mark);
}

}  // namespace

TEST_CASE("a text of format 1 loads for ever") {
  const Result<Document> decoded = decode_document(k_text_of_format_1);
  REQUIRE(decoded.ok());
  CHECK(*decoded == document_of_format_1());
  const Result<Document> with_details = decode_document(k_text_with_details);
  REQUIRE(with_details.ok());
  CHECK(*with_details == document_with_details());
}

TEST_CASE("the same document written plainly is that same text") {
  CHECK(plain_text_of(document_of_format_1()) == k_text_of_format_1);
  CHECK(plain_text_of(document_with_details()) == k_text_with_details);
  const Result<Document> with_compass = decode_document(k_text_with_compass);
  REQUIRE(with_compass.ok());
  CHECK(*with_compass == document_with_compass());
  CHECK(plain_text_of(document_with_compass()) == k_text_with_compass);
  const Result<Document> with_passages = decode_document(k_text_with_passage);
  REQUIRE(with_passages.ok());
  CHECK(*with_passages == document_with_passages());
  CHECK(plain_text_of(document_with_passages()) == k_text_with_passage);
}

TEST_CASE("packed texts load for ever, and are what another program makes of the plain ones") {
  REQUIRE(decode_document(k_packed_text).ok());
  CHECK(*decode_document(k_packed_text) == document_of_format_1());
  CHECK(encode_document(document_of_format_1()) == k_packed_text);
  REQUIRE(decode_document(k_packed_text_with_passage).ok());
  CHECK(*decode_document(k_packed_text_with_passage) == document_with_passages());
  CHECK(encode_document(document_with_passages()) == k_packed_text_with_passage);
}

// What a program from before packed texts looks at: the first section's tag, which it does not know and may not leave out.
TEST_CASE("a packed text tells older programs that it is newer") {
  const std::vector<std::uint8_t> bytes = sections_of(k_packed_text);
  const int section = bytes[0] / 2;
  CHECK(section > static_cast<int>(Section::passages));
  CHECK(bytes[0] % 2 == 0);
}

TEST_CASE("any document comes back equal") {
  constexpr std::uint64_t k_seed = 20260716;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 300; ++run) {
    CAPTURE(run);
    const Document document = random_document(random, static_cast<int>(random.whole(0, 150)));
    const std::string text = encode_document(document);
    const Result<Document> decoded = decode_document(text);
    REQUIRE(decoded.ok());
    CHECK(*decoded == document);
    CHECK(encode_document(*decoded) == text);
    const Result<Document> plain = decode_document(plain_text_of(document));
    REQUIRE(plain.ok());
    CHECK(*plain == document);
    CHECK(text.size() < plain_text_of(document).size());
  }
}

TEST_CASE("a name that would turn the direction of the sentences it stands in comes without that") {
  Document document = document_of_format_1();
  Mark mark = document.marks.at(0);
  mark.name = "Rock\u202E";
  mark.note = "\u2067kelp";
  document.marks = document.marks.replaced(mark);
  for (const std::string& text : {encode_document(document), plain_text_of(document)}) {
    const Result<Document> decoded = decode_document(text);
    REQUIRE(decoded.ok());
    CHECK(decoded->marks.at(0).name == "Rock");
    CHECK(decoded->marks.at(0).note == "kelp");
    CHECK(*decode_document(encode_document(*decoded)) == *decoded);
  }
}

TEST_CASE("a link, a saved file and the bare text say the same") {
  const std::string text(k_text_of_format_1);
  for (const std::string& around : {"https://example.org/sheet/?x=1#" + text, "#" + text, text + "\n", " \r\n" + text + "\t\xC2\xA0"}) {
    CAPTURE(around);
    REQUIRE(decode_document(around).ok());
    CHECK(*decode_document(around) == document_of_format_1());
  }
}

TEST_CASE("fifty marks with short names, joined by legs, take under 2000 characters") {
  Random random(20260717);
  History history(made_sheet({.name = "Across the sound", .mid_lat_deg = 50, .mid_lon_deg = -4, .scale = 300'000, .date = {2026, 7, 1}}).value());
  std::vector<MarkId> marks;
  for (int i = 0; i < 50; ++i) {
    const Position at = random_place_on(random, history.now());
    marks.push_back(*add_mark(history, {.name = "Gull Rk " + std::to_string(i), .lat_deg = at.lat_deg, .lon_deg = at.lon_deg}));
    if (i > 0) REQUIRE(add_leg(history, marks[static_cast<std::size_t>(i) - 1], marks.back()));
  }
  CHECK(encode_document(history.now()).size() < 2'000);
}

TEST_CASE("every change of a single character is refused") {
  for (std::size_t place = 0; place < k_text_of_format_1.size(); ++place)
    for (int changed = 0; changed < 256; ++changed) {
      std::string text(k_text_of_format_1);
      if (text[place] == static_cast<char>(changed)) continue;
      text[place] = static_cast<char>(changed);
      if (decode_document(text).ok()) {
        CAPTURE(place);
        CAPTURE(changed);
        FAIL("a damaged text was believed");
      }
    }
}

TEST_CASE("every text cut short is refused, and so is every text with a character less") {
  for (std::size_t length = 0; length < k_text_of_format_1.size(); ++length) {
    CAPTURE(length);
    CHECK_FALSE(decode_document(k_text_of_format_1.substr(0, length)).ok());
    std::string text(k_text_of_format_1);
    CHECK_FALSE(decode_document(text.erase(length, 1)).ok());
  }
}

TEST_CASE("texts that are none of ours say so") {
  CHECK(fault_of("") == Fault::text_empty);
  CHECK(fault_of(" \n ") == Fault::text_empty);
  for (const char* text : {"hello", "1", ":", "1:1:#", "01:AAAA", "0:AAAA", "-1:AAAA", "1234567:AAAA", "https://example.org/", "https://example.org/#", "{\"a\":1}"}) {
    CAPTURE(text);
    CHECK(fault_of(text) == Fault::text_not_ours);
  }
}

TEST_CASE("a newer text says which format it has and which is understood") {
  const Result<Document> decoded = decode_document("2:whatever stands here");
  REQUIRE_FALSE(decoded.ok());
  CHECK(decoded.problem() == Problem{.fault = Fault::text_newer, .numbers = {2, 1}});
  CHECK(decode_document("https://example.org/#17:AAAA").problem().numbers == std::vector<double>{17, 1});
}

TEST_CASE("a bad character is named by its place in the text given") {
  std::string text = "https://example.org/#" + std::string(k_text_of_format_1);
  text[40] = '+';
  CHECK(decode_document(text).problem() == Problem{.fault = Fault::text_bad_character, .begin = 40, .end = 41});
}

TEST_CASE("damage, cuts and excess are told apart") {
  std::string damaged(k_text_of_format_1);
  damaged[10] = damaged[10] == 'A' ? 'B' : 'A';  // inside the sheet's name
  CHECK(fault_of(damaged) == Fault::text_checksum);
  CHECK(fault_of("1:") == Fault::text_cut_short);
  CHECK(fault_of("1:AAAA") == Fault::text_cut_short);
  CHECK(fault_of(k_text_of_format_1.substr(0, 42)) == Fault::text_cut_short);
  const Result<Document> long_text = decode_document("1:" + std::string(k_most_text_bytes, 'A'));
  REQUIRE_FALSE(long_text.ok());
  CHECK(long_text.problem() == Problem{.fault = Fault::text_too_long, .numbers = {static_cast<double>(k_most_text_bytes) + 2, static_cast<double>(k_most_text_bytes)}});
}

TEST_CASE("the fullest document there can be still loads") {
  Document full = document_of_format_1();
  std::vector<Mark> marks;
  std::vector<Leg> legs;
  full.next_id = k_most_id - static_cast<std::uint32_t>(2 * k_most_marks + k_most_text_notes);
  for (std::size_t i = 0; i < k_most_marks; ++i) {
    const std::int32_t step = i % 2 ? 90'000 : -90'000;
    marks.push_back({.id = {full.next_id++}, .name = std::string(k_most_name_bytes, 'n'), .kind = MarkKind::danger,
                     .at = {26'500'000 + static_cast<std::int32_t>(i % 2'000), step > 0 ? -107'990'000 - static_cast<std::int32_t>(i % 100) : 107'950'000},
                     .radius_nm = 60,
                     .height_m = k_most_height_m,
                     .note = std::string(k_most_note_bytes, 'n')});
  }
  std::vector<TextNote> notes;
  for (std::size_t i = 0; i < k_most_text_notes; ++i)
    notes.push_back({.id = {full.next_id++}, .at = full.sheet.middle, .text = std::string(k_most_note_bytes, 'n')});
  full.text_notes = Table<TextNote>::of(notes);
  for (std::size_t i = 0; i + 1 < k_most_legs; ++i) legs.push_back({.id = {full.next_id++}, .from = marks[i].id, .to = marks[i + 1].id});
  full.marks = Table<Mark>::of(marks);
  full.legs = Table<Leg>::of(legs);
  full.next_id = k_most_id;
  const std::string text = encode_document(full);
  CHECK(text.size() < k_most_text_bytes);
  const Result<Document> decoded = decode_document(text);
  REQUIRE(decoded.ok());
  CHECK(*decoded == full);
}

TEST_CASE("sections of later programs: some may be left out, the others say that the text is newer") {
  constexpr std::uint8_t k_bytes[] = {1, 2, 3};
  std::vector<std::uint8_t> optional = sections_of(k_text_of_format_1);
  append_section(optional, 99 << 1 | 1, k_bytes);
  REQUIRE(decode_document(text_of_bytes(optional)).ok());
  CHECK(*decode_document(text_of_bytes(optional)) == document_of_format_1());
  bool left_out = false;
  CHECK(decode_document(k_text_of_format_1, &left_out).ok());
  CHECK_FALSE(left_out);
  CHECK(decode_document(text_of_bytes(optional), &left_out).ok());
  CHECK(left_out);
  std::vector<std::uint8_t> needed = sections_of(k_text_of_format_1);
  append_section(needed, 99 << 1, k_bytes);
  CHECK(fault_of(text_of_bytes(needed)) == Fault::text_newer);
}

TEST_CASE("sections missing, repeated or out of order are refused") {
  CHECK(fault_of(text_of_bytes({2, 0})) == Fault::text_section);
  CHECK(fault_of(text_of_bytes({12, 1, 12})) == Fault::text_missing_section);
  CHECK(fault_of(text_of_bytes({4, 1, 0})) == Fault::text_missing_section);
  CHECK(fault_of(text_of_bytes({})) == Fault::text_cut_short);
  std::vector<std::uint8_t> repeated = sections_of(k_text_of_format_1);
  const std::vector<std::uint8_t> once = repeated;
  repeated.insert(repeated.end(), once.begin(), once.end());
  CHECK(fault_of(text_of_bytes(repeated)) == Fault::text_section);
  std::vector<std::uint8_t> overrun = once;
  overrun.insert(overrun.end(), {9 << 1 | 1, 100, 0});
  CHECK(fault_of(text_of_bytes(overrun)) == Fault::text_cut_short);
}

TEST_CASE("a count without the bytes to back it is refused unread") {
  ByteWriter count;
  count.whole(k_most_marks);
  std::vector<std::uint8_t> body = sections_of(plain_text_of(made_sheet({.date = {2026, 7, 1}}).value()));
  const std::size_t sheet_end = 2u + body[1];
  std::vector<std::uint8_t> hostile(body.begin(), body.begin() + static_cast<std::ptrdiff_t>(sheet_end));
  append_section(hostile, 2 << 1, count.bytes());
  hostile.insert(hostile.end(), body.begin() + static_cast<std::ptrdiff_t>(sheet_end), body.end());
  CHECK(decode_document(text_of_bytes(hostile)).problem() == bad_section("marks", 0));
}

TEST_CASE("every field is checked before it is believed") {
  CHECK(refused_after([](Document& d) { d.sheet.name = "\xFF"; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.name = std::string(201, 'n'); }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.datum = "\xC3"; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.scale = 24'999; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.scale = 1'000'001; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.date = {2026, 2, 29}; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.date = {2101, 1, 1}; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.middle = {45'000'001, 0}; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.sheet.middle = {44'990'000, 0}; }) == bad_section("sheet", 0));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 3, [](Mark& m) { m.name = ""; }); }) == bad_section("marks", 1));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 3, [](Mark& m) { m.name = "\xED\xA0\x80"; }); }) == bad_section("marks", 1));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 3, [](Mark& m) { m.name = std::string(201, 'n'); }); }) == bad_section("marks", 1));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 5, [](Mark& m) { m.at.lat = 0; }); }) == bad_section("marks", 4));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 5, [](Mark& m) { m.at.lat = 60'000'000; }); }) == bad_section("marks", 4));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 4, [](Mark& m) { m.radius_nm = 0; }); }) == bad_section("marks", 2));
  CHECK(refused_after([](Document& d) { d.marks = with_mark(d, 4, [](Mark& m) { m.radius_nm = 60.001; }); }) == bad_section("marks", 2));
  CHECK(refused_after([](Document& d) { d.marks = d.marks.with({.id = {12}, .name = "m", .at = d.sheet.middle}); }) == bad_section("marks", 5));
  CHECK(refused_after([](Document& d) { d.marks = d.marks.with({.id = {0}, .name = "m", .at = d.sheet.middle}); }) == bad_section("marks", 5));
  CHECK(refused_after([](Document& d) { d.marks = d.marks.with({.id = {1}, .name = "m", .at = d.sheet.middle}); }) == bad_section("roses", 0));
  CHECK(refused_after([](Document& d) { d.marks = d.marks.with({.id = {2}, .name = "m", .at = d.sheet.middle}); }) == bad_section("marks", 5));
  CHECK(refused_after([](Document& d) { d.legs = d.legs.with({.id = {10}, .from = {2}, .to = {11}}); }) == bad_section("legs", 3));
  CHECK(refused_after([](Document& d) { d.legs = d.legs.with({.id = {10}, .from = {11}, .to = {2}}); }) == bad_section("legs", 3));
  CHECK(refused_after([](Document& d) { d.legs = d.legs.with({.id = {10}, .from = {2}, .to = {2}}); }) == bad_section("legs", 3));
  CHECK(refused_after([](Document& d) { d.legs = d.legs.with({.id = {10}, .from = {2}, .to = {3}}); }) == bad_section("legs", 3));
  CHECK(refused_after([](Document& d) { d.roses = d.roses.replaced({.id = {1}, .at = d.sheet.middle, .radius_mm = 19.9}); }) == bad_section("roses", 0));
  CHECK(refused_after([](Document& d) { d.roses = d.roses.replaced({.id = {1}, .at = d.sheet.middle, .radius_mm = 90.1}); }) == bad_section("roses", 0));
  CHECK(refused_after([](Document& d) { d.roses = d.roses.replaced({.id = {1}, .at = {0, 0}}); }) == bad_section("roses", 0));
  CHECK(refused_after([](Document& d) { d.chart_note->printed.value_deg = 180.5; }) == bad_section("chart note", 0));
  CHECK(refused_after([](Document& d) { d.chart_note->printed.year = 2101; }) == bad_section("chart note", 0));
  CHECK(refused_after([](Document& d) { d.chart_note->printed.annual_change_min = -121; }) == bad_section("chart note", 0));
  CHECK(refused_after([](Document& d) { d.next_id = 0; }) == bad_section("next id", 0));
  CHECK(refused_after([](Document& d) { d.next_id = k_most_id + 1; }) == bad_section("next id", 0));
  CHECK(refused_after([](Document& d) { d.next_id = 9; }) == bad_section("legs", 2));
}

TEST_CASE("more roses than a sheet may have are refused") {
  CHECK(refused_after([](Document& d) {
          for (std::uint32_t i = 0; i < k_most_roses; ++i) d.roses = d.roses.with({.id = {d.next_id++}, .at = d.sheet.middle});
        }) == bad_section("roses", 0));
}
