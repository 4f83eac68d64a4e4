#include "shell/app.h"

#include <cmath>
#include <utility>

#include "shell/app_inside.h"
#include "shell/commands.h"
#include "shell/panels/panels.h"
#include "shell/read.h"
#include "shell/tools/target.h"
#include "shell/words_of_print.h"
#include "shell/words_of_sending.h"

namespace fogsheet {

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

void App::store_record(StoreRecord record) { inside_->records.push_back(std::move(record)); }

void App::store_read(StoreFault fault) {
  inside_->drop_gesture();  // what is under way belongs to the sheet in hand so far
  Session& session = inside_->session;
  const std::vector<StoreRecord> records = std::exchange(inside_->records, {});
  inside_->came_back = std::any_of(records.begin(), records.end(), [](const StoreRecord& record) { return record.part == StorePart::sheets; });
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
  if (fault == StoreFault::none && session.keeper.findings().empty()) inside_->forget_other_photographs();
  if (!session.keeper.findings().empty()) session.message = {words::findings(session.keeper.findings(), session.sheets), true};
  session.touch();
  inside_->keep();
}

void App::store_refused(StoreFault why) {
  inside_->session.keeper.store_refused(why);
  inside_->keep();
}

void App::store_told(StoreNews what, StoreDocument document) {
  Session& session = inside_->session;
  const std::vector<StoreRecord> records = std::exchange(inside_->records, {});
  const SheetInDrawer* in_hand = &session.sheets.in_hand();
  const SheetKey key = in_hand->key;
  const bool is_in_hand = document == StoreDocument{StorePart::sheets, key.value};
  if (is_in_hand && !records.empty() && session.keeper.is_news_of(key, records)) inside_->drop_gesture();
  const Document before = session.document();
  const std::uint64_t revision = session.history().revision();
  const std::size_t findings = session.keeper.findings().size();
  session.keeper.told(what, document, records, session.sheets, session.boats, session.platform.now_ms());
  if (session.keeper.findings().size() != findings) session.message = {words::findings(session.keeper.findings(), session.sheets), true};
  ++session.panels_revision;
  if (in_hand != &session.sheets.in_hand()) session.change_desk(key);
  else if (revision != session.history().revision()) session.settle_desk(before);
  session.frame_wanted |= revision != session.history().revision();
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
  const bool has_it = loaded_anew && session.keeper.kept_state(session.sheets.in_hand().key);
  if (!fragment.empty() && !has_it) run_command(session, "open-link", Value::object({{"text", fragment}}));
  inside_->first_look();
  inside_->keep();
}

void App::minute_passed() {
  const SlipId slip = inside_->session.slip;
  if (slip == SlipId::next_leg || slip == SlipId::own_position) ++inside_->session.panels_revision;
}

void App::copied(bool done) {
  Session& session = inside_->session;
  const bool is_link = session.sending.link_copied;
  if (done) session.say(words::copied(is_link));
  else {
    session.message = {words::not_copied(is_link), true};
    if (is_link) {
      session.sending.link_shown = true;
      session.slip = SlipId::send;
    }
  }
  session.touch();
}

void App::set_printing(bool printing) {
  inside_->session.printing = printing;
  ++inside_->session.panels_revision;  // nothing of it is on the sheet
}

void App::picture_refused(int largest_dots_an_inch) {
  inside_->session.message = {words::picture_too_large(largest_dots_an_inch), true};
  inside_->session.touch();
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

void App::set_own_position(Position at, double accuracy_m, std::int64_t at_ms) {
  Session& session = inside_->session;
  if (session.own_position.state == OwnPositionState::off) return;  // let go meanwhile
  const bool sound = std::abs(at.lat_deg) < 90 && std::isfinite(at.lon_deg) && accuracy_m >= 0 && std::isfinite(accuracy_m);
  if (!sound) return no_own_position("unknown");
  session.own_position = {.state = OwnPositionState::here, .at = {at.lat_deg, reduce_longitude_deg(at.lon_deg)}, .accuracy_m = accuracy_m, .at_ms = at_ms};
  session.touch();
}

void App::no_own_position(const std::string& why) {
  Session& session = inside_->session;
  OwnPosition& own = session.own_position;
  if (own.state == OwnPositionState::off) return;
  const auto became = [&](OwnPositionState state) { own = {.state = state}; };
  if (why == "refused") became(OwnPositionState::refused);
  else if (why == "absent") became(OwnPositionState::absent);
  else if (own.is_here()) return;  // the last one stands, and says how old it is
  else became(why == "late" ? OwnPositionState::late : OwnPositionState::unknown);
  session.touch();
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
