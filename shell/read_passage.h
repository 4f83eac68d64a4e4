// The passage in hand and what it comes to, as read() tells them (README, "Scripting").
#pragma once

#include "shell/session.h"
#include "shell/value.h"

namespace fogsheet {

Value passage_value(const Session& session);

}  // namespace fogsheet
