#include "shell/commands_print.h"

#include "shell/arguments.h"
#include "shell/printing.h"
#include "shell/words.h"
#include "shell/words_of_files.h"

namespace fogsheet {
namespace {

struct Choice {
  const char* field;
  bool (*put)(PrintChoice& choice, const std::string& text);  // false: it is none of the words for that
};

template <class T>
bool put_either(const std::string& text, const char* no, const char* yes, T& kept) {
  if (text != no && text != yes) return false;
  kept = text == yes;
  return true;
}

constexpr Choice k_choices[] = {
    {"paper", [](PrintChoice& choice, const std::string& text) {
       const std::optional<Paper> paper = paper_named(text);
       if (!paper || *paper == Paper::screen) return false;
       choice.paper = paper;
       return true;
     }},
    {"what", [](PrintChoice& choice, const std::string& text) { return put_either(text, "plotted", "blank", choice.blank); }},
    {"ink", [](PrintChoice& choice, const std::string& text) { return put_either(text, "magenta", "black", choice.black); }},
    {"dots", [](PrintChoice& choice, const std::string& text) {
       for (const int dots : k_picture_dots_an_inch)
         if (text == std::to_string(dots)) {
           choice.dots_an_inch = dots;
           return true;
         }
       return false;
     }},
};

std::optional<Problem> put(Session& session, const Choice& choice, const std::string& text) {
  if (choice.put(session.print, text)) return std::nullopt;
  return Problem{.fault = Fault::entry_unreadable, .texts = {choice.field, text}};
}

/// The paper's size, without its way.
std::string_view size_of(Paper paper) { return paper_name(paper).substr(0, paper_name(paper).find('-')); }

/// As a choice in the slip: another size of paper comes the way that takes fewer pages.
Value run_set_print(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  const Paper before = print_paper(session);
  for (const Choice& choice : k_choices) {
    if (*field != choice.field) continue;
    if (const std::optional<Problem> problem = put(session, choice, *text)) return refused(*problem);
    if (const Paper now = print_paper(session); size_of(now) != size_of(before)) session.print.paper = better_way(paper_size(session.document().sheet.paper), now);
    return done();
  }
  return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
}

/// What a command was given is chosen from then on; nothing is when one of them can't be.
std::optional<Problem> put_all(Session& session, const Value& arguments) {
  const PrintChoice before = session.print;
  for (const Choice& choice : k_choices) {
    const Result<std::optional<std::string>> text = optional_text(arguments, choice.field);
    const std::optional<Problem> problem = !text ? std::optional(text.problem()) : *text ? put(session, choice, **text) : std::nullopt;
    if (!problem) continue;
    session.print = before;
    return problem;
  }
  return std::nullopt;
}

/// The pages are there while the browser prints, as long as the slip is open (App::set_printing).
Value run_print_sheet(Session& session, const Value& arguments) {
  if (const std::optional<Problem> problem = put_all(session, arguments)) return refused(*problem);
  session.slip = SlipId::print;
  session.platform.print_page();
  return done();
}

Value save(Session& session, const Value& arguments, bool as_picture) {
  if (const std::optional<Problem> problem = put_all(session, arguments)) return refused(*problem);
  session.platform.save_picture(words::file_name(session.document(), as_picture ? "png" : "svg"), sheet_as_svg(session), as_picture ? session.print.dots_an_inch : 0);
  return done();
}

Value run_save_svg(Session& session, const Value& arguments) { return save(session, arguments, false); }
Value run_save_png(Session& session, const Value& arguments) { return save(session, arguments, true); }

}  // namespace

std::vector<Command> print_commands() {
  const Argument what{"what", "plotted or blank", true}, ink{"ink", "magenta or black", true};
  return {
      {"set-print", "Choose how the sheet is printed", "", {{"field", "paper, what, ink or dots"}, {"text", "as print-sheet and save-sheet-png have it"}}, nullptr, run_set_print},
      {"print-sheet", "Print the sheet", "", {{"paper", "A4-upright, Letter-across ...; the sheet's own", true}, what, ink}, nullptr, run_print_sheet},
      {"save-sheet-svg", "Save the sheet as SVG", "", {what, ink}, nullptr, run_save_svg},
      {"save-sheet-png", "Save the sheet as PNG", "", {{"dots", "\"150\", \"300\" or \"600\" dots an inch", true}, what, ink}, nullptr, run_save_png},
  };
}

}  // namespace fogsheet
