#include "shell/style.h"

#include <cmath>

#include "core/base/check.h"

namespace fogsheet {
namespace {

constexpr std::string_view k_names[k_palette_count] = {"day", "dusk", "night", "high-contrast"};

/// What the dimmer takes away: inks by their names, and one thing that has no ink of its own.
struct Gone {
  std::string_view role;
  int step;
};

constexpr Gone k_gone[] = {
#define INK(role, day, dusk, night, high_contrast)
#define GONE(role, step) {#role, step},
#include "shell/palettes.inc"
#undef INK
#undef GONE
};

// A role that is misspelt would stay for ever, unnoticed.
constexpr std::string_view k_roles[] = {
#define INK(role, day, dusk, night, high_contrast) #role,
#define GONE(role, step)
#include "shell/palettes.inc"
#undef INK
#undef GONE
    "ring_tens",
};
constexpr bool all_are_roles() {
  for (const Gone& gone : k_gone) {
    bool found = false;
    for (const std::string_view role : k_roles) found = found || role == gone.role;
    if (!found) return false;
  }
  return true;
}
static_assert(all_are_roles(), "what the dimmer takes away is an ink, or the rings' tens");

constexpr int gone_at(std::string_view role) {
  for (const Gone& gone : k_gone)
    if (gone.role == role) return gone.step;
  return k_dimmest + 1;
}

struct Row {
  Ink ink;
  const char* hex[k_palette_count];
  int gone_at;
};

constexpr Row k_rows[] = {
#define INK(role, day, dusk, night, high_contrast) {Ink::role, {day, dusk, night, high_contrast}, gone_at(#role)},
#define GONE(role, step)
#include "shell/palettes.inc"
#undef INK
#undef GONE
};
static_assert(sizeof(k_rows) / sizeof(k_rows[0]) == static_cast<std::size_t>(k_ink_count), "every ink has its row of colours");

const Row& row_of(Ink ink) {
  for (const Row& row : k_rows)
    if (row.ink == ink) return row;
  check_failed("ink", "no colour is asked for what has no ink", __FILE__, __LINE__);
}

constexpr int nibble(char digit) { return digit <= '9' ? digit - '0' : digit - 'A' + 10; }

constexpr std::uint8_t channel(const char* hex, int place) {
  return static_cast<std::uint8_t>(nibble(hex[1 + 2 * place]) * 16 + nibble(hex[2 + 2 * place]));
}

}  // namespace

std::string_view palette_name(Palette palette) { return k_names[static_cast<int>(palette)]; }

std::optional<Palette> palette_named(std::string_view name) {
  for (int i = 0; i < k_palette_count; ++i)
    if (k_names[i] == name) return static_cast<Palette>(i);
  return std::nullopt;
}

Colour colour_of(Palette palette, Ink ink) {
  const char* hex = row_of(ink).hex[static_cast<int>(palette)];
  return {channel(hex, 0), channel(hex, 1), channel(hex, 2)};
}

bool shown_at(int dim_step, Ink ink) { return dim_step < row_of(ink).gone_at; }
bool ring_tens_shown_at(int dim_step) { return dim_step < gone_at("ring_tens"); }

Legibility legibility_of(Palette palette, bool bold_lines, int dim_step, double px_per_mm) {
  constexpr double k_bold_lines = 1.5;
  Legibility legibility = screen_legibility(px_per_mm);
  if (bold_lines || palette == Palette::high_contrast) legibility.line_scale = k_bold_lines;
  legibility.ring_tens = ring_tens_shown_at(dim_step);
  return legibility;
}

std::uint32_t packed(Colour colour, double opacity) {
  const auto alpha = static_cast<std::uint32_t>(std::lround(opacity * 255));
  return static_cast<std::uint32_t>(colour.red) | static_cast<std::uint32_t>(colour.green) << 8 | static_cast<std::uint32_t>(colour.blue) << 16 | alpha << 24;
}

}  // namespace fogsheet
