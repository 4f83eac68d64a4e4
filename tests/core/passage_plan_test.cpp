// What a passage comes to: its parts are tested where they are (leg_run, stream_triangle, passage_doubt, chain); here that they
// are put together rightly, that everything follows what is changed, and what is said where something is missing.
#include "core/passage/passage_plan.h"

#include <cmath>

#include "core/document/actions.h"
#include "core/document/facts.h"
#include "core/passage/danger_pass.h"
#include "core/passage/progress.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_middle_lat = 44 + 10 / 60.0, k_middle_lon = -(31 + 20 / 60.0);
constexpr Date k_day{2026, 6, 20};

struct Drawn {
  History history = History(made_sheet({.name = "Sound", .mid_lat_deg = k_middle_lat, .mid_lon_deg = k_middle_lon, .date = k_day}).value());
  MarkId a = turn("A", -1.5, -6), b = turn("B", 0.5, -2), c = turn("C", 0, 2), d = turn("D", 3, 5);
  LegId ab = add_leg(history, a, b).value(), bc = add_leg(history, b, c).value(), cd = add_leg(history, c, d).value();
  PassageId id = make_passage(history, {.speed_kn = 5, .date = k_day, .time = ClockTime{400}, .zone = {60, ""}}).value();
  std::optional<DeviationCard> card;
  Rounding rounding = Rounding::whole_degrees;

  MarkId turn(const char* name, double north_min, double east_min) {
    return add_mark(history, {.name = name, .lat_deg = k_middle_lat + north_min / 60, .lon_deg = k_middle_lon + east_min / 60, .kind = MarkKind::turn}).value();
  }
  const Document& document() const { return history.now(); }
  const Passage& passage() const { return *find(*document().passages, id); }
  template <class Change>
  void change(Change how) {
    Passage wanted = passage();
    how(wanted);
    const Result<Done> changed = change_passage(history, wanted);
    REQUIRE(changed.ok());
  }
  PassagePlan plan(bool homeward = false) const {
    const VariationInUse variation = variation_of(document(), rounding);
    return plan_of(document(), passage(), needs(variation), homeward);
  }
  PassagePlan under_way() const {
    const VariationInUse variation = variation_of(document(), rounding);
    return plan_under_way(document(), passage(), needs(variation));
  }
  PlanNeeds needs(const VariationInUse& variation) const {
    return {.variation_of = [&](const Leg&) -> const VariationInUse& { return variation; }, .card = card ? &*card : nullptr, .rounding = rounding};
  }
};

double shown(const PlannedLeg& leg, ChainTerm term) { return row_of(leg.courses.at(0).chain, term)->shown_deg; }

}  // namespace

TEST_CASE("in still water the course to steer is the leg's, and times follow from speed") {
  Drawn drawn;
  const PassagePlan plan = drawn.plan();
  REQUIRE(plan.legs.size() == 3);
  CHECK(plan.complete);
  CHECK(plan.has_times);
  CHECK(!plan.problem);
  double at_s = static_cast<double>(instant_of(k_day, {400}, {60, ""}).seconds);
  for (const PlannedLeg& leg : plan.legs) {
    CHECK(leg.stream == StreamEntry::not_entered);
    CHECK(!row_of(leg.courses[0].chain, ChainTerm::stream));
    CHECK(leg.courses[0].heading->deg() == doctest::Approx(leg.rhumb.course.deg()));
    CHECK(leg.run.departure_s == doctest::Approx(at_s).epsilon(1e-12));
    at_s += leg.rhumb.distance_nm / 5 * 3600;
    CHECK(leg.run.arrival_s == doctest::Approx(at_s).epsilon(1e-12));
    REQUIRE(leg.window.has_value());
    CHECK(leg.window->from_s < at_s);
    CHECK(leg.window->to_s > at_s);
  }
  CHECK(plan.distance_nm == doctest::Approx(plan.legs[0].rhumb.distance_nm + plan.legs[1].rhumb.distance_nm + plan.legs[2].rhumb.distance_nm));
}

