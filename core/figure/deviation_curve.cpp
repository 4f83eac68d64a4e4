#include "core/figure/deviation_curve.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/figure/text_metrics.h"

namespace fogsheet {
namespace {

constexpr int k_degrees = 360;

// Multiples of the text's height.
constexpr double k_label_gap = 0.4;       // between a label and the plot
constexpr double k_foot = 2.8;            // under the plot: figures and points of the compass
constexpr double k_head = 0.6;
constexpr double k_least_step = 1.5;      // between two labels
constexpr double k_hatch_spacing = 0.75;  // along a side of the paper
constexpr double k_sign_radius = 0.25;

// Multiples of the usual line.
constexpr double k_hairline = 0.6, k_curve_line = 1.7;

double bounded(double deg) { return std::clamp(deg, -k_most_curve_reach_deg, k_most_curve_reach_deg); }
bool is_shown(const CurvePoint& point) { return std::abs(point.deviation_deg) <= k_most_curve_reach_deg; }

/// The curve at a degree of [0, 360]: 360 is 0 again. None where it is not covered.
const CurvePoint* point_at(const DeviationCurve& curve, int degree) {
  const std::optional<CurvePoint>& point = curve.by_degree[static_cast<std::size_t>(degree % k_degrees)];
  return point && is_shown(*point) ? &*point : nullptr;
}

/// Calls `draw` with the first and the last degree of each stretch in which `is_in` holds; one alone is no stretch.
template <class IsIn, class DrawStretch>
void each_stretch(const IsIn& is_in, const DrawStretch& draw) {
  for (int first = 0; first <= k_degrees; ++first) {
    if (!is_in(first)) continue;
    int last = first;
    while (last < k_degrees && is_in(last + 1)) ++last;
    if (last > first) draw(first, last);
    first = last;
  }
}

class CurveDrawing {
 public:
  CurveDrawing(const DeviationCurve& curve, const CurveFrame& frame) : curve_(curve), frame_(frame), plot_(curve_plot(curve, frame)) {}

  Figure draw() {
    add_grid();
    add_labels();
    each_stretch([this](int degree) { const CurvePoint* point = point_at(curve_, degree); return point && point->sd_deg > 0; },
                 [this](int first, int last) { add_band(first, last); });
    each_stretch([this](int degree) { return point_at(curve_, degree) != nullptr; }, [this](int first, int last) { add_curve(first, last); });
    for (const CurveReading& reading : curve_.readings) add_reading(reading);
    return std::move(figure_);
  }

 private:
  void add_grid() {
    Segments lines{.stroke = Ink::graticule, .weight_mm = k_hairline * frame_.line}, ticks{.stroke = Ink::ink, .weight_mm = k_hairline * frame_.line};
    for (double deg = plot_.least_deg; deg <= plot_.most_deg; deg += plot_.step_deg) add_line(lines, plot_.at(0, deg), plot_.at(k_degrees, deg));
    for (int heading = 0; heading <= k_degrees; heading += 45) add_line(lines, plot_.at(heading, plot_.most_deg), plot_.at(heading, plot_.least_deg));
    const SheetVector half_tick{0, 0.22 * frame_.text};
    for (int heading = 0; heading <= k_degrees; heading += 15) add_line(ticks, plot_.at(heading, 0) - half_tick, plot_.at(heading, 0) + half_tick);
    Segments nought{.stroke = Ink::ink, .weight_mm = frame_.line};
    add_line(nought, plot_.at(0, 0), plot_.at(k_degrees, 0));
    for (Segments* each : {&lines, &ticks, &nought}) figure_.on(Layer::graticule).push_back(std::move(*each));
  }

  static void add_line(Segments& segments, SheetPoint from, SheetPoint to) { segments.ends.insert(segments.ends.end(), {from, to}); }

  void add_labels() {
    for (double deg = plot_.least_deg; deg <= plot_.most_deg; deg += plot_.step_deg) {
      const SheetPoint at = plot_.at(0, deg) + SheetVector{-k_label_gap * frame_.text, cap_height_em(Face::regular) / 2 * frame_.text};
      add_text(at, print_correction(deg, Rounding::whole_degrees), Face::regular, Anchor::end);
    }
    constexpr const char* k_points[] = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
    for (int i = 0; i <= 8; ++i) {
      const SheetPoint foot = plot_.at(45.0 * i, plot_.least_deg);
      const Face face = i % 2 == 0 ? Face::bold : Face::regular;
      add_text(foot + SheetVector{0, 1.45 * frame_.text}, direction_figures(45.0 * i, Rounding::whole_degrees), face, Anchor::middle);
      add_text(foot + SheetVector{0, 2.6 * frame_.text}, k_points[i % 8], face, Anchor::middle);
    }
  }

  void add_text(SheetPoint at, std::string text, Face face, Anchor anchor) {
    figure_.on(Layer::labels).push_back(Text{.at = at, .text = std::move(text), .height_mm = frame_.text, .face = face, .anchor = anchor});
  }

