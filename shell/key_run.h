// Moving a thing by arrow keys: presses that follow each other are one run, shown on the sheet as it goes, one step of the
// sheet when it ends, none when it is thrown away. Ends of the edge and points of the dividers are caught by marks, either
// point where the hinge carries both, and the body by roses as under the hand; what an arrow has freed from one is caught by it again only from outside its reach.
#pragma once

#include <array>
#include <optional>

#include "shell/instruments.h"
#include "shell/pointer.h"
#include "shell/thing.h"

namespace fogsheet {

struct Session;
enum class ToolId;  // session.h

/// What of the desk a run changes besides the document, as it was when the run began.
struct DeskBefore {
  ToolId tool;
  std::optional<StraightEdge> edge;
  std::optional<EdgeMarks> laid_on;
  std::optional<DirectionSet> direction;
  std::optional<DividersOnSheet> dividers;
};

struct KeyRun {
  Thing thing;
  SheetPoint at;  // where it has been moved to
  DeskBefore before;
  // Each point, or the one that is moved: was moved off that mark, and has not been out of its reach since.
  std::array<std::optional<MarkId>, 2> free_of_marks;
  std::optional<RoseId> free_of_rose;
};

/// Moves a thing by that much; another run ends first. False when it can't be moved.
bool nudge(Session& session, const Thing& thing, ScreenPoint by);
/// Puts the thing down where it is; nothing when no run is under way.
void end_run(Session& session);
/// All is as it was before the run. False when none is under way.
bool cancel_run(Session& session);

}  // namespace fogsheet
