#include "core/figure/passage_figure.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/directions/direction_figures.h"
#include "core/figure/labels.h"
#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr double k_slant_deg = 40;        // of a time to the course line it stands on
constexpr double k_least_slant_deg = 15;  // and to the level
constexpr double k_gap_em = 0.35;
constexpr double k_room_em = 1.8;       // between two lines, that a label between them takes
constexpr double k_most_of_line = 0.96;  // that its label may take

/// Half the side of what a position's sign covers.
double sign_reach_mm(const Legibility& legibility) { return measure_mm(1.9, 7, legibility); }

Box around(SheetPoint at, double half_mm) { return {.middle = at, .half_width_mm = half_mm, .half_height_mm = half_mm}; }

class PassageDrawing {
 public:
  PassageDrawing(Figure& figure, LabelPlacer& placer, SignSet set, const Legibility& legibility)
      : lines_(figure.on(Layer::legs)), signs_(figure.on(Layer::marks)), placer_(placer), set_(set), legibility_(legibility) {}

  void add(const PlottedPassage& plot) {
    for (const std::vector<SheetPoint>& track : plot.water_tracks) {
      line(track, Ink::blue);
      // Between positions, where there is most room.
      std::size_t longest = 1;
      for (std::size_t i = 2; i < track.size(); ++i)
        if (distance_mm(track[i - 1], track[i]) > distance_mm(track[longest - 1], track[longest])) longest = i;
      heads(track[longest - 1], track[longest], 0.5, 1, Ink::blue);
    }
    for (const std::vector<SheetPoint>& bow : plot.bows) line(bow, Ink::ink);
    for (const auto& [from, to] : plot.ground_tracks) heads(from, to, 0.5, 2, Ink::ink);
    for (const LaidTriangle& each : plot.triangles) {
      line({each.start, each.stream_end}, Ink::blue);
      line({each.stream_end, each.meets}, Ink::blue);
      heads(each.start, each.stream_end, 1, 3, Ink::blue);
      heads(each.stream_end, each.meets, 0.5, 1, Ink::blue);
      heads(each.start, each.meets, 0.5, 2, Ink::ink);
    }
    for (const PlottedPosition& each : plot.positions) {
      add_position_sign(signs_, each.sign, each.at, each.track_deg, set_, legibility_);
      placer_.block(around(each.at, sign_reach_mm(legibility_)));
    }
  }

 private:
  void line(std::vector<SheetPoint> points, Ink ink) {
    const double weight = weight_mm(Stroke::mark, legibility_);
    for (std::size_t i = 1; i < points.size(); ++i) {
      const SheetVector run = points[i] - points[i - 1];
      placer_.discourage({.middle = midpoint(points[i - 1], points[i]), .half_width_mm = length_mm(run) / 2, .half_height_mm = weight, .turn_deg = direction_deg(run) - 90});
    }
    lines_.push_back(Path{.points = std::move(points), .stroke = ink, .weight_mm = weight});
  }

  /// Their point at a part of the way. American schools tell lines apart by what is written on them.
  void heads(SheetPoint from, SheetPoint to, double part, int count, Ink ink) {
    if (set_ == SignSet::b) return;
    const double length = distance_mm(from, to), room = heads_length_mm(count, legibility_);
    // Whole on the line, and about that part of the way.
    const double point_mm = std::min(length, std::max(part * length + (part < 1 ? room / 2 : 0), room));
    add_heads(lines_, from + (length > 0 ? point_mm / length : 0) * (to - from), direction_deg(to - from), count, ink, legibility_, length);
  }

  std::vector<Shape>& lines_;
  std::vector<Shape>& signs_;
  LabelPlacer& placer_;
  SignSet set_;
  const Legibility& legibility_;
};

class PassageLabels {
 public:
  PassageLabels(Figure& figure, LabelPlacer& placer, SignSet set, Rounding rounding, const Legibility& legibility)
      : figure_(figure), placer_(placer), set_(set), rounding_(rounding), legibility_(legibility) {}

  void add(const PlottedPassage& plot) {
    if (const std::optional<double> height = height_mm(Lettering::course, legibility_))
      for (const LaidTriangle& each : plot.triangles) add_triangle(each, *height);
    const std::optional<double> height = height_mm(Lettering::name, legibility_);
    if (!height) return;
    // Estimated positions are what one steers by: theirs first.
    for (const PlotSign sign : {PlotSign::estimated_position, PlotSign::dead_reckoning})
      for (const PlottedPosition& each : plot.positions)
        if (each.sign == sign) add_time(each, *height);
  }

 private:
  std::string direction(double deg) const { return direction_figures(deg, rounding_); }
  Text text(std::string words, double height) const { return {.text = std::move(words), .height_mm = height, .ink = Ink::blue}; }

