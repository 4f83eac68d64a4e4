// Sheets that hold given places, and scales typed by hand.
#include "core/sheet/sheet_fit.h"

#include <cmath>
#include <vector>

#include "core/base/random.h"
#include "core/sheet/scale_text.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("the fitted sheet holds every place, and the next rounder scale would not") {
  constexpr std::uint64_t k_seed = 20261125;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 500; ++run) {
    CAPTURE(run);
    const Position about{random.uniform(-70, 70), random.uniform(-180, 180)};
    std::vector<Position> places;
    const std::int64_t count = random.whole(2, 12);
    for (std::int64_t i = 0; i < count; ++i)
      places.push_back({about.lat_deg + random.uniform(-0.3, 0.3), reduce_longitude_deg(about.lon_deg + random.uniform(-0.5, 0.5))});
    const Paper paper = all_papers()[static_cast<std::size_t>(random.whole(0, 8))];
    const double margin_mm = random.uniform(0, 12);
    const Result<FittedSheet> fitted = sheet_holding(places, paper, margin_mm);
    REQUIRE(fitted.ok());
    const auto holds_all = [&](double scale) {
      const Projection projection(fitted->middle, scale, paper);
      SheetRect inner = projection.neat_line();
      inner = {inner.left_mm + margin_mm - 1e-6, inner.top_mm + margin_mm - 1e-6, inner.right_mm - margin_mm + 1e-6, inner.bottom_mm - margin_mm + 1e-6};
      for (const Position& place : places)
        if (!inner.contains(projection.to_sheet(place))) return false;
      return true;
    };
    CHECK(holds_all(fitted->scale));
    const double step = fitted->scale <= 200'000 ? 5'000 : fitted->scale <= 500'000 ? 10'000 : 50'000;
    if (fitted->scale > k_least_scale) CHECK_FALSE(holds_all(fitted->scale - step));
  }
}

TEST_CASE("corners on either side of 180 degrees give one sheet across it") {
  const FittedSheet fitted = sheet_holding(std::vector<Position>{{-17, 179.8}, {-17.2, -179.8}}, Paper::a4_across, 0).value();
  CHECK(std::abs(std::abs(fitted.middle.lon_deg) - 180) < 1e-9);
  CHECK(std::abs(fitted.middle.lat_deg + 17.1) < 0.001);
  CHECK(fitted.scale < 200'000);
}

TEST_CASE("no place, one place, and too wide an expanse") {
  CHECK(sheet_holding({}, Paper::a4_across, 0).problem().fault == Fault::entry_empty);
  CHECK(sheet_holding(std::vector<Position>{{44, -31}}, Paper::a4_across, 0)->scale == 50'000);
  CHECK(sheet_holding(std::vector<Position>{{44, -31}, {44, -20}}, Paper::a4_across, 0).problem().fault == Fault::sheet_too_wide);
}

TEST_CASE("scales as people write them") {
  for (const char* text : {"100000", "100 000", "1:100 000", " 1 : 100000 ", "100.000", "100,000", "1:100'000", "1:100\xE2\x80\xAF" "000"}) {
    CAPTURE(text);
    REQUIRE(parse_scale(text).ok());
    CHECK(*parse_scale(text) == 100'000);
  }
  CHECK(parse_scale(" ").problem().fault == Fault::entry_empty);
  for (const char* text : {"2:100000", "1:", "10 00", "100.5", "1:1e5", "-50000", "1234567890", "100 000 m", "."}) {
    CAPTURE(text);
    CHECK(parse_scale(text).problem().fault == Fault::entry_unreadable);
  }
}
