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
