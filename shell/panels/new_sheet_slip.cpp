// A sheet of one's own: its middle as it is written anywhere, a scale and a paper.
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"

namespace fogsheet {

Panel new_sheet_slip(const Session& session) {
  const NewSheetForm& form = session.new_sheet_form;
  Panel slip{.name = "new-sheet", .label = "New sheet"};
  slip.items.push_back(HeadingItem{.text = "A sheet of mine", .beside = "the one in hand can be had back with Undo"});
  slip.items.push_back(parts::close_button());
  slip.items.push_back(FieldItem{.name = "middle", .label = "Middle of the sheet, latitude first", .text = form.middle, .error = form.error, .on_leave = {"fill-new-sheet", Value::object({{"field", "middle"}})}});
  ChoiceItem scale{.name = "scale", .label = "Scale", .chosen = form.scale, .argument = "text", .on_choose = {"fill-new-sheet", Value::object({{"field", "scale"}})}};
  scale.options = {{"25000", "1 : 25 000"}, {"50000", "1 : 50 000"}, {"100000", "1 : 100 000"}, {"200000", "1 : 200 000"}, {"500000", "1 : 500 000"}, {"1000000", "1 : 1 000 000"}};
  slip.items.push_back(scale);
  ChoiceItem paper{.name = "paper", .label = "Paper", .chosen = form.paper, .argument = "text", .on_choose = {"fill-new-sheet", Value::object({{"field", "paper"}})}};
  for (const Paper each : all_papers()) {
    std::string label(paper_name(each));
    for (char& c : label)
      if (c == '-') c = ' ';
    paper.options.push_back({std::string(paper_name(each)), each == Paper::screen ? "this screen" : label});
  }
  slip.items.push_back(paper);
  slip.items.push_back(LineItem{.text = "It knows only what you mark on it. It is not a chart.", .tone = LineTone::soft});
  slip.items.push_back(ButtonItem{.name = "make-new-sheet", .label = "Make the sheet", .look = ButtonLook::main, .on_press = {"make-new-sheet"}});
  return slip;
}

}  // namespace fogsheet
