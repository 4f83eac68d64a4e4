// What the tools and their slips say: where to press next, what was read, and how far it may be trusted.
#include <cmath>

#include "core/base/number_text.h"
#include "core/base/units.h"
#include "core/directions/direction_figures.h"
#include "shell/words.h"

namespace fogsheet::words {

DistanceWords distance(double distance_nm) {
  // What rounds to a whole mile or cable is one.
  if (distance_nm >= 0.995) return {distance_figures(distance_nm), "nm"};
  if (distance_nm >= 0.0995) return {print_fixed(distance_nm * k_metres_per_nm / k_metres_per_cable, 1), "cables"};
  return {print_fixed(distance_nm * k_metres_per_nm, 0), "m"};
}

std::string turn_by_tenths() { return "Turn by tenths of a degree"; }
std::string rings_turned_by_tenths() { return "Both rings unrolled about the reading. Turn by tenths of a degree"; }
std::string to_write() { return "to write"; }
std::string turned_by(double deg) {
  const std::string figures = print_fixed(std::abs(deg), 1);
  return figures == "0.0" ? "not turned" : "turned " + figures + (deg > 0 ? "° clockwise" : "° anticlockwise");
}

std::string how_dividers_read(bool on_the_scale) {
  return on_the_scale ? "On the latitude scale, level with the work: count the minutes between the points." : "As the latitude scale has it level with the work.";
}

std::string steps(int count, double step_nm) { return std::to_string(count) + (count == 1 ? " step of " : " steps of ") + distance(step_nm).text(); }

std::string how_rough_method_goes() { return "Look along the line and read its direction off a ring by eye, several times, quickly and each as if it were the first."; }
std::string mean_of(std::size_t readings) { return readings == 1 ? "one reading" : "mean of " + std::to_string(readings); }
std::string more_readings_wanted(std::size_t readings) { return readings == 1 ? "Two more at the least, to see how far they lie apart." : "One more at the least, to see how far they lie apart."; }
std::string rough_doubt(double run_nm, double to_either_side_nm) {
  // Beside a distance in miles it is in miles too, unless there would be nothing left of it.
  constexpr double k_least_tenth_nm = 0.05;
  const std::string side = to_either_side_nm >= k_least_tenth_nm ? distance_figures(to_either_side_nm) + " nm" : distance(to_either_side_nm).text();
  return "Over " + distance(run_nm).text() + " that is " + side + " to either side, two times in three.";
}
std::string run_wanted() { return "Enter the distance to run to see what that means at its end."; }
std::string readings_cancel() { return "These readings point all ways: no direction is their mean. Take them again."; }
std::string other_ring(Reference ring_in_use) {
  return std::string("The readings so far are of the ") + (ring_in_use == Reference::true_north ? "true" : "magnetic") + " ring: read all of them off one.";
}

std::string status_no_tool() { return "Press a mark or a leg for what is known of it. Drag to move the paper."; }
std::string status_mark_tool() { return "Press where the mark stands."; }
std::string status_leg_tool(bool has_start) { return has_start ? "Press the next turn." : "Press where the leg begins."; }
std::string status_edge_off(bool has_first_end) { return has_first_end ? "Press the other end." : "Press one end of the line, then the other."; }
std::string status_edge_on() { return "Slide it to the rose: drag its body. Drag an end to line it up."; }
std::string status_direction(bool set, const std::string& through) {
  if (!set) return "Type the direction: three figures, with the ring it is read on.";
  return through.empty() ? "Slide the edge to a mark: it stops there." : "Drag the line's end, or type how far it goes.";
}
std::string set_here(double deg, Rounding rounding, Reference reference) { return "set here: " + with_letter(deg, rounding, reference); }
std::string set_to_direction(const std::string& through) { return through.empty() ? "set to a direction" : "set to a direction, slid to " + through; }
std::string write_it_on(const std::string& leg) { return "Write it on " + leg; }
std::string read_by_hand() { return "read by hand"; }
std::string stale() { return "stale"; }
std::string reading_stale() { return "An end has moved since it was read"; }
std::string reading_off(double off_deg) { return "The hand read " + tenths_sd(std::abs(off_deg)) + (off_deg > 0 ? " more" : " less") + " than is worked out"; }
std::string off_by(double off_deg) { return tenths_sd(std::abs(off_deg)) + " out"; }
std::string read_it_again() { return "Lay the edge on the leg and read it again. The course worked out from the marks is the one to steer by."; }
std::string rub_out_reading() { return "Rub out the reading"; }

Rounding rounding_of(const WrittenReading& written) { return written.bearing_deg == std::round(written.bearing_deg) ? Rounding::whole_degrees : Rounding::tenths; }

std::string draw_line_from(const std::string& name) { return "Draw the line from " + name; }
std::string own_place_serves() { return "By the model, at this rose: it serves the legs that are nearest to it."; }
std::string no_rose_left() { return "There is no rose left to read on: press where one is to stand."; }
std::string status_rose_tool(std::size_t roses) {
  if (roses == 0) return "Press where a rose is to stand.";
  return "Drag the rose, or press where it is to stand. The handle on its ring sizes it.";
}
std::string status_note_tool() { return "Press where the words are to begin."; }
std::string rose_number(std::size_t place, std::size_t count) { return count < 2 ? "" : std::to_string(place + 1) + " of " + std::to_string(count); }
std::string status_dividers(bool has_first_point, bool on) {
  if (has_first_point) return "Press the second point.";
  return on ? "Drag a leg to move its point, the hinge to carry them." : "Press one point, then the other.";
}
std::string status_edge_settled() { return "Read where it cuts both rings. The arrow shows the way you go: press it to turn round."; }

}  // namespace fogsheet::words
