// A moment, whatever the clock on the wall says, and the zones that clocks keep. All times of a passage are instants; a
// zone has a part in typing and showing them alone, so that midnight, the year's end and the date line are arithmetic.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/clock_text.h"
#include "core/base/date.h"
#include "core/base/result.h"

namespace fogsheet {

inline constexpr int k_seconds_per_minute = 60;
inline constexpr int k_seconds_per_hour = 3600;
inline constexpr int k_seconds_per_day = 86'400;

/// Whole seconds since 1970-01-01T00:00:00Z, leap seconds not counted (POSIX time).
struct Instant {
  std::int64_t seconds = 0;
  auto operator<=>(const Instant&) const = default;
};

/// The instant nearest to so many seconds since 1970, halves up. @param seconds finite.
Instant nearest_instant(double seconds);

inline constexpr int k_westmost_zone_min = -720;  // UTC-12
inline constexpr int k_eastmost_zone_min = 840;   // UTC+14, past the date line

/// How far a clock is ahead of UTC, minutes, [-720, 840], and what its people call it; without a name it is "UTC+1".
struct Zone {
  int minutes_east = 0;
  std::string name;
  bool operator==(const Zone&) const = default;
};

/// Its name, or one made of its minutes: "UTC", "UTC+1", "UTC-3:30".
std::string zone_name(const Zone& zone);

/// "UT", "UTC", "GMT" or "Z"; hours ahead of UTC, east positive: "+1", "UTC+1", "+0530", "UTC-3:30"; or a name without figures
/// before them, which is kept: "BST +1". A name alone says nothing: Fault entry_part_missing, "hours from UTC". Others: entry_*,
/// minutes_out_of_range, number_out_of_range (hours). Beware: the zone descriptions of older books have the sign reversed.
Result<Zone> parse_zone(std::string_view text);

/// What calendar and clock of a zone show.
struct LocalTime {
  Date date;
  ClockTime time;
  int seconds = 0;  // [0, 60)
  bool operator==(const LocalTime&) const = default;
};

Instant instant_of(Date date, ClockTime time, const Zone& zone);

/// @param instant within the years 1 to 9999.
LocalTime local_time(Instant instant, const Zone& zone);

/// "2026-06-21T06:40:00Z", always in UTC, and back: that form alone. Faults: instant_unreadable.
std::string iso_instant(Instant instant);
Result<Instant> parse_iso_instant(std::string_view text);

/// A time of day as it is shown.
struct ClockFigures {
  std::string figures;  // "0640": to the nearest whole minute, halves up
  int days_after = 0;   // of the reference day: 1 for the next day, -1 for the day before
  bool operator==(const ClockFigures&) const = default;
};

ClockFigures clock_figures(Instant instant, const Zone& zone, Date reference);

}  // namespace fogsheet