TEST_CASE("with a stream and leeway the column adds up from the ground to the compass") {
  Drawn drawn;
  drawn.card = DeviationCard::make({{CompassDirection(0), {-2}}, {CompassDirection(90), {4}}, {CompassDirection(180), {4}}, {CompassDirection(270), {-4}}}).value();
  drawn.change([](Passage& p) {
    p.stream = {.entry = StreamEntry::steady, .steady = {TrueDirection(352), 0.7}};
    p.leeway = PlannedLeeway{340, 2};
  });
  const PassagePlan plan = drawn.plan();
  REQUIRE(plan.complete);
  for (const PlannedLeg& leg : plan.legs) {
    const double track = shown(leg, ChainTerm::ground_track), water = shown(leg, ChainTerm::water_track), heading = shown(leg, ChainTerm::true_direction);
    const double magnetic = shown(leg, ChainTerm::magnetic_direction), compass = shown(leg, ChainTerm::compass_direction);
    CHECK(reduce_difference_deg(track - shown(leg, ChainTerm::stream) - water) == 0);
    CHECK(reduce_difference_deg(water - shown(leg, ChainTerm::leeway) - heading) == 0);
    CHECK(reduce_difference_deg(heading - shown(leg, ChainTerm::variation) - magnetic) == 0);
    CHECK(reduce_difference_deg(magnetic - shown(leg, ChainTerm::deviation) - compass) == 0);
    // The wind is from port of every leg: she is headed up to port, and set down to starboard.
    CHECK(shown(leg, ChainTerm::leeway) == 2);
    const Result<CourseToSteer> steer = course_to_steer(leg.rhumb.course, 5, {TrueDirection(352), 0.7});
    REQUIRE(steer.ok());
    CHECK(leg.run.water_track.deg() == doctest::Approx(steer->water_track.deg()));
    CHECK(leg.run.speed_over_ground_kn == doctest::Approx(steer->speed_over_ground_kn));
    REQUIRE(leg.courses[0].compass.has_value());
  }
}

TEST_CASE("a mark that is moved, a date that is set: all that follows changes with it") {
  Drawn drawn;
  const PassagePlan before = drawn.plan();
  REQUIRE(move_mark(drawn.history, drawn.b, k_middle_lat + 2 / 60.0, k_middle_lon - 1 / 60.0).ok());
  const PassagePlan after = drawn.plan();
  CHECK(after.legs[0].rhumb.course.deg() != before.legs[0].rhumb.course.deg());
  CHECK(after.legs[2].run.arrival_s != before.legs[2].run.arrival_s);
  drawn.history.undo();
  CHECK(drawn.plan().legs[2].run.arrival_s == before.legs[2].run.arrival_s);
}

TEST_CASE("arriving when it is wanted: departure follows") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.is_arrival = true;
    p.time = ClockTime{600};
    p.stream = {.entry = StreamEntry::by_hour, .hours = {}, .source = ""};
    for (int hour = -6; hour <= 6; ++hour) p.stream.hours.push_back({hour, {TrueDirection(300 + 5.0 * hour), 0.3 + 0.1 * std::abs(hour)}});
    p.tides = {{.date = k_day, .time = {420}}};
  });
  const PassagePlan plan = drawn.plan();
  REQUIRE(plan.complete);
  CHECK(plan.legs[2].run.arrival_s == doctest::Approx(static_cast<double>(instant_of(k_day, {600}, {60, ""}).seconds)).epsilon(1e-10));
  CHECK(plan.legs[0].run.departure_s < plan.legs[2].run.arrival_s - 2 * 3600);
}

