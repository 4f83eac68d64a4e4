#include "core/base/quantity_text.h"

#include <clocale>
#include <cmath>
#include <initializer_list>
#include <string>

#include "core/base/clock_text.h"
#include "core/base/random.h"
#include "doctest/doctest.h"

using namespace fogsheet;

TEST_CASE("lengths are read in their units") {
  CHECK(*parse_length("3.7") == Length{3.7, LengthUnit::nautical_miles});
  CHECK(*parse_length("3,7 nm") == Length{3.7, LengthUnit::nautical_miles});
  CHECK(*parse_length("3.7NM") == Length{3.7, LengthUnit::nautical_miles});
  CHECK(*parse_length("2 miles") == Length{2, LengthUnit::nautical_miles});
  CHECK(*parse_length("2.5 cables") == Length{2.5, LengthUnit::cables});
  CHECK(*parse_length("120m") == Length{120, LengthUnit::metres});
  CHECK(*parse_length("30 ft") == Length{30, LengthUnit::feet});
  CHECK(*parse_length("30", LengthUnit::metres) == Length{30, LengthUnit::metres});
  // Source: BIPM SI Brochure; agreement of 1959.
  CHECK(parse_length("1 nm")->metres() == 1852);
  CHECK(parse_length("10 cables")->nm() == doctest::Approx(1).epsilon(1e-15));
  CHECK(std::abs(parse_length("1000 ft")->metres() - 304.8) <= 1e-12);
}

