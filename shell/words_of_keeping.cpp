// What is said of keeping: what is kept and since when, what is not and why, what lies in the drawer.
#include "core/base/clock_text.h"
#include "core/base/instant.h"
#include "core/base/utf8.h"
#include "shell/words.h"

namespace fogsheet::words {
namespace {

LocalTime local_time_of(std::int64_t at_ms, int minutes_east) { return local_time({.seconds = at_ms / 1'000}, {.minutes_east = minutes_east}); }

}  // namespace

std::string day_or_time(std::int64_t at_ms, int minutes_east, Date today) {
  const LocalTime at = local_time_of(at_ms, minutes_east);
  return at.date == today ? print_clock_time(at.time) : iso_date(at.date);
}

std::string kept_at(std::int64_t at_ms, int minutes_east) { return "kept " + print_clock_time(local_time_of(at_ms, minutes_east).time); }

std::string being_kept() { return "keeping"; }

std::string not_kept(StoreFault why) {
  switch (why) {
    case StoreFault::none: break;
    case StoreFault::missing: return "Nothing is kept here: this browser gives the page no room, as private windows do";
    case StoreFault::silent: return "Nothing is kept yet: the browser's store does not answer";
    case StoreFault::full: return "Not kept: the device has no room left for it";
    case StoreFault::refused: return "Not kept: the browser could not write it";
    case StoreFault::taken:
    case StoreFault::elsewhere: return "Open in another tab, which does not let go of it: what is changed here is not kept yet";
  }
  return "Not kept";
}

std::string not_kept_advice(StoreFault why) {
  if (why == StoreFault::elsewhere || why == StoreFault::taken) return "Go on in the other tab, or save this sheet as a file or its link before you leave.";
  if (why == StoreFault::missing || why == StoreFault::silent) return "Save the sheet as a file or copy its link before you leave.";
  return "It is tried again by itself. Until then save the sheet as a file, or copy its link.";
}

std::string follows() { return "Open in another tab too: what is done there shows here, and what you do here shows there."; }

std::string onto_a_copy() { return "The sheet holds what a newer version of this page put there: this is a copy without that, and the sheet is as it was."; }

std::string findings_title(const std::vector<Finding>& found) {
  bool parted = false, newer = false, damaged = false;
  for (const Finding& each : found) {
    if (each.kind == Finding::Kind::parted) parted = true;
    else if (each.kind == Finding::Kind::newer || each.kind == Finding::Kind::part_newer || each.kind == Finding::Kind::boat_newer) newer = true;
    else damaged = true;
  }
  std::string title = damaged ? "Found damaged" : "";
  if (newer) title += damaged ? ", or of a newer version" : "Of a newer version";
  if (parted) title += title.empty() ? "Changed in two tabs at once" : "; changed in two tabs";
  return title;
}

std::string findings(const std::vector<Finding>& found, const Sheets& sheets) {
  std::string all;
  for (const Finding& each : found) {
    const SheetInDrawer* sheet = sheets.find(each.sheet);
    const std::string name = sheet ? sheet_title(sheet->history.now()) : "";
    if (!all.empty()) all += " ";
    switch (each.kind) {
      case Finding::Kind::newer: all += "A sheet was kept by a newer version of this page: it is left as it is, load the page again to open it."; break;
      case Finding::Kind::part_newer: all += name + " holds what a newer version of this page put there: it can be read and saved here as it is, and what you put on it goes onto a copy without that."; break;
      case Finding::Kind::past_lost: all += name + " was damaged where it is kept: it is here as it was, without its past. The damaged record is kept too."; break;
      case Finding::Kind::steps_lost: all += "The last steps of " + name + " were damaged where they are kept: the sheet is here as it was before them. The damaged records are kept too."; break;
      case Finding::Kind::parted: all += name + " was changed in two tabs at once: what was done in each is a sheet of its own in the drawer."; break;
      case Finding::Kind::boat_newer: all += "A boat was kept by a newer version of this page: she is left as she is, load the page again to open her."; break;
      case Finding::Kind::boat_unreadable: all += "A kept boat is damaged and can't be read: she is left as she is."; break;
      case Finding::Kind::unreadable: all += "A kept sheet is damaged and can't be read: it is left as it is."; break;
    }
  }
  return all;
}

std::string copy_of(const std::string& title) {
  const std::string copy = " (copy)";
  std::string_view kept(title);
  while (kept.size() + copy.size() > k_most_name_bytes || !is_utf8(kept)) kept.remove_suffix(1);
  return std::string(kept) + copy;
}

std::string sheet_deleted(const std::string& title) { return quoted(title) + " is out of the drawer. It can be put back for 30 days."; }

std::string put_back_for() { return "for 30 days"; }

std::string where_kept(const Keeper& keeper, const Room& room) {
  const Keeping keeping = keeper.keeping();
  if (keeping == Keeping::failed || keeping == Keeping::off) return not_kept(keeper.fault()) + ".";
  const std::string where = "Kept in this browser, on this device, and nowhere else: clearing its data takes them away. ";
  if (room.promise == Promise::given) return where + "The browser has promised to clear nothing by itself.";
  return where + "The browser may also clear them by itself when room is short, or when the page has long not been opened.";
}

std::string further_steps(std::size_t count, bool later) { return std::to_string(count) + (count == 1 ? " step " : " steps ") + (later ? "further on." : "further back."); }

std::string oldest_gone() { return "Only the last 10 000 steps can be undone: the oldest have gone."; }

}  // namespace fogsheet::words
