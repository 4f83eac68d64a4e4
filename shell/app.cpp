#include "shell/app.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "shell/canvas/canvas.h"
#include "shell/commands.h"
#include "shell/commands_outline.h"
#include "shell/dividers.h"
#include "shell/give_way.h"
#include "shell/keeper/desk_record.h"
#include "shell/keys.h"
#include "shell/panels/panels.h"
#include "shell/read.h"
#include "shell/things.h"
#include "shell/tools/aim.h"
#include "shell/tools/gestures.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"
#include "shell/words_of_things.h"

namespace fogsheet {

struct App::Inside : GestureTarget {
  explicit Inside(Platform& platform) : session(platform), gestures(*this) {
    for (const ToolRow& row : tool_table()) tools.push_back(row.make());
    session.settings = kept_settings(platform);
  }

  Tool& tool() { return *tools[static_cast<std::size_t>(session.desk.tool)]; }
  const Tool& tool() const { return *tools[static_cast<std::size_t>(session.desk.tool)]; }

  /// Before the tool or the document changes under a drag, the drag is thrown away; what arrows have moved is put down.
  void drop_gesture() {
    gestures.cancel();
    end_run(session);
  }

  void press(ScreenPoint at, PointerKind) override {
    session.message = {};
    session.in_focus.reset();
    if (session.slip == SlipId::first_run && session.desk.tool != ToolId::none) session.slip = SlipId::none;
    tool().press(session, at);
    session.touch();
  }

  bool ask(ScreenPoint at) override {
    session.message = {};
    session.in_focus.reset();
    return select_thing_at(session, at);
  }

  void drag_begin(ScreenPoint from, double down_ms, double held_s) override {
    aim.begin(from, down_ms + held_s * 1000);
    tool_has_drag = tool().take(session, from, held_s);
    last_drag = from;
    session.touch();
  }

  void drag_to(const PointerEvent& event) override {
    if (tool_has_drag) tool().move(session, aim.follow(event.at, event.time_ms, loupe_wanted(event)));
    else pan(event.at - last_drag);
    last_drag = event.at;
  }

  void drag_end(const PointerEvent& event) override {
    if (tool_has_drag) tool().release(session, aim.follow(event.at, event.time_ms, aim.loupe_at().has_value()));
    aim.end();
    tool_has_drag = false;
    by_hand = true;
    session.touch();
  }

  /// For a finger always, which hides what it aims at; for a pen while its button is held, for either and a mouse by Alt.
  bool loupe_wanted(const PointerEvent& event) const {
    const bool asked_for = event.kind == PointerKind::touch || event.alt || (event.kind == PointerKind::pen && (event.buttons & 2) != 0);
    return asked_for && session.settings.loupe && tool().aimed(session);
  }

  void drag_cancel() override {
    aim.end();
    if (tool_has_drag) tool().cancel(session);
    tool_has_drag = false;
    session.touch();
  }

  void pan_zoom(ScreenPoint about, ScreenPoint by, double factor) override {
    session.desk.camera = zoomed(panned(session.desk.camera, by), about, factor);
    hold_camera();
  }

  void hover(std::optional<ScreenPoint> at) override { hovered = at; }

  void pan(ScreenPoint by) {
    session.desk.camera = panned(session.desk.camera, by);
    hold_camera();
  }

  void hold_camera() {
    session.desk.camera = held(session.desk.camera, paper_size(session.document().sheet.paper), session.free_area());
    session.desk.camera_moved = true;
    session.frame_wanted = true;
  }

  /// Says what the instruments read, once it has come to rest and is not what was said last.
  void tell_reading() {
    if (tool_has_drag || session.run) return;
    const std::string reading = words::instruments_read(session);
    if (reading == session.reading_told) return;
    if (reading.empty()) session.reading_told.clear();
    else session.read_aloud(reading);
  }

  /// After whatever happened: it is told, what is in hand stays in sight, and what changed is handed to the store.
  void keep() {
    tell_reading();
    if (!tool_has_drag) give_way.look(session, std::exchange(by_hand, false));
    const std::size_t gone = session.history().first_state();
    if (std::exchange(steps_gone, gone) == 0 && gone == 1) session.say(words::oldest_gone());
    session.keeper.look(session.sheets, desk_bytes(session), session.platform.now_ms());
    session.keeper.look(session.boats, session.platform.now_ms());
    hand_over();
  }

