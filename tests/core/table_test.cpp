// Tables of a document: the user's order, edits that leave former tables as they were, sharing.
#include "core/document/table.h"

#include <string>
#include <vector>

#include "core/base/random.h"
#include "core/document/document.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

Mark mark(std::uint32_t id, std::string name = "m") { return {.id = {id}, .name = std::move(name)}; }

std::vector<Mark> rows_of(const Table<Mark>& table) {
  std::vector<Mark> rows;
  for (const Mark& row : table) rows.push_back(row);
  return rows;
}

}  // namespace

TEST_CASE("an empty table has no rows") {
  const Table<Mark> table;
  CHECK(table.empty());
  CHECK(table.begin() == table.end());
  CHECK(table.find({1}) == nullptr);
  CHECK(table == Table<Mark>::of({}));
}

TEST_CASE("tables follow a plain list through any edits, and former tables stay as they were") {
  constexpr std::uint64_t k_seed = 20260710;
  CAPTURE(k_seed);
  Random random(k_seed);
  Table<Mark> table;
  std::vector<Mark> list;
  std::uint32_t next_id = 1;
  for (int step = 0; step < 2'000; ++step) {
    const Table<Mark> before = table;
    const std::vector<Mark> list_before = list;
    const std::int64_t choice = random.whole(0, 4);
    const auto place = list.empty() ? 0 : static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(list.size()) - 1));
    if (choice <= 2 || list.empty()) {
      list.push_back(mark(next_id));
      table = table.with(mark(next_id++));
    } else if (choice == 3) {
      list[place].name += "x";
      table = table.replaced(list[place]);
    } else {
      table = table.without(list[place].id);
      list.erase(list.begin() + static_cast<std::ptrdiff_t>(place));
    }
    REQUIRE(table.size() == list.size());
    if (step % 50 == 0) {
      CHECK(rows_of(table) == list);
      CHECK(rows_of(before) == list_before);
      CHECK(table == Table<Mark>::of(list));
      CHECK_FALSE(table == before);
      for (std::size_t i = 0; i < list.size(); ++i) {
        CHECK(table.at(i) == list[i]);
        CHECK(*table.find(list[i].id) == list[i]);
      }
    }
  }
}

TEST_CASE("a table emptied row by row is an empty table") {
  Table<Mark> table = Table<Mark>::of({mark(1), mark(2)});
  table = table.without({1}).without({2});
  CHECK(table.empty());
  CHECK(table.begin() == table.end());
  CHECK(table == Table<Mark>());
}

TEST_CASE("rows taken out together leave the others in their order, and untouched chunks shared") {
  std::vector<Mark> rows;
  for (std::uint32_t id = 1; id <= 1'000; ++id) rows.push_back(mark(id));
  const Table<Mark> before = Table<Mark>::of(rows);
  const auto goes = [](const Mark& row) { return row.id.value <= 100 && row.id.value % 3 == 0; };
  const Table<Mark> after = before.without_all(goes);
  std::erase_if(rows, goes);
  CHECK(rows_of(after) == rows);
  CHECK(after.size() == rows.size());
  CHECK(after.find({999}) == before.find({999}));
  CHECK(before.without_all([](const Mark&) { return true; }).empty());
  CHECK(before.without_all([](const Mark&) { return false; }) == before);
  CHECK(Table<Mark>().without_all(goes).empty());
}

TEST_CASE("an edit shares the rows of all chunks but its own") {
  std::vector<Mark> rows;
  for (std::uint32_t id = 1; id <= 1'000; ++id) rows.push_back(mark(id));
  const Table<Mark> before = Table<Mark>::of(rows);
  const Table<Mark> after = before.replaced(mark(500, "moved"));
  std::size_t copied = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) copied += &before.at(i) != &after.at(i);
  CHECK(copied <= 64);
  CHECK(before.at(499).name == "m");
  CHECK(after.at(499).name == "moved");
}

TEST_CASE("rows put in and moved stand where they were wanted, and share the other chunks") {
  Random random(20261125);
  std::vector<Mark> list;
  Table<Mark> table;
  for (std::uint32_t id = 1; id <= 400; ++id) {
    const auto place = static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(list.size())));
    list.insert(list.begin() + static_cast<std::ptrdiff_t>(place), mark(id));
    table = table.inserted(place, mark(id));
  }
  CHECK(rows_of(table) == list);
  for (int move = 0; move < 200; ++move) {
    const auto from = static_cast<std::size_t>(random.whole(0, 399)), to = static_cast<std::size_t>(random.whole(0, 399));
    const Mark moved = list[from];
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(from));
    list.insert(list.begin() + static_cast<std::ptrdiff_t>(to), moved);
    table = table.moved(moved.id, to);
    REQUIRE(table.place_of(moved.id) == to);
  }
  CHECK(rows_of(table) == list);
  CHECK(table.place_of({9'999}) == table.size());
}
