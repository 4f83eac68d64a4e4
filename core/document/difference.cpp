#include "core/document/difference.h"

#include <algorithm>
#include <optional>

#include "core/document/integrity.h"
#include "core/formats/boat_fields.h"
#include "core/formats/bytes.h"
#include "core/formats/document_rows.h"
#include "core/formats/passage_fields.h"

namespace fogsheet {
namespace {

// The parts of a difference; their numbers are part of what is kept. New ones go at the end.
enum class Part : std::uint32_t { sheet = 1, chart_note = 2, next_id = 3, marks = 4, legs = 5, roses = 6, text_notes = 7, compass = 8, passages = 9 };

Problem unsound() { return {.fault = Fault::text_section, .texts = {"step"}}; }

void write_part(ByteWriter& out, Part part, const ByteWriter& inside) {
  out.whole(static_cast<std::uint64_t>(part));
  out.whole(inside.bytes().size());
  out.raw(inside.bytes());
}

// -- what changed

/// A row's id and where it stands in a list; lists of these are sorted by id.
struct IdAt {
  std::uint32_t id;
  std::size_t index;
};

bool comes_before(const IdAt& a, const IdAt& b) { return a.id < b.id; }

std::optional<std::size_t> index_of(const std::vector<IdAt>& ids, std::uint32_t id) {
  const auto found = std::lower_bound(ids.begin(), ids.end(), IdAt{id, 0}, comes_before);
  return found != ids.end() && found->id == id ? std::optional(found->index) : std::nullopt;
}

/// Which of `places`, in their order, make up a longest ascending run; the others have been moved.
std::vector<bool> longest_ascending(const std::vector<std::size_t>& places) {
  std::vector<std::size_t> ends;  // by length: the entry that ends the run of that length with the smallest place
  std::vector<std::size_t> before(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto longer = std::lower_bound(ends.begin(), ends.end(), places[i], [&](std::size_t end, std::size_t place) { return places[end] < place; });
    before[i] = longer == ends.begin() ? i : *(longer - 1);
    if (longer == ends.end()) ends.push_back(i);
    else *longer = i;
  }
  std::vector<bool> in_run(places.size());
  if (ends.empty()) return in_run;
  for (std::size_t i = ends.back();; i = before[i]) {
    in_run[i] = true;
    if (before[i] == i) return in_run;
  }
}

template <class Row>
void write_table(ByteWriter& out, Part part, const Table<Row>& from, const Table<Row>& to) {
  const auto [old_rows, new_rows] = Table<Row>::apart(from, to);
  std::vector<IdAt> old_ids;
  for (std::size_t i = 0; i < old_rows.size(); ++i) old_ids.push_back({old_rows[i].row->id.value, i});
  std::sort(old_ids.begin(), old_ids.end(), comes_before);

  // Rows that are in both, in the new order, by their old place. Those that passed a shared row have been moved too.
  std::vector<std::size_t> both, places;
  std::vector<bool> is_gone(old_rows.size(), true);
  for (std::size_t i = 0; i < new_rows.size(); ++i) {
    const std::optional<std::size_t> found = index_of(old_ids, new_rows[i].row->id.value);
    if (!found) continue;
    is_gone[*found] = false;
    if (old_rows[*found].shared_before != new_rows[i].shared_before) continue;
    both.push_back(i);
    places.push_back(*found);
  }
  const std::vector<bool> keeps_place = longest_ascending(places);

  ByteWriter gone, replaced, placed;
  std::uint64_t gone_count = 0, replaced_count = 0, placed_count = 0;
  for (std::size_t i = 0; i < old_rows.size(); ++i) {
    if (!is_gone[i]) continue;
    gone.whole(old_rows[i].row->id.value);
    ++gone_count;
  }
  std::size_t next_in_both = 0;
  for (std::size_t i = 0; i < new_rows.size(); ++i) {
    const bool in_both = next_in_both < both.size() && both[next_in_both] == i;
    const bool stays = in_both && keeps_place[next_in_both];
    const Row* before = stays ? old_rows[places[next_in_both]].row : nullptr;
    if (in_both) ++next_in_both;
    if (!stays) {
      placed.whole(new_rows[i].place);
      write_row(placed, *new_rows[i].row);
      ++placed_count;
    } else if (!(*before == *new_rows[i].row)) {
      write_row(replaced, *new_rows[i].row);
      ++replaced_count;
    }
  }
  if (gone_count + replaced_count + placed_count == 0) return;
  ByteWriter inside;
  for (const auto& [count, rows] : {std::pair(gone_count, &gone), std::pair(replaced_count, &replaced), std::pair(placed_count, &placed)}) {
    inside.whole(count);
    inside.raw(rows->bytes());
  }
  write_part(out, part, inside);
}

// -- applying it

/// The ids of rows that a difference puts and takes away.
template <class Row>
struct Touched {
  std::vector<decltype(Row::id)> put;
  std::vector<decltype(Row::id)> gone;
};

template <class Row>
bool apply_table(ByteReader& in, Table<Row>& table, Touched<Row>& touched) {
  const auto count = [&] {
    const std::uint64_t rows = in.whole();
    return in.ok() && rows <= in.left() ? rows : 0;
  };
  for (std::uint64_t left = count(); left > 0; --left) {
    const std::uint64_t id = in.whole();
    const decltype(Row::id) gone{static_cast<std::uint32_t>(std::min<std::uint64_t>(id, k_most_id))};
    if (!in.ok() || !table.find(gone)) return false;
    table = table.without(gone);
    touched.gone.push_back(gone);
  }
  for (std::uint64_t left = count(); left > 0; --left) {
    Row row;
    if (!read_row(in, row) || !table.find(row.id)) return false;
    table = table.replaced(row);
    touched.put.push_back(row.id);
  }
  // All that are to be placed are lifted first, so that a place counts only what stands there in the end.
  std::vector<std::pair<std::size_t, Row>> placed;
  for (std::uint64_t left = count(); left > 0; --left) {
    const std::uint64_t place = in.whole();
    Row row;
    if (!read_row(in, row)) return false;
    if (table.find(row.id)) table = table.without(row.id);
    touched.put.push_back(row.id);
    placed.emplace_back(static_cast<std::size_t>(std::min<std::uint64_t>(place, SIZE_MAX)), std::move(row));
  }
  for (auto& [place, row] : placed) {
    if (place > table.size() || table.find(row.id)) return false;
    table = table.inserted(place, std::move(row));
  }
  return in.at_end();
}

struct AllTouched {
  bool sheet = false;
  Touched<Mark> marks;
  Touched<Leg> legs;
  Touched<Rose> roses;
  Touched<TextNote> text_notes;

