// Where the boat is by what was steered and logged. Dead reckoning stands on the water track, the estimated position has the
// stream added; both on rhumb lines of WGS84 from the last known place.
// Source: Bowditch, The American Practical Navigator (NGA Pub. 9), chapter Dead Reckoning.
#pragma once

#include <vector>

#include "core/base/instant.h"
#include "core/earth/rhumb.h"
#include "core/passage/leg_run.h"
#include "core/positions/position.h"

namespace fogsheet {

struct Reckoned {
  double at_s = 0;       // seconds since 1970
  double run_nm = 0;     // through the water from the leg's start, as the log has it
  double along_nm = 0;   // of the estimated position: along the leg's line
  double across_nm = 0;  // and to starboard of it
  Position dead_reckoning;
  Position estimated;  // at the arrival, the leg's end
};

/// At a time along a leg that begins at `start`; past the arrival as if nothing was seen there. Faults: those of point_after,
/// latitude_out_of_range past a pole.
Result<Reckoned> reckoned_at(Position start, const LegPlan& plan, const LegRun& run, double at_s);

/// When the log has counted so many miles from the leg's start, at the planned speed. Faults also number_out_of_range below 0.
Result<Reckoned> reckoned_at_log(Position start, const LegPlan& plan, const LegRun& run, double run_nm);

/// At a time, with what the log has counted by then in place of planned speed x time. Faults as before.
Result<Reckoned> reckoned_by_log(Position start, const LegPlan& plan, const LegRun& run, double at_s, double run_nm);

/// At every full so many minutes of the zone's day, after the departure and before the arrival. @param minutes 1 to 1440:
/// else Fault number_out_of_range.
Result<std::vector<Reckoned>> reckoned_every(Position start, const LegPlan& plan, const LegRun& run, int minutes, const Zone& zone);

/// From a known place, without a leg. @param hours from then, at least 0. Faults: time_not_positive, latitude_out_of_range.
Result<Position> estimated_position(Position from, Motion through_water, Stream stream, double hours);

/// What stream put the boat at a fix, that long after a known place: everything that was wrong counts as stream. The inverse
/// of estimated_position. Faults: time_not_positive.
Result<Stream> set_and_drift(Position from, Motion through_water, Position fix, double hours);

/// The same from the run over the ground, however it was measured.
Result<Stream> set_and_drift(RhumbLeg over_ground, Motion through_water, double hours);

}  // namespace fogsheet
