// Files of other programs: what the slip shows of them, how they come on a sheet, and what goes out.
#include <algorithm>

#include "core/formats/document_text.h"
#include "core/formats/marks_and_lines.h"
#include "shell/words_of_files.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

const Value k_sheet = Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}, {"name", "Gull/Sound"}});

MarksAndLines some() {
  MarksAndLines all;
  all.marks = {{.name = "Rock", .at = quantise({44.01, -31.01})}, {.name = "Far", .at = quantise({50, -31})}};
  FileLine track{.origin = LineOrigin::track, .name = "Home", .points_there = 100'000, .within_m = 19.2};
  for (int i = 0; i < 3; ++i) track.points.push_back({quantise({44 + i * 0.01, -31})});
  all.lines = {track};
  all.left_out = {{LeftOutWhy::area, 12, "Bay"}};
  all.left_out_count = 5;
  all.departure = Departure{4, "ele"};
  return all;
}

/// A page on which such a file was chosen and read.
void choose(Visit& visit, const Result<MarksAndLines>& read) {
  REQUIRE(visit.app.file_chosen("home.gpx", 1'000, "<?xml") == FileRoad::exchange);
  visit.app.file_read(to_bytes(read));
}

std::string words_in(const Panel& panel) {
  std::string all;
  for (const PanelItem& item : panel.items) {
    if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + "\n";
    if (const auto* caution = std::get_if<CautionItem>(&item)) all += "! " + caution->text + ": " + caution->advice + "\n";
    if (const auto* table = std::get_if<TableItem>(&item))
      for (const auto& row : table->rows) all += row[0] + " | " + row[1] + " | " + row[2] + "\n";
  }
  return all;
}

const ButtonItem* button(const Panel& panel, const std::string& name) {
  for (const PanelItem& item : panel.items)
    if (const auto* found = std::get_if<ButtonItem>(&item); found && found->name == name) return found;
  return nullptr;
}

}  // namespace

TEST_CASE("which road a chosen file goes shows in its first bytes") {
  FakeStore store;
  Visit visit(store);
  CHECK(visit.app.file_chosen("a.fogsheet", 10, "x") == FileRoad::sheet);
  CHECK(visit.app.file_chosen("a.fogsheet", 10, " <?xml") == FileRoad::exchange);  // whatever its name
  CHECK(visit.app.file_chosen("a.fogsheet", 41e6, "1:") == FileRoad::none);
  CHECK(words_in(*visit.panel("file")) == "! This file can't be used: This file is too long: 41 MB, at most 40 MB.\n");
  CHECK(visit.app.file_chosen("note.txt", 10, "\n 1:AbC") == FileRoad::sheet);
  CHECK(visit.app.file_chosen("note.txt", 10, "https://example.org/sheet/#1:AbC") == FileRoad::sheet);
  CHECK(visit.app.file_chosen("a.csv", 10, "name,lat,lon") == FileRoad::exchange);
  CHECK(visit.app.file_chosen("a.csv", 10, "") == FileRoad::exchange);
  CHECK(visit.app.file_chosen("a.gpx", 65e6, "<gpx") == FileRoad::none);
  REQUIRE(visit.panel("file"));
  CHECK(words_in(*visit.panel("file")) == "! This file can't be used: This file is too long: 65 MB, at most 64 MB.\n");
}

TEST_CASE("the slip shows what a file holds, and one press puts it on the sheet as one step") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  REQUIRE(visit.app.file_chosen("home.gpx", 1'000, "<gpx") == FileRoad::exchange);
  REQUIRE(visit.panel("file"));
  CHECK(words_in(*visit.panel("file")) == "It is being read.\n");
  visit.app.file_read(to_bytes(some()));
  const Panel slip = *visit.panel("file");
  CHECK(words_in(slip) ==
        "2 marks\n1 track through 100 000 points, thinned to 3: none left out lies farther than 20 m from the line\n"
        "Not quite as its format has it (line 4, “ele”): read all the same.\n"
        "4 marks and 2 legs would come on this sheet. 1 place lies off it: “Far”.\nBay | an area: sheets have none | 12\nAnd 4 more.\n");
  visit.done("import-marks");
  CHECK(!visit.panel("file"));
  CHECK(visit.margin().find("4 marks and 2 legs have come on the sheet.") != std::string::npos);
  Value read = visit.app.read();
  CHECK(read["marks"].items()->size() == 4);
  CHECK(read["legs"].items()->size() == 2);
  CHECK(read["history"]["undo_label"] == Value("put in what home.gpx holds"));
  visit.done("undo");
  CHECK(visit.app.read()["marks"].items()->empty());
  CHECK(visit.app.command("import-marks", Value()).has("error"));
}

TEST_CASE("a new sheet of them lies beside the one in hand") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  MarksAndLines all = some();
  choose(visit, all);
  CHECK(button(*visit.panel("file"), "import-as-sheet")->enabled == false);  // from 44 to 50 degrees is too much for A4
  all.marks.pop_back();
  choose(visit, all);
  CHECK(button(*visit.panel("file"), "import-as-sheet")->enabled);
  visit.done("import-as-sheet");
  const Value read = visit.app.read();
  CHECK(read["sheet"]["name"] == Value("home"));
  CHECK(read["marks"].items()->size() == 4);
  CHECK(read["history"]["drawer"].items()->size() == 3);
  CHECK(!visit.panel("file"));
}

TEST_CASE("a file that can't be used says why where it was chosen, and changes nothing") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  const Value before = visit.app.read()["marks"];
  choose(visit, Problem{.fault = Fault::file_broken, .texts = {"XML"}, .numbers = {12}});
  CHECK(words_in(*visit.panel("file")) == "! This file can't be used: The file is broken: it can't be read as XML past line 12.\n");
  CHECK(!button(*visit.panel("file"), "import-marks"));
  for (const auto& reason : {std::pair{-1, "while you are online"}, {-2, "took more than 60 seconds"}, {-3, "choose it again"}, {-4, "too little memory"}}) {
    CAPTURE(reason.first);
    visit.app.file_chosen("a.gpx", 10, "<");
    visit.app.file_not_read(reason.first, 60);
    CHECK(words_in(*visit.panel("file")).find(reason.second) != std::string::npos);
  }
  visit.app.file_chosen("a.gpx", 10, "<");
  visit.app.file_read(std::vector<std::uint8_t>{7, 7, 7});
  CHECK(words_in(*visit.panel("file")).find("! ") == 0);
  MarksAndLines cut = some();
  cut.broken_past = 1'234;
  choose(visit, cut);
  CHECK(words_in(*visit.panel("file")).find("! The file is cut short, or broken: It can't be read past line 1 234: this is what stands before. The rest is only where the file came from.\n2 marks") == 0);
  CHECK(button(*visit.panel("file"), "import-marks")->enabled);
  choose(visit, MarksAndLines{});
  CHECK(words_in(*visit.panel("file")) == "No mark and no line that can be used.\n");
  visit.done("put-file-away");
  CHECK(!visit.panel("file"));
  visit.app.file_read(to_bytes(some()));  // comes too late
  CHECK(!visit.panel("file"));
  CHECK(visit.app.read()["marks"] == before);
}

TEST_CASE("while a long file is read the sheet can be used, and reading it can be stopped") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  const Value rock = visit.done("add-mark", Value::object({{"name", "Rock"}, {"lat_deg", 44}, {"lon_deg", -31}}))["id"];
  REQUIRE(visit.app.file_chosen("home.gpx", 38e6, "<gpx") == FileRoad::exchange);
  CHECK(words_in(*visit.panel("file")) == "It is being read, 38 MB: the sheet can be used meanwhile.\n");
  CHECK(button(*visit.panel("file"), "put-file-away")->label == "Stop");
  const Value before = visit.app.read()["marks"];
  visit.done("put-file-away");
  CHECK(visit.platform.files_stopped == 1);
  CHECK(!visit.panel("file"));
  CHECK(visit.app.read()["marks"] == before);
  visit.app.file_chosen("home.gpx", 38e6, "<gpx");
  visit.done("close-slip");  // by its cross, or Esc: no reading goes on unseen
  CHECK(visit.platform.files_stopped == 2);
  visit.app.file_read(to_bytes(some()));
  CHECK(!visit.panel("file"));

  // Who has gone on to something else keeps that; the file waits in the drawer.
  visit.app.file_chosen("home.gpx", 38e6, "<gpx");
  visit.done("select-mark", Value::object({{"id", rock}}));
  REQUIRE(visit.panel("mark"));
  visit.app.file_read(to_bytes(some()));
  CHECK(visit.panel("mark"));
  CHECK(visit.margin().find("“home.gpx” has been read: what it holds is in the drawer.") != std::string::npos);
  visit.done("open-slip", Value::object({{"slip", "drawer"}}));
  const Panel drawer = *visit.panel("drawer");
  CHECK(std::any_of(drawer.items.begin(), drawer.items.end(), [](const PanelItem& item) { const auto* line = std::get_if<LineItem>(&item); return line && line->text == "“home.gpx” has been read."; }));
  visit.done("show-file");
  CHECK(button(*visit.panel("file"), "import-marks"));
  visit.done("put-file-away");
  CHECK(visit.platform.files_stopped == 2);  // it had been read
  CHECK(visit.app.command("show-file", Value()).has("error"));
  // With nothing else open it comes back by itself.
  visit.app.file_chosen("home.gpx", 38e6, "<gpx");
  visit.done("select-mark", Value::object({{"id", rock}}));
  visit.done("close-slip");
  visit.app.file_not_read(-2, 60);
  CHECK(visit.panel("file"));
}

