#include "shell/commands_forms.h"

#include "core/positions/position_text.h"
#include "core/sheet/scale_text.h"
#include "shell/arguments.h"
#include "shell/commands_sheet.h"
#include "shell/form_fields.h"
#include "shell/new_sheet.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

/// What can be said of a field as soon as it is left.
std::string error_in(const std::string& field, const std::string& text) {
  if (text.empty()) return "";
  const auto error_of = [](const auto& result) { return result ? std::string() : words::sentence(result.problem()); };
  if (field == "middle" || field == "corner-a" || field == "corner-b") return error_of(parse_position(text));
  if (field == "other-scale") return error_of(parse_scale(text));
  if (field == "date") return error_of(parse_iso_date(text));
  return "";
}

Value run_fill_new_sheet(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  if (!is_field(k_new_sheet_fields, *field)) return refused({.fault = Fault::entry_unreadable, .texts = {"field", *field}});
  session.new_sheet.keep(*field, *text, error_in(*field, *text));
  return done();
}

Value run_make_new_sheet(Session& session, const Value&) {
  Result<Document> made = made_new_sheet(session);
  if (!made) return refused(made.problem());
  lay_down(session, std::move(made).value(), Act::new_sheet);
  session.new_sheet.clear();
  session.slip = SlipId::none;
  return done();
}

Value run_open_typed_text(Session& session, const Value& arguments) {
  const Result<std::string> text = text_argument(arguments, "text");
  if (!text) return refused(text.problem());
  if (text->empty()) {
    session.open_text.clear();
    session.open_text_error.clear();
    return done();
  }
  const Value answer = run_command(session, "open-link", Value::object({{"text", *text}}));
  const std::string* error = answer["error"].text();
  session.open_text = error ? *text : "";
  session.open_text_error = error ? *error : "";
  return answer;
}

}  // namespace

std::vector<Command> form_commands() {
  return {
      {"fill-new-sheet", "Fill in a new sheet", "", {{"field", "name of a field"}, {"text", "as typed"}}, nullptr, run_fill_new_sheet},
      {"make-new-sheet", "Make the sheet", "", {}, nullptr, run_make_new_sheet},
      {"open-typed-text", "Open what was typed", "", {{"text", "1:… or a link"}}, nullptr, run_open_typed_text},
  };
}

}  // namespace fogsheet
