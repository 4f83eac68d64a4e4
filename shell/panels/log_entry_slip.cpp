// An entry of the compass's log: a check against trusted bearings, a swing, a card typed in, a trial of what disturbs the
// compass, an adjustment or a note. What is typed is read by core and worked out at once.
#include "core/boat/swing_record.h"
#include "core/directions/direction_figures.h"
#include "shell/log_fields.h"
#include "shell/panels/card_page.h"
#include "shell/panels/log_parts.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_boats.h"

namespace fogsheet {
namespace log_parts {

FieldItem field(const Session& session, const LogEntry& entry, const std::string& name, std::string label, Pad pad, std::string unit) {
  return parts::field(session.compass_desk.typed, typed_prefix(session.compass_desk, entry.id) + name,
                      {.name = name, .label = std::move(label), .text = field_text(entry, name), .unit = std::move(unit), .pad = pad, .on_leave = {"type-entry", Value::object({{"field", name}})}});
}

FieldItem direction(const Session& session, const LogEntry& entry, const std::string& name, std::string label, std::string letter) {
  FieldItem item = field(session, entry, name, std::move(label), Pad::direction, "°" + letter);
  item.figures_only = true;
  item.letter = std::move(letter);
  return item;
}

ChoiceItem choice(const LogEntry& entry, const std::string& name, std::string label, std::vector<ChoiceItem::Option> options) {
  return {.name = name, .label = std::move(label), .options = std::move(options), .chosen = field_text(entry, name), .argument = "text", .on_choose = {"type-entry", Value::object({{"field", name}})}};
}

namespace {

/// By magnetic heading: what to steer, where there is one answer.
TableItem magnetic_table(const DeviationCard& card, int step_deg) {
  TableItem table{.name = "card-magnetic", .caption = "By magnetic heading", .columns = {{"magnetic", true}, {"steer", true}}};
  for (int deg = 0; deg < 360; deg += step_deg) {
    const std::vector<CompassDirection> steer = card.compass_for(MagneticDirection(deg));
    std::string cell = steer.empty() ? "not covered" : "";
    for (const CompassDirection heading : steer) cell += (cell.empty() ? "" : " or ") + words::with_letter(heading.deg(), Rounding::whole_degrees, Reference::compass);
    table.rows.push_back({words::with_letter(deg, Rounding::whole_degrees, Reference::magnetic), cell});
  }
  return table;
}

TableItem compass_table(const KeptCard& kept, const DeviationCard& card, int step_deg) {
  const bool has_sd = kept.source == CardSource::swing;
  TableItem table{.name = "card-compass", .caption = "By compass heading", .columns = {{"compass", true}, {"deviation", true}}};
  if (has_sd) table.columns.push_back({"± (1 sd)", true});
  for (int deg = 0; deg < 360; deg += step_deg) {
    const std::optional<Deviation> deviation = card.at(CompassDirection(deg));
    table.rows.push_back({words::heading_figures(deg), deviation ? words::deviation_tenths(deviation->deg) : "not covered"});
    if (has_sd) table.rows.back().push_back(deviation ? words::tenths_sd(deviation_sd_deg(kept, CompassDirection(deg))) : "");
  }
  return table;
}

}  // namespace

void add_card(Panel& slip, const Session& session, const LogEntry& entry) {
  const Result<KeptCard> kept = card_from(boat_in_hand(session)->now(), *owner_of(boat_in_hand(session)->now(), entry.id), entry);
  if (!kept) return;
  const DeviationCard card = kept->card();
  const int step_deg = session.compass_desk.card_step_deg;
  slip.items.push_back(HeadingItem{.text = "Card", .beside = words::largest_of(*kept), .level = 3});
  slip.items.push_back(ChoiceItem{.name = "card-step", .label = "Every", .options = {{"10", "10°"}, {"15", "15°"}}, .chosen = std::to_string(step_deg), .argument = "step", .on_choose = {"card-step"}});
  slip.items.push_back(compass_table(*kept, card, step_deg));
  slip.items.push_back(magnetic_table(card, step_deg));
  slip.items.push_back(ButtonItem{.name = "use-card", .label = "Steer by this card", .look = ButtonLook::main, .on_press = {"use-card", Value::object({{"id", std::to_string(entry.id.value)}})}});
  slip.items.push_back(ButtonItem{.name = "print-card", .label = "Print the card", .on_press = {"print-card"}});
}

}  // namespace log_parts

namespace {

using log_parts::choice;
using log_parts::direction;
using log_parts::field;

/// What an open row can be told and done to, below its list.
void add_open_row(Panel& slip, const Session& session, bool can_leave_out, bool left_out) {
  const Value row = Value::object({{"row", static_cast<double>(*session.compass_desk.row)}});
  if (can_leave_out) slip.items.push_back(ButtonItem{.name = "leave-out-row", .label = left_out ? "Let it count again" : "Leave it out", .pressed = left_out, .on_press = {"leave-out-row", row}});
  slip.items.push_back(ButtonItem{.name = "strike-out-row", .label = "Strike it out", .on_press = {"strike-out-row", row}});
}

void add_check(Panel& slip, const Session& session, const LogEntry& entry, const Check& check) {
  slip.items.push_back(field(session, entry, "place", "Where the boat lay", Pad::none));
  slip.items.push_back(choice(entry, "reference", "The bearings are", {{"magnetic", "magnetic"}, {"true", "true"}}));
  if (check.reference == Reference::true_north) slip.items.push_back(field(session, entry, "variation", "Variation, unrounded", Pad::variation));
  slip.items.push_back(parts::mark_choice(session.document(), "bearings-from-mark", "Take them from the sheet, seen from", "", {"bearings-from-mark"}));
  slip.items.push_back(LineItem{.text = "Point the boat at each and read the compass.", .tone = LineTone::soft});
  const std::string letter = check.reference == Reference::true_north ? "T" : "M";
  for (std::size_t i = 0; i < check.rows.size(); ++i) {
    const std::string& object = check.rows[i].object;
    const std::string name = object.empty() ? "bearing " + std::to_string(i + 1) : object;
    slip.items.push_back(direction(session, entry, row_field_name(i, "read"), "Compass, at " + name, "C"));
    if (session.compass_desk.row != i && check.rows[i].trusted_deg) continue;
    slip.items.push_back(field(session, entry, row_field_name(i, "object"), "What it is", Pad::none));
    slip.items.push_back(direction(session, entry, row_field_name(i, "trusted"), "Its trusted bearing", letter));
  }
  slip.items.push_back(ButtonItem{.name = "add-row", .label = "One more bearing", .on_press = {"add-row"}});
}

void add_check_result(Panel& slip, const Session& session, const Check& check) {
  const std::optional<CheckWorked> worked = work_out(check);
  TableItem table{.name = "readings", .caption = "Readings: press one to change it or leave it out", .columns = {{"at"}, {"trusted", true}, {"read", true}, {"deviation", true}}, .when_empty = "No bearing yet."};
  for (std::size_t i = 0; i < check.rows.size(); ++i) {
    const CheckRow& row = check.rows[i];
    std::string deviation;
    if (row.trusted_deg && row.read_deg) deviation = words::deviation_tenths(deviation_between(magnetic_of(*row.trusted_deg, check.reference, check.variation_deg), CompassDirection(*row.read_deg)).deg);
    if (row.left_out) deviation += " left out";
    table.rows.push_back({row.object.empty() ? "bearing " + std::to_string(i + 1) : row.object, row.trusted_deg ? words::with_letter(*row.trusted_deg, Rounding::tenths, check.reference) : "–", row.read_deg ? words::heading_figures(*row.read_deg) : "–", deviation});
    table.row_presses.push_back({"open-row", Value::object({{"row", static_cast<double>(i)}})});
  }
  slip.items.push_back(std::move(table));
  if (session.compass_desk.row && *session.compass_desk.row < check.rows.size()) add_open_row(slip, session, true, check.rows[*session.compass_desk.row].left_out);
  if (!worked) return;
  const bool bad = worked->check.verdict == CheckVerdict::by_heading || worked->check.beyond_handbook;
  if (bad) slip.items.push_back(CautionItem{.text = words::verdict(*worked), .advice = words::verdict_advice(*worked)});
  else slip.items.push_back(LineItem{.text = words::verdict(*worked) + ". " + words::verdict_advice(*worked), .tone = LineTone::strong});
  slip.items.push_back(LineItem{.text = "mean", .value = words::deviation_tenths(worked->check.mean_deg)});
  if (worked->counted.size() > 1) slip.items.push_back(LineItem{.text = "spread (1 sd)", .value = words::tenths_sd(worked->check.spread_deg)});
  if (const std::string rule = words::rule_of(worked->check); !rule.empty()) slip.items.push_back(LineItem{.text = rule, .tone = LineTone::soft});
}

void add_typed_card(Panel& slip, const Session& session, const LogEntry& entry) {
  slip.items.push_back(field(session, entry, "by", "By whom", Pad::none));
  slip.items.push_back(LineItem{.text = "The deviation on each heading by compass, as 3.5E or 2W. Leave out what the card has not.", .tone = LineTone::soft});
  slip.items.push_back(ChoiceItem{.name = "card-step", .label = "Every", .options = {{"10", "10°"}, {"15", "15°"}}, .chosen = std::to_string(session.compass_desk.card_step_deg), .argument = "step", .on_choose = {"card-step"}});
  for (int deg = 0; deg < 360; deg += session.compass_desk.card_step_deg)
    slip.items.push_back(field(session, entry, row_field_name(static_cast<std::size_t>(deg), "deviation"), words::heading_figures(deg), Pad::variation));
}

void add_trial(Panel& slip, const Session& session, const LogEntry& entry, const Trial& trial) {
  slip.items.push_back(LineItem{.text = "Hold the boat on one heading. For each thing read the compass with it off, or away, and with it on, or near.", .tone = LineTone::soft});
  for (std::size_t i = 0; i < trial.rows.size(); ++i) {
    const TrialRow& row = trial.rows[i];
    slip.items.push_back(field(session, entry, row_field_name(i, "thing"), "Thing", Pad::none));
    slip.items.push_back(direction(session, entry, row_field_name(i, "off"), "Compass with it off", "C"));
    slip.items.push_back(direction(session, entry, row_field_name(i, "on"), "Compass with it on", "C"));
    if (!row.off_deg || !row.on_deg) continue;
    const OnAndOff pair{CompassDirection(*row.off_deg), CompassDirection(*row.on_deg)};
    const Pull pull = interference({&pair, 1}, k_usual_reading_sd_deg).front();
    if (pull.matters) slip.items.push_back(CautionItem{.text = "It disturbs the compass", .advice = words::pull(row.thing, pull)});
    else slip.items.push_back(LineItem{.text = words::pull(row.thing, pull), .tone = LineTone::soft});
  }
  slip.items.push_back(ButtonItem{.name = "add-row", .label = trial.rows.empty() ? "The first thing" : "One more thing", .on_press = {"add-row"}});
}

}  // namespace

std::optional<Panel> printed_card(const Session& session) {
  const LogEntry& entry = *entry_in_hand(session);
  const Boat& boat = boat_in_hand(session)->now();
  Result<CardPage> page = card_page_of(boat, *owner_of(boat, entry.id), entry, "");
  if (!page) return std::nullopt;
  CardPage printed = std::move(page).value();
  printed.step_deg = session.compass_desk.card_step_deg;
  printed.rounding = session.settings.rounding;
  return card_page(printed);
}

Panel log_entry_slip(const Session& session) {
  const LogEntry& entry = *entry_in_hand(session);
  const KeptBoat& boat = *boat_in_hand(session);
  Panel slip{.name = "log-entry", .label = words::entry_title(entry.what)};
  slip.items.push_back(HeadingItem{.text = slip.label, .beside = boat.now().name + ", " + owner_of(boat.now(), entry.id)->name});
  slip.items.push_back(parts::close_button());
  if (const auto* swing = std::get_if<Swing>(&entry.what)) {
    log_parts::add_swing(slip, session, entry, *swing);
  } else if (const auto* check = std::get_if<Check>(&entry.what)) {
    slip.items.push_back(field(session, entry, "date", "Day", Pad::date));
    add_check(slip, session, entry, *check);
    slip.beside_from = slip.items.size();
    add_check_result(slip, session, *check);
  } else if (std::holds_alternative<TypedCard>(entry.what)) {
    slip.items.push_back(field(session, entry, "date", "Day", Pad::date));
    add_typed_card(slip, session, entry);
    slip.beside_from = slip.items.size();
    log_parts::add_card(slip, session, entry);
  } else if (const auto* trial = std::get_if<Trial>(&entry.what)) {
    slip.items.push_back(field(session, entry, "date", "Day", Pad::date));
    add_trial(slip, session, entry, *trial);
  } else {
    slip.items.push_back(field(session, entry, "date", "Day", Pad::date));
    FieldItem text = field(session, entry, "text", "What was done", Pad::none);
    text.multiline = true;
    slip.items.push_back(std::move(text));
  }
  slip.items.push_back(ButtonItem{.name = "strike-out-entry", .label = "Strike the entry out", .on_press = {"strike-out-entry"}});
  return slip;
}

}  // namespace fogsheet
