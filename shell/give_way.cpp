#include "shell/give_way.h"

#include <algorithm>

#include "shell/dividers.h"
#include "shell/tools/target.h"

namespace fogsheet {
namespace {

constexpr double k_clear_px = 36;  // about a place, so that a finger finds its handle

SheetRect around(std::initializer_list<SheetPoint> points) {
  SheetRect rect{points.begin()->x_mm, points.begin()->y_mm, points.begin()->x_mm, points.begin()->y_mm};
  for (const SheetPoint& p : points)
    rect = {std::min(rect.left_mm, p.x_mm), std::min(rect.top_mm, p.y_mm), std::max(rect.right_mm, p.x_mm), std::max(rect.bottom_mm, p.y_mm)};
  return rect;
}

/// What must be seen of the thing in hand, and what should be where there is room.
struct InHand {
  SheetRect must;
  SheetRect should;
};

std::optional<InHand> in_hand(const Session& session) {
  const Desk& desk = session.desk;
  const auto all = [](SheetRect rect) { return InHand{rect, rect}; };
  switch (session.slip) {
    case SlipId::straight_edge: {
      if (!desk.edge) return std::nullopt;
      const SheetPoint middle = midpoint(desk.edge->a, desk.edge->b);
      const RoseInReach* rose = session.facts().rose(desk.edge->settled_on);
      const SheetPoint read_at = rose ? rose->centre : middle;
      return InHand{around({middle, read_at}), around({desk.edge->a, desk.edge->b, read_at})};
    }
    case SlipId::dividers:
      if (!desk.dividers) return std::nullopt;
      return InHand{around({desk.dividers->lie.points.a, desk.dividers->lie.points.b}), around({desk.dividers->lie.points.a, desk.dividers->lie.points.b, hinge_of(session, *desk.dividers)})};
    case SlipId::rose:
      if (const RoseInReach* rose = session.facts().rose(desk.selected_rose)) return InHand{around({rose->centre}), around({rose->centre, rose_size_handle(rose->centre, rose->radius_mm)})};
      return std::nullopt;
    case SlipId::mark:
      if (desk.selected_mark) return all(around({place_of(session, *desk.selected_mark)}));
      return std::nullopt;
    case SlipId::note:
      if (const TextNote* note = desk.selected_note ? session.document().text_notes.find(*desk.selected_note) : nullptr)
        return all(around({session.facts().projection->to_sheet(unquantise(note->at))}));
      if (desk.new_note) return all(around({session.facts().projection->to_sheet(*desk.new_note)}));
      return std::nullopt;
    default: return std::nullopt;
  }
}

/// How far a span is to be shifted to lie within [0, room].
double shift(double low, double high, double room) {
  if (low < k_clear_px) return k_clear_px - low;
  return std::min(0.0, room - k_clear_px - high);
}

bool fits(double low, double high, double room) { return high - low + 2 * k_clear_px <= room; }

/// By the whole where there is room for it, else by what must be seen.
double shift_of(double must_low, double must_high, double low, double high, double room) {
  if (fits(low, high, room)) return shift(low, high, room);
  return fits(must_low, must_high, room) ? shift(must_low, must_high, room) : room / 2 - (must_low + must_high) / 2;
}

}  // namespace

void GiveWay::look(Session& session, bool by_hand) {
  const Viewport& view = session.viewport;
  const std::optional<InHand> thing = in_hand(session);
  const std::optional<SheetRect> must = thing ? std::optional(thing->must) : std::nullopt;
  const bool is_new = slip_ != session.slip || thing_ != must;
  const FreeArea room = session.free_area();
  const bool has_room = room.width_px >= 2 * k_clear_px && room.height_px >= 2 * k_clear_px;
  const bool more_covered = has_room && (waits_ || view.covered_right_px > covered_right_px_ || view.covered_bottom_px > covered_bottom_px_);
  waits_ = !has_room;
  slip_ = session.slip;
  thing_ = must;
  covered_right_px_ = view.covered_right_px;
  covered_bottom_px_ = view.covered_bottom_px;
  if (!thing || !has_room || (!more_covered && (!is_new || by_hand))) return;

  Camera& camera = session.desk.camera;
  const auto corner = [&](double x_mm, double y_mm) { return camera.to_screen({x_mm, y_mm}); };
  const ScreenPoint must_low = corner(must->left_mm, must->top_mm), must_high = corner(must->right_mm, must->bottom_mm);
  const ScreenPoint low = corner(thing->should.left_mm, thing->should.top_mm), high = corner(thing->should.right_mm, thing->should.bottom_mm);
  const ScreenPoint by{shift_of(must_low.x_px, must_high.x_px, low.x_px, high.x_px, room.width_px), shift_of(must_low.y_px, must_high.y_px, low.y_px, high.y_px, room.height_px)};
  if (by.x_px == 0 && by.y_px == 0) return;
  camera = panned(camera, by);
  session.frame_wanted = true;
}

}  // namespace fogsheet
