// A sheet on its way to somebody else, and one that comes by a link: what goes along, what is too long and why, and that
// nothing of the user's own is put aside unasked.
#include "core/exchange/qr_code.h"
#include "core/formats/document_text.h"
#include "core/formats/qr_figure.h"
#include "shell/words.h"
#include "shell/words_of_sending.h"
#include "tests/bench/link_routes.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

const Value k_sheet = Value::object({{"mid_lat_deg", 44}, {"mid_lon_deg", -31}, {"scale", 100'000}, {"paper", "A4-across"}, {"name", "Mine"}});

Value text_of(std::uint64_t seed, int marks = 5) { return Value::object({{"text", encode_document(seeded_route(seed, marks))}}); }
std::size_t sheets_in(Visit& visit) { return visit.app.read()["history"]["drawer"].items()->size(); }

template <class Item>
const Item* item_named(Visit& visit, const std::string& panel_name, const std::string& name) {
  const Panel* panel = visit.panel(panel_name);
  if (!panel) return nullptr;
  for (const PanelItem& item : panel->items)
    if (const auto* found = std::get_if<Item>(&item); found && found->name == name) return found;
  return nullptr;
}

const ButtonItem* button(Visit& visit, const std::string& panel, const std::string& name) { return item_named<ButtonItem>(visit, panel, name); }

}  // namespace

TEST_CASE("a link opened while only the sheet to try is there opens at once and says what it holds") {
  FakeStore store;
  const Document route = seeded_route(1, 5);
  Visit visit(store, encode_document(route));
  CHECK(*visit.app.read()["sheet"]["name"].text() == route.sheet.name);
  CHECK(visit.margin().find("5 marks, 4 legs") != std::string::npos);
}

TEST_CASE("a link asks while a sheet of the user's own is in hand, and opens beside it") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  const std::size_t before = sheets_in(visit);
  visit.done("open-link", text_of(1));
  CHECK(*visit.app.read()["sheet"]["name"].text() == "Mine");
  REQUIRE(button(visit, "link", "open-arrived") != nullptr);
  visit.done("put-link-away");
  CHECK(button(visit, "link", "open-arrived") == nullptr);
  CHECK(visit.app.command("open-arrived", Value::object()).has("error"));
  CHECK(sheets_in(visit) == before);
  visit.done("open-link", text_of(1));
  visit.done("open-arrived");
  CHECK(*visit.app.read()["sheet"]["name"].text() == seeded_route(1, 5).sheet.name);
  CHECK(sheets_in(visit) == before + 1);
}

TEST_CASE("the same link again takes the sheet that is there, unless it has been changed") {
  FakeStore store;
  Visit visit(store);
  visit.done("open-link", text_of(1));
  const std::size_t with_it = sheets_in(visit);
  visit.done("open-link", text_of(1));
  visit.done("new-sheet", k_sheet);
  visit.done("open-link", text_of(1));
  CHECK(*visit.app.read()["sheet"]["name"].text() == seeded_route(1, 5).sheet.name);
  CHECK(sheets_in(visit) == with_it + 1);
  visit.done("set-date", Value::object({{"date", "2026-08-01"}}));
  visit.done("open-link", text_of(1));
  REQUIRE(button(visit, "link", "open-arrived") != nullptr);
  visit.done("open-arrived");
  CHECK(sheets_in(visit) == with_it + 2);
}

TEST_CASE("one link after another, neither changed, asks nothing") {
  FakeStore store;
  Visit visit(store);
  visit.done("open-link", text_of(1));
  visit.done("open-link", text_of(2));
  CHECK(*visit.app.read()["sheet"]["name"].text() == seeded_route(2, 5).sheet.name);
}

TEST_CASE("a damaged link changes nothing") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  CHECK(visit.app.command("open-link", Value::object({{"text", "1:AAAA"}})).has("error"));
  CHECK(*visit.app.read()["sheet"]["name"].text() == "Mine");
}

TEST_CASE("a link that messages would cut offers the file first, and why") {
  FakeStore store;
  Visit visit(store);
  visit.done("open-text", text_of(1, 20));
  visit.done("open-slip", Value::object({{"slip", "send"}}));
  CHECK(button(visit, "send", "copy-link")->look == ButtonLook::main);
  CHECK(button(visit, "send", "show-code")->enabled);
  CHECK(button(visit, "send", "share-link") == nullptr);
  visit.done("open-text", text_of(1, 300));
  visit.done("open-slip", Value::object({{"slip", "send"}}));
  CHECK(button(visit, "send", "copy-link")->look == ButtonLook::plain);
  CHECK(button(visit, "send", "save-sheet")->look == ButtonLook::main);
  CHECK_FALSE(button(visit, "send", "show-code")->enabled);
  CHECK(*visit.app.command("show-code", Value::object())["error"].text() == words::code_too_long(858));
}

