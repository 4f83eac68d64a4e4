// A sheet shaped anew under what is on it, described; its roses and the words written on it.
#include "core/document/sheet_actions.h"

#include "core/document/actions.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

History usual_history() { return History(made_sheet({.mid_lat_deg = 44, .mid_lon_deg = -31, .date = {2026, 7, 1}}).value()); }

}  // namespace

TEST_CASE("a sheet takes another shape and keeps all that is on it") {
  History history = usual_history();
  const MarkId mark = add_mark(history, {.name = "Gull Rock", .lat_deg = 44.02, .lon_deg = -31.02}).value();
  const Document before = history.now();
  REQUIRE(reshape_sheet(history, {.mid_lat_deg = 44.01, .mid_lon_deg = -31.01, .scale = 50'000, .paper = Paper::a3_upright}));
  CHECK(history.now().sheet.scale == 50'000);
  CHECK(history.now().sheet.paper == Paper::a3_upright);
  CHECK(history.now().marks == before.marks);
  CHECK(lies_on_sheet(projection_of(history.now()), history.now().roses.at(0).at));
  CHECK(history.now().roses.at(0).id == before.roses.at(0).id);
  CHECK(history.now().marks.find(mark)->name == "Gull Rock");
  REQUIRE(history.undo());
  CHECK(history.now() == before);
}

TEST_CASE("a shape that would leave marks or notes off the sheet is refused, naming the first three") {
  History history = usual_history();
  for (const char* name : {"A", "B", "C"}) REQUIRE(add_mark(history, {.name = name, .lat_deg = 44.08, .lon_deg = -31.1}));
  REQUIRE(add_text_note(history, 44.07, -31.1, "eddy\nhere"));
  const Document before = history.now();
  const Result<Done> reshaped = reshape_sheet(history, {.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 25'000, .paper = Paper::a4_across});
  REQUIRE_FALSE(reshaped.ok());
  CHECK(reshaped.problem() == Problem{.fault = Fault::things_off_sheet, .texts = {"A", "B", "C"}, .numbers = {4}});
  CHECK(history.now() == before);
  CHECK(reshape_sheet(history, {.mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 24'999}).problem().fault == Fault::number_out_of_range);
  CHECK(reshape_sheet(history, {.mid_lat_deg = 74.99, .mid_lon_deg = -31, .scale = 100'000}).problem().fault == Fault::number_out_of_range);
  CHECK(reshape_sheet(history, {.mid_lat_deg = 76, .mid_lon_deg = -31, .scale = 100'000}).problem().fault == Fault::latitude_out_of_range);
}

TEST_CASE("a sheet is described part by part") {
  History history = usual_history();
  REQUIRE(describe_sheet(history, {.name = " The Sound "}));
  REQUIRE(describe_sheet(history, {.note = "from the 2024 chart\nsoundings left out"}));
  REQUIRE(describe_sheet(history, {.datum = "ED50", .signs = SignSet::b}));
  const Sheet& sheet = history.now().sheet;
  CHECK(sheet.name == "The Sound");
  CHECK(sheet.note == "from the 2024 chart\nsoundings left out");
  CHECK(sheet.datum == "ED50");
  CHECK(sheet.signs == SignSet::b);
  REQUIRE(describe_sheet(history, {.name = ""}));
  CHECK(describe_sheet(history, {.datum = " "}).problem().fault == Fault::name_empty);
  CHECK(describe_sheet(history, {.note = std::string(1'001, 'n')}).problem().fault == Fault::note_too_long);
  CHECK(describe_sheet(history, {.name = std::string(201, 'n')}).problem().fault == Fault::name_too_long);
}

TEST_CASE("roses are added, dragged, sized, set to their own place and rubbed out") {
  History history = usual_history();
  const RoseId rose = add_rose(history, 44.05, -31.1, 35.04).value();
  CHECK(history.now().roses.find(rose)->radius_mm == 35);
  REQUIRE(change_rose(history, rose, {.at = Position{44, -31}}));
  CHECK(history.undo_label()->act == Act::move_rose);
  REQUIRE(change_rose(history, rose, {.radius_mm = 60}));
  REQUIRE(change_rose(history, rose, {.own_place = true}));
  CHECK(history.now().roses.find(rose)->own_place);
  CHECK(change_rose(history, rose, {.radius_mm = 19}).problem().fault == Fault::number_out_of_range);
  CHECK(change_rose(history, rose, {.at = Position{45, -31}}).problem().fault == Fault::place_off_sheet);
  CHECK(change_rose(history, {99}, {}).problem().fault == Fault::rose_unknown);
  CHECK(add_rose(history, 44, -31, 91).problem().fault == Fault::number_out_of_range);
  REQUIRE(remove_rose(history, rose));
  CHECK(remove_rose(history, rose).problem().fault == Fault::rose_unknown);
  for (std::size_t i = 1; i < k_most_roses; ++i) REQUIRE(add_rose(history, 44, -31, 30));
  CHECK(add_rose(history, 44, -31, 30).problem().fault == Fault::table_full);
}

TEST_CASE("words are written on the sheet, moved, changed and rubbed out") {
  History history = usual_history();
  const NoteId note = add_text_note(history, 44.05, -31.1, " eddy here\non the ebb ").value();
  CHECK(history.now().text_notes.find(note)->text == "eddy here\non the ebb");
  CHECK(history.undo_label()->subject == "eddy here");
  REQUIRE(change_text_note(history, note, {.text = "eddy"}));
  REQUIRE(change_text_note(history, note, {.at = Position{44, -31}}));
  CHECK(history.undo_label()->act == Act::move_note);
  CHECK(change_text_note(history, note, {.text = " "}).problem().fault == Fault::note_empty);
  CHECK(change_text_note(history, note, {.at = Position{45, -31}}).problem().fault == Fault::place_off_sheet);
  CHECK(add_text_note(history, 44, -31, std::string(1'001, 'n')).problem().fault == Fault::note_too_long);
  REQUIRE(remove_text_note(history, note));
  CHECK(remove_text_note(history, note).problem().fault == Fault::note_unknown);
  CHECK(change_text_note(history, note, {}).problem().fault == Fault::note_unknown);
}