TEST_CASE("a wanted arrival that no departure leads to gives no times, rather than those of a start at the arrival") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.is_arrival = true;
    p.time = ClockTime{600};
  });
  SUBCASE("a leg has gone") {
    REQUIRE(remove_leg(drawn.history, drawn.cd).ok());
    CHECK(!drawn.plan().problem);  // the leg says it
  }
  SUBCASE("no speed gets there") {
    drawn.change([](Passage& p) { p.legs[2].stream = PlannedStream{.entry = StreamEntry::steady, .steady = {TrueDirection(215), 6}}; });
    CHECK(drawn.plan().problem->fault == Fault::stream_not_stemmed);
  }
  SUBCASE("and a table can't be read") {
    REQUIRE(remove_leg(drawn.history, drawn.cd).ok());
    drawn.change([](Passage& p) {
      p.stream = {.entry = StreamEntry::by_hour, .hours = {{0, {TrueDirection(10), 1}}}};
      p.tides = {{.date = k_day, .time = {425}}};
    });
    CHECK(drawn.plan().legs[0].problem->fault == Fault::time_not_worked_out);
  }
  const PassagePlan plan = drawn.plan();
  CHECK(!plan.has_times);
  CHECK(plan.legs[0].run.departure_s == 0);
}

TEST_CASE("a stream whose numbers were not typed yet is not entered") {
  Drawn drawn;
  const double unsure_nm = drawn.plan().legs[0].doubt.sd.across_nm;
  drawn.change([](Passage& p) { p.stream = {.entry = StreamEntry::steady}; });
  const PassagePlan plan = drawn.plan();
  CHECK(plan.legs[0].stream == StreamEntry::not_entered);
  CHECK(!plan.legs[0].run.stream_entered);
  CHECK(plan.legs[0].doubt.sd.across_nm == unsure_nm);  // who has entered least gets the widest band
}

TEST_CASE("hour by hour there is a course for each hour's stream, all on the line") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.way = Way::hour_by_hour;
    p.stream.entry = StreamEntry::by_hour;
    for (int hour = -6; hour <= 6; ++hour) p.stream.hours.push_back({hour, {TrueDirection(hour < 0 ? 20 : 200), 1.0}});
    p.tides = {{.date = k_day, .time = {425}}};  // the stream turns half an hour before, on the first leg
  });
  const PassagePlan plan = drawn.plan();
  REQUIRE(plan.complete);
  const PlannedLeg& first = plan.legs[0];
  REQUIRE(first.courses.size() >= 1);
  std::size_t courses = 0;
  for (const PlannedLeg& leg : plan.legs) {
    courses += leg.courses.size();
    for (const RunPiece& piece : leg.run.pieces) CHECK(piece.across_nm == doctest::Approx(0));
    CHECK(leg.courses.front().from_s == leg.run.departure_s);
    CHECK(leg.courses.back().to_s == leg.run.arrival_s);
  }
  CHECK(courses > 3);
}

TEST_CASE("the way home is worked out for its own time, not turned round") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.stream = {.entry = StreamEntry::steady, .steady = {TrueDirection(352), 0.7}};
    p.home_time = ClockTime{17 * 60};
  });
  const PassagePlan out = drawn.plan(), home = drawn.plan(true);
  REQUIRE(home.complete);
  CHECK(home.legs[0].place == 2);
  CHECK(home.legs[0].from == drawn.d);
  CHECK(home.legs[2].to == drawn.a);
  CHECK(home.legs[0].run.departure_s == static_cast<double>(instant_of(k_day, {17 * 60}, {60, ""}).seconds));
  const double turned = reduce_difference_deg(home.legs[0].courses[0].heading->deg() - out.legs[2].courses[0].heading->deg() - 180);
  CHECK(std::abs(turned) > 2);  // the stream is allowed for on both, to the same side of the sea
  drawn.change([](Passage& p) { p.home_time = ClockTime{420}; });
  CHECK(drawn.plan(true).problem->fault == Fault::home_before_arrival);
}