TEST_CASE("what the browser can share with is offered, and it gets link or file") {
  FakeStore store;
  Visit visit(store);
  CHECK(visit.app.command("share-link", Value::object()).has("error"));
  visit.platform.settings["share"] = "files";
  visit.done("open-text", text_of(1));
  visit.done("open-slip", Value::object({{"slip", "send"}}));
  REQUIRE(button(visit, "send", "share-file") != nullptr);
  visit.done("share-link");
  visit.done("share-file");
  REQUIRE(visit.platform.shared.size() == 2);
  CHECK(visit.platform.shared[0].text == visit.app.link());
  CHECK(visit.platform.shared[0].file_name.empty());
  CHECK(visit.platform.shared[1].file_name == words::sheet_title(seeded_route(1, 5)) + ".fogsheet");
  CHECK(*decode_document(visit.platform.shared[1].text) == seeded_route(1, 5));
  visit.app.not_shared();
}

TEST_CASE("a code is of the link as it is, and is taken away when that changes") {
  FakeStore store;
  Visit visit(store);
  visit.done("open-text", text_of(1));
  visit.done("show-code");
  CHECK(visit.platform.code_asked_for == visit.app.link());
  CHECK(item_named<FigureItem>(visit, "code", "code") == nullptr);
  visit.app.code_made(qr_code(visit.platform.code_asked_for));
  REQUIRE(item_named<FigureItem>(visit, "code", "code") != nullptr);
  visit.done("set-date", Value::object({{"date", "2026-08-01"}}));
  CHECK(item_named<FigureItem>(visit, "code", "code") == nullptr);
  REQUIRE(button(visit, "code", "show-code") != nullptr);
  visit.done("close-slip");
  CHECK(button(visit, "send", "copy-link") != nullptr);
}

TEST_CASE("of a code that is to be made again only what has changed is said to have changed") {
  FakeStore store;
  const auto says_changed = [](Visit& visit) {
    REQUIRE(button(visit, "code", "show-code") != nullptr);
    const std::vector<PanelItem>& items = visit.panel("code")->items;
    return std::any_of(items.begin(), items.end(), [](const PanelItem& item) { return std::holds_alternative<LineItem>(item) && std::get<LineItem>(item).text == words::code_is_old(); });
  };
  {
    Visit visit(store);
    visit.done("open-text", text_of(1));
    visit.done("show-code");
    visit.done("set-date", Value::object({{"date", "2026-08-01"}}));
    CHECK(says_changed(visit));
    visit.leave();
  }
  Visit again(store);
  CHECK_FALSE(says_changed(again));
}

// RFC 5870, section 3.3: geo: latitude, longitude in decimal degrees.
TEST_CASE("a mark's place is copied as a geo: link, and taken again where one is typed") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_sheet);
  const std::string id = *visit.done("add-mark", Value::object({{"name", "Rock"}, {"lat_deg", 44.025}, {"lon_deg", -31.0105}}))["id"].text();
  visit.done("select-mark", Value::object({{"id", id}}));
  REQUIRE(button(visit, "mark", "copy-place") != nullptr);
  visit.done("copy-place", Value::object({{"id", id}}));
  CHECK(visit.platform.copied_text == "geo:44.025000,-31.010500");
  visit.app.copied(true);
  CHECK(visit.margin().find("geo:") != std::string::npos);
  visit.done("type-mark", Value::object({{"id", id}, {"field", "position"}, {"text", "geo:44.03,-31.02;u=20"}}));
  CHECK(*visit.app.read()["marks"].items()->at(0)["lat_deg"].number() == doctest::Approx(44.03).epsilon(1e-9));
  visit.app.copied(false);
  CHECK(visit.margin().find("could not be copied") != std::string::npos);
}

TEST_CASE("at night a code begins with little light") {
  FakeStore store;
  Visit visit(store);
  visit.done("set-palette", Value::object({{"palette", "night"}}));
  visit.done("show-code");
  CHECK(item_named<ChoiceItem>(visit, "code", "code-light")->chosen == "little");
  visit.app.code_made({});
  CHECK(item_named<FigureItem>(visit, "code", "code") == nullptr);
}

TEST_CASE("a code's drawing is all its dark modules within a quiet zone of four") {
  const std::vector<std::uint8_t> code = qr_code("https://example.org/#1:A");
  const int side = code.at(0);
  const std::string svg = qr_svg(code, 100);
  CHECK(svg.find("viewBox=\"0 0 " + std::to_string(side + 8) + " " + std::to_string(side + 8) + "\"") != std::string::npos);
  // The upper left finder: seven dark modules from the corner on (ISO/IEC 18004:2015, 5.3.3).
  CHECK(svg.find("M4 4h7v1h-7z") != std::string::npos);
  CHECK(svg.find("#FFFFFF") != std::string::npos);
  CHECK(qr_svg(code, 35).find("#595959") != std::string::npos);
  CHECK(qr_svg({}, 100).empty());
  CHECK(qr_code(std::string(858, 'a')).at(0) == 97);
  CHECK(qr_code(std::string(859, 'a')).empty());
}
