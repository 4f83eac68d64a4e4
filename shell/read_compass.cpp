#include "shell/read_compass.h"

#include "shell/panels/panels.h"
#include "shell/words_of_boats.h"

namespace fogsheet {
namespace {

const char* source_name(CardSource source) { return source == CardSource::swing ? "swing" : source == CardSource::typed ? "typed" : "nought"; }

Value points_value(const KeptCard& card) {
  Value list = Value::list();
  for (const KeptCardPoint& point : card.points) list.add(Value::object({{"heading_deg", point.heading_deg}, {"deviation_deg", point.deviation_deg}, {"sd_deg", point.sd_deg > 0 ? Value(point.sd_deg) : Value()}}));
  return list;
}

Value log_value(const Compass& compass) {
  Value list = Value::list();
  for (const LogEntry& entry : compass.log)
    list.add(Value::object({{"id", std::to_string(entry.id.value)}, {"kind", words::entry_title(entry.what)}, {"date", iso_date(entry.date)}, {"result", words::entry_result(entry)}}));
  return list;
}

Value compasses_value(const Boat& boat) {
  Value list = Value::list();
  for (const Compass& compass : boat.compasses)
    list.add(Value::object({{"id", std::to_string(compass.id.value)}, {"name", compass.name}, {"kind", compass.kind == CompassKind::steering ? "steering" : "hand"}, {"log", log_value(compass)}}));
  return list;
}

}  // namespace

Value compass_value(const Session& session) {
  const Shared<KeptCard>& card = session.document().compass;
  if (!card) return Value::object({{"deviation", "not entered"}});
  const std::optional<CardAway> away = card_away_here(session);
  return Value::object({{"deviation", card->source == CardSource::nought ? "nought" : "card"},
                        {"boat", card->boat},
                        {"compass", card->compass},
                        {"date", iso_date(card->date)},
                        {"source", source_name(card->source)},
                        {"points", points_value(*card)},
                        {"in_links", card->in_links},
                        {"swing_again", away && away->swing_again()}});
}

Value boats_value(const Session& session) {
  Value list = Value::list();
  for (const std::unique_ptr<KeptBoat>& boat : session.boats.all())
    list.add(Value::object({{"key", std::to_string(boat->key.value)}, {"name", boat->now().name}, {"in_hand", boat.get() == boat_in_hand(session)}, {"removed", boat->removed}, {"compasses", compasses_value(boat->now())}}));
  return list;
}

}  // namespace fogsheet
