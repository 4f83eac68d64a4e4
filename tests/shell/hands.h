// An application on a tablet without a browser, and a hand that presses and drags on it.
#pragma once

#include <string>

#include "doctest/doctest.h"
#include "shell/app.h"
#include "tests/shell/fake_platform.h"

namespace fogsheet {

struct Tabletop {
  FakePlatform platform;
  App app{platform};
  double now_ms = 0;
  PointerKind hand = PointerKind::mouse;

  Tabletop() { app.set_viewport({.width_px = 1180, .height_px = 742}); }

  ScreenPoint middle(const std::string& name) {
    const Value box = app.where(name);
    REQUIRE_MESSAGE(box.is_object(), name);
    return {*box["x"].number() + *box["width"].number() / 2, *box["y"].number() + *box["height"].number() / 2};
  }
  void send(PointerPhase phase, ScreenPoint at) {
    now_ms += 20;
    app.pointer({.phase = phase, .kind = hand, .at = at, .buttons = phase == PointerPhase::up ? 0 : 1, .time_ms = now_ms});
  }
  void press(ScreenPoint at) {
    send(PointerPhase::down, at);
    send(PointerPhase::up, at);
  }
  void lift(ScreenPoint at) { send(PointerPhase::up, at); }
  void press(const std::string& name) { press(middle(name)); }
  void hold(ScreenPoint from, ScreenPoint to) {
    send(PointerPhase::down, from);
    for (int i = 1; i <= 10; ++i) send(PointerPhase::move, {from.x_px + (to.x_px - from.x_px) * i / 10, from.y_px + (to.y_px - from.y_px) * i / 10});
  }
  void drag(ScreenPoint from, ScreenPoint to) {
    hold(from, to);
    send(PointerPhase::up, to);
  }

  Value ask(const char* name, Value arguments = Value::object()) { return app.command(name, arguments); }
  /// A command that must succeed.
  Value done(const char* name, Value arguments = Value::object()) {
    const Value answer = ask(name, arguments);
    const std::string* error = answer["error"].text();
    REQUIRE_MESSAGE(answer.has("ok"), name << ": " << (error ? *error : ""));
    return answer;
  }
  Value read(const char* part) { return app.read()[part]; }
  Value mark(std::size_t i) { return (*app.read()["marks"].items())[i]; }
  Value leg(std::size_t i) { return (*app.read()["legs"].items())[i]; }
  std::string mark_id(std::size_t i) { return *mark(i)["id"].text(); }
  std::string leg_id(std::size_t i) { return *leg(i)["id"].text(); }

  /// The item of a kind and name in whatever panel is in view; null when there is none.
  template <class Item>
  std::optional<Item> item(const std::string& name) {
    for (const Panel& panel : app.panels())
      for (const PanelItem& each : panel.items)
        if (const auto* found = std::get_if<Item>(&each); found && found->name == name) return *found;
    return std::nullopt;
  }
  FieldItem field(const std::string& name) {
    const std::optional<FieldItem> found = item<FieldItem>(name);
    REQUIRE_MESSAGE(found.has_value(), name);
    return *found;
  }
  /// Leaves a field with a text in it, as the page does.
  Value type(const std::string& name, const std::string& text) {
    Press press = field(name).on_leave;
    press.arguments.set("text", text);
    return app.command(press.command, press.arguments);
  }
  /// Presses a button of a panel.
  Value press_button(const std::string& name) {
    const std::optional<ButtonItem> found = item<ButtonItem>(name);
    REQUIRE_MESSAGE(found.has_value(), name);
    return app.command(found->on_press.command, found->on_press.arguments);
  }
  bool says(const std::string& words) {
    for (const Panel& panel : app.panels())
      for (const PanelItem& each : panel.items) {
        if (const auto* caution = std::get_if<CautionItem>(&each); caution && (caution->text + caution->advice).find(words) != std::string::npos) return true;
        if (const auto* line = std::get_if<LineItem>(&each); line && (line->text + line->value).find(words) != std::string::npos) return true;
      }
    return false;
  }
};

}  // namespace fogsheet
