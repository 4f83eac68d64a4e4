#include "core/base/number_text.h"

#include <clocale>
#include <cmath>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("decimals are scanned as far as they go") {
  const auto scanned = scan_decimal("12.34'N");
  REQUIRE(scanned);
  CHECK(scanned->value == 12.34);
  CHECK(scanned->whole_digits == 2);
  CHECK(scanned->decimals == 2);
  CHECK(scanned->length == 5);
  CHECK(scan_decimal("7,5", ".,")->value == 7.5);
  CHECK(scan_decimal("7,5")->length == 1);
  CHECK(scan_decimal(".5")->value == 0.5);
  CHECK(scan_decimal("5.")->has_mark);
  CHECK(scan_decimal("5.")->length == 2);
  CHECK_FALSE(scan_decimal("."));
  CHECK_FALSE(scan_decimal(""));
  CHECK_FALSE(scan_decimal("-1"));
}

TEST_CASE("whole texts are numbers or nothing") {
  CHECK(parse_number("1e-6") == 1e-6);
  CHECK(parse_number("-0.25") == -0.25);
  CHECK(parse_number("+3") == 3.0);
  CHECK(parse_number("123456789012345678901234567890") == 123456789012345678901234567890.0);
  CHECK(parse_number("0.000000000000000000000000000001") == 1e-30);
  for (const char* text : {"", "-", "1e", "1e+", "1.2.3", "nan", "inf", "1e999", "1e99999", " 1", "1 ", "0x10", "1,5"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_number(text));
  }
}

TEST_CASE("fixed decimals: halves away from zero, no minus before nought") {
  CHECK(print_fixed(0, 0) == "0");
  CHECK(print_fixed(-0.04, 1) == "0.0");
  CHECK(print_fixed(2.5, 0) == "3");
  CHECK(print_fixed(-2.5, 0) == "-3");
  CHECK(print_fixed(0.05, 2) == "0.05");
  CHECK(print_fixed(-12.345, 1) == "-12.3");
  CHECK(print_fixed(999.9999, 2) == "1000.00");
  CHECK(print_padded(7, 3) == "007");
  CHECK(print_padded(1234, 3) == "1234");
}

TEST_CASE("printed numbers read back to half their last digit") {
  Random random(20261125);
  for (int i = 0; i < 100'000; ++i) {
    const int decimals = static_cast<int>(random.whole(0, 9));
    const double value = random.uniform(-1e6, 1e6);
    const auto read = parse_number(print_fixed(value, decimals));
    REQUIRE(read);
    CHECK(std::abs(*read - value) <= 0.5 * std::pow(10, -decimals) + 1e-9);
  }
}

TEST_CASE("the machine's locale changes nothing") {
  const char* const before = std::setlocale(LC_ALL, nullptr);
  const std::string kept = before != nullptr ? before : "C";
  for (const char* locale : {"de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8"}) {
    std::setlocale(LC_ALL, locale);  // may not be installed: then nothing changes
    CHECK(print_fixed(1.5, 1) == "1.5");
    CHECK(parse_number("1.5") == 1.5);
  }
  std::setlocale(LC_ALL, kept.c_str());
}
