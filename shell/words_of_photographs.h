// What is said of the photograph of a chart under the sheet.
#pragma once

#include <string>
#include <vector>

#include "shell/session.h"

namespace fogsheet::words {

inline std::string photograph_title() { return "Chart photograph"; }
std::string status_photograph_tool(const Session& session);

/// "chart.jpg, 6000 by 4000 pixels".
std::string photograph_name(const Photograph& photograph);
/// What is drawn of one that is larger than that; empty where all of it is.
std::string shrunk_line(const Photograph& photograph);
/// "Placed by 4 points: turned, sized and stretched to fit."; and how well, on the ground.
std::string placed_line(const LaidPhotograph& lies);
std::string fit_line(const LaidPhotograph& lies);
/// Why it is not placed: what is still to do.
std::string not_placed(const LaidPhotograph& lies);
/// All known points are close together on a picture that reaches far beyond them.
std::string points_are_close();
std::string strength_label(int strength);
/// Where it lies on this device, or why it does not.
std::string kept_line(const Photograph& photograph);
/// Of a sheet that was copied.
inline std::string photograph_not_copied() { return "The photograph stays with the sheet that was copied."; }
inline std::string photograph_described() { return "Your own photograph or scan of a chart lies dimmed under the sheet, placed by points that you know on it. It stays on this device, and goes into the file of all: into no link, print or other file."; }
inline std::string datum_warning_of_photograph() { return "Positions read off it may lie 100 m and more off those of a satellite receiver. Its note on datum says how to shift them, if it has one."; }
std::vector<std::string> photograph_cautions();
/// "point 2", as reasons name it.
std::string point_name(std::size_t point);

}  // namespace fogsheet::words
