// Boats, their compasses and the card a sheet is steered by: entered, worked out, used, undone, kept.
#include <cmath>

#include "core/boat/swing_record.h"
#include "core/document/actions.h"
#include "core/directions/direction_figures.h"
#include "core/directions/direction_text.h"
#include "core/formats/document_text.h"
#include "doctest/doctest.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

// Deviation of a boat made up for these tests.
constexpr ByCoefficient k_boat_deg = {1, 4, -2, 0.8, 0.2};
constexpr double k_bearing_deg = 211;

Value typed(const std::string& field, const std::string& text) { return Value::object({{"field", field}, {"text", text}}); }

std::string figures(double deg) { return direction_figures(reduce_direction_deg(deg), Rounding::tenths); }

std::string read_on(double heading_deg) { return figures(k_bearing_deg - deviation_by(k_boat_deg, CompassDirection(heading_deg)).deg); }

std::string row(int number, const char* name) { return "row/" + std::to_string(number) + "/" + name; }

void enter_boat(Visit& visit) { visit.done("new-boat", Value::object({{"name", "Pipit"}})); }

void swing(Visit& visit) {
  visit.done("begin-entry", Value::object({{"kind", "swing"}}));
  visit.done("type-entry", typed("bearing", figures(k_bearing_deg)));
  for (int i = 0; i < 8; ++i) visit.done("type-entry", typed(row(i, "read"), read_on(45.0 * i)));
}

const FieldItem* field(Visit& visit, const std::string& name) {
  for (const PanelItem& item : visit.panel("log-entry")->items)
    if (const auto* each = std::get_if<FieldItem>(&item); each && each->name == name) return each;
  return nullptr;
}

std::string text_of(const Panel& panel) {
  std::string all;
  for (const PanelItem& item : panel.items) {
    if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + " " + line->value + "\n";
    if (const auto* caution = std::get_if<CautionItem>(&item)) all += "! " + caution->text + ": " + caution->advice + "\n";
  }
  return all;
}

Value boats(Visit& visit) { return visit.app.read()["history"]["boats"]; }

}  // namespace

TEST_CASE("with no card deviation is not entered; by the user's word there is none") {
  FakeStore store;
  Visit visit(store);
  Value read = visit.app.read();
  CHECK(*read["compass"]["deviation"].text() == "not entered");
  CHECK(read["legs"][std::size_t{0}]["course_compass_deg"].is_null());
  CHECK(*read["legs"][std::size_t{0}]["shown"]["deviation"].text() == "not entered");
  visit.done("use-no-deviation");
  read = visit.app.read();
  CHECK(*read["compass"]["deviation"].text() == "nought");
  CHECK(*read["legs"][std::size_t{0}]["course_compass_deg"].number() == *read["legs"][std::size_t{0}]["course_magnetic_deg"].number());
  CHECK(*read["history"]["undo_label"].text() == "take the card of This boat");
  visit.done("undo");
  CHECK(*visit.app.read()["compass"]["deviation"].text() == "not entered");
}

TEST_CASE("a swing of eight headings gives a card, and every course is by compass then") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  swing(visit);
  const TableItem* coefficients = visit.table("log-entry", "coefficients");
  REQUIRE(coefficients != nullptr);
  CHECK(coefficients->rows[0] == std::vector<std::string>{"A, constant", "+1.0° ± 0.0°", "1.0°"});
  CHECK(coefficients->rows[1][1] == "+4.0° ± 0.0°");
  CHECK(coefficients->rows[2][1] == "−2.0° ± 0.0°");
  visit.done("use-card");
  const Value read = visit.app.read();
  CHECK(*read["compass"]["boat"].text() == "Pipit");
  CHECK(read["compass"]["points"].items()->size() == 36);
  for (const Value& leg : *read["legs"].items()) {
    const double compass_deg = *leg["course_compass_deg"].number(), magnetic_deg = *leg["course_magnetic_deg"].number();
    const double wanted_deg = deviation_by(k_boat_deg, CompassDirection(compass_deg)).deg;
    CHECK(std::abs(reduce_difference_deg(magnetic_deg - compass_deg) - wanted_deg) < 0.1);  // read to tenths
    // What stands on screen adds up.
    const double shown_magnetic = parse_direction(*leg["shown"]["magnetic"].text())->deg, shown_compass = parse_direction(*leg["shown"]["compass"].text())->deg;
    CHECK(reduce_direction_deg(shown_magnetic - *parse_correction_deg("deviation", *leg["shown"]["deviation"].text())) == doctest::Approx(shown_compass));
  }
  // The other way round: an edge turned to a course by compass.
  visit.done("turn-edge", Value::object({{"bearing_deg", *read["legs"][std::size_t{0}]["course_compass_deg"].number()}, {"reference", "compass"}}));
  CHECK(std::abs(reduce_difference_deg(*visit.app.read()["edge"]["bearing_true_deg"].number() - *read["legs"][std::size_t{0}]["course_true_deg"].number())) <= 1);
}

