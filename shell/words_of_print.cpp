#include "shell/words_of_print.h"

namespace fogsheet::words {

std::string print_ink_hint(bool black) {
  return black ? "For the night: a red torch wipes magenta out." : "As on charts. By a red torch it can’t be seen: choose all black for the night.";
}

std::string pages_there_will_be(const PagePlan& plan) {
  if (plan.count() == 1) return "One page.";
  return std::to_string(plan.count()) + " pages, " + std::to_string(plan.across) + " across and " + std::to_string(plan.down) +
         " down. They overlap by 10 mm: cut along the dashes, lay cross on cross.";
}

std::string picture_too_large(int largest_dots_an_inch) {
  if (largest_dots_an_inch == 0) return "This device can’t make a picture of the sheet that large. Save it as SVG.";
  return "This device can’t make a picture that large. " + std::to_string(largest_dots_an_inch) + " dots an inch works here; SVG is sharp at any size.";
}

std::string check_line() { return "This line is 100 mm. If it is not, the printer has scaled the page: print at 100 %, not “fit to page”."; }

std::string print_cautions() {
  return "Before you rely on this sheet: it knows only what you put on it: no depths, no rocks, no coast. Use official charts, notices, tide tables and the rules of the place, "
         "up to date, and a second way of knowing where you are: one source is a guess. Keep a lookout by eye and ear, go at a speed you can stop in, make your fog signal. "
         "Keep out of shipping lanes: others may not see you. Do not leave in fog. A compass out by more than 5°: have it adjusted by someone licensed.";
}

std::string page_number(const PagePlan& plan, int page) { return "page " + std::to_string(page + 1) + " of " + std::to_string(plan.count()); }

std::string page_joins(const PagePlan& plan, int page) {
  struct Side {
    int right, below;
    const char* where;
  };
  constexpr Side k_sides[] = {{-1, 0, " on its left"}, {1, 0, " on its right"}, {0, -1, " above"}, {0, 1, " below"}};
  std::string text;
  for (const Side& side : k_sides)
    if (const auto other = plan.beside(page, side.right, side.below)) text += (text.empty() ? "Joins page " : ", page ") + std::to_string(*other + 1) + side.where;
  return text + ". Cut along the dashes, lay cross on cross. Not a chart: it knows only what was put on it; its cautions stand on the sheet.";
}

}  // namespace fogsheet::words
