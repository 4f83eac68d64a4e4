// Places labels so that none covers another: each asks in the order of its right, tries its places, and goes without one
// when all are taken. Works on turned boxes in paper millimetres over a grid, so that 10 000 labels take milliseconds.
#pragma once

#include <optional>
#include <span>
#include <unordered_map>
#include <vector>

#include "core/sheet/sheet_point.h"

namespace fogsheet {

/// A rectangle on the paper, turned about its middle.
struct Box {
  SheetPoint middle;
  double half_width_mm = 0;
  double half_height_mm = 0;
  double turn_deg = 0;
};

bool overlap(const Box& a, const Box& b);

/// A box with what every comparison needs of it: its axes, and the upright rectangle around it.
struct LaidBox {
  explicit LaidBox(const Box& laid);
  Box box;
  SheetVector right;
  SheetVector down;
  SheetRect around;
};

class LabelPlacer {
 public:
  /// @param inside  labels must lie in it whole.
  explicit LabelPlacer(SheetRect inside);

  /// Nothing may be placed over it.
  void block(const Box& box);

  /// Better not placed over it: a leg, a ring. Counts against a place but does not forbid it. Where very many lie over one
  /// another the later ones are forgotten: no place there is better than another.
  void discourage(const Box& box);

  /// The first of the places with the fewest discouraged boxes under it, which it then blocks; none when all are taken.
  std::optional<std::size_t> place(std::span<const Box> places);

 private:
  struct Held {
    SheetRect around;
    std::size_t index;
  };
  using Cell = std::vector<Held>;

  /// Squares that cover the inside; what lies outside it is in none.
  class Grid {
   public:
    Grid(SheetRect over, double cell_mm);
    /// Calls visit with each cell that meets the rectangle, until it gives false; whether it never did.
    template <class Visit>
    bool each(const SheetRect& around, Visit visit);

   private:
    double cell_mm_;
    int left_, top_, columns_, rows_;  // in cells, from the paper's corner
    std::vector<Cell> cells_;
  };

  struct Discouraging {
    LaidBox laid;
    std::size_t counted_at = 0;  // the place it was last counted for: it lies in several cells and counts once
  };

  SheetRect inside_;
  std::vector<LaidBox> blocking_;
  std::vector<Discouraging> discouraging_;
  Grid blocked_, discouraged_;
  std::size_t places_tried_ = 0;
};

}  // namespace fogsheet
