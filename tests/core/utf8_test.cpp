// UTF-8 as the standard has it, and as it must not be. Sequences from Unicode 15, tables 3-7 and 3-8.
#include "core/base/utf8.h"

#include <algorithm>
#include <string>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

char32_t only_code_point(std::string_view text) {
  const char32_t code_point = next_code_point(text);
  CHECK(text.empty());
  return code_point;
}

}  // namespace

TEST_CASE("well-formed sequences give their code points") {
  CHECK(only_code_point("A") == 0x41);
  CHECK(only_code_point("\x7F") == 0x7F);
  CHECK(only_code_point("\xC2\x80") == 0x80);
  CHECK(only_code_point("\xC3\xA9") == 0xE9);
  CHECK(only_code_point("\xE0\xA0\x80") == 0x800);
  CHECK(only_code_point("\xED\x9F\xBF") == 0xD7FF);
  CHECK(only_code_point("\xEE\x80\x80") == 0xE000);
  CHECK(only_code_point("\xF0\x90\x80\x80") == 0x10000);
  CHECK(only_code_point("\xF4\x8F\xBF\xBF") == 0x10FFFF);
}

TEST_CASE("ill-formed sequences are refused byte by byte") {
  struct Case { const char* what; std::string_view text; };
  const Case cases[] = {{"lone continuation", "\x80"},           {"overlong of two", "\xC0\x80"},
                        {"overlong of two", "\xC1\xBF"},         {"overlong of three", "\xE0\x9F\xBF"},
                        {"overlong of four", "\xF0\x8F\xBF\xBF"}, {"surrogate", "\xED\xA0\x80"},
                        {"past the last", "\xF4\x90\x80\x80"},   {"no such lead", "\xF5\x80\x80\x80"},
                        {"no such lead", "\xFF"},                {"cut short", "\xC3"},
                        {"cut short", "\xE2\x80"},               {"cut short", "\xF0\x9F\x92"}};
  for (const Case& c : cases) {
    CAPTURE(c.what);
    CHECK_FALSE(is_utf8(c.text));
    std::string_view rest = c.text;
    CHECK(next_code_point(rest) == k_replacement_character);
    CHECK(rest.size() == c.text.size() - 1);
    CHECK(count_characters(c.text) == c.text.size());
    CHECK(is_utf8(repaired_utf8(c.text)));
  }
}

TEST_CASE("a broken sequence does not swallow what follows it") {
  CHECK(repaired_utf8("a\xE2\x80z") == "a\xEF\xBF\xBD\xEF\xBF\xBDz");
  CHECK(repaired_utf8("Kráľova 灯") == "Kráľova 灯");
}

TEST_CASE("what turns the direction of writing turns it back, or is left out") {
  // Source: Unicode Standard Annex #9, table 2: embeddings and overrides end with U+202C, isolates with U+2069, all of them with the paragraph.
  const std::string lre = "\u202A", rlo = "\u202E", pdf = "\u202C", lri = "\u2066", fsi = "\u2068", pdi = "\u2069";
  for (const std::string& whole : {std::string("Gull"), rlo + "lluG" + pdf, lri + "zero" + pdi, fsi + "a" + rlo + "b" + pdf + "c" + pdi, lre + rlo + "x" + pdf + pdf, std::string("\u05D0 1"), pdf + "a" + pdi})
    CHECK(repaired_utf8(whole) == whole);
  CHECK(repaired_utf8("Rock" + rlo) == "Rock");
  CHECK(repaired_utf8(rlo + lre + "a" + pdf + "b") == lre + "a" + pdf + "b");
  CHECK(repaired_utf8(lri + rlo + "a" + pdi + "b") == lri + rlo + "a" + pdi + "b");  // the isolate's end is the override's too
  CHECK(repaired_utf8(rlo + lri + "a" + pdf + "b") == "a" + pdf + "b");              // within an isolate nothing outside it is ended
  CHECK(repaired_utf8(rlo + "a\nb" + pdf) == "a\nb" + pdf);
  CHECK(repaired_utf8(rlo) == "\uFFFD");  // a name of nothing else has still to be one
  CHECK(repaired_utf8("").empty());
}

TEST_CASE("a text of millions of turns is repaired in one go") {
  std::string text;
  for (int i = 0; i < 1'000'000; ++i) text += i % 3 == 0 ? "\u202Ea" : i % 3 == 1 ? "\u2066b" : "\u2069";
  const std::string repaired = repaired_utf8(text + "\u202E");
  CHECK(repaired == repaired_utf8(repaired));
  CHECK(std::count(repaired.begin(), repaired.end(), 'a') == 333'334);
}

TEST_CASE("white space goes at the ends alone") {
  CHECK(trimmed(" \t\r\n Gull  Rock \xC2\xA0 ") == "Gull  Rock");
  CHECK(trimmed(" \xC2\xA0 ").empty());
  CHECK(trimmed("").empty());
  CHECK(trimmed("\xC2").size() == 1);
}
