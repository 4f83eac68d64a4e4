#include "core/passage/tidal_streams.h"

#include <cmath>
#include <limits>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

using Kind = TidalStreams::Kind;
constexpr double k_hour_s = k_seconds_per_hour;

StreamHour row(int hour, double set_deg = 90, double drift_kn = 1) {
  return {.hour = hour, .stream = {.set = TrueDirection(set_deg), .drift_kn = drift_kn}};
}

TidalStreams whole_table(std::vector<Instant> high_waters) {
  TidalStreams streams{.kind = Kind::by_hours, .steady = {}, .hours = {}, .high_waters = std::move(high_waters)};
  for (int hour = -k_stream_hours; hour <= k_stream_hours; ++hour) streams.hours.push_back(row(hour, 10 * (hour + 7), 0.1 * (hour + 7)));
  return streams;
}

}  // namespace

TEST_CASE("an hour's stream holds from half an hour before to half an hour after") {
  const StreamTimetable table(whole_table({{0}}));
  const auto hour_at = [&](double hours) { return table.pieces()[table.index_at(hours * k_hour_s)].hour; };
  CHECK(hour_at(0) == 0);
  CHECK(hour_at(-0.5) == 0);
  CHECK(hour_at(0.4999) == 0);
  CHECK(hour_at(0.5) == 1);
  CHECK(hour_at(-6.5) == -6);
  CHECK(hour_at(-6.5001) == -7);
  CHECK(hour_at(6.4999) == 6);
  CHECK(hour_at(6.5) == 7);
  CHECK(hour_at(1e6) == 7);
  CHECK(table.pieces()[table.index_before(0.5 * k_hour_s)].hour == 0);
  CHECK(table.pieces()[table.index_before(0.6 * k_hour_s)].hour == 1);
  const StreamPiece& piece = table.pieces()[table.index_at(2 * k_hour_s)];
  CHECK(piece.velocity_kn == velocity_kn(row(2, 90, 0.9).stream));
}

TEST_CASE("of several high waters the nearest counts") {
  Random random(12);
  const std::vector<Instant> high_waters = {{44'700}, {0}, {89'431}, {0}};  // out of order, one twice; 12 h 25 min apart
  const StreamTimetable table(whole_table(high_waters));
  double before_s = -std::numeric_limits<double>::infinity();
  for (const StreamPiece& piece : table.pieces()) {
    CHECK(piece.from_s == before_s);  // without a break
    CHECK(piece.from_s < piece.to_s);
    before_s = piece.to_s;
  }
  CHECK(before_s == std::numeric_limits<double>::infinity());
  for (int i = 0; i < 5000; ++i) {
    const double at_s = random.uniform(-30'000, 120'000);
    double nearest_s = 1e9;
    for (const Instant high_water : high_waters)
      if (std::abs(at_s - static_cast<double>(high_water.seconds)) < std::abs(nearest_s)) nearest_s = at_s - static_cast<double>(high_water.seconds);
    const StreamPiece& piece = table.pieces()[table.index_at(at_s)];
    CAPTURE(at_s);
    CHECK(piece.from_s <= at_s);
    CHECK(at_s < piece.to_s);
    CHECK(at_s - static_cast<double>(piece.high_water.seconds) == doctest::Approx(nearest_s));
    CHECK(piece.hour == std::max(-7, std::min(7, static_cast<int>(std::floor(nearest_s / k_hour_s + 0.5)))));
    CHECK(piece.entered == (std::abs(piece.hour) <= 6));
  }
}

TEST_CASE("gaps are named: an hour left out, and past the table") {
  TidalStreams streams = whole_table({{0}});
  streams.hours.erase(streams.hours.begin() + 8);  // +2
  const StreamTimetable table(streams);
  CHECK_FALSE(table.first_gap(-6.5 * k_hour_s, 1.5 * k_hour_s));
  const std::optional<StreamPiece> gap = table.first_gap(0, 9 * k_hour_s);
  REQUIRE(gap);
  CHECK(gap->hour == 2);
  CHECK(gap->from_s == 1.5 * k_hour_s);
  CHECK(gap->to_s == 2.5 * k_hour_s);
  CHECK(gap->high_water == Instant{0});
  CHECK(table.first_gap(3 * k_hour_s, 9 * k_hour_s)->hour == 7);
  CHECK(table.first_gap(3 * k_hour_s, 9 * k_hour_s)->to_s == 9 * k_hour_s);
  CHECK(table.first_gap(-8 * k_hour_s, 0)->hour == -7);
  CHECK(table.between(0, 2 * k_hour_s).size() == 3);
  CHECK(table.between(0, 2 * k_hour_s).back().to_s == 2 * k_hour_s);
  CHECK(table.between(5, 5).empty());
  CHECK(table.between(5, 4).empty());
}

TEST_CASE("not entered is not slack water") {
  const StreamTimetable none{TidalStreams{}}, slack{TidalStreams{.kind = Kind::steady, .steady = {}, .hours = {}, .high_waters = {}}};
  CHECK_FALSE(none.entered());
  CHECK_FALSE(none.first_gap(0, 1e6));  // no table, no gap in one
  CHECK_FALSE(none.pieces()[none.index_at(0)].entered);
  CHECK(slack.entered());
  CHECK(slack.pieces()[slack.index_at(0)].entered);
}

TEST_CASE("streams that can't be are refused") {
  const auto fault = [](const TidalStreams& streams) { return fault_of(streams).value().fault; };
  TidalStreams streams = whole_table({{0}});
  CHECK_FALSE(fault_of(streams));
  streams.hours.push_back(row(3));
  CHECK(fault(streams) == Fault::stream_hour_twice);
  CHECK(fault_of(streams)->numbers[0] == 3);
  streams.hours = {row(7)};
  CHECK(fault(streams) == Fault::stream_hour_unknown);
  streams.hours = {row(-6, 0, 20.5)};
  CHECK(fault(streams) == Fault::number_out_of_range);
  streams.hours = {row(0)};
  streams.high_waters.clear();
  CHECK(fault(streams) == Fault::high_water_missing);
  TidalStreams steady{.kind = Kind::steady, .steady = {.set = {}, .drift_kn = -0.1}, .hours = {}, .high_waters = {}};
  CHECK(fault(steady) == Fault::number_out_of_range);
  steady.steady.drift_kn = std::nan("");
  CHECK(fault(steady) == Fault::number_out_of_range);
  CHECK_FALSE(fault_of(TidalStreams{}));
}
