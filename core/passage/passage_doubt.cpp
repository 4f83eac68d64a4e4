#include "core/passage/passage_doubt.h"

#include <cmath>

#include "core/base/instant.h"

namespace fogsheet {

namespace {

// A symmetric matrix of two by two.
struct Covariance {
  double north_north = 0;
  double north_east = 0;
  double east_east = 0;

  void add_square(PlaneVector v) {
    north_north += v.north * v.north;
    north_east += v.north * v.east;
    east_east += v.east * v.east;
  }
  void add_all_round(double sd) {
    north_north += sd * sd;
    east_east += sd * sd;
  }
  void add(const Covariance& other) {
    north_north += other.north_north;
    north_east += other.north_east;
    east_east += other.east_east;
  }
  // Standard deviation in the direction of a unit vector.
  double sd(PlaneVector unit) const {
    const double variance = unit.north * unit.north * north_north + 2 * unit.north * unit.east * north_east + unit.east * unit.east * east_east;
    return std::sqrt(std::max(0.0, variance));  // rounding can leave a last bit below nought
  }
};

// What has gathered since the place was last known: for the constant sources where one standard deviation of each has carried
// the boat, nm, for steering the sum of squares.
struct Gathered {
  PlaneVector compass, variation, leeway, log;
  double stream_nm = 0;  // of either part
  Covariance steering;
  double start_nm = 0;

  void add(const DoubtLeg& leg, const DoubtSds& sds) {
    const PlaneVector run = along(leg.water_track, leg.through_water_nm);
    const PlaneVector a_degree{-k_degree_rad * run.east, k_degree_rad * run.north};  // to starboard, for an error of one degree clockwise
    steering.add_square(sds.steering_deg * a_degree);
    compass = compass + leg.compass_sd_deg * a_degree;
    variation = variation + sds.variation_deg * a_degree;
    leeway = leeway + leg.leeway_to * sds.leeway_deg * a_degree;
    log = log + sds.log_share * run;
    stream_nm += leg.stream_sd_kn * leg.hours;
  }

  std::array<Covariance, k_doubt_sources> by_source() const {
    std::array<Covariance, k_doubt_sources> all;
    const auto of = [&](DoubtSource source) -> Covariance& { return all[static_cast<std::size_t>(source)]; };
    of(DoubtSource::steering) = steering;
    of(DoubtSource::compass).add_square(compass);
    of(DoubtSource::variation).add_square(variation);
    of(DoubtSource::leeway).add_square(leeway);
    of(DoubtSource::stream).add_all_round(stream_nm);
    of(DoubtSource::log).add_square(log);
    of(DoubtSource::start).add_all_round(start_nm);
    return all;
  }
};

Covariance sum_of(const std::array<Covariance, k_doubt_sources>& sources) {
  Covariance whole;
  for (const Covariance& source : sources) whole.add(source);
  return whole;
}

/// @param ahead  of length one
AlongAcross told_along(const PlaneVector& ahead, const Covariance& covariance) {
  return {.along_nm = covariance.sd(ahead), .across_nm = covariance.sd({-ahead.east, ahead.north})};
}

}  // namespace

std::vector<LegDoubt> passage_doubt(std::span<const DoubtLeg> legs, const DoubtSds& sds) {
  std::vector<LegDoubt> doubts;
  doubts.reserve(legs.size());
  Gathered gathered{.start_nm = sds.start_nm};
  for (const DoubtLeg& leg : legs) {
    LegDoubt& doubt = doubts.emplace_back();
    const PlaneVector ahead = along(leg.track);
    doubt.at_start = told_along(ahead, sum_of(gathered.by_source()));
    gathered.add(leg, sds);
    const std::array<Covariance, k_doubt_sources> sources = gathered.by_source();
    doubt.sd = told_along(ahead, sum_of(sources));
    for (std::size_t i = 0; i < k_doubt_sources; ++i) doubt.by_source[i] = told_along(ahead, sources[i]);
    if (leg.seen_sd_nm) gathered = {.start_nm = *leg.seen_sd_nm};
  }
  return doubts;
}

std::optional<TimeWindow> time_window(double arrival_s, const LegDoubt& doubt, double speed_over_ground_kn) {
  if (!(speed_over_ground_kn > 0)) return std::nullopt;
  const double half_s = k_sds_for_19_in_20 * doubt.sd.along_nm / speed_over_ground_kn * k_seconds_per_hour;
  return TimeWindow{.from_s = arrival_s - half_s, .to_s = arrival_s + half_s};
}

double to_either_side_nm(const LegDoubt& doubt) { return k_sds_for_19_in_20 * doubt.sd.across_nm; }

}  // namespace fogsheet
