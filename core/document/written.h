// What a reading written on a leg is worth: whether the leg still lies where it was read, and how far the hand was out.
#pragma once

#include <optional>

#include "core/document/document.h"
#include "core/magnetic/variation.h"

namespace fogsheet {

/// From this much on, either way, the user is told that the reading and the computed course differ.
inline constexpr double k_reading_warned_over_deg = 2;

/// Whether an end of the leg is no longer where it was when its reading was written. @param leg of that document, written.
bool is_stale(const Document& document, const Leg& leg);

/// How far what is written on the leg lies from its computed course on the same ring, clockwise, in [-180, 180).
/// @param leg of that document, written; variation the one that serves it. None for a magnetic reading where there is none.
std::optional<double> reading_off_deg(const Document& document, const Leg& leg, const VariationInUse& variation);

}  // namespace fogsheet
