// What a passage draws on its sheet, as places on the paper: the triangles of its legs as they are laid off by hand, ground
// tracks that streams bow, and where she is at which time, by dead reckoning and with the stream added.
// Source: the triangle and what its lines are called are those of the schools (common practice, no source).
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/figure/plot_signs.h"
#include "core/passage/passage_plan.h"

namespace fogsheet {

inline constexpr std::size_t k_most_plotted_positions = 400;
inline constexpr std::size_t k_most_plotted_triangles = 100;

/// From where its course begins the stream is laid off for a time, from the stream's end the run through the water, which
/// meets the ground track where she is by then.
struct LaidTriangle {
  int minutes = 0;
  Stream stream;
  TrueDirection water_track;
  double shown_water_track_deg = 0;  // as it stands in the card's sum, whose rows are rounded one after the other
  double speed_kn = 0;               // through the water
  double speed_over_ground_kn = 0;
  SheetPoint start, stream_end, meets;

  double stream_nm() const { return stream.drift_kn * minutes / 60; }
  double water_nm() const { return speed_kn * minutes / 60; }
};

struct PlottedPosition {
  PlotSign sign = PlotSign::dead_reckoning;
  SheetPoint at;
  double track_deg = 0;  // of the water track it lies on
  std::string time;      // "0840", in the passage's zone
};

struct PlottedPassage {
  std::vector<LaidTriangle> triangles;
  std::vector<std::vector<SheetPoint>> bows;          // ground tracks that leave the line of their leg
  std::vector<std::vector<SheetPoint>> water_tracks;  // as far as dead reckoning stands on them
  std::vector<std::array<SheetPoint, 2>> ground_tracks;  // beside a water track, without a triangle: the stretch that its heads stand on
  std::vector<LegId> told_apart;                         // legs with a water track beside them
  std::vector<PlottedPosition> positions;             // at most k_most_plotted_positions
};

/// How a leg's triangles are laid off: one for each course that is held on it. None without a stream, or without a speed.
/// Each for half an hour; for less where the boat is sooner at the course's end, for longer where the stream would be too
/// short to be laid off and there is room on the leg.
std::vector<LaidTriangle> triangles_of(const Document& document, const PlannedLeg& leg, const Projection& projection);

/// @param plan        as entered: its triangles are what the card goes by
/// @param under_way   by the deck log: where the boat is at a time
PlottedPassage plot_passage(const Document& document, const Passage& passage, const PassagePlan& plan, const PassagePlan& under_way, const Projection& projection);

}  // namespace fogsheet