  void hand_over() {
    Keeper& keeper = session.keeper;
    for (const StoreWrite& write : keeper.take_writes()) session.platform.write_store(write);
    if (keeper.wakes_at_ms() != 0 && keeper.wakes_at_ms() != wakes_at_ms) session.platform.wake_after(std::max<std::int64_t>(0, keeper.wakes_at_ms() - session.platform.now_ms()));
    wakes_at_ms = keeper.wakes_at_ms();
    const KeptShown shown{keeper.keeping(), keeper.fault(), keeper.kept_ms() / k_minute_ms};
    if (std::exchange(kept_shown, shown) != shown) ++session.panels_revision;  // nothing of it is on the sheet: no frame for it
    if (session.new_version_wanted) go_to_new_version();
  }

  /// The page goes when a newer version comes: not before all that was done is kept, and not at a time of its own when
  /// that could not be.
  void go_to_new_version() {
    const bool is_lost = !session.nothing_to_lose();
    if (!is_lost && !session.sheets.untouched() && session.keeper.is_busy()) return;
    session.new_version_wanted = false;
    if (!is_lost) return session.platform.use_new_version();
    session.message = {words::not_while_unkept(), true};
    session.touch();
  }

  // What panels show of it.
  struct KeptShown {
    Keeping keeping = Keeping::waiting;
    StoreFault fault = StoreFault::none;
    std::int64_t minute = 0;
    bool operator==(const KeptShown&) const = default;
  };
  static constexpr std::int64_t k_minute_ms = 60'000;

