// All that is kept as one file: there and back again, at every byte damaged or cut, and what of it comes in beside what is here.
#include "core/formats/bytes.h"
#include "core/formats/crc32.h"
#include "tests/shell/backup_file.h"

using namespace fogsheet;

namespace {

/// All that is here, as bytes: documents, pasts, states; but for the count by which caches tell a change.
std::vector<StoreBytes> all_of(Sheets& sheets, Boats& boats) {
  std::vector<StoreBytes> all;
  for (const BackupRow& row : rows_of(sheets, boats, Keeper())) {
    Result<SheetRecord> sheet = read_sheet_record(row.record.bytes);
    if (!sheet) {
      all.push_back(row.record.bytes);
      continue;
    }
    SheetRecord record = std::move(sheet).value();
    record.history.revision = 1;
    all.push_back(written(record));
  }
  std::sort(all.begin(), all.end());
  return all;
}

std::size_t count_of(const std::vector<StoreBytes>& all, const std::vector<StoreBytes>& among) {
  return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const StoreBytes& one) { return std::find(among.begin(), among.end(), one) != among.end(); }));
}

}  // namespace

TEST_CASE("a file of all that was kept gives all of it again, with every past") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    KeptDesk desk(seed);
    const Result<Backup> read = read_backup(desk.file());
    REQUIRE(read.ok());
    CHECK(read->made_ms == k_made_ms);
    CHECK(read->amiss.empty());
    CHECK(read->missing == 0);
    CHECK(read->set_aside == 0);
    REQUIRE(read->boats.size() == 1);

    Sheets sheets{sheet_named("another"), k_start_ms + 1'000'000};
    Boats boats;
    CHECK(fates_of(*read, sheets, boats, Keeper()).count(Fate::comes) == read->sheets.size() + 1);
    take_in(*read, sheets, boats, Keeper(), k_start_ms + 50);
    for (const std::unique_ptr<SheetInDrawer>& sheet : desk.sheets.all()) {
      SheetInDrawer* back = sheets.find(sheet->key);
      if (sheet->key == desk.sheets.all().front()->key) continue;  // the sheet to try, which has nothing on it
      REQUIRE(back);
      CHECK(back->history.now() == sheet->history.now());
      CHECK(back->removed_ms == sheet->removed_ms);
      CHECK(back->over == sheet->over);
      CHECK(written(record_of(*back, 0)).size() == written(record_of(*sheet, 0)).size());
      while (sheet->history.undo()) {
        REQUIRE(back->history.undo());
        CHECK(back->history.now() == sheet->history.now());
      }
      CHECK_FALSE(back->history.undo());
    }
    CHECK(boats.all().front()->now().name == "Small Hours II");
    REQUIRE(boats.all().front()->history.undo());
    CHECK(boats.all().front()->now().name == "Small Hours");
  }
}

TEST_CASE("what is here already is left, what differs comes beside as a copy, once") {
  KeptDesk desk(7);
  const Backup backup = *read_backup(desk.file());
  CHECK(fates_of(backup, desk.sheets, desk.boats, Keeper()).count(Fate::is_here) == backup.sheets.size() + 1);
  const std::vector<StoreBytes> before = all_of(desk.sheets, desk.boats);
  take_in(backup, desk.sheets, desk.boats, Keeper(), k_made_ms);
  CHECK(all_of(desk.sheets, desk.boats) == before);

  // Gone on with since: both stand here then.
  Random random(8);
  SheetInDrawer& changed = desk.sheets.in_hand();
  do_random_act(random, changed.history);
  desk.boats.all().front()->history.undo();
  const Document mine = changed.history.now();
  const Fates fates = fates_of(backup, desk.sheets, desk.boats, Keeper());
  CHECK(fates.count(Fate::comes_beside) == 2);
  CHECK(fates.count(Fate::comes) == 0);
  const std::size_t sheets = desk.sheets.all().size();
  take_in(backup, desk.sheets, desk.boats, Keeper(), k_made_ms);
  CHECK(desk.sheets.all().size() == sheets + 1);
  CHECK(desk.boats.all().size() == 2);
  CHECK(changed.history.now() == mine);
  CHECK(&changed == &desk.sheets.in_hand());
  CHECK(desk.sheets.all().back()->history.now() == backup.sheets.front().history.now);
  take_in(backup, desk.sheets, desk.boats, Keeper(), k_made_ms);
  CHECK(desk.sheets.all().size() == sheets + 1);
  CHECK(desk.boats.all().size() == 2);
}

