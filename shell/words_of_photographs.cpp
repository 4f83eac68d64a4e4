#include "shell/words_of_photographs.h"

#include <cmath>

#include "shell/words.h"

namespace fogsheet::words {
namespace {

std::string metres(double value_m) { return value_m < 1 ? "under 1 m" : grouped(static_cast<int>(std::lround(value_m))) + " m"; }

std::string pixels(int width, int height) { return grouped(width) + " by " + grouped(height) + " pixels"; }

}  // namespace

std::string point_name(std::size_t point) { return "point " + std::to_string(point + 1); }

std::string status_photograph_tool(const Session& session) {
  if (!session.photograph) return "Choose a photograph of your chart.";
  const Photograph& photograph = *session.photograph;
  if (photograph.state == Photograph::State::reading) return "The photograph is being read.";
  if (photograph.state == Photograph::State::refused) return "Choose another photograph.";
  if (photograph.placing.hidden) return "The photograph is hidden: show it to press places on it.";
  if (photograph.selected && !photograph.placing.points[*photograph.selected].position) return "Enter the position of " + point_name(*photograph.selected) + ", or choose the mark that it is.";
  return photograph.placing.points.empty() ? "Press a place on the photograph whose position you know: a crossing of its graticule, a light." : "Press another place that you know, or drag a point.";
}

std::string photograph_name(const Photograph& photograph) { return photograph.name + ", " + pixels(photograph.placing.width_px, photograph.placing.height_px); }

std::string shrunk_line(const Photograph& photograph) {
  if (photograph.shrunk == 1) return "";
  return "It is larger than is drawn here: shown as " + pixels(photograph.placing.width_px / photograph.shrunk, photograph.placing.height_px / photograph.shrunk) + ".";
}

std::string placed_line(const LaidPhotograph& lies) {
  return "Placed by " + std::to_string(lies.known.size()) + " points: turned and sized" + (lies.kind == PictureFitKind::affine ? ", and stretched, to fit." : " to fit.");
}

std::string fit_line(const LaidPhotograph& lies) {
  const PictureFit& fit = *lies.fit;
  if (!fit.standard_error_m) return "So many points always fit, right or wrong: one more checks them.";
  return "Standard error " + metres(*fit.standard_error_m) + "; the farthest off is " + point_name(lies.known[fit.worst]) + ", " + metres(fit.residuals_m[fit.worst]) + ". Look there first when it is much.";
}

std::string not_placed(const LaidPhotograph& lies) {
  if (lies.problem->fault != Fault::picture_points_together) return sentence(*lies.problem);
  // The fit counts the points that are known, the slip all of them.
  Problem problem = *lies.problem;
  for (double& number : problem.numbers) number = static_cast<double>(lies.known[static_cast<std::size_t>(number) - 1] + 1);
  return sentence(problem);
}

std::string points_are_close() { return "The points are close together: away from them it may lie far out. Points near its corners hold it best."; }

std::string strength_label(int strength) {
  constexpr const char* k_labels[k_photograph_strengths] = {"faint", "light", "medium", "strong"};
  return k_labels[strength];
}

std::string kept_line(const Photograph& photograph) {
  switch (photograph.kept) {
    case PhotographKept::not_yet: return "It is kept on this device as soon as the sheet is: with the first thing drawn on it.";
    case PhotographKept::kept: return "It is kept on this device with this sheet, and goes into the file of all: into no link, print or other file.";
    case PhotographKept::full: return "It is not kept: there is too little room on this device, and the sheets come first. It is here until another sheet is taken in hand, or the page goes.";
    case PhotographKept::failed: return "It is not kept: the browser does not let it. It is here until another sheet is taken in hand, or the page goes.";
  }
  return "";
}

std::vector<std::string> photograph_cautions() {
  return {"A photograph of a chart is no chart: it is not corrected, and says nothing of what has changed since. Use official charts, up to date.",
          "A lens bends straight lines, most at the edges; folds and waves in paper move what lies on them. Photograph it flat, from straight above, or scan it."};
}

}  // namespace fogsheet::words
