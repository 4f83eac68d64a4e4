// A printed sheet measured with a ruler: what stands in the SVG of an A4 sheet, in millimetres, against Mercator's own
// formula at five latitudes. The formula is written here in another form than core's.
#include <cmath>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/document/actions.h"
#include "core/figure/sheet_figure.h"
#include "core/formats/svg.h"
#include "doctest/doctest.h"
#include "tests/core/xml_check.h"

using namespace fogsheet;

namespace {

constexpr double k_tolerance_mm = 0.05;  // half the finest line a printer draws
constexpr double k_scale = 100'000;

// WGS84 by its defining constants. Source: NIMA TR8350.2, table 3.1.
constexpr double k_semi_major_mm = 6'378'137.0 * 1000;
constexpr double k_flattening = 1 / 298.257223563;
const double k_eccentricity = std::sqrt(k_flattening * (2 - k_flattening));

// Source: Snyder, Map Projections, USGS PP 1395 (1987), eq. 7-7, and 14-15 for the radius of the parallel.
double mercator_y(double lat_deg) {
  const double lat = lat_deg * k_pi / 180, es = k_eccentricity * std::sin(lat);
  return std::log(std::tan(k_pi / 4 + lat / 2) * std::pow((1 - es) / (1 + es), k_eccentricity / 2));
}
double mm_per_radian(double true_lat_deg) {
  const double lat = true_lat_deg * k_pi / 180, es = k_eccentricity * std::sin(lat);
  return k_semi_major_mm / k_scale * std::cos(lat) / std::sqrt(1 - es * es);
}

struct Line {
  double x1, y1, x2, y2;
};

// Every line of two points in the border's group of an SVG: "M x y L x y".
std::vector<Line> border_lines(const std::string& svg) {
  const std::size_t begin = svg.find("<g class=\"layer-border\">");
  REQUIRE(begin != std::string::npos);
  const std::string group = svg.substr(begin, svg.find("</g>", begin) - begin);
  std::vector<Line> lines;
  for (std::size_t path = group.find(" d=\"M"); path != std::string::npos; path = group.find(" d=\"M", path + 1)) {
    const std::size_t start = path + 4;
    const std::string d = group.substr(start, group.find('"', start) - start);
    if (d.find('Z') != std::string::npos) continue;
    for (std::size_t at = 0; at < d.size();) {
      const std::size_t next = std::min(d.find('M', at + 1), d.size());
      Line line{};
      if (std::sscanf(d.substr(at, next - at).c_str(), "M%lf %lfL%lf %lf", &line.x1, &line.y1, &line.x2, &line.y2) == 4) lines.push_back(line);
      at = next;
    }
  }
  return lines;
}

bool near(double a, double b) { return std::abs(a - b) <= k_tolerance_mm; }

// The neat line of A4 across: margins of 16 mm at the sides, 13 above, 12 below.
constexpr double k_left_mm = 16, k_right_mm = 281, k_top_mm = 13, k_bottom_mm = 198;
constexpr double k_middle_x_mm = (k_left_mm + k_right_mm) / 2, k_middle_y_mm = (k_top_mm + k_bottom_mm) / 2;
constexpr double k_least_tick_mm = 0.5;

std::string sheet_svg(double lat_deg, double lon_deg) {
  const Document document = made_sheet({.mid_lat_deg = lat_deg, .mid_lon_deg = lon_deg, .scale = k_scale, .paper = Paper::a4_across, .date = {2026, 7, 1}}).value();
  const VariationInUse variation = variation_of(document, Rounding::whole_degrees);
  SvgPalette palette;
  palette.fill("#000000");
  return svg_file(sheet_figure(document, {.title = "A <sheet> & its title", .roses = {{.used = variation.used}}}, {.legibility = k_print_legibility}), paper_size(Paper::a4_across), palette, "A sheet");
}

}  // namespace

TEST_CASE("the border's minutes lie where Mercator has them, on paper") {
  for (const double mid_lat_deg : {0.0, 23.5, 44.0 + 10 / 60.0, 60.0, -70.0}) {
    CAPTURE(mid_lat_deg);
    const double mid_lon_deg = 179.9;  // the sheet crosses 180 deg
    const std::string svg = sheet_svg(mid_lat_deg, mid_lon_deg);
    CHECK(is_well_formed_xml(svg));
    const std::vector<Line> lines = border_lines(svg);
    const double unit_mm = mm_per_radian(mid_lat_deg);

    int latitudes = 0, longitudes = 0;
    for (int minute = -90 * 60 + 1; minute < 90 * 60; ++minute) {
      const double y_mm = k_middle_y_mm - unit_mm * (mercator_y(minute / 60.0) - mercator_y(mid_lat_deg));
      if (y_mm < k_top_mm + k_tolerance_mm || y_mm > k_bottom_mm - k_tolerance_mm) continue;
      ++latitudes;
      CAPTURE(minute);
      for (const double edge_mm : {k_left_mm, k_right_mm}) {
        bool found = false;
        for (const Line& line : lines)
          found |= near(line.x1, edge_mm) && std::abs(line.x2 - line.x1) > k_least_tick_mm && near(line.y1, y_mm) && near(line.y2, y_mm);
        CHECK(found);
      }
    }
    for (int minute = 175 * 60; minute < 185 * 60; ++minute) {
      const double x_mm = k_middle_x_mm + unit_mm * (minute / 60.0 - mid_lon_deg) * k_pi / 180;
      if (x_mm < k_left_mm + k_tolerance_mm || x_mm > k_right_mm - k_tolerance_mm) continue;
      ++longitudes;
      CAPTURE(minute);
      for (const double edge_mm : {k_top_mm, k_bottom_mm}) {
        bool found = false;
        for (const Line& line : lines)
          found |= near(line.y1, edge_mm) && std::abs(line.y2 - line.y1) > k_least_tick_mm && near(line.x1, x_mm) && near(line.x2, x_mm);
        CHECK(found);
      }
    }
    CHECK(latitudes >= 9);
    CHECK(longitudes >= 13);
  }
}

TEST_CASE("a name stands beside its mark in any script, held at the end that is next to it") {
  // The second landmark stands where the first one's name would; its own has all the room at its right.
  for (const std::string name : {"Sarn Beacon", "Камень Хаск", "灯台石"}) {
    CAPTURE(name);
    History history(made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = k_scale, .paper = Paper::a4_across, .date = {2026, 7, 1}}).value());
    REQUIRE(add_mark(history, {.name = name, .lat_deg = 44.01, .lon_deg = -31.01}).ok());
    REQUIRE(add_mark(history, {.name = name, .lat_deg = 44.01, .lon_deg = -31.003}).ok());
    const Document& document = history.now();
    const Figure figure = sheet_figure(document, {.roses = {{.used = variation_of(document, Rounding::whole_degrees).used}}}, {.legibility = k_print_legibility});
    std::vector<Text> names;
    for (const Shape& shape : figure.on(Layer::labels))
      if (const auto* text = std::get_if<Text>(&shape); text && text->text == name) names.push_back(*text);
    REQUIRE(names.size() == 2);
    CHECK(names[1].anchor == Anchor::start);
    const Projection projection = projection_of(document);
    std::size_t i = 0;
    for (const Mark& mark : document.marks) {
      const Text& text = names[i++];
      const double aside_mm = text.at.x_mm - projection.to_sheet(unquantise(mark.at)).x_mm;
      CHECK(text.anchor == (aside_mm > 0 ? Anchor::start : aside_mm < 0 ? Anchor::end : Anchor::middle));
      CHECK(std::abs(aside_mm) < 4);
    }
  }
}
