#include "core/document/written.h"

#include <cmath>

#include "core/document/actions.h"
#include "core/document/facts.h"
#include "core/earth/rhumb.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct Written {
  History history{*made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 6, 21}})};
  MarkId from = *add_mark(history, {.name = "A", .lat_deg = 44, .lon_deg = -31.05});
  MarkId to = *add_mark(history, {.name = "B", .lat_deg = 44, .lon_deg = -30.95});
  LegId leg = *add_leg(history, from, to);

  const Document& now() const { return history.now(); }
  const Leg& written() const { return *now().legs.find(leg); }
  VariationInUse variation() const { return variation_of(now(), Rounding::whole_degrees); }
};

}  // namespace

TEST_CASE("a reading is stale once an end has moved, and no more when that is undone") {
  Written sheet;
  REQUIRE(write_on_leg(sheet.history, sheet.leg, 90, Reference::true_north).ok());
  CHECK_FALSE(is_stale(sheet.now(), sheet.written()));
  for (const MarkId end : {sheet.from, sheet.to}) {
    REQUIRE(move_mark(sheet.history, end, 44.01, -31 + 0.04 * (end == sheet.to ? 1 : -1)).ok());
    CHECK(is_stale(sheet.now(), sheet.written()));
    sheet.history.undo();
    CHECK_FALSE(is_stale(sheet.now(), sheet.written()));
  }
}

TEST_CASE("how far a reading is out, on the ring it was read on and across north") {
  Written sheet;
  // Due east along a parallel: 090, whatever the earth's shape.
  REQUIRE(write_on_leg(sheet.history, sheet.leg, 93, Reference::true_north).ok());
  CHECK(std::abs(*reading_off_deg(sheet.now(), sheet.written(), sheet.variation()) - 3) < 1e-6);
  const double used_deg = sheet.variation().used->deg;
  // Magnetic is true less east variation: common practice, no source.
  REQUIRE(write_on_leg(sheet.history, sheet.leg, 90 - used_deg, Reference::magnetic).ok());
  CHECK(std::abs(*reading_off_deg(sheet.now(), sheet.written(), sheet.variation())) < 1e-6);
  CHECK_FALSE(reading_off_deg(sheet.now(), sheet.written(), VariationInUse{}));
  REQUIRE(move_mark(sheet.history, sheet.to, 44.05, -31.05).ok());
  REQUIRE(write_on_leg(sheet.history, sheet.leg, 358, Reference::true_north).ok());
  CHECK(std::abs(*reading_off_deg(sheet.now(), sheet.written(), sheet.variation()) + 2) < 1e-6);
}
