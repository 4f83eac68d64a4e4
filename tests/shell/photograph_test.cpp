// The photograph under the sheet: chosen, placed by presses and by typing, dimmed, kept beside the sheet and nowhere else.
#include "shell/photograph.h"

#include <cmath>

#include "core/sheet/projection.h"
#include "shell/words.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

/// A page with a photograph of 4 000 by 3 000 pixels under a sheet that is kept.
struct PhotographVisit : Visit {
  explicit PhotographVisit(FakeStore& the_store, const std::string& fragment = "") : Visit(the_store, fragment) {
    if (!fragment.empty()) return;
    done("new-sheet", Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}}));
    choose();
  }

  void choose() {
    done("choose-photograph");
    CHECK(news(PhotographNews::chosen, "chart.jpg", {.a = 5e6}));
    CHECK(news(PhotographNews::read, "", {.code = 1, .a = 4'000, .b = 3'000}));
  }

  std::uint64_t sheet() const { return platform.photograph_acts.back().second; }
  bool news(PhotographNews what, const std::string& text = "", const PhotographNumbers& numbers = {}, std::span<const std::uint8_t> bytes = {}) { return app.photograph_news(what, sheet(), text, bytes, numbers); }

  std::string words() {
    std::string all;
    const Panel* slip = panel("photograph");
    REQUIRE(slip);
    for (const PanelItem& item : slip->items) {
      if (const auto* line = std::get_if<LineItem>(&item)) all += line->text + "\n";
      if (const auto* caution = std::get_if<CautionItem>(&item)) all += "! " + caution->text + ": " + caution->advice + "\n";
      if (const auto* field = std::get_if<FieldItem>(&item)) all += field->name + "=" + field->text + " " + field->error + "\n";
      if (const auto* choice = std::get_if<ChoiceItem>(&item)) all += choice->name + "=" + choice->chosen + "\n";
      if (const auto* button = std::get_if<ButtonItem>(&item)) all += "[" + button->name + "]\n";
    }
    return all;
  }
  bool says(const std::string& text) { return words().find(text) != std::string::npos; }

  void press(double x_px, double y_px) {
    platform.time_ms += 1'000;
    for (const PointerPhase phase : {PointerPhase::down, PointerPhase::up}) app.pointer({.phase = phase, .kind = PointerKind::mouse, .id = 1, .at = {x_px, y_px}, .buttons = phase == PointerPhase::down ? 1 : 0, .time_ms = static_cast<double>(platform.time_ms)});
    settle();
  }

  std::optional<DrawnPhotograph> drawn() { return app.frame(static_cast<double>(platform.time_ms)).photograph; }

  void add(double x_px, double y_px, double lat_deg, double lon_deg) { done("add-photograph-point", Value::object({{"x_px", x_px}, {"y_px", y_px}, {"lat_deg", lat_deg}, {"lon_deg", lon_deg}})); }
};

