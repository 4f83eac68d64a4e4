// Legs put in another order, turned round, split by a mark, written on.
#include "core/document/leg_actions.h"

#include "core/document/sheet_actions.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct ThreeMarks {
  History history{made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .date = {2026, 7, 1}}).value()};
  MarkId a = add_mark(history, {.name = "A", .lat_deg = 44, .lon_deg = -31.05}).value();
  MarkId b = add_mark(history, {.name = "B", .lat_deg = 44, .lon_deg = -30.95}).value();
  MarkId c = add_mark(history, {.name = "C", .lat_deg = 44.05, .lon_deg = -30.95}).value();
  LegId ab = add_leg(history, a, b).value();
  LegId bc = add_leg(history, b, c).value();

  const Leg& leg(LegId id) const { return *history.now().legs.find(id); }
};

}  // namespace

TEST_CASE("a mark put in a leg splits it, and the second half comes right after the first") {
  ThreeMarks on;
  const MarkId middle = insert_mark(on.history, on.ab, {.name = "M", .lat_deg = 44.01, .lon_deg = -31}).value();
  const Table<Leg>& legs = on.history.now().legs;
  REQUIRE(legs.size() == 3);
  CHECK(legs.at(0).id == on.ab);
  CHECK(legs.at(0).to == middle);
  CHECK(legs.at(1).from == middle);
  CHECK(legs.at(1).to == on.b);
  CHECK(legs.at(2).id == on.bc);
  CHECK(on.history.undo_label()->act == Act::insert_mark);
  REQUIRE(on.history.undo());
  CHECK(on.history.now().legs.size() == 2);
  CHECK(on.history.now().marks.size() == 3);
}

TEST_CASE("a mark at an end of the leg does not split it") {
  ThreeMarks on;
  for (const double lon_deg : {-31.05, -30.95})
    CHECK(insert_mark(on.history, on.ab, {.name = "M", .lat_deg = 44, .lon_deg = lon_deg}).problem().fault == Fault::leg_of_no_length);
  CHECK(on.history.now().marks.size() == 3);
  CHECK(insert_mark(on.history, {99}, {.name = "M", .lat_deg = 44, .lon_deg = -31}).problem().fault == Fault::leg_unknown);
}

TEST_CASE("legs are turned round, put in another order and rubbed out") {
  ThreeMarks on;
  REQUIRE(write_on_leg(on.history, on.ab, 90, Reference::true_north));
  REQUIRE(reverse_leg(on.history, on.ab));
  CHECK(on.leg(on.ab).from == on.b);
  CHECK_FALSE(on.leg(on.ab).written);
  REQUIRE(add_leg(on.history, on.a, on.b));
  CHECK(reverse_leg(on.history, on.ab).problem().fault == Fault::leg_already_there);
  REQUIRE(reorder_leg(on.history, on.bc, 0));
  CHECK(on.history.now().legs.at(0).id == on.bc);
  REQUIRE(remove_leg(on.history, on.bc));
  CHECK(on.history.now().legs.find(on.bc) == nullptr);
  CHECK(on.history.now().marks.size() == 3);
  CHECK(remove_leg(on.history, on.bc).problem().fault == Fault::leg_unknown);
  CHECK(reorder_leg(on.history, on.bc, 0).problem().fault == Fault::leg_unknown);
  CHECK(reverse_leg(on.history, on.bc).problem().fault == Fault::leg_unknown);
}

TEST_CASE("a reading is kept to the tenth, with the revision and the ends it was read at") {
  ThreeMarks on;
  const std::uint64_t revision = on.history.revision();
  REQUIRE(write_on_leg(on.history, on.ab, 359.97, Reference::magnetic));
  const WrittenReading written = *on.leg(on.ab).written;
  CHECK(written.bearing_deg == 0);
  CHECK(written.reference == Reference::magnetic);
  CHECK(written.revision == revision);
  CHECK(written.from_at == on.history.now().marks.find(on.a)->at);
  CHECK(written.to_at == on.history.now().marks.find(on.b)->at);
  CHECK(write_on_leg(on.history, on.ab, 360, Reference::true_north).problem().fault == Fault::direction_out_of_range);
  CHECK(write_on_leg(on.history, on.ab, -1, Reference::true_north).problem().fault == Fault::direction_out_of_range);
  CHECK(write_on_leg(on.history, {99}, 1, Reference::true_north).problem().fault == Fault::leg_unknown);
  REQUIRE(rub_out_reading(on.history, on.ab));
  CHECK_FALSE(on.leg(on.ab).written);
  CHECK(rub_out_reading(on.history, on.ab).problem().fault == Fault::nothing_written);
}
