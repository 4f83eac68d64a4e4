// What a passage draws on its sheet, checked against the stream's triangle by the law of sines, worked out here, and against
// rhumb lines measured back from the paper. What signs and labels each school uses: plotting handbooks (common practice, no
// source, but for the half circle, the square and the slanted time: US Navy training modules).
#include "core/figure/passage_figure.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/document/actions.h"
#include "core/document/facts.h"
#include "core/figure/sheet_figure.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_middle_lat = 44 + 10 / 60.0, k_middle_lon = -(31 + 20 / 60.0);
constexpr Date k_day{2026, 6, 20};
const Zone k_zone{60, ""};
const Stream k_stream{TrueDirection(352), 0.7};
constexpr double k_speed_kn = 5;

struct Drawn {
  History history = History(made_sheet({.name = "Sound", .mid_lat_deg = k_middle_lat, .mid_lon_deg = k_middle_lon, .date = k_day}).value());
  MarkId a = turn("A", -1.5, -6), b = turn("B", 0.5, 0), c = turn("C", 0, 6);
  LegId ab = add_leg(history, a, b).value(), bc = add_leg(history, b, c).value();
  PassageId id = make_passage(history, {.speed_kn = k_speed_kn, .stream = {.entry = StreamEntry::steady, .steady = k_stream}, .date = k_day, .time = ClockTime{400}, .zone = k_zone}).value();

  MarkId turn(const char* name, double north_min, double east_min) {
    return add_mark(history, {.name = name, .lat_deg = k_middle_lat + north_min / 60, .lon_deg = k_middle_lon + east_min / 60, .kind = MarkKind::turn}).value();
  }
  const Passage& passage() const { return *find(*history.now().passages, id); }
  template <class Change>
  void change(Change how) {
    Passage wanted = passage();
    how(wanted);
    REQUIRE(change_passage(history, wanted).ok());
  }
  void wear(SignSet signs) { REQUIRE(describe_sheet(history, {.signs = signs}).ok()); }
  PlottedPassage plot() const {
    const VariationInUse variation = variation_of(history.now(), Rounding::whole_degrees);
    const PlanNeeds needs{.variation_of = [&](const Leg&) -> const VariationInUse& { return variation; }};
    return plot_passage(history.now(), passage(), plan_of(history.now(), passage(), needs), plan_under_way(history.now(), passage(), needs), projection_of(history.now()));
  }
  Figure figure() const {
    SheetNotes notes;
    notes.roses.resize(history.now().roses.size());
    return sheet_figure(history.now(), notes, {.legibility = k_print_legibility}, plot());
  }
  RhumbLeg leg(MarkId from, MarkId to) const {
    return rhumb_inverse(unquantise(history.now().marks.find(from)->at), unquantise(history.now().marks.find(to)->at));
  }
  SheetPoint place(MarkId mark) const { return projection_of(history.now()).to_sheet(unquantise(history.now().marks.find(mark)->at)); }
  RhumbLeg measured(SheetPoint from, SheetPoint to) const {
    const Projection projection = projection_of(history.now());
    return rhumb_inverse(projection.to_position(from), projection.to_position(to));
  }
};

/// By the law of sines: how far the water track lies to starboard of the ground track, deg; and the speed over the ground.
struct BySines {
  double crab_deg, over_ground_kn;
  BySines(double track_deg, Stream stream, double speed_kn) {
    const double angle = (stream.set.deg() - track_deg) * k_degree_rad, crab = std::asin(stream.drift_kn * std::sin(angle) / speed_kn);
    crab_deg = -crab / k_degree_rad;
    over_ground_kn = speed_kn * std::cos(crab) + stream.drift_kn * std::cos(angle);
  }
};

double off_line_mm(SheetPoint point, SheetPoint from, SheetPoint to) {
  const SheetVector line = to - from, out = point - from;
  return std::abs(line.x_mm * out.y_mm - line.y_mm * out.x_mm) / length_mm(line);
}

double apart_deg(double a, double b) { return std::abs(reduce_difference_deg(a - b)); }

const Text* text(const Figure& figure, const std::string& wanted) {
  for (const Shape& shape : figure.on(Layer::labels))
    if (const Text* each = std::get_if<Text>(&shape); each && each->text == wanted) return each;
  return nullptr;
}

