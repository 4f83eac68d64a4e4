#include "shell/words_of_room.h"

#include <algorithm>
#include <cmath>

#include "shell/words.h"
#include "shell/words_of_files.h"

namespace fogsheet::words {
namespace {

std::string used_of_allowed(const Room& room) {
  const auto megabytes = [](double bytes) { return static_cast<int>(std::clamp(std::ceil(bytes / 1e6), 0.0, 1e9)); };
  return grouped(megabytes(room.used)) + " of " + grouped(megabytes(room.allowed)) + " MB";
}

}  // namespace

std::string sheets_caption(std::size_t found, std::size_t all) {
  return found == all ? "Sheets, the last changed first" : std::to_string(found) + " of " + counted(all, "sheet", "sheets") + ", the last changed first";
}

std::string more_sheets(std::size_t count) { return "Show more: " + counted(count, "is", "are") + " further down"; }

std::string promise_answer(Promise promise) {
  return promise == Promise::given ? "The browser promises to clear nothing by itself." : "The browser makes no promise now: it may once the page is installed, or has been used for longer. Save what matters as files.";
}

std::string room_left(const Room& room) {
  if (room.is_short()) return "Room for keeping grows short: " + used_of_allowed(room) + " that the browser allows are used.";
  if (room.is_small()) return room_small() + " " + used_of_allowed(room) + " are used.";
  return "";
}

std::string room_short(const Room& room) { return "Room for keeping grows short: " + used_of_allowed(room) + " are used"; }
std::string room_short_advice() { return "Save all as one file; then take out sheets that you no longer need, or make room on the device."; }
std::string room_small() { return "The browser gives this page little room, as private windows do: what is kept may go when the window is closed."; }

}  // namespace fogsheet::words
