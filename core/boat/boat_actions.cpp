#include "core/boat/boat_actions.h"

#include <algorithm>
#include <utility>

#include "core/document/checks.h"
#include "core/formats/boat_fields.h"

namespace fogsheet {
namespace {

Problem compass_unknown(CompassId id) { return {.fault = Fault::compass_unknown, .texts = {std::to_string(id.value)}}; }
Problem log_entry_unknown(EntryId id) { return {.fault = Fault::log_entry_unknown, .texts = {std::to_string(id.value)}}; }

Compass* compass_in(Boat& boat, CompassId id) {
  const auto found = std::find_if(boat.compasses.begin(), boat.compasses.end(), [&](const Compass& each) { return each.id == id; });
  return found == boat.compasses.end() ? nullptr : &*found;
}

/// Commits a boat as it can be kept.
Result<Done> committed(BoatHistory& history, Boat next, Act act, const std::string& subject) {
  Result<Boat> kept = as_kept(std::move(next));
  if (!kept) return kept.problem();
  if (*kept == history.now()) return Done{};
  history.commit(std::move(kept).value(), {act, subject});
  return Done{};
}

}  // namespace

Result<Boat> made_boat(std::string name, std::string compass_name) {
  return as_kept(Boat{.name = std::move(name), .compasses = {Compass{.id = {1}, .name = std::move(compass_name)}}, .next_id = 2});
}

Result<Done> name_boat(BoatHistory& history, std::string name) {
  Boat next = history.now();
  next.name = std::move(name);
  return committed(history, next, Act::name_boat, next.name);
}

Result<CompassId> add_compass(BoatHistory& history, std::string name, CompassKind kind) {
  Boat next = history.now();
  const CompassId id{next.next_id++};
  next.compasses.push_back({.id = id, .name = std::move(name), .kind = kind});
  const Result<Done> done = committed(history, next, Act::add_compass, next.compasses.back().name);
  if (!done) return done.problem();
  return id;
}

Result<Done> change_compass(BoatHistory& history, CompassId id, std::string name, CompassKind kind) {
  Boat next = history.now();
  Compass* compass = compass_in(next, id);
  if (!compass) return compass_unknown(id);
  compass->name = std::move(name);
  compass->kind = kind;
  return committed(history, next, Act::change_compass, compass->name);
}

Result<Done> remove_compass(BoatHistory& history, CompassId id) {
  Boat next = history.now();
  const Compass* compass = compass_in(next, id);
  if (!compass) return compass_unknown(id);
  if (next.compasses.size() == 1) return Fault::last_compass;
  const std::string name = compass->name;
  std::erase_if(next.compasses, [&](const Compass& each) { return each.id == id; });
  return committed(history, std::move(next), Act::remove_compass, name);
}

Result<EntryId> add_log_entry(BoatHistory& history, CompassId compass, Date date, LogEntryKind what) {
  Boat next = history.now();
  Compass* owner = compass_in(next, compass);
  if (!owner) return compass_unknown(compass);
  Result<LogEntry> entry = as_kept(LogEntry{.id = {next.next_id++}, .date = date, .what = std::move(what)});
  if (!entry) return entry.problem();
  const EntryId id = entry->id;
  owner->log.push_back(std::move(entry).value());
  const Result<Done> done = committed(history, next, Act::add_entry, owner->name);
  if (!done) return done.problem();
  return id;
}

Result<Done> change_log_entry(BoatHistory& history, LogEntry wanted) {
  Boat next = history.now();
  Result<LogEntry> entry = as_kept(std::move(wanted));
  if (!entry) return entry.problem();
  for (Compass& compass : next.compasses)
    for (LogEntry& standing : compass.log) {
      if (standing.id != entry->id) continue;
      standing = std::move(entry).value();
      return committed(history, next, Act::change_entry, compass.name);
    }
  return log_entry_unknown(entry->id);
}

Result<Done> remove_log_entry(BoatHistory& history, EntryId id) {
  Boat next = history.now();
  for (Compass& compass : next.compasses)
    if (std::erase_if(compass.log, [&](const LogEntry& each) { return each.id == id; }) > 0)
      return committed(history, next, Act::remove_entry, compass.name);
  return log_entry_unknown(id);
}

}  // namespace fogsheet
