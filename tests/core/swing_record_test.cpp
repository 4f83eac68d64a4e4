#include "core/boat/swing_record.h"

#include <cmath>

#include "core/base/random.h"
#include "core/formats/boat_fields.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr ByCoefficient k_truth_deg = {1.5, 4, -3, 1.2, 0.4};
constexpr double k_variation_deg = -6.25;

Deviation truth(double heading_deg) { return deviation_by(k_truth_deg, CompassDirection(heading_deg)); }

/// A swing of eight headings whose readings have no error but the last tenth that is not read.
Swing swing_by(SwingMethod method) {
  Swing swing{.method = method, .object = "beacon", .object_deg = 40, .reference = Reference::true_north, .variation_deg = k_variation_deg, .rows = eight_headings()};
  const MagneticDirection bearing = magnetic_of(40, Reference::true_north, k_variation_deg);
  for (SwingRow& row : swing.rows) {
    const CompassDirection heading(row.heading_deg);
    if (method == SwingMethod::relative_bearing) {
      row.read_deg = reduce_direction_deg(bearing.deg() - to_magnetic(heading, truth(row.heading_deg)).deg());
    } else if (method == SwingMethod::satellite) {
      const double magnetic = to_magnetic(heading, truth(row.heading_deg)).deg();
      row.read_deg = reduce_direction_deg(magnetic + k_variation_deg);
      row.speed_kn = 5;
    } else {
      row.read_deg = to_compass(bearing, truth(row.heading_deg)).deg();
      row.trusted_deg = 40;
    }
  }
  return swing;
}

}  // namespace

TEST_CASE("each way of swinging finds the deviation that was there") {
  for (const SwingMethod method : {SwingMethod::trusted_bearings, SwingMethod::known_object, SwingMethod::relative_bearing, SwingMethod::satellite}) {
    CAPTURE(static_cast<int>(method));
    const Result<SwingWorked> worked = work_out(swing_by(method));
    REQUIRE(worked.ok());
    CHECK(worked->counted.size() == 8);
    for (const Coefficient which : k_coefficients) CHECK(std::abs(worked->fit.coefficient_deg(which) - of(k_truth_deg, which)) < 1e-6);
    for (std::size_t i = 0; i < 8; ++i) CHECK(std::abs(worked->deviations[i]->deg - truth(45.0 * static_cast<double>(i)).deg) < 1e-6);
  }
}

TEST_CASE("an object of unknown bearing gives all but A, and says so") {
  const Result<SwingWorked> worked = work_out(swing_by(SwingMethod::unknown_object));
  REQUIRE(worked.ok());
  CHECK_FALSE(worked->fit.a_found);
  CHECK_FALSE(worked->fit.coefficients_deg[0].has_value());
  CHECK(worked->mean_bearing.has_value());
  CHECK(std::abs(worked->fit.coefficient_deg(Coefficient::b) - 4) < 0.01);
  CHECK(std::abs(worked->fit.coefficient_deg(Coefficient::c) + 3) < 0.01);
}

TEST_CASE("bearings of an unknown object that cancel tell nothing, and say so") {
  Swing swing{.method = SwingMethod::unknown_object};
  for (const double read_deg : {10.0, 100.0, 190.0, 280.0}) swing.rows.push_back({.heading_deg = read_deg, .read_deg = read_deg});
  const Result<SwingWorked> worked = work_out(swing);
  REQUIRE_FALSE(worked.ok());
  CHECK(worked.problem().fault == Fault::too_few_readings);
}

TEST_CASE("what was left out, or not read, is not counted") {
  Swing swing = swing_by(SwingMethod::known_object);
  swing.rows[2].left_out = true;
  swing.rows[5].read_deg.reset();
  const Result<SwingWorked> worked = work_out(swing);
  REQUIRE(worked.ok());
  CHECK(worked->counted == std::vector<std::size_t>{0, 1, 3, 4, 6, 7});
  CHECK(worked->deviations[2].has_value());
  CHECK_FALSE(worked->deviations[5].has_value());
  for (SwingRow& row : swing.rows) row.read_deg.reset();
  CHECK(work_out(swing).problem().fault == Fault::too_few_readings);
}

