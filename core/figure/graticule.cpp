#include "core/figure/graticule.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

// Measures on paper, mm.
constexpr double k_strip_mm = 1.5;          // the chequered strip outside the neat line
constexpr double k_figure_gap_mm = 1.0;     // from the strip to the figures
constexpr double k_whole_tick_mm = 2.4, k_half_tick_mm = 1.7, k_tick_mm = 1.1;
constexpr double k_cross_tick_mm = 0.7;     // half a tick on a graticule line

struct ScaleRow {
  double up_to_scale;
  Graduation graduation;
};

// Chosen so that a bar is 6 to 37 mm and a line of the graticule comes each 60 to 190 mm.
constexpr ScaleRow k_graduations[] = {
    {30'000, {.tick_arcmin = 0.1, .bar_arcmin = 0.5, .label_arcmin = 0.5, .major_arcmin = 1}},
    {60'000, {.tick_arcmin = 0.1, .bar_arcmin = 0.5, .label_arcmin = 1, .major_arcmin = 2}},
    {160'000, {.tick_arcmin = 0.1, .bar_arcmin = 1, .label_arcmin = 1, .major_arcmin = 5}},
    {320'000, {.tick_arcmin = 0.2, .bar_arcmin = 1, .label_arcmin = 5, .major_arcmin = 10}},
    {640'000, {.tick_arcmin = 1, .bar_arcmin = 5, .label_arcmin = 5, .major_arcmin = 20}},
    {1e9, {.tick_arcmin = 1, .bar_arcmin = 5, .label_arcmin = 10, .major_arcmin = 30}},
};

/// The whole multiples k of a step for which lo <= k step <= hi.
struct Multiples {
  long first;
  long last;
};
Multiples multiples(double lo_arcmin, double hi_arcmin, double step_arcmin) {
  constexpr double k_slack = 1e-7;  // a limit that lies on a graduation keeps it
  return {static_cast<long>(std::ceil(lo_arcmin / step_arcmin - k_slack)), static_cast<long>(std::floor(hi_arcmin / step_arcmin + k_slack))};
}

/// One axis of the sheet: where a latitude or longitude in minutes lies across the paper, and what its figures look like.
struct Axis {
  const Projection& projection;
  bool is_latitude;

  double at_mm(double arcmin) const { return is_latitude ? projection.y_mm(arcmin / 60) : projection.x_mm(arcmin / 60); }
  double low_arcmin() const { return 60 * (is_latitude ? projection.limits().south_deg : projection.limits().west_deg); }
  double high_arcmin() const { return 60 * (is_latitude ? projection.limits().north_deg : projection.limits().east_deg); }

  /// Minutes shown without sign; longitudes past 180 count back, as charts have them.
  double shown_arcmin(double arcmin) const {
    if (is_latitude) return std::abs(arcmin);
    return std::abs(reduce_longitude_deg(arcmin / 60) * 60);
  }

  std::string figures(double arcmin, bool major, double step_arcmin) const {
    const double shown = std::round(shown_arcmin(arcmin) * 10) / 10;
    const int degrees = static_cast<int>(std::floor(shown / 60 + 1e-9));
    const double minutes = shown - 60 * degrees;
    char text[32];
    const int decimals = step_arcmin < 1 ? 1 : 0;
    char minute_text[16];
    std::snprintf(minute_text, sizeof minute_text, "%0*d", 2, static_cast<int>(minutes + 1e-6));
    std::string minute = minute_text;
    if (decimals) minute += "." + std::to_string(static_cast<int>(std::lround(minutes * 10)) % 10);
    if (!major) return minute + "′";
    std::snprintf(text, sizeof text, "%0*d°", is_latitude ? 2 : 3, degrees);
    return text + minute + "′";
  }
};

void add_axis_lines(Figure& figure, const Axis& axis, const Axis& other, const Graduation& graduation, const Legibility& legibility) {
  const SheetRect frame = axis.projection.neat_line();
  Segments lines{.stroke = Ink::graticule, .weight_mm = weight_mm(Stroke::graticule_major, legibility)};
  Segments ticks{.stroke = Ink::graticule, .weight_mm = weight_mm(Stroke::graticule_minor, legibility)};
  const Multiples majors = multiples(axis.low_arcmin(), axis.high_arcmin(), graduation.major_arcmin);
  const Multiples bars = multiples(other.low_arcmin(), other.high_arcmin(), graduation.bar_arcmin);
  for (long major = majors.first; major <= majors.last; ++major) {
    const double at = axis.at_mm(static_cast<double>(major) * graduation.major_arcmin);
    if (axis.is_latitude) lines.ends.insert(lines.ends.end(), {{frame.left_mm, at}, {frame.right_mm, at}});
    else lines.ends.insert(lines.ends.end(), {{at, frame.top_mm}, {at, frame.bottom_mm}});
    for (long bar = bars.first; bar <= bars.last; ++bar) {
      const double across = other.at_mm(static_cast<double>(bar) * graduation.bar_arcmin);
      if (axis.is_latitude) ticks.ends.insert(ticks.ends.end(), {{across, at - k_cross_tick_mm}, {across, at + k_cross_tick_mm}});
      else ticks.ends.insert(ticks.ends.end(), {{at - k_cross_tick_mm, across}, {at + k_cross_tick_mm, across}});
    }
  }
  figure.on(Layer::graticule).push_back(std::move(lines));
  figure.on(Layer::graticule).push_back(std::move(ticks));
}

void add_rectangle(std::vector<Shape>& layer, SheetRect r, Ink fill) {
  layer.push_back(Path{.points = {{r.left_mm, r.top_mm}, {r.right_mm, r.top_mm}, {r.right_mm, r.bottom_mm}, {r.left_mm, r.bottom_mm}},
                       .closed = true, .stroke = Ink::none, .fill = fill});
}

void add_frame(std::vector<Shape>& layer, SheetRect r, double outward_mm, double line_mm) {
  const double o = outward_mm;
  layer.push_back(Path{.points = {{r.left_mm - o, r.top_mm - o}, {r.right_mm + o, r.top_mm - o}, {r.right_mm + o, r.bottom_mm + o}, {r.left_mm - o, r.bottom_mm + o}},
                       .closed = true, .stroke = Ink::ink, .weight_mm = line_mm});
}

/// Alternate bars of the strip, both sides of the axis.
void add_bars(std::vector<Shape>& layer, const Axis& axis, const Graduation& graduation) {
  const SheetRect frame = axis.projection.neat_line();
  const Multiples bars = multiples(axis.low_arcmin(), axis.high_arcmin(), graduation.bar_arcmin);
  for (long bar = bars.first - 1; bar <= bars.last; ++bar) {
    if (bar % 2 == 0) continue;
    const double from = axis.at_mm(std::max(axis.low_arcmin(), static_cast<double>(bar) * graduation.bar_arcmin));
    const double to = axis.at_mm(std::min(axis.high_arcmin(), static_cast<double>(bar + 1) * graduation.bar_arcmin));
    const double low = std::min(from, to), high = std::max(from, to);
    if (axis.is_latitude) {
      add_rectangle(layer, {frame.left_mm - k_strip_mm, low, frame.left_mm, high}, Ink::bar);
      add_rectangle(layer, {frame.right_mm, low, frame.right_mm + k_strip_mm, high}, Ink::bar);
    } else {
      add_rectangle(layer, {low, frame.top_mm - k_strip_mm, high, frame.top_mm}, Ink::bar);
      add_rectangle(layer, {low, frame.bottom_mm, high, frame.bottom_mm + k_strip_mm}, Ink::bar);
    }
  }
}

/// Graduations inward from the neat line. Those that would stand closer than can be seen are left out, finest first.
void add_ticks(std::vector<Shape>& layer, const Axis& axis, const Graduation& graduation, const Legibility& legibility) {
  const SheetRect frame = axis.projection.neat_line();
  const double step = graduation.tick_arcmin;
  const long to_bar = std::lround(graduation.bar_arcmin / step);
  const long to_half = to_bar % 2 == 0 ? to_bar / 2 : to_bar;
  const double gap_mm = std::abs(axis.at_mm(axis.low_arcmin() + step) - axis.at_mm(axis.low_arcmin()));
  Segments fine{.stroke = Ink::ink, .weight_mm = weight_mm(Stroke::ring_1_deg, legibility)};
  Segments whole{.stroke = Ink::ink, .weight_mm = weight_mm(Stroke::ring_10_deg, legibility)};
  const Multiples ticks = multiples(axis.low_arcmin(), axis.high_arcmin(), step);
  for (long tick = ticks.first; tick <= ticks.last; ++tick) {
    const bool is_whole = tick % to_bar == 0, is_half = tick % to_half == 0;
    const double spaced_mm = gap_mm * static_cast<double>(is_whole ? to_bar : is_half ? to_half : 1);
    if (spaced_mm < legibility.least_gap_mm) continue;
    const double length = is_whole ? k_whole_tick_mm : is_half ? k_half_tick_mm : k_tick_mm;
    const double at = axis.at_mm(static_cast<double>(tick) * step);
    std::vector<SheetPoint>& ends = (is_whole ? whole : fine).ends;
    if (axis.is_latitude)
      ends.insert(ends.end(), {{frame.left_mm, at}, {frame.left_mm + length, at}, {frame.right_mm, at}, {frame.right_mm - length, at}});
    else
      ends.insert(ends.end(), {{at, frame.top_mm}, {at, frame.top_mm + length}, {at, frame.bottom_mm}, {at, frame.bottom_mm - length}});
  }
  layer.push_back(std::move(fine));
  layer.push_back(std::move(whole));
}

/// Figures at both sides of an axis: degrees and minutes first, then minutes where they don't touch them.
void add_figures(std::vector<Shape>& layer, const Axis& axis, const Graduation& graduation, const Legibility& legibility) {
  struct Taken {
    double low, high;
  };
  std::vector<Taken> taken;
  const SheetRect frame = axis.projection.neat_line();
  const double least_mm = axis.is_latitude ? frame.top_mm : frame.left_mm, most_mm = axis.is_latitude ? frame.bottom_mm : frame.right_mm;
  const double off_mm = k_strip_mm + k_figure_gap_mm;
  for (const bool major : {true, false}) {
    const std::optional<double> height = height_mm(major ? Lettering::border_major : Lettering::border_minor, legibility);
    if (!height) continue;
    const Face face = major ? Face::bold : Face::regular;
    const double step = major ? graduation.major_arcmin : graduation.label_arcmin;
    const Multiples steps = multiples(axis.low_arcmin(), axis.high_arcmin(), step);
    for (long k = steps.first; k <= steps.last; ++k) {
      const double arcmin = static_cast<double>(k) * step;
      const std::string text = axis.figures(arcmin, major, graduation.label_arcmin < 1 && !major ? graduation.label_arcmin : 1);
      const double at = axis.at_mm(arcmin);
      const double half = axis.is_latitude ? *height * 0.55 : text_width_em(text, face) * *height / 2;
      const double gap = *height * 0.45;
      if (at - half < least_mm || at + half > most_mm) continue;
      if (std::any_of(taken.begin(), taken.end(), [&](const Taken& t) { return at - half - gap < t.high && at + half + gap > t.low; })) continue;
      taken.push_back({at - half, at + half});
      const double cap = cap_height_em(face) * *height;
      Text figure{.text = text, .height_mm = *height, .face = face, .ink = major ? Ink::ink : Ink::soft};
      const auto add = [&](SheetPoint point, Anchor anchor) {
        figure.at = point;
        figure.anchor = anchor;
        layer.push_back(figure);
      };
      if (axis.is_latitude) {
        add({frame.left_mm - off_mm, at + cap / 2}, Anchor::end);
        add({frame.right_mm + off_mm, at + cap / 2}, Anchor::start);
      } else {
        add({at, frame.top_mm - off_mm}, Anchor::middle);
        add({at, frame.bottom_mm + off_mm + cap}, Anchor::middle);
      }
    }
  }
}

}  // namespace

Graduation graduation_for(double scale) {
  for (const ScaleRow& row : k_graduations)
    if (scale <= row.up_to_scale) return row.graduation;
  return std::end(k_graduations)[-1].graduation;
}

void add_graticule(Figure& figure, const Projection& projection, const Graduation& graduation, const Legibility& legibility) {
  const Axis latitude{projection, true}, longitude{projection, false};
  add_axis_lines(figure, latitude, longitude, graduation, legibility);
  add_axis_lines(figure, longitude, latitude, graduation, legibility);
}

void add_border(Figure& figure, const Projection& projection, PaperSize paper, const Graduation& graduation, const Legibility& legibility) {
  std::vector<Shape>& layer = figure.on(Layer::border);
  const SheetRect frame = projection.neat_line();
  add_rectangle(layer, {0, 0, paper.width_mm, frame.top_mm}, Ink::paper);
  add_rectangle(layer, {0, frame.bottom_mm, paper.width_mm, paper.height_mm}, Ink::paper);
  add_rectangle(layer, {0, frame.top_mm, frame.left_mm, frame.bottom_mm}, Ink::paper);
  add_rectangle(layer, {frame.right_mm, frame.top_mm, paper.width_mm, frame.bottom_mm}, Ink::paper);
  for (const Axis axis : {Axis{projection, true}, Axis{projection, false}}) {
    add_bars(layer, axis, graduation);
    add_ticks(layer, axis, graduation, legibility);
    add_figures(layer, axis, graduation, legibility);
  }
  add_frame(layer, frame, 0, weight_mm(Stroke::neat_line, legibility));
  add_frame(layer, frame, k_strip_mm, weight_mm(Stroke::border, legibility) * 0.7);
}

}  // namespace fogsheet
