// The deviation curve as geometry: everything where its heading and deviation put it, inside the drawing, with gaps where the
// card has them, and told apart by form.
#include "core/figure/deviation_curve.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/figure/label_placer.h"
#include "core/figure/text_metrics.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr CurveFrame k_frames[] = {k_panel_curve, k_printed_curve};

DeviationCurve flat_curve(double deviation_deg, double sd_deg) {
  DeviationCurve curve;
  for (auto& point : curve.by_degree) point = CurvePoint{deviation_deg, sd_deg};
  return curve;
}

template <class Kind>
std::vector<Kind> all(const Figure& figure, Layer layer) {
  std::vector<Kind> found;
  for (const Shape& shape : figure.on(layer))
    if (const Kind* each = std::get_if<Kind>(&shape)) found.push_back(*each);
  return found;
}

std::vector<Text> labels(const Figure& figure) { return all<Text>(figure, Layer::labels); }
std::vector<Path> curves(const Figure& figure) { return all<Path>(figure, Layer::legs); }

bool has_label(const Figure& figure, const std::string& text) {
  const std::vector<Text> found = labels(figure);
  return std::any_of(found.begin(), found.end(), [&](const Text& label) { return label.text == text; });
}

bool near(SheetPoint a, SheetPoint b) { return distance_mm(a, b) <= 1e-9; }  // mm: rounding of doubles alone
bool inside(const SheetRect& rect, SheetPoint p) { return SheetRect{rect.left_mm - 1e-9, rect.top_mm - 1e-9, rect.right_mm + 1e-9, rect.bottom_mm + 1e-9}.contains(p); }

/// Every point of a figure, a text's by the corners of what it covers.
std::vector<SheetPoint> reach(const Figure& figure) {
  std::vector<SheetPoint> points;
  for (const std::vector<Shape>& layer : figure.layers)
    for (const Shape& shape : layer) {
      if (const Path* path = std::get_if<Path>(&shape)) points.insert(points.end(), path->points.begin(), path->points.end());
      if (const Segments* segments = std::get_if<Segments>(&shape)) points.insert(points.end(), segments->ends.begin(), segments->ends.end());
      if (const Circle* circle = std::get_if<Circle>(&shape))
        for (const double side : {-1.0, 1.0}) points.push_back(circle->centre + SheetVector{side * circle->radius_mm, side * circle->radius_mm});
      if (const Text* text = std::get_if<Text>(&shape)) {
        const double width = text_width_em(text->text, text->face) * text->height_mm;
        const double left = text->anchor == Anchor::end ? -width : text->anchor == Anchor::middle ? -width / 2 : 0;
        points.push_back(text->at + SheetVector{left, -cap_height_em(text->face) * text->height_mm});
        points.push_back(text->at + SheetVector{left + width, 0});
      }
    }
  return points;
}

bool labels_touch(const Figure& figure) {
  std::vector<Box> boxes;
  for (const Text& text : labels(figure)) {
    const double width = text_width_em(text.text, text.face) * text.height_mm, height = cap_height_em(text.face) * text.height_mm;
    const double middle = text.anchor == Anchor::end ? -width / 2 : 0;
    boxes.push_back({.middle = text.at + SheetVector{middle, -height / 2}, .half_width_mm = width / 2, .half_height_mm = height / 2});
  }
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (overlap(boxes[i], boxes[j])) return true;
  return false;
}

}  // namespace

TEST_CASE("heading goes across from 000 to 360, deviation up to the east") {
  const DeviationCurve curve = flat_curve(0, 0);
  for (const CurveFrame& frame : k_frames) {
    const CurvePlot plot = curve_plot(curve, frame);
    CHECK(plot.least_deg == -3);
    CHECK(plot.most_deg == 3);
    CHECK(plot.step_deg == 1);
    CHECK(near(plot.at(0, 3), {plot.rect.left_mm, plot.rect.top_mm}));
    CHECK(near(plot.at(360, -3), {plot.rect.right_mm, plot.rect.bottom_mm}));
    CHECK(near(plot.at(90, 0), {plot.rect.left_mm + plot.rect.width_mm() / 4, (plot.rect.top_mm + plot.rect.bottom_mm) / 2}));
    CHECK(plot.at(10, 1).y_mm < plot.at(10, -1).y_mm);
  }
}

