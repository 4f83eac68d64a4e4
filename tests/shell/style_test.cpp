// The palettes keep the contrast they promise, at every step of the dimmer. Source of the formula: WCAG 2.2, relative
// luminance and contrast ratio. Rules and exemptions are the look's: text on paper at least 7:1 by day, 6:1 at dusk, 4.8:1 at
// night; signs and outlines of controls 3:1; high contrast 7:1 for text and graticule, 4.5:1 for hairlines; `rule` and
// `hatch` exempt by name. No text anywhere under 4.5:1, which is WCAG's own least (1.4.3).
#include "shell/style.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <string>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

using Light = std::array<double, 3>;  // red, green, blue in [0, 255]

Light light_of(Palette palette, Ink ink) {
  const Colour c = colour_of(palette, ink);
  return {static_cast<double>(c.red), static_cast<double>(c.green), static_cast<double>(c.blue)};
}

double luminance(const Light& light) {
  const auto linear = [](double v) { const double s = v / 255; return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(light[0]) + 0.7152 * linear(light[1]) + 0.0722 * linear(light[2]);
}

double contrast(const Light& a, const Light& b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

enum class Kind { text, sign, graticule, hairline, exempt };
constexpr const char* k_kind_words[] = {"text", "sign", "graticule", "hairline", "exempt"};

/// What lies on what. A tint that the dimmer has taken away leaves the paper.
struct Use {
  const char* what;
  Ink ink;
  Kind kind;
  Ink on = Ink::paper;
  double opacity = 1;  // of what it lies on, itself on paper
  bool stays = false;  // in panels, which can't do without it: the dimmer leaves it
};

constexpr Use k_uses[] = {
    {"legs, border, figures, text", Ink::ink, Kind::text},
    {"secondary text", Ink::soft, Kind::text},
    {"rose, strips and their figures", Ink::magenta, Kind::text},
    {"position lines, stream", Ink::blue, Kind::text},
    {"dangers, what is wrong with an entry", Ink::danger, Kind::text},
    {"agrees", Ink::agrees, Kind::text},
    {"graticule", Ink::graticule, Kind::graticule},
    {"outlines of controls", Ink::graticule, Kind::graticule, Ink::paper, 1, true},
    {"names of fields, units", Ink::soft, Kind::text, Ink::paper, 1, true},
    {"straight-edge", Ink::edge, Kind::sign},
    {"outlines of doubt", Ink::doubt_line, Kind::sign},
    {"focus ring, snap ticks, caret", Ink::focus, Kind::sign},
    {"bars of border and scale", Ink::bar, Kind::sign},
    {"hairlines between rows", Ink::rule, Kind::hairline},
    {"hatching", Ink::hatch, Kind::exempt},
    {"the tray's words", Ink::ink, Kind::text, Ink::table},
    {"the tray's words, not now", Ink::soft, Kind::text, Ink::table, 1, true},
    {"focus ring in the tray", Ink::focus, Kind::sign, Ink::table},
    {"words on keys and rows in hand", Ink::ink, Kind::text, Ink::field},
    {"secondary text on rows in hand", Ink::soft, Kind::text, Ink::field, 1, true},
    {"tool in hand, main button", Ink::on_pressed, Kind::text, Ink::pressed},
    {"words of cautions", Ink::ink, Kind::text, Ink::caution},
    {"sign and outline of cautions", Ink::danger, Kind::sign, Ink::caution},
    {"ring figures under the edge", Ink::magenta, Kind::text, Ink::edge_fill, k_edge_tint},
    {"words under the edge", Ink::ink, Kind::text, Ink::edge_fill, k_edge_tint},
    {"name inside a danger's ring", Ink::danger, Kind::text, Ink::danger_fill, 0.75},
    {"a mark's name inside a danger's ring", Ink::ink, Kind::text, Ink::danger_fill, 0.75},
    {"cross of a danger", Ink::danger, Kind::sign, Ink::danger_fill, 0.75},
};

/// 0: no rule.
double least(Palette palette, const Use& use) {
  const bool contrasty = palette == Palette::high_contrast;
  switch (use.kind) {
    case Kind::exempt: return 0;
    case Kind::hairline: return contrasty ? 4.5 : 0;
    case Kind::graticule: return contrasty ? 7 : 3;
    case Kind::sign: return 3;
    case Kind::text: break;
  }
  constexpr double k_on_paper[k_palette_count] = {7, 6, 4.8, 7};
  return use.on == Ink::paper ? k_on_paper[static_cast<int>(palette)] : 4.5;
}

Light ground(Palette palette, const Use& use, int step) {
  const Light paper = light_of(palette, Ink::paper);
  if (!shown_at(step, use.on)) return paper;
  const Light tint = light_of(palette, use.on);
  Light mixed;
  for (std::size_t i = 0; i < 3; ++i) mixed[i] = std::round(paper[i] + use.opacity * (tint[i] - paper[i]));
  return mixed;
}

}  // namespace

TEST_CASE("contrast of every text and line, in every palette and at every step of the dimmer") {
  std::string table = "\npalette        step  kind       least  ratio  what\n";
  for (int p = 0; p < k_palette_count; ++p) {
    const Palette palette = static_cast<Palette>(p);
    for (int step = 0; step <= (is_dark(palette) ? k_dimmest : 0); ++step)
      for (const Use& use : k_uses) {
        const double wanted = least(palette, use), ratio = contrast(light_of(palette, use.ink), ground(palette, use, step));
        const bool shown = use.stays || shown_at(step, use.ink);
        char line[160];
        std::snprintf(line, sizeof line, "%-14s %d     %-10s %5.1f  %5s  %s\n", palette_name(palette).data(), step, k_kind_words[static_cast<int>(use.kind)], wanted,
                      shown ? std::to_string(ratio).substr(0, 5).c_str() : "gone", use.what);
        table += line;
        CAPTURE(line);
        if (shown) CHECK(ratio >= wanted);
      }
  }
  MESSAGE(table);
}

TEST_CASE("a colour that nobody named a use for is none") {
  for (int i = 0; i < k_ink_count; ++i) {
    const Ink ink = static_cast<Ink>(i);
    CAPTURE(i);
    CHECK(std::any_of(std::begin(k_uses), std::end(k_uses), [&](const Use& use) { return use.ink == ink || use.on == ink; }));
  }
}

TEST_CASE("the dimmer takes away in its order, and leaves what a course is steered by") {
  // The look's order: tints and hatching, the border's bars, graticule, ring figures but each 30 degrees, secondary text.
  const auto gone_at = [](Ink ink) {
    int step = 0;
    while (step <= k_dimmest && shown_at(step, ink)) ++step;
    return step;
  };
  const int tints = gone_at(Ink::edge_fill), bars = gone_at(Ink::bar), graticule = gone_at(Ink::graticule), words = gone_at(Ink::soft);
  int tens = 0;
  while (ring_tens_shown_at(tens)) ++tens;
  for (const Ink tint : {Ink::field, Ink::hatch, Ink::danger_fill, Ink::caution}) CHECK(gone_at(tint) == tints);
  CHECK(tints == 1);
  CHECK((tints <= bars && bars <= graticule && graticule <= tens && tens <= words));
  CHECK(words == k_dimmest);
  for (const Ink stays : {Ink::ink, Ink::magenta, Ink::danger, Ink::edge, Ink::focus, Ink::doubt_line, Ink::blue, Ink::agrees, Ink::pressed, Ink::on_pressed, Ink::paper, Ink::table})
    CHECK(shown_at(k_dimmest, stays));
  CHECK(legibility_of(Palette::night, false, tens - 1, 3).ring_tens);
  CHECK_FALSE(legibility_of(Palette::night, false, tens, 3).ring_tens);
}

TEST_CASE("night is red and nothing else") {
  for (int i = 0; i < k_ink_count; ++i) {
    const Colour c = colour_of(Palette::night, static_cast<Ink>(i));
    CAPTURE(i);
    CHECK(c.blue <= (static_cast<Ink>(i) == Ink::focus ? 0x52 : 0x30));
    CHECK(c.green <= 0x6A);
    CHECK(c.red >= std::max(c.green, c.blue));
  }
}

TEST_CASE("palettes have names that are found again") {
  for (int i = 0; i < k_palette_count; ++i) CHECK(palette_named(palette_name(static_cast<Palette>(i))) == static_cast<Palette>(i));
  CHECK_FALSE(palette_named("pink"));
}

TEST_CASE("high contrast has bold lines, the other palettes the lines of the paper") {
  // Half as heavy again: the design's table of palettes.
  CHECK(legibility_of(Palette::high_contrast, false, 0, 3).line_scale == 1.5);
  for (const Palette palette : {Palette::day, Palette::dusk, Palette::night}) {
    CHECK(legibility_of(palette, false, 0, 3) == screen_legibility(3));
    CHECK(legibility_of(palette, true, 0, 3).line_scale == 1.5);
  }
}
