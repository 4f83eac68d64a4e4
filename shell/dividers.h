// The dividers on the desk: opened, read, carried to the latitude scale and back, walked along a leg.
#pragma once

#include "shell/session.h"

namespace fogsheet {

/// Opened between two places; the hinge goes to the upper side. Refuses places that are one.
Result<Done> open_dividers(Session& session, const FirstEnd& a, const FirstEnd& b);

/// Opened to a distance, read level with where they stand; put on the middle of the view when they are off.
/// Faults: number_out_of_range ("distance": more than the sheet's height reads, or too little to be set).
Result<Done> set_dividers(Session& session, double distance_nm);

DividersReading reading_of(const Session& session, const DividersOnSheet& dividers);

/// Onto the latitude scale of the nearer border, level with the work; from there back to the work.
void walk_dividers(Session& session);

/// The legs that may be stepped off: those at whose ends a point stands, the one selected, the one stepped before. A few.
std::vector<LegId> legs_to_step(const Session& session);

/// Steps a leg off, from the end where a point stands, else from its beginning.
/// @param steps  how many; none: as many as it holds. Faults: leg_unknown, number_out_of_range ("opening", "steps").
Result<Done> step_off(Session& session, LegId leg, std::optional<int> steps);

/// Where the steps of a stepped leg end; empty when the leg is no more.
std::vector<SheetPoint> steps_of(const Session& session, const DividersOnSheet& dividers);

void lift_dividers(Session& session);

/// Where the hinge stands now: over the middle of the opening, near enough to the points for any zoom.
SheetPoint hinge_of(const Session& session, const DividersOnSheet& dividers);

/// After the document changed: points stay on marks only while these are where they stand; off another sheet they go.
void settle_dividers(Session& session, bool other_sheet);

}  // namespace fogsheet
