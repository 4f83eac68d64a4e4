#include "shell/canvas/loupe.h"

#include <algorithm>
#include <cmath>

#include "core/figure/text_metrics.h"

namespace fogsheet {
namespace {

constexpr double k_margin_px = 4;  // from the area's edges
constexpr double k_reach_px = k_loupe_radius_px + k_margin_px;
constexpr double k_finger_px = 28;  // what a fingertip covers about its contact
constexpr double k_name_px = 15;

double within(double wanted, double room) { return std::clamp(wanted, k_reach_px, std::max(k_reach_px, room - k_reach_px)); }

}  // namespace

ScreenPoint loupe_middle(ScreenPoint finger, FreeArea area, bool& to_the_right) {
  constexpr double k_away_px = k_loupe_radius_px + k_loupe_clear_px;
  const double y = within(finger.y_px - k_away_px, area.height_px);
  const double up_px = std::min(finger.y_px - y, k_away_px);
  const double aside_px = std::sqrt(k_away_px * k_away_px - up_px * up_px);
  const double right = area.width_px - k_reach_px - finger.x_px, left = finger.x_px - k_reach_px;  // what room there is
  const double wanted_px = std::min(aside_px, std::max(left, right));
  if ((to_the_right ? right : left) < wanted_px) to_the_right = !to_the_right;
  const double x = within(finger.x_px + (to_the_right ? aside_px : -aside_px), area.width_px);
  // On a narrow phone it may not come clear of the finger sideways: then it stands lower.
  constexpr double k_clear_px = k_loupe_radius_px + k_finger_px;
  const double off_px = x - finger.x_px;
  const double least_down_px = std::sqrt(std::max(0.0, k_clear_px * k_clear_px - off_px * off_px));
  if (finger.y_px - y >= least_down_px) return {x, y};
  return {x, within(std::max(y, finger.y_px + least_down_px), area.height_px)};
}

View loupe_view(ScreenPoint middle, ScreenPoint aimed) {
  return {k_loupe_scale, {middle.x_px - k_loupe_scale * aimed.x_px, middle.y_px - k_loupe_scale * aimed.y_px}};
}

void draw_loupe_ground(ScreenPoint middle, Brush& brush) { brush.disc(middle, k_loupe_radius_px, Ink::table, Ink::paper, 8); }

void draw_loupe_rim(ScreenPoint middle, FreeArea area, const std::string& name, Brush& brush) {
  for (const double sign : {1.0, -1.0}) {
    constexpr double k_from_px = 4, k_to_px = 10;
    brush.line({middle.x_px + sign * k_from_px, middle.y_px}, {middle.x_px + sign * k_to_px, middle.y_px}, Ink::graticule, 1.2);
    brush.line({middle.x_px, middle.y_px + sign * k_from_px}, {middle.x_px, middle.y_px + sign * k_to_px}, Ink::graticule, 1.2);
  }
  brush.ring(middle, k_loupe_radius_px, Ink::ink, 2);
  if (name.empty()) return;
  const double half_px = text_width_em(name, Face::bold) * k_name_px / 2;
  const double x = std::clamp(middle.x_px, half_px + k_margin_px, std::max(half_px + k_margin_px, area.width_px - half_px - k_margin_px));
  brush.text({x, middle.y_px + k_loupe_radius_px + 20}, name, k_name_px, Face::bold, Anchor::middle, Ink::ink, true);
}

}  // namespace fogsheet
