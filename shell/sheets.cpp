#include "shell/sheets.h"

#include <algorithm>

namespace fogsheet {
namespace {

bool has_nothing_on_it(const Document& document) { return document.marks.empty() && document.legs.empty() && !document.chart_note; }

}  // namespace

Sheets::Sheets(Document first, std::int64_t now_ms) {
  sheets_.push_back(std::make_unique<SheetInDrawer>(SheetInDrawer{{static_cast<std::uint64_t>(now_ms)}, History(std::move(first))}));
  in_hand_ = sheets_.back().get();
}

const SheetInDrawer* Sheets::find(SheetKey key) const {
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets_)
    if (sheet->key == key) return sheet.get();
  return nullptr;
}

SheetInDrawer* Sheets::find(SheetKey key) { return const_cast<SheetInDrawer*>(std::as_const(*this).find(key)); }

SheetKey Sheets::lay_down(Document document, Label label, std::int64_t now_ms) {
  const SheetKey key{std::max(static_cast<std::uint64_t>(now_ms), sheets_.back()->key.value + 1)};
  forget_taken_off();
  sheets_.push_back(std::make_unique<SheetInDrawer>(SheetInDrawer{key, History(std::move(document)), LaidOver{in_hand_->key, std::move(label)}}));
  take(key);
  return key;
}

bool Sheets::take(SheetKey key) {
  SheetInDrawer* wanted = find(key);
  if (!wanted) return false;
  wanted->history.move_revision_past(in_hand_->history.revision());
  in_hand_ = wanted;
  return true;
}

const Label* Sheets::undo_label() const {
  if (const Label* label = in_hand_->history.undo_label()) return label;
  const bool at_its_first = in_hand_->history.first_state() == 0;
  return at_its_first && in_hand_->over && find(in_hand_->over->sheet) ? &in_hand_->over->label : nullptr;
}

bool Sheets::can_redo_laying() const {
  const std::optional<TakenOff>& off = in_hand_->under;
  return off && off->commits == in_hand_->history.commits() && off->state == in_hand_->history.state() && find(off->sheet);
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

std::vector<const SheetInDrawer*> Sheets::shown() const {
  std::vector<const SheetInDrawer*> all;
  for (const std::unique_ptr<SheetInDrawer>& sheet : sheets_)
    if (!is_undone_and_empty(*sheet)) all.push_back(sheet.get());
  return all;
}

}  // namespace fogsheet
