// What is said of the drawer's search, of the room there is for what is kept, and of the browser's promise.
#pragma once

#include <string>

#include "shell/keeper/room.h"

namespace fogsheet::words {

inline std::string search_label() { return "Find a sheet"; }
inline std::string none_found() { return "On no sheet does that stand: in no name, mark, note, passage or boat."; }
/// "3 of 240 sheets, the last changed first".
std::string sheets_caption(std::size_t found, std::size_t all);
std::string more_sheets(std::size_t count);

inline std::string save_what_matters() { return "Save what matters as files. Photographs of charts are in the file of all alone."; }
inline std::string ask_promise() { return "Ask it not to"; }
std::string promise_answer(Promise promise);
/// How much of it is used, when that is worth saying; else empty.
std::string room_left(const Room& room);
/// In the margin: what is to be done before it is full; or that there is little at all.
std::string room_short(const Room& room);
std::string room_short_advice();
std::string room_small();

}  // namespace fogsheet::words