TEST_CASE("what a sheet was laid over is found again when it came beside under another key") {
  KeptDesk desk(9, 2);
  const SheetKey below = desk.sheets.in_hand().over->sheet, above = desk.sheets.in_hand().key;
  const Backup backup = *read_backup(desk.file());
  Sheets sheets{sheet_named("another"), k_start_ms + 1'000'000};
  Boats boats;
  SheetInDrawer other{.key = below, .history = History(sheet_named("other"))};
  sheets.bring_in(std::move(other));
  take_in(backup, sheets, boats, Keeper(), k_made_ms);
  const SheetInDrawer* copy = sheets.find(sheets.find(above)->over->sheet);
  REQUIRE(copy);
  CHECK(copy->key != below);
  CHECK(copy->history.now() == desk.sheets.find(below)->history.now());
  CHECK(sheets.find(below)->history.now().sheet.name == "other");
}

TEST_CASE("with any byte of it damaged, all else is read and what is damaged is named") {
  KeptDesk desk(5, 3);
  const std::vector<BackupRow> rows = rows_of(desk.sheets, desk.boats, Keeper());
  const std::vector<std::uint8_t> whole = desk.file();
  const std::vector<StoreBytes> all = all_of(desk.sheets, desk.boats);
  std::size_t named = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    CAPTURE(at);
    std::vector<std::uint8_t> damaged = whole;
    damaged[at] = static_cast<std::uint8_t>(damaged[at] ^ 0x55);
    Result<Backup> read = read_backup(damaged);
    if (!read) {  // the number of the format itself
      CHECK(read.problem().fault == Fault::text_newer);
      CHECK(at < 12);
      continue;
    }
    Sheets sheets{sheet_named("demo"), 1};
    Boats boats;
    const std::size_t amiss = read->amiss.size() + read->missing;
    for (const Backup::Amiss& each : read->amiss)
      named += std::any_of(rows.begin(), rows.end(), [&](const BackupRow& row) { return row.title == each.title; }) ? 1 : 0;
    for (SheetRecord& sheet : std::vector(read->sheets)) sheets.bring_in({.key = sheet.key, .history = History(std::move(sheet.history)), .over = sheet.over, .under = sheet.state.under, .changed_ms = sheet.state.changed_ms, .removed_ms = sheet.state.removed_ms});
    for (BoatRecord& boat : std::vector(read->boats)) boats.bring_in({.key = boat.key, .history = BoatHistory(std::move(boat.history)), .removed = boat.removed});
    const std::size_t found = count_of(all_of(sheets, boats), all);
    CHECK(found + 1 >= all.size());
    CHECK((found == all.size() || amiss > 0));
    CHECK(amiss <= 2);
  }
  CHECK(named > whole.size() / 2);
}

TEST_CASE("of a file that was cut short, all that is left of it is read") {
  KeptDesk desk(6, 3);
  const std::vector<std::uint8_t> whole = desk.file();
  const std::size_t rows = rows_of(desk.sheets, desk.boats, Keeper()).size();
  std::size_t most = 0;
  for (std::size_t size = 0; size < whole.size(); ++size) {
    const Result<Backup> read = read_backup(std::span(whole).first(size));
    if (!read) continue;
    const std::size_t got = read->sheets.size() + read->boats.size();
    if (read->made_ms == 0) CHECK(read->missing > 0);
    else CHECK(got + read->missing + read->amiss.size() >= rows);
    CHECK(got >= most);
    most = got;
  }
  CHECK(most + 1 == rows);
  // Bytes lost from the middle of one record: the next is found where it lies now.
  std::vector<std::uint8_t> shorter = whole;
  shorter.erase(shorter.begin() + static_cast<std::ptrdiff_t>(whole.size() / 2), shorter.begin() + static_cast<std::ptrdiff_t>(whole.size() / 2 + 9));
  CHECK(read_backup(shorter)->sheets.size() + read_backup(shorter)->boats.size() + 1 >= rows);
}

