#include "shell/new_sheet.h"

#include <utility>
#include <vector>

#include "core/base/utf8.h"
#include "core/document/sheet_actions.h"
#include "core/positions/position_text.h"
#include "core/sheet/scale_text.h"
#include "core/sheet/sheet_fit.h"
#include "shell/typed_variation.h"
#include "shell/words.h"

namespace fogsheet {
namespace {

/// Reads one field; what is wrong is noted there.
template <class Read>
auto read_field(Form& form, const char* field, Read read) {
  auto result = read(form.text(field));
  form.keep(field, form.text(field), result ? "" : words::sentence(result.problem()));
  return result;
}

Result<SheetShape> from_middle(Form& form, Paper paper) {
  const Result<Position> middle = read_field(form, "middle", [](const std::string& text) { return parse_position(text); });
  const bool other = form.text("scale") == "other";
  const Result<double> scale = other ? read_field(form, "other-scale", [](const std::string& text) { return parse_scale(text); }) : parse_scale(form.text("scale", k_usual_scale));
  if (!middle) return middle.problem();
  if (!scale) return scale.problem();
  return SheetShape{middle->lat_deg, middle->lon_deg, *scale, paper};
}

Result<SheetShape> from_corners(Form& form, Paper paper) {
  const Result<Position> a = read_field(form, "corner-a", [](const std::string& text) { return parse_position(text); });
  const Result<Position> b = read_field(form, "corner-b", [](const std::string& text) { return parse_position(text); });
  if (!a) return a.problem();
  if (!b) return b.problem();
  const Result<FittedSheet> fitted = sheet_holding(std::vector<Position>{*a, *b}, paper, 0);
  if (fitted) return SheetShape{fitted->middle.lat_deg, fitted->middle.lon_deg, fitted->scale, paper};
  form.mark_wrong("corner-b", words::sentence(fitted.problem()));
  return fitted.problem();
}

Result<SheetShape> from_marks(Form& form, const Document& document, Paper paper) {
  const Result<SheetShape> shape = shape_around_marks(document, paper);
  if (!shape) form.mark_wrong("how", words::sentence(shape.problem()));
  return shape;
}

Result<SheetShape> shape_of(Form& form, const Document& in_hand, Paper paper) {
  switch (sheet_from(form)) {
    case SheetFrom::middle: return from_middle(form, paper);
    case SheetFrom::corners: return from_corners(form, paper);
    case SheetFrom::marks: return from_marks(form, in_hand, paper);
  }
  return from_middle(form, paper);
}

// A sheet made anew, with the marks and legs of another on it.
Document with_marks_of(Document document, const Document& other) {
  document.marks = other.marks;
  document.legs = other.legs;
  document.next_id = other.next_id;
  Table<Rose> roses;
  for (Rose rose : document.roses) {
    rose.id = {document.next_id++};
    roses = roses.with(rose);
  }
  document.roses = roses;
  return document;
}

// The field that a sheet can't be made for.
const char* field_of(const Problem& problem, const Form& form) {
  const bool scale = problem.fault == Fault::number_out_of_range && problem.texts.front() == "scale";
  if (scale && form.text("scale") == "other") return "other-scale";
  if (problem.fault == Fault::name_too_long) return "name";
  return sheet_from(form) == SheetFrom::corners ? "corner-b" : "middle";
}

std::string datum_of(const Form& form) {
  const std::string chosen = form.text("datum", "WGS84");
  return chosen == "another" ? form.text("other-datum") : chosen;
}

Result<Document> laid_out(const Session& session, Form& form, Date today) {
  const Paper paper = paper_named(form.text("paper", k_usual_paper)).value_or(Paper::a4_across);
  const Result<SheetShape> shape = shape_of(form, session.document(), paper);
  if (!shape) return shape.problem();
  const Result<Date> date = read_field(form, "date", [&](const std::string& text) { return trimmed(text).empty() ? Result<Date>(today) : parse_iso_date(trimmed(text)); });
  if (!date) return date.problem();
  const Result<Document> made = made_sheet({.name = form.text("name"), .mid_lat_deg = shape->mid_lat_deg, .mid_lon_deg = shape->mid_lon_deg, .scale = shape->scale, .paper = paper, .date = *date});
  if (!made) {
    form.mark_wrong(made.problem().fault == Fault::number_out_of_range && made.problem().texts.front() == "year" ? "date" : field_of(made.problem(), form), words::sentence(made.problem()));
    return made;
  }
  return sheet_from(form) == SheetFrom::marks ? with_marks_of(*made, session.document()) : *made;
}

}  // namespace

SheetFrom sheet_from(const Form& form) {
  const std::string how = form.text("how", "middle");
  return how == "corners" ? SheetFrom::corners : how == "marks" ? SheetFrom::marks : SheetFrom::middle;
}

Result<Document> made_new_sheet(Session& session) {
  Form& form = session.new_sheet;
  const Result<Document> made = laid_out(session, form, session.platform.today());
  if (!made) return made;
  History draft(*made);
  const Result<Done> noted = describe_sheet(draft, {.note = form.text("note")});
  if (!noted) {
    form.mark_wrong("note", words::sentence(noted.problem()));
    return noted.problem();
  }
  const Result<Done> dated = describe_sheet(draft, {.datum = datum_of(form)});
  if (!dated) {
    form.mark_wrong("other-datum", words::sentence(dated.problem().fault == Fault::name_empty ? Problem{.fault = Fault::entry_empty, .texts = {"datum"}} : dated.problem()));
    return dated.problem();
  }
  if (form.text("variation-by") == "printed") {
    const Result<PrintedVariation> note = typed_chart_note(form, "");
    if (!note) return note.problem();
    const Result<Done> set = set_chart_note(draft, *note);
    if (!set) return set.problem();
  }
  return draft.now();
}

std::optional<Document> previewed_sheet(const Session& session) {
  Form form = session.new_sheet;
  const Result<Document> made = laid_out(session, form, session.platform.today());
  if (!made) return std::nullopt;
  return *made;
}

}  // namespace fogsheet
