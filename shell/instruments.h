// What lies on the desk beside the straight-edge: the dividers, and the readings of the rough method. Plain values; what
// they do is in shell/dividers.h and core/instruments.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/directions/directions.h"
#include "core/document/ids.h"
#include "core/instruments/dividers.h"
#include "core/instruments/straight_edge.h"

namespace fogsheet {

/// Where dividers stand, with the marks their points are on.
struct DividersPlace {
  Dividers points;
  std::optional<MarkId> on_a;
  std::optional<MarkId> on_b;
  bool hinge_left = true;  // of the way from a to b

  bool operator==(const DividersPlace&) const = default;
};

/// A leg stepped off: from one of its ends, so many steps of the opening towards the other.
struct SteppedLeg {
  LegId leg;
  MarkId from;
  MarkId towards;
  int steps = 0;
  bool counted = false;  // so many were asked for; else as many as the leg holds
  double rest_mm = 0;    // from the last of as many as it holds to its end

  bool operator==(const SteppedLeg&) const = default;
};

struct DividersOnSheet {
  DividersPlace lie;
  std::optional<DividersPlace> work;  // where they were taken from, while they stand on the latitude scale
  std::optional<SteppedLeg> stepped;

  bool operator==(const DividersOnSheet&) const = default;
};

/// What is typed for the dividers; a wrong entry stays, with its reason.
struct DividersForm {
  std::string distance;
  std::string distance_error;
  std::string steps;
  std::string steps_error;
};

/// An edge set to a direction, the other way round: it was turned at a rose, is slid to a mark, and a line is drawn along it.
struct DirectionSet {
  double deg = 0;                            // [0, 360), on the ring it was set by
  Reference reference = Reference::true_north;
  StraightEdge set_here;                     // as it lay then; its ghost stays there
  std::optional<MarkId> through;             // the mark it was slid to
  std::optional<double> line_mm = {};        // how far the line from there reaches, once chosen; else to the edge's end
};

/// The marks that the edge was last laid on, in the direction of travel: what its exact course is worked out from.
struct EdgeMarks {
  MarkId from;
  MarkId to;
};

/// What is typed to set it; a wrong entry stays, with its reason.
struct DirectionForm {
  bool open = false;  // the slip asks for a direction
  std::string text;
  std::string error;
  Reference reference = Reference::true_north;
  std::string length;
  std::string length_error;
};

/// Quick readings of one line off one ring, and what is being typed.
struct RoughMethod {
  std::vector<double> readings_deg;
  Reference ring = Reference::true_north;
  std::string typed;
  std::string typed_error;
  std::string run;  // the distance to run, as typed; empty: that of the leg selected
  std::string run_error;
};

}  // namespace fogsheet