TEST_CASE("lengths that lie, huge counts and hostile numbers are bounded") {
  CHECK(read_backup({}).problem().fault == Fault::file_unknown);
  const std::string letter = "Dear all";
  CHECK(read_backup({reinterpret_cast<const std::uint8_t*>(letter.data()), letter.size()}).problem().fault == Fault::file_unknown);
  const std::string newer = "fogsheets:2\nwhatever";
  CHECK(read_backup({reinterpret_cast<const std::uint8_t*>(newer.data()), newer.size()}).problem().fault == Fault::text_newer);

  // A head that tells of more bytes than there are, with the right checksum.
  const auto with_length = [](std::uint64_t length) {
    ByteWriter head;
    for (const std::uint64_t number : {0, 5, 0}) head.whole(number);
    head.text("Gull");
    head.whole(length);
    const std::uint32_t checksum = crc32(head.bytes());
    ByteWriter out;
    out.raw(std::vector<std::uint8_t>{0x1E, 'r', 'o', 'w'});
    out.raw(head.bytes());
    for (int shift = 0; shift < 32; shift += 8) out.raw(std::vector<std::uint8_t>{static_cast<std::uint8_t>(checksum >> shift)});
    return out.bytes();
  };
  for (const std::uint64_t length : {std::uint64_t{1}, std::uint64_t{1} << 31, ~std::uint64_t{0}}) {
    const Result<Backup> read = read_backup(with_length(length));
    REQUIRE(read.ok());
    CHECK(read->amiss == std::vector<Backup::Amiss>{{Backup::Amiss::Kind::unreadable, "Gull"}});
  }

  // Rows within rows, each of which says that it goes on to the end: what is looked through stays in proportion to the file.
  std::vector<std::uint8_t> nested;
  for (int i = 0; i < 3'000; ++i) {
    const std::vector<std::uint8_t> row = with_length(~std::uint64_t{0});
    nested.insert(nested.end(), row.begin(), row.end());
    nested.push_back(1);  // the format of a record: its checksum is looked at
  }
  CHECK(read_backup(nested)->amiss.size() < 10);

  // A sheet that says it has more steps than bytes, or numbers past all that is counted.
  KeptDesk desk(4, 1);
  SheetInDrawer& sheet = desk.sheets.in_hand();
  SheetRecord record = record_of(sheet, 0);
  record.history.revision = ~std::uint64_t{0};
  CHECK_FALSE(read_sheet_record(written(record)).ok());
  record = record_of(sheet, 0);
  record.history.first_state = 0xFFFF'FFF0;
  record.history.state = 0xFFFF'FFF0;
  CHECK_FALSE(read_sheet_record(written(record)).ok());
  record = record_of(sheet, 0);
  record.history.steps.resize(History::k_most_steps + 1);
  CHECK_FALSE(read_sheet_record(written(record)).ok());

  // A key that the store could not tell from its neighbours, times that never were, steps that lead nowhere.
  record = record_of(sheet, 0);
  record.key.value = ~std::uint64_t{0};
  record.state = {.changed_ms = INT64_MAX, .removed_ms = INT64_MIN};
  for (KeptStep& step : record.history.steps) step.difference = {1, 2, 3};
  Sheets sheets{sheet_named("demo"), 1};
  Boats boats;
  take_in({.sheets = {record, record}}, sheets, boats, Keeper(), k_made_ms);
  REQUIRE(sheets.all().size() == 3);
  for (const SheetInDrawer* brought : sheets.removed()) {
    CHECK(brought->key.value < k_most_key);
    CHECK(brought->changed_ms == k_made_ms);
    CHECK(brought->removed_ms == k_made_ms);
    SheetInDrawer& opened = *sheets.find(brought->key);
    sheets.put_back(opened.key);
    REQUIRE(sheets.take(opened.key));
    opened.history.undo();
    CHECK(opened.history.now() == record.history.now);  // what can't be made again is let go of, the present stands
  }
}