TEST_CASE("what is missing is said on the leg that lacks it, and the others stand") {
  Drawn drawn;
  SUBCASE("no speed: still a course in still water, no times") {
    drawn.change([](Passage& p) { p.speed_kn.reset(); });
    const PassagePlan plan = drawn.plan();
    CHECK(plan.problem->fault == Fault::speed_not_entered);
    CHECK(!plan.has_times);
    CHECK(plan.legs[1].courses[0].heading->deg() == doctest::Approx(plan.legs[1].rhumb.course.deg()));
    CHECK(!plan.legs[1].window);
    drawn.change([](Passage& p) { p.stream = {.entry = StreamEntry::steady, .steady = {TrueDirection(352), 0.7}}; });
    CHECK(drawn.plan().legs[1].problem->fault == Fault::speed_not_entered);
  }
  SUBCASE("no time: a table can't be read") {
    drawn.change([](Passage& p) {
      p.time.reset();
      p.stream.entry = StreamEntry::by_hour;
      p.stream.hours = {{0, {TrueDirection(10), 1}}};
      p.tides = {{.date = k_day, .time = {425}}};
    });
    for (const PlannedLeg& leg : drawn.plan().legs) CHECK(leg.problem->fault == Fault::time_not_entered);
  }
  SUBCASE("no high water, a gap") {
    drawn.change([](Passage& p) {
      p.stream.entry = StreamEntry::by_hour;
      p.stream.hours = {{0, {TrueDirection(10), 1}}};
    });
    CHECK(drawn.plan().legs[0].problem->fault == Fault::high_water_missing);
    drawn.change([](Passage& p) { p.tides = {{.date = k_day, .time = {425}}}; });
    const PassagePlan plan = drawn.plan();
    CHECK(!plan.legs[0].problem);
    CHECK((plan.legs[0].run.gap || plan.legs[1].run.gap));
  }
  SUBCASE("a stream that can't be stemmed") {
    drawn.change([](Passage& p) { p.legs[1].stream = PlannedStream{.entry = StreamEntry::steady, .steady = {TrueDirection(275), 6}}; });
    const PassagePlan plan = drawn.plan();
    CHECK(!plan.legs[0].problem);
    CHECK(plan.legs[1].problem->fault == Fault::stream_not_stemmed);
    CHECK(!plan.complete);
    CHECK(!plan.has_times);
  }
  SUBCASE("a mark taken off under a leg") {
    REQUIRE(remove_mark(drawn.history, drawn.c).ok());
    const PassagePlan plan = drawn.plan();
    CHECK(!plan.legs[0].problem);
    CHECK(*plan.legs[1].problem == Problem{.fault = Fault::passage_leg_gone, .texts = {"B – C"}, .numbers = {2}});
    CHECK(plan.legs[2].problem->fault == Fault::passage_leg_gone);
  }
  SUBCASE("legs that do not follow on") {
    REQUIRE(leave_leg_out(drawn.history, drawn.id, 1).ok());
    CHECK(*drawn.plan().legs[1].problem == Problem{.fault = Fault::passage_legs_apart, .texts = {"B", "C"}, .numbers = {2}});
  }
}

TEST_CASE("under way the times go on from what was written") {
  Drawn drawn;
  const auto write = [&](DeckEntryKind kind, int minutes) { REQUIRE(write_deck_log(drawn.history, drawn.id, {.kind = kind, .date = k_day, .time = {minutes}}).ok()); };
  write(DeckEntryKind::departed, 410);
  const PassagePlan left = drawn.under_way();
  CHECK(left.legs[0].run.departure_s == static_cast<double>(instant_of(k_day, {410}, {60, ""}).seconds));
  write(DeckEntryKind::not_seen, 460);
  const PassagePlan unseen = drawn.under_way();
  CHECK(unseen.legs[1].run.departure_s == static_cast<double>(instant_of(k_day, {460}, {60, ""}).seconds));
  drawn.history.undo();
  write(DeckEntryKind::seen, 460);
  const PassagePlan seen = drawn.under_way();
  CHECK(seen.legs[1].doubt.sd.across_nm < 0.6 * unseen.legs[1].doubt.sd.across_nm);  // the place was known there
}

