#include "shell/tools/mark_tool.h"

#include "core/document/actions.h"
#include "shell/tools/no_tool.h"
#include "shell/tools/target.h"
#include "shell/words.h"

namespace fogsheet {

void MarkTool::press(Session& session, ScreenPoint at) {
  if (const std::optional<MarkId> there = mark_near(session, at)) return select_mark(session, *there);
  const Position position = session.facts().projection->to_position(session.desk.camera.to_sheet(at));
  const Document before = session.document();
  const Result<MarkId> made = add_mark(session.history(), {.name = words::unused_name(session.document(), MarkKind::landmark),
                                                         .lat_deg = position.lat_deg, .lon_deg = position.lon_deg, .kind = MarkKind::landmark});
  if (!made) return session.refuse(made.problem());
  session.settle_desk(before);
  select_mark(session, *made);
}

std::string MarkTool::status(const Session&) const { return words::status_mark_tool(); }

}  // namespace fogsheet
