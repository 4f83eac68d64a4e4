#include "core/figure/note_figure.h"

#include <algorithm>

#include "core/figure/text_metrics.h"
#include "core/figure/weights.h"

namespace fogsheet {
namespace {

constexpr double k_widest_em = 22;     // a column that the eye follows
constexpr double k_line_em = 1.25;     // from one line to the next
constexpr double k_descent_em = 0.25;

/// Bytes of the longest start of a text that fits, at least one character.
std::size_t fitting(std::string_view text, double width_em, Face face) {
  std::size_t fits = 0;
  while (fits < text.size()) {
    std::size_t next = fits + 1;
    while (next < text.size() && (static_cast<unsigned char>(text[next]) & 0xC0) == 0x80) ++next;
    if (fits > 0 && text_width_em(text.substr(0, next), face) > width_em) break;
    fits = next;
  }
  return fits;
}

}  // namespace

std::vector<std::string> broken_lines(std::string_view text, double width_em, Face face) {
  std::vector<std::string> lines;
  while (true) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    while (text_width_em(line, face) > width_em) {
      std::size_t fits = fitting(line, width_em, face);
      const std::size_t blank = line.substr(0, fits).rfind(' ');
      const bool at_blank = fits < line.size() && line[fits] != ' ' && blank != std::string_view::npos && blank > 0;
      if (at_blank) fits = blank;
      if (fits >= line.size()) break;
      lines.emplace_back(line.substr(0, fits));
      line.remove_prefix(fits);
      while (!line.empty() && line.front() == ' ') line.remove_prefix(1);
    }
    lines.emplace_back(line);
    if (end == text.size()) return lines;
    text.remove_prefix(end + 1);
  }
}

std::optional<LaidNote> lay_note(SheetPoint at, std::string_view text, const Legibility& legibility) {
  const std::optional<double> height = height_mm(Lettering::name, legibility);
  if (!height) return std::nullopt;
  LaidNote note{.height_mm = *height, .lines = broken_lines(text, k_widest_em, Face::regular)};
  double widest_em = 0;
  for (const std::string& line : note.lines) widest_em = std::max(widest_em, text_width_em(line, Face::regular));
  note.covers = {at.x_mm, at.y_mm - cap_height_em(Face::regular) * *height, at.x_mm + widest_em * *height,
                 at.y_mm + (k_line_em * static_cast<double>(note.lines.size() - 1) + k_descent_em) * *height};
  return note;
}

void add_note(Figure& figure, SheetPoint at, const LaidNote& note) {
  for (const std::string& line : note.lines) {
    figure.on(Layer::labels).push_back(Text{.at = at, .text = line, .height_mm = note.height_mm, .face = Face::regular, .ink = Ink::ink, .halo = true});
    at.y_mm += k_line_em * note.height_mm;
  }
}

}  // namespace fogsheet