TEST_CASE("what is no length is named, with bounds in the unit typed") {
  CHECK(parse_length("").problem().fault == Fault::entry_empty);
  CHECK(parse_length("far").problem().fault == Fault::entry_unreadable);
  CHECK(parse_length("-").problem().fault == Fault::entry_part_missing);
  for (const char* text : {"3 M", "3 mi", "3 km", "3 nm nm", "3 4"}) {
    CAPTURE(text);
    const Problem problem = parse_length(text).problem();
    CHECK(problem.fault == Fault::unit_unknown);
    CHECK(problem.begin == 2);
    CHECK(problem.suggestion.empty());
  }
  CHECK(parse_length("-2 nm").problem().numbers == std::vector<double>{-2, 0, 21'600});
  CHECK(parse_length("216001 cables").problem().fault == Fault::number_out_of_range);
  CHECK(parse_length("1O nm").problem().suggestion == "10 nm");
}

TEST_CASE("speeds are knots unless they say otherwise") {
  CHECK(*parse_speed("5,5") == Speed{5.5, SpeedUnit::knots});
  CHECK(*parse_speed("5.5 kts") == Speed{5.5, SpeedUnit::knots});
  CHECK(*parse_speed("2 m/s") == Speed{2, SpeedUnit::metres_per_second});
  // Source: BIPM SI Brochure: a metre per second is 1.943 844 kn.
  CHECK(std::abs(parse_speed("1 m/s")->knots() - 1.943844) <= 5e-7);
  CHECK(parse_speed("5 km/h").problem().fault == Fault::unit_unknown);
  CHECK(parse_speed("101").problem().numbers == std::vector<double>{101, 0, 100});
}

TEST_CASE("times of day are read as written on deck") {
  struct Good {
    std::string text;
    int minutes;
  };
  for (const Good& good : {Good{"0640", 400},
                           {"6:40", 400},
                           {"06:40", 400},
                           {"06.40", 400},
                           {"6.40", 400},
                           {"06h40", 400},
                           {"06,40", 400},
                           {"0000", 0},
                           {"2359", 1439},
                           {" 0640 ", 400},
                           {"0.29", 29},
                           {"19.57", 1197}}) {
    CAPTURE(good.text);
    REQUIRE(parse_clock_time(good.text).ok());
    CHECK(parse_clock_time(good.text)->minutes == good.minutes);
  }
}

TEST_CASE("what is no time is named, with the likely one where there is one") {
  struct Bad {
    std::string text;
    Fault fault;
    std::string part, suggestion;
  };
  for (const Bad& bad : {Bad{"", Fault::entry_empty, "", ""},
                         {"2500", Fault::hours_out_of_range, "2500", ""},
                         {"24:00", Fault::hours_out_of_range, "24", "0000"},
                         {"0660", Fault::minutes_out_of_range, "0660", ""},
                         {"6:60", Fault::minutes_out_of_range, "60", ""},
                         {"640", Fault::entry_unreadable, "640", "0640"},
                         {"670", Fault::entry_unreadable, "670", ""},
                         {"6", Fault::entry_unreadable, "6", "0600"},
                         {"6 40", Fault::entry_unreadable, "6 40", "0640"},
                         {"6 4", Fault::entry_unreadable, "6 4", ""},
                         {"24 10", Fault::entry_unreadable, "24 10", ""},
                         {"6.4", Fault::entry_unreadable, "6.4", ""},
                         {"6:4", Fault::entry_unreadable, "6:4", ""},
                         {"6:40 pm", Fault::entry_unreadable, "pm", "1840"},
                         {"12:10 am", Fault::entry_unreadable, "am", "0010"},
                         {"O640", Fault::entry_unreadable, "O640", "0640"},
                         {"06:40:30", Fault::entry_unreadable, ":30", ""},
                         {"noon", Fault::entry_unreadable, "noon", ""}}) {
    CAPTURE(bad.text);
    const Result<ClockTime> time = parse_clock_time(bad.text);
    REQUIRE_FALSE(time.ok());
    CHECK(time.problem().fault == bad.fault);
    CHECK(bad.text.substr(time.problem().begin, time.problem().end - time.problem().begin) == bad.part);
    CHECK(time.problem().suggestion == bad.suggestion);
  }
}

TEST_CASE("plain numbers have bounds") {
  CHECK(*parse_plain_number("height", "12,5", 0, 100) == 12.5);
  CHECK(*parse_plain_number("height", "-3", -10, 100) == -3);
  CHECK(parse_plain_number("height", "120", 0, 100).problem() ==
        Problem{.fault = Fault::number_out_of_range, .texts = {"height"}, .numbers = {120, 0, 100}, .begin = 0, .end = 3});
  CHECK(parse_plain_number("height", "12 m", 0, 100).problem().fault == Fault::entry_unreadable);
}

TEST_CASE("what is printed reads back the same") {
  Random random(1852);
  for (int i = 0; i < 20'000; ++i) {
    const int decimals = static_cast<int>(random.whole(0, 3));
    const double scale = std::pow(10, decimals);
    const Length length{static_cast<double>(random.whole(0, 21'000)) / scale, static_cast<LengthUnit>(random.whole(0, 3))};
    CHECK(*parse_length(print_length(length, decimals)) == length);
    const Speed speed{static_cast<double>(random.whole(0, 50)) / scale, static_cast<SpeedUnit>(random.whole(0, 1))};
    CHECK(*parse_speed(print_speed(speed, decimals)) == speed);
  }
  for (int minutes = 0; minutes < 1440; ++minutes) CHECK(parse_clock_time(print_clock_time({minutes}))->minutes == minutes);
}

TEST_CASE("no locale of the machine changes a reading") {
  const std::string kept = std::setlocale(LC_ALL, nullptr);
  for (const char* locale : {"de_DE.UTF-8", "tr_TR.UTF-8", "C.UTF-8", ""}) {
    std::setlocale(LC_ALL, locale);  // may not be installed: then nothing changes
    CHECK(parse_length("3.7 NM")->value == 3.7);
    CHECK(parse_length("3,7 NM")->value == 3.7);
    CHECK(print_length({3.7, LengthUnit::nautical_miles}, 1) == "3.7 nm");
  }
  std::setlocale(LC_ALL, kept.c_str());
}

TEST_CASE("a stroke is feet to some and minutes of latitude to others: neither is taken") {
  for (const char* text : {"3'", "3′", "3 ’"}) {
    CAPTURE(text);
    const Problem problem = parse_length(text).problem();
    CHECK(problem.fault == Fault::entry_ambiguous);
    CHECK(problem.texts == std::vector<std::string>{"distance", "3 nm", "3 ft"});
  }
  CHECK(parse_length(std::string(30, '9') + "'").problem().fault == Fault::number_out_of_range);
}

TEST_CASE("the other units and signs, and their bounds") {
  CHECK(parse_length("+3 nmi")->unit == LengthUnit::nautical_miles);
  CHECK(parse_length("1 mile")->unit == LengthUnit::nautical_miles);
  CHECK(parse_length("2 c")->unit == LengthUnit::cables);
  CHECK(parse_length("2 cable")->unit == LengthUnit::cables);
  CHECK(parse_length("2 cbl")->unit == LengthUnit::cables);
  for (const char* text : {"5 m", "5 metre", "5 metres", "5 meter", "5 meters", "5 METRES"}) {
    CAPTURE(text);
    CHECK(parse_length(text)->unit == LengthUnit::metres);
  }
  CHECK(parse_length("1 foot")->unit == LengthUnit::feet);
  CHECK(parse_length("1 feet")->unit == LengthUnit::feet);
  CHECK(parse_length(std::string(300, '1')).problem().fault == Fault::entry_too_long);
  for (const char* text : {"5 kn", "5 kt", "5 kts", "5 knot", "5 knots"}) CHECK(*parse_speed(text) == Speed{5, SpeedUnit::knots});
  for (const char* text : {"5 m/h", "5 m m s", "5 k/s", "5 m/", "5 c"}) CHECK(parse_speed(text).problem().fault == Fault::unit_unknown);
  CHECK(parse_speed("").problem().fault == Fault::entry_empty);
  CHECK(parse_speed("fast").problem().fault == Fault::entry_unreadable);
  CHECK(parse_speed("-1").problem().fault == Fault::number_out_of_range);
  CHECK(parse_speed("60 m/s").problem().fault == Fault::number_out_of_range);
  CHECK(parse_speed("l2.5").problem().suggestion == "12.5 kn");
  CHECK(parse_speed("1O m/s").problem().suggestion == "10 m/s");
  CHECK(parse_length("1O ft").problem().suggestion == "10 ft");
  CHECK(parse_length("1O m").problem().suggestion == "10 m");
  CHECK(parse_length("1O cables").problem().suggestion == "10 cables");
  CHECK(parse_plain_number("height", "", 0, 1).problem().fault == Fault::entry_empty);
  CHECK(parse_plain_number("height", "x", 0, 1).problem().fault == Fault::entry_unreadable);
  CHECK(parse_plain_number("height", "-5", 0, 1).problem().fault == Fault::number_out_of_range);
  CHECK(parse_plain_number("height", "1l", 0, 100).problem().suggestion == "11");
}

TEST_CASE("other times that are none") {
  for (const char* text : {"a6:40", "6:4o", "111:40", "6:400", "06h4", "123.45", "6:40 xm", "13:40 pm", "0:40 am", "6:70 pm", "64000"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_clock_time(text).ok());
  }
  CHECK(parse_clock_time("6:40 am").problem().suggestion == "0640");
  CHECK(parse_clock_time("12:40 pm").problem().suggestion == "1240");
  CHECK(parse_clock_time("25").problem().suggestion.empty());
  CHECK(parse_clock_time("24.00").problem().suggestion == "0000");
  CHECK(parse_clock_time(std::string(300, '1')).problem().fault == Fault::entry_too_long);
}