  SheetPoint edge(int degree, double sds) const {
    const CurvePoint& point = *point_at(curve_, degree);
    return plot_.at(degree, bounded(point.deviation_deg + sds * point.sd_deg));
  }

  void add_band(int first, int last) {
    Path upper{.stroke = Ink::doubt_line, .weight_mm = k_hairline * frame_.line}, lower = upper;
    for (int degree = first; degree <= last; ++degree) {
      upper.points.push_back(edge(degree, 1));
      lower.points.push_back(edge(degree, -1));
    }
    figure_.on(Layer::edge_fill).push_back(hatching(upper.points, lower.points));
    for (Path* each : {&upper, &lower}) figure_.on(Layer::edge_fill).push_back(std::move(*each));
  }

  /// Lines down to the right, counted from the paper's corner, each cut to where it lies between the two edges.
  Segments hatching(const std::vector<SheetPoint>& upper, const std::vector<SheetPoint>& lower) const {
    Segments hatch{.stroke = Ink::hatch, .weight_mm = k_hairline * frame_.line};
    const double spacing = k_hatch_spacing * frame_.text;
    const int from = static_cast<int>(std::floor((plot_.rect.top_mm - plot_.rect.right_mm) / spacing)), to = static_cast<int>(std::ceil((plot_.rect.bottom_mm - plot_.rect.left_mm) / spacing));
    for (int line = from; line <= to; ++line) {
      const auto height_at = [&](double x) { return x + line * spacing; };
      std::optional<SheetPoint> begun;
      for (std::size_t i = 0; i + 1 < upper.size(); ++i) {
        // How deep under the upper edge and how high over the lower one, at both ends of this degree; straight between them.
        const double left = height_at(upper[i].x_mm), right = height_at(upper[i + 1].x_mm);
        double enters = 0, leaves = 1;
        cut(left - upper[i].y_mm, right - upper[i + 1].y_mm, enters, leaves);
        cut(lower[i].y_mm - left, lower[i + 1].y_mm - right, enters, leaves);
        const auto along = [&](double part) { return SheetPoint{std::lerp(upper[i].x_mm, upper[i + 1].x_mm, part), std::lerp(left, right, part)}; };
        if (enters > leaves) {
          if (begun) add_line(hatch, *std::exchange(begun, std::nullopt), along(0));
          continue;
        }
        if (!begun) begun = along(enters);
        const bool ends_here = leaves < 1 || i + 2 == upper.size();
        if (ends_here) add_line(hatch, *std::exchange(begun, std::nullopt), along(leaves));
      }
    }
    return hatch;
  }

  /// Narrows [enters, leaves] to where a quantity that runs straight from `start` to `end` is not below nought.
  static void cut(double start, double end, double& enters, double& leaves) {
    if (start < 0 && end < 0) leaves = -1;
    else if (start < 0) enters = std::max(enters, start / (start - end));
    else if (end < 0) leaves = std::min(leaves, start / (start - end));
  }

  void add_curve(int first, int last) {
    Path path{.stroke = Ink::ink, .weight_mm = k_curve_line * frame_.line};
    for (int degree = first; degree <= last; ++degree) path.points.push_back(edge(degree, 0));
    figure_.on(Layer::legs).push_back(std::move(path));
  }

  void add_reading(const CurveReading& reading) {
    const double radius = k_sign_radius * frame_.text;
    const bool beyond = reading.deviation.deg < plot_.least_deg || reading.deviation.deg > plot_.most_deg;
    SheetPoint at = plot_.at(reading.heading.deg(), std::clamp(reading.deviation.deg, plot_.least_deg, plot_.most_deg));
    if (beyond) {
      const double outward = reading.deviation.deg > 0 ? -1 : 1;
      Path head{.points = {at + SheetVector{-radius, -outward * radius}, at, at + SheetVector{radius, -outward * radius}}, .weight_mm = frame_.line};
      figure_.on(Layer::marks).push_back(std::move(head));
      at = at + SheetVector{0, -outward * 3 * radius};
    } else if (reading.standing == ReadingStanding::does_not_belong) {
      add_stalk(reading.heading, at);
    }
    add_sign(reading.standing, at, radius);
  }

  /// From where the curve has a reading to where it is.
  void add_stalk(CompassDirection heading, SheetPoint at) {
    const CurvePoint* point = point_at(curve_, static_cast<int>(std::lround(heading.deg())));
    if (!point) return;
    const double dash = 0.25 * frame_.text;
    figure_.on(Layer::marks).push_back(Path{.points = {{at.x_mm, plot_.at(0, point->deviation_deg).y_mm}, at}, .stroke = Ink::danger, .weight_mm = frame_.line, .dash = {dash, dash}});
  }