Projection projection() { return Projection({44, -31}, 100'000, Paper::a4_across); }

}  // namespace

TEST_CASE("a photograph is asked for inside the press, read elsewhere, and lies across the sheet until it is placed") {
  FakeStore store;
  PhotographVisit visit(store);
  CHECK(std::count_if(visit.platform.photograph_acts.begin(), visit.platform.photograph_acts.end(), [](const auto& act) { return act.first == PhotographAct::choose; }) == 1);
  CHECK(visit.says("Press a place on the photograph"));
  CHECK(visit.says("Not placed"));
  const auto drawn = visit.drawn();
  REQUIRE(drawn);
  const PictureTransform whole = picture_across_sheet(4'000, 3'000, projection().neat_line());
  CHECK(distance_mm(drawn->transform.corner, whole.corner) < 1e-9);
  CHECK(drawn->opacity > 0);
}

TEST_CASE("two places that are pressed and typed place it, and a third is told how far it is off") {
  FakeStore store;
  PhotographVisit visit(store);
  const Value rock = visit.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.05}, {"lon_deg", -31.05}}))["id"];
  const Value before = visit.app.where("sheet/44°03.0'N 031°03.0'W");
  visit.press(before["x"].number()[0] + 22, before["y"].number()[0] + 22);  // the tool is in hand since the photograph came
  CHECK(visit.says("Enter the position of point 1"));
  CHECK(visit.says("mark="));
  visit.done("type-photograph", Value::object({{"field", "mark"}, {"text", rock}}));
  CHECK(visit.says("position=44°03.00′N 031°03.00′W"));
  const Value second = visit.app.where("sheet/43°57.0'N 030°55.0'W");
  visit.press(second["x"].number()[0] + 22, second["y"].number()[0] + 22);
  visit.done("type-photograph", Value::object({{"field", "position"}, {"text", "43 57 N 30 55 W"}}));
  CHECK(visit.says("Placed by 2 points"));
  CHECK(visit.says("one more checks them"));
  // Each was pressed where it belongs: so it lies as it lay before, to the pixel that was pressed.
  const Value point = visit.app.where("photograph/#1");
  CHECK(std::abs(point["x"].number()[0] - before["x"].number()[0]) < 1);
  CHECK(std::abs(point["y"].number()[0] - before["y"].number()[0]) < 1);

  const PictureTransform lies = visit.drawn()->transform;
  const PicturePoint third = lies.to_picture(projection().to_sheet({44.04, -30.93}));
  visit.add(third.x_px, third.y_px, 44.04, -30.92);  // half a mile off
  visit.done("type-photograph", Value::object({{"field", "fit"}, {"text", "similarity"}}));
  CHECK(visit.says("Placed by 3 points: turned and sized to fit."));
  CHECK(visit.says("Standard error"));
  const TableItem* table = visit.table("photograph", "points");
  REQUIRE(table);
  REQUIRE(table->rows.size() == 3);
  for (const auto& row : table->rows) CHECK(std::stoi(row[2]) > 30);
}

