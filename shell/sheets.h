// The sheets there are, each a document with its past and a key of its own; one of them is in hand. Laying a sheet down
// and going back from it are steps like any other: undo at the bottom of a new sheet's past goes to the sheet it was
// laid over, and redo there goes to it again until that one is changed.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/document/history.h"
#include "shell/kept_key.h"

namespace fogsheet {

/// The sheet that one was laid over, and what doing so is called.
struct LaidOver {
  SheetKey sheet;
  Label label;

  bool operator==(const LaidOver&) const = default;
};

/// The sheet that was laid over one and taken off again. It can be redone where it was taken off, until another commit.
struct TakenOff {
  SheetKey sheet;
  Label label;
  std::uint64_t commits = 0;  // of the sheet underneath, when it was taken off
  std::size_t state = 0;      // where that one's history stood

  bool operator==(const TakenOff&) const = default;
};

struct SheetInDrawer {
  SheetKey key;
  History history;
  std::optional<LaidOver> over = std::nullopt;
  std::optional<TakenOff> under = std::nullopt;
  std::int64_t changed_ms = 0;  // since 1970; when something was last put on it
  std::int64_t removed_ms = 0;  // when it was taken out of the drawer; 0 while it is in it
  std::string newer_text = {};  // as a newer program wrote it, with what is not understood here: then it is not changed
};

class Sheets {
 public:
  /// @param lane  of the keys it gives
  Sheets(Document first, std::int64_t now_ms, std::uint64_t lane = 0);

  SheetInDrawer& in_hand() { return *in_hand_; }
  const SheetInDrawer& in_hand() const { return *in_hand_; }

  /// Null when there is none of that key. The pointer lives as long as the sheet.
  SheetInDrawer* find(SheetKey key);
  const SheetInDrawer* find(SheetKey key) const;

  /// Lays a new sheet over the one in hand and takes it in hand.
  SheetKey lay_down(Document document, Label label, std::int64_t now_ms);

  /// Takes another sheet in hand; no step of any past. False when there is none of that key in the drawer.
  bool take(SheetKey key);

  /// Takes a sheet that is not in hand out of the drawer, to be put back while it is kept; and puts it back.
  void remove(SheetKey key, std::int64_t now_ms);
  void put_back(SheetKey key);

  /// Takes up a sheet that was kept. One of that key that is here already goes, and in its place in hand too; when it
  /// has been changed here, it stays beside under a new key.
  void adopt(SheetInDrawer kept, bool changed_here);

  /// Gives a sheet a key that is new, so that it stays beside what another page has made of it.
  void part(SheetKey key);

  /// Brings in a sheet from elsewhere, beside what is here: under its own key, or a new one where it has none or that is given already.
  SheetKey bring_in(SheetInDrawer sheet);

  /// Gives the sheet in hand a key above that one.
  void move_key_past(SheetKey other);

  /// Throws a sheet away that is not in hand.
  void forget(SheetKey key);

  /// Whether there is nothing here but the sheet that was laid down at the start, as it was.
  bool untouched() const;

  const Label* undo_label() const;
  const Label* redo_label() const;
  bool undo();  // false when there is nothing to undo; may change the sheet in hand
  bool redo();

  /// What was put on a sheet in hand that is not to be changed goes onto a copy, which is in hand then. False when there is
  /// no such thing.
  bool copy_what_is_not_changed(std::int64_t now_ms);

  /// After a commit: a new sheet that was undone with nothing on it, and can't be redone any more, is thrown away.
  void tidy();

  /// In the order they were laid down.
  const std::vector<std::unique_ptr<SheetInDrawer>>& all() const { return sheets_; }

  /// Those in the drawer, the last changed first: all but new ones that were undone with nothing on them.
  std::vector<const SheetInDrawer*> shown() const;
  /// Those that can be put back, the last removed first.
  std::vector<const SheetInDrawer*> removed() const;

 private:
  bool can_redo_laying() const;
  bool is_in_drawer(SheetKey key) const;
  SheetKey unused_key(std::uint64_t wanted);
  bool is_undone_and_empty(const SheetInDrawer& sheet) const;
  void forget_taken_off();
  void insert(std::unique_ptr<SheetInDrawer> sheet);
  void sort();

  std::vector<std::unique_ptr<SheetInDrawer>> sheets_;  // ascending keys, never empty
  SheetInDrawer* in_hand_ = nullptr;
  std::uint64_t lane_ = 0;
  std::uint64_t greatest_key_ = 0;  // given so far: none is given again
};

}  // namespace fogsheet
