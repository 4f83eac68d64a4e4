#include "shell/tools/target.h"

#include <algorithm>
#include <cmath>

#include "core/figure/note_figure.h"
#include "core/figure/rose_figure.h"
#include "shell/direction.h"
#include "shell/dividers.h"

namespace fogsheet {
namespace {

constexpr double k_least_settle_reach_px = 12;
// Parts of the rose's radius: handles clear of the outer figures, the arrow clear of the handle.
constexpr double k_strip_beyond_ring = 1.28;
constexpr double k_arrow_beyond_ring = 1.36;

double distance_px(ScreenPoint a, ScreenPoint b) { return std::hypot(a.x_px - b.x_px, a.y_px - b.y_px); }

ScreenPoint foot_on_segment(ScreenPoint p, ScreenPoint a, ScreenPoint b) {
  const ScreenPoint ab = b - a, ap = p - a;
  const double square = ab.x_px * ab.x_px + ab.y_px * ab.y_px;
  const double t = square > 0 ? std::clamp((ap.x_px * ab.x_px + ap.y_px * ab.y_px) / square, 0.0, 1.0) : 0;
  return {a.x_px + t * ab.x_px, a.y_px + t * ab.y_px};
}

double distance_to_segment_px(ScreenPoint p, ScreenPoint a, ScreenPoint b) { return distance_px(p, foot_on_segment(p, a, b)); }

bool on_body(const Session& session, ScreenPoint at) {
  const StraightEdge& edge = *session.desk.edge;
  const Camera& camera = session.desk.camera;
  const EdgeOutline o = edge_strip(session, edge);
  if (distance_to_segment_px(at, camera.to_screen(o.reading_start), camera.to_screen(o.reading_end)) <= k_line_reach_px) return true;
  const SheetPoint p = camera.to_sheet(at);
  const double across = across_mm(edge, p), run = dot(p - o.reading_start, along(edge));
  return across >= 0 && across <= k_edge_body_mm && run >= 0 && run <= distance_mm(o.reading_start, o.reading_end);
}

std::optional<Target> edge_target(const Session& session, ScreenPoint at) {
  if (session.desk.tool != ToolId::straight_edge || !session.desk.edge) return std::nullopt;
  const Camera& camera = session.desk.camera;
  std::optional<Target> best;
  double best_px = k_mark_reach_px;
  const auto offer = [&](SheetPoint point, Target target) {
    const double px = distance_px(at, camera.to_screen(point));
    if (px > best_px) return;
    best_px = px;
    best = target;
  };
  if (const std::optional<LineAlongEdge> line = line_along_edge(session)) offer(line->end, LineEndTarget{});
  const EdgeOutline strip = edge_strip(session, *session.desk.edge);
  for (const EdgeEnd end : {EdgeEnd::a, EdgeEnd::b}) offer(handle(strip, end), HandleTarget{end});
  if (const std::optional<SheetPoint> arrow = edge_arrow(session)) offer(*arrow, ArrowTarget{});
  if (best) return best;
  if (on_body(session, at)) return BodyTarget{};
  return std::nullopt;
}

/// Nearest wins: the two points and the hinge before the legs between them.
std::optional<Target> dividers_target(const Session& session, ScreenPoint at) {
  if (session.desk.tool != ToolId::dividers || !session.desk.dividers) return std::nullopt;
  const Camera& camera = session.desk.camera;
  const Dividers& points = session.desk.dividers->lie.points;
  const ScreenPoint a = camera.to_screen(points.a), b = camera.to_screen(points.b), hinge = camera.to_screen(hinge_of(session, *session.desk.dividers));
  std::optional<Target> best;
  double best_px = k_mark_reach_px;
  const auto offer = [&](double px, DividersPart part) {
    if (px > best_px) return;
    best_px = px;
    best = DividersTarget{part};
  };
  offer(distance_px(at, a), DividersPart::leg_a);
  offer(distance_px(at, b), DividersPart::leg_b);
  offer(distance_px(at, hinge), DividersPart::hinge);
  if (best) return best;
  best_px = k_line_reach_px;
  offer(distance_to_segment_px(at, hinge, a), DividersPart::leg_a);
  offer(distance_to_segment_px(at, hinge, b), DividersPart::leg_b);
  return best;
}

std::optional<Target> rose_target(const Session& session, ScreenPoint at) {
  if (session.desk.tool != ToolId::rose) return std::nullopt;
  const Camera& camera = session.desk.camera;
  const RoseInReach* under = nullptr;
  for (const RoseInReach& rose : session.facts().roses) {
    if (rose.id == session.desk.selected_rose && distance_px(at, camera.to_screen(rose_size_handle(rose.centre, rose.radius_mm))) <= k_mark_reach_px) return RoseSizeTarget{rose.id};
    const double off_mm = distance_mm(camera.to_sheet(at), rose.centre);
    if (off_mm <= rose.radius_mm && (!under || off_mm < distance_mm(camera.to_sheet(at), under->centre))) under = &rose;
  }
  if (under) return RoseTarget{under->id};
  return std::nullopt;
}

std::optional<LegId> leg_near(const Session& session, ScreenPoint at) {
  const Camera& camera = session.desk.camera;
  std::optional<LegId> best;
  double best_px = k_line_reach_px;
  for (const Leg& leg : session.document().legs) {
    const double px = distance_to_segment_px(at, camera.to_screen(place_of(session, leg.from)), camera.to_screen(place_of(session, leg.to)));
    if (px > best_px) continue;
    best_px = px;
    best = leg.id;
  }
  return best;
}

}  // namespace

Target target_at(const Session& session, ScreenPoint at) {
  if (const std::optional<Target> target = edge_target(session, at)) return *target;
  if (const std::optional<Target> target = dividers_target(session, at)) return *target;
  if (const std::optional<Target> target = rose_target(session, at)) return *target;
  if (const std::optional<MarkId> mark = mark_near(session, at)) return MarkTarget{*mark};
  if (session.desk.tool == ToolId::none || session.desk.tool == ToolId::note)
    if (const std::optional<NoteId> note = note_near(session, at)) return NoteTarget{*note};
  if (const std::optional<LegId> leg = leg_near(session, at)) return LegTarget{*leg};
  return NothingTarget{};
}

Target thing_at(const Session& session, ScreenPoint at) {
  if (const std::optional<MarkId> mark = mark_near(session, at)) return MarkTarget{*mark};
  if (const std::optional<NoteId> note = note_near(session, at)) return NoteTarget{*note};
  if (session.desk.edge && on_body(session, at)) return BodyTarget{};
  if (const std::optional<LegId> leg = leg_near(session, at)) return LegTarget{*leg};
  const Camera& camera = session.desk.camera;
  for (const RoseInReach& rose : session.facts().roses) {
    const double off_px = distance_px(at, camera.to_screen(rose.centre)), radius_px = rose.radius_mm * camera.px_per_mm;
    if (off_px <= k_mark_reach_px) return RoseTarget{rose.id};
    for (const double ring : {k_true_ring, k_magnetic_ring})
      if (std::abs(off_px - ring * radius_px) <= k_line_reach_px) return RoseTarget{rose.id};
  }
  return NothingTarget{};
}

SheetPoint rose_size_handle(SheetPoint centre, double radius_mm) {
  constexpr double k_handle_deg = 135;  // clear of the figures at each 30 degrees, and of the star
  return centre + k_true_ring * radius_mm * towards(k_handle_deg);
}

std::optional<NoteId> note_near(const Session& session, ScreenPoint at) {
  constexpr double k_reach_px = 10;  // about its words
  if (session.document().text_notes.empty()) return std::nullopt;
  const Camera& camera = session.desk.camera;
  const Legibility legibility = session.settings.legibility(camera.px_per_mm);
  const SheetPoint p = camera.to_sheet(at);
  const double reach_mm = k_reach_px / camera.px_per_mm;
  std::optional<NoteId> found;
  for (const TextNote& note : session.document().text_notes) {
    const std::optional<LaidNote> laid = lay_note(session.facts().projection->to_sheet(unquantise(note.at)), note.text, legibility);
    if (!laid) continue;
    const SheetRect& covers = laid->covers;
    if (SheetRect{covers.left_mm - reach_mm, covers.top_mm - reach_mm, covers.right_mm + reach_mm, covers.bottom_mm + reach_mm}.contains(p)) found = note.id;
  }
  return found;
}

std::optional<SheetPoint> foot_on_leg_near(const Session& session, ScreenPoint at) {
  const std::optional<LegId> id = leg_near(session, at);
  if (!id) return std::nullopt;
  const Leg& leg = *session.document().legs.find(*id);
  const Camera& camera = session.desk.camera;
  return camera.to_sheet(foot_on_segment(at, camera.to_screen(place_of(session, leg.from)), camera.to_screen(place_of(session, leg.to))));
}

std::optional<MarkId> mark_near(const Session& session, ScreenPoint at) {
  const Camera& camera = session.desk.camera;
  std::optional<MarkId> best;
  double best_px = k_mark_reach_px;
  const std::vector<SheetPoint>& places = session.mark_places().in_order;
  std::size_t i = 0;
  for (const Mark& mark : session.document().marks) {
    const double px = distance_px(at, camera.to_screen(places[i++]));
    // Of marks at one distance the later wins: it was drawn on top.
    if (px > best_px) continue;
    best_px = px;
    best = mark.id;
  }
  return best;
}

std::optional<MarkId> mark_to_snap_to(const Session& session, ScreenPoint at) { return session.settings.snap ? mark_near(session, at) : std::nullopt; }

SheetPoint place_of(const Session& session, MarkId mark) {
  const auto& places = session.mark_places().by_id;
  const auto found = places.find(mark.value);
  SHEET_CHECK(found != places.end(), "a mark of the desk is not on the sheet");
  return found->second;
}

EdgeOutline edge_strip(const Session& session, const StraightEdge& edge) {
  const RoseInReach* rose = settled_rose(session, edge);
  return rose ? lengthened(edge, rose->centre, k_strip_beyond_ring * rose->radius_mm) : outline(edge);
}

const RoseInReach* settled_rose(const Session& session, const StraightEdge& edge) {
  return session.facts().rose(edge.settled_on);
}

std::optional<SheetPoint> edge_arrow(const Session& session) {
  const std::optional<StraightEdge>& edge = session.desk.edge;
  const RoseInReach* rose = edge ? settled_rose(session, *edge) : nullptr;
  if (!rose) return std::nullopt;
  return cut(*edge, rose->centre, k_arrow_beyond_ring * rose->radius_mm);
}

double settle_reach_mm(const Session& session) { return std::max(k_edge_reach_mm, k_least_settle_reach_px / session.desk.camera.px_per_mm); }

}  // namespace fogsheet
