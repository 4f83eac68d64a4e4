// What is typed into fields: it becomes part of the sheet, or stays as typed with its reason beside it.
#include <string>

#include "doctest/doctest.h"
#include "shell/app.h"
#include "tests/shell/fake_platform.h"

using namespace fogsheet;

namespace {

struct Desk {
  FakePlatform platform;
  App app{platform};

  Desk() {
    app.set_viewport({.width_px = 1180, .height_px = 742});
    ask("new-sheet", {{"mid_lat_deg", 44.1667}, {"mid_lon_deg", -31.3333}, {"scale", 100000}, {"paper", "A4-across"}});
  }
  Value ask(const char* name, Value::Members arguments = {}) { return app.command(name, Value::object(std::move(arguments))); }
  std::string added(const char* name, double lat_deg, double lon_deg) {
    return *ask("add-mark", {{"name", name}, {"lat_deg", lat_deg}, {"lon_deg", lon_deg}})["id"].text();
  }
  Value type_mark(const std::string& id, const char* field, const std::string& text) { return ask("type-mark", {{"id", id}, {"field", field}, {"text", text}}); }
  Value type_sheet(const char* field, const std::string& text) { return ask("type-sheet", {{"field", field}, {"text", text}}); }
  const FieldItem& field(const char* panel, const char* name) {
    panels = app.panels();
    for (const Panel& each : panels)
      if (each.name == panel)
        for (const PanelItem& item : each.items)
          if (const auto* found = std::get_if<FieldItem>(&item); found && found->name == name) return *found;
    FAIL("no field " << name);
    std::abort();
  }
  Value mark(std::size_t i) { return (*app.read()["marks"].items())[i]; }
  std::size_t marks() { return app.read()["marks"].items()->size(); }
  std::string undo_label() {
    const Value read = app.read();
    const std::string* label = read["history"]["undo_label"].text();
    return label ? *label : "";
  }
  std::vector<Panel> panels;
};

bool is_done(const Value& answer) { return answer["ok"].flag() != nullptr; }

}  // namespace

TEST_CASE("a mark's parts are typed one by one, each a step of its own") {
  Desk desk;
  const std::string id = desk.added("Gull Rock", 44.17, -31.33);
  desk.ask("select-mark", {{"id", id}});
  CHECK(is_done(desk.type_mark(id, "name", "Gannet Rock")));
  CHECK(is_done(desk.type_mark(id, "position", "44 11.5 N 031 18.25 W")));
  CHECK(is_done(desk.type_mark(id, "height", "23,5")));
  CHECK(is_done(desk.type_mark(id, "note", "white band")));
  const Value mark = desk.mark(0);
  CHECK(*mark["name"].text() == "Gannet Rock");
  CHECK(std::abs(*mark["lat_deg"].number() - (44 + 11.5 / 60)) < 1e-9);
  CHECK(std::abs(*mark["lon_deg"].number() + (31 + 18.25 / 60)) < 1e-9);
  CHECK(*mark["height_m"].number() == 23.5);
  CHECK(*mark["note"].text() == "white band");
  CHECK(desk.field("mark", "height").text == "23.5");
  for (int i = 0; i < 4; ++i) CHECK(is_done(desk.ask("undo")));
  CHECK(*desk.mark(0)["name"].text() == "Gull Rock");
}