TEST_CASE("what was read wrongly is told where it stands, and kept for correction") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  swing(visit);
  const auto refused = [&](const std::string& name, const std::string& text, const std::string& reason) {
    CAPTURE(name);
    CHECK(visit.app.command("type-entry", typed(name, text)).has("error"));
    const FieldItem* shown = field(visit, name);
    REQUIRE(shown != nullptr);
    CHECK(shown->text == text);
    CHECK(shown->error.find(reason) != std::string::npos);
  };
  refused("row/2/read", "400", "400");
  refused("row/3/read", figures(k_bearing_deg + 180), "180° out");
  refused("row/4/read", figures(k_bearing_deg + 90), "hardly");
  visit.done("open-row", Value::object({{"row", 5.0}}));
  refused("row/5/heading", "180", "already");
  CHECK(visit.table("log-entry", "coefficients")->rows[1][1] == "+4.0° ± 0.0°");  // the log is as it was
  visit.done("type-entry", typed("row/2/read", read_on(90)));
  CHECK(field(visit, "row/2/read")->error.empty());
}

TEST_CASE("undo takes back what was done to the boat while her slips are open, else what was done to the sheet") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  swing(visit);
  visit.done("undo");
  CHECK(visit.table("log-entry", "readings")->rows[7][1] == "–");
  visit.done("redo");
  CHECK(visit.table("log-entry", "readings")->rows[7][1] != "–");
  visit.done("use-card");
  CHECK(visit.app.read()["history"]["undo_label"].text()->find("card") != std::string::npos);
  visit.done("undo");
  CHECK(*visit.app.read()["compass"]["deviation"].text() == "not entered");
  CHECK(visit.table("log-entry", "readings")->rows[7][1] != "–");
  visit.done("type-entry", typed("place", "off the yard"));
  for (int i = 0; i < 11; ++i) visit.done("undo");
  CHECK(visit.panel("log-entry") == nullptr);  // the entry is not there any more
  CHECK(visit.panel("compass") != nullptr);
}

TEST_CASE("a boat outlives the page with her past; a write that failed is made good; damage is told") {
  FakeStore store;
  {
    Visit visit(store);
    enter_boat(visit);
    swing(visit);
    visit.done("use-card");
    visit.app.command("type-entry", typed("row/0/read", "400"));
    visit.leave();
  }
  {
    Visit visit(store, "", true);
    CHECK(*boats(visit)[std::size_t{0}]["name"].text() == "Pipit");
    CHECK(*visit.app.read()["compass"]["deviation"].text() == "card");
    REQUIRE(visit.panel("log-entry") != nullptr);  // where it was left
    CHECK(field(visit, "row/0/read")->text == "400");
    visit.done("type-entry", typed("place", "x"));
    visit.done("undo");
    visit.done("undo");
    CHECK(visit.table("log-entry", "readings")->rows[7][1] == "–");
    // The store fails once.
    visit.app.command("type-entry", typed("object", "chimney"));
    store.ask(std::exchange(visit.platform.store_writes, {}));
    while (!store.waiting.empty()) visit.app.store_failed(store.drop_next(), StoreFault::full);
    CHECK(*visit.app.read()["history"]["kept"]["state"].text() == "failed");
    visit.platform.time_ms += 120'000;
    visit.app.woken();
    visit.settle();
    CHECK(*visit.app.read()["history"]["kept"]["state"].text() == "kept");
  }
  {
    Visit visit(store, "", true);
    visit.done("open-entry", Value::object({{"id", *boats(visit)[std::size_t{0}]["compasses"][std::size_t{0}]["log"][std::size_t{0}]["id"].text()}}));
    CHECK(field(visit, "object")->text == "chimney");
  }
  for (auto& [key, bytes] : store.records)
    if (std::get<2>(key) == 1 && std::get<0>(key) == StorePart::desk) bytes[bytes.size() / 2] ^= 1;
  Visit visit(store, "", true);
  CHECK(boats(visit).items()->empty());
  CHECK(visit.margin().find("boat is damaged") != std::string::npos);
  CHECK(*visit.app.read()["compass"]["deviation"].text() == "card");  // the sheet has its own copy
}

TEST_CASE("a link takes the card along, or leaves it out when that is wanted") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  swing(visit);
  visit.done("use-card");
  const Result<Document> with = decode_document(visit.app.link());
  REQUIRE(with.ok());
  CHECK(with->compass->boat == "Pipit");
  visit.done("card-in-links", Value::object({{"wanted", "no"}}));
  CHECK_FALSE(decode_document(visit.app.link())->compass);
  CHECK(*visit.app.read()["compass"]["deviation"].text() == "card");
}

