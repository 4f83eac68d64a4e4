// The way as it is run: leaving, the three ends of a leg, going back, the deck log, the screen that stays on; and the triangle
// of the stream asked on its own.
#include "doctest/doctest.h"
#include "shell/words.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

Value typed(const std::string& field, const std::string& text) { return Value::object({{"field", field}, {"text", text}}); }

void plan_demo(Visit& visit) {
  visit.done("make-passage");
  for (const auto& [field, text] : {std::pair("speed", "5"), std::pair("time", "0640"), std::pair("date", "2026-06-20")}) visit.done("type-passage", typed(field, text));
  visit.done("close-slip");
  visit.done("open-slip", Value::object({{"slip", "next-leg"}}));
}

std::string text_of(const Panel* panel) {
  std::string all;
  if (!panel) return all;
  for (const PanelItem& item : panel->items) {
    if (const auto* heading = std::get_if<HeadingItem>(&item)) all += heading->text + " / " + heading->beside + "\n";
    if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + " " + line->value + "\n";
    if (const auto* button = std::get_if<ButtonItem>(&item)) all += "[" + button->label + (button->hold ? ", held" : "") + "]\n";
  }
  return all;
}

bool has(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

std::size_t leg_in_hand(Visit& visit) { return static_cast<std::size_t>(*visit.app.read()["passage"]["under_way"]["leg"].number()); }

Value at(const char* time) { return Value::object({{"time", time}}); }
Value end(const char* how, const char* time) { return Value::object({{"how", how}, {"time", time}}); }

void ask(Visit& visit, std::initializer_list<std::pair<const char*, const char*>> fields) {
  for (const auto& [field, text] : fields) visit.done("ask-stream", typed(field, text));
}

}  // namespace

TEST_CASE("the next leg: one course, what ends it is held, and it can be taken back") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  const std::string before = text_of(visit.panel("next-leg"));
  CHECK(has(before, "Leg 1 of 3"));
  CHECK(has(before, "[We leave, held]"));
  CHECK(has(before, "course to hold"));
  visit.done("depart", at("0642"));
  const std::string on_leg = text_of(visit.panel("next-leg"));
  for (const char* part : {"[Seen, held]", "[Not seen, held]", "[Early, late, held]", "[We have not left]", "[Lock touch]", "expect ", "by the clock since 0642", "then ", "lookout"}) CHECK_MESSAGE(has(on_leg, part), part);
  visit.done("end-leg", end("seen", "0731"));
  CHECK(leg_in_hand(visit) == 1);
  CHECK(has(text_of(visit.panel("next-leg")), "by the clock since 0731"));
  visit.done("type-seen", typed("side", "port"));
  visit.done("type-seen", typed("distance", "0.4"));
  CHECK(has(text_of(visit.panel("next-leg")), "seen to port, 0.4 nm"));
  visit.done("end-leg", end("not-seen", "0815"));
  visit.done("back-a-leg");
  CHECK(leg_in_hand(visit) == 1);
  visit.done("end-leg", end("passed", "0809"));
  visit.done("end-leg", end("seen", "0900"));
  CHECK(has(text_of(visit.panel("next-leg")), "All legs have ended"));
  CHECK(visit.app.command("end-leg", end("seen", "0910")).has("error"));
  while (*visit.app.read()["passage"]["under_way"]["departed"].flag()) visit.done("undo");
  CHECK(has(text_of(visit.panel("next-leg")), "[We leave, held]"));
}

TEST_CASE("before she has left, the course of the leg's first hour is the one to hold") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);  // for a day that is long past
  visit.done("type-passage", typed("way", "hourly"));
  visit.done("type-passage", typed("tide/0/time", "0730"));
  for (int hour = -6; hour <= 6; ++hour) visit.done("type-passage", typed("stream/hour/" + std::to_string(hour), hour < 0 ? "352/1.5" : "172/1.5"));
  const Value leg = visit.app.read()["passage"]["legs"][std::size_t{0}];
  REQUIRE(*leg["courses"].number() > 1);
  const std::string hold = *leg["shown"]["hold"].text();
  const std::string text = text_of(visit.panel("next-leg"));
  CHECK_MESSAGE(text.find(": " + hold + " \n") != std::string::npos, hold << " in " << text);
}

TEST_CASE("the deck log: times in order, the log overrules the clock, a bad time stays in its field") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  visit.done("depart", Value::object({{"time", "0642"}, {"log", "100"}}));
  visit.done("write-deck-log", Value::object({{"time", "0710"}, {"log", "102.2"}, {"note", "fog"}}));
  CHECK(has(text_of(visit.panel("next-leg")), "by the log at 0710"));
  visit.done("open-slip", Value::object({{"slip", "deck-log"}}));
  REQUIRE(visit.table("deck-log", "deck-log"));
  CHECK(visit.table("deck-log", "deck-log")->rows == std::vector<std::vector<std::string>>{{"0642", "100.0", "left"}, {"0710", "102.2", "fog"}});
  visit.done("type-deck", typed("time", "0690"));
  CHECK(visit.app.command("write-deck-log", Value::object()).has("error"));
  visit.done("type-deck", typed("time", "0700"));
  CHECK(visit.app.command("write-deck-log", Value::object()).has("error"));  // before the line before
  const Panel* slip = visit.panel("deck-log");
  for (const PanelItem& item : slip->items)
    if (const auto* field = std::get_if<FieldItem>(&item); field && field->name == "deck-time") {
      CHECK(field->text == "0700");
      CHECK(has(field->error, "0710"));
    }
  visit.done("write-deck-log", at("1930"));
  visit.done("type-deck", typed("time", "0015"));  // after midnight
  visit.done("write-deck-log");
  CHECK(visit.table("deck-log", "deck-log")->rows.size() == 4);
  visit.done("strike-out-deck-line", Value::object({{"line", 3}}));
  CHECK(visit.table("deck-log", "deck-log")->rows.size() == 3);
}

