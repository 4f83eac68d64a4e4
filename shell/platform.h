// What the application asks of the machine it runs on. web implements it, tests fake it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/figure/figure.h"
#include "shell/keeper/store.h"
#include "shell/photograph.h"

namespace fogsheet {

/// A line of text as an image.
struct TextImage {
  int width = 0;   // 0: there is nothing to be seen
  int height = 0;
  int pen_x = 0;   // where the text starts on its baseline, px from the image's left and top
  int baseline = 0;
  double advance_px = 0;  // the text's own width
  std::vector<std::uint8_t> coverage;  // width x height, 0 to 255
};

class Platform {
 public:
  virtual ~Platform() = default;
  virtual Date today() = 0;
  /// Milliseconds since 1970, UTC; may be set back by the user.
  virtual std::int64_t now_ms() = 0;
  /// A number of this page below k_key_lanes, taken by chance: see shell/kept_key.h.
  virtual std::uint64_t key_lane() = 0;
  /// How far the device's own time is ahead of UTC then.
  virtual int minutes_east(std::int64_t at_ms) = 0;
  /// The page's own address up to and without the '#'.
  virtual std::string page_address() = 0;
  /// Puts text on the clipboard; only inside a press. The page says afterwards how it went (App::copied).
  virtual void copy(const std::string& text) = 0;
  /// Keeps the screen from going dark while the page is in sight, or no longer. The page says how that stands
  /// (App::set_awake_state), also when the device lets go of it by itself.
  virtual void keep_awake(bool wanted) = 0;
  /// Asks the device where it is, again and again, or no longer. The page tells what comes (App::set_own_position,
  /// App::no_own_position).
  virtual void follow_position(bool wanted) = 0;
  /// The newer version of the program that waits is put in use; the page loads anew.
  virtual void use_new_version() = 0;
  /// Says it to who can't see the page, by a screen reader.
  virtual void read_aloud(const std::string& text) = 0;
  /// Settings that outlive the page on this device; empty when never put or not allowed.
  virtual std::string setting(const std::string& name) = 0;
  virtual void put_setting(const std::string& name, const std::string& value) = 0;
  /// Begins a write to the store; the page says afterwards how it went (App::store_written, App::store_failed).
  virtual void write_store(const StoreWrite& write) = 0;
  /// What is asked of the store beside (StoreAsk); the page answers by App::store_told.
  virtual void ask_store(const StoreAsk& ask) = 0;
  /// Finds out how much room the browser gives the page, and whether it promises to keep what is there; where `ask`, it is
  /// asked to promise first. The page tells what it has found (App::store_room).
  virtual void look_at_room(bool ask) = 0;
  /// App::woken is called after that long, once. A later call takes the place of an earlier one.
  virtual void wake_after(std::int64_t ms) = 0;
  /// A text drawn with our typeface and, where that lacks a character, the machine's own: shaped and in order as its
  /// scripts want it, and squeezed to `most_px` where it is wider.
  virtual TextImage text_image(const std::string& text, Face face, double px_per_em, double most_px) = 0;
  /// Gives bytes, or a text, to the user as a file of that name; only inside a press.
  virtual void save_file(const std::string& name, const std::string& bytes) = 0;
  /// Gives the sheet to the user as a file of that name, with our typeface in it; only inside a press.
  /// @param svg           at true size
  /// @param dots_an_inch  of a PNG; 0: the SVG itself. The page says when it can't (App::picture_refused).
  virtual void save_picture(const std::string& name, const std::string& svg, int dots_an_inch) = 0;
  /// The same of marks and lines (formats/marks_and_lines.h), as a file for other programs: "gpx", "geojson" or "csv". The page's
  /// second program writes it; where that does not come, the page says so (App::file_not_saved).
  virtual void save_for_others(const std::string& name, const std::string& format, const std::vector<std::uint8_t>& marks_and_lines) = 0;
  /// Hands a link, or a text as a file of that name, to whatever the system sends things with; only inside a press. What the
  /// browser can is its setting "share": "", "links", or "files" for both. The page says when it was not taken (App::not_shared).
  virtual void share(const std::string& title, const std::string& text, const std::string& file_name) = 0;
  /// Begins to make a QR code of a link; the page's second program does, and the page tells it (App::code_made).
  virtual void make_code(const std::string& link) = 0;
  /// Asks the user for a file; only inside a press. The page tells which was chosen (App::file_chosen).
  virtual void open_file() = 0;
  /// Ends the reading of the file that was chosen: nothing more of it comes.
  virtual void stop_file() = 0;
  /// The photograph of a chart under a sheet: choose asks the user for one (only inside a press), stop ends its reading, bring
  /// fetches the one that was kept with that sheet, keep keeps it and how it is placed, remove forgets it. It is read where it
  /// can be ended, and drawn by the page (DrawnFrame::photograph). What becomes of it comes by App::photograph_news.
  /// @param bytes  for keep: to_bytes(PhotographPlacing); for keep_only, which forgets those of all other sheets: keys of eight bytes each
  virtual void photograph(PhotographAct act, std::uint64_t sheet, const std::vector<std::uint8_t>& bytes) = 0;
  /// Looks up what photographs of charts are kept; the page tells each (App::photograph_listed), then that these are all.
  virtual void list_photographs() = 0;
  /// As save_file, with those photographs behind the bytes.
  virtual void save_with_photographs(const std::string& name, const std::string& bytes) = 0;
  /// Takes a photograph out of the file of all that is kept that was read last, and keeps it with its sheet, where none is kept yet. The
  /// page says how it went (App::photograph_taken).
  virtual void take_photograph(const PhotographInFile& photograph) = 0;
  /// Asks the browser to print, once the panels are up to date: the panel in PanelPlace::page, where there is one; only inside a
  /// press. The page says when it begins and ends (App::set_printing), whoever asked for it.
  virtual void print_page() = 0;
};

}  // namespace fogsheet
