// What every tool of the tray can do. A tool changes the document only by an action, and shows what a drag would do on a
// scratch copy until it ends. Tools are listed in one table (tools.cpp); adding one touches that table and its own file.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "shell/session.h"

namespace fogsheet {

class Overlay;  // canvas/overlay.h

/// What a drag aims with: where that is now, before it snaps, and the mark that it has snapped to.
struct Aimed {
  SheetPoint at;
  std::optional<MarkId> on;
};

class Tool {
 public:
  virtual ~Tool() = default;

  /// Down and up in one place.
  virtual void press(Session& session, ScreenPoint at) = 0;

  /// Whether a drag that begins here is the tool's; otherwise it moves the paper.
  virtual bool take(Session& session, ScreenPoint from, double held_s) = 0;
  virtual void move(Session& session, ScreenPoint at) = 0;
  virtual void release(Session& session, ScreenPoint at) = 0;
  /// Throws the scratch away: all is as it was before take().
  virtual void cancel(Session& session) = 0;

  /// While a drag goes on that aims at a place: what the loupe is to show.
  virtual std::optional<Aimed> aimed(const Session&) const { return std::nullopt; }

  /// Whether an edge is being slid now: its handles are not shown meanwhile.
  virtual bool sliding() const { return false; }

  /// What a drag or the next press would do.
  virtual void draw_preview(const Session&, Overlay&) const {}

  /// One line that says what to do next.
  virtual std::string status(const Session& session) const = 0;
};

/// A row of the table of tools.
struct ToolRow {
  ToolId id;
  const char* name;   // "straight-edge": in commands and handles
  const char* icon;
  const char* key;
  std::unique_ptr<Tool> (*make)();
  SlipId slip = SlipId::none;  // opens with it
};

const std::vector<ToolRow>& tool_table();
const ToolRow& tool_row(ToolId id);

}  // namespace fogsheet
