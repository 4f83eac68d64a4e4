#include "core/figure/weights.h"

#include <algorithm>

#include "core/base/check.h"

namespace fogsheet {
namespace {

struct StrokeRow {
  Stroke stroke;
  double paper_mm;
  double least_px;
};

constexpr StrokeRow k_strokes[] = {
    {Stroke::graticule_minor, 0.10, 0.6}, {Stroke::graticule_major, 0.18, 0.9}, {Stroke::neat_line, 0.25, 1.0}, {Stroke::border, 0.50, 1.4},
    {Stroke::ring, 0.18, 0.9},            {Stroke::ring_1_deg, 0.13, 0.7},      {Stroke::ring_5_deg, 0.18, 1.0}, {Stroke::ring_10_deg, 0.25, 1.3},
    {Stroke::leg, 0.50, 2.2},             {Stroke::turn, 0.50, 2.2},            {Stroke::mark, 0.35, 1.6},      {Stroke::danger, 0.45, 1.8},
    {Stroke::reading_edge, 0.60, 2.4},    {Stroke::edge, 0.20, 1.0},
};

struct LetteringRow {
  Lettering lettering;
  double paper_mm;
  double least;  // multiples of the least text
  double bound;  // multiples of the paper height
};

constexpr LetteringRow k_letterings[] = {
    {Lettering::border_minor, 2.7, 1.0, 1.6},   {Lettering::border_major, 3.1, 1.2, 1.9}, {Lettering::ring_true, 2.7, 1.0, 1.6},
    {Lettering::ring_magnetic, 2.5, 0.95, 1.6}, {Lettering::rose_note, 2.7, 1.0, 1.6},    {Lettering::name, 3.2, 1.24, 1.6},
    {Lettering::course, 3.3, 1.24, 1.6},        {Lettering::title, 6.6, 2.0, 2.4},        {Lettering::note, 3.3, 1.2, 1.6},
    {Lettering::scale_bar, 2.6, 1.0, 1.6},
};

// Text smaller than this part of its least height is left out rather than drawn unreadably small.
constexpr double k_left_out_below = 0.76;

}  // namespace

double weight_mm(Stroke stroke, const Legibility& legibility) {
  for (const StrokeRow& row : k_strokes)
    if (row.stroke == stroke) return legibility.line_scale * measure_mm(row.paper_mm, row.least_px, legibility);
  check_failed("stroke", "a stroke without a weight", __FILE__, __LINE__);
}

double measure_mm(double paper_mm, double least_px, const Legibility& legibility) { return std::max(paper_mm, least_px * legibility.least_line_mm); }

std::optional<double> height_mm(Lettering lettering, const Legibility& legibility) {
  for (const LetteringRow& row : k_letterings)
    if (row.lettering == lettering) {
      const double least_mm = row.least * legibility.least_text_mm;
      const double height_mm = std::max(row.paper_mm, std::min(least_mm, row.bound * row.paper_mm));
      if (height_mm < k_left_out_below * least_mm) return std::nullopt;
      return height_mm;
    }
  check_failed("lettering", "a lettering without a height", __FILE__, __LINE__);
}

}  // namespace fogsheet
