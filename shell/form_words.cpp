#include "shell/form_words.h"

#include "core/base/quantity_text.h"
#include "core/directions/direction_figures.h"
#include "core/earth/rhumb.h"
#include "core/positions/position_figures.h"
#include "core/sheet/projection.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

std::string count_of(std::size_t count, const char* one, const char* many) { return std::to_string(count) + " " + (count == 1 ? one : many); }

// "1", "1 and 3", "1, 3 and 4".
std::string listed(const std::vector<std::size_t>& numbers) {
  std::string list;
  for (std::size_t i = 0; i < numbers.size(); ++i) list += (i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ") + std::to_string(numbers[i]);
  return list;
}

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

std::string hundredths(double value) { return print_length({.value = value, .unit = LengthUnit::metres}, 2); }

std::string millimetres(double mm) {
  std::string text = hundredths(mm);
  text.resize(text.size() - std::string_view("m").size());
  return text + "mm";
}

}  // namespace

std::string kind_option(MarkKind kind) { return kind == MarkKind::turn ? "turn" : kind_label(kind); }
std::string line_through(int which) { return which == 1 ? "First line, through" : "Second line, through"; }
std::string bearing_of_line(int which) { return which == 1 ? "First line's bearing, T or M" : "Second line's bearing, T or M"; }
std::string leg_number(std::size_t number) { return "leg " + std::to_string(number); }

std::string legs_at_mark(const Document& document, MarkId mark) {
  std::vector<std::size_t> numbers;
  std::size_t number = 0;
  for (const Leg& leg : document.legs) {
    ++number;
    if (leg.from == mark || leg.to == mark) numbers.push_back(number);
  }
  if (numbers.empty()) return "";
  if (numbers.size() == 1) return "Leg " + listed(numbers) + " ends here: it moves with the mark.";
  constexpr std::size_t k_most_named = 6;
  if (numbers.size() > k_most_named) return std::to_string(numbers.size()) + " legs end here: they move with the mark.";
  return "Legs " + listed(numbers) + " end here: they move with the mark.";
}

std::string mark_remark(const Mark& mark) {
  std::string remark;
  const auto add = [&](const std::string& part) { remark += (remark.empty() ? "" : ", ") + part; };
  if (mark.kind == MarkKind::danger) add(distance_figures(mark.radius_nm) + " nm round it");
  if (mark.height_m > 0) add(plain_number(mark.height_m) + " m");
  if (!mark.note.empty()) add(first_line(mark.note));
  return remark;
}

std::string marks_caption(std::size_t count) { return count_of(count, "mark", "marks"); }
std::string legs_caption(std::size_t count) { return count_of(count, "leg", "legs"); }
std::string mark_added(const std::string& name) { return name + " is on the sheet."; }

std::string dimmer_line(int step) {
  switch (step) {
    case 1: return "Dimmer, 1 of 3: tints, hatching and the border's bars are gone.";
    case 2: return "Dimmer, 2 of 3: graticule and the rose's figures between each 30° are gone too.";
    case 3: return "Dimmer, 3 of 3: the lesser words are gone too.";
    default: return "Dimmer: all is shown.";
  }
}

std::string awake_line(const std::string& state) {
  if (state == "held") return "The screen stays on while this page is in sight.";
  if (state == "refused") return "The device would not keep the screen on; a battery that runs low may be why. It is asked again when you come back to this page.";
  if (state == "absent") return "This browser can't keep the screen on. Set the time it takes to go dark in the device's own settings.";
  return "";
}

std::string scale_text(int scale) { return "1:" + grouped(scale); }
std::string scale_option(const std::string& value) { return value == "other" ? value : scale_text(std::stoi(value)); }
std::string corner_label(int which) { return which == 1 ? "One corner, latitude first" : "The corner across from it"; }

std::string marks_come_along(std::size_t marks, std::size_t legs) {
  if (marks == 0) return "There are no marks on the sheet in hand to make one from.";
  return "Fits " + count_of(marks, "mark", "marks") + " of the sheet in hand, and brings " + (marks == 1 ? "it" : "them") + " along" + (legs == 0 ? "." : " with " + count_of(legs, "leg", "legs") + ".");
}

std::string pad_letter_says(char letter) {
  switch (letter) {
    case 'T': return "true";
    case 'M': return "magnetic";
    case 'C': return "compass";
    case 'N': return "north";
    case 'S': return "south";
    case 'E': return "east";
    default: return "west";
  }
}

std::string preview_says(const Document& sheet) { return "The sheet as it will print: " + std::string(paper_name(sheet.sheet.paper)) + ", " + scale_text(sheet.sheet.scale) + "."; }

std::vector<std::pair<std::string, std::string>> sheet_measures(const Document& sheet) {
  const Projection projection = projection_of(sheet);
  const SheetLimits& limits = projection.limits();
  const PaperSize paper = paper_size(sheet.sheet.paper);
  const double middle_lat_deg = unquantise(sheet.sheet.middle).lat_deg;
  const double across_nm = projection.neat_line().width_mm() / projection.mm_per_nm(middle_lat_deg);
  const double up_nm = rhumb_inverse({limits.south_deg, 0}, {limits.north_deg, 0}).distance_nm;
  const auto minute_mm = [&](double lat_deg) { return projection.y_mm(lat_deg - 0.5 / 60) - projection.y_mm(lat_deg + 0.5 / 60); };
  return {{"paper", plain_number(paper.width_mm) + " by " + plain_number(paper.height_mm) + " mm"},
          {"covers", latitude_figures(limits.south_deg, 1) + " to " + latitude_figures(limits.north_deg, 1)},
          {"", longitude_figures(reduce_longitude_deg(limits.west_deg), 1) + " to " + longitude_figures(reduce_longitude_deg(limits.east_deg), 1)},
          {"across and up", distance_figures(across_nm) + " by " + distance_figures(up_nm) + " nm"},
          {"1 nm is", millimetres(projection.mm_per_nm(middle_lat_deg)) + " at the middle"},
          {"1′ of latitude", millimetres(minute_mm(limits.south_deg)) + " at the foot, " + millimetres(minute_mm(limits.north_deg)) + " at the head"}};
}

std::string by_the_model(const std::string& figures) { return figures.empty() ? "by the model" : "by the model: " + figures; }

LegendWords legend_words(SignSet set) {
  const bool a = set == SignSet::a;
  return {"landmark", "light", "turning point", "danger, with its radius", "other", "leg, as drawn",
          a ? "position line" : "position line: time, bearing",
          a ? "water track: one head" : "course and speed",
          a ? "ground track: two heads" : "track and speed over ground",
          a ? "stream: three heads" : "current: set and drift",
          "dead reckoning", "estimated position", "fix, with its time", a ? "running fix: R" : "running fix: R FIX"};
}

std::string sign_set_label(SignSet set) { return set == SignSet::a ? "set A: British, South African schools" : "set B: American schools"; }

}  // namespace fogsheet::words
