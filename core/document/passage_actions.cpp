#include "core/document/passage_actions.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/document/checks.h"
#include "core/formats/passage_fields.h"

namespace fogsheet {
namespace {

Problem unknown(PassageId id) { return {.fault = Fault::passage_unknown, .texts = {std::to_string(id.value)}}; }

Passages passages_of(const Document& document) { return document.passages ? *document.passages : Passages{}; }

Passage* find_in(Passages& passages, PassageId id) {
  const auto found = std::find_if(passages.all.begin(), passages.all.end(), [&](const Passage& each) { return each.id == id; });
  return found == passages.all.end() ? nullptr : &*found;
}

void put(Document& document, Passages passages) {
  if (passages.all.empty() && passages.next_id == 1) document.passages.reset();
  else document.passages = Shared(std::move(passages));
}

PassageLeg passage_leg(const Document& document, const Leg& leg) {
  return {.leg = leg.id, .name = document.marks.find(leg.from)->name + " – " + document.marks.find(leg.to)->name};
}

/// Does `change` to the passage of that id in the next document, and commits it as `act` when it can be kept.
/// @param subject  of its label; the passage's name when empty
template <class Change>
Result<Done> changed(History& history, PassageId id, Act act, Change change, std::string subject = "") {
  Passages passages = passages_of(history.now());
  Passage* passage = find_in(passages, id);
  if (!passage) return unknown(id);
  const Result<Done> done = change(*passage);
  if (!done) return done;
  Result<Passage> kept = as_kept(*passage);
  if (!kept) return kept.problem();
  *passage = std::move(kept).value();
  if (subject.empty()) subject = passage->name;
  Document next = history.now();
  put(next, std::move(passages));
  history.commit(std::move(next), {act, std::move(subject)});
  return Done{};
}

Result<PassageId> add(History& history, Passage wanted, Act act) {
  Passages passages = passages_of(history.now());
  if (passages.all.size() == k_most_passages || passages.next_id == k_most_id) return checks::table_full("passages", k_most_passages);
  wanted.id = {passages.next_id};
  Result<Passage> kept = as_kept(std::move(wanted));
  if (!kept) return kept.problem();
  const PassageId id = kept->id;
  std::string name = kept->name;
  ++passages.next_id;
  passages.in_hand = id;
  passages.all.push_back(std::move(kept).value());
  Document next = history.now();
  put(next, std::move(passages));
  history.commit(std::move(next), {act, std::move(name)});
  return id;
}

Problem not_there(std::size_t place, std::size_t count) {
  return checks::out_of_range("place", static_cast<double>(place), 0, static_cast<double>(count) - 1);
}

}  // namespace

std::vector<LegId> legs_in_a_row(const Document& document) {
  std::vector<LegId> row;
  const auto is_taken = [&](LegId id) { return std::find(row.begin(), row.end(), id) != row.end(); };
  const auto is_led_to = [&](MarkId mark) { return std::any_of(document.legs.begin(), document.legs.end(), [&](const Leg& leg) { return leg.to == mark; }); };
  const Leg* next = document.legs.empty() ? nullptr : &*document.legs.begin();
  for (const Leg& leg : document.legs)
    if (!is_led_to(leg.from)) {
      next = &leg;
      break;
    }
  while (next && row.size() < k_most_passage_legs) {
    row.push_back(next->id);
    const MarkId at = next->to;
    next = nullptr;
    for (const Leg& leg : document.legs)
      if (leg.from == at && !is_taken(leg.id)) {
        next = &leg;
        break;
      }
  }
  return row;
}

Result<PassageId> make_passage(History& history, Passage wanted) {
  const Document& document = history.now();
  wanted.legs.clear();
  for (const LegId id : legs_in_a_row(document)) wanted.legs.push_back(passage_leg(document, *document.legs.find(id)));
  if (wanted.legs.empty()) return Fault::no_legs_for_passage;
  return add(history, std::move(wanted), Act::make_passage);
}

Result<Done> change_passage(History& history, Passage wanted, std::string part) {
  const PassageId id = wanted.id;
  const Act act = part.empty() ? Act::change_passage : Act::change_in_passage;
  const auto put_in_place = [&](Passage& passage) -> Result<Done> {
    passage = std::move(wanted);
    return Done{};
  };
  return changed(history, id, act, put_in_place, std::move(part));
}

Result<PassageId> duplicate_passage(History& history, PassageId id, std::string name) {
  const Passages passages = passages_of(history.now());
  const Passage* found = find(passages, id);
  if (!found) return unknown(id);
  Passage copy = *found;
  copy.name = std::move(name);
  copy.deck_log.clear();
  return add(history, std::move(copy), Act::make_passage);
}

Result<Done> choose_passage(History& history, PassageId id) {
  Passages passages = passages_of(history.now());
  const Passage* found = find(passages, id);
  if (!found) return unknown(id);
  std::string name = found->name;
  passages.in_hand = id;
  Document next = history.now();
  put(next, std::move(passages));
  history.commit(std::move(next), {Act::choose_passage, std::move(name)});
  return Done{};
}

Result<Done> remove_passage(History& history, PassageId id) {
  Passages passages = passages_of(history.now());
  const Passage* found = find(passages, id);
  if (!found) return unknown(id);
  std::string name = found->name;
  const auto place = found - passages.all.data();
  passages.all.erase(passages.all.begin() + place);
  if (passages.in_hand == id) passages.in_hand = passages.all.empty() ? PassageId{} : passages.all[std::min(static_cast<std::size_t>(place), passages.all.size() - 1)].id;
  Document next = history.now();
  put(next, std::move(passages));
  history.commit(std::move(next), {Act::remove_passage, std::move(name)});
  return Done{};
}

Result<Done> put_leg_in(History& history, PassageId passage, LegId id) {
  const Leg* leg = history.now().legs.find(id);
  if (!leg) return Problem{.fault = Fault::leg_unknown, .texts = {std::to_string(id.value)}};
  return changed(history, passage, Act::change_passage, [&](Passage& it) -> Result<Done> {
    it.legs.push_back(passage_leg(history.now(), *leg));
    return Done{};
  });
}

Result<Done> leave_leg_out(History& history, PassageId passage, std::size_t place) {
  return changed(history, passage, Act::change_passage, [&](Passage& it) -> Result<Done> {
    if (place >= it.legs.size()) return not_there(place, it.legs.size());
    if (place < under_way(it).leg) return Problem{.fault = Fault::passage_leg_run, .numbers = {static_cast<double>(place) + 1}};
    it.legs.erase(it.legs.begin() + static_cast<std::ptrdiff_t>(place));
    return Done{};
  });
}

Result<Done> write_deck_log(History& history, PassageId passage, DeckEntry entry) {
  return changed(history, passage, Act::write_deck_log, [&](Passage& it) -> Result<Done> {
    const UnderWay state = under_way(it);
    if (entry.kind == DeckEntryKind::departed && state.departed) return Fault::already_under_way;
    const bool ends_leg = entry.kind != DeckEntryKind::reading && entry.kind != DeckEntryKind::departed;
    if (ends_leg && (!state.departed || state.leg == it.legs.size())) return Fault::not_under_way;
    if (!it.deck_log.empty()) {
      const DeckEntry& last = it.deck_log.back();
      if (std::tie(entry.date, entry.time) < std::tie(last.date, last.time)) return Problem{.fault = Fault::deck_time_before, .texts = {print_clock_time(last.time)}};
    }
    it.deck_log.push_back(std::move(entry));
    return Done{};
  });
}

Result<Done> take_back_turn(History& history, PassageId passage) {
  return changed(history, passage, Act::take_back_turn, [&](Passage& it) -> Result<Done> {
    const auto last = std::find_if(it.deck_log.rbegin(), it.deck_log.rend(), [](const DeckEntry& entry) { return entry.kind != DeckEntryKind::reading; });
    if (last == it.deck_log.rend()) return Fault::not_under_way;
    it.deck_log.erase(std::next(last).base());
    return Done{};
  });
}

Result<Done> strike_out_deck_line(History& history, PassageId passage, std::size_t place) {
  return changed(history, passage, Act::change_passage, [&](Passage& it) -> Result<Done> {
    if (place >= it.deck_log.size() || it.deck_log[place].kind != DeckEntryKind::reading) return not_there(place, it.deck_log.size());
    it.deck_log.erase(it.deck_log.begin() + static_cast<std::ptrdiff_t>(place));
    return Done{};
  });
}

void carry_passage_on(Document& document, const Leg& leg) {
  if (!document.passages) return;
  Passages passages = *document.passages;
  Passage* passage = find_in(passages, passages.in_hand);
  if (!passage || passage->legs.empty() || passage->legs.size() == k_most_passage_legs) return;
  const Leg* last = document.legs.find(passage->legs.back().leg);
  if (!last || last->to != leg.from) return;
  passage->legs.push_back(passage_leg(document, leg));
  put(document, std::move(passages));
}

void part_passage_legs(Document& document, LegId parted, const Leg& after) {
  if (!document.passages) return;
  Passages passages = *document.passages;
  bool any = false;
  for (Passage& passage : passages.all) {
    const auto found = std::find_if(passage.legs.begin(), passage.legs.end(), [&](const PassageLeg& leg) { return leg.leg == parted; });
    if (found == passage.legs.end() || passage.legs.size() == k_most_passage_legs || passage.deck_log.size() == k_most_deck_entries) continue;
    PassageLeg second = *found;
    second.leg = after.id;
    second.name = passage_leg(document, after).name;
    found->name = passage_leg(document, *document.legs.find(parted)).name;
    found->leave.reset();  // it was to be left at the end of the whole leg
    found->look_for.clear();
    const auto place = static_cast<std::size_t>(found - passage.legs.begin());
    passage.legs.insert(std::next(found), std::move(second));
    // Of a leg that has ended the new mark was not seen: the deck log goes on telling which leg is in hand.
    if (const DeckEntry* ended = turn_entry(passage, place + 1)) passage.deck_log.insert(passage.deck_log.begin() + (ended - passage.deck_log.data()), {.kind = DeckEntryKind::not_seen, .date = ended->date, .time = ended->time});
    any = true;
  }
  if (any) put(document, std::move(passages));
}

}  // namespace fogsheet