TEST_CASE("a time that is typed is of the day that it was, not of the day of the line before") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  const double leg_nm = *visit.app.read()["passage"]["legs"][std::size_t{0}]["distance_nm"].number();
  const auto to_run = [&](double run_nm) { return words::distance(leg_nm - run_nm).text() + " to run"; };
  const auto set_clock = [&](std::int64_t day, int hour, int minute) { visit.platform.time_ms = ((day * 24 + hour - 1) * 60 + minute) * 60'000; };  // its zone is UTC+1
  constexpr std::int64_t k_day = 20'783;  // 2026-11-26
  SUBCASE("left before midnight, written after it") {
    set_clock(k_day, 0, 5);
    visit.done("depart", at("2355"));
    CHECK(has(text_of(visit.panel("next-leg")), to_run(5 * 10 / 60.0).c_str()));
  }
  SUBCASE("written down a day after the line before") {
    set_clock(k_day, 6, 0);
    visit.done("depart", at("0600"));
    set_clock(k_day + 1, 10, 0);
    visit.done("end-leg", end("seen", "0945"));
    set_clock(k_day + 1, 9, 55);
    const std::string text = text_of(visit.panel("next-leg"));
    CHECK_MESSAGE(has(text, "by the clock since 0945 +1 d"), text);
  }
}

TEST_CASE("the screen stays on while a leg is run") {
  FakeStore store;
  Visit visit(store);
  plan_demo(visit);
  CHECK(!visit.platform.kept_awake);
  visit.done("depart");
  CHECK(visit.platform.kept_awake);
  visit.done("back-a-leg");
  CHECK(!visit.platform.kept_awake);
}

TEST_CASE("what is steered, where a heading leads, what stream there was: each the other's inverse") {
  FakeStore store;
  Visit visit(store);
  visit.done("open-slip", Value::object({{"slip", "stream"}}));
  ask(visit, {{"which", "steer"}, {"track", "090"}, {"speed", "5"}, {"set", "210"}, {"drift", "2"}});
  // Answers to Practice Chart, chapter X, current problem 1: 069.7 and 3.7 kn, computed.
  CHECK(has(text_of(visit.panel("stream")), "steer 070°T"));
  CHECK(has(text_of(visit.panel("stream")), "speed over ground 3.7 kn"));
  ask(visit, {{"which", "made-good"}, {"heading", "069.7"}});
  CHECK(has(text_of(visit.panel("stream")), "over the ground 090°T"));
  ask(visit, {{"drift", "6"}, {"which", "steer"}});
  CHECK(!has(text_of(visit.panel("stream")), "steer 0"));
  ask(visit, {{"which", "run"}, {"distance", "4.1"}, {"speed", "6.2"}});
  CHECK(has(text_of(visit.panel("stream")), "time 40 min"));  // BoatSafe coastal navigation course, chapter X
  ask(visit, {{"minutes", "45"}, {"speed", "6"}, {"distance", ""}});
  CHECK(has(text_of(visit.panel("stream")), "distance 4.50 nm"));  // ordinary piloting quiz: 6 kn for 45 min
  CHECK(visit.app.command("ask-stream", typed("speed", "quick")).has("error"));
  CHECK(has(text_of(visit.panel("stream")), "Any two"));
}

TEST_CASE("an estimated position is marked, and the stream that put the boat at a fix is planned with") {
  FakeStore store;
  Visit visit(store);
  visit.done("make-passage");
  const std::string from = *visit.app.read()["marks"][std::size_t{0}]["id"].text();
  ask(visit, {{"which", "made-good"}, {"from", from.c_str()}, {"heading", "090"}, {"speed", "5"}, {"set", "000"}, {"drift", "1"}, {"minutes", "30"}});
  visit.done("mark-estimated");
  const std::size_t marks = visit.app.read()["marks"].items()->size();
  const std::string fix = *visit.app.read()["marks"][marks - 1]["id"].text();
  ask(visit, {{"which", "stream"}, {"fix", fix.c_str()}});
  visit.done("use-found-stream");
  const Value stream = visit.app.read()["passage"];
  CHECK(*visit.app.read()["history"]["undo_label"].text() == "change the passage's stream");
  visit.done("type-passage", typed("speed", "5"));
  const Value leg = visit.app.read()["passage"]["legs"][std::size_t{0}];
  CHECK(*leg["stream"]["drift_kn"].number() == doctest::Approx(1).epsilon(0.02));
}