  std::size_t rows() const {
    return marks.put.size() + marks.gone.size() + legs.put.size() + legs.gone.size() + roses.put.size() + roses.gone.size() + text_notes.put.size() + text_notes.gone.size();
  }
};

bool apply_part(Part part, ByteReader& in, Document& document, AllTouched& touched) {
  switch (part) {
    case Part::sheet: touched.sheet = true; return read_sheet(in, document.sheet) && in.at_end();
    case Part::chart_note: return read_chart_note(in, document.chart_note) && in.at_end();
    case Part::next_id: {
      const std::uint64_t next_id = in.whole();
      if (!in.at_end() || next_id == 0 || next_id > k_most_id) return false;
      touched.sheet = touched.sheet || next_id < document.next_id;  // then any row may have too large an id
      document.next_id = static_cast<std::uint32_t>(next_id);
      return true;
    }
    case Part::marks: return apply_table(in, document.marks, touched.marks);
    case Part::legs: return apply_table(in, document.legs, touched.legs);
    case Part::roses: return apply_table(in, document.roses, touched.roses);
    case Part::text_notes: return apply_table(in, document.text_notes, touched.text_notes);
    case Part::compass: {
      document.compass.reset();
      if (in.at_end()) return true;
      Result<KeptCard> card = kept_card_from(in.raw(in.left()));
      if (card) document.compass = Shared(std::move(card).value());
      return card.ok();
    }
    case Part::passages: {
      document.passages.reset();
      if (in.at_end()) return true;
      Result<Passages> passages = passages_from(in.raw(in.left()));
      if (passages) document.passages = Shared(std::move(passages).value());
      return passages.ok();
    }
  }
  return false;
}

bool is_id_sound(const Document& document, std::uint32_t id) {
  const int owners = (document.marks.find(MarkId{id}) != nullptr) + (document.legs.find(LegId{id}) != nullptr) + (document.roses.find(RoseId{id}) != nullptr) +
                     (document.text_notes.find(NoteId{id}) != nullptr);
  return owners == 1 && id > 0 && id < document.next_id;
}

template <class Row>
bool are_rows_sound(const Document& document, const Table<Row>& table, const Touched<Row>& touched, std::size_t most) {
  return table.size() <= most && std::all_of(touched.put.begin(), touched.put.end(), [&](auto id) { return is_id_sound(document, id.value); });
}

template <class Row>
bool are_on_sheet(const Projection& projection, const Table<Row>& table, const Touched<Row>& touched) {
  return std::all_of(touched.put.begin(), touched.put.end(), [&](auto id) { return lies_on_sheet(projection, table.find(id)->at, k_sheet_slack_mm); });
}

bool are_legs_sound(const Document& document, const AllTouched& touched) {
  const auto among = [](const auto& ids, auto id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); };
  if (touched.legs.put.empty() && touched.marks.put.empty() && touched.marks.gone.empty()) return true;
  for (const Leg& leg : document.legs) {
    const bool is_put = among(touched.legs.put, leg.id);
    bool may_differ = is_put;
    for (const MarkId end : {leg.from, leg.to}) may_differ = may_differ || among(touched.marks.put, end) || among(touched.marks.gone, end);
    if (may_differ) {
      const Mark* from = document.marks.find(leg.from);
      const Mark* to = document.marks.find(leg.to);
      if (!from || !to || from->at == to->at) return false;
    }
    if (!is_put) continue;
    for (const Leg& other : document.legs)
      if (other.id != leg.id && other.from == leg.from && other.to == leg.to) return false;
  }
  return true;
}

/// What only the whole document can tell, as far as the change touches it.
Result<Done> check_touched(const Document& document, const AllTouched& touched) {
  constexpr std::size_t k_few_rows = 64;  // from here on to look at everything is quicker
  if (touched.sheet || touched.rows() > k_few_rows) return check_document(document);
  const bool all_sound = are_rows_sound(document, document.marks, touched.marks, k_most_marks) && are_rows_sound(document, document.legs, touched.legs, k_most_legs) &&
                         are_rows_sound(document, document.roses, touched.roses, k_most_roses) &&
                         are_rows_sound(document, document.text_notes, touched.text_notes, k_most_text_notes);
  if (!all_sound) return unsound();
  const Projection projection = projection_of(document);
  if (!are_on_sheet(projection, document.marks, touched.marks) || !are_on_sheet(projection, document.roses, touched.roses)) return unsound();
  if (!are_on_sheet(projection, document.text_notes, touched.text_notes) || !are_legs_sound(document, touched)) return unsound();
  return Done{};
}

}  // namespace

