// Records of the store: there and back again, newer ones told from damaged ones, and what can be saved of those.
#include "shell/keeper/records.h"

#include "core/base/random.h"
#include "core/document/actions.h"
#include "core/formats/base64url.h"
#include "core/formats/bytes.h"
#include "core/formats/crc32.h"
#include "core/formats/document_text.h"
#include "doctest/doctest.h"
#include "tests/core/random_acts.h"
#include "tests/shell/kept_page.h"
#include "tests/shell/visit.h"

using namespace fogsheet;

namespace {

SheetRecord random_record(Random& random) {
  History history(random_document(random, 5));
  for (int act = 0; act < 6; ++act) do_random_act(random, history);
  history.undo();
  return {.key = {1'795'600'000'000},
          .through = 17,
          .over = LaidOver{{1'795'599'000'000}, {Act::new_sheet, random_name(random)}},
          .state = {.changed_ms = 1'795'600'500'000, .removed_ms = 5, .under = TakenOff{{9}, {Act::open_sheet, "x"}, 4, 2}},
          .history = history.kept()};
}

}  // namespace

TEST_CASE("a sheet's record gives the sheet again") {
  Random random(3);
  for (int round = 0; round < 20; ++round) {
    const SheetRecord record = random_record(random);
    const Result<SheetRecord> back = read_sheet_record(written(record));
    REQUIRE(back.ok());
    CHECK(back->key == record.key);
    CHECK(back->through == 17);
    REQUIRE(back->over);
    CHECK(back->over->sheet == record.over->sheet);
    CHECK(back->over->label == record.over->label);
    CHECK(back->state == record.state);
    CHECK(back->history.now == record.history.now);
    CHECK(back->history.first == record.history.first);
    CHECK(back->history.steps == record.history.steps);
    CHECK(back->history.state == record.history.state);
    CHECK(back->history.commits == record.history.commits);
    CHECK(back->history.revision == record.history.revision);
  }
}

TEST_CASE("a journal's record gives the change again") {
  Random random(4);
  History history(random_document(random, 5));
  for (int act = 0; act < 6; ++act) do_random_act(random, history);
  const JournalRecord record{.follows = 0xDEADBEEF, .state = {.changed_ms = 7}, .change = history.change()};
  const Result<JournalRecord> back = read_journal_record(written(record));
  REQUIRE(back.ok());
  CHECK(back->follows == 0xDEADBEEF);
  CHECK(back->state == record.state);
  CHECK(back->change.steps == record.change.steps);
  CHECK(back->change.state == 6);
  CHECK(back->change.unchanged_to == 0);
}

TEST_CASE("every damage to a byte is told, and the present document saved wherever it is whole") {
  Random random(5);
  const SheetRecord record = random_record(random);
  const StoreBytes whole = written(record);
  std::size_t saved = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    StoreBytes damaged = whole;
    damaged[at] = static_cast<std::uint8_t>(damaged[at] ^ (1 + random.whole(0, 254)));
    const Result<SheetRecord> read = read_sheet_record(damaged);
    REQUIRE_FALSE(read.ok());
    if (const std::optional<SheetRecord> rest = salvaged(damaged); rest && rest->history.now == record.history.now) ++saved;
    CHECK_FALSE(read_sheet_record(std::span(whole).first(at)).ok());
  }
  CHECK(saved > whole.size() / 3);
  CHECK(saved < whole.size());
}

TEST_CASE("a record of a newer format is told as such, whatever follows") {
  ByteWriter out;
  out.whole(k_record_format + 1);
  out.text("whatever");
  const Result<SheetRecord> read = read_sheet_record(out.bytes());
  REQUIRE_FALSE(read.ok());
  CHECK(read.problem().fault == Fault::text_newer);
  CHECK(read_journal_record(out.bytes()).problem().fault == Fault::text_newer);
  CHECK_FALSE(salvaged(out.bytes()));
}

