#include "shell/panels/sheet_picture.h"

#include <algorithm>

#include "core/sheet/projection.h"

namespace fogsheet {
namespace {

// Enough to know a sheet again by; more would be a blot.
constexpr std::size_t k_drawn_marks = 60;
constexpr std::size_t k_drawn_legs = 60;

}  // namespace

std::string sheet_picture(const Document& document) {
  const PaperSize paper = paper_size(document.sheet.paper);
  const Position middle = unquantise(document.sheet.middle);
  const Projection projection(middle, document.sheet.scale, document.sheet.paper);
  const double dot_mm = std::max(paper.width_mm, paper.height_mm) / 22;
  const auto place = [&](GridPosition at) {
    const SheetPoint p = projection.to_sheet(unquantise(at));
    return std::to_string(static_cast<int>(std::clamp(p.x_mm, 0.0, paper.width_mm))) + " " + std::to_string(static_cast<int>(std::clamp(p.y_mm, 0.0, paper.height_mm)));
  };
  const auto path = [](const char* ink, double width_mm, const std::string& d) {
    return d.empty() ? std::string() : std::string("<path class=\"stroke-") + ink + "\" stroke-width=\"" + std::to_string(static_cast<int>(width_mm)) + "\" d=\"" + d + "\"/>";
  };
  std::string marks, dangers, legs;
  for (std::size_t i = 0; i < std::min(k_drawn_marks, document.marks.size()); ++i) {
    const Mark& mark = document.marks.at(i);
    (mark.kind == MarkKind::danger ? dangers : marks) += "M" + place(mark.at) + "h0";  // a point, round as its line's end
  }
  for (std::size_t i = 0; i < std::min(k_drawn_legs, document.legs.size()); ++i) {
    const Leg& leg = document.legs.at(i);
    const Mark* from = document.marks.find(leg.from);
    const Mark* to = document.marks.find(leg.to);
    if (from && to) legs += "M" + place(from->at) + "L" + place(to->at);
  }
  const std::string width = std::to_string(static_cast<int>(paper.width_mm)), height = std::to_string(static_cast<int>(paper.height_mm));
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + width + " " + height + "\" fill=\"none\" stroke-linecap=\"round\">" +
         path("graticule", dot_mm / 2, "M0 0h" + width + "v" + height + "H0z") + path("danger", dot_mm, dangers) + path("ink", dot_mm / 2, legs) + path("ink", dot_mm, marks) + "</svg>";
}

}  // namespace fogsheet
