#include "core/document/note_actions.h"

#include <utility>

#include "core/document/checks.h"

namespace fogsheet {
namespace {

Problem note_unknown(NoteId id) { return {.fault = Fault::note_unknown, .texts = {std::to_string(id.value)}}; }

Result<std::string> checked_text(const std::string& typed) {
  Result<std::string> text = checks::note_or_none(typed);
  if (text && text->empty()) return Fault::note_empty;
  return text;
}

// What a note goes by where only a line has room.
std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

}  // namespace

Result<NoteId> add_text_note(History& history, double lat_deg, double lon_deg, const std::string& typed) {
  Document next = history.now();
  const Result<std::string> text = checked_text(typed);
  if (!text) return text.problem();
  const Result<GridPosition> at = checks::place(next, first_line(*text), lat_deg, lon_deg);
  if (!at) return at.problem();
  if (!checks::has_room(next, next.text_notes.size(), k_most_text_notes)) return checks::table_full("notes", k_most_text_notes);
  const TextNote note{.id = {next.next_id++}, .at = *at, .text = *text};
  next.text_notes = next.text_notes.with(note);
  history.commit(std::move(next), {Act::add_note, first_line(note.text)});
  return note.id;
}

Result<Done> change_text_note(History& history, NoteId id, const TextNoteChange& change) {
  Document next = history.now();
  const TextNote* found = next.text_notes.find(id);
  if (!found) return note_unknown(id);
  TextNote note = *found;
  if (change.text) {
    const Result<std::string> text = checked_text(*change.text);
    if (!text) return text.problem();
    note.text = *text;
  }
  if (change.at) {
    const Result<GridPosition> at = checks::place(next, first_line(note.text), change.at->lat_deg, change.at->lon_deg);
    if (!at) return at.problem();
    note.at = *at;
  }
  next.text_notes = next.text_notes.replaced(note);
  history.commit(std::move(next), {change.text ? Act::change_note : Act::move_note, first_line(note.text)});
  return Done{};
}

Result<Done> remove_text_note(History& history, NoteId id) {
  Document next = history.now();
  const TextNote* note = next.text_notes.find(id);
  if (!note) return note_unknown(id);
  std::string label = first_line(note->text);
  next.text_notes = next.text_notes.without(id);
  history.commit(std::move(next), {Act::remove_note, std::move(label)});
  return Done{};
}

}  // namespace fogsheet
