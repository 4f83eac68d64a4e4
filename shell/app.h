// The whole application without a browser: one struct passed down. The page tells it what happened (pointers, keys, size,
// commands) and asks what to show (frame, panels, read). It draws no pixel itself.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "shell/file_in_hand.h"
#include "shell/form.h"
#include "shell/keeper/room.h"
#include "shell/keeper/store.h"
#include "shell/panels/panel.h"
#include "shell/photograph.h"
#include "shell/platform.h"
#include "shell/pointer.h"
#include "shell/style.h"
#include "shell/value.h"
#include "shell/viewport.h"

struct ImDrawList;

namespace fogsheet {

/// One thing to draw: a draw list in its own units, laid on the canvas by `scale` and an offset in CSS pixels. A list whose
/// `id` and `revision` were drawn before has not changed since; revision 0 changes always.
struct DrawnLayer {
  int id = 0;
  std::uint64_t revision = 0;
  const ImDrawList* list = nullptr;
  double scale = 1;
  ScreenPoint offset;
  bool in_lens = false;  // seen only through the frame's lens
  bool is_photograph = false;  // no list, but the frame's photograph; its units are the paper's millimetres
};

/// The photograph under the sheet, as it lies on the paper. By day it darkens the paper, as print does; by night its dark parts
/// are what is light, so that its white paper does not glare.
struct DrawnPhotograph {
  PictureTransform transform;
  SheetRect within;         // what is beyond it is not drawn
  Colour paper, ink;        // of the palette
  double opacity = 0;
  bool is_dark = false;
};

/// A round window on the canvas, CSS pixels.
struct Lens {
  ScreenPoint centre;
  double radius_px = 0;
};

struct DrawnFrame {
  std::vector<DrawnLayer> layers;  // the first lowest
  std::optional<Lens> lens;
  std::optional<DrawnPhotograph> photograph;
  std::uint32_t background = 0;    // ImU32, behind all
  std::uint32_t halo = 0;          // ImU32, the colour of text halos
};

/// The glyphs as one image: how far each texel is from the glyph's outline (128 on it, growing inwards). Glyph quads have
/// their uv in texels, so that they stay true when the image grows; a haloed glyph has k_halo_u added to u; solid shapes have
/// uv (-1, -1), which means full coverage.
inline constexpr float k_halo_u = 8192;

struct GlyphImage {
  std::span<const std::uint8_t> texels;
  int width = 0;
  int height = 0;
  double range_px = 0;           // texels from the outline to value 0 or 255
  double px_per_em = 0;          // texels an em
  std::uint64_t revision = 0;    // grows when glyphs were added
};

/// Numbers that come with news of the photograph (App::photograph_news).
struct PhotographNumbers {
  double code = 0;
  double a = 0, b = 0;
};

class App {
 public:
  explicit App(Platform& platform);
  ~App();
  App(const App&) = delete;
  App& operator=(const App&) = delete;

