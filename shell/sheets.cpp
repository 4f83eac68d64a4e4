#include "shell/sheets.h"

#include <algorithm>
#include <utility>

#include "core/base/check.h"

namespace fogsheet {
namespace {

bool has_nothing_on_it(const Document& document) { return document.marks.empty() && document.legs.empty() && !document.chart_note; }

}  // namespace

Sheets::Sheets(Document first, std::int64_t now_ms, std::uint64_t lane) : lane_(lane) {
  sheets_.push_back(std::make_unique<SheetInDrawer>(SheetInDrawer{.key = unused_key(static_cast<std::uint64_t>(now_ms)), .history = History(std::move(first)), .changed_ms = now_ms}));
  in_hand_ = sheets_.back().get();
}

const SheetInDrawer* Sheets::find(SheetKey key) const {
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets_)
    if (sheet->key == key) return sheet.get();
  return nullptr;
}

SheetInDrawer* Sheets::find(SheetKey key) { return const_cast<SheetInDrawer*>(std::as_const(*this).find(key)); }

SheetKey Sheets::lay_down(Document document, Label label, std::int64_t now_ms) {
  forget_taken_off();
  const SheetKey key = unused_key(static_cast<std::uint64_t>(now_ms));
  sheets_.push_back(std::make_unique<SheetInDrawer>(SheetInDrawer{key, History(std::move(document)), LaidOver{in_hand_->key, std::move(label)}, {}, now_ms}));
  take(key);
  return key;
}

SheetKey Sheets::unused_key(std::uint64_t wanted) { return {greatest_key_ = key_in_lane(std::max(wanted, greatest_key_ + 1), lane_)}; }

bool Sheets::is_in_drawer(SheetKey key) const {
  const SheetInDrawer* sheet = find(key);
  return sheet && sheet->removed_ms == 0;
}

bool Sheets::take(SheetKey key) {
  if (!is_in_drawer(key)) return false;
  SheetInDrawer* wanted = find(key);
  wanted->history.move_revision_past(in_hand_->history.revision());
  in_hand_ = wanted;
  return true;
}

const Label* Sheets::undo_label() const {
  if (const Label* label = in_hand_->history.undo_label()) return label;
  const bool at_its_first = in_hand_->history.first_state() == 0;
  return at_its_first && in_hand_->over && is_in_drawer(in_hand_->over->sheet) ? &in_hand_->over->label : nullptr;
}

bool Sheets::can_redo_laying() const {
  const std::optional<TakenOff>& off = in_hand_->under;
  return off && off->commits == in_hand_->history.commits() && off->state == in_hand_->history.state() && is_in_drawer(off->sheet);
}

const Label* Sheets::redo_label() const {
  if (can_redo_laying()) return &in_hand_->under->label;
  return in_hand_->history.redo_label();
}

bool Sheets::undo() {
  if (in_hand_->history.undo()) return true;
  if (!undo_label()) return false;
  const SheetKey off = in_hand_->key;
  const LaidOver over = *in_hand_->over;
  take(over.sheet);
  forget_taken_off();
  in_hand_->under = TakenOff{off, over.label, in_hand_->history.commits(), in_hand_->history.state()};
  return true;
}

bool Sheets::redo() {
  if (!can_redo_laying()) return in_hand_->history.redo();
  const SheetKey on = in_hand_->under->sheet;
  in_hand_->under.reset();
  return take(on);
}

bool Sheets::copy_what_is_not_changed(std::int64_t now_ms) {
  History& history = in_hand_->history;
  if (in_hand_->newer_text.empty() || history.unchanged_to() == history.last_state()) return false;
  Document changed = history.now();
  Label label{Act::open_sheet, changed.sheet.name};
  const std::size_t as_it_was = history.unchanged_to();
  history.take_up({.unchanged_to = as_it_was, .steps = {}, .state = as_it_was, .commits = history.commits()});
  lay_down(std::move(changed), std::move(label), now_ms);
  return true;
}

void Sheets::tidy() {
  if (in_hand_->under && in_hand_->under->commits != in_hand_->history.commits()) forget_taken_off();
}

