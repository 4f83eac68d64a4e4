// Commands on the entries of a compass's log.
#include "core/boat/boat_actions.h"
#include "core/boat/swing_record.h"
#include "core/earth/rhumb.h"
#include "core/magnetic/field.h"
#include "shell/arguments.h"
#include "shell/commands_compass.h"
#include "shell/log_fields.h"
#include "shell/words.h"
#include "shell/words_of_boats.h"

namespace fogsheet {
namespace {

std::optional<Fault> no_entry(const Session& session) { return entry_in_hand(session) ? std::nullopt : std::optional(Fault::log_entry_unknown); }

/// The field at the sheet's middle on that day; none outside the models.
std::optional<CardField> field_here(const Session& session, Date date) {
  const Result<MagneticField> field = magnetic_field(unquantise(session.document().sheet.middle), decimal_year(date));
  return field ? std::optional(CardField{field->horizontal_nt, field->inclination_deg}) : std::nullopt;
}

std::optional<LogEntryKind> blank_entry(const Session& session, const std::string& kind, Date date) {
  const VariationInUse& variation = session.facts().variation;
  const double variation_deg = variation.value ? variation.value->deg : 0;
  if (kind == "check") return Check{.variation_deg = variation_deg};
  if (kind == "swing") return Swing{.method = SwingMethod::known_object, .variation_deg = variation_deg, .variation_sd_deg = variation.uncertainty_deg, .field = field_here(session, date), .rows = eight_headings()};
  if (kind == "card") return TypedCard{.field = field_here(session, date)};
  if (kind == "trial") return Trial{};
  if (kind == "adjustment") return Remark{.adjusted = true, .text = words::adjusted_remark()};
  if (kind == "note") return Remark{.text = words::blank_remark()};
  return std::nullopt;
}

void open_entry(Session& session, EntryId id) {
  session.compass_desk.entry = id;
  session.compass_desk.row.reset();
  session.slip = SlipId::log_entry;
}

Value run_begin_entry(Session& session, const Value& arguments) {
  const Result<std::string> kind = text_argument(arguments, "kind");
  if (!kind) return refused(kind.problem());
  const Date today = session.platform.today();
  const std::optional<LogEntryKind> what = blank_entry(session, *kind, today);
  if (!what) return refused({.fault = Fault::entry_unreadable, .texts = {"kind", *kind}});
  const CompassId compass = compass_in_hand(session)->id;
  const Result<EntryId> added = acted_on_boat(session, [&](BoatHistory& history) { return add_log_entry(history, compass, today, *what); });
  if (added) open_entry(session, *added);
  return answer_of(added);
}

Value run_open_entry(Session& session, const Value& arguments) {
  const Result<std::string> id = text_argument(arguments, "id");
  if (!id) return refused(id.problem());
  for (const Compass& compass : boat_in_hand(session)->now().compasses)
    for (const LogEntry& entry : compass.log)
      if (std::to_string(entry.id.value) == *id) {
        open_entry(session, entry.id);
        return done();
      }
  return refused({.fault = Fault::log_entry_unknown, .texts = {*id}});
}

Value run_strike_out_entry(Session& session, const Value&) {
  const EntryId id = session.compass_desk.entry;
  return answer_of(acted_on_boat(session, [&](BoatHistory& history) { return remove_log_entry(history, id); }));
}

Value changed_entry(Session& session, const LogEntry& entry) {
  return answer_of(acted_on_boat(session, [&](BoatHistory& history) { return change_log_entry(history, entry); }));
}

/// What can't be taken stays in its field with the reason, and the log as it was.
Value run_type_entry(Session& session, const Value& arguments) {
  const Result<std::string> field = text_argument(arguments, "field"), text = text_argument(arguments, "text");
  for (const Result<std::string>* each : {&field, &text})
    if (!*each) return refused(each->problem());
  const LogEntry& standing = *entry_in_hand(session);
  const std::string key = typed_prefix(session.compass_desk, standing.id) + *field;
  Form& typed = session.compass_desk.typed;
  if (*text == field_text(standing, *field)) {  // left as it stood: no step, though rounding may have hidden figures
    typed.drop(key);
    return done();
  }
  const Result<LogEntry> next = with_field(standing, *field, *text);
  if (!next) {
    typed.keep(key, *text, words::sentence(next.problem()));
    return refused(next.problem());
  }
  typed.drop(key);
  return changed_entry(session, *next);
}

Result<std::size_t> row_argument(const Session& session, const Value& arguments) {
  const Result<std::size_t> row = place_argument(arguments, "row");
  if (!row) return row;
  const std::size_t rows = row_count(*entry_in_hand(session));
  if (*row < rows) return row;
  return Problem{.fault = Fault::number_out_of_range, .texts = {"row"}, .numbers = {static_cast<double>(*row), 0, static_cast<double>(rows) - 1}};
}

/// Shows all that was noted of a row, or no more.
Value run_open_row(Session& session, const Value& arguments) {
  const Result<std::size_t> row = row_argument(session, arguments);
  if (!row) return refused(row.problem());
  std::optional<std::size_t>& open = session.compass_desk.row;
  if (open == *row) open.reset();
  else open = *row;
  return done();
}

/// One more row: of a swing on the heading halfway round the widest gap, else an empty one.
Value run_add_row(Session& session, const Value&) {
  LogEntry entry = *entry_in_hand(session);
  if (auto* check = std::get_if<Check>(&entry.what)) check->rows.emplace_back();
  else if (auto* trial = std::get_if<Trial>(&entry.what)) trial->rows.emplace_back();
  else if (auto* swing = std::get_if<Swing>(&entry.what)) swing->rows.push_back({.heading_deg = widest_gap_middle_deg(*swing)});
  else return refused({.fault = Fault::log_entry_unknown, .texts = {std::to_string(entry.id.value)}});
  return changed_entry(session, entry);
}

Value run_strike_out_row(Session& session, const Value& arguments) {
  const Result<std::size_t> row = row_argument(session, arguments);
  if (!row) return refused(row.problem());
  session.compass_desk.row.reset();
  return changed_entry(session, without_row(*entry_in_hand(session), *row));
}

/// A reading that is not to count, or to count again. It is kept.
Value run_leave_out_row(Session& session, const Value& arguments) {
  const Result<std::size_t> row = row_argument(session, arguments);
  if (!row) return refused(row.problem());
  LogEntry entry = *entry_in_hand(session);
  if (auto* check = std::get_if<Check>(&entry.what)) check->rows[*row].left_out = !check->rows[*row].left_out;
  else if (auto* swing = std::get_if<Swing>(&entry.what)) swing->rows[*row].left_out = !swing->rows[*row].left_out;
  return changed_entry(session, entry);
}

/// Fills a check's rows with the true bearings of the sheet's landmarks and lights from one of its marks.
Value run_bearings_from_mark(Session& session, const Value& arguments) {
  LogEntry entry = *entry_in_hand(session);
  auto* check = std::get_if<Check>(&entry.what);
  if (!check) return refused({.fault = Fault::log_entry_unknown, .texts = {std::to_string(entry.id.value)}});
  const Document& document = session.document();
  const Result<MarkId> from = mark_argument(document, arguments, "text");
  if (!from) return refused(from.problem());
  const Mark& spot = *document.marks.find(*from);
  check->place = spot.name;
  check->reference = Reference::true_north;
  if (session.facts().variation.value) check->variation_deg = session.facts().variation.value->deg;
  for (const Mark& mark : document.marks) {
    const bool is_seen = mark.kind == MarkKind::landmark || mark.kind == MarkKind::light;
    if (!is_seen || mark.at == spot.at || check->rows.size() == k_most_rows) continue;
    check->rows.push_back({.object = mark.name, .trusted_deg = rhumb_inverse(unquantise(spot.at), unquantise(mark.at)).course.deg()});
  }
  return changed_entry(session, entry);
}

/// What is printed stands on the page already: it is that of the entry in hand.
Value run_print_card(Session& session, const Value&) {
  const KeptBoat& boat = *boat_in_hand(session);
  const LogEntry& entry = *entry_in_hand(session);
  const Result<KeptCard> card = card_from(boat.now(), *owner_of(boat.now(), entry.id), entry);
  if (!card) return refused(card.problem());
  session.slip = SlipId::log_entry;
  session.platform.print_page();
  return done();
}

}  // namespace

std::vector<Command> log_commands() {
  return {
      {"begin-entry", "Write in the log", "", {{"kind", "check, swing, card, trial, adjustment or note"}}, no_boat, run_begin_entry},
      {"open-entry", "Open an entry of the log", "", {{"id", "id of a log entry"}}, no_boat, run_open_entry},
      {"strike-out-entry", "Strike the entry out", "", {}, no_entry, run_strike_out_entry},
      {"type-entry", "Type a part of the entry", "", {{"field", "date, place, object, bearing, row/0/read ..."}, {"text", "as typed"}}, no_entry, run_type_entry},
      {"open-row", "All that was noted of a row", "", {{"row", "place in the list, from 0"}}, no_entry, run_open_row},
      {"add-row", "One more row", "", {}, no_entry, run_add_row},
      {"strike-out-row", "Strike the row out", "", {{"row", "place in the list, from 0"}}, no_entry, run_strike_out_row},
      {"leave-out-row", "Leave the reading out", "", {{"row", "place in the list, from 0"}}, no_entry, run_leave_out_row},
      {"print-card", "Print the card", "", {}, no_entry, run_print_card},
      {"bearings-from-mark", "Bearings of the sheet's marks", "", {{"text", "id of the mark where it was done"}}, no_entry, run_bearings_from_mark},
  };
}

}  // namespace fogsheet
