// A passage as it was entered: legs of the sheet in their order, and what is to be allowed for on them. Courses to steer,
// times and doubts follow from it (passage_plan.h). A sheet holds several, as alternatives; one of them is in hand.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/clock_text.h"
#include "core/base/date.h"
#include "core/base/instant.h"
#include "core/document/ids.h"
#include "core/passage/leg_run.h"
#include "core/passage/pass_mark.h"
#include "core/passage/stream_triangle.h"
#include "core/passage/tidal_streams.h"

namespace fogsheet {

using PassageId = Id<struct PassageTag>;

// Bounds of what a sheet may hold of passages.
inline constexpr std::size_t k_most_passages = 50;
inline constexpr std::size_t k_most_passage_legs = 2'000;
inline constexpr std::size_t k_most_stream_hours = 13;
inline constexpr std::size_t k_most_tides = 20;
inline constexpr std::size_t k_most_deck_entries = 2'000;
inline constexpr double k_most_boat_speed_kn = 60;
inline constexpr double k_most_leeway_deg = 45;
inline constexpr double k_most_visibility_nm = 50;
inline constexpr double k_most_leave_nm = 60;
inline constexpr double k_most_tide_m = 20;
inline constexpr double k_most_log_nm = 99'999;
inline constexpr std::uint32_t k_most_plot_min = 240;

// Numbers are whole multiples of these parts, so that what is kept is kept exactly.
inline constexpr double k_parts_per_passage_knot = 100;
inline constexpr double k_parts_per_passage_degree = 10;
inline constexpr double k_parts_per_passage_nm = 100;

/// Where the air comes from, and how far it sets the boat off her heading.
struct PlannedLeeway {
  double wind_from_deg = 0;  // true, [0, 360), whole 0.1
  double angle_deg = 0;      // [0, 45], whole 0.1, always turned away from the wind

  bool operator==(const PlannedLeeway&) const = default;
};

/// Their order is part of what is kept.
enum class StreamEntry { not_entered, steady, by_hour };

struct PlannedStream {
  StreamEntry entry = StreamEntry::not_entered;
  Stream steady = {};                  // of `steady`
  std::vector<StreamHour> hours = {};  // of `by_hour`, around the passage's high waters; ascending hours
  std::string source = {};             // "tidal atlas"; may be empty

  /// A steady one of which neither set nor drift was typed is not entered yet.
  StreamEntry entered() const { return entry == StreamEntry::steady && steady == Stream{} ? StreamEntry::not_entered : entry; }
  bool operator==(const PlannedStream&) const = default;
};

/// A mark that one leaves to a side at a distance: one does not steer onto it in fog.
struct MarkToLeave {
  MarkId mark;
  Side side = Side::starboard;
  double distance_nm = 0;  // [0, 60], whole 0.01

  bool operator==(const MarkToLeave&) const = default;
};

/// What is not set here is the passage's.
struct PassageLeg {
  LegId leg;               // of the sheet; it may have been taken off there since
  std::string name = {};   // "Off Sarn to Off Gannet" when it was taken in, for the words once it has gone
  std::optional<double> speed_kn = {};  // through the water, (0, 60], whole 0.01
  std::optional<PlannedLeeway> leeway = {};
  std::optional<PlannedStream> stream = {};
  std::optional<Way> way = {};
  std::optional<MarkToLeave> leave = {};
  std::string look_for = {};  // "lattice post, white"; may be empty
  bool triangle = false;      // its stream triangle is drawn on the sheet

  bool operator==(const PassageLeg&) const = default;
};

/// A high or low water, in the passage's zone.
struct Tide {
  Date date;
  ClockTime time;
  bool is_high = true;
  std::optional<double> height_m = {};  // [-20, 20], whole 0.1

  bool operator==(const Tide&) const = default;
};

/// What a line of the deck log tells. Their order is part of what is kept.
enum class DeckEntryKind {
  reading,   // a time, a log reading, a note
  departed,  // the first leg began
  seen,      // a leg ended with its mark in sight
  not_seen,  // turned on log or time: the doubt goes on growing
  passed     // a leg ended earlier or later than the window
};

struct DeckEntry {
  DeckEntryKind kind = DeckEntryKind::reading;
  Date date;  // in the passage's zone
  ClockTime time;
  std::optional<double> log_nm = {};       // [0, 99 999], whole 0.01
  std::optional<Side> side = {};           // seen: where the mark was
  std::optional<double> distance_nm = {};  // seen: how far off, [0, 60], whole 0.01
  std::string note = {};

  bool operator==(const DeckEntry&) const = default;
};

struct Passage {
  PassageId id;
  std::string name = {};  // may be empty: named after its ends by shell
  std::vector<PassageLeg> legs = {};
  std::optional<double> speed_kn = {};  // through the water, (0, 60], whole 0.01; none while it was not entered
  std::optional<PlannedLeeway> leeway = {};
  PlannedStream stream = {};
  Way way = Way::one_heading;
  Date date;                               // of `time`
  std::optional<ClockTime> time = {};      // of departure, or of the arrival that is wanted; none while it was not entered
  bool is_arrival = false;
  Zone zone = {};
  std::optional<Date> home_date = {};      // of home_time; the passage's when none
  std::optional<ClockTime> home_time = {};  // when the way home begins; none: not planned
  std::string tide_place = {};
  std::vector<Tide> tides = {};            // ascending; the high ones are what a table of streams goes by
  std::optional<double> visibility_nm = {};  // [0, 50], whole 0.01
  std::uint32_t plot_every_min = 0;        // DR and EP stand on the sheet so often, [0, 240]; 0: at what the deck log has alone
  std::string turn_back = {};              // where and when to turn back, in words
  std::string note = {};
  std::vector<DeckEntry> deck_log = {};    // as it was written, times ascending

  bool operator==(const Passage&) const = default;
};

/// All passages of a sheet.
struct Passages {
  std::vector<Passage> all = {};
  PassageId in_hand = {};      // one of them, if there are any
  std::uint32_t next_id = 1;   // above every id in use

  bool operator==(const Passages&) const = default;
};

const Passage* find(const Passages& passages, PassageId id);

/// That leg of the passage that is being run: none before she departed and after the last one ended.
struct UnderWay {
  bool departed = false;
  std::size_t leg = 0;  // == legs.size() once all have ended
};
UnderWay under_way(const Passage& passage);

/// Which entry began a leg, or ended the last one: the departure for 0; null while it has not been written.
const DeckEntry* turn_entry(const Passage& passage, std::size_t leg);

}  // namespace fogsheet
