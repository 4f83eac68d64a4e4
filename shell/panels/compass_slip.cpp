// The compass that the sheet is steered by, and the boats with their compasses and logs.
#include "core/boat/swing_record.h"
#include "core/magnetic/field.h"
#include "shell/panels/panels.h"
#include "shell/panels/parts.h"
#include "shell/words.h"
#include "shell/words_of_boats.h"

namespace fogsheet {
namespace {

std::string id_text(std::uint64_t id) { return std::to_string(id); }

/// What the sheet is steered by, and whether it may be where the sheet is.
void add_card_in_use(Panel& slip, const Session& session) {
  const Document& document = session.document();
  const KeptCard* card = document.compass ? &*document.compass : nullptr;
  slip.items.push_back(HeadingItem{.text = "This sheet is steered by", .level = 3});
  slip.items.push_back(LineItem{.text = card ? words::card_line(*card) : "Deviation is not entered: courses end at magnetic.", .tone = LineTone::strong});
  if (!card) return;
  if (const std::optional<CardAway> away = card_away_here(session); away && (away->swing_again() || away->other_hemisphere))
    slip.items.push_back(CautionItem{.text = "Swing again", .advice = words::card_away_from(*away)});
}

/// The card in the log of the compass in hand that is not the sheet's.
std::optional<KeptCard> newer_card(const Session& session) {
  const Compass* compass = compass_in_hand(session);
  const LogEntry* latest = compass ? latest_card(*compass) : nullptr;
  if (!latest) return std::nullopt;
  const Result<KeptCard> card = card_from(boat_in_hand(session)->now(), *compass, *latest);
  if (!card) return std::nullopt;
  KeptCard taken = *card;
  if (session.document().compass) taken.in_links = session.document().compass->in_links;
  return session.document().compass == Shared(taken) ? std::nullopt : std::optional(taken);
}

void add_card_acts(Panel& slip, const Session& session) {
  if (const std::optional<KeptCard> card = newer_card(session)) {
    slip.items.push_back(LineItem{.text = "The log has another: " + words::card_line(*card), .tone = LineTone::soft});
    slip.items.push_back(ButtonItem{.name = "use-card", .label = "Steer by it", .look = ButtonLook::main, .on_press = {"use-card"}});
  }
  const Shared<KeptCard>& card = session.document().compass;
  if (!card) {
    slip.items.push_back(ButtonItem{.name = "use-no-deviation", .label = "There is no deviation", .on_press = {"use-no-deviation"}});
    return;
  }
  slip.items.push_back(ChoiceItem{.name = "card-in-links", .label = "When the sheet is sent as a link", .options = {{"yes", "with the card"}, {"no", "without it"}}, .chosen = card->in_links ? "yes" : "no", .argument = "wanted", .on_choose = {"card-in-links"}});
  slip.items.push_back(ButtonItem{.name = "leave-card-out", .label = "Leave the card out", .on_press = {"leave-card-out"}});
}

/// @param look  of the button that enters her: the first boat is what this slip is opened for
void add_new_boat(Panel& slip, const Session& session, const char* why, ButtonLook look) {
  const Form& typed = session.compass_desk.typed;
  const auto field = [&](const char* name, const char* label, std::string standing) {
    slip.items.push_back(parts::field(typed, std::string("new/") + name, {.name = std::string("new-boat-") + name, .label = label, .text = std::move(standing), .on_leave = {"fill-new-boat", Value::object({{"field", name}})}}));
  };
  slip.items.push_back(LineItem{.text = why, .tone = LineTone::soft});
  field("name", "Her name", "");
  field("compass", "Her compass", words::usual_compass_name());
  slip.items.push_back(ButtonItem{.name = "new-boat", .label = "Enter the boat", .look = look, .on_press = {"new-boat"}});
}

TableItem log_table(const Compass& compass) {
  TableItem table{.name = "log", .caption = "The compass's log, the last day first: press one to open it", .columns = {{"day", true}, {"what"}, {"result"}}, .when_empty = "Nothing was written yet."};
  std::vector<const LogEntry*> entries;
  for (const LogEntry& entry : compass.log) entries.push_back(&entry);
  std::stable_sort(entries.begin(), entries.end(), [](const LogEntry* a, const LogEntry* b) { return a->date != b->date ? a->date > b->date : a->id > b->id; });
  for (const LogEntry* entry : entries) {
    table.rows.push_back({iso_date(entry->date), words::entry_title(entry->what), words::entry_result(*entry)});
    table.row_presses.push_back({"open-entry", Value::object({{"id", id_text(entry->id.value)}})});
  }
  return table;
}

void add_log(Panel& slip, const Compass& compass) {
  slip.items.push_back(HeadingItem{.text = compass.name, .level = 3});
  const std::pair<const char*, const char*> kinds[] = {{"check", "Check it"}, {"swing", "Swing it"}, {"card", "Type a card in"}, {"trial", "Try what disturbs it"}, {"adjustment", "It was adjusted"}, {"note", "Write a note"}};
  for (const auto& [kind, label] : kinds)
    slip.items.push_back(ButtonItem{.name = std::string("begin-") + kind, .label = label, .on_press = {"begin-entry", Value::object({{"kind", kind}})}});
  slip.items.push_back(log_table(compass));
}

void add_boat(Panel& slip, const Session& session, const KeptBoat& boat, const Compass& compass) {
  const Form& typed = session.compass_desk.typed;
  const std::string prefix = typed_prefix(session.compass_desk);
  const auto press = [](const char* name) { return Press{"type-boat", Value::object({{"field", name}})}; };
  slip.items.push_back(HeadingItem{.text = "The boat", .level = 3});
  slip.items.push_back(parts::field(typed, prefix + "name", {.name = "boat-name", .label = "Her name", .text = boat.now().name, .on_leave = press("name")}));
  slip.items.push_back(parts::field(typed, prefix + "compass", {.name = "compass-name", .label = "This compass", .text = compass.name, .on_leave = press("compass")}));
  slip.items.push_back(ChoiceItem{.name = "compass-kind", .label = "It is a", .options = {{"steering", "steering compass"}, {"hand", "hand compass"}}, .chosen = compass.kind == CompassKind::steering ? "steering" : "hand", .argument = "text", .on_choose = press("kind")});
  slip.items.push_back(ButtonItem{.name = "add-compass", .label = "Another compass", .on_press = {"add-compass"}});
  if (boat.now().compasses.size() > 1) slip.items.push_back(ButtonItem{.name = "strike-out-compass", .label = "Strike this compass out", .on_press = {"strike-out-compass"}});
  slip.items.push_back(ButtonItem{.name = "strike-out-boat", .label = "Strike the boat out", .on_press = {"strike-out-boat"}});
}

void add_choices(Panel& slip, const Session& session, const KeptBoat& boat, const Compass& compass) {
  ChoiceItem boats{.name = "boat", .label = "Boat", .chosen = id_text(boat.key.value), .argument = "boat", .is_long = true, .on_choose = {"choose-boat"}};
  for (const std::unique_ptr<KeptBoat>& each : session.boats.all()) boats.options.push_back({id_text(each->key.value), each->now().name + (each->removed ? " (struck out)" : "")});
  if (boats.options.size() > 1) slip.items.push_back(std::move(boats));
  ChoiceItem compasses{.name = "compass", .label = "Compass", .chosen = id_text(compass.id.value), .argument = "id", .on_choose = {"choose-compass"}};
  for (const Compass& each : boat.now().compasses) compasses.options.push_back({id_text(each.id.value), each.name});
  if (compasses.options.size() > 1) slip.items.push_back(std::move(compasses));
}

}  // namespace

std::optional<CardAway> card_away_here(const Session& session) {
  const Document& document = session.document();
  if (!document.compass || !document.compass->field) return std::nullopt;
  const Result<MagneticField> here = magnetic_field(unquantise(document.sheet.middle), decimal_year(document.sheet.date));
  if (!here || here->horizontal_nt <= 0) return std::nullopt;
  return card_away(*document.compass->field, {here->horizontal_nt, here->inclination_deg});
}

Panel compass_slip(const Session& session) {
  const KeptBoat* boat = boat_in_hand(session);
  const Compass* compass = compass_in_hand(session);
  Panel slip{.name = "compass", .label = "Compass"};
  slip.items.push_back(HeadingItem{.text = "Compass", .beside = boat ? boat->now().name + ", " + compass->name : "of your boat"});
  slip.items.push_back(parts::close_button());
  add_card_in_use(slip, session);
  add_card_acts(slip, session);
  if (boat) {
    add_log(slip, *compass);
    add_choices(slip, session, *boat, *compass);
    add_boat(slip, session, *boat, *compass);
    slip.items.push_back(HeadingItem{.text = "Another boat", .level = 3});
    add_new_boat(slip, session, "Each boat keeps her own compasses and logs.", ButtonLook::plain);
    slip.items.push_back(LineItem{.text = words::adjuster_caution(), .tone = LineTone::soft});
  } else {
    add_new_boat(slip, session, "Enter your boat to check her compass, swing it and keep its log.", ButtonLook::main);
    for (const std::unique_ptr<KeptBoat>& each : session.boats.all())
      slip.items.push_back(ButtonItem{.name = "put-back/" + id_text(each->key.value), .label = "Put " + each->now().name + " back", .on_press = {"choose-boat", Value::object({{"boat", id_text(each->key.value)}})}});
  }
  return slip;
}

}  // namespace fogsheet