TEST_CASE("the curve goes through the card's degrees and comes round to 360") {
  DeviationCurve curve;
  for (int degree = 0; degree < 360; ++degree) curve.by_degree[static_cast<std::size_t>(degree)] = CurvePoint{5 * std::sin(degree * 3.14159265358979 / 180) + 1, 0.5};
  for (const CurveFrame& frame : k_frames) {
    const Figure figure = deviation_curve(curve, frame);
    const CurvePlot plot = curve_plot(curve, frame);
    REQUIRE(curves(figure).size() == 1);
    const std::vector<SheetPoint> points = curves(figure)[0].points;
    REQUIRE(points.size() == 361);
    for (int degree = 0; degree <= 360; ++degree) CHECK(near(points[static_cast<std::size_t>(degree)], plot.at(degree, curve.by_degree[static_cast<std::size_t>(degree % 360)]->deviation_deg)));
    // The band's two edges lie one standard deviation off.
    const std::vector<Path> edges = all<Path>(figure, Layer::edge_fill);
    REQUIRE(edges.size() == 2);
    CHECK(near(edges[0].points[90], plot.at(90, 6.5)));
    CHECK(near(edges[1].points[90], plot.at(90, 5.5)));
  }
}

TEST_CASE("a gap is left open, in the curve, in its band and in the hatching") {
  DeviationCurve curve = flat_curve(2, 1);
  for (int degree = 100; degree <= 200; ++degree) curve.by_degree[static_cast<std::size_t>(degree)].reset();
  const CurvePlot plot = curve_plot(curve, k_panel_curve);
  const Figure figure = deviation_curve(curve, k_panel_curve);
  const std::vector<Path> pieces = curves(figure);
  REQUIRE(pieces.size() == 2);
  CHECK(near(pieces[0].points.back(), plot.at(99, 2)));
  CHECK(near(pieces[1].points.front(), plot.at(201, 2)));
  CHECK(all<Path>(figure, Layer::edge_fill).size() == 4);
  for (const Segments& hatch : all<Segments>(figure, Layer::edge_fill))
    for (const SheetPoint end : hatch.ends) CHECK_FALSE((end.x_mm > plot.at(99, 0).x_mm + 1e-9 && end.x_mm < plot.at(201, 0).x_mm - 1e-9));
}

TEST_CASE("the hatching fills the band and stays in it") {
  DeviationCurve curve;
  for (int degree = 0; degree < 360; ++degree) curve.by_degree[static_cast<std::size_t>(degree)] = CurvePoint{14 * std::cos(degree * 3.14159265358979 / 180), 1 + degree / 120.0};
  for (const CurveFrame& frame : k_frames) {
    const CurvePlot plot = curve_plot(curve, frame);
    const std::vector<Segments> hatch = all<Segments>(deviation_curve(curve, frame), Layer::edge_fill);
    REQUIRE(hatch.size() == 1);
    REQUIRE(hatch[0].ends.size() % 2 == 0);
    double length = 0;
    for (std::size_t i = 0; i < hatch[0].ends.size(); i += 2) {
      const SheetPoint from = hatch[0].ends[i], to = hatch[0].ends[i + 1];
      length += distance_mm(from, to);
      const SheetPoint middle = midpoint(from, to);
      const double heading_deg = 360 * (middle.x_mm - plot.rect.left_mm) / plot.rect.width_mm();
      const double deviation_deg = plot.most_deg - (plot.most_deg - plot.least_deg) * (middle.y_mm - plot.rect.top_mm) / plot.rect.height_mm();
      // A degree's share of the slopes of curve and band: from one degree to the next both are straight.
      CHECK(std::abs(deviation_deg - 14 * std::cos(heading_deg * 3.14159265358979 / 180)) <= 1 + heading_deg / 120 + 0.02);
    }
    // Parallel lines fill an area with its size over their distance: spacing down the paper is 0.75 em, across it / sqrt 2.
    const double area = plot.rect.width_mm() * plot.rect.height_mm() * 2 * 2.5 / (plot.most_deg - plot.least_deg);
    CHECK(std::abs(length - area / (0.75 * frame.text / std::sqrt(2.0))) <= 0.05 * length);  // the ends of a few lines
  }
}

