// What is said of the position that the device gives.
#pragma once

#include <string>

#include "core/earth/rhumb.h"
#include "shell/own_position.h"

namespace fogsheet::words {

inline std::string own_position_title() { return "Own position"; }
inline std::string ask_the_device() { return "Ask the device"; }
inline std::string let_own_position_go() { return "Let it go"; }
inline std::string mark_here() { return "Mark here"; }
inline std::string show_own_position() { return "Show it"; }
inline std::string own_position_use() {
  return "The device says where it is, when it has a receiver and you allow it. It stands on this sheet until you let it go, is sent nowhere, and is kept nowhere unless you mark it.";
}
inline std::string own_position_doubt() { return "A receiver can be wrong, jammed or set to another datum: check it by a bearing or a depth, and keep your plot going."; }

/// Why there is none; of `asked` what is being waited for; empty for the others.
std::string own_position_line(OwnPositionState state);
/// "within 12 m, 19 times in 20, as the device believes"
std::string within(double accuracy_m);
/// "at 1432" or "at 1432, 3 minutes old"
std::string found_at(const std::string& time, std::int64_t age_ms);
/// Where it lies from the middle of the sheet that it is off.
std::string own_position_off_sheet(const RhumbLeg& from_middle);
/// Of a mark that is made there.
std::string own_position_mark(const std::string& time);
inline std::string own_position_coarse() { return "A coarse position"; }
inline std::string own_position_coarse_advice() { return "Without a receiver a device guesses from the networks about it. Do not plot by it."; }
inline std::string own_position_other_datum() { return "Another datum"; }
inline std::string own_position_other_datum_advice() { return "This sheet was read off a chart that is not on WGS84, as the device's positions are: the two may lie some 200 m apart."; }

}  // namespace fogsheet::words
