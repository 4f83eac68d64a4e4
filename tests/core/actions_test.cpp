// The named changes of a sheet: what each makes, and each reason for which it refuses, leaving the document as it was.
#include "core/document/actions.h"

#include <cmath>
#include <limits>

#include "core/document/facts.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

constexpr double k_nan = std::numeric_limits<double>::quiet_NaN();
constexpr Date k_date{2026, 7, 1};

// A sheet at 44°10'N 031°20'W on A4 across, 1:100 000: about 14 nm wide and 10 high.
NewSheet usual_sheet() { return {.name = "Gull Sound", .mid_lat_deg = 44 + 10 / 60.0, .mid_lon_deg = -(31 + 20 / 60.0), .date = k_date}; }

History usual_history() { return History(made_sheet(usual_sheet()).value()); }

NewMark mark_at(std::string name, double north_min, double east_min) {
  return {.name = std::move(name), .lat_deg = 44 + (10 + north_min) / 60, .lon_deg = -(31 + (20 - east_min) / 60)};
}

// Whether an act was refused for that reason and left no trace.
template <class Given>
Problem refusal(History& history, const Document& before, std::uint64_t revision, const Result<Given>& result) {
  REQUIRE_FALSE(result.ok());
  CHECK(history.now() == before);
  CHECK(history.revision() == revision);
  return result.problem();
}

template <class Act>
Problem refused(History& history, Act act) {
  const Document before = history.now();
  const std::uint64_t revision = history.revision();
  return refusal(history, before, revision, act(history));
}

Problem sheet_refused(NewSheet wanted) {
  const Result<Document> made = made_sheet(wanted);
  REQUIRE_FALSE(made.ok());
  return made.problem();
}

}  // namespace

