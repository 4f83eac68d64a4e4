// Passages on the page: made of the legs that are drawn, entered field by field, read off the card, printed, undone, kept.
#include "core/document/actions.h"
#include "core/formats/document_text.h"
#include "doctest/doctest.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

Value typed(const std::string& field, const std::string& text) { return Value::object({{"field", field}, {"text", text}}); }

void type(Visit& visit, const std::string& field, const std::string& text) { visit.done("type-passage", typed(field, text)); }

const FieldItem* field(Visit& visit, const std::string& slip, const std::string& name) {
  const Panel* panel = visit.panel(slip);
  REQUIRE(panel);
  for (const PanelItem& item : panel->items)
    if (const auto* each = std::get_if<FieldItem>(&item); each && each->name == name) return each;
  return nullptr;
}

std::vector<std::string> cautions(const Panel* panel) {
  std::vector<std::string> all;
  if (!panel) return all;
  for (const PanelItem& item : panel->items)
    if (const auto* caution = std::get_if<CautionItem>(&item)) all.push_back(caution->text);
  return all;
}

bool has(const std::vector<std::string>& texts, const std::string& part) {
  return std::any_of(texts.begin(), texts.end(), [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

// The demo's three legs as a passage at 5 kn from 0640, in a stream of 352 0.7.
void plan_demo(Visit& visit) {
  visit.done("make-passage");
  type(visit, "speed", "5");
  type(visit, "time", "0640");
  type(visit, "zone", "UTC+1");
  type(visit, "stream/kind", "steady");
  type(visit, "stream/set", "352");
  type(visit, "stream/drift", "0.7");
}

std::string page_text(Visit& visit, const std::string& name) {
  const Panel* panel = visit.panel(name);
  REQUIRE(panel);
  std::string all;
  for (const PanelItem& item : panel->items) {
    if (const auto* heading = std::get_if<HeadingItem>(&item)) all += heading->text + "\n" + heading->beside + "\n";
    if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + " " + line->value + "\n";
    if (const auto* table = std::get_if<TableItem>(&item)) {
      all += table->caption + "\n";
      for (const std::vector<std::string>& row : table->rows)
        for (const std::string& cell : row) all += cell + "\n";
    }
  }
  return all;
}

}  // namespace

TEST_CASE("without a passage its slip offers to make one, where there are legs") {
  FakeStore store;
  Visit visit(store);
  visit.done("open-slip", Value::object({{"slip", "passage"}}));
  CHECK(visit.panel("passage"));
  CHECK(visit.app.read()["passage"]["legs"].is_null());
  visit.done("make-passage");
  CHECK(visit.panel("passage-details"));
  const Value passage = visit.app.read()["passage"];
  CHECK(passage["legs"].items()->size() == visit.app.read()["legs"].items()->size());
  CHECK(visit.app.command("type-passage", typed("speed", "fast")).has("error"));
  visit.done("undo");
  CHECK(visit.app.command("type-passage", typed("speed", "5")).has("error"));  // there is none
}

TEST_CASE("speed, time and stream make courses, times and windows; undo takes each back") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  visit.done("close-slip");
  const Value leg = visit.app.read()["passage"]["legs"][std::size_t{1}];
  CHECK(*leg["stream"]["set_deg"].number() == 352);
  CHECK(*leg["speed_kn"].number() == 5);
  CHECK(leg["shown"]["sum"].text()->find("stream") != std::string::npos);
  CHECK(leg["shown"]["expect"].text()->size() == 4);
  const TableItem* table = visit.table("passage", "passage-legs");
  REQUIRE(table);
  REQUIRE(table->rows.size() == visit.app.read()["legs"].items()->size());
  CHECK(table->rows[1][0] == leg["shown"]["hold"].text()->substr(0, 3) + "°\nmagnetic");
  CHECK(table->rows[1][2].rfind(*leg["shown"]["expect"].text(), 0) == 0);
  visit.done("undo");
  CHECK(*visit.app.read()["passage"]["legs"][std::size_t{1}]["stream"]["drift_kn"].number() == 0);
  while (visit.app.read()["passage"].has("legs")) visit.done("undo");
  CHECK(visit.app.read()["legs"].items()->size() == 3);
  CHECK(!visit.app.read()["passage"].has("legs"));
}

TEST_CASE("a passage of a day in summer keeps summer's clock, whenever it is planned") {
  FakeStore store;
  Visit visit(store);
  visit.platform.summer_ends_ms = 1'792'890'000'000;  // 2026-10-25 01:00 UTC, a month ago
  visit.done("set-date", Value::object({{"date", "2026-06-20"}}));
  visit.done("make-passage");
  CHECK(field(visit, "passage-details", "zone")->text == "UTC+2");
}

TEST_CASE("with a card what is held is by compass, and read() agrees with the table") {
  FakeStore store;
  Visit visit(store);
  visit.done("use-no-deviation");
  plan_demo(visit);
  visit.done("close-slip");
  const Value leg = visit.app.read()["passage"]["legs"][std::size_t{0}];
  CHECK(leg["shown"]["hold"].text()->find("°C") != std::string::npos);
  CHECK(visit.table("passage", "passage-legs")->rows[0][0].find("°\ncompass") == 3);
}

TEST_CASE("a mark that is moved changes the card") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  const Value before = visit.app.read()["passage"]["legs"][std::size_t{0}];
  const Value mark = visit.app.read()["marks"][std::size_t{0}];
  const Value middle = visit.app.read()["legs"][std::size_t{0}]["to"];
  visit.done("move-mark", Value::object({{"id", *middle.text()}, {"lat_deg", *mark["lat_deg"].number() + 0.01}, {"lon_deg", *mark["lon_deg"].number() + 0.01}}));
  const Value after = visit.app.read()["passage"]["legs"][std::size_t{0}];
  CHECK(*after["distance_nm"].number() != *before["distance_nm"].number());
  CHECK(*after["arrival"].text() != *before["arrival"].text());
}

