// The labelled past of a document: whole documents, so that a copy can't be undone wrongly. Tables share what did not
// change, so a step costs about what it changed.
#pragma once

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

#include "core/document/document.h"

namespace fogsheet {

/// What a step did. The words for each stand in shell/words.cpp.
enum class Act { new_sheet, open_sheet, add_mark, move_mark, remove_mark, add_leg, set_date, set_chart_note, clear_chart_note };

/// @param subject the name of what it was done to, as the user wrote it; may be empty.
struct Label {
  Act act = Act::new_sheet;
  std::string subject;

  bool operator==(const Label&) const = default;
};

class History {
 public:
  explicit History(Document first) : now_(std::move(first)) {}

  const Document& now() const { return now_; }

  /// Grows with each commit, undo and redo; never returns to a former value. For caches.
  std::uint64_t revision() const { return revision_; }

  /// Makes `next` the document. What was undone before can't be redone any more. The oldest of more than
  /// k_most_steps steps goes.
  void commit(Document next, Label label);

  bool undo();  // false when there is nothing to undo
  bool redo();

  const Label* undo_label() const { return past_.empty() ? nullptr : &past_.back().label; }
  const Label* redo_label() const { return future_.empty() ? nullptr : &future_.back().label; }

  static constexpr std::size_t k_most_steps = 10'000;

 private:
  // A step kept beside the document it leads away from: in the past the one before it, in the future the one after it.
  struct Step {
    Label label;
    Document document;
  };

  Document now_;
  std::deque<Step> past_;
  std::vector<Step> future_;
  std::uint64_t revision_ = 1;
};

}  // namespace fogsheet
