// Turns the pointers' events into presses, drags and two-finger moves. A press is down and up with under 8 px of movement;
// from 8 px on it is a drag. A second finger cancels a drag and pans and zooms. Five contacts at once are no press, and
// after three contacts of under 40 ms within 0.3 s (rain on the glass) a contact of under 40 ms is none either. While a pen is
// down, and for half a second after, fingers do nothing: they are the hand that rests on the glass. What a right button asks, a
// hold of 0.8 s without moving asks too: less is how a cold hand presses.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "shell/pointer.h"

namespace fogsheet {

/// What a gesture asks of the canvas.
class GestureTarget {
 public:
  virtual ~GestureTarget() = default;
  virtual void press(ScreenPoint at, PointerKind kind) = 0;
  /// A right button, or a hold. False where nothing is to be asked about: then the hold goes on as a press.
  virtual bool ask(ScreenPoint at) = 0;
  /// A drag begins at where the pointer went down, `held_s` seconds after that.
  virtual void drag_begin(ScreenPoint from, double down_ms, double held_s) = 0;
  virtual void drag_to(const PointerEvent& event) = 0;
  virtual void drag_end(const PointerEvent& event) = 0;
  virtual void drag_cancel() = 0;
  /// Two fingers: the paper follows the middle between them, and grows about it.
  virtual void pan_zoom(ScreenPoint about, ScreenPoint by, double factor) = 0;
  virtual void hover(std::optional<ScreenPoint> at) = 0;
};

class Gestures {
 public:
  explicit Gestures(GestureTarget& target) : target_(target) {}
  void event(const PointerEvent& event);
  /// Lets go of all contacts; a drag is cancelled.
  void cancel();

 private:
  enum class Phase { idle, down, asked, dragging, two_fingers, spoilt };
  struct Contact {
    ScreenPoint down;
    ScreenPoint at;
    double down_ms = 0;
  };

  void down(const PointerEvent& event);
  void moved(const PointerEvent& event);
  void up(const PointerEvent& event);
  void lose(int id);
  void ask_when_held(const Contact& contact, double now_ms);
  bool is_resting_hand(const PointerEvent& event) const;
  bool counts_as_rain(double down_ms, double up_ms);

  GestureTarget& target_;
  Phase phase_ = Phase::idle;
  std::map<int, Contact> contacts_;
  int leader_ = 0;
  ScreenPoint middle_;
  double spread_px_ = 0;
  std::vector<double> short_contacts_ms_;
  std::optional<int> pen_;                 // while it is down
  std::optional<double> pen_lifted_ms_;    // when it was last
};

}  // namespace fogsheet