TEST_CASE("what can't be taken stays in its field with the reason, over a reload") {
  FakeStore store;
  {
    Visit visit(store);
    plan_demo(visit);
    visit.app.command("type-passage", typed("speed", "0"));
    REQUIRE(field(visit, "passage-details", "speed"));
    CHECK(field(visit, "passage-details", "speed")->text == "0");
    CHECK(!field(visit, "passage-details", "speed")->error.empty());
    visit.app.command("type-passage", typed("speed", "-4"));
    CHECK(field(visit, "passage-details", "speed")->text == "-4");
    visit.app.command("type-passage", typed("stream/set", "400"));
    CHECK(!field(visit, "passage-details", "stream/set")->error.empty());
    CHECK(*visit.app.read()["passage"]["legs"][std::size_t{0}]["speed_kn"].number() == 5);
    visit.leave();
  }
  Visit again(store);
  if (!again.panel("passage-details")) again.done("open-slip", Value::object({{"slip", "passage-details"}}));
  CHECK(field(again, "passage-details", "speed")->text == "-4");
  CHECK(!field(again, "passage-details", "speed")->error.empty());
  CHECK(*again.app.read()["passage"]["legs"][std::size_t{0}]["speed_kn"].number() == 5);
}

TEST_CASE("why an entry was refused stands in the margin until that is entered well, though nothing changes by it") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  CHECK(visit.app.command("type-passage", typed("speed", "0")).has("error"));
  visit.done("open-slip", Value::object({{"slip", "passage"}}));
  CHECK(visit.margin().find("The speed 0 kn is out of range: from 0.01 to 60 kn.") != std::string::npos);
  type(visit, "speed", "5");
  CHECK(visit.margin().find("out of range") == std::string::npos);
}

