#include "core/figure/label_placer.h"

#include <algorithm>
#include <cmath>

namespace fogsheet {
namespace {

constexpr std::size_t k_most_discouraging = 24;  // in a cell; a label meets four such cells at most, so placing stays quick
// Signs and the labels of a crowd are small and many: in small cells few are compared. What is discouraged is long, and falls into few large ones.
constexpr double k_blocked_cell_mm = 4, k_discouraged_cell_mm = 12;

SheetRect around_of(const LaidBox& laid) {
  const SheetPoint middle = laid.box.middle;
  const double cos_turn = std::abs(laid.right.x_mm), sin_turn = std::abs(laid.right.y_mm);
  const double x_mm = laid.box.half_width_mm * cos_turn + laid.box.half_height_mm * sin_turn, y_mm = laid.box.half_width_mm * sin_turn + laid.box.half_height_mm * cos_turn;
  return {middle.x_mm - x_mm, middle.y_mm - y_mm, middle.x_mm + x_mm, middle.y_mm + y_mm};
}

bool meet(const SheetRect& a, const SheetRect& b) { return a.left_mm < b.right_mm && b.left_mm < a.right_mm && a.top_mm < b.bottom_mm && b.top_mm < a.bottom_mm; }

/// Whether a's own axes part the two boxes (separating axis test, one half of it).
bool parted_along(const LaidBox& a, const LaidBox& b) {
  const SheetVector between = b.box.middle - a.box.middle;
  const auto apart = [&](SheetVector axis, double own_half) {
    const double other_half = b.box.half_width_mm * std::abs(dot(b.right, axis)) + b.box.half_height_mm * std::abs(dot(b.down, axis));
    return std::abs(dot(between, axis)) >= own_half + other_half;
  };
  return apart(a.right, a.box.half_width_mm) || apart(a.down, a.box.half_height_mm);
}

/// Of boxes whose upright rectangles meet.
bool overlap(const LaidBox& a, const LaidBox& b) { return !parted_along(a, b) && !parted_along(b, a); }

}  // namespace

LaidBox::LaidBox(const Box& laid) : box(laid), right(towards(laid.turn_deg + 90)), down(-towards(laid.turn_deg)), around(around_of(*this)) {}

bool overlap(const Box& a, const Box& b) { return overlap(LaidBox(a), LaidBox(b)); }

LabelPlacer::Grid::Grid(SheetRect over, double cell_mm)
    : cell_mm_(cell_mm),
      left_(static_cast<int>(std::floor(over.left_mm / cell_mm))),
      top_(static_cast<int>(std::floor(over.top_mm / cell_mm))),
      columns_(static_cast<int>(std::floor(over.right_mm / cell_mm)) - left_ + 1),
      rows_(static_cast<int>(std::floor(over.bottom_mm / cell_mm)) - top_ + 1),
      cells_(static_cast<std::size_t>(std::max(0, columns_)) * static_cast<std::size_t>(std::max(0, rows_))) {}

template <class Visit>
bool LabelPlacer::Grid::each(const SheetRect& around, Visit visit) {
  const auto cell = [&](double mm, int first, int count) { return std::clamp(std::floor(mm / cell_mm_) - first, -1.0, static_cast<double>(count)); };
  const int x_first = std::max(0, static_cast<int>(cell(around.left_mm, left_, columns_))), x_last = std::min(columns_ - 1, static_cast<int>(cell(around.right_mm, left_, columns_)));
  const int y_first = std::max(0, static_cast<int>(cell(around.top_mm, top_, rows_))), y_last = std::min(rows_ - 1, static_cast<int>(cell(around.bottom_mm, top_, rows_)));
  for (int y = y_first; y <= y_last; ++y)
    for (int x = x_first; x <= x_last; ++x)
      if (!visit(cells_[static_cast<std::size_t>(y) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(x)])) return false;
  return true;
}

LabelPlacer::LabelPlacer(SheetRect inside) : inside_(inside), blocked_(inside, k_blocked_cell_mm), discouraged_(inside, k_discouraged_cell_mm) {}

void LabelPlacer::block(const Box& box) {
  const LaidBox& laid = blocking_.emplace_back(box);
  blocked_.each(laid.around, [&](Cell& cell) {
    cell.push_back({laid.around, blocking_.size() - 1});
    return true;
  });
}

void LabelPlacer::discourage(const Box& box) {
  const std::size_t index = discouraging_.size();
  discouraging_.push_back({LaidBox(box)});
  const SheetRect around = discouraging_.back().laid.around;
  // A long thin box, a leg, is laid into the grid piece by piece: the upright rectangle around it would fill the grid.
  const int pieces = std::max(1, static_cast<int>(std::ceil(2 * box.half_width_mm / k_discouraged_cell_mm)));
  const SheetVector piece = (2 * box.half_width_mm / pieces) * towards(box.turn_deg + 90);
  for (int i = 0; i < pieces; ++i) {
    Box part = box;
    part.half_width_mm = box.half_width_mm / pieces;
    part.middle = box.middle + (i - (pieces - 1) / 2.0) * piece;
    discouraged_.each(LaidBox(part).around, [&](Cell& cell) {
      if (cell.size() < k_most_discouraging && (cell.empty() || cell.back().index != index)) cell.push_back({around, index});
      return true;
    });
  }
}

std::optional<std::size_t> LabelPlacer::place(std::span<const Box> places) {
  std::optional<std::size_t> best;
  std::size_t best_cost = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const LaidBox laid(places[i]);
    const SheetRect& around = laid.around;
    if (!inside_.contains({around.left_mm, around.top_mm}) || !inside_.contains({around.right_mm, around.bottom_mm})) continue;
    const bool is_free = blocked_.each(around, [&](const Cell& cell) {
      return std::none_of(cell.begin(), cell.end(), [&](const Held& held) { return meet(around, held.around) && overlap(laid, blocking_[held.index]); });
    });
    if (!is_free) continue;
    ++places_tried_;
    std::size_t cost = 0;
    discouraged_.each(around, [&](const Cell& cell) {
      for (const Held& held : cell) {
        Discouraging& under = discouraging_[held.index];
        if (under.counted_at == places_tried_ || !meet(around, held.around) || !overlap(laid, under.laid)) continue;
        under.counted_at = places_tried_;
        ++cost;
      }
      return true;
    });
    if (!best || cost < best_cost) {
      best = i;
      best_cost = cost;
    }
    if (best_cost == 0) break;
  }
  if (best) block(places[*best]);
  return best;
}

}  // namespace fogsheet
