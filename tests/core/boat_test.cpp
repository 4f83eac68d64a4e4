#include "core/boat/boat_actions.h"

#include "core/base/random.h"
#include "core/boat/boat_difference.h"
#include "core/formats/boat_fields.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

Boat sample_boat() {
  Boat boat = *made_boat("Pipit", "Bulkhead compass");
  BoatHistory history(boat);
  const CompassId steering = boat.compasses.front().id;
  Swing swing{.method = SwingMethod::known_object, .place = "off the yard", .object = "chimney", .object_deg = 211.5, .reference = Reference::true_north, .variation_deg = -3.1234, .variation_sd_deg = 0.4, .object_nm = 4.2, .circle_m = 60, .field = CardField{18'000, 67.25}};
  for (int i = 0; i < 8; ++i) swing.rows.push_back({.heading_deg = 45.0 * i, .read_deg = 213.1 + i, .trusted_deg = {}, .speed_kn = {}, .turning = TurningTo::port, .minute = 600 + i, .left_out = i == 3});
  REQUIRE(add_log_entry(history, steering, {2026, 5, 1}, swing).ok());
  REQUIRE(add_log_entry(history, steering, {2026, 5, 2}, Check{.place = "pier", .reference = Reference::magnetic, .rows = {{.object = "light", .trusted_deg = 12.3, .read_deg = 14}, {.object = "tower", .trusted_deg = 300}}}).ok());
  REQUIRE(add_log_entry(history, steering, {2026, 5, 3}, TypedCard{.by = "adjuster", .entries = {{CompassDirection(180), {.deg = 2.25}}, {CompassDirection(0), {.deg = -1.5}}}}).ok());
  REQUIRE(add_log_entry(history, steering, {2026, 5, 4}, Trial{.rows = {{.thing = "radio", .off_deg = 45, .on_deg = 51}}}).ok());
  REQUIRE(add_log_entry(history, steering, {2026, 5, 5}, Remark{.adjusted = true, .text = "moved the speaker"}).ok());
  REQUIRE(add_compass(history, "Hand compass", CompassKind::hand_bearing).ok());
  return history.now();
}

}  // namespace

TEST_CASE("a boat's bytes give the same boat") {
  const Boat boat = sample_boat();
  const Result<Boat> read = boat_from(bytes_of(boat));
  REQUIRE(read.ok());
  CHECK(*read == boat);
}

TEST_CASE("a boat's bytes that are damaged are refused or give a boat that can be kept, and nothing else") {
  const std::vector<std::uint8_t> bytes = bytes_of(sample_boat());
  Random random(7);
  int refused = 0;
  for (int i = 0; i < 4'000; ++i) {
    std::vector<std::uint8_t> damaged = bytes;
    if (random.whole(0, 3) == 0) damaged.resize(static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(bytes.size()) - 1)));
    else damaged[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(bytes.size()) - 1))] = static_cast<std::uint8_t>(random.whole(0, 255));
    const Result<Boat> read = boat_from(damaged);
    if (!read) ++refused;
    else CHECK(*boat_from(bytes_of(*read)) == *read);
  }
  CHECK(refused > 1'000);
}

TEST_CASE("what is committed is in whole parts, and what can't be kept is refused with its name") {
  BoatHistory history(*made_boat("Pipit", "Steering"));
  const CompassId compass = history.now().compasses.front().id;
  Check check{.rows = {{.object = "  light ", .trusted_deg = 359.97, .read_deg = 12.345}}};
  const Result<EntryId> id = add_log_entry(history, compass, {2026, 1, 1}, check);
  REQUIRE(id.ok());
  const auto& row = std::get<Check>(find(history.now(), *id)->what).rows[0];
  CHECK(row.object == "light");
  CHECK(row.trusted_deg == 0);
  CHECK(row.read_deg == 12.3);

  check.rows[0].read_deg = 400;
  Result<EntryId> refused = add_log_entry(history, compass, {2026, 1, 1}, check);
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.problem().fault == Fault::direction_out_of_range);
  refused = add_log_entry(history, compass, {1700, 1, 1}, Remark{.text = "x"});
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.problem().fault == Fault::number_out_of_range);
  refused = add_log_entry(history, compass, {2026, 1, 1}, TypedCard{.entries = {{CompassDirection(10), {.deg = 1}}, {CompassDirection(10), {.deg = 2}}}});
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.problem().fault == Fault::card_heading_twice);
  refused = add_log_entry(history, CompassId{99}, {2026, 1, 1}, Remark{.text = "x"});
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.problem().fault == Fault::compass_unknown);
  CHECK_FALSE(made_boat("", "Steering").ok());
}

TEST_CASE("a boat keeps one compass, and takes a log away with its compass") {
  BoatHistory history(*made_boat("Pipit", "Steering"));
  const CompassId first = history.now().compasses.front().id;
  CHECK(remove_compass(history, first).problem().fault == Fault::last_compass);
  const CompassId second = *add_compass(history, "Hand", CompassKind::hand_bearing);
  const EntryId entry = *add_log_entry(history, second, {2026, 1, 1}, Remark{.text = "new bowl"});
  CHECK(owner_of(history.now(), entry)->id == second);
  CHECK(remove_compass(history, second).ok());
  CHECK(find(history.now(), entry) == nullptr);
  CHECK(history.undo());
  CHECK(find(history.now(), entry) != nullptr);
}

TEST_CASE("a boat's past is kept as differences and comes back whole") {
  Random random(11);
  BoatHistory history(*made_boat("Pipit", "Steering"));
  const CompassId compass = history.now().compasses.front().id;
  std::vector<EntryId> entries;
  for (int i = 0; i < 60; ++i) {
    if (entries.empty() || random.whole(0, 2) == 0) {
      entries.push_back(*add_log_entry(history, compass, {2026, 1, 1 + i % 28}, Swing{.rows = {{.heading_deg = random.uniform(0, 359), .read_deg = 10.5}}}));
      continue;
    }
    LogEntry entry = *find(history.now(), entries[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(entries.size()) - 1))]);
    std::get<Swing>(entry.what).rows.push_back({.heading_deg = random.uniform(0, 359)});
    REQUIRE(change_log_entry(history, entry).ok());
  }
  const KeptHistoryOf<Boat> kept = history.kept();
  std::size_t bytes = 0;
  for (const KeptStep& step : kept.steps) bytes += step.difference.size();
  CHECK(bytes < 60 * 40);  // a step keeps what it changed, not the boat
  BoatHistory again(kept);
  CHECK(again.now() == history.now());
  while (history.undo()) {
    REQUIRE(again.undo());
    REQUIRE(again.now() == history.now());
  }
  CHECK_FALSE(again.undo());
}
