// The sheet on paper: which, what is on it, in which ink; how many pages that makes; and the same as a file.
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/printing.h"
#include "shell/words.h"
#include "shell/words_of_print.h"

namespace fogsheet {
namespace {

Press choose(const char* field) { return {"set-print", Value::object({{"field", field}})}; }

}  // namespace

Panel print_slip(const Session& session) {
  const bool black = prints_black(session);
  Panel slip{.name = "print", .label = words::print_title()};
  slip.items.push_back(HeadingItem{.text = words::print_title(), .beside = words::sheet_title(session.document()) + ", " + words::print_beside()});
  slip.items.push_back(parts::close_button());
  parts::add_paper_choices(slip, print_paper(session), choose("paper"), false);
  slip.items.push_back(LineItem{.text = words::pages_there_will_be(print_plan(session)), .tone = LineTone::strong});
  slip.items.push_back(FigureItem{.name = "print-picture", .text = words::sheet_on_paper(), .svg = print_picture(session)});
  slip.items.push_back(ChoiceItem{.name = "print-what", .label = words::print_what_question(), .options = {{"plotted", words::print_plotted()}, {"blank", words::print_blank()}},
                                  .chosen = session.print.blank ? "blank" : "plotted", .argument = "text", .on_choose = choose("what")});
  slip.items.push_back(ChoiceItem{.name = "print-ink", .label = words::print_ink_question(), .options = {{"magenta", words::print_magenta()}, {"black", words::print_black()}},
                                  .chosen = black ? "black" : "magenta", .argument = "text", .on_choose = choose("ink")});
  slip.items.push_back(LineItem{.text = words::print_ink_hint(black), .tone = LineTone::soft});
  slip.items.push_back(LineItem{.text = words::print_at_full_size(), .tone = LineTone::soft});
  slip.items.push_back(HeadingItem{.text = words::as_a_file(), .level = 3});
  slip.items.push_back(LineItem{.text = words::file_hint(), .tone = LineTone::soft});
  ChoiceItem dots{.name = "dots", .label = words::picture_question(), .chosen = std::to_string(session.print.dots_an_inch), .argument = "text", .on_choose = choose("dots")};
  for (const int each : k_picture_dots_an_inch) dots.options.push_back({std::to_string(each), std::to_string(each)});
  slip.items.push_back(std::move(dots));
  slip.items.push_back(ButtonItem{.name = "save-sheet-svg", .label = words::save_as_svg(), .on_press = {"save-sheet-svg"}});
  slip.items.push_back(ButtonItem{.name = "save-sheet-png", .label = words::save_as_png(), .on_press = {"save-sheet-png"}});
  slip.items.push_back(ButtonItem{.name = "print-sheet", .label = words::print_it(), .look = ButtonLook::main, .on_press = {"print-sheet"}});
  return slip;
}

}  // namespace fogsheet
