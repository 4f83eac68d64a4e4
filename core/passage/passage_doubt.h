// How far off a passage may be at the end of each leg, as standard deviations along the leg and across it. Small errors,
// added up as vectors: what is constant for the passage (compass, variation, leeway, stream, log) pulls the same way on every
// leg, so its runs are added before they are squared, and a leg back undoes a leg out; steering is drawn anew on each leg,
// so squares are added.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/directions/directions.h"
#include "core/passage/plane_vector.h"

namespace fogsheet {

enum class DoubtSource { steering, compass, variation, leeway, stream, log, start };
inline constexpr std::size_t k_doubt_sources = 7;

// What is taken where nothing better is known, one standard deviation each. Common practice, no source.
inline constexpr double k_steering_sd_deg = 2.5;  // the helm's mean over a leg
inline constexpr double k_no_card_sd_deg = 4;     // deviation of a compass that was never swung
inline constexpr double k_leeway_sd_deg = 1.5;
inline constexpr double k_stream_sd_kn = 0.3;  // each of its two parts, from an atlas at neaps
inline constexpr double k_stream_not_entered_sd_kn = 1;
inline constexpr double k_log_sd_share = 0.03;  // of the run through the water
inline constexpr double k_start_sd_nm = 0.03;   // each of two parts

/// Nineteen boats in twenty are within so many standard deviations: 1.96, as the trade rounds it.
inline constexpr double k_sds_for_19_in_20 = 2;

/// A leg as far as it matters here, with the standard deviations that differ from leg to leg.
struct DoubtLeg {
  TrueDirection track;        // over the ground: what along and across are told by
  TrueDirection water_track;  // what errors of direction and of the log pull on
  double through_water_nm = 0;
  double hours = 0;
  double compass_sd_deg = k_no_card_sd_deg;          // on this leg's heading, by the card in use
  double stream_sd_kn = k_stream_not_entered_sd_kn;  // each of its two parts
  int leeway_to = 1;                                 // 1: leeway sets to starboard of the heading, or is not known; -1: to port
  std::optional<double> seen_sd_nm;                  // at the leg's end a mark is seen and the place known that well, each of two parts
};

/// What is the same for all legs.
struct DoubtSds {
  double steering_deg = k_steering_sd_deg;
  double variation_deg = 0;
  double leeway_deg = k_leeway_sd_deg;
  double log_share = k_log_sd_share;
  double start_nm = k_start_sd_nm;
  bool operator==(const DoubtSds&) const = default;
};

struct AlongAcross {
  double along_nm = 0;
  double across_nm = 0;
};

/// Standard deviations at a leg's end, before anything is seen there.
struct LegDoubt {
  AlongAcross sd;
  std::array<AlongAcross, k_doubt_sources> by_source;  // by DoubtSource; their squares add up to that of the whole
  AlongAcross at_start;  // told by the same track, with what was seen there allowed for
};

/// For each leg. What was seen at a leg's end takes the place of the start for those after it.
std::vector<LegDoubt> passage_doubt(std::span<const DoubtLeg> legs, const DoubtSds& sds);

/// When to expect the leg's end, 19 in 20: seconds since 1970.
struct TimeWindow {
  double from_s = 0;
  double to_s = 0;
};

/// @param speed_over_ground_kn at the arrival. Empty where that is nothing: there is no saying.
std::optional<TimeWindow> time_window(double arrival_s, const LegDoubt& doubt, double speed_over_ground_kn);

/// How far to either side the leg's end may be missed, 19 in 20.
double to_either_side_nm(const LegDoubt& doubt);

}  // namespace fogsheet
