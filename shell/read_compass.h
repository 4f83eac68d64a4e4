// What scripts read of compasses: the card that the sheet is steered by, and the boats of this device.
#pragma once

#include "shell/session.h"
#include "shell/value.h"

namespace fogsheet {

/// {deviation: "not entered"}, or "card" or "nought" with boat, compass, date, source, points, in_links and swing_again.
Value compass_value(const Session& session);

/// [{key, name, in_hand, removed, compasses: [{id, name, kind, log: [{id, kind, date, result}]}]}]
Value boats_value(const Session& session);

}  // namespace fogsheet