  // -- what happened
  /// The embedded typeface, once, before the first frame. The bytes must outlive the app. "regular", "bold", "italic".
  void set_typeface(std::span<const std::uint8_t> regular, std::span<const std::uint8_t> bold, std::span<const std::uint8_t> italic);
  void set_viewport(const Viewport& viewport);
  void pointer(const PointerEvent& event);
  void wheel(const WheelEvent& event);
  /// True when the key was ours and the browser should not act on it.
  bool key(const KeyEvent& event);
  /// No arrow has been pressed for a while: what they moved is put down where it is.
  void keys_at_rest();
  /// The store's records, one by one, then that these are all, and whether anything may be written. Before start(); or
  /// later, when the store was slow to answer or another page has let go of it.
  void store_record(StoreRecord record);
  void store_read(StoreFault fault = StoreFault::none);
  /// It can't be read, or not yet.
  void store_refused(StoreFault why);
  /// News of one document; after store_record for each record that comes with it.
  void store_told(StoreNews what, StoreDocument document);
  void store_written(std::uint64_t write);
  void store_failed(std::uint64_t write, StoreFault why);
  /// How much room there is for what is kept, in bytes, 0 for what the browser doesn't tell; and whether it promises to keep it.
  void store_room(double used, double allowed, Promise promise);
  /// The time that was asked for has passed.
  void woken();
  /// The page is put out of sight, or left.
  void hidden();
  /// What is being typed while the page is put out of sight; an empty one once it is back, since the field has it then.
  void set_half_typed(HalfTyped half);
  /// What the desk had kept of that; once.
  HalfTyped take_half_typed();
  /// A link's fragment in the address; empty for none. It opens beside the sheets that were kept, unless the page is only
  /// loaded anew: then the sheet that it had opened is among them.
  void start(const std::string& fragment, bool loaded_anew);
  /// A file the user chose: its name, its size, its first bytes. @param others  files that were dropped with it, and are left.
  /// What is to be done with it next.
  FileRoad file_chosen(const std::string& name, double bytes, std::string_view head, int others = 0);
  /// The text of one that is a sheet's.
  void file_opened(const std::string& text);
  /// The bytes of one that holds all that was kept: as many of its first as were asked for.
  double backup_bytes_wanted() const;
  void backup_read(std::span<const std::uint8_t> bytes);
  /// What the second program read in another (formats/marks_and_lines.h), or why the page could not have it read.
  /// @param fault  as page_fault() takes it (shell/app_inside.h). @param patience_s  how long it has waited
  void file_read(std::span<const std::uint8_t> bytes);
  void file_not_read(int fault, double patience_s);
  /// The same of one that was to be written for other programs.
  void file_not_saved(int fault, double patience_s);
  /// A link as a code (exchange/qr_code.h); no bytes when what makes them did not come.
  void code_made(std::span<const std::uint8_t> modules);
  /// Nothing took what was to be shared.
  void not_shared();
  /// Of the photograph of a sheet. chosen: its file's name, and its size in bytes as `a`. brought: its name, and how it is
  /// placed. read: how many pixels on a side were made one as `code`, upright width and height as `a` and `b`. refused: a Fault as
  /// `code`, its text and its numbers. @return whether it is still wanted.
  bool photograph_news(PhotographNews news, std::uint64_t sheet, const std::string& text, std::span<const std::uint8_t> bytes, const PhotographNumbers& numbers);
  /// Of Platform::list_photographs. @param were_read  whether they could be
  void photograph_listed(PhotographInFile photograph);
  void photographs_listed(bool were_read);
  /// Of Platform::take_photograph.
  void photograph_taken(std::uint64_t sheet, PhotographTaken how);
  void copied(bool done);
  /// What shows the time is to be shown anew.
  void minute_passed();
  /// The browser is about to print, by our asking or the user's own, or has done so.
  void set_printing(bool printing);
  /// A picture of the sheet was too large for the device. @param largest  dots an inch that work, 0 for none.
  void picture_refused(int largest_dots_an_inch);
  /// The canvas can't be drawn on (no WebGL2, context lost for good): panels take its place and say so.
  void set_canvas_lost(bool lost);
  /// No service worker, or it failed: said in "More".
  void set_offline_state(const std::string& state);  // "ready", "unsupported", "failed", "waiting" (a newer version waits), "whole" (the page is one file)

  /// What the device says of where it is, once it was asked. @param accuracy_m  of 95 % confidence. What is no position at
  /// all is taken as unknown.
  void set_own_position(Position at, double accuracy_m, std::int64_t at_ms);
  void no_own_position(const std::string& why);  // "refused", "absent", "unknown", "late"

  /// Of a screen that was to be kept awake: "held", "refused", "absent" (this browser can't), or empty when nobody asked.
  void set_awake_state(const std::string& state);

  // -- what to show
  /// Whether a frame would differ from the last one drawn.
  bool wants_frame() const;
  /// @param now_ms of the same clock as the pointers'.
  const DrawnFrame& frame(double now_ms);
  GlyphImage glyphs() const;
  /// Grows whenever panels() may differ.
  std::uint64_t panels_revision() const;
  std::vector<Panel> panels() const;
  /// "day", "dusk", "night", "high-contrast".
  std::string palette() const;
  int dim_step() const;      // of the dimmer, as it works in this palette
  int text_percent() const;  // of the panels' text: 100, 125 or 150
  std::string cursor() const;  // a CSS cursor keyword for the canvas

  // -- for scripts (README, "Scripting")
  Value read() const;
  Value command(const std::string& name, const Value& arguments);
  Value commands() const;
  /// {x, y, width, height} of canvas things in CSS px; null when off the canvas or something else takes a press there. The
  /// page answers for tools and panels and checks what covers the canvas.
  Value where(const std::string& name) const;
  std::string link() const;

 private:
  bool act_on_key(const KeyEvent& event);
  void put_down();
  void move_by_arrow(const KeyEvent& event);

  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace fogsheet
