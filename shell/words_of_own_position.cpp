#include "shell/words_of_own_position.h"

#include "core/base/number_text.h"
#include "core/base/quantity_text.h"
#include "core/base/units.h"
#include "core/directions/direction_figures.h"

namespace fogsheet::words {
namespace {

constexpr double k_told_in_miles_m = 1000;

}  // namespace

std::string own_position_line(OwnPositionState state) {
  switch (state) {
    case OwnPositionState::off: case OwnPositionState::here: return "";
    case OwnPositionState::asked: return "The device is asked. Its receiver may take a minute in the open, and may find nothing below deck.";
    case OwnPositionState::refused: return "This page may not ask where the device is. Allow it in the browser's settings for this page, and in the device's own; then ask again.";
    case OwnPositionState::absent: return "This browser gives no position, or none to a page that did not come over a safe connection (https). Plot by bearings.";
    case OwnPositionState::unknown: return "The device can't tell where it is. Go where it sees the sky, and ask again; till then plot by bearings.";
    case OwnPositionState::late: return "Nothing came from the device so far. Go where it sees the sky; it goes on trying.";
  }
  return "";
}

std::string within(double accuracy_m) {
  const Length radius = accuracy_m < k_told_in_miles_m ? Length{accuracy_m, LengthUnit::metres} : Length{accuracy_m / k_metres_per_nm, LengthUnit::nautical_miles};
  return "within " + print_length(radius, radius.unit == LengthUnit::metres ? 0 : 1) + ", 19 times in 20, as the device believes";
}

std::string found_at(const std::string& time, std::int64_t age_ms) {
  constexpr std::int64_t k_minute_ms = 60'000;
  const std::int64_t minutes = age_ms / k_minute_ms;
  if (age_ms < k_own_position_old_ms) return "at " + time;
  return "at " + time + ", " + std::to_string(minutes) + (minutes == 1 ? " minute old" : " minutes old");
}

std::string own_position_off_sheet(const RhumbLeg& from_middle) {
  return "It lies off this sheet: " + direction_figures(from_middle.course.deg(), Rounding::whole_degrees) + "°T, " + print_length({from_middle.distance_nm, LengthUnit::nautical_miles}, 1) + " from its middle.";
}

std::string own_position_mark(const std::string& time) { return "Here " + time; }

}  // namespace fogsheet::words
