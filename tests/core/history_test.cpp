// The past of a document: undo of any act gives an equal document, redo likewise, over long sequences of acts.
#include "core/document/history.h"

#include <vector>

#include "doctest/doctest.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

History fresh_history(Random& random) { return History(random_document(random, 0)); }

}  // namespace

TEST_CASE("undo takes back any act, redo brings it again") {
  constexpr std::uint64_t k_seed = 20260711;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int run = 0; run < 20; ++run) {
    History history = fresh_history(random);
    std::vector<Document> states{history.now()};
    for (int act = 0; act < 200; ++act) {
      do_random_act(random, history);
      states.push_back(history.now());
    }
    for (std::size_t i = states.size() - 1; i-- > 0;) {
      REQUIRE(history.undo());
      CHECK(history.now() == states[i]);
    }
    CHECK_FALSE(history.undo());
    for (std::size_t i = 1; i < states.size(); ++i) {
      REQUIRE(history.redo());
      CHECK(history.now() == states[i]);
    }
    CHECK_FALSE(history.redo());
  }
}

TEST_CASE("undo and redo in any order walk one line of documents") {
  constexpr std::uint64_t k_seed = 20260712;
  CAPTURE(k_seed);
  Random random(k_seed);
  History history = fresh_history(random);
  std::vector<Document> line{history.now()};
  std::size_t here = 0;
  for (int step = 0; step < 3'000; ++step) {
    const std::uint64_t revision = history.revision();
    const std::int64_t choice = random.whole(0, 3);
    if (choice <= 1) {
      do_random_act(random, history);
      line.resize(++here);
      line.push_back(history.now());
      CHECK(history.redo_label() == nullptr);
      CHECK(history.revision() > revision);
    } else if (choice == 2) {
      CHECK(history.undo() == (here > 0));
      if (here > 0) --here;
    } else {
      CHECK(history.redo() == (here + 1 < line.size()));
      if (here + 1 < line.size()) ++here;
    }
    REQUIRE(history.now() == line[here]);
    CHECK((history.undo_label() != nullptr) == (here > 0));
    CHECK((history.redo_label() != nullptr) == (here + 1 < line.size()));
    CHECK(history.revision() >= revision);
  }
}

TEST_CASE("labels follow their step to and fro") {
  Random random(3);
  History history = fresh_history(random);
  const Position at = random_place_on(random, history.now());
  REQUIRE(add_mark(history, {.name = "Gull Rock", .lat_deg = at.lat_deg, .lon_deg = at.lon_deg}));
  const Label label{Act::add_mark, "Gull Rock"};
  CHECK(*history.undo_label() == label);
  history.undo();
  CHECK(history.undo_label() == nullptr);
  CHECK(*history.redo_label() == label);
  history.redo();
  CHECK(*history.undo_label() == label);
}

TEST_CASE("ten thousand steps can be undone, the oldest beyond them can't") {
  Random random(4);
  History history = fresh_history(random);
  const Document first = history.now();
  Document next = first;
  for (std::size_t step = 0; step < History::k_most_steps + 5; ++step) {
    next.sheet.scale = 25'000 + static_cast<int>(step);
    history.commit(next, {Act::set_date, {}});
  }
  std::size_t undone = 0;
  while (history.undo()) ++undone;
  CHECK(undone == History::k_most_steps);
  CHECK(history.first_state() == 5);
  CHECK(history.last_state() == History::k_most_steps + 5);
  CHECK(history.now().sheet.scale == 25'004);
}

TEST_CASE("any state there is can be gone to, each step has its label") {
  Random random(5);
  History history = fresh_history(random);
  std::vector<Document> states{history.now()};
  std::vector<Label> labels;
  for (int act = 0; act < 30; ++act) {
    do_random_act(random, history);
    states.push_back(history.now());
    labels.push_back(*history.undo_label());
  }
  for (int jump = 0; jump < 100; ++jump) {
    const std::uint64_t revision = history.revision();
    const auto state = static_cast<std::size_t>(random.whole(0, 30));
    REQUIRE(history.go_to(state));
    CHECK(history.state() == state);
    CHECK(history.now() == states[state]);
    CHECK(history.revision() > revision);
    if (state > 0) CHECK(history.label_of(state) == labels[state - 1]);
    if (state > 0) CHECK(*history.undo_label() == labels[state - 1]);
    if (state < 30) CHECK(*history.redo_label() == labels[state]);
  }
  CHECK_FALSE(history.go_to(31));
  CHECK(history.commits() == 30);
}

namespace {

/// What a history shows of itself, at every state.
void check_same(History a, History b) {
  REQUIRE(a.first_state() == b.first_state());
  REQUIRE(a.last_state() == b.last_state());
  CHECK(a.state() == b.state());
  CHECK(a.now() == b.now());
  CHECK(a.commits() == b.commits());
  for (std::size_t state = a.first_state(); state <= a.last_state(); ++state) {
    REQUIRE(a.go_to(state));
    REQUIRE(b.go_to(state));
    CHECK(a.now() == b.now());
    if (state > a.first_state()) CHECK(a.label_of(state) == b.label_of(state));
  }
}

void step_at_random(Random& random, History& history) {
  const std::int64_t choice = random.whole(0, 9);
  if (choice < 6) do_random_act(random, history);
  else if (choice < 8) history.undo();
  else if (choice < 9) history.redo();
  else history.go_to(static_cast<std::size_t>(random.whole(static_cast<std::int64_t>(history.first_state()), static_cast<std::int64_t>(history.last_state()))));
}

}  // namespace

TEST_CASE("a history that was kept comes back with every state and label, and goes on as if it had not been away") {
  constexpr std::uint64_t k_seed = 11;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int round = 0; round < 60; ++round) {
    History history = fresh_history(random);
    for (std::int64_t step = random.whole(0, 25); step > 0; --step) step_at_random(random, history);
    History back(history.kept());
    check_same(history, back);
    CHECK(back.revision() == history.revision());
    CHECK(back.unchanged_to() == back.last_state());

    // What is done next is the same on both, whether or not its past has been woken; and it can be kept again.
    Random one(round), other(round);
    for (int step = 0; step < 6; ++step) {
      step_at_random(one, history);
      step_at_random(other, back);
      check_same(history, back);
      check_same(back, History(back.kept()));
    }
  }
}

