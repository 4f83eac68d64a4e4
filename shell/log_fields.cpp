#include "shell/log_fields.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/clock_text.h"
#include "core/base/number_text.h"
#include "core/base/quantity_text.h"
#include "core/base/utf8.h"
#include "core/boat/swing_record.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/formats/boat_fields.h"
#include "shell/typed_entry.h"
#include "shell/typed_quantity.h"

namespace fogsheet {
namespace {

struct MethodName {
  SwingMethod method;
  const char* name;
};
constexpr MethodName k_methods[] = {{SwingMethod::trusted_bearings, "trusted"},
                                    {SwingMethod::known_object, "known"},
                                    {SwingMethod::unknown_object, "unknown"},
                                    {SwingMethod::relative_bearing, "relative"},
                                    {SwingMethod::satellite, "satellite"}};

using typed::direction_shown;
using typed::no_such_field;
using typed::number_shown;
using typed::Parsed;
using typed::put;
using typed::put_optional;
using typed::put_text;

// -- one value, typed

/// @param by  what the direction is by: a letter that says otherwise is refused.
Result<double> typed_direction(const std::string& text, Reference by) {
  const Result<TypedDirection> typed = parse_direction(text);
  if (!typed) return typed.problem();
  if (typed->reference.value_or(by) == by) return typed->deg;
  const char* letter = *typed->reference == Reference::true_north ? "T" : *typed->reference == Reference::magnetic ? "M" : "C";
  return Problem{.fault = Fault::entry_unreadable, .texts = {"direction of this kind", letter}};
}

Parsed put_direction(std::optional<double>& deg, const std::string& text, Reference by) {
  return put_optional(deg, text, [&](const std::string& typed) { return typed_direction(typed, by); });
}

Parsed put_minute(int& minute, const std::string& text) {
  if (trimmed(text).empty()) {
    minute = -1;
    return Done{};
  }
  const Result<ClockTime> time = parse_clock_time(text);
  if (!time) return time.problem();
  minute = time->minutes;
  return Done{};
}

Parsed put_reference(Reference& reference, const std::string& text) {
  reference = text == "true" ? Reference::true_north : Reference::magnetic;
  return Done{};
}

/// The row that a field is of; one past the last is added. Null further on, or with no room.
template <class Row>
Row* row_at(std::vector<Row>& rows, std::size_t row) {
  if (row == rows.size() && row < k_most_rows) rows.emplace_back();
  return row < rows.size() ? &rows[row] : nullptr;
}

// -- the fields of each kind

Parsed put_row(Check& check, const RowField& field, const std::string& text) {
  CheckRow* row = row_at(check.rows, field.row);
  if (row && field.name == "object") return put_text(row->object, text);
  if (row && field.name == "trusted") return put_direction(row->trusted_deg, text, check.reference);
  if (row && field.name == "read") return put_direction(row->read_deg, text, Reference::compass);
  return no_such_field(field.name);
}

Parsed put_field(Check& check, const std::string& field, const std::string& text) {
  if (field == "place") return put_text(check.place, text);
  if (field == "reference") return put_reference(check.reference, text);
  if (field == "variation") return put(check.variation_deg, parse_correction_deg("variation", text));
  return no_such_field(field);
}

Parsed put_row(Swing& swing, const RowField& field, const std::string& text) {
  SwingRow* row = row_at(swing.rows, field.row);
  if (!row) return no_such_field(field.name);
  if (field.name == "heading") return put(row->heading_deg, typed_direction(text, Reference::compass));
  if (field.name == "read") return put_direction(row->read_deg, text, swing.method == SwingMethod::satellite ? Reference::true_north : Reference::compass);
  if (field.name == "trusted") return put_direction(row->trusted_deg, text, swing.reference);
  if (field.name == "speed") return put_optional(row->speed_kn, text, typed_knots);
  if (field.name == "time") return put_minute(row->minute, text);
  if (field.name == "turning") {
    row->turning = text == "starboard" ? TurningTo::starboard : text == "port" ? TurningTo::port : TurningTo::not_said;
    return Done{};
  }
  return no_such_field(field.name);
}

Parsed put_field(Swing& swing, const std::string& field, const std::string& text) {
  if (field == "place") return put_text(swing.place, text);
  if (field == "object") return put_text(swing.object, text);
  if (field == "bearing") return put_direction(swing.object_deg, text, swing.reference);
  if (field == "reference") return put_reference(swing.reference, text);
  if (field == "variation") return put(swing.variation_deg, parse_correction_deg("variation", text));
  if (field == "distance") return put_optional(swing.object_nm, text, typed_nm);
  if (field == "circle") return put_optional(swing.circle_m, text, typed_metres);
  if (field == "method") {
    const std::optional<SwingMethod> method = method_named(text);
    if (!method) return no_such_field(text);
    swing.method = *method;
    return Done{};
  }
  return no_such_field(field);
}

/// A typed card's fields are its headings: "row/45/deviation".
Parsed put_row(TypedCard& card, const RowField& field, const std::string& text) {
  if (field.name != "deviation" || field.row >= 360) return no_such_field(field.name);
  const CompassDirection heading(static_cast<double>(field.row));
  const auto found = std::find_if(card.entries.begin(), card.entries.end(), [&](const DeviationEntry& entry) { return entry.heading == heading; });
  if (trimmed(text).empty()) {
    if (found != card.entries.end()) card.entries.erase(found);
    return Done{};
  }
  const Result<double> deviation = parse_correction_deg("deviation", text);
  if (!deviation) return deviation.problem();
  if (found != card.entries.end()) found->deviation.deg = *deviation;
  else card.entries.push_back({heading, {.deg = *deviation}});
  return Done{};
}

Parsed put_field(TypedCard& card, const std::string& field, const std::string& text) {
  return field == "by" ? put_text(card.by, text) : no_such_field(field);
}

Parsed put_row(Trial& trial, const RowField& field, const std::string& text) {
  TrialRow* row = row_at(trial.rows, field.row);
  if (row && field.name == "thing") return put_text(row->thing, text);
  if (row && field.name == "off") return put_direction(row->off_deg, text, Reference::compass);
  if (row && field.name == "on") return put_direction(row->on_deg, text, Reference::compass);
  return no_such_field(field.name);
}

Parsed put_field(Trial&, const std::string& field, const std::string&) { return no_such_field(field); }

Parsed put_row(Remark&, const RowField& field, const std::string&) { return no_such_field(field.name); }

Parsed put_field(Remark& remark, const std::string& field, const std::string& text) {
  return field == "text" ? put_text(remark.text, text) : no_such_field(field);
}

std::optional<Problem> wrong_row(const LogEntryKind& what, std::size_t row) {
  if (const auto* swing = std::get_if<Swing>(&what)) return row_problem(*swing, row);
  if (const auto* check = std::get_if<Check>(&what)) return row_problem(*check, row);
  return std::nullopt;
}

// -- shown

std::string correction(double deg, int decimals) { return deg == 0 ? "0" : print_fixed(std::abs(deg), decimals) + (deg > 0 ? "E" : "W"); }

std::string reference_text(Reference reference) { return reference == Reference::true_north ? "true" : "magnetic"; }

std::string text_of_row(const Check& check, const RowField& field) {
  if (field.row >= check.rows.size()) return "";
  const CheckRow& row = check.rows[field.row];
  return field.name == "object" ? row.object : field.name == "trusted" ? direction_shown(row.trusted_deg) : field.name == "read" ? direction_shown(row.read_deg) : "";
}

std::string text_of(const Check& check, const std::string& field) {
  return field == "place" ? check.place : field == "reference" ? reference_text(check.reference) : field == "variation" ? correction(check.variation_deg, 2) : "";
}

std::string text_of_row(const Swing& swing, const RowField& field) {
  if (field.row >= swing.rows.size()) return "";
  const SwingRow& row = swing.rows[field.row];
  if (field.name == "heading") return direction_shown(row.heading_deg);
  if (field.name == "read") return direction_shown(row.read_deg);
  if (field.name == "trusted") return direction_shown(row.trusted_deg);
  if (field.name == "speed") return number_shown(row.speed_kn);
  if (field.name == "time") return row.minute < 0 ? "" : print_clock_time({.minutes = row.minute});
  if (field.name == "turning") return row.turning == TurningTo::starboard ? "starboard" : row.turning == TurningTo::port ? "port" : "none";
  return "";
}

std::string text_of(const Swing& swing, const std::string& field) {
  if (field == "place") return swing.place;
  if (field == "object") return swing.object;
  if (field == "bearing") return direction_shown(swing.object_deg);
  if (field == "reference") return reference_text(swing.reference);
  if (field == "variation") return correction(swing.variation_deg, 2);
  if (field == "distance") return number_shown(swing.object_nm);
  if (field == "circle") return number_shown(swing.circle_m);
  if (field == "method") return method_name(swing.method);
  return "";
}

std::string text_of_row(const TypedCard& card, const RowField& field) {
  for (const DeviationEntry& entry : card.entries)
    if (field.name == "deviation" && entry.heading.deg() == static_cast<double>(field.row)) return correction(entry.deviation.deg, 1);
  return "";
}

std::string text_of(const TypedCard& card, const std::string& field) { return field == "by" ? card.by : ""; }

std::string text_of_row(const Trial& trial, const RowField& field) {
  if (field.row >= trial.rows.size()) return "";
  const TrialRow& row = trial.rows[field.row];
  return field.name == "thing" ? row.thing : field.name == "off" ? direction_shown(row.off_deg) : field.name == "on" ? direction_shown(row.on_deg) : "";
}

std::string text_of(const Trial&, const std::string&) { return ""; }
std::string text_of_row(const Remark&, const RowField&) { return ""; }
std::string text_of(const Remark& remark, const std::string& field) { return field == "text" ? remark.text : ""; }

}  // namespace

const char* method_name(SwingMethod method) {
  for (const MethodName& row : k_methods)
    if (row.method == method) return row.name;
  return "";
}

std::optional<SwingMethod> method_named(const std::string& name) {
  for (const MethodName& row : k_methods)
    if (name == row.name) return row.method;
  return std::nullopt;
}

std::optional<RowField> row_field(const std::string& field) {
  constexpr std::string_view k_row = "row/";
  const std::size_t slash = field.rfind('/');
  if (field.compare(0, k_row.size(), k_row) != 0 || slash <= k_row.size()) return std::nullopt;
  const Result<double> row = parse_plain_number("row", field.substr(k_row.size(), slash - k_row.size()), 0, static_cast<double>(k_most_rows) + 360);
  if (!row || *row != std::floor(*row)) return std::nullopt;
  return RowField{.row = static_cast<std::size_t>(*row), .name = field.substr(slash + 1)};
}

std::string row_field_name(std::size_t row, const char* name) { return "row/" + std::to_string(row) + "/" + name; }

Result<LogEntry> with_field(LogEntry entry, const std::string& field, const std::string& text) {
  if (field == "date") {
    const Result<Date> date = parse_iso_date(trimmed(text));
    if (!date) return date.problem();
    entry.date = *date;
    return as_kept(std::move(entry));
  }
  const std::optional<RowField> row = row_field(field);
  const Parsed parsed = std::visit([&](auto& what) { return row ? put_row(what, *row, text) : put_field(what, field, text); }, entry.what);
  if (!parsed) return parsed.problem();
  Result<LogEntry> kept = as_kept(std::move(entry));
  if (!kept || !row) return kept;
  if (const std::optional<Problem> wrong = wrong_row(kept->what, row->row)) return *wrong;
  return kept;
}

std::string field_text(const LogEntry& entry, const std::string& field) {
  if (field == "date") return iso_date(entry.date);
  const std::optional<RowField> row = row_field(field);
  return std::visit([&](const auto& what) { return row ? text_of_row(what, *row) : text_of(what, field); }, entry.what);
}

std::size_t row_count(const LogEntry& entry) {
  if (const auto* check = std::get_if<Check>(&entry.what)) return check->rows.size();
  if (const auto* swing = std::get_if<Swing>(&entry.what)) return swing->rows.size();
  if (const auto* trial = std::get_if<Trial>(&entry.what)) return trial->rows.size();
  return 0;
}

LogEntry without_row(LogEntry entry, std::size_t row) {
  const auto erase = [&](auto& rows) { rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(row)); };
  if (auto* check = std::get_if<Check>(&entry.what)) erase(check->rows);
  if (auto* swing = std::get_if<Swing>(&entry.what)) erase(swing->rows);
  if (auto* trial = std::get_if<Trial>(&entry.what)) erase(trial->rows);
  return entry;
}

}  // namespace fogsheet