TEST_CASE("a wrong entry shows its reason in place, keeps what was typed and leaves the mark where it was") {
  Desk desk;
  const std::string id = desk.added("Gull Rock", 44.17, -31.33);
  desk.ask("select-mark", {{"id", id}});
  const Value before = desk.mark(0);
  struct Case {
    const char* field;
    std::string text;
    const char* reason;
  };
  const Case cases[] = {
      {"position", "44 10.09 N 031 77.13 W", "Minutes are under 60: 77.13"},
      {"position", "76 10.0 N 031 17.0 W", "75"},
      {"position", "44 10.0 N 181 17.0 W", "180"},
      {"position", "44 10.0 N S 031 17.0 W", "two of hemisphere"},
      {"position", "45 30.0 N 031 17.0 W", "lies off this sheet"},
      {"name", "  ", "name is needed"},
      {"name", std::string(10'000, 'x'), "10000 characters"},
      {"height", "tall", "no meaning"},
      {"height", "9001", "The height 9001 m is out of range: from 0 to 9000 m."},
      {"note", std::string(1'001, 'x'), "1001 characters"},
  };
  for (const Case& each : cases) {
    CAPTURE(each.text.substr(0, 40));
    const Value answer = desk.type_mark(id, each.field, each.text);
    REQUIRE(answer["error"].text());
    CHECK(answer["error"].text()->find(each.reason) != std::string::npos);
    const FieldItem& field = desk.field("mark", each.field);
    CHECK(field.text == each.text);
    CHECK(field.error == *answer["error"].text());
    CHECK(desk.mark(0) == before);
    // Mended, the reason goes.
  }
  CHECK(is_done(desk.type_mark(id, "position", "44 10.09 N 031 17.13 W")));
  CHECK(desk.field("mark", "position").error.empty());
}

TEST_CASE("a danger waits for its radius, and is one as soon as that is typed") {
  Desk desk;
  const std::string id = desk.added("Ledge", 44.17, -31.33);
  desk.ask("select-mark", {{"id", id}});
  CHECK(is_done(desk.type_mark(id, "kind", "danger")));
  CHECK(*desk.mark(0)["kind"].text() == "landmark");
  CHECK_FALSE(desk.field("mark", "radius").error.empty());
  CHECK(desk.type_mark(id, "radius", "61")["error"].text());
  CHECK(is_done(desk.type_mark(id, "radius", "2 cables")));
  CHECK(*desk.mark(0)["kind"].text() == "danger");
  CHECK(std::abs(*desk.mark(0)["radius_nm"].number() - 0.2) < 1e-9);
}

TEST_CASE("marks are put in by position, by bearing and distance, and by two lines") {
  Desk desk;
  const auto fill = [&](const char* field, const std::string& text) { CHECK(is_done(desk.ask("fill-new-mark", {{"field", field}, {"text", text}}))); };
  desk.ask("open-slip", {{"slip", "new-mark"}});
  fill("name", "Gull Rock");
  fill("position", "44 10 N 031 20 W");
  const std::string first = *desk.ask("make-new-mark")["id"].text();
  CHECK(desk.field("new-mark", "name").text.empty());

  fill("how", "bearing");
  fill("from", first);
  fill("bearing", "090T");
  fill("distance", "2.5");
  fill("name", "Ledge");
  const std::string second = *desk.ask("make-new-mark")["id"].text();
  // A minute of longitude at 44 deg 10 min is 1333.0 m: N cos(lat) pi/10800, with N = a / sqrt(1 - e2 sin2(lat)) of WGS84.
  CHECK(std::abs(*desk.mark(1)["lon_deg"].number() - (-31.33333 + 2.5 / 0.71978 / 60)) < 2e-5);

  fill("how", "crossing");
  fill("from", first);
  fill("bearing", "045");
  fill("second", second);
  fill("second-bearing", "315");
  CHECK(is_done(desk.ask("make-new-mark")));
  CHECK(*desk.mark(2)["name"].text() == "Mark 1");
  CHECK(std::abs(*desk.mark(2)["lon_deg"].number() - (*desk.mark(0)["lon_deg"].number() + *desk.mark(1)["lon_deg"].number()) / 2) < 1e-4);
}

TEST_CASE("a form keeps all that was typed, and says at each field what is wrong") {
  Desk desk;
  const auto fill = [&](const char* field, const std::string& text) { desk.ask("fill-new-mark", {{"field", field}, {"text", text}}); };
  desk.ask("open-slip", {{"slip", "new-mark"}});
  fill("how", "bearing");
  fill("bearing", "360");
  fill("distance", "far");
  fill("name", "Ledge");
  CHECK(desk.ask("make-new-mark")["error"].text());
  CHECK(desk.field("new-mark", "bearing").text == "360");
  CHECK(desk.field("new-mark", "bearing").error.find("360") != std::string::npos);
  CHECK_FALSE(desk.field("new-mark", "distance").error.empty());
  CHECK(desk.field("new-mark", "name").text == "Ledge");
  CHECK(desk.marks() == 0);

  fill("how", "position");
  fill("position", "44 10 N 031 20 W");
  CHECK(is_done(desk.ask("make-new-mark")));
  fill("name", "Ledge");
  fill("position", "44 10 N 031 20 W");
  CHECK(desk.ask("make-new-mark")["error"].text());
  CHECK(desk.field("new-mark", "name").error.find("already") != std::string::npos);
}

TEST_CASE("the sheet is changed by typing, and keeps what can't be taken") {
  Desk desk;
  desk.added("Gull Rock", 44.23, -31.33);
  desk.ask("open-slip", {{"slip", "sheet"}});
  CHECK(is_done(desk.type_sheet("name", "The Sound")));
  CHECK(is_done(desk.type_sheet("note", "from the 2024 chart")));
  CHECK(is_done(desk.type_sheet("date", "2027-05-01")));
  CHECK(is_done(desk.type_sheet("scale", "1:120 000")));
  const Value sheet = desk.app.read()["sheet"];
  CHECK(*sheet["name"].text() == "The Sound");
  CHECK(*sheet["note"].text() == "from the 2024 chart");
  CHECK(*sheet["date"].text() == "2027-05-01");
  CHECK(*sheet["scale"].number() == 120000);
  struct Case {
    const char* field;
    const char* text;
    const char* reason;
  };
  for (const Case& each : {Case{"date", "1 May", "write year, month and day"}, Case{"date", "2101-01-01", "2100"}, Case{"scale", "1:24 000", "25000"}, Case{"scale", "1:25 000", "would lie off the sheet"},
                           Case{"middle", "44 N", "longitude"}, Case{"datum", " ", "name"}}) {
    CAPTURE(each.text);
    const Value answer = desk.type_sheet(each.field, each.text);
    REQUIRE(answer["error"].text());
    CHECK(answer["error"].text()->find(each.reason) != std::string::npos);
    CHECK(desk.app.read()["sheet"] == sheet);
    if (std::string(each.field) != "datum") CHECK(desk.field("sheet", each.field).text == std::string(each.text));
  }
}

TEST_CASE("a chart's note is set once its fields can be read, and cleared by choosing the model") {
  Desk desk;
  desk.ask("open-slip", {{"slip", "sheet"}});
  const auto type = [&](const char* field, const char* text) { return desk.ask("type-variation", {{"field", field}, {"text", text}}); };
  CHECK(is_done(type("variation-by", "printed")));
  CHECK(is_done(type("variation", "9\xC2\xB0" "15'W")));
  CHECK(type("variation-year", "1850")["error"].text());
  CHECK(desk.field("sheet", "variation-year").text == "1850");
  CHECK(is_done(type("annual-change", "12'E")));
  CHECK_FALSE(desk.app.read()["variation"].has("printed"));
  CHECK(is_done(type("variation-year", "2024")));
  const Value printed = desk.app.read()["variation"]["printed"];
  CHECK(std::abs(*printed["value_deg"].number() + 9.25) < 1e-9);
  CHECK(*printed["year"].number() == 2024);
  CHECK(*printed["annual_change_min"].number() == 12);
  CHECK(desk.field("sheet", "annual-change").text == "12\xE2\x80\xB2" "E");
  CHECK(is_done(type("annual-change", "")));
  CHECK(*desk.app.read()["variation"]["printed"]["annual_change_min"].number() == 0);
  CHECK(is_done(type("variation-by", "model")));
  CHECK_FALSE(desk.app.read()["variation"].has("printed"));
}

TEST_CASE("a new sheet is made from middle and scale, from two corners, and from the marks at hand") {
  Desk desk;
  const auto fill = [&](const char* field, const char* text) { CHECK(is_done(desk.ask("fill-new-sheet", {{"field", field}, {"text", text}}))); };
  desk.ask("open-slip", {{"slip", "new-sheet"}});
  fill("middle", "51 30 N 4 10 W");
  fill("scale", "other");
  fill("other-scale", "1:75 000");
  fill("name", "Home water");
  fill("variation-by", "printed");
  fill("variation", "2.5W");
  fill("variation-year", "2022");
  fill("datum", "unknown");
  fill("note", "for practice");
  CHECK(is_done(desk.ask("make-new-sheet")));
  Value read = desk.app.read();
  CHECK(*read["sheet"]["name"].text() == "Home water");
  CHECK(*read["sheet"]["scale"].number() == 75000);
  CHECK(*read["sheet"]["datum"].text() == "unknown");
  CHECK(*read["variation"]["source"].text() == "printed");
  CHECK(desk.undo_label() == "new sheet");

  const std::string a = desk.added("A", 51.5, -4.2);
  const std::string b = desk.added("B", 51.52, -4.1);
  CHECK(is_done(desk.ask("add-leg", {{"from", a}, {"to", b}})));
  fill("how", "marks");
  CHECK(is_done(desk.ask("make-new-sheet")));
  read = desk.app.read();
  CHECK(read["marks"].items()->size() == 2);
  CHECK(read["legs"].items()->size() == 1);
  CHECK(*read["sheet"]["scale"].number() < 75000);
  CHECK(is_done(desk.ask("undo")));
  CHECK(*desk.app.read()["sheet"]["name"].text() == "Home water");

  fill("how", "corners");
  fill("corner-a", "17 00 S 179 50 E");
  fill("corner-b", "17 05 S 179 50 W");
  CHECK(is_done(desk.ask("make-new-sheet")));
  CHECK(std::abs(std::abs(*desk.app.read()["sheet"]["mid_lon_deg"].number()) - 180) < 1e-6);
}

TEST_CASE("a new sheet that can't be made says why at the field, and nothing typed is lost") {
  Desk desk;
  const auto fill = [&](const char* field, const char* text) { desk.ask("fill-new-sheet", {{"field", field}, {"text", text}}); };
  desk.ask("open-slip", {{"slip", "new-sheet"}});
  fill("name", "Home water");
  fill("middle", "74 59 N 4 10 W");
  CHECK(desk.ask("make-new-sheet")["error"].text());
  CHECK(desk.field("new-sheet", "middle").error.find("75") != std::string::npos);
  CHECK(desk.field("new-sheet", "name").text == "Home water");
  fill("middle", "51 30 N 4 10 W");
  fill("scale", "other");
  fill("other-scale", "5 000");
  CHECK(desk.ask("make-new-sheet")["error"].text());
  CHECK(desk.field("new-sheet", "other-scale").error.find("25000") != std::string::npos);
  fill("scale", "100000");
  fill("date", "2300-01-01");
  CHECK(desk.ask("make-new-sheet")["error"].text());
  CHECK(desk.field("new-sheet", "date").error.find("2100") != std::string::npos);
}

TEST_CASE("settings are kept on the device") {
  Desk desk;
  CHECK(is_done(desk.ask("set-rounding", {{"rounding", "tenths"}})));
  CHECK(is_done(desk.ask("set-text-size", {{"percent", "125"}})));
  CHECK(is_done(desk.ask("set-lines", {{"lines", "bold"}})));
  CHECK(desk.ask("set-text-size", {{"percent", "90"}})["error"].text());
  CHECK(desk.ask("set-rounding", {{"rounding", "halves"}})["error"].text());
  CHECK(desk.ask("set-lines", {{"lines", "wavy"}})["error"].text());
  CHECK(desk.app.text_percent() == 125);
  App again(desk.platform);
  CHECK(again.text_percent() == 125);
}
