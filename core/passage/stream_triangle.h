// The triangle of boat, stream and ground: movement over the ground = movement through the water + stream. Its three
// questions are each other's inverses. Leeway is no part of it: the water track is the heading after leeway (leeway.h).
// Source: Bowditch, The American Practical Navigator (NGA Pub. 9), chapter Dead Reckoning, current triangles.
#pragma once

#include "core/base/result.h"
#include "core/directions/directions.h"
#include "core/passage/plane_vector.h"

namespace fogsheet {

/// Where the water goes, as currents are named, and how fast. Drift at least 0; with none the set says nothing.
struct Stream {
  TrueDirection set;
  double drift_kn = 0;
  bool operator==(const Stream&) const = default;
};

inline PlaneVector velocity_kn(Stream stream) { return along(stream.set, stream.drift_kn); }
inline Stream stream_of(PlaneVector velocity_kn) { return {.set = direction_of(velocity_kn), .drift_kn = length_of(velocity_kn)}; }

/// A course and speed, through the water or over the ground, as the name of the variable says. Speed at least 0.
struct Motion {
  TrueDirection course;
  double speed_kn = 0;
  bool operator==(const Motion&) const = default;
};

inline PlaneVector velocity_kn(Motion motion) { return along(motion.course, motion.speed_kn); }
inline Motion motion_of(PlaneVector velocity_kn) { return {.course = direction_of(velocity_kn), .speed_kn = length_of(velocity_kn)}; }

struct CourseToSteer {
  TrueDirection water_track;
  double speed_over_ground_kn = 0;  // along the track, more than 0
};

/// The water track that makes a ground track good at a speed through the water. With a stream faster than the boat there may
/// be two; the one that is faster over the ground is given. Faults: speed_not_positive,
/// stream_not_stemmed without times.
Result<CourseToSteer> course_to_steer(TrueDirection track, double speed_kn, Stream stream);

/// The same in parts, where many are asked for: a triangle on a line of that direction, a unit vector.
struct LineTriangle {
  double left_kn = 0;               // what crabbing leaves of the speed, along the line
  double across_kn = 0;             // what of the stream sets to starboard
  double speed_over_ground_kn = 0;  // along the line
  bool stemmed = false;
};
LineTriangle line_triangle(PlaneVector ahead, double speed_kn, PlaneVector stream_kn);

/// How far to starboard of the line that triangle's water track points, deg.
double crab_deg(const LineTriangle& triangle);

/// More than this speed through the water makes some way along the track: the drift when the stream sets against it or square
/// to it, else what of the stream sets across.
double least_speed_kn(TrueDirection track, Stream stream);
double least_speed_kn(PlaneVector ahead, PlaneVector stream_kn);

/// Where a water track and speed lead over the ground. Standing still over the ground: course 0.
Motion made_good(Motion through_water, Stream stream);

/// The water track and speed for a wanted track and speed over the ground. Nothing to do: course 0, speed 0.
Motion through_water_for(Motion over_ground, Stream stream);

/// What stream makes the one of the other.
Stream stream_between(Motion through_water, Motion over_ground);

}  // namespace fogsheet
