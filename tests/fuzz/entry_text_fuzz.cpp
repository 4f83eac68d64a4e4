// Directions, corrections, lengths, speeds, times, dates and numbers typed: whatever the text, a value within its bounds or
// a reason; what is printed of a value is read back as it.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string_view>

#include "core/base/clock_text.h"
#include "core/base/date.h"
#include "core/base/entry_tokens.h"
#include "core/base/quantity_text.h"
#include "core/directions/direction_text.h"
#include "tests/fuzz/checks.h"

using namespace fogsheet;

namespace {

void check_direction(std::string_view text) {
  const Result<TypedDirection> direction = parse_direction(text);
  check_problem(direction, text, parse_direction);
  if (!direction.ok()) return;
  must(direction->deg >= 0 && direction->deg < 360);
  for (const Rounding rounding : {Rounding::whole_degrees, Rounding::tenths}) {
    const Result<TypedDirection> again = parse_direction(print_direction(direction->deg, direction->reference, rounding));
    must(again.ok() && again->deg == round_direction_deg(direction->deg, rounding) && again->reference == direction->reference);
  }
}

void check_correction(std::string_view text) {
  const auto read = [](std::string_view typed) { return parse_correction_deg("variation", typed); };
  const Result<double> deg = read(text);
  check_problem(deg, text, read);
  if (!deg.ok()) return;
  must(std::abs(*deg) <= 180);
  const Result<double> again = read(print_correction(*deg, Rounding::tenths));
  must(again.ok() && *again == round_correction_deg(*deg, Rounding::tenths));
}

void check_length(std::string_view text) {
  const auto read = [](std::string_view typed) { return parse_length(typed, LengthUnit::metres); };
  const Result<Length> length = read(text);
  check_problem(length, text, read);
  if (!length.ok()) return;
  must(length->value >= 0 && length->nm() <= k_longest_length_nm * (1 + 1e-12));
  const Result<Length> again = read(print_length(*length, 3));
  must(again.ok() && again->unit == length->unit && std::abs(again->value - length->value) <= 0.00051);
}

void check_speed(std::string_view text) {
  const Result<Speed> speed = parse_speed(text);
  check_problem(speed, text, parse_speed);
  must(!speed.ok() || (speed->value >= 0 && speed->knots() <= k_fastest_speed_kn * (1 + 1e-12)));
}

void check_time(std::string_view text) {
  const Result<ClockTime> time = parse_clock_time(text);
  check_problem(time, text, parse_clock_time);
  must(!time.ok() || (time->minutes >= 0 && time->minutes < 1440 && *parse_clock_time(print_clock_time(*time)) == *time));
}

void check_date(std::string_view text) {
  const Result<Date> date = parse_iso_date(text);
  must(!date.ok() || iso_date(*date) == text);
}

void check_number(std::string_view text) {
  const auto read = [](std::string_view typed) { return parse_plain_number("number", typed, -1000, 1000); };
  const Result<double> number = read(text);
  check_problem(number, text, read);
  must(!number.ok() || std::abs(*number) <= 1000);
}

}  // namespace

// The first byte says which reader an input is for.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0 || size > k_longest_entry + 20) return 0;  // longer ones are refused for their length alone
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  constexpr void (*k_checks[])(std::string_view) = {check_direction, check_correction, check_length, check_speed,
                                                    check_time,      check_date,       check_number};
  k_checks[data[0] % std::size(k_checks)](text);
  return 0;
}
