#include "core/document/history.h"

namespace fogsheet {

void History::commit(Document next, Label label) {
  past_.push_back({std::move(label), std::exchange(now_, std::move(next))});
  if (past_.size() > k_most_steps) past_.pop_front();
  future_.clear();
  ++revision_;
}

bool History::undo() {
  if (past_.empty()) return false;
  Step step = std::move(past_.back());
  past_.pop_back();
  future_.push_back({std::move(step.label), std::exchange(now_, std::move(step.document))});
  ++revision_;
  return true;
}

bool History::redo() {
  if (future_.empty()) return false;
  Step step = std::move(future_.back());
  future_.pop_back();
  past_.push_back({std::move(step.label), std::exchange(now_, std::move(step.document))});
  ++revision_;
  return true;
}

}  // namespace fogsheet