TEST_CASE("a check against bearings from the sheet's marks says what it found and by which rule") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  visit.done("begin-entry", Value::object({{"kind", "check"}}));
  const Value read = visit.app.read();
  const std::string quay = *read["marks"][std::size_t{4}]["id"].text();
  visit.done("bearings-from-mark", Value::object({{"text", quay}}));
  const TableItem* table = visit.table("log-entry", "readings");
  REQUIRE(table != nullptr);
  const std::size_t count = table->rows.size();
  REQUIRE(count >= 3);
  const double variation_deg = *read["variation"]["value_deg"].number();
  for (std::size_t i = 0; i < count; ++i) {
    const double trusted = parse_direction(visit.table("log-entry", "readings")->rows[i][1])->deg;
    visit.done("type-entry", typed(row(static_cast<int>(i), "read"), figures(trusted - variation_deg - 4)));
  }
  const std::string said = text_of(*visit.panel("log-entry"));
  CHECK(said.find("One constant explains it: 4.0°E") != std::string::npos);
  CHECK(said.find("lubber line") != std::string::npos);
  CHECK(said.find("The rule:") != std::string::npos);
  CHECK(*boats(visit)[std::size_t{0}]["compasses"][std::size_t{0}]["log"][std::size_t{0}]["result"].text() == "constant, 4.0°E");
}

TEST_CASE("a trial tells which things turn the compass; a card typed in is used as it is") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  visit.done("begin-entry", Value::object({{"kind", "trial"}}));
  visit.done("add-row");
  visit.done("type-entry", typed("row/0/thing", "Radio"));
  visit.done("type-entry", typed("row/0/off", "045"));
  visit.done("type-entry", typed("row/0/on", "052"));
  visit.done("add-row");
  visit.done("type-entry", typed("row/1/off", "045"));
  visit.done("type-entry", typed("row/1/on", "046"));
  const std::string said = text_of(*visit.panel("log-entry"));
  CHECK(said.find("Radio turns the compass by 7.0°") != std::string::npos);
  CHECK(said.find("This does not disturb the compass") != std::string::npos);

  visit.done("begin-entry", Value::object({{"kind", "card"}}));
  for (const auto& [heading, deviation] : {std::pair("0", "2E"), std::pair("90", "3.5W"), std::pair("180", "2w"), std::pair("270", "3E")})
    visit.done("type-entry", typed("row/" + std::string(heading) + "/deviation", deviation));
  CHECK(visit.app.command("type-entry", typed("row/45/deviation", "75E")).has("error"));
  CHECK(visit.app.command("type-entry", typed("row/45/deviation", "7")).has("error"));  // east or west
  visit.done("use-card");
  const Value points = visit.app.read()["compass"]["points"];
  REQUIRE(points.items()->size() == 4);
  CHECK(*points[std::size_t{1}]["deviation_deg"].number() == -3.5);
  CHECK(points[std::size_t{1}]["sd_deg"].is_null());
}

TEST_CASE("far from where it was made a card says swing again, and why") {
  FakeStore store;
  Visit visit(store);
  enter_boat(visit);
  swing(visit);
  visit.done("use-card");
  CHECK_FALSE(*visit.app.read()["compass"]["swing_again"].flag());
  const std::string text = encode_document(*decode_document(visit.app.link()));
  // The same card on a sheet near the magnetic equator.
  Document far = *decode_document(text);
  const KeptCard card = *far.compass;
  History history(*made_sheet({.name = "far", .mid_lat_deg = 2, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 6, 1}}));
  REQUIRE(use_card(history, card));
  visit.done("open-text", Value::object({{"text", encode_document(history.now())}}));
  CHECK(*visit.app.read()["compass"]["swing_again"].flag());
  visit.done("open-slip", Value::object({{"slip", "compass"}}));
  CHECK(text_of(*visit.panel("compass")).find("! Swing again: The dip differs") != std::string::npos);
}

TEST_CASE("bad calls are refused with a sentence and change nothing") {
  FakeStore store;
  Visit visit(store);
  for (const char* name : {"begin-entry", "open-entry", "strike-out-boat", "type-boat", "add-compass", "use-card", "type-entry", "add-row"}) CHECK(visit.app.command(name, Value::object()).has("error"));
  CHECK(visit.app.command("new-boat", Value::object({{"name", " "}})).has("error"));
  CHECK(boats(visit).items()->empty());
  CHECK(visit.app.command("open-slip", Value::object({{"slip", "log-entry"}})).has("error"));
  enter_boat(visit);
  CHECK(visit.app.command("use-card", Value::object()).has("error"));
  CHECK(visit.app.command("begin-entry", Value::object({{"kind", "x"}})).has("error"));
  CHECK(visit.app.command("strike-out-compass", Value::object()).has("error"));
  visit.done("begin-entry", Value::object({{"kind", "swing"}}));
  for (const char* name : {"row/300/read", "row/x/read", "row/0/nothing", "nothing", "row/-1/read", ""}) CHECK(visit.app.command("type-entry", typed(name, "1")).has("error"));
  CHECK(visit.app.command("open-row", Value::object({{"row", 8.0}})).has("error"));
  CHECK(visit.app.command("strike-out-row", Value::object({{"row", -1.0}})).has("error"));
  visit.done("strike-out-boat");
  CHECK(*boats(visit)[std::size_t{0}]["removed"].flag());
  CHECK(visit.panel("log-entry") == nullptr);
  visit.done("choose-boat", Value::object({{"boat", *boats(visit)[std::size_t{0}]["key"].text()}}));
  CHECK_FALSE(*boats(visit)[std::size_t{0}]["removed"].flag());
}
