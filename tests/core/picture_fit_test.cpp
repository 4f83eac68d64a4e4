// A picture laid by known points: against Eigen's least squares, GeographicLib's lengths, and what must hold of any fit.
#include "core/sheet/picture_fit.h"

#include <algorithm>
#include <cmath>

#include "Eigen/Dense"
#include "core/base/random.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr std::uint64_t k_seed = 20261126;

Projection sheet(Position middle = {44.1666666, -31.3333333}, double scale = 100'000) { return Projection(middle, scale, Paper::a4_across); }

/// A chart scanned so: 8 pixels a millimetre of our sheet, turned, and `stretch` longer one way than the other.
PictureTransform scan(double turn_deg, double mm_per_px = 0.125, double stretch = 1, double shear = 0) {
  const double c = std::cos(turn_deg * k_degree_rad), s = std::sin(turn_deg * k_degree_rad);
  return {.corner = {20, 30}, .across = {mm_per_px * c, mm_per_px * s}, .down = {mm_per_px * (-s * stretch + shear * c), mm_per_px * (c * stretch + shear * s)}};
}

std::vector<KnownPoint> points_of(const PictureTransform& truth, const Projection& projection, const std::vector<PicturePoint>& at) {
  std::vector<KnownPoint> points;
  for (const PicturePoint& point : at) points.push_back({point, projection.to_position(truth.to_sheet(point))});
  return points;
}

double farthest_mm(const PictureTransform& a, const PictureTransform& b) {
  double worst = 0;
  for (const PicturePoint corner : {PicturePoint{0, 0}, {4000, 0}, {0, 3000}, {4000, 3000}}) worst = std::max(worst, distance_mm(a.to_sheet(corner), b.to_sheet(corner)));
  return worst;
}

/// By Eigen's QR with full columns, of unknowns in the order across.x, across.y, down.x, down.y, corner.x, corner.y; of a
/// similarity a, b, corner.x, corner.y.
PictureTransform by_eigen(const std::vector<KnownPoint>& points, PictureFitKind kind, const Projection& projection) {
  const Eigen::Index rows = 2 * static_cast<Eigen::Index>(points.size());
  const bool affine = kind == PictureFitKind::affine;
  Eigen::MatrixXd x = Eigen::MatrixXd::Zero(rows, affine ? 6 : 4);
  Eigen::VectorXd y(rows);
  for (Eigen::Index i = 0; i < rows / 2; ++i) {
    const KnownPoint& point = points[static_cast<std::size_t>(i)];
    const SheetPoint place = projection.to_sheet(point.position);
    const double u = point.at.x_px, v = point.at.y_px;
    if (affine) {
      x.row(2 * i) << u, 0, v, 0, 1, 0;
      x.row(2 * i + 1) << 0, u, 0, v, 0, 1;
    } else {
      x.row(2 * i) << u, -v, 1, 0;
      x.row(2 * i + 1) << v, u, 0, 1;
    }
    y(2 * i) = place.x_mm;
    y(2 * i + 1) = place.y_mm;
  }
  const Eigen::VectorXd b = x.colPivHouseholderQr().solve(y);
  if (affine) return {.corner = {b(4), b(5)}, .across = {b(0), b(1)}, .down = {b(2), b(3)}};
  return {.corner = {b(2), b(3)}, .across = {b(0), b(1)}, .down = {-b(1), b(0)}};
}

}  // namespace

