#include "core/figure/mark_figure.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr SheetPoint k_at{100, 60};
constexpr MarkKind k_kinds[] = {MarkKind::landmark, MarkKind::light, MarkKind::turn, MarkKind::danger, MarkKind::other};

// How far a sign's ink reaches from the box that labels keep clear of; below 0 when it stays inside.
double beyond_mm(SheetPoint point, double radius_mm, const Box& box) {
  return radius_mm + std::max(std::abs(point.x_mm - box.middle.x_mm) - box.half_width_mm, std::abs(point.y_mm - box.middle.y_mm) - box.half_height_mm);
}

}  // namespace

TEST_CASE("each kind of mark has a sign, over the place and inside its box") {
  for (const Legibility& legibility : {k_print_legibility, screen_legibility(4)}) {
    for (const MarkKind kind : k_kinds) {
      CAPTURE(static_cast<int>(kind));
      Figure figure;
      add_mark_sign(figure, kind, k_at, 1.0, legibility);
      const Box box = sign_box(kind, k_at, legibility);
      CHECK(beyond_mm(k_at, 0, box) <= 0);
      int shapes = 0;
      for (const std::vector<Shape>& layer : figure.layers) {
        for (const Shape& shape : layer) {
          ++shapes;
          // A danger's ring is as large as the danger; its box is that of the cross in it. A light's rays spread over the post's.
          if (const auto* circle = std::get_if<Circle>(&shape); circle != nullptr && kind != MarkKind::danger)
            CHECK(beyond_mm(circle->centre, circle->radius_mm, box) <= 1e-9);
          if (const auto* segments = std::get_if<Segments>(&shape); segments != nullptr && kind != MarkKind::light)
            for (const SheetPoint end : segments->ends) CHECK(beyond_mm(end, 0, box) <= 1e-9);
        }
      }
      CHECK(shapes > 0);
    }
  }
}
