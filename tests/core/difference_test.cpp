// What changed between two documents, as bytes: applied again it gives the other one, damaged it gives a sound document or
// a problem, and it costs what changed.
#include "core/document/difference.h"

#include "doctest/doctest.h"

#include "core/base/random.h"
#include "core/document/integrity.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

Document many_marks(int count) {
  Document document = made_sheet({.name = "Many", .mid_lat_deg = 44, .mid_lon_deg = -31, .scale = 100'000, .date = {2026, 11, 25}}).value();
  std::vector<Mark> rows;
  for (int i = 0; i < count; ++i) {
    const std::uint32_t id = document.next_id++;
    rows.push_back({.id = {id}, .name = "Mark " + std::to_string(i), .at = {document.sheet.middle.lat + i, document.sheet.middle.lon}});
  }
  document.marks = Table<Mark>::of(std::move(rows));
  return document;
}

}  // namespace

TEST_CASE("a difference applied gives the document it was made towards, between any two") {
  constexpr std::uint64_t k_seed = 20261125;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int round = 0; round < 60; ++round) {
    History history(random_document(random, 10));
    std::vector<Document> states{history.now()};
    for (int act = 0; act < 25; ++act) {
      do_random_act(random, history);
      states.push_back(history.now());
      const std::vector<std::uint8_t> step = difference(states[states.size() - 2], states.back());
      const Result<Document> again = applied(step, states[states.size() - 2]);
      REQUIRE(again.ok());
      REQUIRE(*again == states.back());
    }
    for (int pair = 0; pair < 20; ++pair) {
      const auto a = static_cast<std::size_t>(random.whole(0, 25)), b = static_cast<std::size_t>(random.whole(0, 25));
      const Result<Document> again = applied(difference(states[a], states[b]), states[a]);
      REQUIRE(again.ok());
      CHECK(*again == states[b]);
    }
    const Document other = random_document(random, 30);
    const Result<Document> across = applied(difference(states.back(), other), states.back());
    REQUIRE(across.ok());
    CHECK(*across == other);
    CHECK(difference(other, other).empty());
  }
}

TEST_CASE("rows in any new order, some gone, some new, some changed") {
  constexpr std::uint64_t k_seed = 7;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int round = 0; round < 300; ++round) {
    const Document before = many_marks(static_cast<int>(random.whole(0, 300)));
    Document after = before;
    for (std::int64_t edits = random.whole(0, 12); edits > 0; --edits) {
      const std::size_t size = after.marks.size();
      const auto place = [&] { return static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(size) - 1)); };
      const std::int64_t choice = random.whole(0, 3);
      if (size == 0 || choice == 0) {
        Mark fresh{.id = {after.next_id++}, .name = "new", .at = after.sheet.middle};
        after.marks = after.marks.inserted(static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(size))), fresh);
      } else if (choice == 1) {
        after.marks = after.marks.without(after.marks.at(place()).id);
      } else if (choice == 2) {
        Mark changed = after.marks.at(place());
        changed.name += "'";
        after.marks = after.marks.replaced(changed);
      } else {
        after.marks = after.marks.moved(after.marks.at(place()).id, place());
      }
    }
    const Result<Document> again = applied(difference(before, after), before);
    REQUIRE(again.ok());
    CHECK(*again == after);
  }
}

TEST_CASE("a difference is as small as the change, however much there is") {
  const Document before = many_marks(10'000);
  Document after = before;
  Mark mark = after.marks.at(5'000);
  mark.at.lat += 100;
  after.marks = after.marks.replaced(mark);
  const std::vector<std::uint8_t> step = difference(before, after);
  CHECK(step.size() < 64);
  const Table<Mark> made = applied(step, before).value().marks;
  CHECK(Table<Mark>::apart(before.marks, made).here.size() <= 64);  // all other chunks are shared
  after.marks = before.marks.moved(before.marks.at(9'999).id, 0);
  CHECK(difference(before, after).size() < 64);
  after.marks = before.marks.moved(before.marks.at(0).id, 9'999);
  CHECK(difference(before, after).size() < 64);
}

TEST_CASE("a damaged difference gives a sound document or a problem, and never stops the program") {
  constexpr std::uint64_t k_seed = 99;
  CAPTURE(k_seed);
  Random random(k_seed);
  int sound = 0, refused = 0;
  for (int round = 0; round < 400; ++round) {
    History history(random_document(random, 12));
    const Document before = history.now();
    for (int act = 0; act < 3; ++act) do_random_act(random, history);
    const std::vector<std::uint8_t> step = difference(before, history.now());
    if (step.empty()) continue;
    for (int hit = 0; hit < 20; ++hit) {
      std::vector<std::uint8_t> damaged = step;
      const auto at = static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(damaged.size()) - 1));
      switch (random.whole(0, 2)) {
        case 0: damaged[at] = static_cast<std::uint8_t>(random.whole(0, 255)); break;
        case 1: damaged.resize(at); break;
        default: damaged.erase(damaged.begin() + static_cast<std::ptrdiff_t>(at)); break;
      }
      const Result<Document> made = applied(damaged, before);
      if (made) CHECK(check_document(*made).ok());
      (made ? sound : refused) += 1;
    }
  }
  CHECK(sound > 100);
  CHECK(refused > 100);
}

TEST_CASE("what would make a document unsound is refused") {
  Document before = many_marks(3);
  const MarkId a = before.marks.at(0).id, b = before.marks.at(1).id;
  before.legs = before.legs.with({.id = {before.next_id++}, .from = a, .to = b});
  const auto is_refused = [&](const Document& after) { return !applied(difference(before, after), before).ok(); };

  Document after = before;
  after.marks = after.marks.without(a);
  CHECK(is_refused(after));  // a leg that ends at no mark
  after = before;
  Mark moved = before.marks.at(0);
  moved.at = before.marks.at(1).at;
  after.marks = after.marks.replaced(moved);
  CHECK(is_refused(after));  // a leg of no length
  after = before;
  after.legs = after.legs.with({.id = {after.next_id++}, .from = a, .to = b});
  CHECK(is_refused(after));  // two legs alike
  after = before;
  moved.at.lat = 0;
  after.marks = before.marks.replaced(moved);
  CHECK(is_refused(after));  // off the sheet
  after = before;
  after.legs = after.legs.with({.id = {before.roses.at(0).id.value}, .from = b, .to = a});
  CHECK(is_refused(after));  // one id for two
  after = before;
  after.next_id = 2;
  CHECK(is_refused(after));  // ids beyond the next
}
