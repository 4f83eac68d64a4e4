#include "shell/commands_forms.h"

#include <cstdlib>

#include "core/positions/position_text.h"
#include "shell/arguments.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

Value run_fill_new_sheet(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  NewSheetForm& form = session.new_sheet_form;
  if (*field == "scale") form.scale = *text;
  else if (*field == "paper") form.paper = *text;
  else if (*field == "middle") {
    form.middle = *text;
    const Result<Position> read = parse_position(*text);
    form.error = text->empty() || read.ok() ? "" : words::sentence(read.problem());
  } else {
    return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
  }
  return done();
}

Value run_make_new_sheet(Session& session, const Value&) {
  NewSheetForm& form = session.new_sheet_form;
  const Result<Position> middle = parse_position(form.middle);
  if (!middle) {
    form.error = words::sentence(middle.problem());
    return Value::object({{"error", form.error}});
  }
  const Value answer = run_command(session, "new-sheet", Value::object({{"mid_lat_deg", middle->lat_deg}, {"mid_lon_deg", middle->lon_deg}, {"scale", std::atoi(form.scale.c_str())}, {"paper", form.paper}}));
  if (const std::string* error = answer["error"].text()) form.error = *error;
  else {
    form = {};
    session.slip = SlipId::none;
  }
  return answer;
}

Value run_open_typed_text(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  if (text->empty()) {
    session.open_text.clear();
    session.open_text_error.clear();
    return done();
  }
  const Value answer = run_command(session, "open-text", Value::object({{"text", *text}}));
  const std::string* error = answer["error"].text();
  session.open_text = error ? *text : "";
  session.open_text_error = error ? *error : "";
  return answer;
}

}  // namespace

std::vector<Command> form_commands() {
  return {
      {"fill-new-sheet", "Fill in a new sheet", "", {{"field", "middle, scale or paper"}, {"text", "as typed"}}, nullptr, run_fill_new_sheet},
      {"make-new-sheet", "Make the sheet", "", {}, nullptr, run_make_new_sheet},
      {"open-typed-text", "Open what was typed", "", {{"text", "1:… or a link"}}, nullptr, run_open_typed_text},
  };
}

}  // namespace fogsheet
