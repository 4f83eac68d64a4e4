// What the page tells of pointers and keys, in CSS pixels of the canvas.
#pragma once

#include <cstdint>
#include <string>

namespace fogsheet {

struct ScreenPoint {
  double x_px = 0;
  double y_px = 0;
  bool operator==(const ScreenPoint&) const = default;
};

inline ScreenPoint operator+(ScreenPoint a, ScreenPoint b) { return {a.x_px + b.x_px, a.y_px + b.y_px}; }
inline ScreenPoint operator-(ScreenPoint a, ScreenPoint b) { return {a.x_px - b.x_px, a.y_px - b.y_px}; }

enum class PointerKind : std::uint8_t { mouse, pen, touch };
enum class PointerPhase : std::uint8_t { down, move, up, cancel, leave };

struct PointerEvent {
  PointerPhase phase = PointerPhase::move;
  PointerKind kind = PointerKind::mouse;
  int id = 0;
  ScreenPoint at;
  int buttons = 0;        // as the browser has them: 1 left, 2 right, 4 middle
  double pressure = 0;    // [0, 1]
  bool shift = false;
  bool alt = false;
  double time_ms = 0;     // of one monotonic clock
};

struct WheelEvent {
  ScreenPoint at;
  double steps = 0;  // notches towards the user: positive goes wider
};

struct KeyEvent {
  std::string key;  // as the browser names it: "m", "Escape", "ArrowLeft", "+"
  bool shift = false;
  bool control = false;  // or the command key
  bool alt = false;
  bool repeat = false;   // the key is held down
};

}  // namespace fogsheet
