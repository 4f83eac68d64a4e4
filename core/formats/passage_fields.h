// The fields of a sheet's passages, each with its bounds, described once (field_list.h).
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/passage/passage.h"

namespace fogsheet {

std::vector<std::uint8_t> bytes_of(const Passages& passages);

/// Everything in its bounds, ids unique and below next_id, one in hand. Faults: text_section ("passages").
Result<Passages> passages_from(std::span<const std::uint8_t> bytes);

/// As it can be kept: numbers in whole parts, texts trimmed, hours and tides in order. Faults: those of
/// FieldChecker; stream_hour_twice.
Result<Passage> as_kept(Passage passage);

}  // namespace fogsheet
