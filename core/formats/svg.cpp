#include "core/formats/svg.h"

#include <cmath>

#include "core/base/check.h"
#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/figure/text_metrics.h"

namespace fogsheet {
namespace {

constexpr int k_decimals = 3;         // a thousandth of a millimetre
constexpr double k_short_of_paper_mm = 0.3;  // white: a browser that rounds up would give it a page of its own
constexpr double k_halo_em = 0.22;    // whole width of the outline, of which the inner half lies under the letters

struct InkRow {
  Ink ink;
  std::string_view name;
};

constexpr InkRow k_inks[] = {{Ink::table, "table"},
                             {Ink::paper, "paper"},
                             {Ink::field, "field"},
                             {Ink::ink, "ink"},
                             {Ink::soft, "soft"},
                             {Ink::graticule, "graticule"},
                             {Ink::rule, "rule"},
                             {Ink::magenta, "magenta"},
                             {Ink::blue, "blue"},
                             {Ink::edge, "edge"},
                             {Ink::edge_fill, "edge-fill"},
                             {Ink::hatch, "hatch"},
                             {Ink::doubt_line, "doubt-line"},
                             {Ink::danger, "danger"},
                             {Ink::danger_fill, "danger-fill"},
                             {Ink::caution, "caution"},
                             {Ink::agrees, "agrees"},
                             {Ink::focus, "focus"},
                             {Ink::pressed, "pressed"},
                             {Ink::on_pressed, "on-pressed"},
                             {Ink::bar, "bar"}};
static_assert(std::size(k_inks) == k_ink_count);

constexpr std::string_view k_layer_names[k_layer_count] = {"paper", "graticule", "dangers", "edge-fill", "rose",
                                                           "legs",  "border",    "marks",   "labels",    "title"};

// Short: without the noughts at its end.
std::string number(double value) {
  SHEET_CHECK(std::isfinite(value), "a figure with a measure that is no number");
  std::string text = print_fixed(value, k_decimals);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

// Characters that XML can't hold at all become the replacement character. Source: XML 1.0, 5th edition, production 2.
bool is_xml_character(char32_t c) {
  if (c < 0x20) return c == '\t' || c == '\n' || c == '\r';
  return c != 0xFFFE && c != 0xFFFF;
}

std::string escaped(std::string_view text) {
  std::string out;
  const std::string whole = repaired_utf8(text);
  for (std::string_view rest = whole; !rest.empty();) {
    const std::string_view before = rest;
    const char32_t c = next_code_point(rest);
    if (c == '&') out += "&amp;";
    else if (c == '<') out += "&lt;";
    else if (c == '>') out += "&gt;";
    else if (c == '"') out += "&quot;";
    else if (!is_xml_character(c)) out += "\xEF\xBF\xBD";
    else out += before.substr(0, before.size() - rest.size());
  }
  return out;
}

std::string view_box(const SheetRect& view) {
  return number(view.left_mm) + " " + number(view.top_mm) + " " + number(view.width_mm()) + " " + number(view.height_mm());
}

class SvgWriter {
 public:
  /// @param palette  for colours of its own; none: for classes.
  explicit SvgWriter(std::string head, const SvgPalette* palette = nullptr) : out_(std::move(head)), palette_(palette) {}

  void write(const Figure& figure) {
    for (int layer = 0; layer < k_layer_count; ++layer) {
      if (figure.layers[layer].empty()) continue;
      out_ += "<g class=\"layer-" + std::string(k_layer_names[layer]) + "\">\n";
      for (const Shape& shape : figure.layers[layer])
        std::visit([this](const auto& each) { write(each); }, shape);
      out_ += "</g>\n";
    }
  }

  /// A part of a figure, cut at its edges, with its top left at a place.
  void write_part(const Figure& figure, const SheetRect& window, SheetPoint at) {
    out_ += "<svg";
    attribute("x", at.x_mm);
    attribute("y", at.y_mm);
    attribute("width", window.width_mm());
    attribute("height", window.height_mm());
    attribute("viewBox", view_box(window));
    out_ += ">\n";
    write(figure);
    out_ += "</svg>\n";
  }

  std::string finish() { return std::move(out_ += "</svg>\n"); }

 private:
  void attribute(std::string_view name, std::string_view value) {
    ((((out_ += ' ') += name) += "=\"") += value) += '"';
  }
  void attribute(std::string_view name, double value) { attribute(name, number(value)); }

  void inks(Ink stroke, double weight_mm, Ink fill) {
    const bool stroked = stroke != Ink::none && weight_mm > 0;
    if (palette_) {
      if (fill != Ink::none) attribute("fill", (*palette_)[static_cast<std::size_t>(fill)]);
      if (stroked) attribute("stroke", (*palette_)[static_cast<std::size_t>(stroke)]);
      if (stroked) attribute("stroke-width", weight_mm);
      return;
    }
    std::string classes;
    if (fill != Ink::none) (classes += "fill-") += ink_class(fill);
    if (stroked && !classes.empty()) classes += ' ';
    if (stroked) (classes += "stroke-") += ink_class(stroke);
    if (!classes.empty()) attribute("class", classes);
    if (stroked) attribute("stroke-width", weight_mm);
  }

  void dash_and_opacity(Dash dash, double fill_opacity, Ink fill) {
    if (dash.off_mm > 0) attribute("stroke-dasharray", number(dash.on_mm) + " " + number(dash.off_mm));
    if (dash.off_mm > 0 && dash.on_mm == 0) attribute("stroke-linecap", "round");
    if (fill != Ink::none && fill_opacity < 1) attribute("fill-opacity", fill_opacity);
  }

  static void append_point(std::string& d, char command, SheetPoint p) { ((((d += command) += number(p.x_mm)) += ' ') += number(p.y_mm)); }

  void write(const Path& path) {
    if (path.points.empty()) return;
    std::string d;
    for (std::size_t i = 0; i < path.points.size(); ++i) append_point(d, i == 0 ? 'M' : 'L', path.points[i]);
    if (path.closed) d += 'Z';
    out_ += "<path";
    inks(path.stroke, path.weight_mm, path.fill);
    dash_and_opacity(path.dash, path.fill_opacity, path.fill);
    attribute("d", d);
    out_ += "/>\n";
  }

  void write(const Segments& segments) {
    if (segments.ends.empty()) return;
    std::string d;
    for (std::size_t i = 0; i < segments.ends.size(); ++i) append_point(d, i % 2 == 0 ? 'M' : 'L', segments.ends[i]);
    out_ += "<path";
    inks(segments.stroke, segments.weight_mm, Ink::none);
    attribute("d", d);
    out_ += "/>\n";
  }

  void write(const Circle& circle) {
    out_ += "<circle";
    inks(circle.stroke, circle.weight_mm, circle.fill);
    dash_and_opacity(circle.dash, circle.fill_opacity, circle.fill);
    attribute("cx", circle.centre.x_mm);
    attribute("cy", circle.centre.y_mm);
    attribute("r", circle.radius_mm);
    out_ += "/>\n";
  }

  void write(const Text& text) {
    out_ += "<text";
    inks(text.halo ? Ink::paper : Ink::none, text.halo ? k_halo_em * text.height_mm : 0, text.ink);
    if (text.halo) attribute("paint-order", "stroke");
    attribute("x", text.at.x_mm);
    attribute("y", text.at.y_mm);
    attribute("font-size", text.height_mm);
    if (text.face == Face::bold) attribute("font-weight", "700");
    if (text.face == Face::italic) attribute("font-style", "italic");
    if (text.anchor == Anchor::middle) attribute("text-anchor", "middle");
    if (text.anchor == Anchor::end) attribute("text-anchor", "end");
    // What another typeface draws is fitted into the width that its label was placed by.
    if (const double width_em = text_width_em(text.text, text.face); width_em > 0 && !is_in_typeface(text.text, text.face)) {
      attribute("textLength", width_em * text.height_mm);
      attribute("lengthAdjust", "spacingAndGlyphs");
    }
    if (text.turn_deg != 0)
      attribute("transform", "rotate(" + number(text.turn_deg) + " " + number(text.at.x_mm) + " " + number(text.at.y_mm) + ")");
    ((out_ += '>') += escaped(text.text)) += "</text>\n";
  }

  std::string out_;
  const SvgPalette* palette_;
};

// What holds for every shape unless it says otherwise. White space in names is kept.
std::string root(const std::string& attributes) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" xml:space=\"preserve\" fill=\"none\" stroke-linejoin=\"round\"" + attributes + ">\n";
}

std::string head_of_file(PaperSize size, std::string_view title) {
  const std::string at_true_size = " width=\"" + number(size.width_mm) + "mm\" height=\"" + number(size.height_mm) + "mm\" viewBox=\"" +
                                   view_box({0, 0, size.width_mm, size.height_mm}) + "\" font-family=\"B612, sans-serif\"";
  return root(at_true_size) + "<title>" + escaped(title) + "</title>\n";
}

}  // namespace

std::string_view ink_class(Ink ink) {
  for (const InkRow& row : k_inks)
    if (row.ink == ink) return row.name;
  check_failed("ink", "an ink without a class", __FILE__, __LINE__);
}

std::string svg_file(const Figure& figure, PaperSize size, const SvgPalette& palette, std::string_view title) {
  SvgWriter writer(head_of_file(size, title), &palette);
  writer.write(figure);
  return writer.finish();
}

std::string page_svg(const PaperPage& page, PaperSize size, const SvgPalette& palette, std::string_view title) {
  SvgWriter writer(head_of_file({size.width_mm, size.height_mm - k_short_of_paper_mm}, title), &palette);
  writer.write_part(page.sheet, page.window, page.at);
  writer.write(page.own);
  return writer.finish();
}

std::string panel_svg(const Figure& figure, const SheetRect& view) {
  SvgWriter writer(root(" viewBox=\"" + view_box(view) + "\""));
  writer.write(figure);
  return writer.finish();
}

}  // namespace fogsheet
