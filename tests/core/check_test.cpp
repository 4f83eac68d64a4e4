// Our own mistakes stop at the check that names them, before anything wrong is computed: each line here is a call that no
// caller may make.
#include "core/base/check.h"

#include <limits>
#include <string>

#include "core/base/date.h"
#include "core/base/number_text.h"
#include "core/base/random.h"
#include "core/earth/geodesy.h"
#include "core/earth/rhumb.h"
#include "core/magnetic/coefficients.h"
#include "core/magnetic/field.h"
#include "core/positions/position.h"
#include "core/positions/position_figures.h"
#include "doctest/doctest.h"

using namespace fogsheet;

namespace {

struct Stopped {
  std::string message;
};

void stop(const char*, const char* message, const char*, int) { throw Stopped{message}; }

// The message of the check that a call stops at; empty when it goes through.
template <class Call>
std::string stopped_at(const Call& call) {
  std::string message;
  set_check_handler(stop);
  try {
    call();
  } catch (const Stopped& stopped) {
    message = stopped.message;
  }
  set_check_handler(nullptr);
  return message;
}

constexpr double k_nan = std::numeric_limits<double>::quiet_NaN();
constexpr double k_infinity = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("a condition that holds costs nothing, one that does not says so") {
  CHECK(stopped_at([] { SHEET_CHECK(true, "never"); }).empty());
  CHECK(stopped_at([] { SHEET_CHECK(false, "always"); }) == "always");
}

TEST_CASE("results are looked at before they are used") {
  const Result<int> bad = Fault::entry_empty;
  CHECK_FALSE(stopped_at([&] { (void)*bad; }).empty());
  CHECK_FALSE(stopped_at([&] { (void)Result<int>(Fault::entry_empty).value(); }).empty());
  CHECK_FALSE(stopped_at([&] { (void)Result<int>(1).problem(); }).empty());
}

TEST_CASE("numbers and dates out of their ranges stop") {
  CHECK_FALSE(stopped_at([] { print_fixed(k_nan, 1); }).empty());
  CHECK_FALSE(stopped_at([] { print_fixed(1, -1); }).empty());
  CHECK_FALSE(stopped_at([] { print_fixed(1, 10); }).empty());
  CHECK_FALSE(stopped_at([] { print_fixed(1e18, 3); }).empty());
  CHECK_FALSE(stopped_at([] { print_padded(-1, 3); }).empty());
  CHECK_FALSE(stopped_at([] { day_of_year({2026, 2, 30}); }).empty());
  CHECK_FALSE(stopped_at([] { iso_date({2026, 0, 1}); }).empty());
  CHECK_FALSE(stopped_at([] { normal_quantile(0); }).empty());
  CHECK_FALSE(stopped_at([] { normal_quantile(1); }).empty());
  CHECK_FALSE(stopped_at([] { Random(1).whole(2, 1); }).empty());
}

TEST_CASE("positions off the earth stop before the geodesy library sees them") {
  CHECK_FALSE(stopped_at([] { geodesic_inverse({91, 0}, {0, 0}); }).empty());
  CHECK_FALSE(stopped_at([] { geodesic_inverse({0, 0}, {0, k_infinity}); }).empty());
  CHECK_FALSE(stopped_at([] { geodesic_direct({0, 0}, TrueDirection(0), k_infinity); }).empty());
  CHECK_FALSE(stopped_at([] { rhumb_course(k_nan, 0, 0); }).empty());
  CHECK_FALSE(stopped_at([] { rhumb_course(0, 0, 181); }).empty());
  CHECK_FALSE(stopped_at([] { rhumb_end({0, 0}, k_nan, 1); }).empty());
  CHECK_FALSE(stopped_at([] { rhumb_end({0, 0}, 1, k_nan); }).empty());
  CHECK_FALSE(stopped_at([] { (void)declination_deg({0, 0}, 2026, k_nan); }).empty());
  CHECK_FALSE(stopped_at([] { (void)declination_deg({91, 0}, 2026); }).empty());
  CHECK_FALSE(stopped_at([] { (void)declination_deg({0, k_nan}, 2026); }).empty());
  CHECK_FALSE(stopped_at([] { quantise({76, 0}); }).empty());
  CHECK_FALSE(stopped_at([] { quantise({k_nan, 0}); }).empty());
  CHECK_FALSE(stopped_at([] { quantise({0, k_nan}); }).empty());
  CHECK_FALSE(stopped_at([] { latitude_figures(0, 5); }).empty());
}

TEST_CASE("coefficients that a table does not have stop") {
  HarmonicTable table;
  CHECK_FALSE(stopped_at([&] { table.at(14, 0); }).empty());
  CHECK_FALSE(stopped_at([&] { table.at(0, 0); }).empty());
  CHECK_FALSE(stopped_at([&] { table.at(1, 2); }).empty());
  CHECK_FALSE(stopped_at([&] { table.at(1, -1); }).empty());
  table.degree = 14;
  CHECK_FALSE(stopped_at([&] { HarmonicSum sum(table); }).empty());
  CHECK_FALSE(stopped_at([] { igrf14(26); }).empty());
  CHECK_FALSE(stopped_at([] { igrf14(-1); }).empty());
}