  void add_sign(ReadingStanding standing, SheetPoint at, double radius) {
    std::vector<Shape>& layer = figure_.on(Layer::marks);
    switch (standing) {
      case ReadingStanding::counted: layer.push_back(Circle{.centre = at, .radius_mm = radius, .weight_mm = frame_.line, .fill = Ink::paper}); return;
      case ReadingStanding::left_out:
        layer.push_back(Segments{.ends = {at + SheetVector{-radius, -radius}, at + SheetVector{radius, radius}, at + SheetVector{-radius, radius}, at + SheetVector{radius, -radius}}, .weight_mm = frame_.line});
        return;
      case ReadingStanding::does_not_belong: {
        const double half = 1.6 * radius;
        layer.push_back(Path{.points = {at + SheetVector{0, -half}, at + SheetVector{half, 0}, at + SheetVector{0, half}, at + SheetVector{-half, 0}}, .closed = true, .stroke = Ink::danger, .weight_mm = 1.3 * frame_.line, .fill = Ink::paper});
        return;
      }
    }
  }

  const DeviationCurve& curve_;
  const CurveFrame& frame_;
  CurvePlot plot_;
  Figure figure_;
};

}  // namespace

DeviationCurve curve_of(const SwingFit& fit, std::span<const DeviationReading> counted, std::span<const DeviationReading> left_out) {
  DeviationCurve curve;
  for (int degree = 0; degree < k_degrees; ++degree) {
    const CompassDirection heading(degree);
    if (fit.covers(heading)) curve.by_degree[static_cast<std::size_t>(degree)] = {fit.at(heading).deg, fit.one_sigma_factor() * fit.sd_at_deg(heading)};
  }
  for (std::size_t i = 0; i < counted.size(); ++i)
    curve.readings.push_back({counted[i].heading, counted[i].deviation, fit.misfits[i].does_not_belong ? ReadingStanding::does_not_belong : ReadingStanding::counted});
  for (const DeviationReading& reading : left_out) curve.readings.push_back({reading.heading, reading.deviation, ReadingStanding::left_out});
  return curve;
}

DeviationCurve curve_of(const Swing& swing, const SwingWorked& worked) {
  std::vector<DeviationReading> counted, left_out;
  for (std::size_t i = 0; i < swing.rows.size(); ++i) {
    if (!worked.deviations[i]) continue;
    (swing.rows[i].left_out ? left_out : counted).push_back({CompassDirection(swing.rows[i].heading_deg), *worked.deviations[i]});
  }
  return curve_of(worked.fit, counted, left_out);
}

DeviationCurve curve_of(const KeptCard& kept) {
  DeviationCurve curve;
  const DeviationCard card = kept.card();
  const bool known = std::all_of(kept.points.begin(), kept.points.end(), [](const KeptCardPoint& point) { return point.sd_deg > 0; });
  for (int degree = 0; degree < k_degrees; ++degree) {
    const CompassDirection heading(degree);
    if (const std::optional<Deviation> there = card.at(heading)) curve.by_degree[static_cast<std::size_t>(degree)] = {there->deg, known ? deviation_sd_deg(kept, heading) : 0};
  }
  return curve;
}

SheetPoint CurvePlot::at(double heading_deg, double deviation_deg) const {
  return {rect.left_mm + rect.width_mm() * heading_deg / k_degrees, rect.bottom_mm - rect.height_mm() * (deviation_deg - least_deg) / (most_deg - least_deg)};
}

CurvePlot curve_plot(const DeviationCurve& curve, const CurveFrame& frame) {
  double least = -k_least_curve_reach_deg, most = k_least_curve_reach_deg;
  const auto hold = [&](double deg) {
    least = std::min(least, bounded(deg));
    most = std::max(most, bounded(deg));
  };
  for (const std::optional<CurvePoint>& point : curve.by_degree) {
    if (!point || !is_shown(*point)) continue;
    hold(point->deviation_deg - point->sd_deg);
    hold(point->deviation_deg + point->sd_deg);
  }
  for (const CurveReading& reading : curve.readings)
    if (reading.standing != ReadingStanding::left_out && std::abs(reading.deviation.deg) <= k_most_curve_reach_deg) hold(reading.deviation.deg);

  CurvePlot plot;
  plot.rect = {.top_mm = k_head * frame.text, .right_mm = frame.width - text_width_em("000", Face::bold) / 2 * frame.text, .bottom_mm = frame.height - k_foot * frame.text};
  for (const double step : {1, 2, 5, 10, 20}) {
    plot.step_deg = step;
    plot.least_deg = step * std::floor(least / step);
    plot.most_deg = step * std::ceil(most / step);
    if (plot.rect.height_mm() * step / (plot.most_deg - plot.least_deg) >= k_least_step * frame.text) break;
  }
  double widest = 0;
  for (double deg = plot.least_deg; deg <= plot.most_deg; deg += plot.step_deg) widest = std::max(widest, text_width_em(print_correction(deg, Rounding::whole_degrees), Face::regular));
  plot.rect.left_mm = (widest + k_label_gap) * frame.text;
  return plot;
}

Figure deviation_curve(const DeviationCurve& curve, const CurveFrame& frame) { return CurveDrawing(curve, frame).draw(); }

}  // namespace fogsheet
