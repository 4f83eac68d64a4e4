// How far the boat has come on the leg that she is on.
#pragma once

#include <optional>

#include "core/passage/passage_plan.h"

namespace fogsheet {

struct Progress {
  double run_nm = 0;                   // over the ground along the leg, [0, its length]
  std::optional<ClockTime> log_read = {};  // by the log, as it was last read on this leg then; none: by the clock
};

/// By the log where it was read at the leg's begin and on it since, with the stream of that time; else by the clock, the leg's
/// time taken evenly. @param leg  of plan_under_way, without a problem. @param now_s  seconds since 1970
Progress progress_on(const Document& document, const Passage& passage, const PlannedLeg& leg, double now_s);

}  // namespace fogsheet
