#include "core/document/history.h"

#include <algorithm>
#include <utility>

#include "core/base/check.h"
#include "core/boat/boat_difference.h"
#include "core/document/difference.h"

namespace fogsheet {

template <class Doc>
HistoryOf<Doc>::HistoryOf(Doc first) { states_.push_back({{}, std::move(first)}); }

template <class Doc>
HistoryOf<Doc>::HistoryOf(KeptHistoryOf<Doc> kept)
    : asleep_(!kept.steps.empty()),
      first_(std::move(kept.first)),
      at_(kept.state - kept.first_state),
      gone_(kept.first_state),
      unchanged_to_(kept.first_state + kept.steps.size()),
      commits_(kept.commits),
      revision_(kept.revision) {
  SHEET_CHECK(at_ <= kept.steps.size(), "a kept history whose present is not among its states");
  states_.push_back({});
  for (KeptStep& step : kept.steps) states_.push_back({std::move(step.label), {}, std::move(step.difference)});
  states_[at_].document = std::move(kept.now);
}

template <class Doc>
KeptHistoryOf<Doc> HistoryOf<Doc>::kept() {
  return {.first = asleep_ ? first_ : states_.front().document,
          .now = now(),
          .steps = steps_after(first_state()),
          .first_state = first_state(),
          .state = state(),
          .commits = commits_,
          .revision = revision_};
}

template <class Doc>
KeptChange HistoryOf<Doc>::change() {
  const std::size_t stands = std::max(unchanged_to_, first_state());
  return {.unchanged_to = stands, .steps = steps_after(stands), .state = state(), .commits = commits_, .revision = revision_};
}

template <class Doc>
bool HistoryOf<Doc>::take_up(KeptChange change) {
  if (change.unchanged_to < first_state() || change.unchanged_to > last_state()) return false;
  if (change.unchanged_to != state()) wake();
  if (change.unchanged_to < first_state() || change.unchanged_to > last_state()) return false;
  std::vector<Doc> documents;
  const Doc* from = &states_[change.unchanged_to - gone_].document;
  for (const KeptStep& step : change.steps) {
    Result<Doc> next = applied(step.difference, *from);
    if (!next) return false;
    documents.push_back(std::move(next).value());
    from = &documents.back();
  }
  const std::size_t first = change.unchanged_to + documents.size() - std::min(change.unchanged_to + documents.size(), k_most_steps);
  if (change.state < std::max(first, first_state()) || change.state > change.unchanged_to + documents.size()) return false;
  if (!documents.empty() || change.unchanged_to != last_state()) {
    go_to(change.unchanged_to);
    states_.resize(at_ + 1);
  }
  for (std::size_t i = 0; i < documents.size(); ++i) commit(std::move(documents[i]), std::move(change.steps[i].label));
  go_to(change.state);
  commits_ = change.commits;
  revision_ = std::max(revision_, change.revision);
  mark();
  return true;
}

template <class Doc>
void HistoryOf<Doc>::move_revision_past(std::uint64_t other) { revision_ = std::max(revision_, other + 1); }

template <class Doc>
void HistoryOf<Doc>::commit(Doc next, Label label) {
  states_.resize(at_ + 1);
  State state{std::move(label), std::move(next)};
  if (asleep_) {
    state.difference = difference(now(), state.document);
    states_[at_].document = {};
  }
  states_.push_back(std::move(state));
  ++at_;
  unchanged_to_ = std::min(unchanged_to_, this->state() - 1);
  if (states_.size() > k_most_steps + 1) drop_oldest();
  ++commits_;
  ++revision_;
}

template <class Doc>
void HistoryOf<Doc>::drop_oldest() {
  if (asleep_) {
    Result<Doc> second = applied(states_[1].difference, first_);
    if (second) first_ = std::move(second).value();
    else wake();  // which ends with what can still be made
  }
  if (states_.size() <= k_most_steps + 1) return;
  states_.pop_front();
  --at_;
  ++gone_;
}

template <class Doc>
bool HistoryOf<Doc>::undo() { return at_ > 0 && go_to(state() - 1); }
template <class Doc>
bool HistoryOf<Doc>::redo() { return go_to(state() + 1); }

template <class Doc>
bool HistoryOf<Doc>::go_to(std::size_t state) {
  if (state < first_state() || state > last_state()) return false;
  if (state != this->state()) wake();
  if (state < first_state() || state > last_state()) return false;
  at_ = state - gone_;
  ++revision_;
  return true;
}

template <class Doc>
const Label& HistoryOf<Doc>::label_of(std::size_t state) const {
  SHEET_CHECK(state > first_state() && state <= last_state(), "the label of a step that is not there");
  return states_[state - gone_].label;
}

template <class Doc>
std::vector<KeptStep> HistoryOf<Doc>::steps_after(std::size_t state) {
  SHEET_CHECK(state >= first_state() && state <= last_state(), "the steps after a state that is not there");
  std::vector<KeptStep> steps;
  for (std::size_t i = state - gone_ + 1; i < states_.size(); ++i) {
    if (states_[i].difference.empty() && !asleep_) states_[i].difference = difference(states_[i - 1].document, states_[i].document);
    steps.push_back({states_[i].label, states_[i].difference});
  }
  return steps;
}

// Steps that can't be made any more (what was kept had been damaged in a way that its checksum did not tell) are let go
// of: those after the present, or the whole past. The present itself stands.
template <class Doc>
void HistoryOf<Doc>::wake() {
  if (!std::exchange(asleep_, false)) return;
  const Doc present = std::exchange(states_[at_].document, {});
  states_.front().document = at_ == 0 ? present : first_;
  first_ = {};
  std::size_t made = 1;
  for (; made < states_.size(); ++made) {
    Result<Doc> next = applied(states_[made].difference, states_[made - 1].document);
    if (!next || (made == at_ && !(*next == present))) break;
    states_[made].document = std::move(next).value();
  }
  if (made == states_.size()) return;
  states_.resize(std::max(made, at_ + 1));
  if (made <= at_) {
    states_.erase(states_.begin(), states_.begin() + static_cast<std::ptrdiff_t>(at_));
    states_.front().document = present;
    gone_ += std::exchange(at_, 0);
  }
  unchanged_to_ = std::min(unchanged_to_, last_state());
}

template class HistoryOf<Document>;
template class HistoryOf<Boat>;

}  // namespace fogsheet
