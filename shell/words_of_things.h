// Each thing of the sheet in words: what it is, how it stands, where. What the outline shows and a screen reader says.
#pragma once

#include <string>

#include "shell/session.h"
#include "shell/words.h"

namespace fogsheet::words {

/// "Gull Rock, landmark, 44°10.0′N 031°20.0′W"; while the keys move it, where it has come to.
std::string thing(const Session& session, const Thing& thing);

/// What the instrument in hand reads: "096 true, 105 magnetic, back 276 true"; empty while it reads nothing.
std::string instruments_read(const Session& session);

inline std::string rough_mean_reads(double mean_deg, Rounding rounding, Reference ring) { return "mean " + spoken(mean_deg, rounding, ring); }
std::string edge_reads(const Session& session, const StraightEdge& edge);

inline std::string outline_label() { return "On the sheet"; }
std::string things_count(std::size_t count);                                            // "On the sheet: 9 things"
std::string things_shown(std::size_t from, std::size_t to, std::size_t count);          // "1 to 20 of 10 012"
inline std::string outline_hint() { return "Tab goes from one to the next; arrows move it."; }
std::string things_before(std::size_t count);
std::string things_after(std::size_t count);

inline std::string keys_title() { return "Keys"; }
inline std::string keys_beside() { return "while the sheet or the list of what is on it has the focus"; }
inline std::string single_keys_question() { return "Letters and signs pressed alone"; }
inline std::string single_keys_off() { return "They are off: turn them on in Settings."; }
std::string take_tool(const std::string& name);

}  // namespace fogsheet::words
