#include "core/figure/legend_figure.h"

#include "core/figure/legibility.h"
#include "core/figure/mark_figure.h"
#include "core/figure/plot_signs.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr Legibility k_in_pixels = {.least_line_mm = 1, .least_text_mm = 10.5, .least_gap_mm = 2};
constexpr double k_left = 6, k_right = 74;  // of the sign's room
constexpr double k_words_at = 90;
constexpr double k_text_size = 14, k_note_size = 11;
constexpr double k_along_deg = 80;          // of the lines that signs lie on

class Legend {
 public:
  Legend(SignSet set) : set_(set) {}

  Figure made(const LegendWords& words) {
    for (int i = 0; i < k_legend_rows; ++i) {
      middle_ = {(k_left + k_right) / 2, (i + 0.5) * k_legend_row_height};
      add_sign(static_cast<LegendRow>(i));
      figure_.on(Layer::labels).push_back(Text{.at = {k_words_at, middle_.y_mm + 0.35 * k_text_size}, .text = words[static_cast<std::size_t>(i)], .height_mm = k_text_size});
    }
    return std::move(figure_);
  }

 private:
  std::vector<Shape>& signs() { return figure_.on(Layer::marks); }

  void mark(MarkKind kind, double down) { add_mark_sign(figure_, kind, {middle_.x_mm, middle_.y_mm + down}, 13, k_in_pixels); }

  SheetPoint start() const { return middle_ - 32 * towards(k_along_deg); }
  SheetPoint end() const { return middle_ + 32 * towards(k_along_deg); }

  void line(Ink ink, Stroke stroke, int heads) {
    signs().push_back(Path{.points = {start(), end()}, .stroke = ink, .weight_mm = weight_mm(stroke, k_in_pixels)});
    if (heads > 0) add_heads(signs(), end(), k_along_deg, heads, ink, k_in_pixels);
  }

  // American schools write on a line what the others tell by arrowheads.
  void note(const char* above, const char* below) {
    const SheetVector up = towards(k_along_deg - 90);
    const auto add = [&](const char* text, double off) {
      signs().push_back(Text{.at = middle_ + off * up, .text = text, .height_mm = k_note_size, .anchor = Anchor::middle, .turn_deg = k_along_deg - 90});
    };
    add(above, 4);
    add(below, -13);
  }

  void track(Ink ink, int heads, const char* above, const char* below) {
    line(ink, Stroke::mark, set_ == SignSet::a ? heads : 0);
    if (set_ == SignSet::b) note(above, below);
  }

  void position(PlotSign sign) {
    if (sign == PlotSign::fix) {
      const SheetVector a = 24 * towards(50), b = 24 * towards(120);
      for (const SheetVector v : {a, b}) signs().push_back(Path{.points = {middle_ - v, middle_ + v}, .stroke = Ink::blue, .weight_mm = weight_mm(Stroke::mark, k_in_pixels)});
    } else {
      line(Ink::blue, Stroke::mark, 0);
    }
    add_position_sign(signs(), sign, middle_, k_along_deg, set_, k_in_pixels);
  }

  void add_sign(LegendRow row) {
    switch (row) {
      case LegendRow::landmark: return mark(MarkKind::landmark, 6);
      case LegendRow::light: return mark(MarkKind::light, 6);
      case LegendRow::turn: return mark(MarkKind::turn, 0);
      case LegendRow::danger: return mark(MarkKind::danger, 0);
      case LegendRow::other: return mark(MarkKind::other, -3);
      case LegendRow::leg: return line(Ink::ink, Stroke::leg, 0);
      case LegendRow::position_line: return track(Ink::blue, 1, "0615", "047");
      case LegendRow::water_track: return track(Ink::blue, 1, "C 104", "S 5.0");
      case LegendRow::ground_track: return track(Ink::ink, 2, "TR 096", "SOG 5.2");
      case LegendRow::stream: return track(Ink::blue, 3, "set 352", "drift 0.7");
      case LegendRow::dead_reckoning: return position(PlotSign::dead_reckoning);
      case LegendRow::estimated_position: return position(PlotSign::estimated_position);
      case LegendRow::fix: return position(PlotSign::fix);
      case LegendRow::running_fix:
        position(PlotSign::fix);
        signs().push_back(Text{.at = {middle_.x_mm + 9, middle_.y_mm + 14}, .text = set_ == SignSet::a ? "R" : "R FIX", .height_mm = k_note_size});
        return;
    }
  }

  SignSet set_;
  SheetPoint middle_;
  Figure figure_;
};

}  // namespace

Figure legend_figure(SignSet set, const LegendWords& words) { return Legend(set).made(words); }

}  // namespace fogsheet
