#include "tests/values/csv.h"

#include "doctest/doctest.h"

using fogsheet::values::read_csv;

TEST_CASE("fields may hold commas, quotes and line ends") {
  // RFC 4180 section 2, rules 5 to 7.
  const auto lines = read_csv("a,\"b,c\",\"d \"\"e\"\"\"\r\n\"f\ng\",,h\n");
  REQUIRE(lines);
  REQUIRE(lines->size() == 2);
  CHECK((*lines)[0] == std::vector<std::string>{"a", "b,c", "d \"e\""});
  CHECK((*lines)[1] == std::vector<std::string>{"f\ng", "", "h"});
}

TEST_CASE("a last line without an end counts, blank lines do not") {
  CHECK(read_csv("a,b\n\nc,d")->size() == 2);
  CHECK(read_csv("")->empty());
  CHECK(read_csv("\"\"\n")->size() == 1);
}

TEST_CASE("quotes that make no sense are refused") {
  CHECK_FALSE(read_csv("a,\"b\n"));
  CHECK_FALSE(read_csv("a\"b,c\n"));
}