  void add_triangle(const LaidTriangle& each, double height) {
    const double weight = weight_mm(Stroke::mark, legibility_);
    const std::string run = print_fixed(each.water_nm(), 1) + " nm in " + laid_off_for(each.minutes);
    // Outside the triangle, which lies on the ground track's side of the water track.
    const SheetVector up = towards(upright_turn_deg(direction_deg(each.meets - each.stream_end)));
    const bool above = dot(up, each.stream_end - each.start) >= 0;
    const auto along_water = [&](bool on_top, std::string words) {
      return add_label_along(figure_, placer_, each.stream_end, each.meets, weight, on_top, text(std::move(words), height), k_most_of_line);
    };
    const auto along_either = [&](const std::string& words) { return along_water(above, words) || along_water(!above, words); };
    const std::string course = direction(each.shown_water_track_deg);
    if (set_ == SignSet::b) {
      // Course above, speed below, where the triangle leaves room between its lines.
      const SheetVector ground = each.meets - each.start, middle = midpoint(each.stream_end, each.meets) - each.start;
      const double apart_mm = std::abs(ground.x_mm * middle.y_mm - ground.y_mm * middle.x_mm) / std::max(length_mm(ground), 1e-9);
      const std::string speed = "S " + print_fixed(each.speed_kn, 1);
      if (apart_mm > k_room_em * height) {
        along_water(true, "C " + course);
        along_water(false, speed);
      } else if (!along_either("C " + course + "  " + speed)) {
        along_either("C " + course);
        along_either(speed);
      }
    } else if (!along_either(course + "°T  " + run)) {
      along_either(course + "°T");
      along_either(run);
    }
    add_stream(each, height);
  }

  /// On its line where that is long enough, else beside it.
  void add_stream(const LaidTriangle& each, double height) {
    const double weight = weight_mm(Stroke::mark, legibility_);
    const std::string set = direction(each.stream.set.deg()), drift = print_fixed(each.stream.drift_kn, 1);
    const Text label = text(set_ == SignSet::b ? "set " + set + " drift " + drift : set + "°T " + drift + " kn", height);
    if (add_label_along(figure_, placer_, each.start, each.stream_end, weight, true, label, k_most_of_line)) return;
    const SheetVector half = 0.5 * (each.stream_end - each.start);
    add_label_beside(figure_, placer_, {.middle = each.start + half, .half_width_mm = std::abs(half.x_mm) + weight, .half_height_mm = std::abs(half.y_mm) + weight}, label);
  }

  void add_time(const PlottedPosition& each, double height) {
    const bool is_estimated = each.sign == PlotSign::estimated_position;
    Text label{.text = is_estimated ? each.time + " EP" : each.time, .height_mm = height};
    if (set_ == SignSet::b && !is_estimated) add_slanted(each, std::move(label));
    else add_label_beside(figure_, placer_, around(each.at, sign_reach_mm(legibility_)), std::move(label), false);
  }

  /// At an angle to the course line, to any of its four quarters.
  void add_slanted(const PlottedPosition& each, Text label) {
    const double height = label.height_mm, half_w = text_width_em(label.text, label.face) * height / 2;
    const double out_mm = sign_reach_mm(legibility_) + k_gap_em * height + half_w;
    constexpr std::array<double, 4> k_quarters = {-k_slant_deg, k_slant_deg, 180 - k_slant_deg, 180 + k_slant_deg};
    std::vector<Box> places;
    for (const double quarter : k_quarters) {
      const double direction = each.track_deg + quarter, turn = upright_turn_deg(direction);
      // Level times are those of fixes.
      if (std::abs(turn) >= k_least_slant_deg) places.push_back({.middle = each.at + out_mm * towards(direction), .half_width_mm = half_w, .half_height_mm = height * 0.45, .turn_deg = turn});
    }
    const std::optional<std::size_t> place = placer_.place(places);
    if (!place) return;
    label.turn_deg = places[*place].turn_deg;
    label.at = places[*place].middle - (cap_height_em(label.face) * height / 2) * towards(label.turn_deg);
    label.anchor = Anchor::middle;
    label.halo = true;
    figure_.on(Layer::labels).push_back(std::move(label));
  }

  Figure& figure_;
  LabelPlacer& placer_;
  SignSet set_;
  Rounding rounding_;
  const Legibility& legibility_;
};

}  // namespace

void add_passage(Figure& figure, LabelPlacer& placer, const PlottedPassage& plot, SignSet set, const Legibility& legibility) {
  PassageDrawing(figure, placer, set, legibility).add(plot);
}

void add_passage_labels(Figure& figure, LabelPlacer& placer, const PlottedPassage& plot, SignSet set, Rounding rounding, const Legibility& legibility) {
  PassageLabels(figure, placer, set, rounding, legibility).add(plot);
}

std::string laid_off_for(int minutes) {
  if (minutes == 30) return "½ h";
  return minutes % 60 == 0 ? std::to_string(minutes / 60) + " h" : std::to_string(minutes) + " min";
}

}  // namespace fogsheet
