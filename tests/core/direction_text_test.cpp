#include "core/directions/direction_text.h"

#include <cmath>
#include <initializer_list>
#include <string>

#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("directions are read with their reference") {
  struct Good {
    std::string text;
    double deg;
    std::optional<Reference> reference;
  };
  const Good goods[] = {{"047°T", 47, Reference::true_north},
                        {"47t", 47, Reference::true_north},
                        {"035 M", 35, Reference::magnetic},
                        {"M 35", 35, Reference::magnetic},
                        {"038°C", 38, Reference::compass},
                        {"38 psc", 38, Reference::compass},
                        {"38 compass", 38, Reference::compass},
                        {"0", 0, std::nullopt},
                        {"12,5 mag", 12.5, Reference::magnetic},
                        {"12.5°", 12.5, std::nullopt},
                        {"12°30'T", 12.5, Reference::true_north},
                        {"359.9", 359.9, std::nullopt},
                        {"-0", 0, std::nullopt}};
  for (const Good& good : goods) {
    CAPTURE(good.text);
    const Result<TypedDirection> direction = parse_direction(good.text);
    REQUIRE(direction.ok());
    CHECK(direction->deg == good.deg);
    CHECK(direction->reference == good.reference);
  }
}

TEST_CASE("what is no direction is named") {
  struct Bad {
    std::string text;
    Fault fault;
    std::string part, suggestion;
  };
  const Bad bads[] = {{"", Fault::entry_empty, "", ""},
                      {"360T", Fault::direction_out_of_range, "360T", "000°T"},
                      {"360", Fault::direction_out_of_range, "360", "000°"},
                      {"361", Fault::direction_out_of_range, "361", ""},
                      {"-10", Fault::direction_out_of_range, "-10", ""},
                      {"04O T", Fault::entry_unreadable, "", "040.0°T"},
                      {"47 X", Fault::entry_unreadable, "X", ""},
                      {"47 48", Fault::entry_unreadable, "", ""},
                      {"12°60'", Fault::minutes_out_of_range, "60", ""},
                      {"T", Fault::entry_part_missing, "", ""}};
  for (const Bad& bad : bads) {
    CAPTURE(bad.text);
    const Result<TypedDirection> direction = parse_direction(bad.text);
    if (bad.text == "47 48") {  // degrees and minutes without signs
      CHECK(direction->deg == doctest::Approx(47.8));
      continue;
    }
    REQUIRE_FALSE(direction.ok());
    const Problem& problem = direction.problem();
    if (bad.text == "04O T") {
      CHECK(problem.suggestion == bad.suggestion);
      continue;
    }
    CHECK(problem.fault == bad.fault);
    CHECK(bad.text.substr(problem.begin, problem.end - problem.begin) == bad.part);
    CHECK(problem.suggestion == bad.suggestion);
  }
}

TEST_CASE("corrections are read with E or W or a sign") {
  struct Good {
    std::string text;
    double deg;
  };
  for (const Good& good :
       {Good{"12E", 12}, {"12°E", 12}, {"3°45'W", -3.75}, {"W 3 45", -3.75}, {"-3,75", -3.75}, {"+2", 2}, {"0", 0}, {"3.5 west", -3.5}, {"0W", 0}}) {
    CAPTURE(good.text);
    CHECK(*parse_correction_deg("variation", good.text) == good.deg);
  }
  const Problem bare = parse_correction_deg("deviation", "12").problem();
  CHECK(bare.fault == Fault::entry_part_missing);
  CHECK(bare.texts == std::vector<std::string>{"deviation", "east or west"});
  CHECK(bare.suggestion.empty());  // it may be either
  CHECK(parse_correction_deg("variation", "181W").problem().numbers == std::vector<double>{-181, -180, 180});
  CHECK(parse_correction_deg("variation", "12N").problem().fault == Fault::entry_unreadable);
  CHECK(parse_correction_deg("variation", "-12E").problem().fault == Fault::entry_part_twice);
  CHECK(parse_correction_deg("variation", "l2E").problem().suggestion == "12.0°E");
}

