#include "core/figure/sheet_figure.h"

#include <algorithm>
#include <array>

#include "core/directions/direction_figures.h"
#include "core/figure/graticule.h"
#include "core/figure/label_placer.h"
#include "core/figure/labels.h"
#include "core/figure/mark_figure.h"
#include "core/figure/note_figure.h"
#include "core/figure/passage_figure.h"
#include "core/figure/rose_figure.h"
#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr int k_print_word_rows = 12;  // places tried for the words that print alone has, from bottom to top
constexpr double k_clear_of_border_mm = 3;  // labels keep off the graduations inside the neat line

SheetRect inside_of(SheetRect r) {
  return {r.left_mm + k_clear_of_border_mm, r.top_mm + k_clear_of_border_mm, r.right_mm - k_clear_of_border_mm, r.bottom_mm - k_clear_of_border_mm};
}

struct PlacedMark {
  const Mark* mark;
  SheetPoint at;
};

/// Everything one figure is made from, gathered once.
class SheetDrawing {
 public:
  SheetDrawing(const Document& document, const SheetNotes& notes, const FigureSettings& settings, const PlottedPassage& plot)
      : document_(document),
        notes_(notes),
        settings_(settings),
        plot_(plot),
        projection_(projection_of(document)),
        placer_(inside_of(projection_.neat_line())) {
    for (const Mark& mark : document.marks) {
      by_id_[mark.id.value] = marks_.size();
      marks_.push_back({&mark, projection_.to_sheet(unquantise(mark.at))});
    }
  }

  Figure made() {
    add_paper();
    const Graduation graduation = graduation_for(document_.sheet.scale);
    add_graticule(figure_, projection_, graduation, legibility());
    add_border(figure_, projection_, paper_size(document_.sheet.paper), graduation, legibility());
    add_scale_bar();
    add_titles();
    add_roses();
    add_marks();
    add_legs();
    add_passage(figure_, placer_, plot_, document_.sheet.signs, legibility());
    add_notes();
    add_print_words();
    // Labels in the order of their rights: dangers, names, courses with their distances, what a passage has beside its lines.
    add_names(true);
    add_names(false);
    add_courses();
    add_passage_labels(figure_, placer_, plot_, document_.sheet.signs, settings_.rounding, legibility());
    return std::move(figure_);
  }

 private:
  const Legibility& legibility() const { return settings_.legibility; }

  const PlacedMark& placed(MarkId id) const { return marks_[by_id_.at(id.value)]; }

  void add_paper() {
    const PaperSize size = paper_size(document_.sheet.paper);
    figure_.on(Layer::paper).push_back(Path{.points = {{0, 0}, {size.width_mm, 0}, {size.width_mm, size.height_mm}, {0, size.height_mm}},
                                            .closed = true, .stroke = Ink::rule, .weight_mm = legibility().least_line_mm, .fill = Ink::paper});
  }

  void add_titles() {
    const SheetRect frame = projection_.neat_line();
    const double left_mm = frame.left_mm + 6;
    double baseline_mm = frame.top_mm + 4;
    const auto add = [&](const std::string& text, Lettering lettering, Face face, Ink ink) {
      const std::optional<double> height = height_mm(lettering, legibility());
      if (!height || text.empty()) return;
      // A title too long for the sheet gives way rather than run over the border.
      const double room_mm = frame.width_mm() - 12, wide_mm = text_width_em(text, face) * *height;
      const double fitted = wide_mm > room_mm ? *height * room_mm / wide_mm : *height;
      baseline_mm += fitted * (lettering == Lettering::title ? 0.95 : 1.45);
      figure_.on(Layer::title).push_back(Text{.at = {left_mm, baseline_mm}, .text = text, .height_mm = fitted, .face = face, .ink = ink, .halo = true});
      block_text({left_mm, baseline_mm}, text, fitted, face);
    };
    add(notes_.title, Lettering::title, Face::regular, Ink::ink);
    add(notes_.subtitle, Lettering::note, Face::italic, Ink::soft);
    add(notes_.made_as, Lettering::note, Face::regular, Ink::soft);
    for (const std::string& remark : notes_.remarks) add(remark, Lettering::note, Face::italic, Ink::soft);
  }

  void block_text(SheetPoint start, const std::string& text, double height, Face face) {
    const double wide_mm = text_width_em(text, face) * height;
    placer_.block({.middle = {start.x_mm + wide_mm / 2, start.y_mm - height * 0.32}, .half_width_mm = wide_mm / 2 + 1, .half_height_mm = height * 0.6});
  }

