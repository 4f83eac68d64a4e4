#include "core/document/history.h"

#include <algorithm>

#include "core/base/check.h"

namespace fogsheet {

History::History(Document first) { states_.push_back({{}, std::move(first)}); }

void History::move_revision_past(std::uint64_t other) { revision_ = std::max(revision_, other + 1); }

void History::commit(Document next, Label label) {
  states_.resize(at_ + 1);
  states_.push_back({std::move(label), std::move(next)});
  ++at_;
  if (states_.size() > k_most_steps + 1) {
    states_.pop_front();
    --at_;
    ++gone_;
  }
  ++commits_;
  ++revision_;
}

bool History::undo() { return at_ > 0 && go_to(state() - 1); }
bool History::redo() { return go_to(state() + 1); }

bool History::go_to(std::size_t state) {
  if (state < first_state() || state > last_state()) return false;
  at_ = state - gone_;
  ++revision_;
  return true;
}

const Label& History::label_of(std::size_t state) const {
  SHEET_CHECK(state > first_state() && state <= last_state(), "the label of a step that is not there");
  return states_[state - gone_].label;
}

}  // namespace fogsheet
