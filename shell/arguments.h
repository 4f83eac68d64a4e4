// Reading a command's arguments, with the sentence for one that is missing or of the wrong kind.
#pragma once

#include <string>

#include "core/base/date.h"
#include "core/directions/directions.h"
#include "core/document/history.h"
#include "shell/session.h"
#include "shell/value.h"

namespace fogsheet {

Result<double> number_argument(const Value& arguments, const char* name);
Result<std::string> text_argument(const Value& arguments, const char* name);
/// None when it was not given, or null. Faults: number_missing, entry_empty (of another kind).
Result<std::optional<double>> optional_number(const Value& arguments, const char* name);
Result<std::optional<std::string>> optional_text(const Value& arguments, const char* name);
Result<Date> date_argument(const Value& arguments, const char* name);

/// An id of an object on the sheet, "12". Faults: mark_unknown, leg_unknown, rose_unknown.
Result<MarkId> mark_argument(const Document& document, const Value& arguments, const char* name);
Result<LegId> leg_argument(const Document& document, const Value& arguments, const char* name);
Result<RoseId> rose_argument(const Document& document, const Value& arguments, const char* name);

/// Faults: kind_unknown.
Result<MarkKind> kind_argument(const Value& arguments, const char* name);

/// A place in a list, whole from 0. Faults: number_missing, number_out_of_range.
Result<std::size_t> place_argument(const Value& arguments, const char* name);

/// A direction in [0, 360) deg, as argument "reference" says: true when there is none, or magnetic with the sheet's variation.
/// Faults: number_missing, direction_out_of_range, reference_not_usable.
Result<TrueDirection> direction_argument(const Session& session, const Value& arguments, const char* name);

/// "true", "magnetic" or "compass".
Result<Reference> reference_argument(const Value& arguments, const char* name);

/// {ok: true}, {ok: true, id} and {error}.
Value done();
Value done_with(std::uint32_t id);
Value refused(const Problem& problem);

inline Value answer_of(const Result<Done>& result) { return result ? done() : refused(result.problem()); }
template <class Tag>
Value answer_of(const Result<Id<Tag>>& result) {
  return result ? done_with(result->value) : refused(result.problem());
}

/// Runs an action, then brings the desk in line with the document it made.
template <class Action>
auto acted(Session& session, Action action) {
  const Document before = session.document();
  auto result = action();
  if (result) {
    session.settle_desk(before);
    session.compass_desk.last_step_here = false;
  }
  return result;
}

}  // namespace fogsheet