TEST_CASE("what was marked as known is told from what is new") {
  Random random(12);
  History history = fresh_history(random);
  for (int act = 0; act < 5; ++act) do_random_act(random, history);
  CHECK(history.unchanged_to() == 0);
  CHECK(history.change().steps.size() == 5);
  history.mark();
  CHECK(history.unchanged_to() == 5);
  history.undo();
  history.undo();
  CHECK(history.unchanged_to() == 5);
  do_random_act(random, history);
  CHECK(history.unchanged_to() == 3);
  CHECK(history.change().steps.size() == 1);
  history.undo();
  history.undo();
  do_random_act(random, history);
  CHECK(history.unchanged_to() == 2);
  history.mark();
  CHECK(history.unchanged_to() == 3);
}

TEST_CASE("the oldest steps go from a past that is asleep too") {
  Random random(13);
  History history = fresh_history(random);
  Document next = history.now();
  const auto set_name = [&](History& on, std::size_t step) {
    next.sheet.name = std::to_string(step);
    on.commit(next, {Act::describe_sheet, next.sheet.name});
  };
  for (std::size_t step = 0; step < History::k_most_steps - 2; ++step) set_name(history, step);
  History back(history.kept());
  for (std::size_t step = 0; step < 5; ++step) set_name(back, 20'000 + step);
  CHECK(back.first_state() == 3);
  CHECK(back.now().sheet.name == "20004");
  REQUIRE(back.go_to(back.first_state()));
  CHECK(back.now().sheet.name == "2");
  CHECK(back.redo_label()->subject == "3");
}

TEST_CASE("a kept past that can't be made again is let go of, the present stands") {
  Random random(14);
  History history = fresh_history(random);
  for (int act = 0; act < 10; ++act) do_random_act(random, history);
  history.undo();
  history.undo();
  const Document present = history.now();
  for (const std::size_t damaged : {std::size_t{3}, std::size_t{7}, std::size_t{8}}) {
    KeptHistory kept = history.kept();
    kept.steps[damaged].difference = {0xFF};
    History back(std::move(kept));
    CHECK(back.now() == present);
    back.undo();
    const bool past_stands = damaged >= 8;
    CHECK((back.first_state() == 0) == past_stands);
    CHECK((back.now() == present) == !past_stands);
    back.go_to(8);
    CHECK(back.now() == present);
  }
}

TEST_CASE("a change that was kept is taken up again: the other history goes the same way") {
  constexpr std::uint64_t k_seed = 15;
  CAPTURE(k_seed);
  Random random(k_seed);
  for (int round = 0; round < 40; ++round) {
    History history = fresh_history(random);
    for (std::int64_t step = random.whole(0, 8); step > 0; --step) step_at_random(random, history);
    history.mark();
    History follower(history.kept());
    for (int change = 0; change < 12; ++change) {
      for (std::int64_t step = random.whole(1, 4); step > 0; --step) step_at_random(random, history);
      REQUIRE(follower.take_up(history.change()));
      history.mark();
      check_same(history, follower);
      CHECK(follower.revision() >= history.revision());
      CHECK(follower.unchanged_to() == follower.last_state());
    }
    KeptChange off = history.change();
    off.unchanged_to = history.last_state() + 1;
    CHECK_FALSE(follower.take_up(off));
    do_random_act(random, history);
    off = history.change();
    off.steps.back().difference = {0xFF};
    const Document before = follower.now();
    CHECK_FALSE(follower.take_up(off));
    CHECK(follower.now() == before);
  }
}