TEST_CASE("what was laid down exactly is found again, however it is turned") {
  const Projection projection = sheet();
  for (const double turn_deg : {0.0, 3.0, 90.0, 179.0, -120.0}) {
    CAPTURE(turn_deg);
    const PictureTransform truth = scan(turn_deg);
    const auto two = fit_picture(points_of(truth, projection, {{200, 300}, {1900, 1200}}), PictureFitKind::similarity, projection);
    REQUIRE(two.ok());
    CHECK(farthest_mm(two->transform, truth) < 1e-6);
    CHECK_FALSE(two->standard_error_m);  // nothing is left over to tell it by
    const PictureTransform stretched = scan(turn_deg, 0.1, 1.07, 0.02);
    const auto three = fit_picture(points_of(stretched, projection, {{200, 300}, {1900, 1200}, {400, 1500}}), PictureFitKind::affine, projection);
    REQUIRE(three.ok());
    CHECK(farthest_mm(three->transform, stretched) < 1e-6);
    CHECK_FALSE(three->standard_error_m);
    const SheetPoint back = three->transform.to_sheet(three->transform.to_picture({100, 80}));
    CHECK(distance_mm(back, {100, 80}) < 1e-9);
  }
}

TEST_CASE("both fits agree with Eigen's least squares") {
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 300; ++run) {
    CAPTURE(run);
    const Projection projection = sheet({random.uniform(-70, 70), random.uniform(-180, 180)}, random.uniform(25'000, 1'000'000));
    const PictureTransform truth = scan(random.uniform(-180, 180), random.uniform(0.02, 0.5), random.uniform(0.9, 1.1), random.uniform(-0.05, 0.05));
    std::vector<PicturePoint> at;
    for (std::int64_t i = random.whole(4, 12); i-- > 0;) at.push_back({random.uniform(0, 4000), random.uniform(0, 3000)});
    std::vector<KnownPoint> points = points_of(truth, projection, at);
    for (KnownPoint& point : points) {
      point.at.x_px += 4 * random.normal();
      point.at.y_px += 4 * random.normal();
    }
    for (const PictureFitKind kind : {PictureFitKind::similarity, PictureFitKind::affine}) {
      const auto fit = fit_picture(points, kind, projection);
      if (!fit.ok()) continue;  // a cloud that happens to be a line
      const PictureTransform same = by_eigen(points, kind, projection);
      CHECK(farthest_mm(fit->transform, same) < 1e-6);
      double squares = 0;
      for (std::size_t i = 0; i < points.size(); ++i) {
        // On the ground: the rhumb line from the place known to where it was put, by GeographicLib; the sheet's scale at
        // the place alone is right to a part in a thousand over a few miles.
        const Position put = projection.to_position(same.to_sheet(points[i].at));
        const double left_m = rhumb_inverse(points[i].position, put).distance_nm * 1852;
        CHECK(std::abs(fit->residuals_m[i] - left_m) <= 0.01 + 0.005 * left_m);
        CHECK(fit->residuals_m[i] <= fit->residuals_m[fit->worst]);
        squares += left_m * left_m;
      }
      const double error_m = std::sqrt(squares / (2.0 * static_cast<double>(points.size()) - (kind == PictureFitKind::affine ? 6 : 4)));
      REQUIRE(fit->standard_error_m);
      CHECK(std::abs(*fit->standard_error_m - error_m) <= 0.01 + 0.005 * error_m);
    }
  }
}

TEST_CASE("the same chart is put on the same ground, whatever sheet lies over it") {
  const std::vector<KnownPoint> points = {{{210, 320}, {44.2, -31.5}}, {{3800, 300}, {44.2, -31.0}}, {{220, 2700}, {44.0, -31.5}}, {{3790, 2711}, {44.001, -31.0}}};
  const Projection one = sheet(), other = sheet({44.0, -31.2}, 250'000);
  for (const PictureFitKind kind : {PictureFitKind::similarity, PictureFitKind::affine}) {
    const auto a = fit_picture(points, kind, one), b = fit_picture(points, kind, other);
    REQUIRE((a.ok() && b.ok()));
    for (std::size_t i = 0; i < points.size(); ++i) CHECK(std::abs(a->residuals_m[i] - b->residuals_m[i]) < 1e-6);
    const Position on_one = one.to_position(a->transform.to_sheet({2000, 1500})), on_other = other.to_position(b->transform.to_sheet({2000, 1500}));
    CHECK(rhumb_inverse(on_one, on_other).distance_nm * 1852 < 1e-4);
  }
}

TEST_CASE("a Mercator chart scanned flat is met everywhere, across 180 degrees and far north too") {
  for (const Position middle : {Position{-17, 179.98}, Position{70, -179.9}, Position{-0.02, 0.01}}) {
    const Projection projection = sheet(middle, 500'000);
    const PictureTransform truth = scan(12);
    const auto fit = fit_picture(points_of(truth, projection, {{10, 10}, {2000, 100}, {1000, 1200}}), PictureFitKind::similarity, projection);
    REQUIRE(fit.ok());
    CHECK(farthest_mm(fit->transform, truth) < 1e-6);
    CHECK(*fit->standard_error_m < 0.01);
  }
}

TEST_CASE("one point put wrong is the one that is named") {
  const Projection projection = sheet();
  std::vector<KnownPoint> points = points_of(scan(2), projection, {{100, 100}, {1900, 90}, {1880, 1300}, {120, 1310}, {1000, 700}, {1500, 400}});
  points[3].position.lat_deg += 1.0 / 60;  // a mile
  for (const PictureFitKind kind : {PictureFitKind::similarity, PictureFitKind::affine}) CHECK(fit_picture(points, kind, projection)->worst == 3);
}

TEST_CASE("points that can't place a picture are refused") {
  const Projection projection = sheet();
  const auto fault = [&](const std::vector<KnownPoint>& points, PictureFitKind kind) { return fit_picture(points, kind, projection).problem(); };
  const std::vector<KnownPoint> three = points_of(scan(0), projection, {{0, 0}, {2000, 0}, {500, 1000}});
  CHECK(fault({}, PictureFitKind::similarity).fault == Fault::picture_points_too_few);
  CHECK(fault({three[0]}, PictureFitKind::similarity) == Problem{.fault = Fault::picture_points_too_few, .numbers = {1, 2}});
  CHECK(fault({three[0], three[1]}, PictureFitKind::affine) == Problem{.fault = Fault::picture_points_too_few, .numbers = {2, 3}});
  CHECK(fault({three[0], three[1], three[0]}, PictureFitKind::affine) == Problem{.fault = Fault::picture_points_together, .numbers = {1, 3}});
  CHECK(fault({three[0], {{900, 900}, three[0].position}}, PictureFitKind::similarity).fault == Fault::picture_points_together);
  // In a line on the picture, on the ground, and nearly so.
  const std::vector<KnownPoint> line = points_of(scan(30), projection, {{0, 0}, {1000, 500}, {2000, 1010}});
  CHECK(fault(line, PictureFitKind::affine).fault == Fault::picture_points_in_line);
  CHECK(fit_picture(line, PictureFitKind::similarity, projection).ok());
  CHECK(fault({{{0, 0}, {44, -31}}, {{500, 900}, {44.1, -31}}, {{2000, 0}, {44.2, -31}}}, PictureFitKind::affine).fault == Fault::picture_points_in_line);
  // Two positions changed for each other turn a triangle over.
  const std::vector<KnownPoint> mirrored = {{three[0].at, three[1].position}, {three[1].at, three[0].position}, three[2]};
  for (const PictureFitKind kind : {PictureFitKind::similarity, PictureFitKind::affine}) CHECK(fault(mirrored, kind).fault == Fault::picture_mirrored);
}

TEST_CASE("until it is placed a picture lies whole and upright in the sheet") {
  const SheetRect neat = sheet().neat_line();
  for (const auto& [width, height] : {std::pair{4000.0, 3000.0}, std::pair{300.0, 2000.0}}) {
    const PictureTransform lies = picture_across_sheet(width, height, neat);
    for (const PicturePoint corner : {PicturePoint{0.01, 0.01}, {width - 0.01, height - 0.01}}) CHECK(neat.contains(lies.to_sheet(corner)));
    CHECK(distance_mm(lies.to_sheet({width / 2, height / 2}), midpoint({neat.left_mm, neat.top_mm}, {neat.right_mm, neat.bottom_mm})) < 1e-9);
  }
}
