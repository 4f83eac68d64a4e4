#include "shell/own_position_on_sheet.h"

#include "core/base/clock_text.h"
#include "core/base/instant.h"
#include "core/base/units.h"

namespace fogsheet {
namespace {

constexpr double k_lozenge_px = 8;
constexpr double k_text_px = 14;

void fill_lozenge(ScreenPoint at, double reach_px, Ink ink, Brush& brush) {
  const double reach = brush.apart(reach_px);
  brush.fill({{at.x_px, at.y_px - reach}, {at.x_px + reach, at.y_px}, {at.x_px, at.y_px + reach}, {at.x_px - reach, at.y_px}}, ink);
}

}  // namespace

bool is_listened_for(OwnPositionState state) {
  switch (state) {
    case OwnPositionState::asked: case OwnPositionState::here: case OwnPositionState::unknown: case OwnPositionState::late: return true;
    case OwnPositionState::off: case OwnPositionState::refused: case OwnPositionState::absent: return false;
  }
  return false;
}

std::optional<SheetPoint> own_position_on_sheet(const Session& session) {
  if (!session.own_position.is_here()) return std::nullopt;
  const Projection& projection = *session.facts().projection;
  const SheetPoint at = projection.to_sheet(session.own_position.at);
  if (!projection.neat_line().contains(at)) return std::nullopt;
  return at;
}

std::string time_found(const Session& session) {
  const std::int64_t at_ms = session.own_position.at_ms;
  return print_clock_time(local_time({.seconds = at_ms / 1000}, {.minutes_east = session.platform.minutes_east(at_ms)}).time);
}

void draw_own_position(const Session& session, Overlay& overlay) {
  const std::optional<SheetPoint> place = own_position_on_sheet(session);
  if (!place) return;
  const OwnPosition& own = session.own_position;
  const Camera& camera = session.desk.camera;
  Brush& brush = overlay.brush();
  const ScreenPoint at = camera.to_screen(*place);
  const double radius_px = own.accuracy_m / k_metres_per_nm * session.facts().projection->mm_per_nm(own.at.lat_deg) * camera.px_per_mm;
  if (radius_px > k_lozenge_px) brush.ring(at, radius_px, Ink::blue, 1.6);
  fill_lozenge(at, k_lozenge_px + 1.5, Ink::paper, brush);
  fill_lozenge(at, k_lozenge_px, Ink::blue, brush);
  fill_lozenge(at, k_lozenge_px / 3, Ink::paper, brush);
  brush.text({at.x_px + brush.apart(k_lozenge_px + 4), at.y_px - brush.apart(k_lozenge_px)}, time_found(session), k_text_px, Face::italic, Anchor::start, Ink::blue, true);
}

}  // namespace fogsheet
