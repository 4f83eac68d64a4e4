// Several sheets, each with a past of its own: laying one down, going back from it, and what is thrown away.
#include "shell/sheets.h"

#include "doctest/doctest.h"

#include "core/document/actions.h"

using namespace fogsheet;

namespace {

constexpr std::int64_t k_noon_ms = 1'795'608'000'000;

Document sheet_named(const char* name) {
  return made_sheet({.name = name, .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 11, 25}}).value();
}

void mark(Sheets& sheets, const char* name) {
  REQUIRE(add_mark(sheets.in_hand().history, {.name = name, .lat_deg = 44, .lon_deg = -31}));
  sheets.tidy();
}

std::string name_in_hand(const Sheets& sheets) { return sheets.in_hand().history.now().sheet.name; }

}  // namespace

TEST_CASE("undo at the bottom of a new sheet's past goes to the sheet it was laid over, redo to it again") {
  Sheets sheets(sheet_named("first"), k_noon_ms);
  CHECK(sheets.undo_label() == nullptr);
  CHECK_FALSE(sheets.undo());
  mark(sheets, "A");
  const SheetKey first = sheets.in_hand().key;
  const SheetKey second = sheets.lay_down(sheet_named("second"), {Act::new_sheet, "second"}, k_noon_ms);
  CHECK(second > first);
  CHECK(*sheets.undo_label() == Label{Act::new_sheet, "second"});
  mark(sheets, "B");
  CHECK(*sheets.undo_label() == Label{Act::add_mark, "B"});

  CHECK(sheets.undo());
  CHECK(sheets.in_hand().key == second);
  CHECK(sheets.undo());
  CHECK(sheets.in_hand().key == first);
  CHECK(*sheets.undo_label() == Label{Act::add_mark, "A"});
  CHECK(*sheets.redo_label() == Label{Act::new_sheet, "second"});

  // Steps of the first sheet undone and redone lie between.
  CHECK(sheets.undo());
  CHECK(*sheets.redo_label() == Label{Act::add_mark, "A"});
  CHECK(sheets.redo());
  CHECK(*sheets.redo_label() == Label{Act::new_sheet, "second"});
  CHECK(sheets.redo());
  CHECK(sheets.in_hand().key == second);
  CHECK(sheets.redo());
  CHECK(sheets.in_hand().history.now().marks.at(0).name == "B");
  CHECK(sheets.redo_label() == nullptr);
  CHECK_FALSE(sheets.redo());
}

TEST_CASE("a new sheet that was undone can't be redone once the one beneath is changed") {
  Sheets sheets(sheet_named("first"), k_noon_ms);
  const SheetKey empty = sheets.lay_down(sheet_named("empty"), {Act::new_sheet, "empty"}, k_noon_ms);
  CHECK(sheets.shown().size() == 2);
  CHECK(sheets.undo());
  CHECK(sheets.shown().size() == 1);  // undone with nothing on it
  CHECK(sheets.find(empty));
  mark(sheets, "A");
  CHECK(sheets.redo_label() == nullptr);
  CHECK_FALSE(sheets.redo());
  CHECK_FALSE(sheets.find(empty));
}

TEST_CASE("a sheet with something on it stays when it is undone") {
  Sheets sheets(sheet_named("first"), k_noon_ms);
  Document full = sheet_named("full");
  History on_it(full);
  REQUIRE(add_mark(on_it, {.name = "A", .lat_deg = 44, .lon_deg = -31}));
  const SheetKey opened = sheets.lay_down(on_it.now(), {Act::open_sheet, "full"}, k_noon_ms);
  CHECK(sheets.undo());
  CHECK(sheets.shown().size() == 2);
  mark(sheets, "B");
  sheets.lay_down(sheet_named("third"), {Act::new_sheet, "third"}, k_noon_ms);
  CHECK(sheets.shown().size() == 3);
  REQUIRE(sheets.take(opened));
  CHECK(name_in_hand(sheets) == "full");
  CHECK(*sheets.undo_label() == Label{Act::open_sheet, "full"});
}

TEST_CASE("a sheet laid where another was undone takes its place, though steps could be redone there") {
  Sheets sheets(sheet_named("first"), k_noon_ms);
  mark(sheets, "A");
  CHECK(sheets.undo());
  const SheetKey one = sheets.lay_down(sheet_named("one"), {Act::new_sheet, "one"}, k_noon_ms);
  CHECK(sheets.undo());
  CHECK(*sheets.redo_label() == Label{Act::new_sheet, "one"});
  sheets.lay_down(sheet_named("two"), {Act::new_sheet, "two"}, k_noon_ms);
  CHECK_FALSE(sheets.find(one));
  CHECK(sheets.undo());
  CHECK(*sheets.redo_label() == Label{Act::new_sheet, "two"});
  CHECK(sheets.redo());
  CHECK(name_in_hand(sheets) == "two");
}

TEST_CASE("revisions are never shared by two sheets in hand") {
  Sheets sheets(sheet_named("first"), k_noon_ms);
  const SheetKey first = sheets.in_hand().key;
  std::uint64_t last = sheets.in_hand().history.revision();
  const auto grown = [&] { return std::exchange(last, sheets.in_hand().history.revision()) < sheets.in_hand().history.revision(); };
  mark(sheets, "A");
  CHECK(grown());
  const SheetKey second = sheets.lay_down(sheet_named("second"), {Act::new_sheet, "second"}, k_noon_ms - 10'000);  // the clock was set back
  CHECK(second > first);
  CHECK(grown());
  CHECK(sheets.take(first));
  CHECK(grown());
  mark(sheets, "B");
  CHECK(grown());
  CHECK(sheets.take(second));
  CHECK(grown());
  CHECK(sheets.undo());
  CHECK(grown());
  CHECK(sheets.redo());
  CHECK(grown());
  CHECK_FALSE(sheets.take(SheetKey{1}));
}
