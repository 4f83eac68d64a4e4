#include "shell/words_of_triangle.h"

#include <cmath>

#include "core/base/number_text.h"
#include "core/figure/passage_figure.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

// An edge further off than this lies along something else.
constexpr double k_meant_within_deg = 15;

std::string true_figures(TrueDirection direction, Rounding rounding) { return with_letter(direction.deg(), rounding, Reference::true_north); }

}  // namespace

std::string triangle_by_hand() { return "The triangle by hand"; }
std::string triangles_hour_by_hour() { return "So for each hour's stream, from where the hour begins on the leg."; }

std::vector<std::string> laying_off(const LaidTriangle& triangle, const std::string& from, Rounding rounding) {
  const std::string time = laid_off_for(triangle.minutes);
  return {"1. From " + from + " lay off the stream of " + time + ": " + print_fixed(triangle.stream_nm(), 2) + " nm towards " + true_figures(triangle.stream.set, rounding) + ".",
          "2. Open the dividers to the run of " + time + ", " + print_fixed(triangle.water_nm(), 2) + " nm, and from the stream's end strike the leg.",
          "3. Lay the edge from the stream's end to where it struck, and slide it to the rose: it reads the water track, worked out " + true_figures(triangle.water_track, Rounding::tenths) + "."};
}

std::optional<std::string> edge_beside_worked_out(const LaidTriangle& triangle, TrueDirection edge, Rounding rounding) {
  const auto more_deg = [&](TrueDirection read) { return reduce_difference_deg(read.deg() - triangle.water_track.deg()); };
  // Laid from the leg to the stream's end it reads the other way round.
  const TrueDirection read = std::abs(more_deg(edge)) <= 90 ? edge : edge.reciprocal();
  const double more = more_deg(read);
  if (std::abs(more) > k_meant_within_deg) return std::nullopt;
  const std::string off = print_fixed(std::abs(more), 1);
  return "The edge reads " + true_figures(read, rounding) + ", worked out " + true_figures(triangle.water_track, Rounding::tenths) + ": " + (off == "0.0" ? "they agree." : off + "° " + (more > 0 ? "more." : "less."));
}

}  // namespace fogsheet::words
