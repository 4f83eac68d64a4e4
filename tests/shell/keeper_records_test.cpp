// Records of the store: there and back again, newer ones told from damaged ones, and what can be saved of those.
#include "shell/keeper/records.h"

#include "core/base/random.h"
#include "core/document/actions.h"
#include "core/formats/bytes.h"
#include "doctest/doctest.h"
#include "tests/core/random_acts.h"

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
