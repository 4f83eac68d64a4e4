// One leg of a passage run through the stream: when it ends, and what is steered for it. Flat over the leg's length: the
// leg is its rhumb line's course and distance, and runs and streams are added up as on the sheet.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/passage/stream_triangle.h"
#include "core/passage/tidal_streams.h"

namespace fogsheet {

/// One heading all along, for the stream of the whole time: the quickest way there, and the ground track is bowed. Or a
/// heading for each hour's stream, which stays on the line.
enum class Way { one_heading, hour_by_hour };

/// The longest time a leg may take. Past it no answer is looked for.
inline constexpr double k_longest_leg_hours = 72;

struct LegPlan {
  TrueDirection track;     // the leg's rhumb course over the ground
  double distance_nm = 0;  // and distance
  double speed_kn = 0;     // through the water
  Way way = Way::one_heading;
  const StreamTimetable* streams = nullptr;  // never null; must outlive the plan
};

/// A time of constant stream and water track within a leg.
struct RunPiece {
  double from_s = 0;  // seconds since 1970, with their fractions
  double to_s = 0;
  TrueDirection water_track;
  PlaneVector stream_kn;
  bool stream_entered = false;
  double along_nm = 0;   // at its end, over the ground: along the line from the leg's start
  double across_nm = 0;  // and to starboard of the line
};

struct LegRun {
  double departure_s = 0;  // seconds since 1970, with their fractions: no leg is rounded before the next begins
  double arrival_s = 0;
  double hours = 0;
  TrueDirection water_track;        // the one heading, after leeway; hour by hour, of the whole run through the water
  double through_water_nm = 0;      // as the log counts it
  double speed_over_ground_kn = 0;  // the mean along the line
  double speed_at_arrival_kn = 0;   // over the ground along the line, at the end; with a strong stream it may be less than 0
  Stream net_stream;                // the mean of the time
  bool stream_entered = false;      // false: none was entered, and still water was reckoned with
  std::optional<StreamPiece> gap;   // the first time within the leg for which a table has no stream: still water there
  std::vector<RunPiece> pieces;
};

/// The leg from that departure. One heading: exact, the first time at which the run through the water and the stream's
/// together are the leg. Faults: leg_of_no_length, speed_not_positive, leg_takes_too_long, stream_not_stemmed: one heading, with
/// the least speed that gets there within k_longest_leg_hours; hour by hour, with the first hour that holds the boat and the
/// speed for it. @param departure_s seconds since 1970.
Result<LegRun> run_leg(const LegPlan& plan, double departure_s);

/// The latest departure from which the boat is at the leg's end at that time, seconds since 1970: the same solved backwards
/// through the streams, as exactly. While the boat is faster than every stream, a later departure is a later arrival and
/// run_leg leads back to the same time. Where she is not, hour by hour is refused; on one heading she may also get there
/// earlier from that departure. Faults as run_leg; times of stream_not_stemmed are those of the hour that holds her.
Result<double> departure_for(const LegPlan& plan, double arrival_s);

/// The same for legs that follow one another without a stop, worked backwards from the last. None: arrival_s.
/// A Problem is that of the last leg that has one.
Result<double> departure_for(std::span<const LegPlan> legs, double arrival_s);

/// Where the boat is some time after departure, nm from the leg's start.
struct RunPoint {
  PlaneVector through_water;  // without the stream: dead reckoning
  PlaneVector stream;         // what the stream has added by then
};

/// On the heading, or headings, of that run; past the arrival it goes on as before. Faults: time_before_departure,
/// leg_takes_too_long past k_longest_leg_hours, stream_not_stemmed (hour by hour, past the arrival).
Result<RunPoint> point_after(const LegPlan& plan, const LegRun& run, double hours);

}  // namespace fogsheet