TEST_CASE("each reading stands at its place, told from the others by its form") {
  DeviationCurve curve = flat_curve(1, 0.4);
  curve.readings = {{CompassDirection(45), {2}, ReadingStanding::counted}, {CompassDirection(135), {-1}, ReadingStanding::left_out}, {CompassDirection(225), {4}, ReadingStanding::does_not_belong}};
  const CurvePlot plot = curve_plot(curve, k_panel_curve);
  const Figure figure = deviation_curve(curve, k_panel_curve);
  const std::vector<Circle> rings = all<Circle>(figure, Layer::marks);
  REQUIRE(rings.size() == 1);
  CHECK(near(rings[0].centre, plot.at(45, 2)));
  const std::vector<Segments> crosses = all<Segments>(figure, Layer::marks);
  REQUIRE(crosses.size() == 1);
  CHECK(near(midpoint(crosses[0].ends[0], crosses[0].ends[1]), plot.at(135, -1)));
  const std::vector<Path> paths = all<Path>(figure, Layer::marks);
  REQUIRE(paths.size() == 2);  // stalk and diamond
  CHECK(near(paths[0].points.front(), plot.at(225, 1)));
  CHECK(near(paths[0].points.back(), plot.at(225, 4)));
  CHECK(paths[0].dash.off_mm > 0);
  CHECK(paths[1].closed);
  CHECK(near(midpoint(paths[1].points[0], paths[1].points[2]), plot.at(225, 4)));
}

TEST_CASE("the scale fits what counts, up to 60 degrees; what is left out or beyond stands at the edge") {
  DeviationCurve curve = flat_curve(0, 0);
  curve.readings = {{CompassDirection(10), {-60}, ReadingStanding::counted}};
  for (const CurveFrame& frame : k_frames) {
    const CurvePlot wide = curve_plot(curve, frame);
    CHECK(wide.least_deg == -60);
    CHECK(wide.most_deg <= 20);
    CHECK(std::fmod(60, wide.step_deg) == 0);
    CHECK(near(all<Circle>(deviation_curve(curve, frame), Layer::marks)[0].centre, wide.at(10, -60)));
  }
  curve.readings = {{CompassDirection(10), {20}, ReadingStanding::left_out}, {CompassDirection(100), {-178}, ReadingStanding::does_not_belong}};
  const CurvePlot plot = curve_plot(curve, k_panel_curve);
  CHECK(plot.most_deg == 3);
  CHECK(plot.least_deg == -3);
  const std::vector<Path> paths = all<Path>(deviation_curve(curve, k_panel_curve), Layer::marks);
  REQUIRE(paths.size() == 3);  // two arrowheads and a diamond; no stalk to what is not there
  CHECK(near(paths[0].points[1], plot.at(10, 3)));
  CHECK(near(paths[1].points[1], plot.at(100, -3)));
  for (const SheetPoint point : paths[2].points) CHECK(inside(plot.rect, point));

  // A card of the steepest deviations with a band of any width stays in the plot.
  DeviationCurve steep = flat_curve(59, 30);
  const CurvePlot held = curve_plot(steep, k_panel_curve);
  CHECK(held.most_deg == 60);
  for (const Path& edge : all<Path>(deviation_curve(steep, k_panel_curve), Layer::edge_fill))
    for (const SheetPoint point : edge.points) CHECK(inside(held.rect, point));
}

TEST_CASE("labels are whole degrees and headings; they and all else keep inside the drawing and apart") {
  for (const CurveFrame& frame : k_frames)
    for (const double deviation_deg : {0.0, 2.6, -4.0, 7.9, -12.0, 25.0, 59.0})
      for (const double sd_deg : {0.0, 0.5, 4.0, 50.0}) {
        CAPTURE(deviation_deg);
        CAPTURE(sd_deg);
        DeviationCurve curve = flat_curve(deviation_deg, sd_deg);
        curve.readings = {{CompassDirection(0), {deviation_deg}, ReadingStanding::counted}, {CompassDirection(359.9), {170}, ReadingStanding::does_not_belong}};
        const Figure figure = deviation_curve(curve, frame);
        const SheetRect whole{0, 0, frame.width, frame.height};
        for (const SheetPoint point : reach(figure)) CHECK(inside(whole, point));
        CHECK_FALSE(labels_touch(figure));
        for (const char* label : {"000", "045", "090", "315", "N", "NE", "S", "0°"}) CHECK(has_label(figure, label));
        for (const Text& label : labels(figure)) CHECK(label.text.find('.') == std::string::npos);
      }
  CHECK(has_label(deviation_curve(flat_curve(3, 0), k_panel_curve), "3°E"));
  CHECK(has_label(deviation_curve(flat_curve(-3, 0), k_panel_curve), "3°W"));
}

