#include "core/figure/label_placer.h"

#include <algorithm>
#include <cmath>

namespace fogsheet {
namespace {

constexpr int k_most_discouraging = 24;  // of them in a cell; a label meets four cells at most, so placing stays quick
constexpr double k_cell_mm = 12;  // about a label's length: a box falls into few cells, a cell holds few boxes

struct Extent {
  double x_mm, y_mm;
};

/// Half the sides of the upright rectangle around a turned box.
Extent half_extent(const Box& box) {
  const SheetVector right = towards(box.turn_deg + 90);
  const double cos_turn = std::abs(right.x_mm), sin_turn = std::abs(right.y_mm);
  return {box.half_width_mm * cos_turn + box.half_height_mm * sin_turn, box.half_width_mm * sin_turn + box.half_height_mm * cos_turn};
}

/// Whether a's own axes part the two boxes (separating axis test, one half of it).
bool parted_along(const LaidBox& a, const LaidBox& b) {
  const SheetVector between = b.box.middle - a.box.middle;
  const auto apart = [&](SheetVector axis, double own_half) {
    const double other_half = b.box.half_width_mm * std::abs(dot(b.right, axis)) + b.box.half_height_mm * std::abs(dot(b.down, axis));
    return std::abs(dot(between, axis)) >= own_half + other_half;
  };
  return apart(a.right, a.box.half_width_mm) || apart(a.down, a.box.half_height_mm);
}

bool overlap(const LaidBox& a, const LaidBox& b) {
  const SheetVector between = b.box.middle - a.box.middle;
  const double reach = a.reach_mm + b.reach_mm;
  return dot(between, between) < reach * reach && !parted_along(a, b) && !parted_along(b, a);
}

/// Calls visit with the key of each cell that the upright rectangle around a box meets.
template <class Visit>
void each_cell(const Box& box, Visit visit) {
  const Extent half = half_extent(box);
  const auto cell = [](double mm) { return static_cast<long long>(std::floor(mm / k_cell_mm)); };
  for (long long x = cell(box.middle.x_mm - half.x_mm); x <= cell(box.middle.x_mm + half.x_mm); ++x)
    for (long long y = cell(box.middle.y_mm - half.y_mm); y <= cell(box.middle.y_mm + half.y_mm); ++y) visit(x * 1'000'003 + y);
}

}  // namespace

LaidBox::LaidBox(const Box& laid)
    : box(laid), right(towards(laid.turn_deg + 90)), down(-towards(laid.turn_deg)), reach_mm(std::hypot(laid.half_width_mm, laid.half_height_mm)) {}

bool overlap(const Box& a, const Box& b) { return overlap(LaidBox(a), LaidBox(b)); }

void LabelPlacer::block(const Box& box) {
  const int index = static_cast<int>(entries_.size());
  entries_.push_back({LaidBox(box), true});
  each_cell(box, [&](long long key) { cells_[key].entries.push_back(index); });
}

void LabelPlacer::discourage(const Box& box) {
  const int index = static_cast<int>(entries_.size());
  entries_.push_back({LaidBox(box), false});
  // A long thin box, a leg, is laid into the grid piece by piece: the upright rectangle around it would fill the grid.
  const int pieces = std::max(1, static_cast<int>(std::ceil(2 * box.half_width_mm / k_cell_mm)));
  const SheetVector piece = (2 * box.half_width_mm / pieces) * towards(box.turn_deg + 90);
  for (int i = 0; i < pieces; ++i) {
    Box part = box;
    part.half_width_mm = box.half_width_mm / pieces;
    part.middle = box.middle + (i - (pieces - 1) / 2.0) * piece;
    each_cell(part, [&](long long key) {
      Cell& cell = cells_[key];
      if (cell.discouraging >= k_most_discouraging || (!cell.entries.empty() && cell.entries.back() == index)) return;
      cell.entries.push_back(index);
      ++cell.discouraging;
    });
  }
}

std::optional<std::size_t> LabelPlacer::place(std::span<const Box> places) {
  std::optional<std::size_t> best;
  int best_cost = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Box& box = places[i];
    const LaidBox laid(box);
    const Extent half = half_extent(box);
    if (!inside_.contains({box.middle.x_mm - half.x_mm, box.middle.y_mm - half.y_mm}) || !inside_.contains({box.middle.x_mm + half.x_mm, box.middle.y_mm + half.y_mm})) continue;
    bool taken = false;
    std::vector<int> under;  // a box lies in several cells and counts once
    each_cell(box, [&](long long key) {
      const auto found = cells_.find(key);
      if (taken || found == cells_.end()) return;
      for (const int index : found->second.entries) {
        const Entry& entry = entries_[static_cast<std::size_t>(index)];
        if (!overlap(laid, entry.laid)) continue;
        if (entry.blocks) taken = true;
        else if (std::find(under.begin(), under.end(), index) == under.end()) under.push_back(index);
      }
    });
    if (taken) continue;
    const int cost = static_cast<int>(under.size());
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
