// Changes of the passages on a sheet.
#pragma once

#include "core/base/result.h"
#include "core/document/history.h"

namespace fogsheet {

/// Which legs of the sheet follow one another, from the first leg in its list whose start no leg leads to (else from the first
/// one), each time the first in the list that goes on from there. Every leg once.
std::vector<LegId> legs_in_a_row(const Document& document);

/// A passage of the legs in a row, in hand from now on. @param wanted all but its legs and its id.
/// Faults: no_legs_for_passage, table_full, those of as_kept (formats/passage_fields.h).
Result<PassageId> make_passage(History& history, Passage wanted);

/// In place of the one of its id. @param part  what of it is changed, for the step's label; empty when it is not told
/// Faults: passage_unknown, those of as_kept.
Result<Done> change_passage(History& history, Passage wanted, std::string part = "");

/// The same again, to be changed into an alternative, in hand from now on; its deck log is empty. Faults: passage_unknown, table_full.
Result<PassageId> duplicate_passage(History& history, PassageId id, std::string name);

/// Faults: passage_unknown.
Result<Done> choose_passage(History& history, PassageId id);
Result<Done> remove_passage(History& history, PassageId id);

/// A leg of the sheet at the end of the passage, or left out of it. Faults: passage_unknown, leg_unknown (of the sheet),
/// number_out_of_range (no such place), passage_leg_run (it has ended: the deck log counts by it), table_full.
Result<Done> put_leg_in(History& history, PassageId passage, LegId leg);
Result<Done> leave_leg_out(History& history, PassageId passage, std::size_t place);

/// A line of the deck log. One that ends a leg goes on to the next. Faults: passage_unknown, not_under_way (an end of a leg
/// before the departure, or past the last leg), already_under_way (a second departure), deck_time_before (than the line before), table_full, those of as_kept.
Result<Done> write_deck_log(History& history, PassageId passage, DeckEntry entry);

/// Takes back the last entry that began or ended a leg: back to the leg before. Faults: passage_unknown, not_under_way.
Result<Done> take_back_turn(History& history, PassageId passage);

/// Strikes out one line of the deck log that is a reading. Faults: passage_unknown, number_out_of_range.
Result<Done> strike_out_deck_line(History& history, PassageId passage, std::size_t place);

// -- for the actions that change legs

/// A leg that was drawn on from the end of the passage in hand is part of it.
void carry_passage_on(Document& document, const Leg& leg);

/// A leg that was parted by a mark is two in every passage that has it. Where it has ended, both have, the first not seen.
void part_passage_legs(Document& document, LegId parted, const Leg& after);

}  // namespace fogsheet
