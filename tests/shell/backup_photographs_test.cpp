// Photographs of charts in the file of all that is kept: where they lie in it, which of them come out, and when.
#include "tests/shell/backup_file.h"

using namespace fogsheet;

namespace {

/// Its bytes are as its size says, and tell which it is.
StoreBytes photograph_bytes(const PhotographInFile& photograph) { return StoreBytes(static_cast<std::size_t>(photograph.bytes), static_cast<std::uint8_t>(photograph.name.front())); }

std::vector<std::uint8_t> followed_by(std::vector<std::uint8_t> records, const std::vector<PhotographInFile>& photographs) {
  for (const PhotographInFile& each : photographs) {
    const StoreBytes bytes = photograph_bytes(each);
    records.insert(records.end(), bytes.begin(), bytes.end());
  }
  return records;
}

std::string label_of(const Panel& panel, const std::string& button) {
  for (const PanelItem& item : panel.items)
    if (const auto* found = std::get_if<ButtonItem>(&item); found && found->name == button) return found->label;
  return "";
}

}  // namespace

TEST_CASE("photographs of charts lie behind the records, and are found by them") {
  KeptDesk desk(11);
  const std::vector<BackupRow> rows = rows_of(desk.sheets, desk.boats, Keeper());
  std::vector<PhotographInFile> photographs{{.sheet = {5}, .name = "a.png", .placing = {1, 2, 3}, .bytes = 1'000, .checksum = 0xFFFF'FFFF}, {.sheet = {6}, .name = "b\xC3\xA9.jpg", .bytes = 7, .checksum = 0}};
  const std::vector<std::uint8_t> records = backup_bytes(rows, k_made_ms, photographs);
  const std::vector<std::uint8_t> whole = followed_by(records, photographs);
  CHECK(backup_record_bytes(head_of(whole)) == records.size());
  CHECK_FALSE(backup_record_bytes(head_of(desk.file())));  // a file without photographs is as it always was
  for (const std::size_t size : {records.size(), records.size() + 500, whole.size()}) {
    const Result<Backup> read = read_backup(std::span(whole).first(size));
    REQUIRE(read.ok());
    CHECK(read->sheets.size() + read->boats.size() == rows.size());
    CHECK(read->amiss.empty());
    CHECK(read->missing == 0);
    CHECK(read->set_aside == 0);
    REQUIRE(read->photographs.size() == 2);
    CHECK(read->photographs[1].at == read->photographs[0].at + 1'000);
    CHECK(whole[static_cast<std::size_t>(read->photographs[0].at)] == 'a');
    CHECK(whole[static_cast<std::size_t>(read->photographs[1].at)] == 'b');
    CHECK(read->cut_off(static_cast<double>(size)) == (size == whole.size() ? 0 : 2));
    std::vector<PhotographInFile> back = read->photographs;
    for (PhotographInFile& each : back) each.at = 0;
    CHECK(back == photographs);
  }
  CHECK(read_backup(records)->cut_off(static_cast<double>(records.size() + 1'000)) == 1);

  // With a byte of the first line damaged the records are found without it.
  for (std::size_t at = 0; at < whole.size() && whole[at] != '\n'; ++at) {
    CAPTURE(at);
    std::vector<std::uint8_t> damaged = whole;
    damaged[at] ^= 0x04;
    const std::optional<std::uint64_t> told = backup_record_bytes(head_of(damaged));
    CHECK((!told || told == records.size()));
    const Result<Backup> read = read_backup(std::span(damaged).first(static_cast<std::size_t>(told.value_or(whole.size()))));
    if (read) CHECK(read->photographs.size() == 2);
    else CHECK(read.problem().fault == Fault::text_newer);
  }
}

TEST_CASE("saved with its photographs, the store cleared, opened again: each goes to its sheet once that is kept") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_backup_sheet);
  const auto in_hand = [](Visit& at) { return at.platform.photograph_acts.back().second; };
  const std::uint64_t sheet = in_hand(visit);
  std::vector<PhotographInFile> photographs{{.sheet = {sheet}, .name = "chart.png", .placing = {1, 2}, .bytes = 30, .checksum = 9}, {.sheet = {sheet + 1}, .name = "of no sheet", .bytes = 3}};
  const std::vector<std::uint8_t> file = followed_by(saved(visit, photographs), photographs);
  CAPTURE(visit.margin());
  CHECK(visit.margin().find("2 sheets, each with its steps, and 2 photographs of charts.") != std::string::npos);

  FakeStore empty;
  Visit again(empty);
  open(again, file);
  CHECK(says(*again.panel("file"), "2 photographs of charts come with their sheets, where none lies yet."));
  again.done("take-in");
  REQUIRE(again.platform.photographs_taken.size() == 1);
  const PhotographInFile taken = again.platform.photographs_taken[0];
  CHECK(taken.sheet.value == in_hand(again));
  CHECK(taken.at == file.size() - 33);
  CHECK(taken.placing == std::vector<std::uint8_t>{1, 2});
  const std::size_t acts = again.platform.photograph_acts.size();
  again.app.photograph_taken(taken.sheet.value, PhotographTaken::kept);
  CHECK(again.margin().find("1 photograph of a chart has come with its sheet.") != std::string::npos);
  REQUIRE(again.platform.photograph_acts.size() == acts + 1);
  CHECK(again.platform.photograph_acts.back() == std::pair(PhotographAct::bring, taken.sheet.value));

  // All is here but, maybe, the photographs: they can still be had.
  open(again, file);
  CHECK(says(*again.panel("file"), "2 stand here already"));
  CHECK(label_of(*again.panel("file"), "take-in") == "Take its photographs in");
  again.done("take-in");
  CHECK(again.margin().find("0 have come") == std::string::npos);
  REQUIRE(again.platform.photographs_taken.size() == 2);
  again.app.photograph_taken(taken.sheet.value, PhotographTaken::damaged);
  CHECK(again.margin().find("1 photograph of a chart is damaged in the file, and has not come.") != std::string::npos);

  // Cut short, and where nothing can be kept.
  open(again, {file.begin(), file.end() - 1});
  CHECK(says(*again.panel("file"), "1 photograph of a chart comes with its sheet"));
  CHECK(says(*again.panel("file"), "The file was cut short: 1 photograph of a chart is not whole in it."));
  FakePlatform platform;
  App shut{platform};
  shut.store_refused(StoreFault::missing);
  shut.start("", false);
  REQUIRE(shut.file_chosen("all.fogsheets", static_cast<double>(file.size()), head_of(file)) == FileRoad::all);
  shut.backup_read(file);
  REQUIRE(shut.command("take-in", Value::object()).has("ok"));
  CHECK(platform.photographs_taken.empty());
  const std::vector<Panel> panels = shut.panels();
  CHECK(std::any_of(panels.begin(), panels.end(), [](const Panel& panel) { return says(panel, "1 photograph of a chart has not come: this browser does not let it be kept."); }));
}

TEST_CASE("where photographs can't be read the file says that they are not in it") {
  FakeStore store;
  Visit visit(store);
  visit.done("new-sheet", k_backup_sheet);
  visit.done("save-all");
  visit.app.photographs_listed(false);
  CHECK(visit.platform.saved_files.size() == 1);
  CHECK(visit.margin().find("Photographs of charts could not be read here, and are not in it.") != std::string::npos);
}
