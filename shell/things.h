// The things of the sheet in hand, in the order of the outline: the sheet, what lies on it, legs, marks, roses, notes.
#pragma once

#include <string>

#include "shell/session.h"

namespace fogsheet {

inline constexpr std::size_t k_things_shown = 20;  // of the outline at a time: each is a stop of Tab, and made anew with each stroke

/// The first thing of the part of the outline that is shown: where it was put, or later when what the keys are on has been
/// moved on by things that came before it.
std::size_t first_shown(const Session& session);

std::size_t thing_count(const Session& session);
/// @param place  in [0, thing_count)
Thing thing_at(const Session& session, std::size_t place);
/// Its place in that order; none when it is not, or no longer, on the sheet.
std::optional<std::size_t> place_among_things(const Session& session, const Thing& thing);

/// "sheet", "edge/end-a", "dividers/hinge", "mark/12": in commands and as names of items.
std::string thing_name(const Thing& thing);
std::optional<Thing> thing_named(const std::string& name);

/// Where the hand would hold it; none for the sheet itself and for legs, which lie where their marks do.
std::optional<SheetPoint> hold_of(const Session& session, const Thing& thing);

/// Puts a mark, a rose or a note down elsewhere: one step of the sheet. False when it was refused; the reason is said.
bool move_thing(Session& session, const Thing& thing, SheetPoint to);

/// Rubs it out, or takes it off the sheet. Nothing for the sheet itself.
void rub_out(Session& session, const Thing& thing);

/// What a press with the tool in hand does to it; without a tool it is selected and its slip opens.
void press_thing(Session& session, const Thing& thing);

/// The thing that arrow keys move: the one in focus, else the one selected.
std::optional<Thing> thing_under_keys(const Session& session);

}  // namespace fogsheet