TEST_CASE("with nothing to show the axes stand alone") {
  const Figure figure = deviation_curve({}, k_panel_curve);
  CHECK(curves(figure).empty());
  CHECK(figure.on(Layer::edge_fill).empty());
  CHECK(figure.on(Layer::marks).empty());
  CHECK(has_label(figure, "3°E"));
}

TEST_CASE("of a fit: its curve and its readings, with the band as wide as a standard deviation") {
  std::vector<DeviationReading> readings;
  for (int i = 0; i < 12; ++i) readings.push_back({CompassDirection(30.0 * i), {deviation_by({1, 4, -3, 1, 0.5}, CompassDirection(30.0 * i)).deg + (i % 2 == 0 ? 0.3 : -0.2)}});
  readings[7].deviation.deg += 9;
  const Result<SwingFit> fit = fit_swing(readings, {});
  REQUIRE(fit.ok());
  const DeviationReading left_out{CompassDirection(15), {30}};
  const DeviationCurve curve = curve_of(*fit, readings, std::span(&left_out, 1));
  REQUIRE(curve.readings.size() == 13);
  for (std::size_t i = 0; i < 12; ++i) {
    CHECK(curve.readings[i].deviation == readings[i].deviation);
    CHECK(curve.readings[i].standing == (i == 7 ? ReadingStanding::does_not_belong : ReadingStanding::counted));
  }
  CHECK(curve.readings[12].standing == ReadingStanding::left_out);
  for (const int degree : {0, 77, 359}) {
    const std::optional<CurvePoint>& point = curve.by_degree[static_cast<std::size_t>(degree)];
    REQUIRE(point.has_value());
    CHECK(point->deviation_deg == fit->at(CompassDirection(degree)).deg);
    CHECK(point->sd_deg == fit->one_sigma_factor() * fit->sd_at_deg(CompassDirection(degree)));
  }
}

TEST_CASE("of a swing as it was noted: rows that tell nothing are no readings") {
  Swing swing{.method = SwingMethod::known_object, .object_deg = 100, .rows = eight_headings()};
  for (SwingRow& row : swing.rows) row.read_deg = 98;
  swing.rows[3].left_out = true;
  swing.rows[5].read_deg.reset();
  const Result<SwingWorked> worked = work_out(swing);
  REQUIRE(worked.ok());
  const DeviationCurve curve = curve_of(swing, *worked);
  REQUIRE(curve.readings.size() == 7);
  for (const CurveReading& reading : curve.readings) {
    CHECK(reading.deviation.deg == 2);
    CHECK((reading.standing == ReadingStanding::left_out) == (reading.heading == CompassDirection(135)));
    CHECK(reading.heading != CompassDirection(225));
  }
}

TEST_CASE("of a kept card: straight lines between its points, no band where its worth is not known") {
  KeptCard card{.boat = "Small Hours", .compass = "steering compass", .source = CardSource::typed, .points = {{0, 2, 0}, {60, -4, 0}, {120, 0, 0}}};
  const DeviationCurve typed = curve_of(card);
  CHECK(typed.by_degree[30]->deviation_deg == -1);
  CHECK(typed.by_degree[60]->deviation_deg == -4);
  CHECK(typed.by_degree[60]->sd_deg == 0);
  CHECK_FALSE(typed.by_degree[200].has_value());  // over a quarter of the circle from point to point
  CHECK(typed.readings.empty());
  CHECK(deviation_curve(typed, k_panel_curve).on(Layer::edge_fill).empty());
  for (KeptCardPoint& point : card.points) point.sd_deg = 1 + point.heading_deg / 60;
  CHECK(std::abs(curve_of(card).by_degree[30]->sd_deg - 1.5) <= 1e-12);
  CHECK(deviation_curve(curve_of(card), k_panel_curve).on(Layer::edge_fill).size() == 3);
}