TEST_CASE("what is in the store and can't be used is never written over by what comes in") {
  FakeStore store;
  Visit first(store);
  first.done("new-sheet", k_backup_sheet);
  const std::vector<std::uint8_t> file = saved(first);
  const auto record = std::prev(std::find_if(store.records.begin(), store.records.end(), [](const auto& each) { return std::get<0>(each.first) != StorePart::sheets; }));
  record->second[0] = 2;  // a newer program has been at it since
  const auto newer = *record;
  Visit visit(store);
  open(visit, file);
  visit.done("take-in");
  CHECK(store.records.at(newer.first) == newer.second);
  Visit again(store);
  CHECK(again.app.read()["sheet"]["name"] == Value("Gull"));
  open(again, file);
  CHECK(says(*again.panel("file"), "2 stand here already"));
}

TEST_CASE("a record of a newer program is named, and stays in the file") {
  KeptDesk desk(3, 1);
  std::vector<BackupRow> rows = rows_of(desk.sheets, desk.boats, Keeper());
  rows[0].record.bytes[0] = 2;
  rows.push_back({{.part = StorePart::damaged, .sheet = 5, .sequence = 9, .bytes = {1, 2, 3}}, "Old"});
  const Backup read = *read_backup(backup_bytes(rows, k_made_ms));
  REQUIRE(read.amiss.size() == 1);
  CHECK(read.amiss[0] == Backup::Amiss{Backup::Amiss::Kind::newer, rows[0].title});
  CHECK(read.set_aside == 1);
  CHECK(read.missing == 0);
}

TEST_CASE("saved from the drawer, the store cleared, opened again: everything as it was") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_backup_sheet);
  visit.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.01}, {"lon_deg", -31}}));
  visit.done("copy-sheet");
  visit.done("set-date", Value::object({{"date", "2027-05-01"}}));
  visit.done("undo");
  visit.done("delete-sheet");
  visit.done("new-boat", Value::object({{"name", "Small Hours"}}));
  const std::vector<std::uint8_t> file = saved(visit);

  FakeStore empty;
  Visit again(empty);
  open(again, file);
  CHECK(says(*again.panel("file"), "3 sheets, 1 of them taken out, and 1 boat"));
  CHECK(says(*again.panel("file"), "4 come in."));
  again.done("take-in");
  CHECK(again.margin().find("4 have come in from the file.") != std::string::npos);
  CHECK(again.app.read()["sheet"]["name"] == visit.app.read()["sheet"]["name"]);
  CHECK(again.app.read()["marks"] == visit.app.read()["marks"]);
  CHECK(again.app.read()["history"]["undo_label"] == visit.app.read()["history"]["undo_label"]);
  CHECK(again.app.read()["history"]["drawer"].items()->size() == 3);  // the sheet to try has made way
  CHECK(again.app.command("take-in", Value::object()).has("error"));

  // Kept by now: a later visit has it all, and the file again brings nothing.
  Visit later(empty);
  CHECK(later.app.read()["history"]["drawer"].items()->size() == 3);
  open(later, file);
  CHECK(says(*later.panel("file"), "4 stand here already, the same."));
  CHECK(later.app.read()["history"]["boats"] == again.app.read()["history"]["boats"]);
}

TEST_CASE("taking a file in changes nothing of what is in hand") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_backup_sheet);
  const std::vector<std::uint8_t> file = saved(visit);
  visit.done("add-mark", Value::object({{"name", "Gull Rock"}, {"lat_deg", 44.01}, {"lon_deg", -31}}));
  const Value mine = visit.app.read();
  open(visit, file);
  CHECK(says(*visit.panel("file"), "1 is here in another state"));
  visit.done("take-in");
  CHECK(visit.app.read()["marks"] == mine["marks"]);
  CHECK(visit.app.read()["sheet"] == mine["sheet"]);
  const std::size_t sheets = visit.app.read()["history"]["drawer"].items()->size();
  CHECK(sheets == mine["history"]["drawer"].items()->size() + 1);
  Visit again(store);
  CHECK(again.app.read()["history"]["drawer"].items()->size() == sheets);
  CHECK(again.app.read()["marks"] == mine["marks"]);
}
