// The straight-edge the other way round: turned to a direction that was typed, slid to a mark, and a line drawn along it.
#pragma once

#include "shell/session.h"

namespace fogsheet {

/// A direction by any north, true. By compass it is the ship's head, its deviation rounded as sums have it.
/// Faults: direction_out_of_range, reference_not_usable, the variation's own.
Result<TrueDirection> to_true_direction(const Session& session, double deg, Reference reference, const VariationInUse& variation);

/// Turns the edge about the rose it is settled on, else about its middle; with none on, one through the first rose.
/// Faults: direction_out_of_range, reference_not_usable, no_rose.
Result<Done> set_direction(Session& session, double deg, Reference reference);

/// Turns the edge by a little, about the rose it is settled on, else about its middle; one that was set to a direction is set
/// anew, and from a direction in whole degrees by as much. Faults: those of set_direction.
Result<Done> nudge_edge(Session& session, double by_deg);

/// The variation of the rose that the edge was set at, else the sheet's.
const VariationInUse& variation_of_direction(const Session& session);

/// Whether an edge still points as it was set.
bool lies_as_set(const StraightEdge& edge, const DirectionSet& direction);

/// While an edge that was set is slid: brought onto the mark within reach of its reading edge, which is kept in mind; rather
/// on a rose than on a mark.
StraightEdge slid_to_mark(Session& session, const StraightEdge& edge);

/// The set direction the other way round, with its edge.
void turn_direction_round(DirectionSet& direction);

/// The line that would be drawn from the mark the edge was slid to. Empty while it was not.
struct LineAlongEdge {
  MarkId from;
  SheetPoint start;
  SheetPoint end;  // within the neat line
};
std::optional<LineAlongEdge> line_along_edge(const Session& session);

/// How far the line reaches: by a place its end was taken to, or a length. Faults: number_out_of_range ("length").
void take_line_end(Session& session, SheetPoint to);
Result<Done> set_line_length(Session& session, double distance_nm);

/// Draws it as a leg to a turning point of its own, in one step. Faults: no_line_to_draw, those of add_leg_to_new_turn.
Result<LegId> draw_line(Session& session);

/// The leg that the edge was laid along: of two between the same marks the one that goes its way. Empty when there is none.
struct LegUnderEdge {
  LegId leg;
  bool backwards = false;  // the edge goes from its end to its start
};
std::optional<LegUnderEdge> leg_under_edge(const Session& session);

/// Writes what the settled edge reads on that leg, in the leg's own direction, as finely as directions are shown.
/// Faults: edge_not_settled, edge_on_no_leg, reference_not_usable, those of write_on_leg.
Result<Done> write_reading(Session& session, LegId leg, Reference ring);

/// After the document changed: lets go of what is no longer there.
void settle_direction(Session& session);

}  // namespace fogsheet