  /// Whole nautical miles at the middle latitude, chequered by halves.
  void add_scale_bar() {
    const std::optional<double> height = height_mm(Lettering::scale_bar, legibility());
    const SheetRect frame = projection_.neat_line();
    const double mile_mm = projection_.mm_per_nm(unquantise(document_.sheet.middle).lat_deg);
    const int unit_nm = mile_mm >= 12 ? 1 : mile_mm >= 2.4 ? 5 : 10;
    const int units = mile_mm * unit_nm * 2 <= 60 ? 2 : 1;
    const double left_mm = frame.left_mm + 7, top_mm = frame.bottom_mm - 8;
    const double thick_mm = measure_mm(1.1, 3, legibility());
    std::vector<Shape>& layer = figure_.on(Layer::title);
    for (int half = 0; half < 2 * units; ++half) {
      const double from_mm = left_mm + half * unit_nm * mile_mm / 2, to_mm = from_mm + unit_nm * mile_mm / 2;
      layer.push_back(Path{.points = {{from_mm, top_mm}, {to_mm, top_mm}, {to_mm, top_mm + thick_mm}, {from_mm, top_mm + thick_mm}},
                           .closed = true, .stroke = Ink::ink, .weight_mm = 0.8 * legibility().least_line_mm, .fill = half % 2 == 0 ? Ink::bar : Ink::paper});
    }
    if (!height) return;
    for (int unit = 0; unit <= units; ++unit)
      layer.push_back(Text{.at = {left_mm + unit * unit_nm * mile_mm, top_mm - 0.4 * *height}, .text = std::to_string(unit * unit_nm), .height_mm = *height, .anchor = Anchor::middle, .halo = true});
    layer.push_back(Text{.at = {left_mm + units * unit_nm * mile_mm + 0.9 * *height, top_mm + 0.4 * *height}, .text = "nm", .height_mm = *height, .halo = true});
    placer_.block({.middle = {left_mm + units * unit_nm * mile_mm / 2, top_mm}, .half_width_mm = units * unit_nm * mile_mm / 2 + 2.5 * *height, .half_height_mm = 1.5 * *height});
  }

  void add_roses() {
    std::size_t index = 0;
    for (const Rose& rose : document_.roses) {
      const SheetPoint centre = projection_.to_sheet(unquantise(rose.at));
      const RoseNote& note = notes_.roses.at(index++);
      add_rose(figure_, centre, rose.radius_mm, note.used, note.lines, legibility());
      placer_.discourage({.middle = centre, .half_width_mm = 0.9 * rose.radius_mm, .half_height_mm = rose.radius_mm});
    }
  }

  void add_marks() {
    for (const PlacedMark& each : marks_) {
      const double ring_mm = each.mark->radius_nm * projection_.mm_per_nm(unquantise(each.mark->at).lat_deg);
      add_mark_sign(figure_, each.mark->kind, each.at, ring_mm, legibility());
      placer_.block(sign_box(each.mark->kind, each.at, legibility()));
      if (each.mark->kind == MarkKind::danger) placer_.discourage({.middle = each.at, .half_width_mm = ring_mm, .half_height_mm = ring_mm});
    }
  }

  /// The user's own words stay where they were put; labels keep clear of them.
  void add_notes() {
    for (const TextNote& note : document_.text_notes) {
      const SheetPoint at = projection_.to_sheet(unquantise(note.at));
      const std::optional<LaidNote> laid = lay_note(at, note.text, legibility());
      if (!laid) continue;
      add_note(figure_, at, *laid);
      const SheetRect& covers = laid->covers;
      placer_.block({.middle = midpoint({covers.left_mm, covers.top_mm}, {covers.right_mm, covers.bottom_mm}), .half_width_mm = covers.width_mm() / 2, .half_height_mm = covers.height_mm() / 2});
    }
  }