/// Heads of that ink: open angles of three points.
long heads(const Figure& figure, Ink ink) {
  return std::count_if(figure.on(Layer::legs).begin(), figure.on(Layer::legs).end(), [&](const Shape& shape) {
    const Path* path = std::get_if<Path>(&shape);
    return path && path->points.size() == 3 && path->stroke == ink && std::abs(distance_mm(path->points[0], path->points[1]) - distance_mm(path->points[2], path->points[1])) < 1e-9;
  });
}

const PlottedPosition* position(const PlottedPassage& plot, PlotSign sign, const std::string& time) {
  const auto found = std::find_if(plot.positions.begin(), plot.positions.end(), [&](const PlottedPosition& each) { return each.sign == sign && each.time == time; });
  return found == plot.positions.end() ? nullptr : &*found;
}

// Flat triangles on a sheet some 15 nm wide: what latitude does to its scale is under these.
constexpr double k_course_deg = 0.02, k_run_nm = 0.002, k_paper_mm = 0.01;

}  // namespace

TEST_CASE("a triangle is the stream's for half an hour, the run through the water, and what they make on the ground track") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.legs[1].triangle = true; });
  const PlottedPassage plot = drawn.plot();
  REQUIRE(plot.triangles.size() == 1);
  CHECK(plot.positions.empty());
  const LaidTriangle& laid = plot.triangles[0];
  const RhumbLeg leg = drawn.leg(drawn.b, drawn.c);
  const BySines expected(leg.course.deg(), k_stream, k_speed_kn);
  CHECK(laid.minutes == 30);
  CHECK(distance_mm(laid.start, drawn.place(drawn.b)) <= k_paper_mm);
  CHECK(off_line_mm(laid.meets, drawn.place(drawn.b), drawn.place(drawn.c)) <= k_paper_mm);
  const RhumbLeg stream = drawn.measured(laid.start, laid.stream_end), water = drawn.measured(laid.stream_end, laid.meets), ground = drawn.measured(laid.start, laid.meets);
  CHECK(apart_deg(stream.course.deg(), 352) <= k_course_deg);
  CHECK(std::abs(stream.distance_nm - 0.35) <= k_run_nm);
  CHECK(apart_deg(water.course.deg(), leg.course.deg() + expected.crab_deg) <= k_course_deg);
  CHECK(std::abs(water.distance_nm - 2.5) <= k_run_nm);
  CHECK(std::abs(ground.distance_nm - expected.over_ground_kn / 2) <= k_run_nm);
}

TEST_CASE("a triangle is laid off for less on a short leg, for longer where the stream is weak, and not without one") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.legs[1].triangle = true, p.legs[1].speed_kn = 20; });
  CHECK(drawn.plot().triangles.at(0).minutes == 10);  // 4.3 nm at 20 kn: 13 minutes
  drawn.change([](Passage& p) { p.legs[1].speed_kn = 2, p.stream.steady.drift_kn = 0.4; });
  CHECK(drawn.plot().triangles.at(0).minutes == 60);  // half an hour would be 3.7 mm
  drawn.change([](Passage& p) { p.stream = {}; });
  CHECK(drawn.plot().triangles.empty());
  CHECK(drawn.plot().told_apart.empty());
}

TEST_CASE("hour by hour each heading has its triangle where it begins") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.way = Way::hour_by_hour;
    p.tides = {{.date = k_day, .time = ClockTime{400}}};
    p.stream = {.entry = StreamEntry::by_hour};
    for (int hour = -1; hour <= 4; ++hour) p.stream.hours.push_back({.hour = hour, .stream = {TrueDirection(340 + 30 * hour), 0.8 + 0.2 * hour}});
    p.legs[0].triangle = true;
  });
  const PlottedPassage plot = drawn.plot();
  REQUIRE(plot.triangles.size() == 2);  // the stream changes half an hour after high water
  CHECK(distance_mm(plot.triangles[0].start, drawn.place(drawn.a)) <= k_paper_mm);
  const RhumbLeg leg = drawn.leg(drawn.a, drawn.b);
  const BySines first(leg.course.deg(), {TrueDirection(340), 0.8}, k_speed_kn), second(leg.course.deg(), {TrueDirection(10), 1.0}, k_speed_kn);
  CHECK(std::abs(drawn.measured(plot.triangles[0].start, plot.triangles[1].start).distance_nm - first.over_ground_kn / 2) <= k_run_nm);
  CHECK(apart_deg(plot.triangles[1].water_track.deg(), leg.course.deg() + second.crab_deg) <= k_course_deg);
  CHECK(plot.bows.empty());  // she stays on the line
}