TEST_CASE("of files that come together one is taken, and the others are told of") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  visit.app.file_chosen("a.gpx", 10, "<gpx", 2);
  visit.app.file_read(to_bytes(MarksAndLines{}));
  CHECK(words_in(*visit.panel("file")) == "One file is read at a time: 2 others were left.\nNo mark and no line that can be used.\n");
  // The next one takes its place, a picture too.
  visit.app.file_chosen("b.gpx", 10, "<gpx");
  CHECK(words_in(*visit.panel("file")) == "It is being read.\n");
  visit.app.file_chosen("chart.jpg", 10, "\xFF\xD8\xFF\xE0", 1);
  CHECK(!visit.panel("file"));
  CHECK(visit.margin().find("1 other was left.") != std::string::npos);
  const std::string sheet = visit.app.link();
  CHECK(visit.app.file_chosen("c.fogsheet", 100, "1:", 1) == FileRoad::sheet);
  visit.app.file_opened(sheet.substr(sheet.find('#') + 1));
  CHECK(!visit.panel("file"));
  CHECK(visit.margin().find("1 other was left.") != std::string::npos);
}

TEST_CASE("a file in hand is not there after a reload, nor its slip") {
  FakeStore store;
  Visit first(store);
  first.done("new-sheet", k_sheet);
  choose(first, some());
  first.leave();
  Visit second(store);
  CHECK(!second.panel("file"));
  CHECK(second.app.command("open-slip", Value::object({{"slip", "file"}})).has("error"));
}

TEST_CASE("a sheet goes out under its name, in each format") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  visit.done("add-mark", Value::object({{"name", "Rock"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  for (const char* format : {"gpx", "geojson", "csv", "fogsheet"}) visit.done("save-as", Value::object({{"format", format}}));
  CHECK(visit.platform.saved_files.contains("Gull-Sound.fogsheet"));
  REQUIRE(visit.platform.saved_for_others.size() == 3);
  const auto& [format, bytes] = visit.platform.saved_for_others.at("Gull-Sound.gpx");
  CHECK(format == "gpx");
  CHECK(marks_and_lines_from(bytes)->marks.at(0).name == "Rock");
  CHECK(visit.app.command("save-as", Value::object({{"format", "pdf"}})).has("error"));
  CHECK(visit.app.command("save-as", Value()).has("error"));
  visit.app.file_not_saved(-1, 60);
  CHECK(visit.margin().find("while you are online") != std::string::npos);
  visit.app.file_not_saved(-4, 60);
  CHECK(visit.margin().substr(0, 2) == "! ");
}