TEST_CASE("the list of steps says what of the passage each changed") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  struct Case {
    const char *field, *text, *part;
  };
  for (const Case& each : std::initializer_list<Case>{{"name", "Over", "name"}, {"speed", "4.5", "speed"}, {"wind", "270", "leeway"}, {"leeway", "5", "leeway"}, {"stream/drift", "0.9", "stream"}, {"date", "2026-12-01", "time"}, {"time", "0700", "time"},
                                                          {"zone", "UTC+2", "time zone"}, {"home-time", "1500", "way home"}, {"tide-place", "Gannet", "tides"}, {"tide/0/time", "0912", "tides"}, {"visibility", "0.5", "visibility"},
                                                          {"turn-back", "by 1000", "turning back"}, {"note", "tea", "note"}, {"way", "hourly", "headings"}, {"plot-every", "30", "plotted times"}, {"leg/1/speed", "4", "leg 2"}}) {
    CAPTURE(each.field);
    type(visit, each.field, each.text);
    CHECK(*visit.app.read()["history"]["undo_label"].text() == std::string("change the passage's ") + each.part);
  }
}

TEST_CASE("what was not entered is said in bold, and gaps and strong streams where they are") {
  FakeStore store;
  Visit visit(store);
  visit.done("make-passage");
  visit.done("close-slip");
  CHECK(has(cautions(visit.panel("passage")), "Stream not entered"));
  CHECK(has(cautions(visit.panel("passage")), "Times"));
  plan_demo(visit);
  type(visit, "stream/drift", "9");
  visit.done("close-slip");
  CHECK(has(cautions(visit.panel("passage")), "no course to steer"));
  type(visit, "stream/kind", "hours");
  CHECK(has(cautions(visit.panel("passage")), "no course to steer"));  // no high water yet
  type(visit, "tide/0/time", "0700");
  type(visit, "stream/hour/0", "352/0.7");
  CHECK(has(cautions(visit.panel("passage")), "gap"));
  for (int hour = -6; hour <= 6; ++hour) type(visit, "stream/hour/" + std::to_string(hour), "352 0.7");
  CHECK(!has(cautions(visit.panel("passage")), "gap"));
  CHECK(visit.app.command("type-passage", typed("stream/hour/1", "352")).has("error"));
  CHECK(visit.app.command("type-passage", typed("leeway", "3")).has("error"));  // no wind yet
}

TEST_CASE("what the doubt counts on for the stream is said as it is, leg by leg") {
  FakeStore store;
  Visit visit(store);
  visit.done("make-passage");
  type(visit, "speed", "5");
  visit.done("close-slip");
  const auto taken = [&](const char* words) { return page_text(visit, "passage").find(words) != std::string::npos; };
  CHECK(taken("stream 1 kn (not entered), log"));
  type(visit, "stream/kind", "steady");
  CHECK(taken("stream 1 kn (not entered), log"));  // its set and drift are not typed yet
  CHECK(has(cautions(visit.panel("passage")), "Stream not entered"));
  type(visit, "stream/set", "352");
  type(visit, "stream/drift", "0.7");
  CHECK(taken("stream 0.3 kn, log"));
  type(visit, "leg/1/stream/kind", "none");
  CHECK(taken("stream 0.3 kn, 1 kn where it was not entered, log"));
}

TEST_CASE("beside the passage's name stands what was entered of its time, whether it can be worked with or not") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  visit.done("close-slip");
  const auto says = [&](const char* words) { return page_text(visit, "passage").find(words) != std::string::npos; };
  CHECK(says(" · leave 0640 UTC+1 · 5 kn"));
  type(visit, "times", "arrival");
  CHECK(says(" · leave "));
  CHECK_FALSE(says(" · leave 0640"));
  const Value legs = visit.app.read()["legs"];
  visit.done("remove-leg", Value::object({{"id", *legs[std::size_t{2}]["id"].text()}}));
  CHECK(says(" · arrive 0640 UTC+1 · 5 kn"));
  CHECK_FALSE(says(" · leave "));
  type(visit, "time", "");
  CHECK(says(" · time not entered"));
}

