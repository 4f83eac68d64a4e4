// What goes from one of the page's programs to the other: there and back, and nothing believed that is not so.
#include "core/formats/marks_and_lines.h"

#include "doctest/doctest.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

MarksAndLines with_all(Random& random) {
  MarksAndLines all = marks_and_lines_of(random_document(random, 50));
  all.left_out = {{LeftOutWhy::area, 7, "Bay"}, {LeftOutWhy::points_full, 0, ""}};
  all.left_out_count = 1'000'000;
  all.departure = Departure{3, "ele"};
  all.broken_past = 4'321;
  for (FileLine& line : all.lines) line.within_m = 12.34;
  return all;
}

}  // namespace

TEST_CASE("marks and lines come back from their bytes") {
  for (int seed = 1; seed <= 50; ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const MarksAndLines all = with_all(random);
    const Result<MarksAndLines> back = marks_and_lines_from(to_bytes(all));
    REQUIRE(back.ok());
    CHECK(*back == all);
  }
  CHECK(*marks_and_lines_from(to_bytes(MarksAndLines{})) == MarksAndLines{});
}

TEST_CASE("a problem comes back as one") {
  const Problem problem{.fault = Fault::file_broken, .texts = {"XML"}, .numbers = {12}};
  CHECK(marks_and_lines_from(to_bytes(problem)).problem() == problem);
}

TEST_CASE("bytes that were cut or changed give a reason or another sound value") {
  Random random(5);
  const std::vector<std::uint8_t> bytes = to_bytes(with_all(random));
  for (std::size_t size = 0; size < bytes.size(); ++size) CHECK(!marks_and_lines_from({bytes.data(), size}).ok());
  for (int i = 0; i < 20'000; ++i) {
    std::vector<std::uint8_t> changed = bytes;
    changed[static_cast<std::size_t>(random.whole(0, static_cast<std::int64_t>(changed.size()) - 1))] ^= static_cast<std::uint8_t>(random.whole(1, 255));
    const Result<MarksAndLines> back = marks_and_lines_from(changed);
    if (!back.ok()) continue;
    CHECK(marks_and_lines_from(to_bytes(*back)).ok());
    for (const FileLine& line : back->lines) CHECK(line.points.size() >= 2);
  }
}

TEST_CASE("legs that follow each other are one line") {
  const Mark a{.id = {1}, .name = "A", .at = {0, 0}}, b{.id = {2}, .name = "B", .at = {600, 0}}, c{.id = {3}, .name = "C", .at = {0, 600}};
  Document document;
  document.marks = Table<Mark>::of({a, b, c});
  document.legs = Table<Leg>::of({{.id = {4}, .from = {1}, .to = {2}}, {.id = {5}, .from = {2}, .to = {3}}, {.id = {6}, .from = {1}, .to = {3}}});
  const MarksAndLines all = marks_and_lines_of(document);
  REQUIRE(all.lines.size() == 2);
  CHECK(all.lines[0].name == "A - C");
  CHECK(all.lines[0].points == std::vector<FilePoint>{{a.at, "A"}, {b.at, "B"}, {c.at, "C"}});
  CHECK(all.lines[1].points.size() == 2);
}