TEST_CASE("what is printed reads back the same") {
  Random random(180);
  for (int i = 0; i < 100'000; ++i) {
    const Rounding rounding = i % 2 == 0 ? Rounding::whole_degrees : Rounding::tenths;
    const double deg = random.uniform(0, 360);
    const auto reference = static_cast<Reference>(random.whole(0, 2));
    const Result<TypedDirection> direction = parse_direction(print_direction(deg, reference, rounding));
    REQUIRE(direction.ok());
    CHECK(direction->deg == round_direction_deg(deg, rounding));
    CHECK(direction->reference == reference);
    const double correction = random.uniform(-180, 180);
    const Result<double> read = parse_correction_deg("variation", print_correction(correction, rounding));
    REQUIRE(read.ok());
    CHECK(*read == round_correction_deg(correction, rounding));
  }
  CHECK(print_direction(359.96, Reference::true_north, Rounding::tenths) == "000.0°T");
  CHECK(print_correction(-0.4, Rounding::whole_degrees) == "0°");
}

TEST_CASE("other words and signs of directions") {
  CHECK(parse_direction("true 47")->reference == Reference::true_north);
  CHECK(parse_direction("47 magnetic")->reference == Reference::magnetic);
  CHECK(print_direction(47, Reference::compass, Rounding::whole_degrees) == "047°C");
  CHECK(parse_direction("47T 48").problem().fault == Fault::entry_unreadable);
  CHECK(parse_direction("47 C M").problem().fault == Fault::entry_part_twice);
  CHECK(parse_direction("12°30'61\"").problem().fault == Fault::seconds_out_of_range);
  CHECK(parse_direction(std::string(300, '1')).problem().fault == Fault::entry_too_long);
  CHECK(parse_correction_deg("variation", "").problem().fault == Fault::entry_empty);
  CHECK(parse_correction_deg("variation", "east").problem().fault == Fault::entry_part_missing);
  CHECK(*parse_correction_deg("variation", "5 east") == 5);
  CHECK(parse_correction_deg("variation", "5 est").problem().fault == Fault::entry_unreadable);
}

TEST_CASE("every typographic sign is its plain one") {
  // Degree sign, masculine ordinal, ring above; primes, curly quotes, acute, grave; hyphens, dashes, minus.
  for (const char* degree : {"\xC2\xB0", "\xC2\xBA", "\xCB\x9A"})
    for (const char* minute : {"'", "`", "\xC2\xB4", "\xCA\xB9", "\xE2\x80\x98", "\xE2\x80\x99", "\xE2\x80\xB2"})
      for (const char* second : {"\"", "''", "\xCA\xBA", "\xE2\x80\x9C", "\xE2\x80\x9D", "\xE2\x80\xB3"}) {
        const std::string text = std::string("12") + degree + "30" + minute + "36" + second + "W";
        CAPTURE(text);
        CHECK(*parse_correction_deg("variation", text) == doctest::Approx(-12.51));
      }
  for (const char* minus : {"-", "\xE2\x80\x90", "\xE2\x80\x91", "\xE2\x80\x92", "\xE2\x80\x93", "\xE2\x88\x92"})
    CHECK(*parse_correction_deg("variation", std::string(minus) + "12") == -12);
  for (const char* space : {" ", "\t", "\xC2\xA0", "\xE1\x9A\x80", "\xE2\x80\x83", "\xE2\x80\x8E", "\xE2\x80\x8F", "\xE2\x80\xAF", "\xE2\x81\x9F",
                            "\xE2\x81\xA0", "\xE3\x80\x80", "\xEF\xBB\xBF"})
    CHECK(*parse_correction_deg("variation", std::string("12") + space + "E") == 12);
  CHECK(parse_correction_deg("variation", "12\xE2\x82\xAC").problem().fault == Fault::entry_unreadable);
}

TEST_CASE("a typed direction is turned with its letter, as finely as it was typed") {
  CHECK(*turned_direction("095", 180) == "275");
  CHECK(*turned_direction("275M", 180) == "095M");
  CHECK(*turned_direction("096.5T", 180) == "276.5T");
  CHECK(*turned_direction("096.0T", 180) == "276.0T");
  CHECK(*turned_direction("096,0", 1) == "097.0");
  CHECK(*turned_direction("000", -1) == "359");
  CHECK(*turned_direction("359", 1) == "000");
  CHECK(*turned_direction("7 t", 1) == "008T");
  CHECK_FALSE(turned_direction("", 180).ok());
  CHECK_FALSE(turned_direction("361", 180).ok());
}