TEST_CASE("a mark taken off under a leg: the card says so, what was typed stays, undo brings it back") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  type(visit, "leg/1/look-for", "lattice post");
  visit.done("close-slip");
  const Value end = visit.app.read()["legs"][std::size_t{1}]["to"];
  visit.done("remove-mark", Value::object({{"id", *end.text()}}));
  CHECK(has(cautions(visit.panel("passage")), "Leg 2"));
  CHECK(visit.app.read()["passage"]["legs"][std::size_t{1}].has("problem"));
  visit.done("undo");
  CHECK(!visit.app.read()["passage"]["legs"][std::size_t{1}].has("problem"));
  visit.done("open-passage-leg", Value::object({{"leg", 1}}));
  CHECK(field(visit, "passage-leg", "leg/1/look-for")->text == "lattice post");
}

TEST_CASE("the printed card holds every figure the screen shows, and the cautions") {
  FakeStore store;
  Visit visit(store);
  visit.done("use-no-deviation");
  plan_demo(visit);
  type(visit, "home-time", "1700");
  type(visit, "visibility", "0.5");
  type(visit, "turn-back", "Sarn Beacon is not seen by 0733");
  visit.done("close-slip");
  CHECK(!visit.panel("passage-page"));  // on paper alone
  visit.app.set_printing(true);
  const std::string page = page_text(visit, "passage-page");
  for (const std::vector<std::string>& row : visit.table("passage", "passage-legs")->rows) {
    CHECK(page.find(row[0]) != std::string::npos);
    CHECK(page.find(row[1].substr(0, row[1].find('\n'))) != std::string::npos);
    CHECK(page.find(row[2]) != std::string::npos);
  }
  for (const char* part : {"0640", "352°T 0.7 kn", "visibility 0.5", "Turn back if Sarn Beacon", "The way home", "lookout", "WMM2025", "WGS84", "UTC+1"}) CHECK_MESSAGE(page.find(part) != std::string::npos, part);
  visit.done("way-home");
  for (const std::vector<std::string>& row : visit.table("passage", "passage-legs")->rows) {
    CHECK(page.find(row[0].substr(0, 3)) != std::string::npos);
    CHECK(page.find(row[2].substr(0, 4)) != std::string::npos);
  }
  visit.done("print-passage-card", Value::object({{"size", "small"}}));
  CHECK(page_text(visit, "passage-page-small").find("352°T") != std::string::npos);
}

TEST_CASE("alternatives: another way, taken in hand and struck out") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  visit.done("duplicate-passage");
  type(visit, "speed", "6");
  Value passage = visit.app.read()["passage"];
  REQUIRE(passage["passages"].items()->size() == 2);
  CHECK(*passage["legs"][std::size_t{0}]["speed_kn"].number() == 6);
  visit.done("choose-passage", Value::object({{"id", *passage["passages"][std::size_t{0}]["id"].text()}}));
  CHECK(*visit.app.read()["passage"]["legs"][std::size_t{0}]["speed_kn"].number() == 5);
  visit.done("strike-out-passage");
  CHECK(*visit.app.read()["passage"]["legs"][std::size_t{0}]["speed_kn"].number() == 6);
}

TEST_CASE("a passage goes along in the sheet's link, and is kept") {
  FakeStore store;
  std::string link;
  Value before;
  {
    Visit visit(store);
    plan_demo(visit);
    link = visit.app.link();
    before = visit.app.read()["passage"];
    visit.leave();
  }
  Visit again(store);
  CHECK(again.app.read()["passage"] == before);
  FakeStore elsewhere;
  Visit there(elsewhere);
  there.done("open-text", Value::object({{"text", link}}));
  CHECK(there.app.read()["passage"]["legs"] == before["legs"]);
}
