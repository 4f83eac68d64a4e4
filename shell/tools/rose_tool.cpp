#include "shell/tools/rose_tool.h"

#include <algorithm>
#include <cmath>

#include "core/document/actions.h"
#include "core/figure/rose_figure.h"
#include "shell/canvas/overlay.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

const RoseInReach* nearest_rose(const Session& session, SheetPoint to) {
  const RoseInReach* nearest = nullptr;
  for (const RoseInReach& rose : session.facts().roses)
    if (!nearest || distance_mm(rose.centre, to) < distance_mm(nearest->centre, to)) nearest = &rose;
  return nearest;
}

void change(Session& session, RoseId rose, const RoseChange& change) {
  const Document before = session.document();
  const Result<Done> changed = change_rose(session.history(), rose, change);
  if (!changed) return session.refuse(changed.problem());
  session.settle_desk(before);
}

}  // namespace

const RoseInReach* rose_in_hand(const Session& session) {
  if (session.desk.selected_rose) return session.facts().rose(session.desk.selected_rose);
  const FreeArea area = session.free_area();
  return nearest_rose(session, session.desk.camera.to_sheet({area.width_px / 2, area.height_px / 2}));
}

void RoseTool::press(Session& session, ScreenPoint at) {
  if (!std::holds_alternative<NothingTarget>(target_at(session, at))) return select_at(session, at);
  const SheetPoint to = session.desk.camera.to_sheet(at);
  const Position position = session.facts().projection->to_position(to);
  const RoseInReach* rose = session.desk.selected_rose ? session.facts().rose(session.desk.selected_rose) : nearest_rose(session, to);
  if (rose) {
    const RoseId id = rose->id;
    change(session, id, {.at = position});
    select_rose(session, id);
    return;
  }
  const Document before = session.document();
  const Result<RoseId> made = add_rose(session.history(), position.lat_deg, position.lon_deg, corner_rose(*session.facts().projection, {}).radius_mm);
  if (!made) return session.refuse(made.problem());
  session.settle_desk(before);
  select_rose(session, *made);
}

bool RoseTool::take(Session& session, ScreenPoint from, double) {
  const Target target = target_at(session, from);
  const auto* whole = std::get_if<RoseTarget>(&target);
  const auto* size = std::get_if<RoseSizeTarget>(&target);
  if (!whole && !size) return false;
  drag_ = whole ? Drag::move : Drag::size;
  from_ = from;
  before_ = scratch_ = *session.facts().rose(whole ? whole->id : size->id);
  select_rose(session, before_.id);
  return true;
}

void RoseTool::move(Session& session, ScreenPoint at) {
  const Camera& camera = session.desk.camera;
  const SheetVector by = camera.to_sheet(at) - camera.to_sheet(from_);
  if (drag_ == Drag::move) {
    scratch_.centre = before_.centre + by;
  } else {
    // The handle keeps its distance from the finger.
    const SheetPoint handle = rose_size_handle(before_.centre, before_.radius_mm) + by;
    scratch_.radius_mm = std::clamp(distance_mm(handle, before_.centre) / k_true_ring, k_least_rose_radius_mm, k_most_rose_radius_mm);
  }
  session.frame_wanted = true;
}

void RoseTool::release(Session& session, ScreenPoint at) {
  move(session, at);
  const Drag was = drag_;
  drag_ = Drag::none;
  if (was == Drag::move) change(session, before_.id, {.at = session.facts().projection->to_position(scratch_.centre)});
  else change(session, before_.id, {.radius_mm = scratch_.radius_mm});
  session.touch();
}

void RoseTool::cancel(Session& session) {
  drag_ = Drag::none;
  session.touch();
}

void RoseTool::draw_preview(const Session& session, Overlay& overlay) const {
  const Camera& camera = session.desk.camera;
  const RoseInReach* selected = session.facts().rose(session.desk.selected_rose);
  const RoseInReach& rose = drag_ == Drag::none && selected ? *selected : scratch_;
  if (drag_ == Drag::none && !selected) return;
  if (drag_ != Drag::none) {
    // Drawn as it will stand; the list's own millimetres begin at the canvas, not at the paper.
    Figure figure;
    const ScreenPoint centre = camera.to_screen(rose.centre);
    add_rose(figure, {centre.x_px / camera.px_per_mm, centre.y_px / camera.px_per_mm}, rose.radius_mm, session.variation_of(rose.id).used, {},
             session.settings.legibility(camera.px_per_mm));
    overlay.brush().shapes(figure.on(Layer::rose), camera.px_per_mm);
  }
  overlay.snap_ticks(camera.to_screen(rose.centre));
  const SheetPoint handle = rose_size_handle(rose.centre, rose.radius_mm);
  overlay.grip(camera.to_screen(handle), direction_deg(handle - rose.centre) + 90, k_handle_radius_px);
}

std::string RoseTool::status(const Session& session) const { return words::status_rose_tool(session.facts().roses.size()); }

}  // namespace fogsheet