std::vector<std::uint8_t> difference(const Document& from, const Document& to) {
  ByteWriter out;
  if (!(from.sheet == to.sheet)) {
    ByteWriter inside;
    write_sheet(inside, to.sheet);
    write_part(out, Part::sheet, inside);
  }
  if (!(from.chart_note == to.chart_note)) {
    ByteWriter inside;
    write_chart_note(inside, to.chart_note);
    write_part(out, Part::chart_note, inside);
  }
  if (from.next_id != to.next_id) {
    ByteWriter inside;
    inside.whole(to.next_id);
    write_part(out, Part::next_id, inside);
  }
  write_table(out, Part::marks, from.marks, to.marks);
  write_table(out, Part::legs, from.legs, to.legs);
  write_table(out, Part::roses, from.roses, to.roses);
  write_table(out, Part::text_notes, from.text_notes, to.text_notes);
  if (!(from.compass == to.compass)) {
    ByteWriter inside;
    if (to.compass) inside.raw(bytes_of(*to.compass));
    write_part(out, Part::compass, inside);
  }
  if (!(from.passages == to.passages)) {
    ByteWriter inside;
    if (to.passages) inside.raw(bytes_of(*to.passages));
    write_part(out, Part::passages, inside);
  }
  return out.bytes();
}

Result<Document> applied(std::span<const std::uint8_t> difference, const Document& from) {
  Document document = from;
  AllTouched touched;
  ByteReader in(difference);
  std::uint64_t last_part = 0;
  while (!in.at_end()) {
    const std::uint64_t part = in.whole();
    ByteReader inside(in.raw(in.whole()));
    const bool in_order = part > last_part && part <= static_cast<std::uint64_t>(Part::passages);
    if (!in.ok() || !in_order || !apply_part(static_cast<Part>(part), inside, document, touched)) return unsound();
    last_part = part;
  }
  const Result<Done> sound = check_touched(document, touched);
  if (!sound) return sound.problem();
  return document;
}

}  // namespace fogsheet