  Session session;
  Canvas canvas;
  std::vector<StoreRecord> records;  // read so far
  std::int64_t wakes_at_ms = 0;
  std::size_t steps_gone = 0;  // from the past of the sheet in hand
  KeptShown kept_shown;
  std::vector<std::unique_ptr<Tool>> tools;  // by ToolId
  Gestures gestures;
  Aim aim;
  GiveWay give_way;
  bool by_hand = false;  // what happens is a drag's end
  bool tool_has_drag = false;
  ScreenPoint last_drag;
  std::optional<ScreenPoint> hovered;
};

App::App(Platform& platform) : inside_(std::make_unique<Inside>(platform)) { inside_->canvas.glyphs().set_machine(platform); }
App::~App() = default;

void App::set_typeface(std::span<const std::uint8_t> regular, std::span<const std::uint8_t> bold, std::span<const std::uint8_t> italic) {
  GlyphAtlas& glyphs = inside_->canvas.glyphs();
  glyphs.set_face(Face::regular, regular);
  glyphs.set_face(Face::bold, bold);
  glyphs.set_face(Face::italic, italic);
  inside_->session.touch();
}

void App::set_viewport(const Viewport& viewport) {
  Session& session = inside_->session;
  if (session.viewport == viewport) return;
  const Viewport before = session.viewport;
  session.viewport = viewport;
  const bool resized = before.width_px != viewport.width_px || before.height_px != viewport.height_px;
  if (resized && !session.desk.camera_moved) session.look_at_sheet();
  else if (resized) inside_->hold_camera();
  if (!inside_->tool_has_drag) inside_->give_way.look(session, true);
  session.touch();
}

void App::pointer(const PointerEvent& event) {
  if (inside_->session.touch_locked) return;
  if (event.phase == PointerPhase::down) end_run(inside_->session);
  inside_->gestures.event(event);
  inside_->keep();
}

void App::wheel(const WheelEvent& event) {
  if (inside_->session.touch_locked) return;
  constexpr double k_factor_a_step = 1.12;
  Session& session = inside_->session;
  session.desk.camera = zoomed(session.desk.camera, event.at, std::pow(k_factor_a_step, -event.steps));
  inside_->hold_camera();
  inside_->keep();
}

bool App::key(const KeyEvent& event) {
  const bool ours = act_on_key(event);
  inside_->keep();
  return ours;
}

void App::keys_at_rest() {
  end_run(inside_->session);
  inside_->keep();
}

/// What Esc puts down, one thing a press.
void App::put_down() {
  Session& session = inside_->session;
  const bool dragging = inside_->tool_has_drag;
  if (cancel_run(session)) return;
  inside_->drop_gesture();
  if (dragging) return;  // throwing the drag away is all that this press does
  if (session.outline.open && session.in_focus) run_command(session, "outline", Value::object());
  else if (session.desk.first_end) session.desk.first_end.reset();
  else if (session.desk.first_point) session.desk.first_point.reset();
  else if (session.desk.dividers && session.desk.tool == ToolId::dividers) lift_dividers(session);
  else if (session.desk.edge && session.desk.tool == ToolId::straight_edge) session.set_edge(std::nullopt);
  else if (session.desk.tool != ToolId::none) run_command(session, "tool", Value::object({{"tool", "none"}}));
  else run_command(session, "close-slip", Value::object());
  session.touch();
}

/// An arrow moves what the keys are on, or else the paper.
void App::move_by_arrow(const KeyEvent& event) {
  if (inside_->tool_has_drag) return;  // what the hand holds follows the hand alone
  Session& session = inside_->session;
  constexpr double k_step_px = 1, k_shift_step_px = 10, k_pan_px = 40, k_shift_pan_px = 160;
  const ScreenPoint way = event.key == "ArrowLeft" ? ScreenPoint{-1, 0} : event.key == "ArrowRight" ? ScreenPoint{1, 0} : event.key == "ArrowUp" ? ScreenPoint{0, -1} : ScreenPoint{0, 1};
  const double step = event.shift ? k_shift_step_px : k_step_px, pan = event.shift ? k_shift_pan_px : k_pan_px;
  const std::optional<Thing> thing = thing_under_keys(session);
  if (!thing || !nudge(session, *thing, {step * way.x_px, step * way.y_px})) inside_->pan({-pan * way.x_px, -pan * way.y_px});
}

bool App::act_on_key(const KeyEvent& event) {
  Session& session = inside_->session;
  if (event.control && !event.alt && (event.key == "z" || event.key == "Z" || event.key == "y")) {
    inside_->drop_gesture();
    run_command(session, event.key == "z" && !event.shift ? "undo" : "redo", Value::object());
    return true;
  }
  if (event.control || event.alt) return false;
  const std::optional<Thing> thing = thing_under_keys(session);
  if (const std::optional<KeyAct> act = key_act(event)) {
    const bool in_outline = session.outline.open && session.in_focus;
    const std::size_t from = first_shown(session), count = thing_count(session);
    switch (*act) {
      case KeyAct::put_down: put_down(); return true;
      case KeyAct::move: move_by_arrow(event); return true;
      case KeyAct::press:
        if (!session.run) return false;  // the page presses what has its focus
        inside_->drop_gesture();
        return true;
      case KeyAct::rub_out:
        if (event.repeat) return true;  // held down it would rub out one thing after another
        if (!thing) return false;
        inside_->drop_gesture();
        rub_out_under_keys(session, *thing);
        return true;
      case KeyAct::turn:
        if (!session.settings.single_keys || !session.desk.edge || session.desk.tool != ToolId::straight_edge) return false;
        // While it is under the hand its angle is the hand's, and locked while it slides.
        if (!inside_->tool_has_drag) command("nudge-edge", Value::object({{"by_deg", turn_by_deg(event)}}));
        return true;
      case KeyAct::later:
        if (in_outline) page_outline(session, event.key == "End" ? count - 1 : std::min(from + k_things_shown, count - 1));
        return in_outline;
      case KeyAct::earlier:
        if (in_outline) page_outline(session, event.key == "Home" ? 0 : from - std::min(from, k_things_shown));
        return in_outline;
    }
  }
  if (event.key.size() == 1 && !session.settings.single_keys) return false;
  for (const ToolRow& row : tool_table())
    if (*row.key && (event.key == row.key || (event.key.size() == 1 && event.key[0] - 'a' + 'A' == row.key[0]))) {
      command("tool", Value::object({{"tool", row.name}}));
      return true;
    }
  for (const Command& each : command_table()) {
    if (!*each.key || wants_control(each) || event.key != each.key) continue;
    command(each.name, Value::object());
    return true;
  }
  return false;
}

void App::store_record(StoreRecord record) { inside_->records.push_back(std::move(record)); }

void App::store_read(StoreFault fault) {
  inside_->drop_gesture();  // what is under way belongs to the sheet in hand so far
  Session& session = inside_->session;
  const std::vector<StoreRecord> records = std::exchange(inside_->records, {});
  const bool is_another = session.keeper.store_read(records, session.sheets, session.platform.now_ms(), fault);
  session.keeper.read_boats(records, session.boats);
  if (is_another) {
    session.slip = SlipId::none;
    session.look_at_sheet();
    restore_desk(session, session.keeper.kept_desk(), true);
  } else {
    if (session.sheets.untouched()) restore_desk(session, session.keeper.kept_desk(), false);
    session.settle_desk(session.document());
  }
  if (!session.keeper.findings().empty()) session.message = {words::findings(session.keeper.findings(), session.sheets), true};
  session.touch();
  inside_->keep();
}

void App::store_refused(StoreFault why) {
  inside_->session.keeper.store_refused(why);
  inside_->keep();
}

void App::store_written(std::uint64_t write) {
  inside_->session.keeper.written(write, inside_->session.platform.now_ms());
  inside_->hand_over();
}

void App::store_failed(std::uint64_t write, StoreFault why) {
  inside_->session.keeper.failed(write, why, inside_->session.platform.now_ms());
  inside_->hand_over();
}

void App::woken() {
  inside_->wakes_at_ms = 0;
  inside_->session.keeper.wake(inside_->session.sheets, inside_->session.platform.now_ms());
  inside_->keep();
}

void App::hidden() {
  end_run(inside_->session);
  inside_->session.keeper.hide(inside_->session.sheets, inside_->session.platform.now_ms());
  inside_->hand_over();
}

void App::set_half_typed(HalfTyped half) {
  inside_->session.half_typed = std::move(half);
  inside_->keep();
}

HalfTyped App::take_half_typed() { return std::exchange(inside_->session.half_typed, {}); }

void App::start(const std::string& fragment, bool loaded_anew) {
  Session& session = inside_->session;
  if (session.settings.keep_awake) session.platform.keep_awake(true);
  const bool has_it = loaded_anew && session.keeper.kept_state(session.sheets.in_hand().key);
  if (!fragment.empty() && !has_it) run_command(session, "open-text", Value::object({{"text", fragment}}));
  inside_->keep();
}

void App::file_opened(const std::string& text) {
  run_command(inside_->session, "open-text", Value::object({{"text", text}}));
  inside_->keep();
}

void App::copied(bool done) {
  Session& session = inside_->session;
  if (done) session.say(words::link_copied());
  else {
    session.link_shown = true;
    session.slip = SlipId::more;
    session.message = {words::link_not_copied(), true};
  }
  session.touch();
}

void App::set_canvas_lost(bool lost) {
  inside_->session.canvas_lost = lost;
  inside_->session.touch();
}

void App::set_offline_state(const std::string& state) {
  inside_->session.offline_state = state;
  ++inside_->session.panels_revision;  // nothing of it is on the sheet: no frame for it
}

void App::set_awake_state(const std::string& state) {
  inside_->session.awake_state = state;
  ++inside_->session.panels_revision;  // as above
}

bool App::wants_frame() const { return inside_->session.frame_wanted || inside_->canvas.moving(); }

const DrawnFrame& App::frame(double now_ms) {
  inside_->session.frame_wanted = false;
  return inside_->canvas.frame(inside_->session, inside_->tool(), inside_->aim.loupe_at(), now_ms);
}

GlyphImage App::glyphs() const {
  const GlyphAtlas& atlas = inside_->canvas.glyphs();
  return {atlas.texels(), atlas.width(), atlas.height(), GlyphAtlas::k_range_px, GlyphAtlas::k_px_per_em, atlas.revision()};
}

std::uint64_t App::panels_revision() const { return inside_->session.panels_revision; }
std::vector<Panel> App::panels() const { return panels_in_view(inside_->session, inside_->tool()); }
std::string App::palette() const { return std::string(palette_name(inside_->session.settings.palette)); }

int App::dim_step() const { return inside_->session.settings.dim_step(); }
int App::text_percent() const { return inside_->session.settings.text_percent; }

std::string App::cursor() const {
  if (!inside_->hovered) return "default";
  const Session& session = inside_->session;
  const Target target = target_at(session, *inside_->hovered);
  if (std::holds_alternative<HandleTarget>(target) || std::holds_alternative<DividersTarget>(target) || std::holds_alternative<LineEndTarget>(target) || std::holds_alternative<RoseTarget>(target) || std::holds_alternative<RoseSizeTarget>(target) || std::holds_alternative<BodyTarget>(target)) return "grab";
  if (!std::holds_alternative<NothingTarget>(target)) return "pointer";
  return session.desk.tool == ToolId::none ? "grab" : "crosshair";
}

Value App::read() const { return read_session(inside_->session); }

Value App::command(const std::string& name, const Value& arguments) {
  inside_->drop_gesture();
  Value answer = run_command(inside_->session, name, arguments);
  inside_->keep();
  return answer;
}

Value App::commands() const { return describe_commands(inside_->session); }
Value App::where(const std::string& name) const { return where_on_canvas(inside_->session, name); }
std::string App::link() const { return link_of(inside_->session); }

}  // namespace fogsheet