TEST_CASE("on one heading a changing stream bows the ground track, which ends where the leg does") {
  Drawn drawn;
  CHECK(drawn.plot().bows.empty());  // a steady one does not
  drawn.change([](Passage& p) {
    p.tides = {{.date = k_day, .time = ClockTime{400}}};
    p.stream = {.entry = StreamEntry::by_hour};
    for (int hour = -1; hour <= 3; ++hour) p.stream.hours.push_back({.hour = hour, .stream = {TrueDirection(hour % 2 == 0 ? 340 : 160), 1}});
  });
  const PlottedPassage plot = drawn.plot();
  REQUIRE(plot.bows.size() == 2);
  CHECK(distance_mm(plot.bows[0].front(), drawn.place(drawn.a)) <= k_paper_mm);
  CHECK(distance_mm(plot.bows[0].back(), drawn.place(drawn.b)) <= k_paper_mm);
  CHECK(distance_mm(plot.bows[1].back(), drawn.place(drawn.c)) <= k_paper_mm);
  double most_mm = 0;
  for (const SheetPoint point : plot.bows[0]) most_mm = std::max(most_mm, off_line_mm(point, drawn.place(drawn.a), drawn.place(drawn.b)));
  CHECK(most_mm > 0.3);
}

TEST_CASE("dead reckoning stands on the water track, the estimated position the stream's run from it, on the leg") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.plot_every_min = 20; });
  const PlottedPassage plot = drawn.plot();
  const RhumbLeg leg = drawn.leg(drawn.a, drawn.b);
  const BySines expected(leg.course.deg(), k_stream, k_speed_kn);
  for (const auto& [time, hours] : {std::pair{"0700", 1 / 3.0}, std::pair{"0720", 2 / 3.0}}) {
    const std::string at = time;  // a binding can not be captured
    CAPTURE(at);
    const PlottedPosition* reckoned = position(plot, PlotSign::dead_reckoning, time);
    const PlottedPosition* estimated = position(plot, PlotSign::estimated_position, time);
    REQUIRE(reckoned);
    REQUIRE(estimated);
    const RhumbLeg water = drawn.measured(drawn.place(drawn.a), reckoned->at), stream = drawn.measured(reckoned->at, estimated->at);
    CHECK(apart_deg(water.course.deg(), leg.course.deg() + expected.crab_deg) <= k_course_deg);
    CHECK(apart_deg(reckoned->track_deg, water.course.deg()) <= k_course_deg);
    CHECK(std::abs(water.distance_nm - hours * k_speed_kn) <= k_run_nm);
    CHECK(apart_deg(stream.course.deg(), 352) <= 20 * k_course_deg);  // a short run: 0.2 nm
    CHECK(std::abs(stream.distance_nm - hours * k_stream.drift_kn) <= k_run_nm);
    CHECK(off_line_mm(estimated->at, drawn.place(drawn.a), drawn.place(drawn.b)) <= k_paper_mm);
    CHECK(std::abs(drawn.measured(drawn.place(drawn.a), estimated->at).distance_nm - hours * expected.over_ground_kn) <= k_run_nm);
  }
  REQUIRE(plot.water_tracks.size() == 2);
  CHECK(plot.ground_tracks.size() == 2);
  CHECK(distance_mm(plot.water_tracks[0].front(), drawn.place(drawn.a)) <= k_paper_mm);
}

TEST_CASE("where the stream was not entered there is dead reckoning alone, on the leg, and no second track") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.plot_every_min = 15, p.stream = {}; });
  const PlottedPassage plot = drawn.plot();
  CHECK(plot.positions.size() >= 4);
  for (const PlottedPosition& each : plot.positions) CHECK(each.sign == PlotSign::dead_reckoning);
  CHECK(off_line_mm(plot.positions[0].at, drawn.place(drawn.a), drawn.place(drawn.b)) <= k_paper_mm);
  CHECK(plot.water_tracks.empty());
  CHECK(plot.ground_tracks.empty());
}