TEST_CASE("what can't be taken stays in its field with the reason, and a bad set of points is told in words") {
  FakeStore store;
  PhotographVisit visit(store);
  visit.add(1'000, 1'000, 44.05, -31.05);
  const Value refused = visit.app.command("type-photograph", Value::object({{"field", "position"}, {"text", "44 72 N 31 W"}}));
  CHECK(refused.has("error"));
  CHECK(visit.says("position=44 72 N 31 W Minutes are under 60"));
  visit.done("type-photograph", Value::object({{"field", "position"}, {"text", "44 3 N 31 3 W"}}));
  CHECK(visit.app.command("type-photograph", Value::object({{"field", "at"}, {"text", "somewhere"}})).has("error"));
  CHECK(visit.app.command("type-photograph", Value::object({{"field", "at"}, {"text", "5000, 10"}})).has("error"));
  for (const char* text : {"-1200, 900", "1200", "1200, 900, 3", "1200, 900 miles"}) CHECK_MESSAGE(visit.app.command("type-photograph", Value::object({{"field", "at"}, {"text", text}})).has("error"), text);
  visit.done("type-photograph", Value::object({{"field", "at"}, {"text", "1199.6 900.3"}}));
  CHECK(visit.says("at=1200, 900"));
  visit.done("type-photograph", Value::object({{"field", "at"}, {"text", "1200, 900"}}));
  CHECK(visit.says("at=1200, 900"));
  visit.add(1'200, 900, 43.9, -31);
  CHECK(visit.says("Points 1 and 2 are the same place"));
  visit.done("remove-photograph-point", Value::object({{"point", 2}}));
  visit.add(2'200, 1'400, 43.95, -31);
  visit.add(3'200, 1'900, 43.9, -30.95);
  CHECK(visit.says("The points lie in a line"));
  CHECK(visit.app.command("remove-photograph-point", Value::object({{"point", 4}})).has("error"));
  CHECK(visit.app.command("add-photograph-point", Value::object({{"x_px", 4'001}, {"y_px", 5}})).has("error"));
  CHECK(visit.app.command("add-photograph-point", Value::object({{"x_px", std::nan("")}, {"y_px", 5}})).has("error"));
  visit.done("place-photograph-anew");
  CHECK(visit.says("0 of 2 points are known"));
}

TEST_CASE("a point is dragged, and the photograph goes with it when the hand is lifted") {
  FakeStore store;
  PhotographVisit visit(store);
  visit.add(2'000, 1'500, 44, -31);
  const Value at = visit.app.where("photograph/#1");
  const double x = at["x"].number()[0] + 22, y = at["y"].number()[0] + 22;
  double time = static_cast<double>(visit.platform.time_ms);
  const auto pointer = [&](PointerPhase phase, double dx) { visit.app.pointer({.phase = phase, .kind = PointerKind::mouse, .id = 1, .at = {x + dx, y}, .buttons = 1, .time_ms = time += 50}); };
  pointer(PointerPhase::down, 0);
  for (double dx = 0; dx <= 40; dx += 10) pointer(PointerPhase::move, dx);
  pointer(PointerPhase::up, 40);
  CHECK(std::abs(visit.app.where("photograph/#1")["x"].number()[0] + 22 - x - 40) < 1);
}

TEST_CASE("it is dimmed, hidden, and goes back at night") {
  FakeStore store;
  PhotographVisit visit(store);
  double last = 0;
  for (const char* step : {"0", "1", "2", "3"}) {
    visit.done("type-photograph", Value::object({{"field", "strength"}, {"text", step}}));
    CHECK(visit.drawn()->opacity > last);
    last = visit.drawn()->opacity;
  }
  CHECK(visit.app.command("type-photograph", Value::object({{"field", "strength"}, {"text", "9"}})).has("error"));
  visit.done("set-palette", Value::object({{"palette", "night"}}));
  const auto night = visit.drawn();
  CHECK(night->is_dark);
  CHECK((night->ink.green <= 0x30 && night->ink.blue <= 0x30));  // red and nothing else
  visit.done("set-dimmer", Value::object({{"step", "2"}}));
  CHECK(visit.drawn()->opacity < night->opacity);
  visit.done("type-photograph", Value::object({{"field", "shown"}, {"text", "hidden"}}));
  CHECK_FALSE(visit.drawn());
}

TEST_CASE("what was drawn can be seen over it, whatever is on it") {
  // WCAG 2.2: relative luminance, and 3:1 for graphics. What the page's shader does to the paper is done here by hand.
  const auto luminance = [](double red, double green, double blue) {
    const auto linear = [](double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    return 0.2126 * linear(red / 255) + 0.7152 * linear(green / 255) + 0.0722 * linear(blue / 255);
  };
  FakeStore store;
  PhotographVisit visit(store);
  visit.done("type-photograph", Value::object({{"field", "strength"}, {"text", "3"}}));
  for (int i = 0; i < k_palette_count; ++i) {
    const Palette palette = static_cast<Palette>(i);
    CAPTURE(palette_name(palette));
    visit.done("set-palette", Value::object({{"palette", palette_name(palette)}}));
    const DrawnPhotograph drawn = *visit.drawn();
    const double shown = drawn.opacity;
    const auto over_black = [&](std::uint8_t paper, std::uint8_t ink) { return drawn.is_dark ? paper + shown * (ink - paper) : paper * (1 - shown); };
    const double ground = luminance(over_black(drawn.paper.red, drawn.ink.red), over_black(drawn.paper.green, drawn.ink.green), over_black(drawn.paper.blue, drawn.ink.blue));
    const Colour ink = colour_of(palette, Ink::ink);
    const double line = luminance(ink.red, ink.green, ink.blue);
    CHECK((std::max(ground, line) + 0.05) / (std::min(ground, line) + 0.05) >= 3);
  }
}

TEST_CASE("how it is placed is kept once the sheet is, and comes back with it") {
  FakeStore store;
  std::vector<std::uint8_t> placing;
  {
    PhotographVisit visit(store);
    visit.add(1'000.25, 1'000, 44.05, -31.05);
    visit.done("type-photograph", Value::object({{"field", "datum"}, {"text", "WGS84"}}));
    CHECK(visit.platform.photograph_acts.back().first == PhotographAct::keep);
    placing = visit.platform.photograph_placing;
    CHECK(visit.news(PhotographNews::kept));
    CHECK(visit.says("with this sheet, and goes into the file of all"));
    CHECK(visit.app.link().size() < 400);
    visit.leave();
  }
  Visit again(store);
  REQUIRE(again.platform.photograph_acts.back().first == PhotographAct::bring);
  const std::uint64_t sheet = again.platform.photograph_acts.back().second;
  CHECK(again.app.photograph_news(PhotographNews::brought, sheet, "chart.jpg", placing, {}));
  CHECK(again.app.photograph_news(PhotographNews::read, sheet, "", {}, {.code = 1, .a = 4'000, .b = 3'000}));
  if (!again.panel("photograph")) again.done("open-slip", Value::object({{"slip", "photograph"}}));
  const TableItem* table = again.table("photograph", "points");
  REQUIRE(table);
  CHECK(table->rows[0][1] == "44°03.00′N 031°03.00′W");
  CHECK(again.platform.photograph_acts.back().first == PhotographAct::bring);  // nothing has changed: nothing is written
}

TEST_CASE("what is placed survives as bytes, and other bytes are not believed") {
  PhotographPlacing placing{.width_px = 4'000, .height_px = 3'000, .stretched = false, .is_wgs84 = true, .hidden = true, .strength = 3};
  placing.points = {{{12.25, 2'999.5}, quantise({-44.5, 179.9})}, {{4'000, 0}, std::nullopt}};
  const std::vector<std::uint8_t> bytes = to_bytes(placing);
  CHECK(placing_from(bytes) == placing);
  for (std::size_t length = 0; length < bytes.size(); ++length) CHECK_FALSE(placing_from(std::span(bytes).first(length)));
  PhotographPlacing outside = placing;
  outside.points[0].at.x_px = 4'001;
  CHECK_FALSE(placing_from(to_bytes(outside)));
  std::vector<std::uint8_t> newer = bytes;
  newer[0] = 2;
  CHECK_FALSE(placing_from(newer));
}

TEST_CASE("a file that is refused says why, and reading can be stopped") {
  FakeStore store;
  PhotographVisit visit(store);
  CHECK(visit.news(PhotographNews::chosen, "map.png", {.a = 900}));
  CHECK(visit.says("[stop-photograph]"));
  CHECK(visit.news(PhotographNews::refused, "SVG", {.code = static_cast<double>(Fault::picture_of_other_kind)}));
  CHECK(visit.says("This is SVG by its bytes, whatever its name"));
  CHECK(visit.says("[choose-photograph]"));
  CHECK_FALSE(visit.drawn());
  CHECK_FALSE(visit.news(PhotographNews::chosen, "huge.png", {.a = 65e6}));
  CHECK(visit.says("too long: 65 MB, at most 64 MB"));
  CHECK(visit.news(PhotographNews::chosen, "odd.png", {.a = 10}));
  CHECK(visit.news(PhotographNews::refused, "", {.code = 1e9}));  // no fault of ours
  CHECK(visit.says("The picture is broken"));
  CHECK(visit.news(PhotographNews::chosen, "long.png", {.a = 10}));
  visit.done("stop-photograph");
  CHECK(visit.platform.photograph_acts.back().first == PhotographAct::stop);
  CHECK_FALSE(visit.news(PhotographNews::read, "", {.code = 1, .a = 10, .b = 10}));  // too late
  CHECK(visit.says("Your own photograph or scan"));
  CHECK(visit.app.command("add-photograph-point", Value::object({{"x_px", 1}, {"y_px", 1}})).has("error"));
}

TEST_CASE("a store without room is said, and the sheet is kept all the same") {
  FakeStore store;
  PhotographVisit visit(store);
  CHECK(visit.news(PhotographNews::full));
  CHECK(visit.says("! The photograph is not kept: It is not kept: there is too little room"));
  CHECK(visit.says("It is here until another sheet is taken in hand, or the page goes."));
  visit.done("add-mark", Value::object({{"name", "Rock"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  CHECK(visit.app.read()["history"]["kept"]["state"].text()[0] == "kept");
}

TEST_CASE("another sheet has another photograph, or none") {
  FakeStore store;
  PhotographVisit visit(store);
  const std::uint64_t first = visit.sheet();
  visit.done("new-sheet", Value::object({{"mid_lat_deg", 10}, {"mid_lon_deg", 20}, {"scale", 100'000}, {"paper", "A4-across"}}));
  CHECK(visit.platform.photograph_acts.back().first == PhotographAct::bring);
  CHECK(visit.sheet() != first);
  CHECK_FALSE(visit.drawn());
  CHECK_FALSE(visit.app.photograph_news(PhotographNews::drawn, first, "", {}, {}));
  visit.done("undo");
  CHECK(visit.sheet() == first);
}

TEST_CASE("what the photograph goes into, and what not, is said") {
  FakeStore store;
  PhotographVisit visit(store);
  visit.news(PhotographNews::kept);
  CHECK(visit.says("goes into the file of all: into no link, print or other file."));
  visit.done("add-mark", Value::object({{"name", "Rock"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  visit.done("copy-sheet");
  CHECK(visit.margin().find("The photograph stays with the sheet that was copied.") != std::string::npos);
  CHECK_FALSE(visit.drawn());
  visit.done("copy-sheet");  // which has none
  CHECK(visit.margin().find("The photograph stays") == std::string::npos);
}

TEST_CASE("a picture that is dropped on the page, or opened as a file, is taken for a photograph of a chart") {
  FakeStore store;
  Visit visit(store);
  for (const std::string& head : {std::string("\x89PNG\r\n\x1A\n"), std::string("\xFF\xD8\xFF\xE0")}) {
    visit.platform.photograph_acts.clear();
    CHECK(visit.app.file_chosen("chart", 1'000, head) == FileRoad::none);
    REQUIRE_FALSE(visit.platform.photograph_acts.empty());
    CHECK(visit.platform.photograph_acts.back().first == PhotographAct::choose);
    CHECK_FALSE(visit.panel("file"));
  }
}

TEST_CASE("photographs of sheets that are no more are forgotten, unless something is amiss with what is kept") {
  FakeStore store;
  {
    PhotographVisit visit(store);
    visit.leave();
  }
  Visit again(store);
  const auto keep_only = [&](const Visit& visit) { return std::count_if(visit.platform.photograph_acts.begin(), visit.platform.photograph_acts.end(), [](const auto& act) { return act.first == PhotographAct::keep_only; }); };
  CHECK(keep_only(again) == 1);
  FakePlatform platform;
  App app(platform);
  app.store_refused(StoreFault::silent);
  CHECK(platform.photograph_acts.end() == std::find_if(platform.photograph_acts.begin(), platform.photograph_acts.end(), [](const auto& act) { return act.first == PhotographAct::keep_only; }));
}

TEST_CASE("it is taken away from the device too") {
  FakeStore store;
  PhotographVisit visit(store);
  visit.done("remove-photograph");
  CHECK(visit.platform.photograph_acts.back().first == PhotographAct::remove);
  CHECK_FALSE(visit.drawn());
  CHECK(visit.says("[choose-photograph]"));
}
