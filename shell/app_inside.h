// What the application holds, for the files that make it up: the session, the canvas, the tools, and what the hand is doing.
#pragma once

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "shell/app.h"
#include "shell/canvas/canvas.h"
#include "shell/dividers.h"
#include "shell/give_way.h"
#include "shell/keeper/desk_record.h"
#include "shell/session.h"
#include "shell/tools/aim.h"
#include "shell/tools/gestures.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/tool.h"
#include "shell/words.h"
#include "shell/words_of_backup.h"
#include "shell/words_of_things.h"

namespace fogsheet {

/// What the page met with, of a program that it runs beside itself (`faults` in web/page/later_program.js, from -1 down).
/// @param faults  what to call it: the program did not come, took too long, was given no bytes, broke down
inline Fault page_fault(double code, const std::array<Fault, 4>& faults) { return code <= -1 && code >= -4 ? faults[static_cast<std::size_t>(-code) - 1] : faults[3]; }

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
    if (const SheetKey newer = session.sheets.in_hand().key; session.sheets.copy_what_is_not_changed(session.platform.now_ms())) {
      session.change_desk(newer);
      session.message = {words::onto_a_copy(), true};
      session.touch();
    }
    session.keeper.look(session.sheets, desk_bytes(session), session.platform.now_ms());
    session.keeper.look(session.boats, session.platform.now_ms());
    hand_over();
    watch_room();
    tell_photograph();
    const bool awake = session.awake_wanted();
    if (std::exchange(told_awake, awake) != awake) session.platform.keep_awake(awake);
  }

  /// The photograph of the sheet that has come into hand is brought out; and how it is placed is kept, once the sheet itself is.
  void tell_photograph() {
    const SheetKey key = session.sheets.in_hand().key;
    if (std::exchange(photograph_of, key) != key) {
      session.photograph.reset();
      session.placing_told.clear();
      session.platform.photograph(PhotographAct::bring, key.value, {});
      return;
    }
    if (!session.photograph || !session.photograph->is_ready() || !session.keeper.kept_state(key)) return;
    std::vector<std::uint8_t> placing = to_bytes(session.photograph->placing);
    if (placing == session.placing_told) return;
    session.platform.photograph(PhotographAct::keep, key.value, placing);
    session.placing_told = std::move(placing);
  }

  /// Those of a file that was taken in, each once its sheet is kept: what lies there for no sheet is swept away.
  void take_photographs() {
    PhotographsUnderWay& under_way = session.photographs;
    if (!under_way.coming.empty() && session.keeper.keeping() == Keeping::off) {
      under_way.add(PhotographTaken::not_kept, std::exchange(under_way.coming, {}).size());
      session.message = {words::photographs_came(under_way), true};
    }
    const auto kept = std::stable_partition(under_way.coming.begin(), under_way.coming.end(), [&](const PhotographInFile& each) { return !session.keeper.kept_state(each.sheet); });
    std::for_each(kept, under_way.coming.end(), [&](const PhotographInFile& each) {
      ++under_way.asked_for;
      session.platform.take_photograph(each);
    });
    under_way.coming.erase(kept, under_way.coming.end());
  }

  /// Those of sheets that are no more: what a new one of the same key lay over would be another's.
  void forget_other_photographs() {
    std::vector<std::uint8_t> keys;
    for (const std::unique_ptr<SheetInDrawer>& sheet : session.sheets.all())
      for (int byte = 0; byte < 8; ++byte) keys.push_back(static_cast<std::uint8_t>(sheet->key.value >> 8 * byte));
    session.platform.photograph(PhotographAct::keep_only, 0, keys);
  }

  void hand_over() {
    Keeper& keeper = session.keeper;
    for (const StoreWrite& write : keeper.take_writes()) {
      session.platform.write_store(write);
      ++writes_unlooked;
    }
    for (const StoreAsk& ask : keeper.take_asks()) session.platform.ask_store(ask);
    take_photographs();
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

  void watch_room();
  void first_look();

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
  SheetKey photograph_of{0};   // the sheet whose photograph was asked for last
  std::size_t steps_gone = 0;  // from the past of the sheet in hand
  KeptShown kept_shown;
  std::vector<std::unique_ptr<Tool>> tools;  // by ToolId
  Gestures gestures;
  Aim aim;
  GiveWay give_way;
  bool by_hand = false;  // what happens is a drag's end
  bool was_in_drawer = false;
  bool came_back = false;  // to what was kept in a visit before
  std::size_t writes_unlooked = 0;  // since the room was last looked at
  bool told_awake = false;  // the platform keeps the screen on
  bool tool_has_drag = false;
  ScreenPoint last_drag;
  std::optional<ScreenPoint> hovered;
};

}  // namespace fogsheet
