// Reading a command's arguments, with the sentence for one that is missing or of the wrong kind.
#pragma once

#include <string>

#include "core/base/date.h"
#include "core/document/history.h"
#include "shell/value.h"

namespace fogsheet {

Result<double> number_argument(const Value& arguments, const char* name);
Result<std::string> text_argument(const Value& arguments, const char* name);
Result<Date> date_argument(const Value& arguments, const char* name);

/// An id of an object on the sheet, "12". Faults: mark_unknown, leg_unknown, rose_unknown.
Result<MarkId> mark_argument(const Document& document, const Value& arguments, const char* name);
Result<LegId> leg_argument(const Document& document, const Value& arguments, const char* name);
Result<RoseId> rose_argument(const Document& document, const Value& arguments, const char* name);

/// {ok: true}, {ok: true, id} and {error}.
Value done();
Value done_with(std::uint32_t id);
Value refused(const Problem& problem);

}  // namespace fogsheet
