// Marks and lines of files put on sheets.
#include "core/document/import_actions.h"

#include "core/document/integrity.h"
#include "core/document/sheet_actions.h"
#include "doctest/doctest.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

const ImportNames k_names{"Mark ", "Turn "};

Document sheet() { return made_sheet({.name = "S", .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 11, 25}}).value(); }

FileMark mark_at(std::string name, double lat_deg, double lon_deg) { return {.name = std::move(name), .at = quantise({lat_deg, lon_deg})}; }

FileLine line_through(std::string name, std::vector<Position> places) {
  FileLine line{.origin = LineOrigin::route, .name = std::move(name)};
  for (const Position& place : places) line.points.push_back({quantise(place)});
  return line;
}

}  // namespace

TEST_CASE("an import is one step, and undo takes all of it back") {
  History history(sheet());
  const Document before = history.now();
  MarksAndLines all;
  all.marks = {mark_at("A", 44.01, -31.01), mark_at("", 44.02, -31.02)};
  all.lines = {line_through("Out", {{44.01, -31.01}, {44.03, -31.03}, {44.03, -31.03}, {44.02, -31.02}}), line_through("", {{44.03, -31.03}, {44, -31}})};
  all.lines[0].points[1].name = "Bend";
  const Result<Import> import = import_marks(history, all, k_names, "out.gpx");
  REQUIRE(import.ok());
  CHECK(import->marks == 4);
  CHECK(import->legs == 3);
  CHECK(history.state() == 1);
  CHECK(*history.undo_label() == Label{Act::import_marks, "out.gpx"});
  const Document& now = history.now();
  CHECK(check_document(now).ok());
  CHECK(now.marks.at(0).name == "A");
  CHECK(now.marks.at(1).name == "Mark 1");
  CHECK(now.marks.at(2).name == "Bend");
  CHECK(now.marks.at(2).kind == MarkKind::turn);
  CHECK(now.marks.at(3).name == "Turn 1");
  CHECK(now.legs.at(0).from == now.marks.at(0).id);
  CHECK(now.legs.at(1).to == now.marks.at(1).id);
  CHECK(import_marks(history, all, k_names, "out.gpx").problem().fault == Fault::nothing_to_import);
  history.undo();
  CHECK(history.now() == before);
}

TEST_CASE("what lies off the sheet stays off and is told, and its line goes on behind it") {
  Document document = sheet();
  MarksAndLines all;
  all.marks = {mark_at("Near", 44.01, -31), mark_at("Far", 50, -31), mark_at("Other side", -44, 149)};
  all.lines = {line_through("Round", {{44, -31}, {44.02, -31}, {60, -31}, {44.03, -31}, {44.04, -31}})};
  const Import import = import_into(document, all, k_names);
  CHECK(import.marks == 5);
  CHECK(import.legs == 2);
  CHECK(import.off_sheet == 3);
  CHECK(import.off_sheet_names == std::vector<std::string>{"Far", "Other side"});
  CHECK(document.marks.at(1).name == "Round 1");
  CHECK(check_document(document).ok());
}

TEST_CASE("names that are taken are passed over; a full table is told") {
  Document document = sheet();
  MarksAndLines all;
  all.marks = {mark_at("Mark 1", 44, -31), mark_at("", 44.01, -31)};
  import_into(document, all, k_names);
  CHECK(document.marks.at(1).name == "Mark 2");
  MarksAndLines many;
  for (int i = 0; i < 20'000; ++i) many.marks.push_back({.at = {26'400'000 + i % 200, -18'600'000 + i / 200}});
  const Import import = import_into(document, many, k_names);
  CHECK(document.marks.size() == k_most_marks);
  CHECK(import.known == 1);  // the one at the sheet's middle
  CHECK(import.no_room == 1);
  CHECK(check_document(document).ok());
}

TEST_CASE("a new sheet holds all of it, over 180 deg too; what no sheet can hold is refused") {
  MarksAndLines all;
  all.marks = {mark_at("W", -17, 179.8)};
  all.lines = {line_through("", {{-17.1, 179.9}, {-17.2, -179.9}})};
  const Result<Document> made = sheet_of_import(all, k_names, "Reef", Paper::a4_across, {2026, 11, 25});
  REQUIRE(made.ok());
  CHECK(made->sheet.name == "Reef");
  CHECK(made->marks.size() == 3);
  CHECK(made->legs.size() == 1);
  CHECK(check_document(*made).ok());
  all.marks.push_back(mark_at("E", -17, 0));
  CHECK(sheet_of_import(all, k_names, "", Paper::a4_across, {2026, 11, 25}).problem().fault == Fault::sheet_too_wide);
  CHECK(sheet_of_import({}, k_names, "", Paper::a4_across, {2026, 11, 25}).problem().fault == Fault::no_marks_to_fit);
}

TEST_CASE("any sheet's own marks and legs, put on a sheet like it, stand there again") {
  for (int seed = 1; seed <= 40; ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const Document document = random_document(random, 60);
    Document other = document;
    other.marks = {};
    other.legs = {};
    import_into(other, marks_and_lines_of(document), k_names);
    CHECK(other.marks.size() == document.marks.size());
    CHECK(other.legs.size() <= document.legs.size());  // marks on one place are one to a line
    CHECK(check_document(other).ok());
  }
}
