// Widths of texts, from the embedded typeface's own advance widths.
#include "core/figure/text_metrics.h"

#include <cmath>
#include <string>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

// Sums of widths in em, whole units of 1/2000 em: the last bits alone may differ.
constexpr double k_tolerance_em = 1e-12;

bool same_width(std::string_view a, std::string_view b) {
  return std::abs(text_width_em(a, Face::regular) - text_width_em(b, Face::regular)) < k_tolerance_em;
}

}  // namespace

TEST_CASE("a text is as wide as its characters") {
  CHECK(text_width_em("", Face::regular) == 0);
  CHECK(text_width_em("047", Face::regular) == doctest::Approx(text_width_em("0", Face::regular) + text_width_em("4", Face::regular) + text_width_em("7", Face::regular)));
  CHECK(text_width_em("W", Face::regular) > text_width_em("i", Face::regular));
}

TEST_CASE("figures are all of one width in each face") {
  // The typeface is made for instruments: its figures are tabular.
  for (const Face face : {Face::regular, Face::bold})
    for (char figure = '1'; figure <= '9'; ++figure)
      CHECK(text_width_em(std::string(1, figure), face) == text_width_em("0", face));
}

TEST_CASE("the signs of directions and positions are in every face") {
  for (const Face face : {Face::regular, Face::bold, Face::italic})
    for (const char* sign : {"°", "′", "″", "−", "·"}) {
      CAPTURE(sign);
      CHECK(text_width_em(sign, face) > 0);
      CHECK(text_width_em(sign, face) < 1);
    }
}

TEST_CASE("a character that the typeface lacks counts one em") {
  CHECK(text_width_em("灯", Face::regular) == 1);
  CHECK(text_width_em("𝄞", Face::italic) == 1);
}

TEST_CASE("what stands on a character or joins it counts nothing") {
  // General categories Mn, Me and Cf of the Unicode Character Database, Hangul's conjoining jamo (Unicode Standard, chapter
  // 18.6) and skin tones (UTS 51); each sequence beside what carries it.
  struct Case { const char* what; std::string_view text; double width_em; };
  const Case cases[] = {{"acute on a Greek letter", "\u03B1\u0301", 1},
                        {"Hebrew point", "\u05D0\u05B7", 1},
                        {"Arabic fatha", "\u0628\u064E", 1},
                        {"Devanagari virama and vowel sign u", "\u0915\u094D\u0937\u0941", 2},
                        {"Devanagari vowel sign aa, which stands beside", "\u0915\u093E", 2},
                        {"Thai vowel above", "\u0E01\u0E34", 1},
                        {"variation selector 16", "\u2693\uFE0F", 1},
                        {"zero width joiner between two emoji", "\U0001F469\u200D\U0001F692", 2},
                        {"skin tone", "\U0001F44B\U0001F3FD", 1},
                        {"right-to-left mark and isolates", "\u2067\u200F\u2069", 0},
                        {"three jamo of one syllable", "\u1112\u1161\u11AB", 1},
                        {"the same syllable in one", "\uD55C", 1},
                        {"musical stem and note head", "\U0001D158\U0001D165", 2},  // Mc: it stands beside
                        {"tag", "\U000E0067", 0},
                        {"private use", "\uE000\U000F0000", 2},
                        {"the last character there is", "\U0010FFFD", 1}};
  for (const Case& c : cases) {
    CAPTURE(c.what);
    CHECK(text_width_em(c.text, Face::regular) == c.width_em);
  }
}

TEST_CASE("a text is in the typeface when each of its characters is") {
  CHECK(is_in_typeface("", Face::regular));
  CHECK(is_in_typeface("Hask Røck 44°10′N, ½ nm", Face::italic));
  for (const char* text : {"Ακτή", "Маяк", "حجر", "灯", "a\u0301", "\xFF", "\u200F"}) CHECK_FALSE(is_in_typeface(text, Face::bold));
}

TEST_CASE("broken UTF-8 counts one em a byte and spoils nothing after it") {
  CHECK(text_width_em("\xFF", Face::bold) == 1);
  CHECK(text_width_em("\xE2\x80", Face::bold) == 2);
  CHECK(text_width_em("\xED\xA0\x80", Face::regular) == 3);
  CHECK(std::abs(text_width_em("\xC3(", Face::regular) - (1 + text_width_em("(", Face::regular))) < k_tolerance_em);
  CHECK(same_width("a\xF0\x9Fz", "a灯灯z"));
}

TEST_CASE("capitals stand between half an em and one") {
  for (const Face face : {Face::regular, Face::bold, Face::italic}) {
    CHECK(cap_height_em(face) > 0.5);
    CHECK(cap_height_em(face) < 1);
  }
}
