// Items that several panels share.
#pragma once

#include "shell/panels/panel.h"
#include "shell/session.h"

namespace fogsheet::parts {

ButtonItem close_button();

/// A field that shows what was typed and not taken, with its reason, else what stands.
/// @param key  where such an entry is kept in `form`.
FieldItem field(const Form& form, const std::string& key, FieldItem standing);

/// The same for a choice.
ChoiceItem choice(const Form& form, const std::string& key, ChoiceItem standing);

ChoiceItem kind_choice(std::string chosen, Press on_choose);
/// Marks to choose from, by name in the order of the list.
ChoiceItem mark_choice(const Document& document, std::string name, std::string label, std::string chosen, Press on_choose);
/// Which school's signs the sheet in hand wears.
ChoiceItem signs_choice(SignSet chosen);
/// Papers by size, and whether upright or across: two choices that send whole names of papers.
/// @param with_screen  whether the one that no printer has is among them.
void add_paper_choices(Panel& panel, Paper chosen, const Press& on_choose, bool with_screen = true);
/// Variation by the model or as printed on the chart, with the note's three fields. @param standing the note in force.
void add_variation_fields(Panel& panel, const Form& form, const std::string& prefix, const std::string& by, const std::optional<PrintedVariation>& standing, const std::string& command);
/// The datum of the user's chart, and what not knowing it means.
void add_datum_choice(Panel& panel, const Form& form, const std::string& prefix, const std::string& datum, const std::string& command);

/// The tool's status as a line: what to do next.
LineItem status_line(std::string text);

/// The variation in use, where it comes from, the other one where both are to be seen, and its cautions.
void add_variation(Panel& panel, const Session& session);

/// Cautions about the variation in use, if any.
void add_variation_caution(Panel& panel, const VariationInUse& variation);

/// What was read by hand and written on a leg, with a caution where it is stale or far out; nothing where none was.
void add_written(Panel& panel, const Session& session, const Leg& leg);
/// The same in a table: "096°T", "096°T, stale", "099°T, 2.6° out"; empty where none was written.
std::string written_cell(const Session& session, const Leg& leg);

/// What every sheet's user is told before relying on it.
void add_standing_cautions(Panel& panel);

}  // namespace fogsheet::parts
