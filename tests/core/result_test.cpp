// A result holds a value or the problem that kept it from being made.
#include "core/base/result.h"

#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("a result holds its value") {
  const Result<int> result(7);
  CHECK(result.ok());
  CHECK(*result == 7);
}

TEST_CASE("a result holds its problem, with arguments and place") {
  const Result<int> result(Problem{.fault = Fault::latitude_out_of_range, .numbers = {91, 75}, .begin = 2, .end = 4});
  CHECK_FALSE(result.ok());
  CHECK(result.problem().fault == Fault::latitude_out_of_range);
  CHECK(result.problem().numbers == std::vector<double>{91, 75});
  CHECK(result.problem().begin == 2);
}
