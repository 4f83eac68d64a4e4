#include "core/document/leg_actions.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/document/checks.h"
#include "core/document/passage_actions.h"

namespace fogsheet {
namespace {

Problem leg_unknown(LegId id) { return {.fault = Fault::leg_unknown, .texts = {std::to_string(id.value)}}; }

Problem already_there(const Document& document, const Leg& leg) {
  return {.fault = Fault::leg_already_there, .texts = {document.marks.find(leg.from)->name, document.marks.find(leg.to)->name}};
}

bool is_there(const Document& document, MarkId from, MarkId to) {
  return std::any_of(document.legs.begin(), document.legs.end(), [&](const Leg& leg) { return leg.from == from && leg.to == to; });
}

// A leg between two marks, checked against those of the document; its id is the caller's.
Result<Leg> checked_leg(const Document& document, MarkId from, MarkId to) {
  const Mark* ends[2] = {document.marks.find(from), document.marks.find(to)};
  if (!ends[0]) return Problem{.fault = Fault::mark_unknown, .texts = {std::to_string(from.value)}};
  if (!ends[1]) return Problem{.fault = Fault::mark_unknown, .texts = {std::to_string(to.value)}};
  if (ends[0]->at == ends[1]->at) return Problem{.fault = Fault::leg_of_no_length, .texts = {ends[1]->name}};
  const Leg leg{.from = from, .to = to};
  if (is_there(document, from, to)) return already_there(document, leg);
  if (!checks::has_room(document, document.legs.size(), k_most_legs)) return checks::table_full("legs", k_most_legs);
  return leg;
}

Result<Leg> with_new_leg(Document& document, MarkId from, MarkId to) {
  const Result<Leg> checked = checked_leg(document, from, to);
  if (!checked) return checked;
  Leg leg = *checked;
  leg.id = {document.next_id++};
  document.legs = document.legs.with(leg);
  carry_passage_on(document, leg);
  return leg;
}

// The name a leg goes by in the history.
std::string end_name(const Document& document, const Leg& leg) { return document.marks.find(leg.to)->name; }

}  // namespace

Result<LegId> add_leg(History& history, MarkId from, MarkId to) {
  Document next = history.now();
  const Result<Leg> leg = with_new_leg(next, from, to);
  if (!leg) return leg.problem();
  std::string name = end_name(next, *leg);
  history.commit(std::move(next), {Act::add_leg, std::move(name)});
  return leg->id;
}

Result<LegId> add_leg_to_new_turn(History& history, MarkId from, const NewMark& turn) {
  Document next = history.now();
  NewMark wanted = turn;
  wanted.kind = MarkKind::turn;
  const Result<Mark> mark = with_new_mark(next, wanted);
  if (!mark) return mark.problem();
  const Result<Leg> leg = with_new_leg(next, from, mark->id);
  if (!leg) return leg.problem();
  history.commit(std::move(next), {Act::add_leg, mark->name});
  return leg->id;
}

Result<MarkId> insert_mark(History& history, LegId id, const NewMark& wanted) {
  Document next = history.now();
  const Leg* found = next.legs.find(id);
  if (!found) return leg_unknown(id);
  Leg before = *found;
  const Result<Mark> mark = with_new_mark(next, wanted);
  if (!mark) return mark.problem();
  const MarkId old_end = std::exchange(before.to, mark->id);
  if (next.marks.find(before.from)->at == mark->at) return Problem{.fault = Fault::leg_of_no_length, .texts = {next.marks.find(before.from)->name}};
  const Result<Leg> checked = checked_leg(next, mark->id, old_end);
  if (!checked) return checked.problem();
  Leg after = *checked;
  after.id = {next.next_id++};
  next.legs = next.legs.replaced(before).inserted(next.legs.place_of(id) + 1, after);
  part_passage_legs(next, id, after);
  history.commit(std::move(next), {Act::insert_mark, mark->name});
  return mark->id;
}

Result<Done> reorder_leg(History& history, LegId id, std::size_t place) {
  Document next = history.now();
  const Leg* leg = next.legs.find(id);
  if (!leg) return leg_unknown(id);
  std::string name = end_name(next, *leg);
  next.legs = next.legs.moved(id, std::min(place, next.legs.size() - 1));
  history.commit(std::move(next), {Act::reorder_leg, std::move(name)});
  return Done{};
}

Result<Done> reverse_leg(History& history, LegId id) {
  Document next = history.now();
  const Leg* leg = next.legs.find(id);
  if (!leg) return leg_unknown(id);
  const Leg reversed{.id = id, .from = leg->to, .to = leg->from};
  if (is_there(next, reversed.from, reversed.to)) return already_there(next, reversed);
  next.legs = next.legs.replaced(reversed);
  std::string name = end_name(next, reversed);
  history.commit(std::move(next), {Act::reverse_leg, std::move(name)});
  return Done{};
}

Result<Done> remove_leg(History& history, LegId id) {
  Document next = history.now();
  const Leg* leg = next.legs.find(id);
  if (!leg) return leg_unknown(id);
  std::string name = end_name(next, *leg);
  next.legs = next.legs.without(id);
  history.commit(std::move(next), {Act::remove_leg, std::move(name)});
  return Done{};
}

Result<Done> write_on_leg(History& history, LegId id, double bearing_deg, Reference reference) {
  Document next = history.now();
  const Leg* found = next.legs.find(id);
  if (!found) return leg_unknown(id);
  if (!std::isfinite(bearing_deg) || bearing_deg < 0 || bearing_deg >= 360) return Problem{.fault = Fault::direction_out_of_range, .numbers = {bearing_deg}};
  Leg leg = *found;
  const std::int64_t tenths = whole_parts(bearing_deg, k_parts_per_written_degree) % static_cast<std::int64_t>(360 * k_parts_per_written_degree);
  leg.written = WrittenReading{.bearing_deg = from_parts(tenths, k_parts_per_written_degree),
                               .reference = reference,
                               .revision = static_cast<std::uint32_t>(history.revision()),
                               .from_at = next.marks.find(leg.from)->at,
                               .to_at = next.marks.find(leg.to)->at};
  next.legs = next.legs.replaced(leg);
  std::string name = end_name(next, leg);
  history.commit(std::move(next), {Act::write_on_leg, std::move(name)});
  return Done{};
}

Result<Done> rub_out_reading(History& history, LegId id) {
  Document next = history.now();
  const Leg* found = next.legs.find(id);
  if (!found) return leg_unknown(id);
  if (!found->written) return Fault::nothing_written;
  Leg leg = *found;
  leg.written.reset();
  next.legs = next.legs.replaced(leg);
  std::string name = end_name(next, leg);
  history.commit(std::move(next), {Act::rub_out_reading, std::move(name)});
  return Done{};
}

}  // namespace fogsheet
