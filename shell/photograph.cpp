#include "shell/photograph.h"

#include <algorithm>
#include <cmath>

#include "core/formats/bytes.h"
#include "shell/session.h"

namespace fogsheet {
namespace {

constexpr std::uint64_t k_format = 1;
constexpr double k_parts_per_px = 100;
// What was drawn keeps 3:1 even over the blackest photograph (by night, the whitest is black): more than the last would take that away.
constexpr double k_opacities[k_photograph_strengths] = {0.15, 0.28, 0.42, 0.58};
constexpr double k_more_in_the_dark = 0.4;  // of the way to the strongest: a thin figure that little light is lost against black

bool is_on(const PhotographPlacing& placing, PicturePoint at) {
  return at.x_px >= 0 && at.y_px >= 0 && at.x_px <= placing.width_px && at.y_px <= placing.height_px;  // false of what is no number
}

}  // namespace

LaidPhotograph laid(const Session& session, const Photograph& photograph) {
  const Projection& projection = *session.facts().projection;
  const PhotographPlacing& placing = photograph.placing;
  LaidPhotograph lies;
  std::vector<KnownPoint> points;
  for (std::size_t i = 0; i < placing.points.size(); ++i)
    if (const std::optional<GridPosition>& position = placing.points[i].position) {
      points.push_back({placing.points[i].at, unquantise(*position)});
      lies.known.push_back(i);
    }
  if (placing.stretched && points.size() >= 3) lies.kind = PictureFitKind::affine;
  Result<PictureFit> fit = fit_picture(points, lies.kind, projection);
  if (fit) {
    lies.transform = fit->transform;
    lies.fit = std::move(fit).value();
  } else {
    lies.transform = picture_across_sheet(placing.width_px, placing.height_px, projection.neat_line());
    lies.problem = fit.problem();
  }
  return lies;
}

bool is_shown(const std::optional<Photograph>& photograph) { return photograph && photograph->is_ready() && !photograph->placing.hidden; }

double opacity_of(const Session& session, const Photograph& photograph) {
  double opacity = k_opacities[photograph.placing.strength];
  if (is_dark(session.settings.palette)) opacity += k_more_in_the_dark * (k_opacities[k_photograph_strengths - 1] - opacity);
  return opacity / (1 + session.settings.dim_step());
}

std::optional<std::size_t> photograph_point_near(const Session& session, ScreenPoint at) {
  if (!is_shown(session.photograph)) return std::nullopt;
  const PictureTransform transform = laid(session, *session.photograph).transform;
  const std::vector<PhotographPoint>& points = session.photograph->placing.points;
  std::optional<std::size_t> nearest;
  double least_px = k_mark_reach_px;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ScreenPoint lies = session.desk.camera.to_screen(transform.to_sheet(points[i].at));
    const double away_px = std::hypot(lies.x_px - at.x_px, lies.y_px - at.y_px);
    if (away_px > least_px) continue;
    least_px = away_px;
    nearest = i;
  }
  return nearest;
}

Result<Done> add_photograph_point(Session& session, PicturePoint at, std::optional<GridPosition> position) {
  if (!session.photograph || !session.photograph->is_ready()) return Fault::no_photograph;
  PhotographPlacing& placing = session.photograph->placing;
  if (!is_on(placing, at)) return Fault::picture_point_outside;
  if (placing.points.size() >= k_most_known_points) return Problem{.fault = Fault::table_full, .texts = {"points"}, .numbers = {static_cast<double>(k_most_known_points)}};
  placing.points.push_back({at, position});
  session.photograph->selected = placing.points.size() - 1;
  return Done{};
}

Result<Done> move_photograph_point(Session& session, std::size_t point, PicturePoint to) {
  if (!is_on(session.photograph->placing, to)) return Fault::picture_point_outside;
  session.photograph->placing.points[point].at = to;
  return Done{};
}

std::vector<std::uint8_t> to_bytes(const PhotographPlacing& placing) {
  ByteWriter out;
  const std::uint64_t flags = (placing.stretched ? 1u : 0u) + (placing.is_wgs84 ? 2u : 0u) + (placing.hidden ? 4u : 0u);
  for (const std::uint64_t value : {k_format, static_cast<std::uint64_t>(placing.width_px), static_cast<std::uint64_t>(placing.height_px), flags, static_cast<std::uint64_t>(placing.strength), static_cast<std::uint64_t>(placing.points.size())}) out.whole(value);
  for (const PhotographPoint& point : placing.points) {
    for (const double px : {point.at.x_px, point.at.y_px}) out.whole(static_cast<std::uint64_t>(std::llround(px * k_parts_per_px)));
    out.whole(point.position ? 1 : 0);
    if (!point.position) continue;
    out.signed_whole(point.position->lat);
    out.signed_whole(point.position->lon);
  }
  return out.bytes();
}

std::optional<PhotographPlacing> placing_from(std::span<const std::uint8_t> bytes) {
  ByteReader in(bytes);
  if (in.whole() != k_format) return std::nullopt;
  bool sound = true;
  const auto up_to = [&](std::uint64_t most) {
    const std::uint64_t value = in.whole();
    sound = sound && value <= most;
    return static_cast<int>(std::min(value, most));
  };
  constexpr std::uint64_t k_most_side_px = 1'000'000;
  PhotographPlacing placing{.width_px = up_to(k_most_side_px), .height_px = up_to(k_most_side_px)};
  const int flags = up_to(7);
  placing.stretched = (flags & 1) != 0;
  placing.is_wgs84 = (flags & 2) != 0;
  placing.hidden = (flags & 4) != 0;
  placing.strength = up_to(k_photograph_strengths - 1);
  for (int i = up_to(k_most_known_points); i-- > 0;) {
    PhotographPoint point;
    for (double* px : {&point.at.x_px, &point.at.y_px}) *px = up_to(k_most_side_px * static_cast<std::uint64_t>(k_parts_per_px)) / k_parts_per_px;
    if (up_to(1) == 1) {
      const std::int64_t lat = in.signed_whole(), lon = in.signed_whole();
      const Result<GridPosition> position = checked_position(static_cast<double>(lat) / k_grid_per_degree, static_cast<double>(lon) / k_grid_per_degree);
      sound = sound && position.ok();
      if (position) point.position = *position;
    }
    sound = sound && is_on(placing, point.at);
    placing.points.push_back(point);
  }
  return sound && in.at_end() ? std::optional(std::move(placing)) : std::nullopt;
}

}  // namespace fogsheet
