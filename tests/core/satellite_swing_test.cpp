#include "core/compass/satellite_swing.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_radians = 3.14159265358979323846 / 180;

struct Boat {
  ByCoefficient deviation_deg{};
  Variation variation;
  double speed_kn = 5;
  double set_deg = 0, drift_kn = 0;
};

/// What a receiver shows on each of so many headings, evenly round.
std::vector<SatelliteReading> run(const Boat& boat, int count, Random* noise = nullptr) {
  std::vector<SatelliteReading> readings;
  for (int i = 0; i < count; ++i) {
    const CompassDirection heading(360.0 * i / count + 3);
    const double head = (heading.deg() + deviation_by(boat.deviation_deg, heading).deg + boat.variation.deg) * k_radians, set = boat.set_deg * k_radians;
    const double north = boat.speed_kn * std::cos(head) + boat.drift_kn * std::cos(set), east = boat.speed_kn * std::sin(head) + boat.drift_kn * std::sin(set);
    readings.push_back({heading, TrueDirection(std::atan2(east, north) / k_radians + (noise ? noise->normal() : 0)),
                        std::hypot(north, east) + (noise ? 0.1 * noise->normal() : 0)});
  }
  return readings;
}

Boat some_boat(Random& random) {
  return {.deviation_deg = {random.uniform(-3, 3), random.uniform(-10, 10), random.uniform(-10, 10), random.uniform(-4, 4), random.uniform(-2, 2)},
          .variation = {.deg = random.uniform(-15, 15)}, .speed_kn = 5, .set_deg = random.uniform(0, 360), .drift_kn = 0.5};
}

}  // namespace

TEST_CASE("track and speed without error give coefficients, stream and speed back") {
  Random random(91);
  for (int i = 0; i < 200; ++i) {
    const Boat boat = some_boat(random);
    const std::vector<SatelliteReading> readings = run(boat, static_cast<int>(random.whole(8, 16)));
    const Result<SatelliteSwing> swing = fit_satellite_swing(readings, boat.variation, {});
    REQUIRE(swing.ok());
    for (const Coefficient which : k_coefficients) CHECK(std::abs(swing->fit.coefficient_deg(which) - of(boat.deviation_deg, which)) <= 1e-8);
    CHECK(std::abs(swing->drift_kn - boat.drift_kn) <= 1e-9);
    CHECK(std::abs(reduce_difference_deg(swing->set.deg() - boat.set_deg)) <= 1e-6);
    CHECK(std::abs(swing->speed_through_water_kn - boat.speed_kn) <= 1e-9);
    for (std::size_t k = 0; k < readings.size(); ++k)
      CHECK(std::abs(swing->deviations[k].deg - deviation_by(boat.deviation_deg, readings[k].heading).deg) <= 1e-8);
  }
}

TEST_CASE("with 1 degree and 0.1 kn of noise in a stream of half a knot B and C are not biased, and their errors are as said") {
  Random random(92);
  constexpr int k_trials = 1000;
  double bias_b_deg = 0, bias_c_deg = 0, covered = 0;
  for (int i = 0; i < k_trials; ++i) {
    const Boat boat = some_boat(random);
    const Result<SatelliteSwing> swing = fit_satellite_swing(run(boat, 8, &random), boat.variation, {});
    REQUIRE(swing.ok());
    const double off_b_deg = swing->fit.coefficient_deg(Coefficient::b) - of(boat.deviation_deg, Coefficient::b);
    bias_b_deg += off_b_deg / k_trials;
    bias_c_deg += (swing->fit.coefficient_deg(Coefficient::c) - of(boat.deviation_deg, Coefficient::c)) / k_trials;
    if (std::abs(off_b_deg) <= swing->fit.one_sigma_factor() * of(swing->fit.se_deg, Coefficient::b)) covered += 100.0 / k_trials;
  }
  MESSAGE("bias of B ", bias_b_deg, ", of C ", bias_c_deg, " deg; one standard error of B covers ", covered, " %");
  CHECK(std::abs(bias_b_deg) < 0.2);
  CHECK(std::abs(bias_c_deg) < 0.2);
  CHECK(std::abs(covered - 68.27) <= 5);
}

TEST_CASE("averaging opposite headings would cancel B and C, this does not") {
  const Boat boat{.deviation_deg = {0, 8, -6, 0, 0}, .set_deg = 120, .drift_kn = 1.5};
  const Result<SatelliteSwing> swing = fit_satellite_swing(run(boat, 8), boat.variation, {});
  REQUIRE(swing.ok());
  CHECK(std::abs(swing->fit.coefficient_deg(Coefficient::b) - 8) <= 1e-8);
  CHECK(std::abs(swing->fit.coefficient_deg(Coefficient::c) + 6) <= 1e-8);
}

TEST_CASE("too few headings, headings all one way, and a boat that stands still have no answer") {
  Random random(93);
  const Boat boat = some_boat(random);
  std::vector<SatelliteReading> readings = run(boat, 8);
  readings.pop_back();
  const Result<SatelliteSwing> few = fit_satellite_swing(readings, boat.variation, {});
  REQUIRE_FALSE(few.ok());
  CHECK(few.problem().fault == Fault::too_few_readings);

  std::vector<SatelliteReading> one_way(8, run(boat, 8, &random)[2]);
  CHECK_FALSE(fit_satellite_swing(one_way, boat.variation, {}).ok());

  std::vector<SatelliteReading> still = run(boat, 8);
  for (SatelliteReading& reading : still) reading.speed_kn = 0;
  CHECK_FALSE(fit_satellite_swing(still, boat.variation, {}).ok());
}

TEST_CASE("headings on one side have no answer, though their readings agree by luck to the last figure") {
  const Boat boat{.deviation_deg = {1, 4, -3, 1, 0}, .set_deg = 120, .drift_kn = 0.5};
  std::vector<SatelliteReading> readings = run(boat, 40);
  readings.resize(10);  // 003 to 084
  const Result<SatelliteSwing> swing = fit_satellite_swing(readings, boat.variation, {});
  REQUIRE_FALSE(swing.ok());
  CHECK(swing.problem().fault == Fault::headings_too_close);
}

TEST_CASE("a reading that does not belong is found among track and speed") {
  Random random(94);
  int found = 0;
  for (int i = 0; i < 200; ++i) {
    std::vector<SatelliteReading> readings = run(some_boat(random), 12, &random);
    readings[4].track = TrueDirection(readings[4].track.deg() + 15);
    const Result<SatelliteSwing> swing = fit_satellite_swing(readings, {}, {});
    if (swing.ok() && swing->fit.misfits[4].does_not_belong) ++found;
  }
  CHECK(found >= 190);
}
