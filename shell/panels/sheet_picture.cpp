#include "shell/panels/sheet_picture.h"

#include <algorithm>

#include "core/sheet/projection.h"

namespace fogsheet {
namespace {

// Enough to know a sheet again by; more would be a blot.
constexpr std::size_t k_drawn_marks = 60;
constexpr std::size_t k_drawn_legs = 60;

std::string whole(double mm) { return std::to_string(static_cast<int>(mm)); }

}  // namespace

std::string sheet_picture(const Document& document, std::span<const SheetRect> pages) {
  const PaperSize paper = paper_size(document.sheet.paper);
  const Position middle = unquantise(document.sheet.middle);
  const Projection projection(middle, document.sheet.scale, document.sheet.paper);
  const double dot_mm = std::max(paper.width_mm, paper.height_mm) / 22;
  const auto place = [&](GridPosition at) {
    const SheetPoint p = projection.to_sheet(unquantise(at));
    return whole(std::clamp(p.x_mm, 0.0, paper.width_mm)) + " " + whole(std::clamp(p.y_mm, 0.0, paper.height_mm));
  };
  const auto path = [](const char* ink, double width_mm, const std::string& d) {
    return d.empty() ? std::string() : std::string("<path class=\"stroke-") + ink + "\" stroke-width=\"" + whole(width_mm) + "\" d=\"" + d + "\"/>";
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
  SheetRect seen{0, 0, paper.width_mm, paper.height_mm};
  const auto outline = [](const SheetRect& r) {
    return "M" + whole(r.left_mm) + " " + whole(r.top_mm) + "h" + whole(r.width_mm()) + "v" + whole(r.height_mm()) + "h" + whole(-r.width_mm()) + "z";
  };
  const std::string sheet = outline(seen);
  std::string papers;
  for (const SheetRect& page : pages) {
    papers += outline(page);
    seen = {std::min(seen.left_mm, page.left_mm), std::min(seen.top_mm, page.top_mm), std::max(seen.right_mm, page.right_mm), std::max(seen.bottom_mm, page.bottom_mm)};
  }
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"" + whole(seen.left_mm) + " " + whole(seen.top_mm) + " " + whole(seen.width_mm()) + " " + whole(seen.height_mm()) +
         "\" fill=\"none\" stroke-linecap=\"round\">" + path("graticule", dot_mm / 2, sheet) + path("ink", dot_mm / 4, papers) + path("danger", dot_mm, dangers) + path("ink", dot_mm / 2, legs) +
         path("ink", dot_mm, marks) + "</svg>";
}

}  // namespace fogsheet
