// A figure: all that is drawn, as geometry in paper millimetres, each piece with its layer and its role. Core makes it;
// screen, SVG and PNG only draw it. Weights and text heights are already those of its Legibility.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "core/sheet/sheet_point.h"

namespace fogsheet {

/// What colour something has; each palette gives one for each.
enum class Ink : std::uint8_t {
  table, paper, field, ink, soft, graticule, rule, magenta, blue, edge, edge_fill, hatch, doubt_line, danger, danger_fill, caution, agrees,
  focus, pressed, on_pressed, bar,
  none,
};
inline constexpr int k_ink_count = static_cast<int>(Ink::none);

/// Drawn in this order, the first lowest.
enum class Layer : std::uint8_t { paper, graticule, dangers, edge_fill, rose, legs, border, marks, labels, title };
inline constexpr int k_layer_count = 10;

/// Dash lengths along a line, mm; both 0 for a solid line. Dots are dashes of no length drawn with round ends.
struct Dash {
  double on_mm = 0;
  double off_mm = 0;
  bool operator==(const Dash&) const = default;
};

/// A line through points, or an area when it has a fill. Polygons that are filled must be convex.
struct Path {
  std::vector<SheetPoint> points = {};
  bool closed = false;
  Ink stroke = Ink::ink;
  double weight_mm = 0;  // 0: no stroke
  Ink fill = Ink::none;
  double fill_opacity = 1;
  Dash dash = {};
};

/// Many lines of two points each, alike: graduations, hatching.
struct Segments {
  std::vector<SheetPoint> ends = {};  // start, end, start, end, ...
  Ink stroke = Ink::ink;
  double weight_mm = 0;
};

struct Circle {
  SheetPoint centre = {};
  double radius_mm = 0;
  Ink stroke = Ink::ink;
  double weight_mm = 0;
  Ink fill = Ink::none;
  double fill_opacity = 1;
  Dash dash = {};
};

enum class Face : std::uint8_t { regular, bold, italic };
enum class Anchor : std::uint8_t { start, middle, end };

/// A line of text. `at` is on the baseline at the anchor; it is turned about `at`.
struct Text {
  SheetPoint at = {};
  std::string text = {};  // UTF-8
  double height_mm = 0;  // em
  Face face = Face::regular;
  Anchor anchor = Anchor::start;
  double turn_deg = 0;  // clockwise
  Ink ink = Ink::ink;
  bool halo = false;  // in the paper's colour
};

using Shape = std::variant<Path, Segments, Circle, Text>;

struct Figure {
  std::vector<Shape> layers[k_layer_count];

  std::vector<Shape>& on(Layer layer) { return layers[static_cast<int>(layer)]; }
  const std::vector<Shape>& on(Layer layer) const { return layers[static_cast<int>(layer)]; }
};

}  // namespace fogsheet