void Sheets::forget_taken_off() {
  if (!in_hand_->under) return;
  std::erase_if(sheets_, [&](const std::unique_ptr<SheetInDrawer>& sheet) { return sheet->key == in_hand_->under->sheet && is_undone_and_empty(*sheet); });
  in_hand_->under.reset();
}

bool Sheets::is_undone_and_empty(const SheetInDrawer& sheet) const {
  const SheetInDrawer* below = sheet.over ? find(sheet.over->sheet) : nullptr;
  const bool undone = below && below->under && below->under->sheet == sheet.key;
  return undone && &sheet != in_hand_ && has_nothing_on_it(sheet.history.now());
}

void Sheets::remove(SheetKey key, std::int64_t now_ms) {
  SheetInDrawer* sheet = find(key);
  SHEET_CHECK(sheet && sheet != in_hand_, "a sheet is removed that is not there, or is in hand");
  sheet->removed_ms = std::max<std::int64_t>(now_ms, 1);
}

void Sheets::put_back(SheetKey key) {
  if (SheetInDrawer* sheet = find(key)) sheet->removed_ms = 0;
}

void Sheets::adopt(SheetInDrawer kept, bool changed_here) {
  auto sheet = std::make_unique<SheetInDrawer>(std::move(kept));
  greatest_key_ = std::max(greatest_key_, sheet->key.value);
  sheet->history.move_revision_past(in_hand_->history.revision());
  if (SheetInDrawer* here = find(sheet->key)) {
    if (!changed_here) {
      *here = std::move(*sheet);
      return;
    }
    here->key = unused_key(0);
  }
  insert(std::move(sheet));
}

SheetKey Sheets::bring_in(SheetInDrawer brought) {
  if (brought.key == SheetKey{} || find(brought.key) || brought.key.value > k_most_key) brought.key = unused_key(0);
  const SheetKey key = brought.key;
  greatest_key_ = std::max(greatest_key_, key.value);
  brought.history.move_revision_past(in_hand_->history.revision());
  insert(std::make_unique<SheetInDrawer>(std::move(brought)));
  return key;
}

void Sheets::insert(std::unique_ptr<SheetInDrawer> sheet) {
  sheets_.push_back(std::move(sheet));
  sort();
}

void Sheets::part(SheetKey key) {
  if (SheetInDrawer* here = find(key)) here->key = unused_key(0);
  sort();
}

void Sheets::sort() {
  std::sort(sheets_.begin(), sheets_.end(), [](const auto& a, const auto& b) { return a->key < b->key; });
}

void Sheets::move_key_past(SheetKey other) { in_hand_->key = unused_key(other.value + 1); }

void Sheets::forget(SheetKey key) {
  SHEET_CHECK(in_hand_->key != key, "the sheet in hand is thrown away");
  std::erase_if(sheets_, [&](const std::unique_ptr<SheetInDrawer>& sheet) { return sheet->key == key; });
}

bool Sheets::untouched() const { return sheets_.size() == 1 && in_hand_->history.commits() == 0 && !in_hand_->over && !in_hand_->under; }

std::vector<const SheetInDrawer*> Sheets::shown() const {
  std::vector<const SheetInDrawer*> all;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets_)
    if (sheet->removed_ms == 0 && !is_undone_and_empty(*sheet)) all.push_back(sheet.get());
  std::sort(all.begin(), all.end(), [](const SheetInDrawer* a, const SheetInDrawer* b) { return std::pair(a->changed_ms, a->key) > std::pair(b->changed_ms, b->key); });
  return all;
}

std::vector<const SheetInDrawer*> Sheets::removed() const {
  std::vector<const SheetInDrawer*> all;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets_)
    if (sheet->removed_ms != 0) all.push_back(sheet.get());
  std::sort(all.begin(), all.end(), [](const SheetInDrawer* a, const SheetInDrawer* b) { return std::pair(a->removed_ms, a->key) > std::pair(b->removed_ms, b->key); });
  return all;
}

}  // namespace fogsheet