namespace {

/// The text of a document with a section that a later program has put behind it.
std::string with_later_section(const Document& document, bool may_be_left_out) {
  const std::string text = encode_document(document);
  std::vector<std::uint8_t> bytes = base64url_decode(std::string_view(text).substr(2)).value();
  bytes.resize(bytes.size() - 4);
  ByteWriter section;
  section.whole(99 << 1 | (may_be_left_out ? 1 : 0));
  section.text("a later thing");
  bytes.insert(bytes.end(), section.bytes().begin(), section.bytes().end());
  const std::uint32_t checksum = crc32(bytes);
  for (int i = 0; i < 4; ++i) bytes.push_back(static_cast<std::uint8_t>(checksum >> (8 * i)));
  return "1:" + base64url_encode(bytes);
}

/// A sheet's record whose document has such a section.
StoreBytes newer_record(SheetKey key, const Document& document, bool may_be_left_out) {
  ByteWriter body;
  body.whole(key.value);
  body.text(with_later_section(document, may_be_left_out));
  for (const std::uint64_t nothing_of : {0, 0, 0, 0, 0}) body.whole(nothing_of);  // through, over, changed, removed, under
  for (const std::uint64_t number : {0, 0, 0, 1, 0}) body.whole(number);  // first state, state, commits, revision, steps
  return framed(body.bytes());
}

}  // namespace

TEST_CASE("what a newer program put on a sheet is read as far as it can be, saved whole, and never written over") {
  const Document document = sheet_named("Newer");
  FakeStore store;
  const SheetKey key{k_start_ms};
  store.records[{StorePart::sheets, key.value, 0}] = newer_record(key, document, true);
  const auto as_found = store.records;
  Visit visit(store);
  visit.settle();
  CHECK(*visit.app.read()["sheet"]["name"].text() == "Newer");
  CHECK(visit.margin().find("newer version") != std::string::npos);
  visit.done("save-sheet");
  REQUIRE(visit.platform.saved_files.size() == 1);
  CHECK(visit.platform.saved_files.begin()->second == with_later_section(document, true) + "\n");

  visit.done("add-mark", Value::object({{"name", "mine"}, {"lat_deg", 44}, {"lon_deg", -31}}));
  CHECK(visit.app.read()["marks"].items()->size() == 1);
  CHECK(visit.margin().find("copy") != std::string::npos);
  CHECK(visit.app.read()["history"]["drawer"].items()->size() == 2);
  CHECK_FALSE(visit.app.read()["history"]["drawer"].items()->at(0)["key"] == Value(std::to_string(key.value)));
  visit.done("open-sheet", Value::object({{"key", std::to_string(key.value)}}));
  CHECK(visit.app.read()["marks"].items()->empty());
  CHECK(visit.app.read()["history"]["drawer"].items()->size() == 2);  // once, not each time it is looked at
  // Taken out here it would come back: nothing of it is written.
  CHECK(visit.app.command("delete-sheet", Value::object())["error"].text()->find("newer version") != std::string::npos);
  CHECK(visit.app.read()["history"]["drawer"].items()->size() == 2);
  visit.leave();
  for (const auto& [name, bytes] : as_found) CHECK(store.records[name] == bytes);
  Visit later(store);
  CHECK(later.app.read()["history"]["drawer"].items()->size() == 2);
}

TEST_CASE("a sheet whose document needs a newer program is told as newer, not as damaged, and left as it is") {
  FakeStore store;
  const SheetKey key{k_start_ms};
  store.records[{StorePart::sheets, key.value, 0}] = newer_record(key, sheet_named("Newer"), false);
  CHECK(read_sheet_record(store.records.begin()->second).problem().fault == Fault::text_newer);
  const auto as_found = store.records;
  Page page(store);
  CHECK(page.keeper.findings() == std::vector<Finding>{{Finding::Kind::newer, key}});
  page.mark(store, "A");
  page.answer(store);
  CHECK(page.keeper.keeping() == Keeping::kept);
  for (const auto& [name, bytes] : as_found) CHECK(store.records[name] == bytes);
}