TEST_CASE("once she has left, a table of streams is read by the time in the deck log") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.time.reset();
    p.stream = {.entry = StreamEntry::by_hour, .hours = {}, .source = ""};
    for (int hour = -6; hour <= 6; ++hour) p.stream.hours.push_back({hour, {TrueDirection(300), 0.5}});
    p.tides = {{.date = k_day, .time = {420}}};
  });
  REQUIRE(write_deck_log(drawn.history, drawn.id, {.kind = DeckEntryKind::departed, .date = k_day, .time = {410}}).ok());
  const PassagePlan plan = drawn.under_way();
  CHECK(plan.complete);
  CHECK(plan.has_times);
  CHECK(plan.legs[0].run.departure_s == static_cast<double>(instant_of(k_day, {410}, {60, ""}).seconds));
  REQUIRE(plan.legs[2].window.has_value());
}

TEST_CASE("a leg that took longer than planned has gathered that much more doubt") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.stream = {.entry = StreamEntry::steady, .steady = {TrueDirection(352), 0.7}}; });
  const auto write = [&](DeckEntryKind kind, int minutes) { REQUIRE(write_deck_log(drawn.history, drawn.id, {.kind = kind, .date = k_day, .time = {minutes}}).ok()); };
  write(DeckEntryKind::departed, 400);
  write(DeckEntryKind::not_seen, 400 + 180);  // planned: about 42 minutes
  const AlongAcross stream = drawn.under_way().legs[0].doubt.by_source[static_cast<std::size_t>(DoubtSource::stream)];
  CHECK(stream.across_nm == doctest::Approx(3 * k_stream_sd_kn));
}

TEST_CASE("a danger near a leg's begin lies within less doubt once a mark was seen there") {
  Drawn drawn;
  REQUIRE(add_mark(drawn.history, {.name = "Rock", .lat_deg = k_middle_lat + 0.5 / 60, .lon_deg = k_middle_lon - 1.16 / 60, .kind = MarkKind::danger, .radius_nm = 0.01}).ok());
  const auto write = [&](DeckEntryKind kind, int minutes) { REQUIRE(write_deck_log(drawn.history, drawn.id, {.kind = kind, .date = k_day, .time = {minutes}}).ok()); };
  const auto doubt_nm = [&] {
    const PassagePlan plan = drawn.under_way();
    for (const DangerPass& pass : danger_passes(drawn.document(), plan))
      if (pass.leg == 1) return pass.doubt_nm;
    return 0.0;
  };
  write(DeckEntryKind::departed, 400);
  write(DeckEntryKind::not_seen, 440);
  const double unseen_nm = doubt_nm();
  drawn.history.undo();
  write(DeckEntryKind::seen, 440);
  REQUIRE(unseen_nm > 0.2);
  CHECK(doubt_nm() < 0.3 * unseen_nm);
  CHECK(doubt_nm() > k_sds_for_19_in_20 * k_start_sd_nm);
  CHECK(drawn.under_way().legs[1].doubt.at_start.across_nm == doctest::Approx(k_start_sd_nm));
}

TEST_CASE("how far along a leg: by the clock evenly, by the log where it was read, never past either end") {
  Drawn drawn;
  const auto write = [&](DeckEntry entry) {
    entry.date = k_day;
    REQUIRE(write_deck_log(drawn.history, drawn.id, entry).ok());
  };
  write({.kind = DeckEntryKind::departed, .time = {400}, .log_nm = 100});
  const PassagePlan plan = drawn.under_way();
  const PlannedLeg& leg = plan.legs[0];
  const double departure_s = leg.run.departure_s, length_nm = leg.rhumb.distance_nm;
  const auto progress = [&](double now_s) { return progress_on(drawn.document(), drawn.passage(), leg, now_s); };
  CHECK(progress(departure_s + 12 * 60).run_nm == doctest::Approx(1));  // 5 kn for 12 minutes, in still water
  CHECK(progress(departure_s - 600).run_nm == 0);
  CHECK(progress(departure_s + 90'000).run_nm == length_nm);
  CHECK(!progress(departure_s).log_read);
  write({.kind = DeckEntryKind::reading, .time = {420}, .log_nm = 101.5});
  CHECK(progress(departure_s + 12 * 60).run_nm == doctest::Approx(1.5));  // what the log has run since she left
  CHECK(progress(departure_s).log_read == ClockTime{420});
}
