// Marks as comma-separated values: RFC 4180, and what spreadsheets make of it.
#include "core/exchange/marks_csv.h"

#include <string>

#include "core/exchange/exchange.h"
#include "doctest/doctest.h"
#include "tests/core/random_acts.h"

using namespace fogsheet;

namespace {

MarksAndLines taken(const std::string& bytes) {
  const Result<MarksAndLines> read = read_file(bytes);
  REQUIRE_MESSAGE(read.ok(), bytes);
  return *read;
}

}  // namespace

TEST_CASE("CSV: columns in any order, names in any letters") {
  const FileMark rock{.name = "Gull Rock", .at = quantise({44.1, -31.2})};
  for (const char* text : {"name,latitude,longitude\r\nGull Rock,44.1,-31.2\r\n", "Longitude,LAT,Colour,Name\n-31.2,44.1,red,Gull Rock\n", "lng;lat;title\n-31,2;44,1;Gull Rock\n", "Name\tPosition\nGull Rock\t44\xC2\xB0""06.0'N 031\xC2\xB0""12.0'W\n",
                           "\xEF\xBB\xBF\"Lat (deg)\",\"Lon (deg)\",\"Name\"\r\n\r\n44.1,-31.2,\"Gull Rock\"", "name,position\nGull Rock,\"44.1, -31.2\"\n", "label,lat,lon\nGull Rock,44 06.0 N,31 12.0 W\n"}) {
    CAPTURE(text);
    const MarksAndLines all = taken(text);
    REQUIRE(all.marks.size() == 1);
    CHECK(all.marks[0] == rock);
    CHECK(all.left_out_count == 0);
  }
}

TEST_CASE("CSV: quotes, line ends inside them, kinds, and rows that can't be used") {
  const MarksAndLines all = taken("name,lat,lon,kind,radius_nm,height_m,note\r\n\"A, \"\"B\"\"\",1,2,Light,,23.5,\"two\r\nlines\"\r\nC,91,0\r\n,,\r\nD,here,0\r\nE,1,1,danger,0.25\r\nF,1,1,danger\r\n");
  REQUIRE(all.marks.size() == 3);
  CHECK(all.marks[0] == FileMark{.name = "A, \"B\"", .kind = MarkKind::light, .at = quantise({1, 2}), .height_m = 23.5, .note = "two\nlines"});
  CHECK(all.marks[1].kind == MarkKind::danger);
  CHECK(all.marks[2].kind == MarkKind::other);  // a danger is a ring round a place
  REQUIRE(all.left_out.size() == 2);
  CHECK(all.left_out[0] == LeftOut{LeftOutWhy::place_unreadable, 4, "C"});
  CHECK(all.left_out[1] == LeftOut{LeftOutWhy::place_unreadable, 6, "D"});
}

TEST_CASE("CSV: other encodings, and what is none") {
  CHECK(taken("name,lat,lon\nF\xE9" "camp,1,2\n").marks[0].name == "F\xC3\xA9" "camp");
  std::string wide = "\xFF\xFE";
  for (const char c : std::string("name\tlat\tlon\nRock\t1\t2\n")) wide += {c, '\0'};
  CHECK(taken(wide).marks[0].name == "Rock");
  CHECK(read_file("Rock 1 2\nStack 3 4\n").problem().fault == Fault::file_without_columns);
  CHECK(read_file("name,lat,lon\n\"Rock,1,2\n").problem().fault == Fault::file_broken);
}

TEST_CASE("CSV: no name is a formula to the program that opens it, and each comes back as it was") {
  for (const std::string name : {"=1+1", "+44", "-stack", "@home", "'=1", "''-x", "'quoted'", "West = East", "'", ""}) {
    const MarksAndLines all{.marks = {{.name = name, .at = quantise({44, -31}), .note = name}}};
    const std::string text = marks_csv(all);
    const std::string second = text.substr(text.find('\n') + 1);
    CHECK_MESSAGE(std::string_view("=+-@").find(second.empty() ? ' ' : second[0]) == std::string_view::npos, second);
    const Result<MarksAndLines> back = read_marks_csv(text);
    REQUIRE(back);
    REQUIRE(back->marks.size() == 1);
    CHECK(back->marks[0].note == name);
    if (!name.empty()) CHECK(back->marks[0].name == name);
  }
}

TEST_CASE("CSV: the marks of any sheet come back") {
  for (int seed = 1; seed <= 40; ++seed) {
    Random random(static_cast<std::uint64_t>(seed));
    const MarksAndLines all = marks_and_lines_of(random_document(random, 40));
    const Result<MarksAndLines> read = read_marks_csv(marks_csv(all));
    REQUIRE(read.ok());
    REQUIRE(read->marks.size() == all.marks.size());
    for (std::size_t i = 0; i < all.marks.size(); ++i) {
      CHECK(read->marks[i].at == all.marks[i].at);
      CHECK(read->marks[i].kind == all.marks[i].kind);
      CHECK(read->marks[i].radius_nm == all.marks[i].radius_nm);
    }
  }
}
