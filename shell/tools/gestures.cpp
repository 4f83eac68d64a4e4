#include "shell/tools/gestures.h"

#include <algorithm>
#include <cmath>

#include "shell/style.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_contacts_of_a_palm = 5;
constexpr double k_drop_ms = 40;           // a contact shorter than this may be a raindrop
constexpr double k_shower_ms = 300;        // and is one when this long before
constexpr std::size_t k_drops_of_a_shower = 3;  // this many such contacts came

constexpr double k_hold_asks_ms = 800;     // as all that is held is; input.js tells of a contact that has not moved
constexpr double k_hand_rests_ms = 500;    // after the pen has lifted

double distance_px(ScreenPoint a, ScreenPoint b) { return std::hypot(a.x_px - b.x_px, a.y_px - b.y_px); }
ScreenPoint middle_of(ScreenPoint a, ScreenPoint b) { return {(a.x_px + b.x_px) / 2, (a.y_px + b.y_px) / 2}; }

}  // namespace

void Gestures::event(const PointerEvent& event) {
  switch (event.phase) {
    case PointerPhase::down: return down(event);
    case PointerPhase::move: return moved(event);
    case PointerPhase::up: return up(event);
    case PointerPhase::cancel: return lose(event.id);
    case PointerPhase::leave:
      if (contacts_.empty()) target_.hover(std::nullopt);
      return;
  }
}

void Gestures::cancel() {
  if (phase_ == Phase::dragging) target_.drag_cancel();
  contacts_.clear();
  pen_.reset();
  phase_ = Phase::idle;
}

void Gestures::down(const PointerEvent& event) {
  // Only the first button of a mouse draws; a contact whose end we never saw makes room for the new one. A pen's own button is
  // for the loupe, whether it was pressed before the pen came down or after.
  if (event.kind == PointerKind::mouse && (event.buttons & 1) == 0) {
    if ((event.buttons & 2) != 0 && contacts_.empty()) target_.ask(event.at);
    return;
  }
  if (is_resting_hand(event)) return;
  if (event.kind == PointerKind::pen) {
    // The hand mostly comes down before the pen does: what it began is taken back.
    if (!contacts_.empty()) cancel();
    pen_ = event.id;
  }
  contacts_[event.id] = {event.at, event.at, event.time_ms};
  if (contacts_.size() == 1) {
    leader_ = event.id;
    phase_ = Phase::down;
    return;
  }
  if (phase_ == Phase::dragging) target_.drag_cancel();
  if (contacts_.size() == 2) {
    phase_ = Phase::two_fingers;
    const ScreenPoint a = contacts_.begin()->second.at, b = contacts_.rbegin()->second.at;
    middle_ = middle_of(a, b);
    spread_px_ = distance_px(a, b);
  } else {
    phase_ = Phase::spoilt;
  }
}

void Gestures::moved(const PointerEvent& event) {
  const auto found = contacts_.find(event.id);
  if (found == contacts_.end()) {
    if (event.kind != PointerKind::touch) target_.hover(event.at);
    return;
  }
  Contact& contact = found->second;
  contact.at = event.at;
  const bool still = distance_px(contact.down, event.at) < k_press_slack_px;
  if (phase_ == Phase::down && event.id == leader_ && still) ask_when_held(contact, event.time_ms);
  if ((phase_ == Phase::down || phase_ == Phase::asked) && event.id == leader_ && !still) {
    phase_ = Phase::dragging;
    target_.drag_begin(contact.down, contact.down_ms, (event.time_ms - contact.down_ms) / 1000);
  }
  if (phase_ == Phase::dragging && event.id == leader_) target_.drag_to(event);
  if (phase_ == Phase::two_fingers) {
    const ScreenPoint a = contacts_.begin()->second.at, b = contacts_.rbegin()->second.at;
    const ScreenPoint middle = middle_of(a, b);
    constexpr double k_least_spread_px = 20;  // closer, the fingers' distance is noise
    const double spread = std::max(distance_px(a, b), k_least_spread_px);
    target_.pan_zoom(middle, middle - middle_, spread / std::max(spread_px_, k_least_spread_px));
    middle_ = middle;
    spread_px_ = spread;
  }
}

void Gestures::ask_when_held(const Contact& contact, double now_ms) {
  if (now_ms - contact.down_ms >= k_hold_asks_ms && target_.ask(contact.down)) phase_ = Phase::asked;
}

bool Gestures::is_resting_hand(const PointerEvent& event) const {
  if (event.kind != PointerKind::touch) return false;
  return pen_ || (pen_lifted_ms_ && event.time_ms - *pen_lifted_ms_ < k_hand_rests_ms);
}

bool Gestures::counts_as_rain(double down_ms, double up_ms) {
  if (up_ms - down_ms >= k_drop_ms) return false;
  std::erase_if(short_contacts_ms_, [&](double then) { return up_ms - then > k_shower_ms; });
  const bool shower = short_contacts_ms_.size() >= k_drops_of_a_shower;
  short_contacts_ms_.push_back(up_ms);
  return shower;
}

void Gestures::up(const PointerEvent& event) {
  if (pen_ == event.id) {
    pen_.reset();
    pen_lifted_ms_ = event.time_ms;
  }
  const auto found = contacts_.find(event.id);
  if (found == contacts_.end()) return;
  if (phase_ == Phase::down && event.id == leader_) ask_when_held(found->second, event.time_ms);
  const Contact contact = found->second;
  const bool palm = contacts_.size() >= k_contacts_of_a_palm;
  contacts_.erase(found);
  const bool rain = event.kind == PointerKind::touch && counts_as_rain(contact.down_ms, event.time_ms);
  if (event.id == leader_ && phase_ == Phase::dragging) target_.drag_end(event);
  else if (event.id == leader_ && phase_ == Phase::down && !palm && !rain) target_.press(contact.down, event.kind);
  phase_ = contacts_.empty() ? Phase::idle : Phase::spoilt;
}

void Gestures::lose(int id) {
  if (pen_ == id) pen_.reset();
  if (contacts_.erase(id) == 0) return;
  if (phase_ == Phase::dragging && id == leader_) target_.drag_cancel();
  phase_ = contacts_.empty() ? Phase::idle : Phase::spoilt;
}

}  // namespace fogsheet
