// The labelled past of a document: whole documents, so that a copy can't be undone wrongly. Tables share what did not
// change, so a step costs about what it changed. States are numbered from 0, the first; a step is named by the state it
// led to. A past that was kept comes back asleep: its steps as differences, which are only turned into documents when one
// of them is gone to, so that a sheet with a long past opens as fast as one without.
#pragma once

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

#include "core/boat/boat.h"
#include "core/document/document.h"

namespace fogsheet {

/// What a step did. The words for each stand in shell/words.cpp.
/// Their order is part of what is kept: new ones go at the end.
enum class Act {
  new_sheet, open_sheet, add_mark, move_mark, remove_mark, add_leg, set_date, set_chart_note, clear_chart_note,
  reshape_sheet, describe_sheet, change_mark, duplicate_mark, reorder_mark, insert_mark, reorder_leg, reverse_leg, remove_leg,
  write_on_leg, rub_out_reading, add_rose, move_rose, change_rose, remove_rose, add_note, change_note, move_note, remove_note,
  use_card, drop_card, new_boat, name_boat, add_compass, change_compass, remove_compass, add_entry, change_entry, remove_entry, import_marks,
  make_passage, change_passage, choose_passage, remove_passage, write_deck_log, take_back_turn,
  change_in_passage
};

/// @param subject the name of what it was done to, as the user wrote it; may be empty.
struct Label {
  Act act = Act::new_sheet;
  std::string subject;

  bool operator==(const Label&) const = default;
};

/// A step as it is kept: what it did, and the difference (difference.h) it made.
struct KeptStep {
  Label label;
  std::vector<std::uint8_t> difference;

  bool operator==(const KeptStep&) const = default;
};

/// A whole history as it is kept.
template <class Doc>
struct KeptHistoryOf {
  Doc first;  // the oldest state there is
  Doc now;
  std::vector<KeptStep> steps;  // from `first` on
  std::size_t first_state = 0;
  std::size_t state = 0;  // of `now`, in [first_state, first_state + steps.size()]
  std::uint64_t commits = 0;
  std::uint64_t revision = 1;
};

/// What happened to a history since it was last marked, as it is kept.
struct KeptChange {
  std::size_t unchanged_to = 0;  // the states up to here stand
  std::vector<KeptStep> steps;   // from there on
  std::size_t state = 0;         // the present one
  std::uint64_t commits = 0;
  std::uint64_t revision = 1;
};

/// @tparam Doc  Document or Boat: a value with ==, and difference() and applied() (difference.h, boat/boat_difference.h).
template <class Doc>
class HistoryOf {
 public:
  explicit HistoryOf(Doc first);
  explicit HistoryOf(KeptHistoryOf<Doc> kept);

  /// All of it, to be kept.
  KeptHistoryOf<Doc> kept();

  const Doc& now() const { return states_[at_].document; }

  /// Grows with each commit, undo, redo and go_to; never returns to a former value. For caches.
  std::uint64_t revision() const { return revision_; }

  /// Makes the revision larger than `other`, so that the histories of several sheets never share one.
  void move_revision_past(std::uint64_t other);

  /// Makes `next` the document. What was undone before can't be redone any more. The oldest of more than
  /// k_most_steps steps goes.
  void commit(Doc next, Label label);

  bool undo();  // false when there is nothing to undo
  bool redo();
  /// Goes back or forward to that state; false when it is not there.
  bool go_to(std::size_t state);

  const Label* undo_label() const { return at_ == 0 ? nullptr : &states_[at_].label; }
  const Label* redo_label() const { return at_ + 1 == states_.size() ? nullptr : &states_[at_ + 1].label; }

  /// The states there are to go to: from first_state(), which is above 0 once the oldest have gone, to last_state().
  std::size_t first_state() const { return gone_; }
  std::size_t last_state() const { return gone_ + states_.size() - 1; }
  std::size_t state() const { return gone_ + at_; }

  /// What led to that state, which is in (first_state(), last_state()].
  const Label& label_of(std::size_t state) const;

  /// How many commits there were: what was undone can be redone while this stays.
  std::uint64_t commits() const { return commits_; }

  /// What happened since the last mark(), to be kept.
  KeptChange change();
  void mark() { unchanged_to_ = last_state(); }
  /// Up to which state nothing differs from what was there at the last mark(): what came after it is new, or gone.
  std::size_t unchanged_to() const { return unchanged_to_; }

  /// Does again what a change told, and marks it. False, and all as it was, when it does not fit.
  bool take_up(KeptChange change);

  static constexpr std::size_t k_most_steps = 10'000;

 private:
  struct State {
    Label label;                            // of the step that led to it
    Doc document;                           // empty while asleep, but for the present one
    std::vector<std::uint8_t> difference = {};  // of that step, once it was asked for
  };

  std::vector<KeptStep> steps_after(std::size_t state);
  void wake();
  void drop_oldest();

  std::deque<State> states_;  // never empty
  bool asleep_ = false;
  Doc first_;                 // while asleep: the document of the oldest state
  std::size_t at_ = 0;        // in states_
  std::size_t gone_ = 0;
  std::size_t unchanged_to_ = 0;
  std::uint64_t commits_ = 0;
  std::uint64_t revision_ = 1;
};

using KeptHistory = KeptHistoryOf<Document>;
using History = HistoryOf<Document>;
using BoatHistory = HistoryOf<Boat>;

}  // namespace fogsheet
