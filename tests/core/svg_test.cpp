// Figures as SVG: well-formed whatever the names in them, at true size, coloured by classes in panels, by attributes in files.
#include "core/formats/svg.h"

#include <string>

#include "core/base/random.h"
#include "doctest/doctest.h"
#include "tests/core/xml_check.h"

using namespace fogsheet;

namespace {

SvgPalette black_palette() {
  SvgPalette palette;
  palette.fill("#000000");
  palette[static_cast<std::size_t>(Ink::magenta)] = "#9a1a63";
  return palette;
}

bool has(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

std::string panel_of(Shape shape) {
  Figure figure;
  figure.on(Layer::marks).push_back(std::move(shape));
  return panel_svg(figure, {0, 0, 100, 50});
}

}  // namespace

TEST_CASE("the checker of these tests knows good from bad") {
  for (const char* good : {"<a/>", "<a b=\"1\" c=\"x&amp;y\"><d>t &lt; u</d>\n</a>\n"}) CHECK(is_well_formed_xml(good));
  for (const char* bad : {"", "x", "<a>", "<a></b>", "<a/><b/>", "<a b=1/>", "<a b=\"1\" b=\"2\"/>", "<a>&nbsp;</a>", "<a>\x01</a>", "<a>\xFF</a>", "<a b=\"<\"/>", "<a/>x"}) {
    CAPTURE(bad);
    CHECK_FALSE(is_well_formed_xml(bad));
  }
}

TEST_CASE("a file is at true size, its numbers are millimetres") {
  const std::string svg = svg_file({}, paper_size(Paper::a4_across), black_palette(), "Gull Sound");
  CHECK(is_well_formed_xml(svg));
  CHECK(has(svg, " width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\""));
  CHECK(has(svg, "<title>Gull Sound</title>"));
  const std::string letter = svg_file({}, paper_size(Paper::letter_upright), black_palette(), "");
  CHECK(has(letter, " width=\"215.9mm\" height=\"279.4mm\" viewBox=\"0 0 215.9 279.4\""));
}

TEST_CASE("a file brings a colour for each ink, a panel's figure brings none") {
  SvgPalette palette;
  for (int ink = 0; ink < k_ink_count; ++ink) palette[static_cast<std::size_t>(ink)] = "#0000" + std::to_string(10 + ink);
  for (int ink = 0; ink < k_ink_count; ++ink) {
    CAPTURE(ink);
    Figure figure;
    figure.on(Layer::rose).push_back(Circle{.centre = {1, 2}, .radius_mm = 3, .stroke = static_cast<Ink>(ink), .weight_mm = 0.1, .fill = static_cast<Ink>(ink)});
    const std::string colour = palette[static_cast<std::size_t>(ink)], svg = svg_file(figure, {100, 50}, palette, "");
    CHECK(has(svg, "<circle fill=\"" + colour + "\" stroke=\"" + colour + "\" stroke-width=\"0.1\""));
    CHECK_FALSE(has(svg, "<circle class"));
  }
  const std::string panel = panel_of(Circle{.centre = {1, 2}, .radius_mm = 3, .weight_mm = 0.1});
  CHECK(has(panel, "class=\"stroke-ink\""));
  CHECK_FALSE(has(panel, "#"));
  CHECK_FALSE(has(panel, "width=\"100"));
}

TEST_CASE("a page shows its part of a figure at true size, cut at its edges") {
  PaperPage page{.window = {50, 20, 150, 90}, .at = {8, 12}};
  page.sheet.on(Layer::legs).push_back(Segments{.ends = {{0, 0}, {200, 100}}, .weight_mm = 0.5});
  page.own.on(Layer::title).push_back(Text{.at = {8, 280}, .text = "page 1 of 2", .height_mm = 3});
  const std::string svg = page_svg(page, {210, 297}, black_palette(), "Gull Sound");
  CHECK(is_well_formed_xml(svg));
  CHECK(has(svg, " width=\"210mm\" height=\"296.7mm\" viewBox=\"0 0 210 296.7\""));
  CHECK(has(svg, "<svg x=\"8\" y=\"12\" width=\"100\" height=\"70\" viewBox=\"50 20 100 70\">"));
  CHECK(svg.find("M0 0L200 100") < svg.find("</svg>"));
  CHECK(svg.find("page 1 of 2") > svg.find("</svg>"));
}

TEST_CASE("nothing carries a style attribute") {
  Figure figure;
  figure.on(Layer::rose).push_back(Circle{.centre = {10, 10}, .radius_mm = 5, .stroke = Ink::magenta, .weight_mm = 0.18});
  figure.on(Layer::labels).push_back(Text{.at = {10, 10}, .text = "x", .height_mm = 3, .halo = true});
  CHECK_FALSE(has(svg_file(figure, {100, 50}, black_palette(), ""), " style="));
  CHECK_FALSE(has(panel_svg(figure, {0, 0, 100, 50}), " style="));
}

TEST_CASE("shapes are written with short numbers") {
  CHECK(has(panel_of(Path{.points = {{0.1 + 0.2, -0.0}, {1.0 / 3, 1e-9}, {-2.5, 100}}, .closed = true, .stroke = Ink::none, .fill = Ink::edge_fill, .fill_opacity = 0.22}),
            "<path class=\"fill-edge-fill\" fill-opacity=\"0.22\" d=\"M0.3 0L0.333 0L-2.5 100Z\"/>"));
  CHECK(has(panel_of(Segments{.ends = {{1, 2}, {3, 4}, {5, 6}, {7, 8}}, .stroke = Ink::graticule, .weight_mm = 0.1}),
            "<path class=\"stroke-graticule\" stroke-width=\"0.1\" d=\"M1 2L3 4M5 6L7 8\"/>"));
  CHECK(has(panel_of(Circle{.centre = {1, 2}, .radius_mm = 3, .stroke = Ink::danger, .weight_mm = 0.45, .fill = Ink::danger_fill, .fill_opacity = 0.75, .dash = {0, 0.945}}),
            "<circle class=\"fill-danger-fill stroke-danger\" stroke-width=\"0.45\" stroke-dasharray=\"0 0.945\" stroke-linecap=\"round\" fill-opacity=\"0.75\" cx=\"1\" cy=\"2\" r=\"3\"/>"));
  CHECK(has(panel_of(Text{.at = {1, 2}, .text = "047°T", .height_mm = 3, .face = Face::bold, .anchor = Anchor::middle, .turn_deg = -33}),
            "<text class=\"fill-ink\" x=\"1\" y=\"2\" font-size=\"3\" font-weight=\"700\" text-anchor=\"middle\" transform=\"rotate(-33 1 2)\">047°T</text>"));
}

TEST_CASE("a halo is an outline in the paper's colour under the letters") {
  CHECK(has(panel_of(Text{.at = {1, 2}, .text = "x", .height_mm = 2, .halo = true}),
            "<text class=\"fill-ink stroke-paper\" stroke-width=\"0.44\" paint-order=\"stroke\""));
}

TEST_CASE("what another typeface draws is fitted into the width that core counts") {
  CHECK(has(panel_of(Text{.at = {1, 2}, .text = "灯台", .height_mm = 3}), " textLength=\"6\" lengthAdjust=\"spacingAndGlyphs\""));
  CHECK(has(panel_of(Text{.at = {1, 2}, .text = "नि", .height_mm = 3}), " textLength=\"6\""));
  CHECK_FALSE(has(panel_of(Text{.at = {1, 2}, .text = "Hask Røck", .height_mm = 3}), "textLength"));
  CHECK_FALSE(has(panel_of(Text{.at = {1, 2}, .text = "\u200F", .height_mm = 3}), "textLength"));  // nothing to be seen
}

TEST_CASE("layers are groups in their order, empty ones left out") {
  Figure figure;
  figure.on(Layer::title).push_back(Text{.text = "last"});
  figure.on(Layer::paper).push_back(Path{.points = {{0, 0}, {1, 1}}});
  const std::string svg = panel_svg(figure, {0, 0, 100, 50});
  CHECK(is_well_formed_xml(svg));
  CHECK(svg.find("<g class=\"layer-paper\">") < svg.find("<g class=\"layer-title\">"));
  CHECK_FALSE(has(svg, "layer-rose"));
}

TEST_CASE("hostile names stay text") {
  struct Case { std::string name; std::string_view written; };
  const Case cases[] = {{"</text><script>alert(1)</script>", ">&lt;/text&gt;&lt;script&gt;alert(1)&lt;/script&gt;<"},
                        {"\" onload=\"x", ">&quot; onload=&quot;x<"},
                        {"&lt; &#60; &amp", ">&amp;lt; &amp;#60; &amp;amp<"},
                        {"]]>", ">]]&gt;<"},
                        {std::string("a\0b", 3), ">a\xEF\xBF\xBD" "b<"},
                        {"\x01\x1B[31m", ">\xEF\xBF\xBD\xEF\xBF\xBD[31m<"},
                        {"\xEF\xBF\xBE\xEF\xBF\xBF", ">\xEF\xBF\xBD\xEF\xBF\xBD<"},
                        {"\xED\xA0\x80\xFF", ">\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD<"},
                        {"two  spaces ′灯", ">two  spaces ′灯<"}};
  for (const Case& c : cases) {
    CAPTURE(c.name);
    const std::string svg = panel_of(Text{.text = c.name, .height_mm = 3});
    CHECK(is_well_formed_xml(svg));
    CHECK(has(svg, c.written));
    CHECK(is_well_formed_xml(svg_file({}, {100, 50}, black_palette(), c.name)));
  }
}

TEST_CASE("any bytes as a name give a well-formed figure") {
  constexpr std::uint64_t k_seed = 20260720;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 2'000; ++run) {
    std::string name(static_cast<std::size_t>(random.whole(0, 30)), ' ');
    for (char& c : name) c = static_cast<char>(random.whole(0, 2) ? random.whole(0, 127) : random.whole(128, 255));
    CHECK(is_well_formed_xml(panel_of(Text{.text = name, .height_mm = 3, .halo = true})));
  }
}