  /// In a corner where nothing is plotted, else anywhere between; where all is taken, over it in the first corner.
  void add_print_words() {
    if (!notes_.print) return;
    const LaidCheckLine laid = lay_check_line(*notes_.print);
    const SheetRect frame = inside_of(projection_.neat_line());
    const double half_w = k_check_line_mm / 2 + k_clear_of_border_mm, half_h = laid.height_mm / 2 + k_clear_of_border_mm / 2;
    std::vector<Box> places;
    for (int row = k_print_word_rows; row >= 0; --row)
      for (const double column : {1.0, 0.0, 0.5})
        places.push_back({.middle = {frame.left_mm + half_w + column * (frame.width_mm() - 2 * half_w), frame.top_mm + half_h + row * (frame.height_mm() - 2 * half_h) / k_print_word_rows},
                          .half_width_mm = half_w, .half_height_mm = half_h});
    const Box& box = places[placer_.place(places).value_or(0)];
    // The graticule alone gives way to it.
    const SheetPoint low = {box.middle.x_mm - half_w, box.middle.y_mm - half_h}, high = {box.middle.x_mm + half_w, box.middle.y_mm + half_h};
    figure_.on(Layer::graticule).push_back(Path{.points = {low, {high.x_mm, low.y_mm}, high, {low.x_mm, high.y_mm}}, .closed = true, .fill = Ink::paper});
    add_check_line(figure_, {box.middle.x_mm - k_check_line_mm / 2, box.middle.y_mm - laid.height_mm / 2}, laid);
  }

  void add_legs() {
    const double weight = weight_mm(Stroke::leg, legibility());
    Segments lines{.stroke = Ink::ink, .weight_mm = weight};
    for (const Leg& leg : document_.legs) {
      const SheetPoint from = placed(leg.from).at, to = placed(leg.to).at;
      lines.ends.insert(lines.ends.end(), {from, to});
      placer_.discourage({.middle = midpoint(from, to), .half_width_mm = distance_mm(from, to) / 2, .half_height_mm = weight, .turn_deg = direction_deg(to - from) - 90});
    }
    figure_.on(Layer::legs).push_back(std::move(lines));
  }

  void add_names(bool dangers) {
    const std::optional<double> height = height_mm(Lettering::name, legibility());
    if (!height) return;
    const Face face = dangers ? Face::italic : Face::regular;
    for (const PlacedMark& each : marks_) {
      if ((each.mark->kind == MarkKind::danger) != dangers) continue;
      Box sign = sign_box(each.mark->kind, each.at, legibility());
      if (dangers) {
        const double ring_mm = each.mark->radius_nm * projection_.mm_per_nm(unquantise(each.mark->at).lat_deg);
        sign.half_width_mm = std::max(sign.half_width_mm, std::min(ring_mm, 20.0));
        sign.half_height_mm = std::max(sign.half_height_mm, std::min(ring_mm, 20.0));
      }
      add_label_beside(figure_, placer_, sign, {.text = each.mark->name, .height_mm = *height, .face = face, .ink = dangers ? Ink::danger : Ink::ink});
    }
  }

  void add_courses() {
    const std::optional<double> height = height_mm(Lettering::course, legibility());
    if (!height) return;
    const double weight = weight_mm(Stroke::leg, legibility());
    for (const Leg& leg : document_.legs) {
      const SheetPoint from = placed(leg.from).at, to = placed(leg.to).at;
      const RhumbLeg rhumb = rhumb_inverse(unquantise(placed(leg.from).mark->at), unquantise(placed(leg.to).mark->at));
      std::string course = direction_figures(rhumb.course.deg(), settings_.rounding), distance = distance_figures(rhumb.distance_nm);
      // American schools write on a line which one it is, where there are several.
      const bool is_named = document_.sheet.signs == SignSet::b && std::find(plot_.told_apart.begin(), plot_.told_apart.end(), leg.id) != plot_.told_apart.end();
      course = is_named ? "TR " + course : course + "°T";
      distance = is_named ? "D " + distance : distance + " nm";
      add_label_along(figure_, placer_, from, to, weight, true, {.text = std::move(course), .height_mm = *height, .face = Face::bold});
      add_label_along(figure_, placer_, from, to, weight, false, {.text = std::move(distance), .height_mm = *height});
    }
  }

  const Document& document_;
  const SheetNotes& notes_;
  const FigureSettings& settings_;
  const PlottedPassage& plot_;
  Projection projection_;
  LabelPlacer placer_;
  std::vector<PlacedMark> marks_;
  std::unordered_map<std::uint32_t, std::size_t> by_id_;
  Figure figure_;
};

}  // namespace

Figure sheet_figure(const Document& document, const SheetNotes& notes, const FigureSettings& settings) {
  return SheetDrawing(document, notes, settings, {}).made();
}

Figure sheet_figure(const Document& document, const SheetNotes& notes, const FigureSettings& settings, const PlottedPassage& plot) {
  return SheetDrawing(document, notes, settings, plot).made();
}

}  // namespace fogsheet