TEST_CASE("past the hours of a table there is no estimated position") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.plot_every_min = 10;
    p.tides = {{.date = k_day, .time = ClockTime{400}}};
    p.stream = {.entry = StreamEntry::by_hour, .hours = {{.hour = 0, .stream = k_stream}}};
  });
  const PlottedPassage plot = drawn.plot();
  CHECK(position(plot, PlotSign::estimated_position, "0710"));  // high water's stream holds for half an hour
  CHECK(!position(plot, PlotSign::estimated_position, "0720"));
  CHECK(position(plot, PlotSign::dead_reckoning, "0720"));
}

TEST_CASE("what the deck log has on stands there too: by its time, and by its log from the turn on") {
  Drawn drawn;
  drawn.change([](Passage& p) {
    p.plot_every_min = 10;
    p.deck_log = {{.kind = DeckEntryKind::departed, .date = k_day, .time = ClockTime{410}, .log_nm = 100},
                  {.kind = DeckEntryKind::reading, .date = k_day, .time = ClockTime{440}, .log_nm = 102},
                  {.kind = DeckEntryKind::reading, .date = k_day, .time = ClockTime{447}},
                  {.kind = DeckEntryKind::reading, .date = k_day, .time = ClockTime{455}, .log_nm = 1}};  // set anew
  });
  const PlottedPassage plot = drawn.plot();
  const auto run_to = [&](const char* time) {
    const PlottedPosition* reckoned = position(plot, PlotSign::dead_reckoning, time);
    REQUIRE(reckoned);
    return drawn.measured(drawn.place(drawn.a), reckoned->at).distance_nm;
  };
  CHECK(std::abs(run_to("0720") - 2) <= k_run_nm);  // 2.5 by the clock, and only once
  CHECK(std::count_if(plot.positions.begin(), plot.positions.end(), [](const PlottedPosition& each) { return each.time == "0720"; }) == 2);
  CHECK(std::abs(run_to("0727") - 37 / 60.0 * k_speed_kn) <= k_run_nm);
  CHECK(std::abs(run_to("0735") - 45 / 60.0 * k_speed_kn) <= k_run_nm);
  CHECK(std::abs(run_to("0710") - 20 / 60.0 * k_speed_kn) <= k_run_nm);
}

TEST_CASE("no more positions than can be told apart") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.plot_every_min = 1, p.speed_kn = 0.9; });
  CHECK(drawn.plot().positions.size() == k_most_plotted_positions);
}

TEST_CASE("signs of set A: heads tell the lines apart, times are level") {
  Drawn drawn;
  drawn.change([](Passage& p) { p.legs[1].triangle = true; });
  Figure figure = drawn.figure();
  CHECK(heads(figure, Ink::blue) == 4);  // three on the stream, one on the water track
  CHECK(heads(figure, Ink::ink) == 2);
  const BySines expected(drawn.leg(drawn.b, drawn.c).course.deg(), k_stream, k_speed_kn);
  const long water_track = std::lround(drawn.leg(drawn.b, drawn.c).course.deg() + expected.crab_deg);
  CHECK(text(figure, std::to_string(water_track) + "°T  2.5 nm in ½ h"));
  CHECK(text(figure, "352°T 0.7 kn"));
  drawn.change([](Passage& p) { p.legs[1].triangle = false, p.plot_every_min = 30; });
  figure = drawn.figure();
  CHECK(heads(figure, Ink::blue) == 2);  // a water track each leg
  CHECK(heads(figure, Ink::ink) == 4);
  REQUIRE(text(figure, "0700"));
  CHECK(text(figure, "0700")->turn_deg == 0);
  CHECK(text(figure, "0700 EP"));
}

TEST_CASE("signs of set B: lines say what they are, dead reckoning's times are slanted") {
  Drawn drawn;
  drawn.wear(SignSet::b);
  CHECK(text(drawn.figure(), "097°T"));
  drawn.change([](Passage& p) { p.legs[1].triangle = true, p.plot_every_min = 30; });
  const Figure figure = drawn.figure();
  CHECK(heads(figure, Ink::blue) == 0);
  CHECK(heads(figure, Ink::ink) == 0);
  for (const std::string label : {"C 104  S 5.0", "TR 097", "D 4.3", "set 352 drift 0.7", "0700 EP"}) {
    CAPTURE(label);
    CHECK(text(figure, label));
  }
  REQUIRE(text(figure, "0700"));
  CHECK(std::abs(text(figure, "0700")->turn_deg) > 1);
}