TEST_CASE("a heading that stands twice, a reading from the wrong end and one far out are told with the reason") {
  Swing swing = swing_by(SwingMethod::known_object);
  for (std::size_t i = 0; i < swing.rows.size(); ++i) CHECK_FALSE(row_problem(swing, i));
  swing.rows[3].heading_deg = 90;
  REQUIRE(row_problem(swing, 3));
  CHECK(row_problem(swing, 3)->fault == Fault::heading_twice);
  swing.rows[3].turning = TurningTo::starboard;  // the other way round the compass is another reading
  CHECK_FALSE(row_problem(swing, 3));
  swing.rows[4].read_deg = reduce_direction_deg(*swing.rows[4].read_deg + 180);
  REQUIRE(row_problem(swing, 4));
  CHECK(row_problem(swing, 4)->fault == Fault::reading_reversed);
  swing.rows[6].read_deg = reduce_direction_deg(*swing.rows[6].read_deg + 90);
  CHECK(row_problem(swing, 6)->fault == Fault::deviation_too_large);
  Swing over_ground = swing_by(SwingMethod::satellite);
  over_ground.rows[1].read_deg = reduce_direction_deg(*over_ground.rows[1].read_deg + 180);
  CHECK(row_problem(over_ground, 1)->fault == Fault::reading_reversed);
  const Check check{.reference = Reference::magnetic, .rows = {{.trusted_deg = 10, .read_deg = 191}, {.trusted_deg = 10, .read_deg = 12}}};
  CHECK(row_problem(check, 0)->fault == Fault::reading_reversed);
  CHECK_FALSE(row_problem(check, 1));
}

TEST_CASE("a card kept from a swing follows its curve; one that was typed is as good") {
  Boat boat{.name = "Pipit", .compasses = {{.id = {1}, .name = "Steering"}}, .next_id = 10};
  Swing swing = swing_by(SwingMethod::known_object);
  swing.field = CardField{18'000, 67};
  const Result<KeptCard> card = card_from(boat, boat.compasses[0], {.id = {2}, .date = {2026, 5, 1}, .what = swing});
  REQUIRE(card.ok());
  CHECK(card->points.size() == 36);
  CHECK(card->source == CardSource::swing);
  CHECK(card->field == CardField{18'000, 67});
  for (const KeptCardPoint& point : card->points) CHECK(std::abs(point.deviation_deg - truth(point.heading_deg).deg) <= 0.005 + 1e-6);
  CHECK(*kept_card_from(bytes_of(*card)) == *card);

  const TypedCard typed{.by = "adjuster", .entries = {{CompassDirection(0), {.deg = -3}}, {CompassDirection(90), {.deg = 4}}, {CompassDirection(180), {.deg = 3}}, {CompassDirection(270), {.deg = -4}}}};
  const Result<KeptCard> by_hand = card_from(boat, boat.compasses[0], {.id = {3}, .date = {2026, 5, 1}, .what = typed});
  REQUIRE(by_hand.ok());
  CHECK(by_hand->source == CardSource::typed);
  CHECK(by_hand->card().at(CompassDirection(45))->deg == 0.5);
  CHECK(deviation_sd_deg(*by_hand, CompassDirection(45)) == k_unswung_sd_deg);
  CHECK(card_from(boat, boat.compasses[0], {.id = {4}, .date = {2026, 5, 1}, .what = Remark{.text = "x"}}).problem().fault == Fault::no_card);
}

TEST_CASE("the latest card counts until the compass is adjusted") {
  const TypedCard typed{.entries = {{CompassDirection(0), {.deg = 1}}}};
  Compass compass{.id = {1}, .name = "Steering"};
  CHECK(latest_card(compass) == nullptr);
  compass.log = {{.id = {2}, .date = {2026, 3, 1}, .what = typed}, {.id = {3}, .date = {2025, 3, 1}, .what = typed}, {.id = {4}, .date = {2026, 4, 1}, .what = Remark{.text = "looked at"}}};
  CHECK(latest_card(compass)->id == EntryId{2});
  compass.log.push_back({.id = {5}, .date = {2026, 5, 1}, .what = Remark{.adjusted = true, .text = "magnets"}});
  CHECK(latest_card(compass) == nullptr);
  compass.log.push_back({.id = {6}, .date = {2026, 5, 1}, .what = typed});
  CHECK(latest_card(compass)->id == EntryId{6});
}

TEST_CASE("a kept card's error lies between its points, and is the usual one where none is known") {
  const KeptCard card{.boat = "Pipit", .compass = "Steering", .date = {2026, 1, 1}, .points = {{0, 1, 0.5}, {90, 1, 1.5}}};
  CHECK(deviation_sd_deg(card, CompassDirection(45)) == doctest::Approx(1.0));
  CHECK(deviation_sd_deg(card, CompassDirection(200)) == k_unswung_sd_deg);  // no card there
  CHECK(deviation_sd_deg(nought_card({.name = "Pipit"}, {.name = "Steering"}, {2026, 1, 1}), CompassDirection(10)) == k_unswung_sd_deg);
}
