// The short list of functions that the page's scripts call (page/program.js). Text goes in and out as UTF-8 that ends in a
// zero; what is handed out stands until the next call.
#include <emscripten.h>
#include <emscripten/html5.h>

#include <cstdint>
#include <span>
#include <string>

#include "core/base/check.h"
#include "core/directions/direction_text.h"
#include "core/formats/crc32.h"
#include "shell/app.h"
#include "web/gl_renderer.h"
#include "web/json.h"
#include "web/page_platform.h"

namespace fogsheet {

struct Page {
  PagePlatform platform;
  App app{platform};
  GlRenderer renderer{"#sheet canvas"};
  Viewport viewport;
  std::string answer;

  const char* hand_out(std::string text) {
    answer = std::move(text);
    return answer.c_str();
  }
};

namespace {

std::span<const std::uint8_t> bytes(const std::uint8_t* first, int size) { return {first, static_cast<std::size_t>(size)}; }

constexpr int k_shift = 1;
constexpr int k_control = 2;
constexpr int k_alt = 4;
constexpr int k_repeat = 8;  // its key is held down

}  // namespace
}  // namespace fogsheet

using namespace fogsheet;

extern "C" {

/// The three faces' bytes stay the application's for good.
EMSCRIPTEN_KEEPALIVE Page* sheet_open(const std::uint8_t* regular, int regular_size, const std::uint8_t* bold, int bold_size, const std::uint8_t* italic, int italic_size) {
  set_check_handler(&stop_canvas);
  Page* page = new Page;
  page->app.set_typeface(bytes(regular, regular_size), bytes(bold, bold_size), bytes(italic, italic_size));
  return page;
}

/// One record of the store; then, once all have been given, that these are all.
EMSCRIPTEN_KEEPALIVE void sheet_store_record(Page* page, int part, double sheet, double sequence, const std::uint8_t* first, int size) {
  const std::span<const std::uint8_t> record = bytes(first, size);
  page->app.store_record({.part = static_cast<StorePart>(part),
                          .sheet = static_cast<std::uint64_t>(sheet),
                          .sequence = static_cast<std::uint64_t>(sequence),
                          .bytes = {record.begin(), record.end()}});
}

/// Faults are counted as in StoreFault.
EMSCRIPTEN_KEEPALIVE void sheet_store_read(Page* page, int fault) { page->app.store_read(static_cast<StoreFault>(fault)); }

/// News are counted as in StoreNews.
EMSCRIPTEN_KEEPALIVE void sheet_store_told(Page* page, int what, int part, double key) {
  page->app.store_told(static_cast<StoreNews>(what), {static_cast<StorePart>(part), static_cast<std::uint64_t>(key)});
}

EMSCRIPTEN_KEEPALIVE void sheet_store_refused(Page* page, int fault) { page->app.store_refused(static_cast<StoreFault>(fault)); }

EMSCRIPTEN_KEEPALIVE void sheet_store_answered(Page* page, double write, int fault) {
  const auto id = static_cast<std::uint64_t>(write);
  if (fault == 0) page->app.store_written(id);
  else page->app.store_failed(id, static_cast<StoreFault>(fault));
}

/// In bytes; 0 for what the browser doesn't tell. Promises are counted as in Promise.
EMSCRIPTEN_KEEPALIVE void sheet_store_room(Page* page, double used, double allowed, int promise) { page->app.store_room(used, allowed, static_cast<Promise>(promise)); }

EMSCRIPTEN_KEEPALIVE void sheet_woken(Page* page) { page->app.woken(); }

EMSCRIPTEN_KEEPALIVE void sheet_hidden(Page* page) { page->app.hidden(); }

EMSCRIPTEN_KEEPALIVE void sheet_half_typed(Page* page, const char* field, const char* text) { page->app.set_half_typed({field, text}); }

/// A line with the field's name, then the text.
EMSCRIPTEN_KEEPALIVE const char* sheet_take_half_typed(Page* page) {
  const HalfTyped half = page->app.take_half_typed();
  return page->hand_out(half.field + "\n" + half.text);
}

EMSCRIPTEN_KEEPALIVE void sheet_start(Page* page, const char* fragment, int loaded_anew) { page->app.start(fragment, loaded_anew != 0); }

// -- files

/// Roads are counted as in FileRoad.
EMSCRIPTEN_KEEPALIVE int sheet_file_chosen(Page* page, const char* name, double size, const std::uint8_t* head, int head_size, int others) {
  return static_cast<int>(page->app.file_chosen(name, size, {reinterpret_cast<const char*>(head), static_cast<std::size_t>(head_size)}, others));
}

EMSCRIPTEN_KEEPALIVE void sheet_file_opened(Page* page, const char* text) { page->app.file_opened(text); }

EMSCRIPTEN_KEEPALIVE double sheet_backup_bytes_wanted(Page* page) { return page->app.backup_bytes_wanted(); }

EMSCRIPTEN_KEEPALIVE void sheet_backup_read(Page* page, const std::uint8_t* first, int size) { page->app.backup_read(bytes(first, size)); }

EMSCRIPTEN_KEEPALIVE void sheet_file_read(Page* page, const std::uint8_t* first, int size) { page->app.file_read(bytes(first, size)); }

EMSCRIPTEN_KEEPALIVE void sheet_file_not_read(Page* page, int fault, double patience_s) { page->app.file_not_read(fault, patience_s); }

EMSCRIPTEN_KEEPALIVE void sheet_file_not_saved(Page* page, int fault, double patience_s) { page->app.file_not_saved(fault, patience_s); }

EMSCRIPTEN_KEEPALIVE void sheet_code_made(Page* page, const std::uint8_t* first, int size) { page->app.code_made(bytes(first, size)); }

EMSCRIPTEN_KEEPALIVE void sheet_not_shared(Page* page) { page->app.not_shared(); }

/// News are counted as in PhotographNews. 1 when it is still wanted.
EMSCRIPTEN_KEEPALIVE int sheet_photograph_news(Page* page, int news, double sheet, const char* text, const std::uint8_t* first, int size, double code, double a, double b) {
  return page->app.photograph_news(static_cast<PhotographNews>(news), static_cast<std::uint64_t>(sheet), text, bytes(first, size), {code, a, b});
}

/// Part by part, of what the application need not hold (formats/crc32.h).
EMSCRIPTEN_KEEPALIVE std::uint32_t sheet_crc32(Page*, const std::uint8_t* first, int size, std::uint32_t before) { return crc32(bytes(first, size), before); }

EMSCRIPTEN_KEEPALIVE void sheet_photograph_listed(Page* page, double sheet, const char* name, const std::uint8_t* placing, int size, double photograph_bytes, double checksum) {
  const std::span<const std::uint8_t> placed = bytes(placing, size);
  page->app.photograph_listed({.sheet = {static_cast<std::uint64_t>(sheet)}, .name = name, .placing = {placed.begin(), placed.end()}, .bytes = static_cast<std::uint64_t>(photograph_bytes), .checksum = static_cast<std::uint32_t>(checksum)});
}

EMSCRIPTEN_KEEPALIVE void sheet_photographs_listed(Page* page, int were_read) { page->app.photographs_listed(were_read != 0); }

/// How is counted as in PhotographTaken.
EMSCRIPTEN_KEEPALIVE void sheet_photograph_taken(Page* page, double sheet, int how) { page->app.photograph_taken(static_cast<std::uint64_t>(sheet), static_cast<PhotographTaken>(how)); }

// -- the canvas

/// Makes the WebGL2 context, or what was in it when the browser gives it back. 0 when it can't be had.
EMSCRIPTEN_KEEPALIVE int sheet_attach(Page* page) { return page->renderer.attach(); }

EMSCRIPTEN_KEEPALIVE void sheet_lose(Page* page) { page->renderer.lose(); }

/// Gone for good, or back after all.
EMSCRIPTEN_KEEPALIVE void sheet_canvas_lost(Page* page, int lost) { page->app.set_canvas_lost(lost != 0); }

EMSCRIPTEN_KEEPALIVE void sheet_viewport(Page* page, double width_px, double height_px, double pixel_ratio, double covered_right_px, double covered_bottom_px) {
  page->viewport = {width_px, height_px, pixel_ratio, covered_right_px, covered_bottom_px};
  page->app.set_viewport(page->viewport);
}

EMSCRIPTEN_KEEPALIVE int sheet_wants_frame(Page* page) { return page->app.wants_frame(); }

/// Brings the application up to date and draws, when there is a context. 1 when a frame was drawn.
EMSCRIPTEN_KEEPALIVE int sheet_frame(Page* page, double now_ms, int width, int height) {
  const DrawnFrame& frame = page->app.frame(now_ms);
  if (!page->renderer.attached() || width <= 0 || height <= 0) return 0;
  page->renderer.draw(frame, page->app.glyphs(), page->viewport.pixel_ratio, width, height);
  return 1;
}

// -- what happened

EMSCRIPTEN_KEEPALIVE void sheet_pointer(Page* page, int phase, int kind, int id, double x_px, double y_px, int buttons, double pressure, int modifiers, double time_ms) {
  page->app.pointer({.phase = static_cast<PointerPhase>(phase),
                     .kind = static_cast<PointerKind>(kind),
                     .id = id,
                     .at = {x_px, y_px},
                     .buttons = buttons,
                     .pressure = pressure,
                     .shift = (modifiers & k_shift) != 0,
                     .alt = (modifiers & k_alt) != 0,
                     .time_ms = time_ms});
}

EMSCRIPTEN_KEEPALIVE void sheet_wheel(Page* page, double x_px, double y_px, double steps) { page->app.wheel({.at = {x_px, y_px}, .steps = steps}); }

/// 1 when the key was ours.
EMSCRIPTEN_KEEPALIVE int sheet_key(Page* page, const char* key, int modifiers) {
  return page->app.key({.key = key, .shift = (modifiers & k_shift) != 0, .control = (modifiers & k_control) != 0, .alt = (modifiers & k_alt) != 0, .repeat = (modifiers & k_repeat) != 0});
}

EMSCRIPTEN_KEEPALIVE void sheet_keys_at_rest(Page* page) { page->app.keys_at_rest(); }

EMSCRIPTEN_KEEPALIVE void sheet_minute_passed(Page* page) { page->app.minute_passed(); }

EMSCRIPTEN_KEEPALIVE void sheet_copied(Page* page, int done) { page->app.copied(done != 0); }

EMSCRIPTEN_KEEPALIVE void sheet_printing(Page* page, int printing) { page->app.set_printing(printing != 0); }

EMSCRIPTEN_KEEPALIVE void sheet_picture_refused(Page* page, int largest_dots_an_inch) { page->app.picture_refused(largest_dots_an_inch); }

EMSCRIPTEN_KEEPALIVE void sheet_awake_state(Page* page, const char* state) { page->app.set_awake_state(state); }

EMSCRIPTEN_KEEPALIVE void sheet_own_position(Page* page, double lat_deg, double lon_deg, double accuracy_m, double at_ms) {
  page->app.set_own_position({lat_deg, lon_deg}, accuracy_m, static_cast<std::int64_t>(at_ms));
}

EMSCRIPTEN_KEEPALIVE void sheet_no_own_position(Page* page, const char* why) { page->app.no_own_position(why); }

EMSCRIPTEN_KEEPALIVE void sheet_offline_state(Page* page, const char* state) { page->app.set_offline_state(state); }

/// A direction as typed, turned by so many degrees; as it is when it can't be read.
EMSCRIPTEN_KEEPALIVE const char* sheet_turned(Page* page, const char* text, double by_deg) {
  const Result<std::string> turned = turned_direction(text, by_deg);
  return page->hand_out(turned.ok() ? *turned : std::string(text));
}

// -- what to show, and for scripts

EMSCRIPTEN_KEEPALIVE double sheet_panels_revision(Page* page) { return static_cast<double>(page->app.panels_revision()); }

EMSCRIPTEN_KEEPALIVE const char* sheet_panels(Page* page) {
  Value panels = Value::list();
  for (const Panel& panel : page->app.panels()) panels.add(to_value(panel));
  return page->hand_out(to_json(panels));
}

EMSCRIPTEN_KEEPALIVE const char* sheet_palette(Page* page) { return page->hand_out(page->app.palette()); }

EMSCRIPTEN_KEEPALIVE int sheet_dim_step(Page* page) { return page->app.dim_step(); }

EMSCRIPTEN_KEEPALIVE int sheet_text_percent(Page* page) { return page->app.text_percent(); }

EMSCRIPTEN_KEEPALIVE const char* sheet_cursor(Page* page) { return page->hand_out(page->app.cursor()); }

EMSCRIPTEN_KEEPALIVE const char* sheet_read(Page* page) { return page->hand_out(to_json(page->app.read())); }

/// Arguments that are no JSON are taken for none: the command says what it misses.
EMSCRIPTEN_KEEPALIVE const char* sheet_command(Page* page, const char* name, const char* arguments) {
  return page->hand_out(to_json(page->app.command(name, parse_json(arguments).value_or(Value()))));
}

EMSCRIPTEN_KEEPALIVE const char* sheet_commands(Page* page) { return page->hand_out(to_json(page->app.commands())); }

EMSCRIPTEN_KEEPALIVE const char* sheet_where(Page* page, const char* name) { return page->hand_out(to_json(page->app.where(name))); }

EMSCRIPTEN_KEEPALIVE const char* sheet_link(Page* page) { return page->hand_out(page->app.link()); }

}  // extern "C"
