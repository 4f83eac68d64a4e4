#include "core/passage/passage_doubt.h"

#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

std::vector<DoubtLeg> out_and_about() {
  return {{.track = TrueDirection(96),
           .water_track = TrueDirection(104),
           .through_water_nm = 3.7,
           .hours = 0.8,
           .compass_sd_deg = 1.1,
           .stream_sd_kn = 0.3,
           .leeway_to = 1,
           .seen_sd_nm = {}},
          {.track = TrueDirection(20),
           .water_track = TrueDirection(15),
           .through_water_nm = 6,
           .hours = 1.2,
           .compass_sd_deg = 2.0,
           .stream_sd_kn = 0.3,
           .leeway_to = -1,
           .seen_sd_nm = {}},
          {.track = TrueDirection(280),
           .water_track = TrueDirection(285),
           .through_water_nm = 8,
           .hours = 1.5,
           .compass_sd_deg = 1.4,
           .stream_sd_kn = 0.6,
           .leeway_to = 1,
           .seen_sd_nm = {}}};
}

double of(const LegDoubt& doubt, DoubtSource source, bool across) {
  const AlongAcross& sd = doubt.by_source[static_cast<std::size_t>(source)];
  return across ? sd.across_nm : sd.along_nm;
}

}  // namespace

TEST_CASE("standard deviations are those of passages run at random") {
  const DoubtSds sds{.steering_deg = 2.5, .variation_deg = 0.5, .leeway_deg = 1.5, .log_share = 0.03, .start_nm = 0.03};
  for (const bool seen : {false, true}) {
    std::vector<DoubtLeg> legs = out_and_about();
    if (seen) legs[1].seen_sd_nm = 0.1;
    const std::vector<LegDoubt> doubts = passage_doubt(legs, sds);
    constexpr int k_passages = 40'000;
    std::vector<double> along_squares(legs.size()), across_squares(legs.size());
    Random random(2020);
    for (int i = 0; i < k_passages; ++i) {
      // Errors turn and stretch the run; nothing here is taken to be small.
      const double compass = random.normal(), variation_deg = random.normal() * sds.variation_deg, leeway_deg = random.normal() * sds.leeway_deg;
      const double log = random.normal() * sds.log_share, stream_north = random.normal(), stream_east = random.normal();
      PlaneVector off{random.normal() * sds.start_nm, random.normal() * sds.start_nm};
      for (std::size_t k = 0; k < legs.size(); ++k) {
        const DoubtLeg& leg = legs[k];
        const double turned_deg = random.normal() * sds.steering_deg + compass * leg.compass_sd_deg + variation_deg + leg.leeway_to * leeway_deg;
        const PlaneVector meant = along(leg.water_track, leg.through_water_nm);
        const PlaneVector run = along(TrueDirection(leg.water_track.deg() + turned_deg), leg.through_water_nm * (1 + log));
        off = off + (run - meant) + leg.hours * leg.stream_sd_kn * PlaneVector{stream_north, stream_east};
        along_squares[k] += std::pow(dot(along(leg.track), off), 2);
        across_squares[k] += std::pow(to_starboard(along(leg.track), off), 2);
        if (leg.seen_sd_nm) off = {random.normal() * *leg.seen_sd_nm, random.normal() * *leg.seen_sd_nm};
      }
    }
    for (std::size_t k = 0; k < legs.size(); ++k) {
      CAPTURE(k);
      // 40 000 draws give a standard deviation to 0.35 %; what the errors' size adds is under 1 %.
      CHECK(std::abs(std::sqrt(along_squares[k] / k_passages) / doubts[k].sd.along_nm - 1) <= 0.02);
      CHECK(std::abs(std::sqrt(across_squares[k] / k_passages) / doubts[k].sd.across_nm - 1) <= 0.02);
    }
  }
}

TEST_CASE("each source's part adds up to the whole, by squares") {
  for (const LegDoubt& doubt :
       passage_doubt(out_and_about(), {.steering_deg = 2.5, .variation_deg = 0.5, .leeway_deg = 1.5, .log_share = 0.03, .start_nm = 0.03})) {
    double along_square = 0, across_square = 0;
    for (const AlongAcross& sd : doubt.by_source) {
      along_square += sd.along_nm * sd.along_nm;
      across_square += sd.across_nm * sd.across_nm;
    }
    CHECK(std::sqrt(along_square) == doctest::Approx(doubt.sd.along_nm));
    CHECK(std::sqrt(across_square) == doctest::Approx(doubt.sd.across_nm));
    CHECK(std::pow(doubt.sd.along_nm, 2) + std::pow(doubt.sd.across_nm, 2) == doctest::Approx(along_square + across_square));
  }
}

TEST_CASE("what is constant undoes itself on the way back, steering does not, the stream goes on") {
  const DoubtLeg out{.track = TrueDirection(40),
                     .water_track = TrueDirection(40),
                     .through_water_nm = 6,
                     .hours = 1,
                     .compass_sd_deg = 2,
                     .stream_sd_kn = 0.3,
                     .leeway_to = 1,
                     .seen_sd_nm = {}};
  DoubtLeg back = out;
  back.track = back.water_track = TrueDirection(220);
  const std::vector<DoubtLeg> legs = {out, back};
  const LegDoubt doubt = passage_doubt(legs, {}).back(), first = passage_doubt(legs, {}).front();
  CHECK(of(doubt, DoubtSource::compass, true) <= 1e-8);
  CHECK(of(doubt, DoubtSource::log, false) <= 1e-8);
  CHECK(of(doubt, DoubtSource::steering, true) == doctest::Approx(std::sqrt(2) * of(first, DoubtSource::steering, true)));
  CHECK(of(doubt, DoubtSource::stream, true) == doctest::Approx(0.6));
  CHECK(of(doubt, DoubtSource::start, true) == doctest::Approx(k_start_sd_nm));
  // By hand: 6 nm x 2.5 degrees in radians, and 3 % of 6 nm.
  CHECK(of(first, DoubtSource::steering, true) == doctest::Approx(6 * 2.5 * 0.017453292519943295));
  CHECK(of(first, DoubtSource::steering, false) <= 1e-8);  // the root of what rounding leaves of the squares
  CHECK(of(first, DoubtSource::log, false) == doctest::Approx(0.18));
}

TEST_CASE("what is seen starts the doubt anew") {
  std::vector<DoubtLeg> legs = out_and_about();
  legs[0].seen_sd_nm = 0.2;
  const std::vector<LegDoubt> doubts = passage_doubt(legs, {});
  const std::vector<DoubtLeg> rest(legs.begin() + 1, legs.end());
  const std::vector<LegDoubt> anew = passage_doubt(rest, {.start_nm = 0.2});
  for (std::size_t k = 0; k < rest.size(); ++k) CHECK(doubts[k + 1].sd.across_nm == doctest::Approx(anew[k].sd.across_nm));
  CHECK(passage_doubt({}, {}).empty());
}

TEST_CASE("windows are two standard deviations either side") {
  const LegDoubt doubt{.sd = {.along_nm = 0.5, .across_nm = 0.3}, .by_source = {}};
  const std::optional<TimeWindow> window = time_window(36'000, doubt, 5);
  REQUIRE(window);
  CHECK(window->from_s == doctest::Approx(36'000 - 720));  // 1 nm at 5 kn: 12 minutes
  CHECK(window->to_s == doctest::Approx(36'000 + 720));
  CHECK_FALSE(time_window(36'000, doubt, 0));
  CHECK_FALSE(time_window(36'000, doubt, -1));
  CHECK(to_either_side_nm(doubt) == doctest::Approx(0.6));
}