TEST_CASE("a new sheet holds what was asked for, and one rose") {
  const Document document = made_sheet(usual_sheet()).value();
  CHECK(document.sheet.name == "Gull Sound");
  CHECK(document.sheet.middle == GridPosition{26'500'000, -18'800'000});
  CHECK(document.sheet.scale == 100'000);
  CHECK(document.sheet.date == k_date);
  CHECK(document.sheet.datum == "WGS84");
  CHECK(document.marks.empty());
  CHECK(document.legs.empty());
  REQUIRE(document.roses.size() == 1);
  CHECK(document.roses.at(0).id.value < document.next_id);
}

TEST_CASE("the first rose lies whole within the neat line, in its lower right, on every paper") {
  for (const Paper paper : all_papers()) {
    CAPTURE(paper_name(paper));
    NewSheet wanted = usual_sheet();
    wanted.paper = paper;
    const Document document = made_sheet(wanted).value();
    const Projection projection = projection_of(document);
    const SheetRect& neat = projection.neat_line();
    const Rose& rose = document.roses.at(0);
    const SheetPoint centre = projection.to_sheet(unquantise(rose.at));
    constexpr double k_grid_mm = 0.01;  // the centre is kept to 0.0001', 0.002 mm at this scale
    CHECK(centre.x_mm + 1.12 * rose.radius_mm + 4 == doctest::Approx(neat.right_mm).epsilon(k_grid_mm / neat.right_mm));
    CHECK(centre.y_mm + 1.12 * rose.radius_mm + 4 == doctest::Approx(neat.bottom_mm).epsilon(k_grid_mm / neat.bottom_mm));
    CHECK(rose.radius_mm <= 44);
    CHECK(rose.radius_mm >= k_least_rose_radius_mm);
    CHECK(std::abs(rose.radius_mm - std::min(44.0, 0.21 * std::min(neat.width_mm(), neat.height_mm()))) <= 0.05 + 1e-9);
    CHECK(rose.radius_mm * 10 == std::round(rose.radius_mm * 10));
  }
}

TEST_CASE("a sheet is refused for its place, scale, date or name") {
  NewSheet wanted = usual_sheet();
  wanted.mid_lat_deg = 75.001;
  CHECK(sheet_refused(wanted) == Problem{.fault = Fault::latitude_out_of_range, .numbers = {75.001, 75}});
  wanted = usual_sheet();
  wanted.mid_lon_deg = -181;
  CHECK(sheet_refused(wanted).fault == Fault::longitude_out_of_range);
  wanted = usual_sheet();
  wanted.mid_lat_deg = k_nan;
  CHECK(sheet_refused(wanted).fault == Fault::number_missing);
  for (const double scale : {24'999.0, 1'000'001.0, 0.0, -100'000.0}) {
    wanted = usual_sheet();
    wanted.scale = scale;
    CHECK(sheet_refused(wanted) == Problem{.fault = Fault::number_out_of_range, .texts = {"scale"}, .numbers = {scale, 25'000, 1'000'000}});
  }
  wanted.scale = k_nan;
  CHECK(sheet_refused(wanted) == Problem{.fault = Fault::number_missing, .texts = {"scale"}});
  wanted = usual_sheet();
  wanted.date = {2025, 2, 29};
  CHECK(sheet_refused(wanted).fault == Fault::date_unreadable);
  wanted.date = {1899, 12, 31};
  CHECK(sheet_refused(wanted) == Problem{.fault = Fault::number_out_of_range, .texts = {"year"}, .numbers = {1899, 1900, 2100}});
  wanted = usual_sheet();
  wanted.name = std::string(201, 'x');
  CHECK(sheet_refused(wanted) == Problem{.fault = Fault::name_too_long, .numbers = {201, 200}});
}

TEST_CASE("a sheet whose edge would pass 75 deg is refused with that edge's latitude") {
  for (const double lat_deg : {74.95, -74.95}) {
    NewSheet wanted = usual_sheet();
    wanted.mid_lat_deg = lat_deg;
    const Problem problem = sheet_refused(wanted);
    CHECK(problem.fault == Fault::number_out_of_range);
    CHECK(problem.texts == std::vector<std::string>{"sheet"});
    REQUIRE(problem.numbers.size() == 3);
    CHECK(std::abs(problem.numbers[0]) > 75);
    CHECK(std::abs(problem.numbers[0]) < 75.1);
    CHECK((problem.numbers[0] > 0) == (lat_deg > 0));
  }
}

TEST_CASE("a mark is kept as typed but for white space at its ends, to whole 0.0001'") {
  History history = usual_history();
  NewMark wanted = mark_at(" \t Gull  Rock\xC2\xA0\n", 1, 2);
  wanted.lat_deg += 0.00004 / 60;
  const Result<MarkId> id = add_mark(history, wanted);
  REQUIRE(id);
  const Mark* mark = history.now().marks.find(*id);
  REQUIRE(mark);
  CHECK(mark->name == "Gull  Rock");
  CHECK(mark->at == GridPosition{26'510'000, -18'780'000});
  CHECK(mark->kind == MarkKind::landmark);
  CHECK(mark->radius_nm == 0);
  CHECK(*history.undo_label() == Label{Act::add_mark, "Gull  Rock"});
}

TEST_CASE("broken UTF-8 in a name becomes the replacement character") {
  History history = usual_history();
  const Result<MarkId> id = add_mark(history, mark_at("Gull\xFFRock\xED\xA0\x80", 1, 2));
  REQUIRE(id);
  CHECK(history.now().marks.find(*id)->name == "Gull\xEF\xBF\xBDRock\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
}

TEST_CASE("a danger keeps its radius in whole 0.001 nm, other marks have none") {
  History history = usual_history();
  NewMark wanted = mark_at("Ledge", 1, 2);
  wanted.kind = MarkKind::danger;
  wanted.radius_nm = 0.2504;
  const Result<MarkId> danger = add_mark(history, wanted);
  REQUIRE(danger);
  CHECK(history.now().marks.find(*danger)->radius_nm == 0.25);
  wanted.name = "Ledge Light";
  wanted.kind = MarkKind::light;
  const Result<MarkId> light = add_mark(history, wanted);
  REQUIRE(light);
  CHECK(history.now().marks.find(*light)->radius_nm == 0);
}

TEST_CASE("a mark is refused for its name, place or radius") {
  History history = usual_history();
  const auto refused_mark = [&](NewMark wanted) { return refused(history, [&](History& h) { return add_mark(h, wanted); }); };
  CHECK(refused_mark(mark_at("", 0, 0)).fault == Fault::name_empty);
  CHECK(refused_mark(mark_at(" \n\t\xC2\xA0", 0, 0)).fault == Fault::name_empty);
  CHECK(refused_mark(mark_at(std::string(201, 'x'), 0, 0)) == Problem{.fault = Fault::name_too_long, .numbers = {201, 200}});
  std::string lanterns;
  for (int i = 0; i < 70; ++i) lanterns += "灯";
  CHECK(refused_mark(mark_at(lanterns, 0, 0)) == Problem{.fault = Fault::name_too_long, .numbers = {70, 66}});
  CHECK(refused_mark(mark_at("Far", 30, 0)) == Problem{.fault = Fault::place_off_sheet, .texts = {"Far"}});
  CHECK(refused_mark({.name = "x", .lat_deg = 75.5, .lon_deg = 0}).fault == Fault::latitude_out_of_range);
  CHECK(refused_mark({.name = "x", .lat_deg = 44, .lon_deg = 180.5}).fault == Fault::longitude_out_of_range);
  CHECK(refused_mark({.name = "x", .lat_deg = k_nan, .lon_deg = 0}).fault == Fault::number_missing);
  NewMark danger = mark_at("Ledge", 0, 0);
  danger.kind = MarkKind::danger;
  CHECK(refused_mark(danger).fault == Fault::radius_missing);
  for (const double radius_nm : {-1.0, 60.001, 0.0004}) {
    danger.radius_nm = radius_nm;
    CHECK(refused_mark(danger) == Problem{.fault = Fault::number_out_of_range, .texts = {"radius"}, .numbers = {radius_nm, 0.001, 60}});
  }
  danger.radius_nm = k_nan;
  CHECK(refused_mark(danger) == Problem{.fault = Fault::number_missing, .texts = {"radius"}});
}

TEST_CASE("marks lie within the neat line, on both sides of 180 deg") {
  NewSheet wanted = usual_sheet();
  wanted.mid_lon_deg = 180;
  History history(made_sheet(wanted).value());
  CHECK(add_mark(history, {.name = "east of it", .lat_deg = 44.17, .lon_deg = -179.95}));
  CHECK(add_mark(history, {.name = "west of it", .lat_deg = 44.17, .lon_deg = 179.95}));
  CHECK(refused(history, [](History& h) { return add_mark(h, {.name = "too far", .lat_deg = 44.17, .lon_deg = 179.5}); }).fault ==
        Fault::place_off_sheet);
}

TEST_CASE("a mark moves, and is refused off the sheet or onto its leg's other end") {
  History history = usual_history();
  const MarkId gull = *add_mark(history, mark_at("Gull Rock", 0, 0));
  const MarkId sarn = *add_mark(history, mark_at("Off Sarn", 1, 1));
  REQUIRE(add_leg(history, gull, sarn));
  REQUIRE(move_mark(history, gull, 44.15, -31.3));
  CHECK(history.now().marks.find(gull)->at == GridPosition{26'490'000, -18'780'000});
  CHECK(history.now().marks.at(0).id == gull);
  CHECK(*history.undo_label() == Label{Act::move_mark, "Gull Rock"});
  CHECK(refused(history, [&](History& h) { return move_mark(h, MarkId{99}, 44.15, -31.3); }) == Problem{.fault = Fault::mark_unknown, .texts = {"99"}});
  CHECK(refused(history, [&](History& h) { return move_mark(h, gull, 45, -31.3); }) == Problem{.fault = Fault::place_off_sheet, .texts = {"Gull Rock"}});
  CHECK(refused(history, [&](History& h) { return move_mark(h, gull, 76, -31.3); }).fault == Fault::latitude_out_of_range);
  const NewMark at_sarn = mark_at("", 1, 1);
  CHECK(refused(history, [&](History& h) { return move_mark(h, gull, at_sarn.lat_deg, at_sarn.lon_deg); }) ==
        Problem{.fault = Fault::leg_of_no_length, .texts = {"Off Sarn"}});
}

TEST_CASE("a mark's legs go with it, and undo brings all back") {
  History history = usual_history();
  const MarkId a = *add_mark(history, mark_at("A", 0, 0));
  const MarkId b = *add_mark(history, mark_at("B", 1, 1));
  const MarkId c = *add_mark(history, mark_at("C", 2, 1));
  REQUIRE(add_leg(history, a, b));
  REQUIRE(add_leg(history, b, c));
  const LegId kept = *add_leg(history, a, c);
  const Document before = history.now();
  REQUIRE(remove_mark(history, b));
  CHECK(history.now().marks.size() == 2);
  REQUIRE(history.now().legs.size() == 1);
  CHECK(history.now().legs.at(0).id == kept);
  CHECK(*history.undo_label() == Label{Act::remove_mark, "B"});
  history.undo();
  CHECK(history.now() == before);
  CHECK(refused(history, [](History& h) { return remove_mark(h, MarkId{99}); }).fault == Fault::mark_unknown);
}

TEST_CASE("legs join marks that differ in place, once each way") {
  History history = usual_history();
  const MarkId a = *add_mark(history, mark_at("A", 0, 0));
  const MarkId b = *add_mark(history, mark_at("B", 1, 1));
  const MarkId on_b = *add_mark(history, mark_at("on B", 1, 1));
  REQUIRE(add_leg(history, a, b));
  REQUIRE(add_leg(history, b, a));
  const auto refused_leg = [&](MarkId from, MarkId to) { return refused(history, [&](History& h) { return add_leg(h, from, to); }); };
  CHECK(refused_leg(a, b) == Problem{.fault = Fault::leg_already_there, .texts = {"A", "B"}});
  CHECK(refused_leg(a, a) == Problem{.fault = Fault::leg_of_no_length, .texts = {"A"}});
  CHECK(refused_leg(b, on_b) == Problem{.fault = Fault::leg_of_no_length, .texts = {"on B"}});
  CHECK(refused_leg(a, MarkId{99}) == Problem{.fault = Fault::mark_unknown, .texts = {"99"}});
  CHECK(refused_leg(MarkId{98}, a) == Problem{.fault = Fault::mark_unknown, .texts = {"98"}});
}

TEST_CASE("a turning point and the leg to it are one step") {
  History history = usual_history();
  const MarkId a = *add_mark(history, mark_at("A", 0, 0));
  const Document before = history.now();
  const Result<LegId> leg = add_leg_to_new_turn(history, a, mark_at("turn 1", 1, 1));
  REQUIRE(leg);
  const Leg* made = history.now().legs.find(*leg);
  REQUIRE(made);
  CHECK(made->from == a);
  CHECK(history.now().marks.find(made->to)->kind == MarkKind::turn);
  history.undo();
  CHECK(history.now() == before);
  CHECK(refused(history, [&](History& h) { return add_leg_to_new_turn(h, a, mark_at("on A", 0, 0)); }).fault == Fault::leg_of_no_length);
  CHECK(refused(history, [&](History& h) { return add_leg_to_new_turn(h, MarkId{99}, mark_at("x", 1, 1)); }).fault == Fault::mark_unknown);
}

TEST_CASE("ids are never used twice, even after undo of other steps") {
  History history = usual_history();
  const MarkId a = *add_mark(history, mark_at("A", 0, 0));
  REQUIRE(remove_mark(history, a));
  const MarkId b = *add_mark(history, mark_at("B", 0, 0));
  CHECK(b > a);
  CHECK(b.value < history.now().next_id);
}

TEST_CASE("full tables refuse one more") {
  Document full = made_sheet(usual_sheet()).value();
  std::vector<Mark> marks;
  std::vector<Leg> legs;
  for (std::uint32_t i = 0; i < k_most_marks; ++i) {
    const auto lat = static_cast<std::int32_t>(26'500'000 + i);
    marks.push_back({.id = {full.next_id++}, .name = "m", .at = {lat, -18'800'000}});
  }
  for (std::size_t i = 0; i < k_most_legs; ++i)
    legs.push_back({.id = {full.next_id++}, .from = marks[i].id, .to = marks[(i + 1) % marks.size()].id});
  full.marks = Table<Mark>::of(marks);
  full.legs = Table<Leg>::of(legs);
  History history(full);
  CHECK(refused(history, [](History& h) { return add_mark(h, mark_at("x", 0, 0)); }) ==
        Problem{.fault = Fault::table_full, .texts = {"marks"}, .numbers = {20'000}});
  CHECK(refused(history, [&](History& h) { return add_leg(h, marks[0].id, marks[5].id); }) ==
        Problem{.fault = Fault::table_full, .texts = {"legs"}, .numbers = {20'000}});
}

TEST_CASE("a document that has used up its ids refuses one more") {
  Document used_up = made_sheet(usual_sheet()).value();
  used_up.next_id = k_most_id;
  History history(used_up);
  CHECK(refused(history, [](History& h) { return add_mark(h, mark_at("x", 0, 0)); }).fault == Fault::table_full);
}

TEST_CASE("dates are days of the calendar from 1900 to 2100") {
  History history = usual_history();
  for (const Date date : {Date{1900, 1, 1}, Date{2028, 2, 29}, Date{2100, 12, 31}}) {
    REQUIRE(set_date(history, date));
    CHECK(history.now().sheet.date == date);
  }
  CHECK(refused(history, [](History& h) { return set_date(h, {2100, 2, 29}); }).fault == Fault::date_unreadable);
  CHECK(refused(history, [](History& h) { return set_date(h, {2026, 13, 1}); }).fault == Fault::date_unreadable);
  CHECK(refused(history, [](History& h) { return set_date(h, {2101, 1, 1}); }) ==
        Problem{.fault = Fault::number_out_of_range, .texts = {"year"}, .numbers = {2101, 1900, 2100}});
}

TEST_CASE("a chart's note is kept with the sheet's middle, and cleared") {
  History history = usual_history();
  REQUIRE(set_chart_note(history, PrintedVariation{.value_deg = -9.42, .year = 2024, .annual_change_min = 12.5}));
  REQUIRE(history.now().chart_note);
  CHECK(history.now().chart_note->printed == PrintedVariation{-9.42, 2024, 12.5});
  CHECK(history.now().chart_note->entered_at == history.now().sheet.middle);
  CHECK(history.undo_label()->act == Act::set_chart_note);
  REQUIRE(set_chart_note(history, std::nullopt));
  CHECK_FALSE(history.now().chart_note);
  CHECK(history.undo_label()->act == Act::clear_chart_note);

  const auto refused_note = [&](PrintedVariation note) { return refused(history, [&](History& h) { return set_chart_note(h, note); }); };
  CHECK(refused_note({180.1, 2024, 0}) == Problem{.fault = Fault::number_out_of_range, .texts = {"variation"}, .numbers = {180.1, -180, 180}});
  CHECK(refused_note({0, 1899, 0}) == Problem{.fault = Fault::number_out_of_range, .texts = {"year"}, .numbers = {1899, 1900, 2100}});
  CHECK(refused_note({0, 2024, -120.5}) == Problem{.fault = Fault::number_out_of_range, .texts = {"annual change"}, .numbers = {-120.5, -120, 120}});
  CHECK(refused_note({k_nan, 2024, 0}) == Problem{.fault = Fault::number_missing, .texts = {"variation"}});
}
