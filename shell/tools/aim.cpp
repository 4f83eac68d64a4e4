#include "shell/tools/aim.h"

#include <algorithm>
#include <cmath>

namespace fogsheet {
namespace {

constexpr double k_fine = 1.0 / 3;
constexpr double k_moment_ms = 150;
// How far a finger that aims goes in a moment at the most, 270 px a second, and one that goes somewhere, 470; and from one
// event to the next, when these are few. Its trembling of some 3 px stays far below all four.
constexpr double k_aiming_px = 40, k_going_px = 70;
constexpr double k_aiming_leap_px = 16, k_going_leap_px = 28;

double part(double value, double from, double to) { return std::clamp((value - from) / (to - from), 0.0, 1.0); }
ScreenPoint times(double factor, ScreenPoint p) { return {factor * p.x_px, factor * p.y_px}; }
double length_px(ScreenPoint p) { return std::hypot(p.x_px, p.y_px); }

}  // namespace

void Aim::begin(ScreenPoint from, double now_ms) {
  samples_ = {{from, now_ms}};
  behind_ = {};
  loupe_at_.reset();
}

double Aim::haste(ScreenPoint pointer, double now_ms) {
  while (samples_.size() > 1 && now_ms - samples_.front().ms > k_moment_ms) samples_.erase(samples_.begin());
  const double leap_px = length_px(pointer - samples_.back().at), net_px = length_px(pointer - samples_.front().at);
  return std::max(part(leap_px, k_aiming_leap_px, k_going_leap_px), part(net_px, k_aiming_px, k_going_px));
}

ScreenPoint Aim::follow(ScreenPoint pointer, double now_ms, bool fine) {
  const double hasty = haste(pointer, now_ms);
  if (fine) {
    const ScreenPoint travel = pointer - samples_.back().at;
    const double caught_up = hasty * std::min(1.0, length_px(travel) / k_going_px);
    behind_ = times(1 - caught_up, behind_) + times((1 - hasty) * (1 - k_fine), travel);
  }
  samples_.push_back({pointer, now_ms});
  loupe_at_ = fine ? std::optional(pointer) : std::nullopt;
  return pointer - behind_;
}

}  // namespace fogsheet
