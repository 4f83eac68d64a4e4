#include "core/figure/check_line.h"

#include "core/figure/legibility.h"
#include "core/figure/note_figure.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr double k_letter_mm = 2.4;  // em: 6.8 pt
constexpr double k_line_mm = 3.1;    // from one line of words to the next
constexpr double k_end_tick_mm = 2.4, k_tick_mm = 1.2;
constexpr double k_between_mm = 1;   // from what the line is for to the cautions
constexpr double k_words_below_mm = 2.9;  // from the line to the first baseline

}  // namespace

std::vector<std::string> small_print(const std::string& words, double width_mm, Face face) {
  return words.empty() ? std::vector<std::string>{} : broken_lines(words, width_mm / k_letter_mm, face);
}

double add_small_print(Figure& figure, SheetPoint at, const std::vector<std::string>& lines, Face face) {
  for (const std::string& line : lines) {
    figure.on(Layer::title).push_back(Text{.at = at, .text = line, .height_mm = k_letter_mm, .face = face, .halo = true});
    at.y_mm += k_line_mm;
  }
  return at.y_mm;
}

LaidCheckLine lay_check_line(const PrintWords& words) {
  LaidCheckLine laid{.lines = small_print(words.check_line, k_check_line_mm, Face::regular), .cautions = small_print(words.cautions, k_check_line_mm, Face::regular)};
  const std::size_t lines = laid.lines.size() + laid.cautions.size();
  laid.height_mm = k_end_tick_mm + k_words_below_mm + k_line_mm * (static_cast<double>(lines) - 1) + (laid.cautions.empty() ? 0 : k_between_mm) + 0.3 * k_letter_mm;
  return laid;
}

void add_check_line(Figure& figure, SheetPoint corner, const LaidCheckLine& laid) {
  const double y_mm = corner.y_mm + k_end_tick_mm, weight = weight_mm(Stroke::neat_line, k_print_legibility);
  Segments line{.ends = {{corner.x_mm, y_mm}, {corner.x_mm + k_check_line_mm, y_mm}}, .weight_mm = weight};
  for (int cm = 0; cm <= 10; ++cm) {
    const double x_mm = corner.x_mm + k_check_line_mm * cm / 10;
    line.ends.insert(line.ends.end(), {{x_mm, y_mm}, {x_mm, y_mm - (cm % 5 == 0 ? k_end_tick_mm : k_tick_mm)}});
  }
  figure.on(Layer::title).push_back(std::move(line));
  const double next_mm = add_small_print(figure, {corner.x_mm, y_mm + k_words_below_mm}, laid.lines, Face::regular);
  add_small_print(figure, {corner.x_mm, next_mm + k_between_mm}, laid.cautions, Face::regular);
}

}  // namespace fogsheet
