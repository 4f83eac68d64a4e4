// The palettes keep the contrast they promise. Source of the formula: WCAG 2.2, relative luminance and contrast ratio.
#include "shell/style.h"

#include <algorithm>
#include <cmath>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

double luminance(Colour c) {
  const auto linear = [](int v) { const double s = v / 255.0; return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

double contrast(Palette palette, Ink a, Ink b) {
  const double la = luminance(colour_of(palette, a)), lb = luminance(colour_of(palette, b));
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

}  // namespace

TEST_CASE("text and signs can be read in every palette") {
  const struct { Palette palette; double text, sign; } rules[] = {{Palette::day, 7, 3}, {Palette::dusk, 6, 3}, {Palette::night, 4.8, 3}, {Palette::high_contrast, 7, 4.5}};
  for (const auto& rule : rules) {
    CAPTURE(palette_name(rule.palette));
    for (const Ink text : {Ink::ink, Ink::soft, Ink::magenta, Ink::danger, Ink::blue}) CHECK(contrast(rule.palette, text, Ink::paper) >= rule.text - 0.05);
    for (const Ink sign : {Ink::graticule, Ink::edge, Ink::focus, Ink::doubt_line}) CHECK(contrast(rule.palette, sign, Ink::paper) >= rule.sign - 0.05);
    CHECK(contrast(rule.palette, Ink::on_pressed, Ink::pressed) >= 4.5);
    CHECK(contrast(rule.palette, Ink::ink, Ink::caution) >= 4.5);
  }
}

TEST_CASE("night is red and nothing else") {
  for (int i = 0; i < k_ink_count; ++i) {
    const Colour c = colour_of(Palette::night, static_cast<Ink>(i));
    CAPTURE(i);
    CHECK(c.blue <= (static_cast<Ink>(i) == Ink::focus ? 0x52 : 0x30));
    CHECK(c.green <= 0x6A);
  }
}

TEST_CASE("palettes have names that are found again") {
  for (int i = 0; i < k_palette_count; ++i) CHECK(palette_named(palette_name(static_cast<Palette>(i))) == static_cast<Palette>(i));
  CHECK_FALSE(palette_named("pink"));
}

TEST_CASE("high contrast has bold lines, the other palettes the lines of the paper") {
  // Half as heavy again: the design's table of palettes.
  CHECK(legibility_of(Palette::high_contrast, false, 3).line_scale == 1.5);
  for (const Palette palette : {Palette::day, Palette::dusk, Palette::night}) {
    CHECK(legibility_of(palette, false, 3) == screen_legibility(3));
    CHECK(legibility_of(palette, true, 3).line_scale == 1.5);
  }
}
